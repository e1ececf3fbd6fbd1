"""Along which framing lines the sheets of a face are screwed: the middle of the flange on the steel line."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import shapely
from shapely.geometry import LineString

from ...description.opening import Opening
from ...envelope.face import Face
from ...envelope.headwall import headwall_of
from ...envelope.skin_lines import DEEP, PAST_BEND, head_angle, inside_wall, over_shelf
from ...envelope.sliding import Rail, rails, rails_of
from ...envelope.splices import SPLICE
from ...place import Point2
from ...roles import Role
from ..skin.outside_closures import eave_band, ledger_row
from ..trim.trim_lines import TrimLines
from .screw_kinds import CLEAR, EDGE, INCH, SHANK
from .steel_contact import Wall

HEAD_LINE = 63.5
"""mm; the head screws of a side wall, below the eave (2 1/2 in): under the eave trim's drop, clear of the
closure. Common practice, no source."""

ACROSS = (Role.BASE_RAIL, Role.GIRT, Role.PURLIN)

HAIR = 0.01
"""mm past the nearest that a row may stand to an edge, so that no rounding puts it over."""


@dataclass(frozen=True, slots=True)
class ScrewLine:
    """A straight line in (u, v) on a face: v = at + rise * (u - left) from left to right."""

    at: float
    left: float
    right: float
    rise: float = 0.0

    def height(self, u: float) -> float | None:
        """v of the line over u; None beside it."""
        if not self.left <= u <= self.right:
            return None
        return self.at + self.rise * (u - self.left)


def screw_lines(lines: TrimLines, face: Face, behind: Sequence[Wall]) -> list[ScrewLine]:
    """Every framing line of a face that its sheets are fastened to. behind: the steel's walls on it."""
    if face.open:
        return []
    found = list(_rows(lines, face, behind))
    if not face.half:
        found += _eave_line(lines, face, behind)
    if face.raked and not face.half:
        found += _rake_lines(lines, face)
    for opening in face.openings:
        found += _beside(lines, face, opening, behind)
    return found


def clear_of(wanted: float, span: Point2, bars: Sequence[Point2]) -> float:
    """The place nearest to the wanted one within a span and outside all bars; the wanted one if none is."""
    ends = [wanted, *span, *(end for bar in bars for end in bar)]
    free = [
        x
        for x in ends
        if span[0] <= x <= span[1] and not any(low + 1e-9 < x < high - 1e-9 for low, high in bars)
    ]
    return min(free, key=lambda x: abs(x - wanted), default=wanted)


def edge_bar(at: float, lean: float = 0.0) -> Point2:
    """Where no screw stands beside the upper edge of a flange: within its 1.5 diameters, or half off it.
    lean: how much higher the edge may stand where pieces lap."""
    return (at - EDGE - HAIR, at + lean + SHANK + INCH / 8 + HAIR)


def _rows(lines: TrimLines, face: Face, behind: Sequence[Wall]) -> Iterator[ScrewLine]:
    """Base rails, girts and purlins: pieces of one height are one row where steel lies between them."""
    spans: dict[float, list[Point2]] = {}
    steel = [wall for _, wall in behind]
    for part, wall in behind:
        if part.role in ACROSS and part.label("face") == face.name:
            _, low, _, high = wall.bounds
            # The feet of the sheets may hang over a base rail's lower edge.
            foot = lines.foot + HAIR if part.role is Role.BASE_RAIL else low
            span = (max(low, foot) + EDGE, high - EDGE)
            for at in _heights(lines, face, part.role, (low, high), span):
                whole = LineString([(wall.bounds[0], at), (wall.bounds[2], at)])
                left, _, right, _ = wall.intersection(whole).bounds
                spans.setdefault(round(at, 3), []).append((left, right))
    over = {round(rail.seam.rows[1], 3): rail.cover for rail in rails_of(lines.building, face.name)}
    for at, found in spans.items():
        # Feet over a rail's cover have their row there alone.
        pieces = _within(found, over[at]) if at in over else found
        left, right = min(pieces)
        for a, b in sorted(pieces)[1:]:
            if a - right < SPLICE + HAIR or shapely.intersects_xy(steel, (right + a) / 2, at).any():
                right = b
                continue
            yield ScrewLine(at, left, right)
            left, right = a, b
        yield ScrewLine(at, left, right)


