"""Sheets and members as a plain CadQuery script makes them: drawn, extruded, cut, put into an assembly.

It takes the numbers of the layout and uses nothing else of ribwright.
`python plain_cadquery.py FOLDER [once]`; once: equal pieces are made once.
"""

from __future__ import annotations

import math
import sys
from collections.abc import Callable, Iterable, Sequence
from functools import cache
from itertools import pairwise
from pathlib import Path

import cadquery as cq
from chosen import chosen, say
from ribwright.place import Place, Point2, Point3
from ribwright.recipe import Cut, Part, Prism, Recipe, Sheet
from shapely import Polygon, box, get_parts

FAR = 1000.0  # mm; wider than any section
ABOVE, BELOW = 100.0, 50.0  # mm; more than any rib is high, and some air
SPECK = 1e-3  # mm2


def body(recipe: Recipe) -> cq.Workplane:
    """One sheet, member or plate in its own frame."""
    match recipe:
        case Sheet():
            return sheet(recipe)
        case Prism():
            return member(recipe)
        case Cut(body=Prism() as plate, tools=drills):
            holes = [place.origin[:2] for _, place in drills]
            (drill,) = {tool for tool, _ in drills}
            radius = max(r for r, _ in drill.meridian)
            return member(plate).faces(">Z").workplane(origin=(0, 0)).pushPoints(holes).hole(2 * radius)
    raise TypeError(recipe)


def sheet(recipe: Sheet) -> cq.Workplane:
    """The whole profile drawn out, then what the outline leaves is cut away piece by piece."""
    outline = Polygon(recipe.outline, recipe.holes)
    _, foot, _, head = outline.bounds
    end = [*recipe.lower, *reversed(recipe.upper)]
    made = cq.Workplane("XZ", origin=(0, foot, 0)).polyline(end).close().extrude(foot - head)
    blank = box(recipe.lower[0][0], foot, recipe.lower[-1][0], head)
    for waste in get_parts(blank - outline):
        if waste.area > SPECK:
            drawn = cq.Workplane("XY", origin=(0, 0, -BELOW)).polyline(waste.exterior.coords[:-1]).close()
            made = made.cut(drawn.extrude(BELOW + ABOVE))
    return made


def member(recipe: Prism) -> cq.Workplane:
    """The section drawn out, its ends cut by boxes where they are mitred."""
    corners = [(x, y) for x, y, _ in recipe.section.outer]
    low = min(height(recipe.start, corner) for corner in corners)
    high = max(height(recipe.end, corner) for corner in corners)
    drawn = cq.Workplane("XY", origin=(0, 0, low))
    for ring in (recipe.section.outer, *recipe.section.holes):
        drawn = rounded(drawn, ring)
    made = drawn.extrude(high - low)
    for (a, b, c), side in ((recipe.start, -1), (recipe.end, 1)):
        if a or b:
            plane = cq.Plane(origin=(0, 0, c), normal=(-a, -b, 1))
            made = made.cut(cq.Workplane(plane).rect(FAR, FAR).extrude(side * FAR))
    return made


def height(plane: Point3, point: Point2) -> float:
    return plane[0] * point[0] + plane[1] * point[1] + plane[2]


def rounded(drawn: cq.Workplane, ring: Sequence[Point3]) -> cq.Workplane:
    """A closed ring of lines and, at corners with a radius, arcs."""
    stops: list[list[Point2]] = []
    for i, (x, y, radius) in enumerate(ring):
        back = unit(ring[i - 1][0] - x, ring[i - 1][1] - y)
        on = unit(ring[(i + 1) % len(ring)][0] - x, ring[(i + 1) % len(ring)][1] - y)
        if not radius:
            stops.append([(x, y)])
            continue
        half = math.acos(back[0] * on[0] + back[1] * on[1]) / 2
        middle = unit(back[0] + on[0], back[1] + on[1])
        reach, deep = radius / math.tan(half), radius / math.sin(half) - radius
        stops.append([(x + far * way[0], y + far * way[1])
                      for way, far in ((back, reach), (middle, deep), (on, reach))])  # fmt: skip
    drawn = drawn.moveTo(*stops[0][-1])
    for before, stop in pairwise([*stops, stops[0]]):
        if math.dist(before[-1], stop[0]) > SPECK:
            drawn = drawn.lineTo(*stop[0])
        if len(stop) > 1:
            drawn = drawn.threePointArc(stop[1], stop[2])
    return drawn.close()


def unit(x: float, y: float) -> Point2:
    length = math.hypot(x, y)
    return (x / length, y / length)


def location(place: Place) -> cq.Location:
    return cq.Location(cq.Plane(place.origin, place.x, place.z))


def add(whole: cq.Assembly, parts: Iterable[Part], made: Callable[[Recipe], cq.Workplane]) -> None:
    """The parts where they stand, each by its name."""
    for part in parts:
        whole.add(made(part.recipe), name=part.name, loc=location(part.place), color=cq.Color("gray"))


def save(whole: cq.Assembly, folder: Path) -> None:
    whole.export(str(folder / "model.step"))
    whole.export(str(folder / "model.glb"), tolerance=0.1, angularTolerance=0.5)


if __name__ == "__main__":
    parts, whole, folder = chosen(), cq.Assembly(name="building"), Path(sys.argv[1])
    made = cache(body) if "once" in sys.argv[2:] else body
    say(
        folder,
        build=lambda: add(whole, parts, made),
        save=lambda: save(whole, folder),
        mm3=lambda: sum(child.obj.val().Volume() for child in whole.children),
    )
