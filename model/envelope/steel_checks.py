"""Whether the steel of a building goes together: frames, the lines between them, their sizes."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from math import floor, inf

from ..catalog.sections import SectionShape
from ..description.reading.positions import Path
from ..description.said_limits import at_least, at_most, exactly, over, under
from .edges import Edge
from .face import Face
from .nest_checks import nest_misfits
from .pitch_break import BREAKS
from .skin_lines import SCREW_EDGE, inside_wall
from .steel_lines import SteelLines

Objection = tuple[Path, str]

ROOM_UNDER_STRUT = 304.8
"""mm; wall left between base rail and eave strut (1 ft), or there is no wall to frame. Ours."""

HOLES_ACROSS = 3
"""Diameters of an anchor hole that a plate with two of them side by side is wide at least. Ours."""


def steel_misfits(lines: SteelLines, even_bays: bool) -> Iterator[Objection]:
    """Every place where members do not go together, with what would do."""
    yield from _bays(lines, even_bays)
    small = list(_too_small(lines))
    yield from small
    if small:
        return
    yield from _knees(lines)
    yield from _rake_angle(lines)
    yield from _high_eave(lines)
    yield from _depths(lines)
    yield from _anchor_holes(lines)
    yield from _girt_heights(lines)
    yield from _girt_spacing(lines)
    yield from _purlin_spacing(lines)
    yield from nest_misfits(lines)


def _bays(lines: SteelLines, even: bool) -> Iterator[Objection]:
    """Frames stand clear of each other, and so do their base plates."""
    building, frame, units = lines.building, lines.building.frame, lines.building.units
    stations = (0.0, *frame.stations, building.length)
    bays, least = [b - a for a, b in pairwise(stations)], least_bay(lines)
    if not under(min(bays), least):
        return
    if even:
        spacing = building.length / max(1, floor(building.length / least))
        yield ("frame", "spacing"), f"at least {at_least(spacing, units)} with these columns"
    else:
        whole = exactly(building.length, units)
        yield (
            ("frame", "bays"),
            f"bays that add up to the length, {whole}, none under {at_least(least, units)}",
        )


def least_bay(lines: SteelLines) -> float:
    """The shortest bay in which frames and base plates stand clear of each other."""
    least = 2 * (2 * lines.frame_half + lines.setback)
    if lines.setback:
        least = max(least, lines.setback + 3 * (lines.frame_half + lines.building.frame.plate_reach))
    return least


def _too_small(lines: SteelLines) -> Iterator[Objection]:
    """The eave must leave some wall between base rail and strut, and a column under the rafter; the width
    two columns and their knees."""
    building, framing = lines.building, lines.building.framing
    least = framing.base_rail.depth + framing.eave_strut.depth + ROOM_UNDER_STRUT
    eave = lines.low_eave
    corner = lines.rafter_foot(eave) - building.frame.plate_thickness
    least = max(least, eave.height - corner + ROOM_UNDER_STRUT)
    if under(eave.height, least):
        yield ("eave_height",), f"at least {at_least(least, building.units)} over this steel"
    elif under(building.width, 2 * lines.knee_room):
        yield ("width",), f"at least {at_least(2 * lines.knee_room, building.units)} over this steel"


def _knees(lines: SteelLines) -> Iterator[Objection]:
    building, frame = lines.building, lines.building.frame
    if not frame.knee:
        return
    foot = lines.rafter_foot(lines.low_eave) - frame.plate_thickness
    most = foot - max(ROOM_UNDER_STRUT / 2, frame.knee.depth)
    if over(frame.knee_reach, most):
        yield ("frame", "knee_reach"), f"at most {at_most(most, building.units)} on these columns"
    low = [one for one in lines.slopes if one.named(Edge.EAVE) and one.named(Edge.RIDGE, *BREAKS)]
    runs = [lines.slope_length(one) * one.sides[0].level for one in low]
    room = min(runs, default=inf) - (lines.knee_room - frame.knee_reach)
    if room <= 0:
        yield ("frame", "knee"), '"none": under the shorter slope is no room for one'
    elif over(frame.knee_reach, room):
        yield ("frame", "knee_reach"), f"at most {at_most(room, building.units)}, under the shorter slope"


def _rake_angle(lines: SteelLines) -> Iterator[Objection]:
    """One leg closes the purlins' ends, the other turns in under them, before the end rafters."""
    framing, units = lines.building.framing, lines.building.units
    least, rake = framing.roof_depth + framing.rake_angle.thickness, framing.rake_angle
    if lines.setback and (under(rake.depth, least) or over(rake.width, lines.setback)):
        yield (
            ("framing", "rake_angle"),
            f"an angle, at least {at_least(least, units)} up, at most {at_most(lines.setback, units)} across",
        )


