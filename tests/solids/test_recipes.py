"""Every recipe of every starter, and random ones of every kind: volumes worked out without the kernel."""

from __future__ import annotations

import math
from copy import deepcopy
from functools import cache

import manifold3d
import numpy as np
import pytest
import shapely
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from OCP.TopAbs import TopAbs_SHELL, TopAbs_SOLID
from OCP.TopExp import TopExp_Explorer
from OCP.TopoDS import TopoDS_Solid
from ribwright.catalog.gauges import gauges
from ribwright.catalog.profiles import profiles
from ribwright.intake import starters
from ribwright.layout import lay_out
from ribwright.layout.skin.ribs import graphs
from ribwright.place import Place, Point2, Point3
from ribwright.recipe import Cut, Joined, Prism, Recipe, Section, Sheet, Turned
from ribwright.solids import realise
from ribwright.solids.planar import planar_faces
from ribwright.solids.properties import is_valid, volume
from support.bodies import ring, volume_between, watertight
from support.starter_buildings import starter

FLATS = 1 - math.sin(0.5) / 0.5  # by how much a rod is smaller with flats, which turn by 0.5 rad at most
TWINS = 5e-3  # by how much the boolean twin of a plate with holes may differ: the holes have flats


@cache
def recipes() -> tuple[Recipe, ...]:
    """The distinct recipes of all starters."""
    buildings = [starter(name) for name in starters()]
    return tuple(dict.fromkeys(part.recipe for building in buildings for part in lay_out(building).parts))


def count(solid: TopoDS_Solid, kind: object) -> int:
    explorer, found = TopExp_Explorer(solid, kind), 0
    while explorer.More():
        found += 1
        explorer.Next()
    return found


def assert_one_body(solid: TopoDS_Solid) -> None:
    """Valid, a single shell, outward; closed as triangles, and those enclose what the kernel says."""
    assert is_valid(solid)
    assert (count(solid, TopAbs_SOLID), count(solid, TopAbs_SHELL)) == (1, 1)
    near = 1e-9 if planar_faces(solid) else FLATS
    assert watertight(solid).volume() == pytest.approx(volume(solid), rel=near)


def worked_out(recipe: Recipe) -> tuple[float, float]:
    """Volume (mm3) without the kernel, and how near it is, as a share of it."""
    match recipe:
        case Sheet():
            return volume_between(recipe), 1e-9
        case Prism():
            return prism_volume(recipe), 1e-9
        case Turned():
            return turned_volume(recipe), 1e-9
        case Cut() | Joined():
            return float(by_manifold(recipe).volume()), TWINS


def prism_volume(recipe: Prism) -> float:
    """The section's area by the height between the end planes over its centroid."""
    area, x, y = moments(recipe.section.outer)
    for hole in recipe.section.holes:
        a, hx, hy = moments(hole)
        area, x, y = area - a, x - hx, y - hy
    (a, b, c), (d, e, f) = recipe.start, recipe.end
    return (f - c) * area + (d - a) * x + (e - b) * y


def moments(corners: tuple[Point3, ...]) -> tuple[float, float, float]:
    """Area of a ring and its first moments in x and y, arcs exactly: the polygon less what arcs cut off.

    At a corner turning by t an arc of radius r leaves, of the kite between its centre and the corner, the
    circle's sector: areas r2 tan(t/2) and r2 t/2, centroids on the line from the centre to the corner.
    """
    points = np.array([(x, y) for x, y, _ in corners])
    polygon = shapely.Polygon(points)
    area, (x, y) = polygon.area, polygon.centroid.coords[0]
    found = np.array([area, area * x, area * y])
    before, after = np.roll(points, 1, axis=0), np.roll(points, -1, axis=0)
    way = math.copysign(1.0, shapely.LinearRing(points).is_ccw - 0.5)
    for corner, a, b, (_, _, r) in zip(points, before, after, corners, strict=True):
        into, out = (corner - a) / math.dist(corner, a), (b - corner) / math.dist(b, corner)
        turn = math.atan2(into[0] * out[1] - into[1] * out[0], into @ out) * way
        t = abs(turn)
        if not r or t < 1e-12:
            continue
        to_corner = (into - out) / np.linalg.norm(into - out)
        centre = corner - to_corner * r / math.cos(t / 2)
        kite, sector = r * r * math.tan(t / 2), r * r * t / 2
        of_kite = kite * r * (math.cos(t / 2) + 1 / math.cos(t / 2)) / 3
        of_sector = sector * r * 4 * math.sin(t / 2) / (3 * t)
        lost = np.array([kite - sector, *((kite - sector) * centre + (of_kite - of_sector) * to_corner)])
        found -= math.copysign(1.0, turn) * lost
    return float(found[0]), float(found[1]), float(found[2])


