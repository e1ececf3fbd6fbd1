"""Inside closures, foam cut to the ribs under sheets: at a roof's eaves, at the feet of walls."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise, product

from ...description.skin import Skin
from ...envelope.edges import Edge
from ...envelope.face import Face
from ...envelope.pitch_break import break_under
from ...envelope.sheet_runs import Lay
from ...envelope.skin_lines import DEEP, plane
from ...place import Place, Point2, Point3
from ...recipe import Part, Sheet, grid
from ...roles import Role
from ..trim.trim_lines import TrimLines
from .cladding import Tile, courses_of
from .foam import EDGE, flat, foam_part, stretch
from .rib_lines import STUB, major_ribs
from .ribs import graphs

INSET = 0.02
"""Share of a rib's base that a plug stops short at each foot, where foam would be thinner than paper."""


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
        yield foam_part(name, Role.INSIDE_CLOSURE, face, recipe, face.frame @ place)


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
                yield foam_part(name, Role.INSIDE_CLOSURE, face, recipe, face.frame @ place)


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
    upper = tuple((grid(u - middle), grid(w + where[2])) for u, w in stretch(lower, start, end))
    recipe = Sheet(((upper[0][0], 0.0), (upper[-1][0], 0.0)), upper, flat(upper[0][0], upper[-1][0], DEEP))
    at = (lay.rib + sign * middle, where[0] + (0.0 if sign > 0 else DEEP), where[1])
    return recipe, Place(at, (sign, 0.0, 0.0), (0.0, sign, 0.0))
