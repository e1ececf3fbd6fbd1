"""Sheets that differ by less than a crew would lay out get one cut: what all of them share, so that none
comes longer or wider than its place. Their solids are that sheet, so that every mark, list and file says so.

Each keeps its foot where it stands, and its width, since it laps on its neighbours. What is cut away is at
heads and at openings, where a trim covers the edge; sheets that lap up a slope stay as they are.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

import shapely
from shapely.geometry import Polygon
from shapely.geometry.polygon import orient

from ...place import Place
from ...recipe import Part, Sheet, grid
from ...roles import list_of
from .cladding import GRAIN, rings_at

ROUNDING = 1e-4
"""mm by which a difference may pass the tolerance and still be within it."""


@dataclass(frozen=True, slots=True, eq=False)
class _Cut:
    """A sheet's recipe with its foot at nought. at: the part's number. base: the foot's y on the bench."""

    at: int
    recipe: Sheet
    base: float

    @property
    def outline(self) -> Polygon:
        """From the foot, as it lies on the bench."""
        whole = Polygon(self.recipe.outline, self.recipe.holes)
        return shapely.transform(whole, lambda points: points - (0.0, self.base))

    @property
    def corners(self) -> tuple[float, ...]:
        """Every coordinate of rim and holes, rings in order."""
        rings = (self.recipe.outline, *self.recipe.holes)
        return tuple(value for ring in rings for u, v in ring for value in (u, v - self.base))


def shared_cuts(parts: Sequence[Part], tolerance: float, lapped: Collection[str]) -> tuple[Part, ...]:
    """The parts, sheets of one profile and thickness whose corners lie within a tolerance (mm) of each other
    cut alike; as they were with a tolerance of 0. lapped: faces whose sheets lap up them.

    A sheet that stands with its head down shares with others that do, or where all are square: then either
    end of the bench is a foot.
    """
    found = list(parts)
    for alike in _alike(parts, lapped).values() if tolerance else ():
        for several in _within(alike, tolerance):
            common = _common(several)
            for cut in several if common.area else ():
                found[cut.at] = _recut(found[cut.at], cut, common)
    return tuple(found)


def _alike(parts: Sequence[Part], lapped: Collection[str]) -> dict[tuple[object, ...], list[_Cut]]:
    """Sheets that might share a cut: of one profile and width, with as many corners, the same way up."""
    found: dict[tuple[object, ...], list[_Cut]] = defaultdict(list)
    for at, part in enumerate(parts):
        recipe = part.recipe
        if isinstance(recipe, Sheet) and list_of(part.role) == "sheets" and part.label("face") not in lapped:
            down, plain = part.place.y[2] < 0, _square(recipe)
            cut = _Cut(at, recipe, max(v for _, v in recipe.outline) if down and not plain else 0.0)
            rings = tuple(map(len, (recipe.outline, *recipe.holes)))
            edges = tuple(round(bound(u for u, _ in recipe.outline), 3) for bound in (min, max))
            key = (part.role, recipe.lower, recipe.upper, edges, rings, plain or down, plain)
            found[key].append(cut)
    return found


def _square(recipe: Sheet) -> bool:
    """Whether it is a whole rectangle."""
    ring = recipe.outline
    sides = len({u for u, _ in ring}), len({v for _, v in ring})
    return len(ring) == 4 and sides == (2, 2) and not recipe.holes


def _within(cuts: Iterable[_Cut], tolerance: float) -> Iterator[list[_Cut]]:
    """Those of one cut, from the smallest sheet on: two or more that are not one already."""
    groups: list[list[_Cut]] = []
    for cut in sorted(cuts, key=lambda one: (one.outline.area, one.at)):
        for group in groups:
            spread = (max(at) - min(at) for at in zip(*(one.corners for one in (*group, cut)), strict=True))
            if max(spread) <= tolerance + ROUNDING:
                group.append(cut)
                break
        else:
            groups.append([cut])
    yield from (group for group in groups if len({one.corners for one in group}) > 1)


def _common(cuts: Sequence[_Cut]) -> Polygon:
    """What all of them have; nothing where that has other corners than they, so that no new edge comes in."""
    outlines = [cut.outline for cut in cuts]
    common = shapely.simplify(shapely.intersection_all(outlines), GRAIN)
    if not isinstance(common, Polygon):
        return Polygon()
    rings = [len(ring.coords) - 1 for ring in (common.exterior, *common.interiors)]
    return common if rings == list(map(len, (cuts[0].recipe.outline, *cuts[0].recipe.holes))) else Polygon()


def _recut(part: Part, cut: _Cut, common: Polygon) -> Part:
    """The part with a cut that it shares, its foot where it was."""
    _, low, _, high = common.bounds
    down = part.place.y[2] < 0
    whole = max(v for _, v in cut.recipe.outline)
    lowered = whole - (high - low) if down else 0.0
    ring, holes = rings_at(orient(common), lambda u, v: (u, v - low))
    recipe = replace(cut.recipe, outline=ring, holes=holes)
    return replace(part, recipe=recipe, place=part.place @ Place((0.0, grid(lowered), 0.0)))