def _high_eave(lines: SteelLines) -> Iterator[Objection]:
    """A strut's flange at a high eave reaches far enough down the roof to take its screws, which stand so far
    in that none comes out of the wall."""
    building, strut = lines.building, lines.building.framing.eave_strut
    steepest = max((-eave.rise for eave in lines.eaves.values()), default=0.0)
    bend = strut.thickness + strut.radius if strut.radius else 0.0
    least = inside_wall(building, steepest) + bend + SCREW_EDGE
    if steepest > 0 and over(least, strut.width):
        where = "at the high eave the roof's screws come out of the wall"
        size = f"a section at least {at_least(least, building.units)} wide"
        yield ("framing", "eave_strut"), f"{size}, or a roof less steep: {where}"


def _depths(lines: SteelLines) -> Iterator[Objection]:
    """Nothing in a wall is deeper than its girts and columns, or two walls' members meet in the corner."""
    column, framing, units = lines.building.frame.column, lines.building.framing, lines.building.units
    between = min(column.depth, column.width)
    most = lines.setback + between
    named: list[tuple[str, SectionShape]] = [("jamb", framing.jamb), ("header", framing.header)]
    named += [("sill", framing.sill)] if any(o.sill > 0 for o in lines.building.openings) else []
    if lines.setback:
        if over(framing.base_rail.width, lines.setback):
            # Behind the girts stand the columns on their base plates.
            remedy = f"an angle of at most {at_most(lines.setback, units)} across, the girts' depth"
            yield ("framing", "base_rail"), remedy
        where = "inside the columns"
    else:
        named = [("girt", framing.girt), *named]
        where = "between the columns"
        if over(framing.base_rail.width, most):
            remedy = f"between the columns an angle of at most {at_most(most, units)} across"
            yield ("framing", "base_rail"), remedy
    for key, shape in named:
        if over(shape.depth, most):
            yield ("framing", key), f"{where} a section of at most {at_most(most, units)} deep"


def _anchor_holes(lines: SteelLines) -> Iterator[Objection]:
    """Base plates are as wide as their uprights, with two holes side by side."""
    frame, units = lines.building.frame, lines.building.units
    standing = [("column", frame.column)]
    if any(lines.standing_posts(wall) for wall in lines.walls):
        standing.append(("post", frame.post))
    for key, shape in standing:
        across = shape.depth if lines.setback else shape.width
        if under(across, least := HOLES_ACROSS * frame.anchor_hole):
            which = "deep" if lines.setback else "wide"
            yield (
                ("frame", key),
                f"a section at least {at_least(least, units)} {which}: two anchor holes of "
                f"{exactly(frame.anchor_hole, units)} go side by side through its base plate",
            )


def _girt_heights(lines: SteelLines) -> Iterator[Objection]:
    """Stated girts lie over the base rail, apart from each other, where a wall can hold them."""
    framing, units = lines.building.framing, lines.building.units
    heights, path = framing.girt_heights, ("framing", "girt_heights")
    if not heights:
        return
    girt = framing.girt.width
    lowest = framing.base_rail.depth + girt / 2
    if under(heights[0], lowest):
        yield path, f"the lowest at {at_least(lowest, units)} or more, over the base rail"
    if any(under(b - a, girt) for a, b in pairwise(heights)):
        yield path, f"girts at least {at_least(girt, units)} apart, as wide as they are"
    stated = [v for v in heights if not lines.behind_seam(v)]
    lost = [v for v in stated if v not in lines.side_girts and v not in lines.gable_girts]
    if lost:
        top, peak = lines.strut_foot(lines.low_eave) - girt / 2, lines.highest_girt
        over_walls = max((v for v in heights if v in lines.side_girts), default=0.0) + girt
        gables = (
            f", or from {at_least(max(over_walls, top), units)} to {at_most(peak, units)} on the gables alone"
            if peak > max(over_walls, top)
            else ""
        )
        yield path, f"girts no higher than {at_most(top, units)}, under the eave strut{gables}"


