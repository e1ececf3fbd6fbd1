"""Whether openings, posts and lines fit the steel: checks that need the steel's own numbers."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations, pairwise

from ..units import format_length
from .building import Building, Opening
from .positions import Path
from .steel_lines import SteelLines

Objection = tuple[Path, str]

TOUCH = 0.8
"""mm; limits are said to the 1/16 in, and whoever types what was said is right though it was rounded."""

ROOM_UNDER_STRUT = 304.8
"""mm; wall left between base rail and eave strut (1 ft), or there is no wall to frame. Ours."""


def misfits(building: Building) -> Iterator[Objection]:
    """Every place where the description and its steel do not go together, with what would do."""
    lines = SteelLines(building)
    yield from _bays(lines)
    if least := _low_eave(lines):
        yield least
        return
    yield from _knees(lines)
    yield from _rake_angle(lines)
    yield from _flush(lines)
    yield from _posts(lines)
    for number, opening in enumerate(building.openings):
        yield from _beside_uprights(lines, number, opening)
        yield from _under_lines(lines, number, opening)
    yield from _jambs_apart(lines)


def _said(lines: SteelLines, mm: float) -> str:
    units = lines.building.units
    return format_length(mm, units) + (" mm" if units == "mm" else "")


def _bays(lines: SteelLines) -> Iterator[Objection]:
    building = lines.building
    ends = building.frame.column.width + lines.setback
    stations = (0.0, *building.frame.stations, building.length)
    bays = [b - a for a, b in pairwise(stations)]
    if min(bays) < 2 * ends:
        whole, least = _said(lines, building.length), _said(lines, 2 * ends)
        yield ("frame", "bays"), f"bays that add up to the length, {whole}, none under {least}"


def _low_eave(lines: SteelLines) -> Objection | None:
    """The eave must leave some wall between base rail and strut, and a column under the rafter."""
    building = lines.building
    least = building.framing.base_rail.depth + building.framing.eave_strut.depth + ROOM_UNDER_STRUT
    inner = lines.setback + building.frame.column.depth
    corner = lines.roof(inner, lines.rafter_under) - building.frame.plate_thickness
    least = max(least, building.eave_height - corner + ROOM_UNDER_STRUT)
    if building.eave_height < least - TOUCH:
        return ("eave_height",), f"at least {_said(lines, least)} over this steel"
    if building.width / 2 < inner + building.frame.knee_reach:
        return ("width",), f"at least {_said(lines, 2 * (inner + building.frame.knee_reach))} over this steel"
    return None


def _knees(lines: SteelLines) -> Iterator[Objection]:
    building = lines.building
    inner = lines.setback + building.frame.column.depth
    most = lines.roof(inner, lines.rafter_under) - building.frame.plate_thickness
    if building.frame.knee and building.frame.knee_reach > most - ROOM_UNDER_STRUT / 2:
        yield ("frame", "knee_reach"), f"at most {_said(lines, most - ROOM_UNDER_STRUT / 2)} on these columns"


def _rake_angle(lines: SteelLines) -> Iterator[Objection]:
    """One leg closes the purlins' ends, the other turns in under them, before the end rafters."""
    framing = lines.building.framing
    least, rake = framing.purlin.depth + framing.rake_angle.thickness, framing.rake_angle
    if lines.setback and (rake.depth < least - TOUCH or rake.width > lines.setback + TOUCH):
        yield (
            ("framing", "rake_angle"),
            f"an angle, at least {_said(lines, least)} up, at most {_said(lines, lines.setback)} across",
        )


def _flush(lines: SteelLines) -> Iterator[Objection]:
    """Between columns nothing is deeper than they are, or two walls' members meet inside the corner."""
    if lines.setback:
        return
    column, framing = lines.building.frame.column, lines.building.framing
    most = min(column.depth, column.width)
    for key, shape in (("girt", framing.girt), ("jamb", framing.jamb), ("header", framing.header)):
        if shape.depth > most + TOUCH:
            yield ("framing", key), f"between the columns a section of at most {_said(lines, most)} deep"