def turned_volume(recipe: Turned) -> float:
    """Pappus' second theorem; with flats, every circle is the regular polygon in it."""
    area = shapely.Polygon(recipe.meridian)
    turn = math.tau if not recipe.sides else recipe.sides * math.sin(math.tau / recipe.sides)
    return float(turn * area.centroid.x * area.area)


def by_manifold(recipe: Recipe) -> manifold3d.Manifold:
    """The boolean twin: the same operations on triangles."""
    match recipe:
        case Cut():
            body = by_manifold(recipe.body)
            for tool, place in recipe.tools:
                body -= at(by_manifold(tool), place)
            return body
        case Joined():
            body = manifold3d.Manifold()
            for part, place in recipe.parts:
                body += at(by_manifold(part), place)
            return body
    return watertight(realise(recipe))


def at(body: manifold3d.Manifold, place: Place) -> manifold3d.Manifold:
    return body.transform(np.column_stack([place.x, place.y, place.z, place.origin]))


@pytest.mark.parametrize("kind", [Sheet, Prism, Turned, Cut])
def test_every_recipe_of_every_starter_is_one_body_of_the_right_volume(kind: type[Recipe]) -> None:
    of_kind = [recipe for recipe in recipes() if isinstance(recipe, kind)]
    assert of_kind
    for recipe in of_kind:
        solid = realise(recipe)
        assert_one_body(solid)
        expected, near = worked_out(recipe)
        assert volume(solid) == pytest.approx(expected, rel=near), recipe


def test_equal_recipes_are_the_same_object_and_others_are_not() -> None:
    solids = [realise(recipe) for recipe in recipes()]
    assert len({id(solid) for solid in solids}) == len(recipes())
    for recipe, solid in zip(recipes(), solids, strict=True):
        twin = deepcopy(recipe)
        assert twin is not recipe
        assert realise(twin) is solid


@st.composite
def sheets(draw: st.DrawFn) -> Sheet:
    """A profile of any gauge under an outline of up to eight corners, with up to two holes."""
    profile = draw(st.sampled_from(list(profiles().values())))
    thickness = draw(st.sampled_from([gauge.bare for gauge in gauges().values()]))
    lower, upper = graphs(profile, thickness)
    left, right = lower[0][0] + 1.0, lower[-1][0] - 1.0
    points = draw(
        st.lists(
            st.tuples(st.floats(left, right), st.floats(0.0, 3000.0)), min_size=3, max_size=8, unique=True
        )
    )
    region = shapely.set_precision(shapely.MultiPoint(points).convex_hull, 1e-6)
    if region.geom_type != "Polygon" or region.area < 1000.0:
        region = shapely.box(left, 0.0, right, 500.0)
    middle = region.representative_point()
    for u, v in draw(st.lists(st.tuples(st.floats(-200, 200), st.floats(-200, 200)), max_size=2)):
        hole = shapely.box(middle.x + u - 20, middle.y + v - 30, middle.x + u + 25, middle.y + v + 35)
        less = shapely.set_precision(region - hole, 1e-6)
        region = max(shapely.get_parts(less), key=lambda part: part.area, default=region)
    region = shapely.geometry.polygon.orient(region)
    return Sheet(lower, upper, ring(region.exterior), tuple(ring(inner) for inner in region.interiors))


@settings(max_examples=60, deadline=None)
@given(sheets())
def test_random_sheets(recipe: Sheet) -> None:
    solid = realise(recipe)
    assert_one_body(solid)
    assert volume(solid) == pytest.approx(volume_between(recipe), rel=1e-9)


SLOPES = st.floats(-0.7, 0.7)
RADII = st.floats(0.1, 9.0)


