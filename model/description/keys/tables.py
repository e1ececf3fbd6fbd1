"""Every key of a description: one line each, from which come reading, messages, schema and starter.

Those of sheets, steel and trims stand in files of their own. To add a key, add a line and the attribute it
fills in building.py (from_text.py hands the values of a table to the class of the same name). To add a table,
add it to TABLES.
"""

from __future__ import annotations

from .catalogued import Colour, ColourCode
from .counted import Numbers
from .key import Key, Table
from .limit_table import LIMITS
from .not_yet import OTHER_SHAPES
from .sheet_tables import (
    GABLE_SHEETS,
    HALF_WALL,
    INSULATION,
    LIGHT_SHEETS,
    RIDGE_VENT,
    ROOF_SHEETS,
    SHEETS,
    SKIRT,
    WAINSCOT,
)
from .slab_table import SLAB
from .steel_tables import BRACING, DOOR_ROOM, FRAME, FRAMING, SCREWS, TRIM
from .value_kinds import Bays, Choice, Length, Name, Pitch, Text
from .word_kinds import WallName, Words

CORNERS = ("back", "front")
GABLE_RUNS = ("left", "right", "centre, left first", "centre, right first")
CENTER = (("center, left first", GABLE_RUNS[2]), ("center, right first", GABLE_RUNS[3]))
UNSAID = "from the centre, or the low corner"
SIDES = ("clad", "open")
GABLES = (*SIDES, "infill")
KINDS = (
    *("walk door", "double door", "overhead door", "roll-up door", "sliding door"),
    *("window", "framed opening", "vent"),
)
SLIDES = ("left", "right", "apart")
SWINGS = ("left out", "left in", "right out", "right in", "out", "in")

TOP = Table(
    "",
    "A building. Lengths stand in quotes: 30 ft, 9 ft 2-1/2 in, 110.5 in, 9.144 m, 2500 mm.",
    (
        Key("name", Name(), "what the building is called", unless="the file's name"),
        Key("address", Text(), "where it will stand", unless="none", example=("12 Mill Lane",) * 2),
        Key("date", Text(), "of the job, as you write it", unless="none", example=("1 March 2026",) * 2),
        Key("units", Choice(("ft-in", "mm")), "how lengths are shown", "ft-in"),
        Key(
            "width",
            Length("6 ft", "200 ft"),
            "across the gables, out to out of the steel",
            example=("30 ft", "9 m"),
        ),
        Key("length", Length("6 ft", "1000 ft"), "along the ridge, out to out", example=("40 ft", "15 m")),
        Key("eave_height", Length("4 ft", "60 ft"), "top of slab to the eave", example=("10 ft", "3.6 m")),
        Key("pitch", Pitch("0.5/12", "18/12"), "rise in 12 of run, or degrees", example=("3/12", "10 deg")),
    ),
    "top",
)

ROOF = Table(
    "roof",
    "A roof that is no gable with even eaves and its ridge in the middle.",
    (
        Key("shape", Choice(("gable", "single slope"), instead=OTHER_SHAPES), "how the roof falls", "gable"),
        Key("falls_to", Choice(("left", "right")), "the low side of a single slope", "left"),
        Key(
            "right_eave_height",
            Length("4 ft", "60 ft"),
            "of a gable's right eave, where it is another",
            unless="the left one's",
            example=("12 ft", "3.6 m"),
        ),
        Key(
            "ridge",
            Length("2 ft", "198 ft"),
            "from the left wall; the right slope follows",
            unless="where both slopes have the pitch",
            example=("18 ft", "4 m"),
        ),
        Key(
            "break_at",
            Length("4 ft", "48 ft"),
            "in from each side wall, where its slope changes pitch",
            unless="one pitch a slope",
            example=("8 ft", "2.4 m"),
        ),
        Key(
            "lower_pitch",
            Pitch("0.5/12", "18/12"),
            "from there down to the walls: steeper than pitch, or flatter",
            unless="one pitch a slope",
            example=("6/12", "27 deg"),
        ),
        Key(
            "gable_overhang",
            Length("0 in", "24 in"),
            "over both gables, on purlins that run on (ask the engineer); 0: none",
            "0 in",
        ),
    ),
)

COLOURS = Table(
    "colours",
    "Colours by names of your own.",
    (),
    "named",
    also=("colors",),
    each=ColourCode(),
    example='"barn red" = "#7a2e2a"',
)

