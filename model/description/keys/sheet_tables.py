"""The keys of the sheets: on walls and roof, where some are others, and on the foot of the walls."""

from __future__ import annotations

from ...roles import FACES
from ..opening import Wall
from .catalogued import Colour, GaugeNumber, Profile
from .counted import Numbers, Whole
from .key import Key, Table
from .value_kinds import Choice, Length, Lengths

PROFILES = ("36 x 9 x 3/4", "1000 x 250 x 35")
"""Usual ones, in feet and inches and in mm."""
WALL_COLOUR, ROOF_COLOUR = "gainsboro", "slategray"
WAINSCOT_WALLS: dict[str, tuple[Wall, ...]] = {
    "all": ("front", "back", "left", "right"),
    "gables": ("front", "back"),
    "sides": ("left", "right"),
    **{wall: (wall,) for wall in ("front", "back", "left", "right")},
}
"""The walls that each word for them means."""

SHEETS = Table(
    "sheets",
    "The ribbed sheets on walls and roof.",
    (
        Key(
            "profile",
            Profile(),
            "cover x rib pitch x rib height, from the catalogue",
            PROFILES[0],
            metric=PROFILES[1],
        ),
        Key(
            "gauge",
            GaugeNumber(),
            "of galvanised sheet",
            unless="29 or 0.5 mm, or none where there is a thickness",
            example=("29", "29"),
        ),
        Key(
            "thickness",
            Length("0.0075 in", "0.06 in"),
            "instead of a gauge",
            unless="the gauge's",
            example=("0.02 in", "0.5 mm"),
        ),
        Key(
            "wall_colour",
            Colour(),
            "a CSS colour name, #rrggbb or your own",
            WALL_COLOUR,
            also=("wall_color",),
        ),
        Key(
            "roof_colour",
            Colour(),
            "a CSS colour name, #rrggbb or your own",
            ROOF_COLOUR,
            also=("roof_color",),
        ),
        Key(
            "overhang",
            Length("1-1/8 in", "4 in"),
            "of the roof past the eave, in plan",
            unless="2 in, with gutters 2-1/2 in; 50, 65 mm",
            example=("2 in", "50 mm"),
        ),
        Key(
            "ridge_gap",
            Length("0 in", "12 in"),
            "between each slope's sheets and the ridge",
            "1 in",
            metric="25 mm",
        ),
        Key(
            "step",
            Length("0 in", "1 in"),
            "of the lengths that sheets come in; 0: any. The ridge gap gives or takes half of it",
            "1/2 in",
            metric="5 mm",
        ),
        Key(
            "pairs",
            Choice(("none", "cut")),
            "cut: two sheets ordered as one blank where one cut makes both, their ribs where they belong",
            "none",
        ),
        Key(
            "tolerance",
            Length("0 in", "1/4 in"),
            "sheets whose cuts differ by no more are cut alike, to the shortest, under one mark; 0: none",
            "0 in",
        ),
        Key(
            "longest",
            Length("8 ft", "60 ft"),
            "sheet there is; longer slopes and walls lap, fewest sheets, then even ones",
            "40 ft",
            metric="12 m",
        ),
        Key(
            "end_lap",
            Length("4 in", "24 in"),
            "of sheets up a face",
            unless="walls 4 in, roofs 6 in from 3/12 on, 12 in under it",
            example=("8 in", "200 mm"),
        ),
        Key(
            "foot_closures",
            Choice(("none", "inside")),
            "foam under the ribs at the feet of wall sheets, bought in strips",
            "none",
        ),
        Key("foot_gap", Length("0 in", "5/8 in"), "under the feet of wall sheets", "0 in"),
        Key(
            "cut_clearance",
            Length("1/16 in", "1/2 in"),
            "between an opening and the sheet cut around it",
            unless="1/8 in and the flange",
            example=("1/8 in", "4 mm"),
        ),
        Key(
            "flange",
            Length("0.012 in", "1/16 in"),
            "thickness of the trim between framing and sheet",
            "0.0217 in",
            metric="0.55 mm",
        ),
    ),
)


USUAL = "as [sheets]"
OTHER_SHEETS = (
    Key("profile", Profile(), "from the catalogue", unless=USUAL, example=PROFILES),
    Key("gauge", GaugeNumber(), "of galvanised sheet", unless=USUAL, example=("26", "26")),
    Key(
        "thickness",
        Length("0.0075 in", "0.06 in"),
        "instead of a gauge",
        unless=USUAL,
        example=("0.02 in", "0.5 mm"),
    ),
)
"""Of sheets that are other than the rest. Not said, they are as those under [sheets]."""