def _within(pieces: Sequence[Point2], span: Point2) -> list[Point2]:
    """What of pieces lies within a span."""
    cut = ((max(left, span[0]), min(right, span[1])) for left, right in pieces)
    return [(left, right) for left, right in cut if right > left]


def _heights(lines: TrimLines, face: Face, role: Role, flange: Point2, span: Point2) -> list[float]:
    """Where on a flange rows stand: those of a seam, or one in its middle, within a span of v."""
    if role is Role.GIRT and face.hung and flange[0] <= face.hung.girt <= flange[1]:
        leg = face.hung.shelf + lines.profile("drip").in_plane
        return [face.hung.row if face.hung.flashed else _through_leg(lines, face.hung.row, span, leg)]
    if role is Role.GIRT and face.half and flange[0] <= face.half.row <= flange[1]:
        return [face.half.row]
    headwall = headwall_of(lines.building, face.name)
    own = headwall.rows if headwall and role is Role.GIRT else ()
    if rows := [v for v in own if flange[0] <= v <= flange[1]]:
        return rows
    seam = lines.steel.seam
    if seam and role is Role.GIRT and (rows := [v for v in seam.rows if flange[0] <= v <= flange[1]]):
        # Whole sheets that run past a seam's girts are screwed to the lower one.
        return rows if face.tiered else [v for v in rows if v == seam.rows[0]]
    behind = [rail for rail in rails(lines.building) if role is Role.GIRT]
    if any(flange[0] <= row <= flange[1] for rail in behind for row in rail.seam.rows):
        return _at_rails(lines, face, behind, flange)
    return [_in_the_middle(lines, face, role, flange, span)]


def _in_the_middle(lines: TrimLines, face: Face, role: Role, flange: Point2, span: Point2) -> float:
    """Where the one row on a flange stands: in its middle or, within a span of v, as near as may be; through
    the base trim on a rail, clear of the foam under the ridge cap on a purlin."""
    middle, head = sum(flange) / 2, face.upper.head
    if role is Role.BASE_RAIL:
        return _through_leg(lines, middle, span, lines.bottom + lines.base_leg)
    if role is not Role.PURLIN:
        return clear_of(middle, span, [])
    if nest := lines.steel.nest:
        middle = min(lines.steel.purlin_rows(face), key=lambda row: abs(row - middle))
        span = (middle - nest.flat / 2, middle + nest.flat / 2)
    return clear_of(middle, span, [(head - 1.5 * DEEP - CLEAR, head + DEEP)])


def _through_leg(lines: TrimLines, wanted: float, span: Point2, leg: float) -> float:
    """The place nearest to the wanted one where a row at the sheets' feet also holds the trim under them,
    whose leg stands behind them up to a height; clear of its edge over it where steel begins too high."""
    if span[0] <= (most := leg - EDGE - HAIR):
        return clear_of(wanted, (span[0], min(span[1], most)), [])
    return clear_of(wanted, span, [edge_bar(leg, lines.lap_room)])


def _at_rails(lines: TrimLines, face: Face, behind: Sequence[Rail], flange: Point2) -> list[float]:
    """Rows on a girt over sliding doors: of the heads under their covers, on all walls and along all of them;
    of the feet over them."""
    heads = [rail.seam.rows[0] for rail in behind]
    feet = [rail.seam.rows[1] for rail in rails_of(lines.building, face.name)]
    return sorted({v for v in (*heads, *feet) if flange[0] <= v <= flange[1]})


