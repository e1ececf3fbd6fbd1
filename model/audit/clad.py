"""Each plane of sheets with what stands behind and about it: steel, trims, and the openings in it.

Told by geometry alone: steel backs a plane where a flat face of a member lies on it; an opening is what
trims ring and no steel crosses, or what a leaf or sash fills.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from math import hypot

import numpy as np
import shapely

from ..measure.clad_planes import DEEP, CladPlane
from ..measure.faces import Vectors, flats
from ..place import add, dot
from .shadow import seen
from .site import Numbers, Site

ALIKE = 1e-6
"""How far a normal may be off another of faces in line, on each axis."""
BEHIND, BEFORE = 8.0, 0.05
"""mm behind and before the sheets' undersides in which the steel that backs them lies, blankets aside."""
ABOUT = 400.0
"""mm before a plane; a trim that begins farther out is another plane's."""
HEM = 20.0
"""mm; the steel behind the sheets of another face in line reaches so far past them at most. Ours."""
EAVE = 200.0
"""mm up from a roof's feet in which its eave trim lies."""
HAIRLINE = 1.0
"""mm; trims of a ring that are nearer to each other close it."""
ROOM = 25.0
"""mm; what is narrower than twice this between trims is no opening."""
CROSSED = 500.0
"""mm2 of steel that an opening may show; more, and it is a bay of the wall."""
EAVE = 200.0
"""mm; an eave's trim lies this near to the ends of its sheets."""
RUNS_ON = 80.0
"""mm; a member that reaches farther out of a wall's plane on both sides runs on over it."""
FAR, HIGH = 1e6, 1e7
"""mm; farther along a wall, and higher, than anything of it."""
FILL_DEEP, FILL_BACK = 150.0, 400.0
"""mm: how thick a leaf or sash may be, and how far behind its wall it may stand."""


@dataclass(frozen=True, slots=True, eq=False)
class Shade:
    """A body's shadow on a plane (u, v), and how far it reaches outward of the sheets' undersides (mm)."""

    body: int
    shape: shapely.Geometry
    low: float
    high: float


@dataclass(frozen=True, slots=True, eq=False)
class Hole:
    """An opening in a plane (u, v), and a piece that tells which."""

    shape: shapely.Geometry
    body: int


