"""What else is bought: doors and windows, anchors, fittings, closures, tape, touch-up paint, concrete."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from math import ceil

from ...measure.snap import snapped
from ...roles import LIGHTS, Role
from ...units import FOOT, INCH, format_length
from ..lists.items import Item
from ..lists.schedule import Schedule
from ..lists.strips import StripLine
from .buying import Buying
from .line import BY_ENGINEER, EACH, YARD, Line
from .words import long_text

MESH_LAPS = 0.1
"""Of mesh, bought over what it covers: its laps and cuts. Common practice, no source."""
KINDS = ("walk door", "double door", "overhead door", "roll-up door", "sliding door", "window", "vent")
"""Told by the name of the opening that a leaf, a sash or a louvre stands in."""
OF = {"overhead door": "", "roll-up door": "", "sliding door": " leaf"}
"""What their size is of: overhead and roll-up doors are sold by the size of their opening, sliding ones by
that of a leaf; all others are smaller than their rough opening, by what their maker says. Common practice, no
source."""
FRAMED = ("walk door", "double door")
"""Doors that come hung in a frame. Common practice, no source."""
ROUGH: dict[str, dict[str, tuple[float, float]]] = {
    "ft-in": {**dict.fromkeys(FRAMED, (4 * INCH, 2 * INCH)), "window": (INCH / 2, INCH / 2)},
    "mm": {**dict.fromkeys(FRAMED, (100.0, 50.0)), "window": (10.0, 10.0)},
}
"""mm that a rough opening is wider and higher than the size by which what fills it is sold. Common practice,
no source; makers differ."""
HELD = (Role.RAIL, Role.GUIDE, Role.RIDGE_VENT)
"""What holds the leaves of sliding doors, and what stands on a ridge: in no opening of a wall."""
NOMINAL = {"ft-in": INCH, "mm": 10.0}
"""mm to which a leaf's size is rounded up to the opening that it is sold for."""


