"""Foam closures cut to the ribs: over wall sheets' heads, at their feet, under the roof's eaves and cap."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise, product

from ...description.skin import Skin
from ...envelope.edges import Edge
from ...envelope.face import Face, Region
from ...envelope.pitch_break import break_under
from ...envelope.roof_lines import Eave
from ...envelope.sheet_runs import Lay, laid
from ...envelope.skin_lines import DEEP, FOAM, SCREW_EDGE, heads_fall, plane
from ...envelope.sliding import rail_back, rails_of
from ...envelope.stretches import remaining
from ...envelope.top_line import TopLine
from ...place import Place, Point2, Point3
from ...recipe import Part, Sheet, grid
from ...roles import Role
from ..screws.screw_kinds import CLEAR
from ..trim.tier_trims import beside, covered, crossed_by, legs_over, under_lips
from ..trim.trim_lines import TrimLines
from .cladding import Tile, courses_of
from .rib_lines import STUB, major_ribs
from .ribs import Graph, graphs, height_at

FOAM_LABELS = (("colour", "dimgray"), ("material", "foam"))
EDGE = 1e-3
"""mm; how far before a lap the step up onto the overlying sheet is drawn."""

THIN = 4.0
"""mm; a narrower hollow beside an edge is tape's to close. Ours."""

INSET = 0.02
"""Share of a rib's base that a plug stops short at each foot, where foam would be thinner than paper."""


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
    deep = [(u, w) for u, w in _within(surface, low, high)]
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


def eave_closures(lines: TrimLines, face: Face) -> Iterator[Part]:
    """Inside closures on the eave trim's top leg, a plug under every major rib of the roof: a rib that the
    building's end cuts has as much of a plug as the eave under it."""
    under = break_under(lines.building, face)
    feet = [(0.25 * DEEP + (max(under.bend, face.upper.foot) if under else 0.0), 0.0)]
    if face.sides[2].kind is Edge.HIGH_EAVE:
        rise = courses_of(lines, face, face.upper)[-1].rise
        feet.append((lines.steel.slope_length(face) - 1.25 * DEEP, rise))
    places = ((lay, rib, base) for base in feet for lay, rib in major_ribs(lines, face))
    for number, (lay, rib, (base, rise)) in enumerate(places, 1):
        low, high = sorted((u - lay.rib) * lay.sign for u in (0.0, face.width))
        where = (base, plane(lines.building.sheets, face.skin), rise)
        recipe, place = _plug(face.skin, (lay, rib), (low, high), where)
        name = f"{face.name} inside closure {number}"
        yield _part(name, Role.INSIDE_CLOSURE, face, recipe, face.frame @ place)


def foot_closures(lines: TrimLines, face: Face, sheets: Sequence[tuple[Tile, Part]]) -> Iterator[Part]:
    """Inside closures at the feet of a wall's sheets, where asked for: under every major rib that comes down
    to the foot as much of a plug as there is of it; under a lap rib the lower sheet's."""
    if not lines.building.sheets.foot_closures or face.sloped or face.open or face.hung:
        return
    region = face.regions[0]
    profile, feet = region.skin.profile, [tile for tile, _ in sheets if tile.region is region]
    under = [tile.column.rib + tile.column.sign * profile.cover for tile in feet]
    number = 0
    for tile, rib in product(feet, range(round(profile.cover / profile.pitch) + 1)):
        lay, middle = tile.column, rib * profile.pitch
        if rib == 0 and any(abs(lay.rib - u) < EDGE for u in under):
            continue
        ends = sorted(lay.sign * (u - lay.rib) for u in (0.0, face.width))
        for start, end in _at_foot(tile, region.foot):
            low, high = max(start, ends[0]), min(end, ends[1])
            if min(middle + profile.base / 2, high) - max(middle - profile.base / 2, low) > STUB:
                number += 1
                where = (region.foot, plane(lines.building.sheets, region.skin), 0.0)
                recipe, place = _plug(region.skin, (lay, rib), (low, high), where)
                name = f"{face.name} foot closure {number}"
                yield _part(name, Role.INSIDE_CLOSURE, face, recipe, face.frame @ place)