@st.composite
def members(draw: st.DrawFn) -> Prism:
    """Angles, cees with lips and plates with a hole, each corner with a radius of its own, mitred ends."""
    wide, deep, lip = draw(st.floats(40, 120)), draw(st.floats(60, 200)), 20.0
    shapes: list[tuple[list[Point2], list[Point2]]] = [
        ([(0, 0), (wide, 0), (wide, 20), (20, 20), (20, deep), (0, deep)], []),
        ([(0, 0), (wide, 0), (wide, deep), (0, deep)], [(10, 10), (wide - 10, 10), (wide - 10, deep - 10)]),
        (
            [
                *[(0, 0), (wide, 0), (wide, lip), (wide - 5, lip), (wide - 5, 5), (5, 5), (5, deep - 5)],
                *[(wide - 5, deep - 5), (wide - 5, deep - lip), (wide, deep - lip), (wide, deep), (0, deep)],
            ],
            [],
        ),
    ]
    outer, inner = draw(st.sampled_from(shapes))
    most = 2.0 if len(outer) == 12 else 9.0
    rings = [tuple((x, y, min(draw(RADII), most)) for x, y in corners) for corners in (outer, inner)]
    ends = (draw(SLOPES), draw(SLOPES), 0.0), (draw(SLOPES), draw(SLOPES), 900.0)
    return Prism(Section(rings[0], (rings[1],) if inner else ()), *ends)


@settings(max_examples=60, deadline=None)
@given(members())
def test_random_members_with_rounded_corners_and_mitred_ends(recipe: Prism) -> None:
    solid = realise(recipe)
    assert_one_body(solid)
    assert volume(solid) == pytest.approx(prism_volume(recipe), rel=1e-9)


@settings(max_examples=40, deadline=None)
@given(st.lists(st.tuples(st.floats(1, 30), st.floats(1, 20)), min_size=1, max_size=4), st.integers(0, 12))
def test_random_turned_bodies(steps: list[Point2], sides: int) -> None:
    """A stack of discs: radius and height of each."""
    z, right = 0.0, []
    for radius, height in steps:
        right += [(radius, z), (radius, z + height)]
        z += height
    meridian = ((0.0, 0.0), *dict.fromkeys(right), (0.0, z))
    recipe = Turned(meridian, 0 if sides < 3 else sides)
    solid = realise(recipe)
    assert_one_body(solid)
    assert volume(solid) == pytest.approx(turned_volume(recipe), rel=1e-9)


def block(x: float, y: float, z: float) -> Prism:
    return Prism(Section(((0, 0, 0), (x, 0, 0), (x, y, 0), (0, y, 0))), (0, 0, 0), (0, 0, z))


@settings(max_examples=40, deadline=None)
@given(st.lists(st.floats(1.0, 9.0), min_size=1, max_size=5), st.floats(0.5, 30.0))
def test_random_cuts(radii: list[float], deep: float) -> None:
    """A row of round holes in a plate, through it or blind, no two meeting."""
    plate = block(20.0 * len(radii), 20.0, 12.0)
    drill = [Turned(((0.0, 0.0), (r, 0.0), (r, deep), (0.0, deep))) for r in radii]
    tools = [(tool, Place((20.0 * k + 10.0, 10.0, 12.0 - deep))) for k, tool in enumerate(drill)]
    solid = realise(Cut(plate, tuple(tools)))
    assert_one_body(solid)
    lost = sum(math.pi * r * r * min(deep, 12.0) for r in radii)
    assert volume(solid) == pytest.approx(400.0 * len(radii) * 12.0 - lost, rel=1e-9)


@settings(max_examples=40, deadline=None)
@given(st.sampled_from([0.0, 0.1, 12.5, 49.0]), st.floats(-30.0, 30.0), st.floats(0.0, 2 * math.pi))
def test_random_joins(deep: float, aside: float, turn: float) -> None:
    """A block upon another, turned and shifted, set into it by a depth; at 0 they touch."""
    lower, upper = block(40.0, 40.0, 50.0), block(40.0, 40.0, 60.0)
    c, s = math.cos(turn), math.sin(turn)
    place = Place((20.0 + aside, 20.0, 50.0 - deep), (c, s, 0.0), (-s, c, 0.0))
    plan = shapely.Polygon([place.point((x, y, 0.0))[:2] for x, y in ((0, 0), (40, 0), (40, 40), (0, 40))])
    common = plan.intersection(shapely.box(0.0, 0.0, 40.0, 40.0)).area
    assume(common > 1.0)
    solid = realise(Joined(((lower, Place()), (upper, place))))
    assert_one_body(solid)
    assert volume(solid) == pytest.approx(1600.0 * 110.0 - common * deep, rel=1e-9)
