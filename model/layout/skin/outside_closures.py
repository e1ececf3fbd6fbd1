"""Outside closures, foam cut to the ribs over sheets: at the heads of walls, under the roof's cap."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

from ...envelope.edges import Edge
from ...envelope.face import Face, Region
from ...envelope.roof_lines import Eave
from ...envelope.sheet_runs import Lay, laid
from ...envelope.skin_lines import DEEP, FOAM, SCREW_EDGE, heads_fall, plane
from ...envelope.sliding import rail_back, rails_of
from ...envelope.stretches import remaining
from ...envelope.top_line import TopLine
from ...place import Place, Point2
from ...recipe import Part, Sheet, grid
from ...roles import Role
from ..screws.screw_kinds import CLEAR
from ..trim.tier_trims import beside, covered, crossed_by, legs_over, under_lips
from ..trim.trim_lines import TrimLines
from .cladding import courses_of
from .foam import EDGE, flat, foam_part, stretch
from .ribs import Graph, graphs, height_at

THIN = 4.0
"""mm; a narrower hollow beside an edge is tape's to close. Ours."""


def head_closures(lines: TrimLines, face: Face, eave: Eave) -> Iterator[Part]:
    """Outside closures on a side wall: from the sheets out to the corner trim's plane, one a sheet."""
    fall = heads_fall(lines.building, face.skin, eave.rise)
    heads, top = TopLine(face.upper.clad[:1:-1]), lines.side - plane(lines.building.sheets, face.skin)
    for lay, (least, most) in laid(lines.steel, face, face.upper):
        start, end = (min(max(u, 0.0, least), face.width, most) for u in lay.reach(face.skin.profile))
        head = min(heads.height(start), heads.height(end)) - fall
        row = _Row(lines, face, face.upper, (head - DEEP, head))
        yield from _over(row, lay, top, (max(0.0, least), min(face.width, most)))


def foam_band(lines: TrimLines, face: Face) -> Point2 | None:
    """Heights between which the closures over a wainscot's heads lie: behind the front leg of the trim there,
    under the row of screws. None on a wall of one tier."""
    seam = lines.steel.seam
    if seam is None or not face.tiered:
        return None
    top = seam.rows[0] - CLEAR
    return top - DEEP, top


def eave_band(lines: TrimLines, face: Face) -> Point2 | None:
    """Heights between which the closures over a side wall's heads lie, and what is over them. None on a wall
    without an eave, or without sheets."""
    eave = lines.steel.eaves.get(face.name)
    if eave is None or face.open_above:
        return None
    fall = heads_fall(lines.building, face.skin, eave.rise)
    return face.upper.head - fall - DEEP, eave.height


def seam_closures(lines: TrimLines, face: Face) -> Iterator[Part]:
    """Outside closures over a wainscot's sheets, out to the tier trim, and to the upright trims at its ends,
    between the openings and open bays that its seam runs into."""
    band = foam_band(lines, face)
    if band is None:
        return
    row = _Row(lines, face, face.regions[0], band)
    flange = plane(lines.building.sheets, row.region.skin)
    lip = lines.crown(face) + lines.thickness
    legs = [(covered(leg), inner) for leg, inner in legs_over(lines, face)]
    taken = [*(beside(lines, opening) for opening in crossed_by(lines, face)), *face.gaps]
    free = remaining((0.0, face.width), [*taken, *(within for within, _ in legs)])
    for column, (least, most) in laid(lines.steel, face, row.region):
        for number, (start, end) in enumerate(free, 1):
            within = (max(start, least), min(end, most))
            yield from _over(row, column, lines.seam - flange, within, f" {number}" if taken else "")
        for number, (within, inner) in enumerate(legs, 1):
            yield from _hollows(row, column, inner - flange, within, f"leg {number}")
        for number, within in enumerate(under_lips(lines, face), 1):
            yield from _hollows(row, column, lip - flange, within, f"lip {number}")


def rail_closures(lines: TrimLines, face: Face) -> Iterator[Part]:
    """Outside closures over the heads under the covers of sliding doors, out to their rails."""
    for rail in rails_of(lines.building, face.name):
        top = rail.seam.rows[0] - CLEAR
        row = _Row(lines, face, face.upper, (top - DEEP, top))
        out = rail_back(lines.building, face) - plane(lines.building.sheets, face.upper.skin)
        for column, (least, most) in laid(lines.steel, face, row.region):
            within = (max(rail.span[0], least), min(rail.span[1], most))
            yield from _over(row, column, out, within, f" rail {rail.number}")


def half_closures(lines: TrimLines, face: Face) -> Iterator[Part]:
    """Outside closures over a half wall's sheets, out to the front leg of its cap, and at its ends, as far as
    sheets reach past them, out to the corner trims there."""
    if face.half is None:
        return
    top = face.half.row - CLEAR
    row = _Row(lines, face, face.upper, (top - DEEP, top))
    flange = plane(lines.building.sheets, row.region.skin)
    legs = [(covered(leg), inner) for leg, inner in legs_over(lines, face)]
    free = remaining((0.0, face.width), [within for within, _ in legs])
    (first, last), ends = row.region.span, (free[0][0], free[-1][1])
    for column, (least, most) in laid(lines.steel, face, row.region):
        for start, end in free:
            yield from _over(row, column, lines.seam - flange, (max(start, least), min(end, most)))
        for number, ((start, end), inner) in enumerate(legs, 1):
            within = (first if end <= ends[0] else start, last if start >= ends[1] else end)
            yield from _hollows(row, column, inner - flange, within, f"leg {number}")