def _posts(lines: SteelLines) -> Iterator[Objection]:
    """Posts stand between the knees of the end frames, clear of each other."""
    building, frame = lines.building, lines.building.frame
    half = frame.post.width / 2 + frame.plate_reach
    least = lines.post_room
    for key, posts in (("front_posts", frame.front_posts), ("back_posts", frame.back_posts)):
        for u in posts:
            if not least - TOUCH <= u <= building.width - least + TOUCH:
                most = building.width - least
                room = f"posts between {_said(lines, least)} and {_said(lines, most)}"
                where = room if most >= least else '"none" on a gable this narrow'
                yield ("frame", key), f"{where}, clear of columns and knees"
                break
        if any(b - a < 2 * half for a, b in pairwise(posts)):
            yield ("frame", key), f"posts at least {_said(lines, 2 * half)} apart"


def _beside_uprights(lines: SteelLines, number: int, opening: Opening) -> Iterator[Objection]:
    """No column stands in an opening, nor its jambs in a corner."""
    building = lines.building
    start, end = opening.from_left, opening.from_left + opening.width
    # Jambs that reach in as far as the columns must clear them, and on the slab their base plates.
    deep = building.framing.jamb.depth > lines.setback
    room = building.framing.jamb.width if deep else 0.0
    room += 2 * building.frame.plate_reach if deep and lines.setback and opening.sill == 0 else 0.0
    stubs = {u for u, foot in lines.standing_posts(opening.wall) if foot is not None}
    uprights = [(u, half) for u, half in lines.uprights(opening.wall) if u not in stubs]
    if opening.wall in ("front", "back"):
        knee = lines.knee_reach(lines.jamb_reach(opening)[1] or lines.building.eave_height * 2) / 2
        if not lines.setback and opening.sill == 0:
            knee = max(knee, building.frame.column.depth / 2 + building.frame.plate_reach)
        uprights += [(knee, knee), (building.width - knee, knee)] if knee else []
    for u, half in uprights:
        if start - room < u + half - TOUCH and u - half + TOUCH < end + room:
            left, right = u - half - room, u + half + room
            before = f"at most {_said(lines, most)} or " if (most := left - opening.width) > 0 else ""
            yield (
                ("opening", number, "from_left"),
                f"an opening clear of the column from {_said(lines, u - half)} to {_said(lines, u + half)}: "
                f"{before}at least {_said(lines, right)}",
            )
            return


def _under_lines(lines: SteelLines, number: int, opening: Opening) -> Iterator[Objection]:
    """Header and sill fit under strut or rake and over the base rail."""
    framing = lines.building.framing
    if opening.wall in ("left", "right"):
        roof = lines.strut_foot
        what = "eave strut"
    else:
        limit = max(lines.rake_limit(framing.jamb.depth), lines.rake_limit(framing.header.depth))
        roof = min(lines.roof(u, limit) for u in lines.jamb_span(opening))
        what = "rake angle"
    most = roof - framing.header.width - opening.sill
    if opening.height > most + TOUCH:
        remedy = f"at most {_said(lines, max(most, 0.0))}: its header must pass under the {what}"
        yield ("opening", number, "height"), remedy
    least = framing.base_rail.depth + framing.sill.width
    if 0 < opening.sill < least - TOUCH:
        yield (
            ("opening", number, "sill"),
            f"0, or at least {_said(lines, least)}: its sill stands on the base rail",
        )


def _jambs_apart(lines: SteelLines) -> Iterator[Objection]:
    """Openings of a wall stand side by side with room for both their jambs, not above each other."""
    for (_, one), (second, other) in combinations(enumerate(lines.building.openings), 2):
        if one.wall != other.wall:
            continue
        a, b = lines.jamb_span(one)
        c, d = lines.jamb_span(other)
        if a < d - TOUCH and c < b - TOUCH:
            jamb = lines.building.framing.jamb.width
            right, left = b + jamb, a - jamb - other.width
            before = f"at most {_said(lines, left)} or " if left > 0 else ""
            yield (
                ("opening", second, "from_left"),
                "beside the wall's other opening with room for two jambs: "
                f"{before}at least {_said(lines, right)}",
            )