def _sheets_of(name: str, what: str, *more: Key) -> Table:
    """A table of sheets that are other than the rest."""
    return Table(name, f"The sheets of {what}, where they are others.", (*OTHER_SHEETS, *more))


GABLE_SHEETS = _sheets_of(
    "gable_sheets",
    "the gables",
    Key(
        "colour",
        Colour(),
        "a CSS colour name, #rrggbb or your own",
        unless="the walls'",
        example=("gainsboro",) * 2,
        also=("color",),
    ),
)
ROOF_SHEETS = _sheets_of("roof_sheets", "the roof")

LEAN_TO_SLOPES = ("lean-to slope", *(f"{wall} lean-to slope" for wall in ("left", "right", "front", "back")))
"""Roofs of lean-tos; of two each by its wall."""

LIGHT_SHEETS = Table(
    "light_sheet",
    "Sheets that let light through, in place of steel ones; in a roof each is a hole to a foot.",
    (
        Key(
            "face",
            Choice((*FACES, *LEAN_TO_SLOPES)),
            'the wall, or the slope of the roof; of a lean-to "lean-to slope"',
            example=("left slope", "left slope"),
        ),
        Key(
            "sheets",
            Numbers(),
            "which, by their numbers in the order of laying",
            unless="said by every",
            example=("3, 6", "3, 6"),
        ),
        Key(
            "every",
            Whole(2, 50),
            "every so many sheets one, never the last",
            unless="said by sheets",
            example=("3", "3"),
        ),
        Key("colour", Colour(), "of these sheets", "white", also=("color",)),
    ),
    "array",
)

WAINSCOT = Table(
    "wainscot",
    "Other sheets on the foot of the walls. Girts stand behind the seam, in place of any so near.",
    (
        Key(
            "height",
            Length("36 in", "48 in"),
            "top of slab to the seam",
            unless="no wainscot",
            example=("4 ft", "1200 mm"),
        ),
        Key("walls", Choice(tuple(WAINSCOT_WALLS)), "which walls have it", "all"),
        *OTHER_SHEETS,
        Key(
            "colour",
            Colour(),
            "a CSS colour name or #rrggbb",
            unless="the trim's",
            example=("slategray",) * 2,
        ),
    ),
)

INSULATION = Table(
    "insulation",
    "Blankets between steel and sheets, of lean-tos too: drawn pressed to 1/4 in, screws so much longer.",
    (
        Key(
            "walls",
            Length("1 in", "8 in"),
            "how thick the walls' blanket is bought",
            unless="none",
            example=("4 in", "100 mm"),
        ),
        Key(
            "roof",
            Length("1 in", "8 in"),
            "how thick the roof's blanket is bought",
            unless="none",
            example=("6 in", "150 mm"),
        ),
        Key("roll", Length("2 ft", "8 ft"), "how wide the rolls are, tabs aside", "4 ft", metric="1200 mm"),
        Key(
            "longer",
            Length("0 in", "3 ft"),
            "how much longer each is bought, to be pulled tight and tucked in",
            "6 in",
            metric="150 mm",
        ),
    ),
)

RIDGE_VENT = Table(
    "ridge_vent",
    "Vents on the ridge, over slots in its cap.",
    (
        Key(
            "places",
            Lengths("2 ft", "998 ft"),
            "where each begins, from the front",
            unless="none",
            example=("10 ft, 25 ft", "3 m, 8 m"),
        ),
        Key("length", Length("1 ft", "20 ft"), "of each", "10 ft", metric="3 m"),
    ),
)

HALF_WALL = Table(
    "half_wall",
    "Walls clad up to a height and open above, under a cap; not those that [walls] leaves open.",
    (
        Key(
            "height",
            Length("2 ft", "30 ft"),
            "top of slab to the cap over the sheets",
            unless="no half wall",
            example=("42 in", "1050 mm"),
        ),
        Key("walls", Choice(tuple(WAINSCOT_WALLS)), "which walls are", "all"),
    ),
)

SKIRT = Table(
    "skirt",
    "Walls clad in their upper part alone, open below; not those that [walls] leaves open.",
    (
        Key(
            "foot",
            Length("3 ft", "50 ft"),
            "top of slab to the drip under the sheets",
            unless="no skirt",
            example=("6 ft", "1800 mm"),
        ),
        Key("walls", Choice(tuple(WAINSCOT_WALLS)), "which walls have it", "all"),
    ),
)