def _eave_line(lines: TrimLines, face: Face, behind: Sequence[Wall]) -> Iterator[ScrewLine]:
    """Along the eave strut: on a slope the middle of its flange, on a wall under the eave trim's drop."""
    if any(part.role is Role.LEDGER for part, _ in behind) and face.sloped:
        yield ScrewLine(ledger_row(lines, face), 0.0, face.width)
    for left, low, right, high in (wall.bounds for part, wall in behind if part.role is Role.EAVE_STRUT):
        if face.sloped:
            near, far = edge_bar(lines.profile("eave").in_plane / face.sides[0].level)
            length, middle = lines.steel.slope_length(face), (low + high) / 2
            if middle < length / 2:
                bars = [(near, far)]
            else:
                inside = inside_wall(lines.building, face.sides[2].rise)
                bars = [(length - far, length - near), (length - inside, length)]
            at = clear_of(middle, (low + EDGE, high - EDGE), bars)
        elif (eave := lines.steel.eaves.get(face.name)) and (band := eave_band(lines, face)):
            drop = eave.height - lines.head(face) * eave.rise - lines.eave_drop(eave)
            bars = [(band[0] - CLEAR, eave.height), (drop - CLEAR, drop + CLEAR)]
            at = clear_of(eave.height - HEAD_LINE, (low + EDGE, high - EDGE), bars)
        else:
            continue
        yield ScrewLine(at, left, right)


def _rake_lines(lines: TrimLines, face: Face) -> Iterator[ScrewLine]:
    """Along both rakes, in the middle of the rake angle's leg, clear of the rake trim's drop."""
    steel = lines.steel
    (high, low), j = steel.rake_back, lines.profile("j")
    if steel.run_on:
        # Through the flange of the J at the heads, past its lip.
        span = (high + lines.lap_room + j.out_of_plane + CLEAR, min(low, high + j.in_plane) - EDGE)
        bars = []
    else:
        drop = lines.rake_drop(face)
        span, bars = (lines.head_clearance + EDGE, low - EDGE), [(drop - CLEAR, drop + CLEAR)]
    deep = clear_of((high + low) / 2, span, bars)
    line = face.top.lowered(deep)
    for (u0, v0), (u1, v1) in face.raking:
        middle, rise = (u0 + u1) / 2, (v1 - v0) / (u1 - u0)
        yield ScrewLine(line.height(middle) - (middle - u0) * rise, u0, u1, rise)


def _beside(lines: TrimLines, face: Face, opening: Opening, behind: Sequence[Wall]) -> Iterator[ScrewLine]:
    """Over an opening's head and under its sill, on their flanges, clear of the trim's lip."""
    left, right = opening.from_left, opening.from_left + opening.width
    top, cut = opening.sill + opening.height, lines.building.sheets.cut_clearance
    j, over = lines.profile("j"), head_angle(lines.building, opening)
    foot = over + over_shelf(lines.building)
    header = (foot + EDGE + HAIR, over + lines.profile("drip").in_plane)
    sill = (max(EDGE + HAIR + cut, j.out_of_plane + CLEAR), j.in_plane)
    for part, wall in behind:
        if part.role not in (Role.HEADER, Role.SILL) or not part.group[-1].endswith(_name(face, opening)):
            continue
        over_head = part.role is Role.HEADER
        sign, edge, (least, flange) = (1.0, top, header) if over_head else (-1.0, opening.sill, sill)
        low, high = sorted(sign * (v - edge) for v in wall.bounds[1::2])
        # The flat ends where a bend begins: past it the flange goes on by the bend's radius.
        shape = lines.building.framing.header if over_head else lines.building.framing.sill
        bend = max(radius for _, _, radius in shape.section().outer)
        most = high - max(EDGE - bend, PAST_BEND)
        at = clear_of((low + high) / 2, (least, most), [edge_bar(flange)])
        yield ScrewLine(edge + sign * at, left, right)


def _name(face: Face, opening: Opening) -> str:
    return f"{face.name} {opening.kind} {face.openings.index(opening) + 1}"