def _at_foot(tile: Tile, foot: float) -> Iterator[Point2]:
    """The stretches of a sheet, along its bench, that come down to the foot of its wall."""
    for (x0, y0), (x1, y1) in pairwise((*tile.ring, tile.ring[0])):
        if all(abs(tile.place.point((0.0, y, 0.0))[1] - foot) < EDGE for y in (y0, y1)):
            yield min(x0, x1), max(x0, x1)


def _plug(skin: Skin, under: tuple[Lay, int], ends: Point2, where: Point3) -> tuple[Sheet, Place]:
    """Foam under one rib of a sheet, as much as lies between two ends of its bench. where: v of its lower
    edge, w of the sheet plane, and how far the sheet rises over that."""
    (lay, rib), (low, high), profile = under, ends, skin.profile
    lower, _ = graphs(profile, skin.thickness)
    middle, inset = rib * profile.pitch, INSET * profile.base
    sign = lay.sign
    start = max(middle - profile.base / 2 + inset, -profile.leg, low)
    end = min(middle + profile.base / 2 - inset, profile.cover + profile.leg, high)
    upper = tuple((grid(u - middle), grid(w + where[2])) for u, w in _within(lower, start, end))
    recipe = Sheet(((upper[0][0], 0.0), (upper[-1][0], 0.0)), upper, _ring(upper[0][0], upper[-1][0], DEEP))
    at = (lay.rib + sign * middle, where[0] + (0.0 if sign > 0 else DEEP), where[1])
    return recipe, Place(at, (sign, 0.0, 0.0), (0.0, sign, 0.0))


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
    lower = _within(_surface(row.region), *span)
    level = ((lower[0][0], grid(top - row.rise)), (lower[-1][0], grid(top - row.rise)))
    recipe = Sheet(lower, level, _ring(*span, band[1] - band[0]))
    sign, start = (1.0, band[0]) if lay.hand == "left" else (-1.0, band[1])
    off = plane(row.lines.building.sheets, row.region.skin) + row.rise
    place = face.frame @ Place((lay.rib, start, off), (sign, 0.0, 0.0), (0.0, sign, 0.0))
    return _part(name, Role.OUTSIDE_CLOSURE, face, recipe, place)


def _surface(region: Region) -> Graph:
    """Top of the sheets over one cover, bench frame: a sheet's own, then its neighbour's overlap leg."""
    profile = region.skin.profile
    _, upper = graphs(profile, region.skin.thickness)
    seam = profile.cover - profile.leg
    own = [p for p in upper if 0.0 <= p[0] < seam - EDGE]
    own.append((grid(seam - EDGE), grid(height_at(upper, seam - EDGE))))
    over = [(grid(u + profile.cover), w) for u, w in upper if u <= 0.0]
    return ((0.0, grid(height_at(upper, 0.0))), *own, *over, (profile.cover, grid(height_at(upper, 0.0))))


def _within(graph: Graph, low: float, high: float) -> Graph:
    """The graph between two values of u, its ends interpolated."""
    inside = [p for p in graph if low + EDGE / 10 < p[0] < high - EDGE / 10]
    return ((grid(low), grid(height_at(graph, low))), *inside, (grid(high), grid(height_at(graph, high))))


def _ring(low: float, high: float, deep: float) -> tuple[Point2, ...]:
    a, b, d = grid(low), grid(high), grid(deep)
    return ((a, 0.0), (b, 0.0), (b, d), (a, d))


def _part(name: str, role: Role, face: Face, recipe: Sheet, place: Place) -> Part:
    return Part(name, role, ("closures", face.name), recipe, place, (("face", face.name), *FOAM_LABELS))