def ledger_row(lines: TrimLines, face: Face) -> float:
    """v of the screws in a ledger: the middle of its flange, or as near as the sheets' heads let them."""
    middle = lines.steel.slope_length(face) - lines.building.framing.eave_strut.width / 2
    return min(middle, face.upper.head - SCREW_EDGE - EDGE)


def cap_closures(lines: TrimLines, face: Face) -> Iterator[Part]:
    """Outside closures under one leg of the ridge cap, of the flashing at a headwall or of the trim at a
    break, up to it between the rake trims' legs; under those, up to them, in the hollows between the crowns
    they lie on."""
    head = face.upper.head
    if face.sides[2].kind is Edge.HEADWALL:
        head = ledger_row(lines, face) - CLEAR + 0.5 * DEEP
    row = _Row(lines, face, face.upper, (head - 1.5 * DEEP, head - 0.5 * DEEP))
    leg, flange = lines.profile("rake").in_plane, plane(lines.building.sheets, face.skin)
    rake, top = leg + 2 * lines.thickness, lines.roof_crown - flange
    for lay, _ in laid(lines.steel, face, face.upper):
        yield from _over(row, lay, lines.ridge - flange, (rake, face.width - rake))
        for hand, within in (("left", (0.0, leg)), ("right", (face.width - leg, face.width))):
            yield from _hollows(row, lay, top, within, hand)


@dataclass(frozen=True)
class _Row:
    """Where strips lie over the sheets of a region. band: from v to v."""

    lines: TrimLines
    face: Face
    region: Region
    band: Point2

    @cached_property
    def rise(self) -> float:
        """How far the sheets there stand off the face, on those under them."""
        courses = courses_of(self.lines, self.face, self.region)
        return max(one.rise for one in courses if one.foot < self.band[1])

    def name(self, lay: Lay) -> str:
        """What the strip over a sheet is called."""
        words = (self.face.name, self.region.tier, "outside closure", str(lay.number))
        return " ".join(filter(None, words))


def _hollows(row: _Row, lay: Lay, top: float, within: Point2, hand: str) -> Iterator[Part]:
    """Strips over one sheet's cover, up to w = top, where its surface lies deep enough under it."""
    profile, surface = row.region.skin.profile, _surface(row.region)
    a, b = sorted((u - lay.rib) * lay.sign for u in within)
    low, high = max(0.0, a), min(profile.cover, b)
    if high - low < THIN:
        return
    deep = [(u, w) for u, w in stretch(surface, low, high)]
    start: float | None = None
    number = 0
    for (u0, w0), (u1, w1) in pairwise(deep):
        limit = top - row.rise - FOAM
        cut = u0 + (u1 - u0) * (limit - w0) / (w1 - w0) if (w0 - limit) * (w1 - limit) < 0 else None
        if w0 < limit and start is None:
            start = u0
        if cut is not None and w1 < limit:
            start = cut
        end = cut if cut is not None and w0 < limit else u1 if u1 == deep[-1][0] else None
        if start is not None and end is not None and end - start > THIN:
            number += 1
            yield _strip(row, lay, top, (start, end), f"{row.name(lay)} {hand} {number}")
        if end is not None:
            start = None


def _over(row: _Row, lay: Lay, top: float, within: Point2, which: str = "") -> Iterator[Part]:
    """One strip over one sheet's cover, from its surface up to w = top (bench), clipped to a u range. which:
    of several over one sheet."""
    profile = row.region.skin.profile
    a, b = within
    span = (a - lay.rib, b - lay.rib) if lay.hand == "left" else (lay.rib - b, lay.rib - a)
    low, high = max(0.0, span[0]), min(profile.cover, span[1])
    if high - low < DEEP:
        return
    yield _strip(row, lay, top, (low, high), row.name(lay) + which)


def _strip(row: _Row, lay: Lay, top: float, span: Point2, name: str) -> Part:
    """A strip from a sheet's surface up to w = top over a span of its bench."""
    band, face = row.band, row.face
    lower = stretch(_surface(row.region), *span)
    level = ((lower[0][0], grid(top - row.rise)), (lower[-1][0], grid(top - row.rise)))
    recipe = Sheet(lower, level, flat(*span, band[1] - band[0]))
    sign, start = (1.0, band[0]) if lay.hand == "left" else (-1.0, band[1])
    off = plane(row.lines.building.sheets, row.region.skin) + row.rise
    place = face.frame @ Place((lay.rib, start, off), (sign, 0.0, 0.0), (0.0, sign, 0.0))
    return foam_part(name, Role.OUTSIDE_CLOSURE, face, recipe, place)


def _surface(region: Region) -> Graph:
    """Top of the sheets over one cover, bench frame: a sheet's own, then its neighbour's overlap leg."""
    profile = region.skin.profile
    _, upper = graphs(profile, region.skin.thickness)
    seam = profile.cover - profile.leg
    own = [p for p in upper if 0.0 <= p[0] < seam - EDGE]
    own.append((grid(seam - EDGE), grid(height_at(upper, seam - EDGE))))
    over = [(grid(u + profile.cover), w) for u, w in upper if u <= 0.0]
    return ((0.0, grid(height_at(upper, 0.0))), *own, *over, (profile.cover, grid(height_at(upper, 0.0))))