@dataclass(frozen=True, eq=False)
class Clad:
    """A plane of sheets. axes (3, 3): rows u, v and outward normal; offset: of the sheets' undersides.
    in_line: what the sheets of other faces in line with it cover. behind: what of a wall's plane lies behind
    walls that it stands out from. above: what of it lies over a roof, or over the undersides of purlins that
    run on over it."""

    site: Site
    plane: CladPlane
    axes: Vectors
    offset: float
    in_line: shapely.Geometry = field(default_factory=shapely.Polygon)
    behind: shapely.Geometry = field(default_factory=shapely.Polygon)
    above: shapely.Geometry = field(default_factory=shapely.Polygon)

    @cached_property
    def steel(self) -> tuple[Shade, ...]:
        """The faces of members that lie on the plane, each as a shape of its own."""
        return tuple(self._steel())

    @cached_property
    def backing(self) -> shapely.Geometry:
        """All of the plane that has steel right behind it."""
        return shapely.union_all([shade.shape for shade in self.steel])

    @cached_property
    def whole(self) -> shapely.Geometry:
        """What the sheets must cover, openings and all: the hull of the steel behind them, under a hollow
        roof as far up as that. What lies in their plane farther off is another building's."""
        left, low, right, high = self.plane.outline.bounds
        near = shapely.box(left - ABOUT, low - ABOUT, right + ABOUT, high + ABOUT)
        hull = self.backing.intersection(near).difference(self.in_line | self.behind).convex_hull
        return hull.difference(self.above) if hull.intersects(self.above) else hull

    @cached_property
    def trims(self) -> tuple[Shade, ...]:
        """The trims at the plane or before it."""
        return tuple(self.shades(self.site.listed("trims"), -2.0 - self.site.pressed, ABOUT))

    @cached_property
    def trimmed(self) -> shapely.Geometry:
        """What lies behind or before a trim."""
        return shapely.union_all([shade.shape for shade in self.trims])

    @cached_property
    def openings(self) -> tuple[Hole, ...]:
        """The openings of the plane."""
        return tuple(self._openings())

    def eave_trims(self, at_head: bool = False) -> tuple[Shade, ...]:
        """The trims right under a roof's foot, or its head: there they reach no higher than its sheets; a
        gutter's front may, before it."""
        left, low, right, high = self.plane.outline.bounds
        end = shapely.box(left, high - EAVE if at_head else low, right, high if at_head else low + EAVE)
        under = (shade for shade in self.trims if shade.low < -1.0 and self._stays_under(shade))
        return tuple(shade for shade in under if shade.shape.intersects(end)) if self.plane.sloped else ()

    def _stays_under(self, shade: Shade) -> bool:
        """Whether a body reaches no higher than the face within its foot and its head."""
        _, low, _, high = self.plane.outline.bounds
        v, w = self.axes[1:] @ self.site.corners(shade.body).T
        return shade.high < 1.0 or bool((w - self.offset)[(v > low) & (v < high)].max(initial=-np.inf) < 1.0)

    @cached_property
    def crown(self) -> float:
        """How far out the outermost of the sheets stands (mm): what hangs before it fills no opening."""
        return max(float(sheet.upper[:, 1].max()) for sheet in self.plane.sheets)

    @cached_property
    def runs_out(self) -> bool:
        """Whether a roof's head stands out over a trim, as its foot does: a high eave, and no ridge."""
        left, _, right, _ = self.plane.outline.bounds
        under = [shade.shape.bounds for shade in self.eave_trims(at_head=True)]
        spans = shapely.union_all([shapely.LineString([(a, 0.0), (b, 0.0)]) for a, _, b, _ in under])
        return self.plane.sloped and bool(spans.length > (right - left) / 2)

    def shades(self, numbers: Numbers, least: float, most: float) -> Iterator[Shade]:
        """Shadows of bodies that reach out of the plane to `least` or farther and begin before `most`."""
        outward = self.axes[2]
        near, far = self.site.spread(numbers, outward)
        for k in numbers[(far - self.offset >= least) & (near - self.offset <= most)].tolist():
            low, high = (height - self.offset for height in self.site.reach(k, outward))
            if high >= least and low <= most:
                yield Shade(k, seen(self.site, k, self.axes), low, high)

    def _steel(self) -> Iterator[Shade]:
        outward = self.axes[2]
        members = self.site.listed("members")
        near, far = self.site.spread(members, outward)
        behind = BEHIND + self.site.pressed
        for k in members[(far - self.offset >= -behind) & (near - self.offset <= BEFORE)].tolist():
            normals, heights, faces = flats(self.site.bodies[k].solid)
            turn, origin = self.site.turns[k], self.site.origins[k]
            level = heights + origin @ outward - self.offset
            lying = (normals @ (turn.T @ outward) > 1 - 1e-7) & (level > -behind) & (level < BEFORE)
            inward = self.axes[:2] @ turn
            for face in np.flatnonzero(lying).tolist():
                outer, *inner = (ring @ inward.T + self.axes[:2] @ origin for ring in faces[face])
                yield Shade(k, shapely.Polygon(outer, inner), float(level[face]), float(level[face]))

    def _openings(self) -> Iterator[Hole]:
        rings = shapely.get_parts(self.whole.difference(self.trimmed.buffer(HAIRLINE, join_style="mitre")))
        cored = (ring.buffer(-ROOM, join_style="mitre") for ring in rings)  # slots beside it are none of it
        ringed = [core.buffer(ROOM, join_style="mitre") for core in cored if self._is_open(core)]
        fills = list(self.shades(self.site.listed("openings"), -FILL_BACK, 60.0))
        fills = [] if self.plane.sloped else fills  # what stands on a ridge fills no opening
        fills = [fill for fill in fills if fill.low < self.crown and _lies_in(fill)]
        for ring in ringed:
            filling = [fill for fill in fills if fill.shape.intersects(ring)]
            if not filling and self.plane.outline.intersection(ring).area > ring.area / 2:
                continue  # sheets run over it, with no steel under them just there
            near = min(self.trims, key=lambda shade: shade.shape.distance(ring))
            yield Hole(ring, filling[0].body if filling else near.body)
        yield from (
            Hole(fill.shape, fill.body)
            for fill in fills
            if not any(fill.shape.intersects(ring) for ring in ringed)
        )

    def _is_open(self, ring: shapely.Geometry) -> bool:
        return not ring.is_empty and bool(self.backing.intersection(ring).area < CROSSED)


