"""Foam closures cut to the ribs: over wall sheets' heads, under the roof's eaves and the ridge cap."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from ..place import Place, Point2
from ..recipe import Part, Sheet, grid
from ..roles import Role
from .cladding import Lay, run
from .faces import Face
from .ribs import Graph, graphs
from .trim_lines import TrimLines

DEEP = 25.4
"""mm; a closure strip along the ribs (1 in). Common practice, no source."""

FOAM_LABELS = (("colour", "dimgray"), ("material", "foam"))
EDGE = 1e-3
"""mm; how far before a lap the step up onto the overlying sheet is drawn."""

INSET = 0.02
"""Share of a rib's base that a plug stops short at each foot, where foam would be thinner than paper."""


def head_closures(lines: TrimLines, face: Face) -> Iterator[Part]:
    """Outside closures on a side wall: from the sheets out to the corner trim's plane, one a sheet."""
    # The roof's steel plane falls outward: over the closure's outer edge it is lower than over the sheets.
    head = max(v for _, v in face.outline) - (lines.side - lines.crown) * lines.steel.rise
    top = lines.side - lines.building.sheets.flange
    for lay in _lays(lines, face):
        yield from _over(lines, face, lay, (head - DEEP, head), top, (0.0, face.width))


def ridge_closures(lines: TrimLines, face: Face) -> Iterator[Part]:
    """Outside closures under one leg of the ridge cap, between the rake trims' legs."""
    head = max(v for _, v in face.outline)
    top = lines.ridge - lines.building.sheets.flange
    rake = lines.profile("rake").in_plane + 2 * lines.thickness
    for lay in _lays(lines, face):
        yield from _over(
            lines, face, lay, (head - 1.5 * DEEP, head - 0.5 * DEEP), top, (rake, face.width - rake)
        )


def eave_closures(lines: TrimLines, face: Face) -> Iterator[Part]:
    """Inside closures on the eave trim's top leg, a plug under every major rib of the roof: a rib that the
    building's end cuts has as much of a plug as the eave under it."""
    profile, flange = lines.building.sheets.profile, lines.building.sheets.flange
    lower, _ = graphs(profile, lines.building.sheets.thickness)
    base, inset = 0.25 * DEEP, INSET * profile.base
    for number, (lay, rib) in enumerate(_major_ribs(lines, face), 1):
        middle = rib * profile.pitch
        sign = 1.0 if lay.hand == "left" else -1.0
        ends = sorted(sign * (u - lay.rib) for u in (0.0, face.width))
        start = max(middle - profile.base / 2 + inset, -profile.leg, ends[0])
        end = min(middle + profile.base / 2 - inset, profile.cover + profile.leg, ends[1])
        upper = tuple((grid(u - middle), w) for u, w in _within(lower, start, end))
        recipe = Sheet(
            ((upper[0][0], 0.0), (upper[-1][0], 0.0)), upper, _ring(upper[0][0], upper[-1][0], DEEP)
        )
        place = Place(
            (lay.rib + sign * middle, base + (0.0 if sign > 0 else DEEP), flange),
            (sign, 0.0, 0.0),
            (0.0, sign, 0.0),
        )
        name = f"{face.name} inside closure {number}"
        yield _part(name, Role.INSIDE_CLOSURE, face, recipe, face.frame @ place)


def _major_ribs(lines: TrimLines, face: Face) -> Iterator[tuple[Lay, int]]:
    """Each major rib of a face once, as a sheet and the rib's number on it: a lap rib is the underlap rib
    of the sheet beneath; the overlap rib that lies on no other sheet is its own."""
    profile = lines.building.sheets.profile
    lays = _lays(lines, face)
    under = [lay.rib + (profile.cover if lay.hand == "left" else -profile.cover) for lay in lays]
    for lay in lays:
        for rib in range(round(profile.cover / profile.pitch) + 1):
            at = lay.rib + (rib if lay.hand == "left" else -rib) * profile.pitch
            on_another = rib == 0 and any(abs(at - u) < EDGE for u in under)
            if not on_another and profile.crown / 2 < at < face.width - profile.crown / 2:
                yield lay, rib


def _lays(lines: TrimLines, face: Face) -> list[Lay]:
    ends = [u for u, _ in face.outline]
    plan = lines.building.runs[face.name]
    span = (min(ends), max(ends))
    return run(lines.building.sheets.profile, plan, span, (0.0, face.width), face.width / 2)


def _over(lines: TrimLines, face: Face, lay: Lay, band: Point2, top: float, within: Point2) -> Iterator[Part]:
    """One strip over one sheet's cover, from its surface up to w = top (bench), clipped to a u range."""
    profile = lines.building.sheets.profile
    surface = _surface(lines)
    a, b = within
    span = (a - lay.rib, b - lay.rib) if lay.hand == "left" else (lay.rib - b, lay.rib - a)
    low, high = max(0.0, span[0]), min(profile.cover, span[1])
    if high - low < DEEP:
        return
    lower = _within(surface, low, high)
    recipe = Sheet(
        lower, ((lower[0][0], grid(top)), (lower[-1][0], grid(top))), _ring(low, high, band[1] - band[0])
    )
    sign, start = (1.0, band[0]) if lay.hand == "left" else (-1.0, band[1])
    flange = lines.building.sheets.flange
    place = face.frame @ Place((lay.rib, start, flange), (sign, 0.0, 0.0), (0.0, sign, 0.0))
    yield _part(f"{face.name} outside closure {lay.number}", Role.OUTSIDE_CLOSURE, face, recipe, place)


def _surface(lines: TrimLines) -> Graph:
    """Top of the sheets over one cover, bench frame: a sheet's own, then its neighbour's overlap leg."""
    sheets = lines.building.sheets
    profile = sheets.profile
    _, upper = graphs(profile, sheets.thickness)
    seam = profile.cover - profile.leg
    own = [p for p in upper if 0.0 <= p[0] < seam - EDGE]
    own.append((grid(seam - EDGE), grid(_at(upper, seam - EDGE))))
    over = [(grid(u + profile.cover), w) for u, w in upper if u <= 0.0]
    return ((0.0, grid(_at(upper, 0.0))), *own, *over, (profile.cover, grid(_at(upper, 0.0))))


def _within(graph: Graph, low: float, high: float) -> Graph:
    """The graph between two values of u, its ends interpolated."""
    inside = [p for p in graph if low + EDGE / 10 < p[0] < high - EDGE / 10]
    return ((grid(low), grid(_at(graph, low))), *inside, (grid(high), grid(_at(graph, high))))


def _at(graph: Graph, u: float) -> float:
    for (u0, w0), (u1, w1) in pairwise(graph):
        if u0 <= u <= u1:
            return w0 + (w1 - w0) * (u - u0) / (u1 - u0)
    return graph[0][1] if u < graph[0][0] else graph[-1][1]


def _ring(low: float, high: float, deep: float) -> tuple[Point2, ...]:
    a, b, d = grid(low), grid(high), grid(deep)
    return ((a, 0.0), (b, 0.0), (b, d), (a, d))


def _part(name: str, role: Role, face: Face, recipe: Sheet, place: Place) -> Part:
    return Part(name, role, ("closures", face.name), recipe, place, (("face", face.name), *FOAM_LABELS))