WALLS = Table(
    "walls",
    "Walls that stand open: a carport has four. No sheets, girts or base trim there; doors need a clad one.",
    (
        Key("front", Choice(GABLES), 'the front gable; "infill": open, but clad over its eaves', SIDES[0]),
        Key("back", Choice(GABLES), "the back gable, likewise", SIDES[0]),
        Key("left", Bays(), 'the left wall; in some bays, from the front: "open in bays 1, 2"', SIDES[0]),
        Key("right", Bays(), "the right wall, likewise", SIDES[0]),
    ),
)

RUNS = Table(
    "runs",
    "Where each face's run of sheets starts. Gables: left and right as seen from outside.",
    (
        Key(
            "front",
            Choice(GABLE_RUNS, CENTER),
            "front gable: a corner, or the centre",
            unless=UNSAID,
            example=(GABLE_RUNS[2],) * 2,
        ),
        Key(
            "back",
            Choice(GABLE_RUNS, CENTER),
            "back gable: a corner, or the centre",
            unless=UNSAID,
            example=(GABLE_RUNS[2],) * 2,
        ),
        Key("left", Choice(CORNERS), "left wall: from its back or its front corner", "back"),
        Key("right", Choice(CORNERS), "right wall: from its back or its front corner", "back"),
        Key("left_slope", Choice(CORNERS), "left slope of the roof", "back"),
        Key("right_slope", Choice(CORNERS), "right slope of the roof", "back"),
    ),
)

OPENING = Table(
    "opening",
    "A rectangular opening; one [[opening]] for each.",
    (
        Key(
            "kind",
            Choice(KINDS),
            "what fills it",
            example=(KINDS[0], KINDS[0]),
        ),
        Key(
            "wall",
            WallName(("front", "back", "left", "right")),
            'as named by someone outside, facing the front; of a lean-to "lean-to front", "lean-to outer"',
            example=("left", "left"),
        ),
        Key("width", Length("6 in", "60 ft"), "of the opening", example=("3 ft 4 in", "1000 mm")),
        Key("height", Length("6 in", "40 ft"), "of the opening", example=("6 ft 10 in", "2080 mm")),
        Key(
            "from_left",
            Length("0 in", "1000 ft"),
            "from the wall's left corner, seen from outside, to the opening",
            example=("4 ft", "1200 mm"),
        ),
        Key(
            "sill",
            Length("0 in", "40 ft"),
            "top of slab to the opening's lower edge",
            unless="3 ft for a window or a vent, else 0",
            example=("0 in", "0 mm"),
        ),
        Key(
            "colour",
            Colour(),
            "of its leaf, sash or louvre",
            unless="white",
            example=("white", "white"),
            also=("color",),
        ),
        Key(
            "swing",
            Choice(SWINGS),
            "hinges as seen from outside, and which way; of a double door the way",
            unless="not said",
            example=("left out", "left out"),
        ),
        Key(
            "slides",
            Choice(SLIDES),
            "a sliding door's leaf, seen from outside, or two that part",
            unless="right",
            example=("left", "left"),
        ),
    ),
    "array",
)

LEAN_TO = Table(
    "lean_to",
    "A roof of one slope along a wall, on that wall's columns and posts; a [[lean_to]] of its own.",
    (
        Key(
            "wall",
            Choice(("left", "right", "front", "back")),
            "the wall that it stands at; at a gable its bays are those of the posts",
            example=("left", "left"),
        ),
        Key("width", Length("4 ft", "60 ft"), "from that wall out", example=("10 ft", "3 m")),
        Key("pitch", Pitch("0.5/12", "12/12"), "of its roof", example=("2/12", "2/12")),
        Key(
            "eave_height",
            Length("4 ft", "50 ft"),
            "top of slab to its own eave, the low side",
            example=("7 ft", "2.1 m"),
        ),
        Key(
            "walls",
            Words(("front", "back", "left", "right", "outer")),
            'which of its own are clad: ["front", "back", "outer"] encloses it, at a gable "left", "right"',
            "none",
        ),
        Key(
            "bays",
            Numbers(),
            "that it stands along, in a row, from the front, at a gable from its left",
            unless="all",
            example=("1, 2", "1, 2"),
        ),
        Key("between", Choice(SIDES), "the main wall inside it, under its roof", SIDES[0]),
    ),
    "array",
)

TABLES = (
    TOP,
    COLOURS,
    ROOF,
    WALLS,
    SHEETS,
    GABLE_SHEETS,
    ROOF_SHEETS,
    LIGHT_SHEETS,
    INSULATION,
    RIDGE_VENT,
    WAINSCOT,
    HALF_WALL,
    SKIRT,
    TRIM,
    SCREWS,
    SLAB,
    RUNS,
    FRAME,
    FRAMING,
    BRACING,
    DOOR_ROOM,
    LIMITS,
    LEAN_TO,
    OPENING,
)