def _lies_in(fill: Shade) -> bool:
    """Whether a leaf or sash is thin across a plane, and thinner than it is along it: one in the next wall
    stands on edge."""
    left, low, right, high = fill.shape.bounds
    return bool(fill.high - fill.low < min(FILL_DEEP, right - left, high - low))


def clad(site: Site, planes: Sequence[CladPlane]) -> tuple[Clad, ...]:
    """Every plane of sheets on a site."""
    return tuple(_clad(site, plane, planes) for plane in planes)


def _clad(site: Site, plane: CladPlane, planes: Sequence[CladPlane]) -> Clad:
    axes = np.array([plane.frame.x, plane.frame.y, plane.frame.z])
    level = float(axes[2] @ np.array(plane.frame.origin))
    others = (one for one in planes if one is not plane and np.allclose(one.frame.z, axes[2], atol=ALIKE))
    in_line = [one.outline for one in others if abs(dot(one.frame.z, one.frame.origin) - level) < DEEP]
    before = shapely.union_all(in_line).buffer(HEM, join_style="mitre")
    return Clad(
        site,
        plane,
        axes,
        level,
        before,
        shapely.Polygon() if plane.sloped else _behind(plane, planes),
        shapely.Polygon() if plane.sloped else _above(site, plane, planes),
    )


def _behind(wall: CladPlane, planes: Sequence[CladPlane]) -> shapely.Geometry:
    """What of a wall's plane lies behind other walls that all of it stands before, square to them: the steel
    there is theirs."""
    left, _, right, _ = wall.outline.bounds
    found = []
    for other in (one for one in planes if not one.sloped):
        facing = dot(other.frame.z, wall.frame.x)
        u = wall.frame.seen(other.frame.origin)[0]
        if facing > 1.0 - ALIKE and left > u - HEM:
            found.append(shapely.box(-FAR, -FAR, u, FAR))
        elif facing < ALIKE - 1.0 and right < u + HEM:
            found.append(shapely.box(u, -FAR, FAR, FAR))
    return shapely.union_all(found)


def _above(site: Site, wall: CladPlane, planes: Sequence[CladPlane]) -> shapely.Geometry:
    """What of a wall's plane lies over all roofs that fall one way, where there are several: as over a break
    of a hollow roof; or over the undersides of what runs on over the wall, under which its sheets stop."""
    ways: dict[tuple[float, float], list[shapely.Geometry]] = {}
    through = _through(site, wall)
    for roof in (plane for plane in planes if plane.sloped):
        (x, y, _), size = roof.frame.z, hypot(*roof.frame.z[:2])
        under = max(site.pressed, _under(site, roof, through))
        ways.setdefault((round(x / size, 3), round(y / size, 3)), []).append(_over(wall, roof, under))
    return shapely.union_all(
        [shapely.intersection_all(over) for over in ways.values() if through or len(over) > 1]
    )


def _through(site: Site, wall: CladPlane) -> list[int]:
    """The members that stand well out of a wall on both sides: what runs on over a gable."""
    outward, members = np.array(wall.frame.z), site.listed("members")
    level = float(outward @ np.array(wall.frame.origin))
    near, far = site.spread(members, outward)
    found: list[int] = members[(near < level - RUNS_ON) & (far > level + RUNS_ON)].tolist()
    return found


def _under(site: Site, roof: CladPlane, members: Sequence[int]) -> float:
    """How deep those of some members that lie under a roof reach down from its sheets (mm)."""
    normal = np.array(roof.frame.z)
    spans = [site.reach(k, normal) for k in members]
    level = float(normal @ np.array(roof.frame.origin))
    return max((level - low for low, high in spans if abs(high - level) < BEHIND + site.pressed), default=0.0)


def _over(wall: CladPlane, roof: CladPlane, pressed: float) -> shapely.Geometry:
    """What of a wall's plane lies over a roof's steel."""
    normal, heights = roof.frame.z, []
    for u in (-FAR, FAR):
        off = dot(normal, add(wall.point(u, 0.0), roof.frame.origin, -1.0)) + pressed
        heights.append(-off / dot(normal, wall.frame.y))
    return shapely.Polygon([(-FAR, heights[0]), (FAR, heights[1]), (FAR, HIGH), (-FAR, HIGH)])