def _girt_spacing(lines: SteelLines) -> Iterator[Objection]:
    """Girts at a spacing are apart from each other and from the base rail."""
    building, framing = lines.building, lines.building.framing
    if framing.girt_heights:
        return
    girt = framing.girt.width
    first = framing.base_rail.depth / 2
    eave = lines.low_eave.height
    behind = [group.girts for group in lines.girts_of_ends if group.low == group.high]
    steep = lines.gable_peak - eave
    stops = [(first, first), *_stops(lines), (eave, eave)]
    beside = girt + max((girts[-1] - girts[0] for girts in behind), default=0.0)
    least = max(_spacing(b - a, max(beside, first + girt / 2)) for (_, a), (b, _) in pairwise(stops))
    least = max(least, _spacing(steep, girt)) if steep > 0 else least
    pairs = [pair for v in (lines.side_girts, lines.gable_girts) for pair in pairwise((first, *v))]
    clashing = [b - a for a, b in pairs if (a, b) not in behind]
    if clashing and (under(min(clashing), girt) or _on_rail(lines)):
        yield (
            ("framing", "girt_spacing"),
            f"at least {at_least(least, building.units)} with girts this wide",
        )


def _stops(lines: SteelLines) -> Iterator[tuple[float, float]]:
    """Between which heights girts behind sheets' ends stand in for those at a spacing."""
    for group in lines.girts_of_ends:
        middle = sum(group.girts) / len(group.girts)
        yield (middle, middle) if group.low == group.high else (group.low, group.high)


def _on_rail(lines: SteelLines) -> bool:
    framing = lines.building.framing
    lowest = framing.base_rail.depth + framing.girt.width / 2
    return any(under(v, lowest) for v in lines.gable_girts)


def _purlin_spacing(lines: SteelLines) -> Iterator[Objection]:
    """Purlins are apart from each other and from the eave strut."""
    for slope in lines.slopes:
        found = list(_purlins_of(lines, slope))
        yield from found
        if found:
            return


def _purlins_of(lines: SteelLines, slope: Face) -> Iterator[Objection]:
    building, purlin, strut = lines.building, lines.building.framing.purlin, lines.building.framing.eave_strut
    purlins = lines.purlins(slope)
    if not purlins:  # a slope so short needs none between its strut and what carries its head
        return
    first, last = strut.width / 2, purlins[-1]
    beside = (strut.width + purlin.width) / 2
    if slope.sides[0].kind in BREAKS:
        first, beside, purlins = purlins[0], purlin.width, purlins[1:]
    if under(last - first, beside):
        least = lines.slope_length(slope) - last + first + beside
        if building.roof.break_at is not None:
            yield from _purlins_at_break(lines, slope, least)
            return
        least *= 2 * slope.sides[0].level
        yield ("width",), f"at least {at_least(least, building.units)} over this steel"
    elif under(purlins[0] - first, beside) or any(under(b - a, purlin.width) for a, b in pairwise(purlins)):
        least = _spacing(last - first, max(beside, purlin.width))
        yield (
            ("framing", "purlin_spacing"),
            f"at least {at_least(least, building.units)} with purlins this wide",
        )


def _purlins_at_break(lines: SteelLines, slope: Face, least: float) -> Iterator[Objection]:
    """A break leaves either slope that length for its purlins."""
    building, run = lines.building, least * slope.sides[0].level
    if slope.sides[0].kind in BREAKS:
        remedy = f"at most {at_most(building.width / 2 - run, building.units)}"
    else:
        remedy = f"at least {at_least(run, building.units)}"
    yield ("roof", "break_at"), f"{remedy} over this steel"


def _spacing(whole: float, least: float) -> float:
    """The least spacing asked for at which even divisions of a whole are none under `least`."""
    return whole / max(1, floor(whole / least + 1e-9))