def opening_lines(schedule: Schedule) -> Iterator[Line]:
    """Doors and windows by the opening they fill, sliding ones by their leaves, and what those hang on;
    hardware and glass are for the buyer to say."""
    found: dict[tuple[str, str, str, str], list[Item]] = defaultdict(list)
    yield from _hung(schedule)
    for item in schedule.listed("openings"):
        if item.role not in (Role.PANE, *HELD):  # a pane is in its sash
            kind = next((kind for kind in KINDS if kind in item.opening), item.role)
            wide, high = item.standing
            size = _sold(kind, (_leaves(kind) * wide, high), schedule.units)
            found[kind, item.swing, size, item.colour].append(item)
    for (kind, swing, size, colour), items in found.items():
        count, marks = sum(item.count // _leaves(kind) for item in items), tuple(item.mark for item in items)
        told = f"{kind} with its frame" if kind in FRAMED else kind
        told = f"{told}, {swing}" if swing else told
        yield Line("openings", told, EACH, count, marks, "", colour, size, names=(kind,), count=count)


def _hung(schedule: Schedule) -> Iterator[Line]:
    """Rails of sliding doors and ridge vents by their length, and guides; what holds them comes with them."""
    unit = schedule.units
    for item in (item for item in schedule.listed("openings") if item.role in HELD):
        long = 0.0 if item.role == Role.GUIDE else item.length
        size = f"{long_text(snapped(long, 0.01), unit)} long" if long else ""
        yield Line(
            "openings",
            item.role,
            EACH,
            item.count,
            (item.mark,),
            colour=item.colour * (item.role == Role.RIDGE_VENT),
            size=size,
            count=item.count,
        )


def _leaves(kind: str) -> int:
    return 2 if kind == "double door" else 1


def _sold(kind: str, leaf: tuple[float, float], units: str) -> str:
    """The size that it is sold by, and the rough opening that it goes into; leaf: its own (mm)."""
    step = NOMINAL[units]
    rough = [ceil(snapped(size, 0.01) / step - 1e-6) * step for size in leaf]
    into = _by(rough, units) + OF.get(kind, " rough opening")
    less = ROUGH[units].get(kind)
    if less is None:
        return into
    nominal = [size - more for size, more in zip(rough, less, strict=True)]
    return f"{_by(nominal, units)} nominal, {into}" if min(nominal) > 0 else into


def _by(sizes: Sequence[float], units: str) -> str:
    return " x ".join(long_text(size, units) for size in sizes)


def anchor_lines(schedule: Schedule) -> Iterator[Line]:
    """An anchor rod for every hole in a base plate; what rod is the engineer's to say."""
    plates = [item for item in schedule.listed("members") if item.role == Role.BASE_PLATE and item.holes]
    count = sum(item.count * len(item.holes) for item in plates)
    if count:
        holes = {format_length(hole, schedule.units) for item in plates for hole in item.holes}
        unit = " mm" if schedule.units == "mm" else ""
        size = f"holes {', '.join(sorted(holes))}{unit}"
        marks = tuple(item.mark for item in plates)
        yield Line(
            "anchors",
            f"anchor rod{BY_ENGINEER}",
            EACH,
            count,
            marks,
            size=size,
            names=("anchor",),
            count=count,
        )


def brace_end_lines(schedule: Schedule) -> Iterator[Line]:
    """Two ends for every brace; what clip, nut or turnbuckle holds one is the engineer's to say."""
    braces = [item for item in schedule.listed("members") if item.role == Role.BRACE]
    count = 2 * sum(item.count for item in braces)
    if count:
        marks = tuple(item.mark for item in braces)
        kind = f"fittings of a brace's end{BY_ENGINEER}"
        yield Line("members", kind, EACH, count, marks, names=("brace end",), count=count)


def closure_lines(schedule: Schedule) -> Iterator[Line]:
    """Strips of one cover, by profile and side; what is drawn is only their pressed height."""
    kinds: dict[tuple[str, str, float], list[StripLine]] = defaultdict(list)
    for line in schedule.strips:
        rows = [row for row in schedule.rows if line.face in row.faces] or list(schedule.rows)
        profile = next((row.profile for row in rows if row.profile), "")
        cover = snapped(max((row.cover for row in rows), default=line.length), 0.01)
        kinds[line.role, profile, cover].append(line)
    for (role, profile, size), lines in kinds.items():
        count = sum(line.strips(size) for line in lines)
        faces = {line.face for line in lines}
        listed = (item for item in schedule.listed("closures") if item.role == role)
        marks = tuple(item.mark for item in listed if faces & set(item.faces) or not item.faces)
        yield Line(
            "closures",
            f"{role} strip {profile}".strip(),
            EACH,
            count,
            marks,
            size=long_text(size, schedule.units),
            names=(f"{role} strip", role, "closure strip", "closure"),
            count=count,
            length=count * size,
        )


def tape_lines(schedule: Schedule) -> Iterator[Line]:
    """Sealant tape along the roof's side laps, where the pitch asks for it, and in its end laps."""
    unit, size = ("m", 1000.0) if schedule.units == "mm" else ("ft", FOOT)
    for laps, where in ((schedule.sealed_laps, "side laps"), (schedule.sealed_ends, "end laps")):
        if laps:
            length = float(ceil(sum(snapped(lap, 0.01) for lap in laps) / size - 1e-9))
            names = ("sealant tape", "tape")
            yield Line("tape", f"sealant tape for {where}", unit, length, names=names, length=length * size)


def paint_lines(schedule: Schedule) -> Iterator[Line]:
    """A touch-up pen for every colour of sheets and trims."""
    sheets = [row.colour for row in schedule.rows if row.role not in LIGHTS]
    for colour in dict.fromkeys(sheets + [item.colour for item in schedule.listed("trims")]):
        if colour:
            yield Line("paint", "touch-up pen", EACH, 1, colour=colour, names=("paint",), count=1)


def mesh_lines(schedule: Schedule) -> Iterator[Line]:
    """The mesh that was asked for, over the whole slab; its laps are in what it is bought by."""
    items = schedule.listed("slab")
    area = sum(item.count * item.plan for item in items)
    if schedule.terms.mesh and area:
        unit, size = ("m2", 1e6) if schedule.units == "mm" else ("ft2", FOOT**2)
        drawn = snapped(area / size, 0.01)
        bought = ceil(drawn * (1 + MESH_LAPS) - 1e-9)
        marks = tuple(item.mark for item in items)
        said = f"{schedule.terms.mesh}, {drawn:.0f} {unit} covered, {MESH_LAPS:.0%} for laps and cuts"
        yield Line("slab", "mesh", unit, bought, marks, size=said, names=("mesh",), area=bought * size)


def concrete_lines(schedule: Schedule, buying: Buying) -> Iterator[Line]:
    """The slab with its waste, rounded up to the quarter that a truck is filled to."""
    items = schedule.listed("slab")
    volume = sum(item.count * item.volume for item in items)
    if volume:
        metric = schedule.units == "mm"
        unit, size, quarter = ("m3", 1e9, "0.25 m3") if metric else ("yd3", YARD**3, "1/4 yd3")
        drawn = snapped(volume / size, 0.01)
        bought = ceil(drawn * (1 + buying.waste) * 4 - 1e-9) / 4
        said = f"{drawn:.2f} {unit} drawn, {buying.waste:.0%} waste, rounded up to {quarter}"
        marks = tuple(item.mark for item in items)
        yield Line("slab", "concrete", unit, bought, marks, size=said, volume=bought * size)
