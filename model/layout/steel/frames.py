"""The frames: columns, rafters, knee braces, gable posts and base plates.

A frame is drawn as its members meet: column and rafter mitred at the eave, rafters at the ridge,
knees cut to the faces they stand against. Welds, bolts and clips are not drawn.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from ...catalog.fold import shifted
from ...catalog.sections import SectionShape
from ...envelope.face import Face
from ...envelope.shell import Crossing
from ...envelope.steel_lines import SteelLines
from ...envelope.top_line import crossed
from ...place import Place, Point2, Point3, add, unit
from ...recipe import Part, Prism, Recipe, Section, grid, round_hole
from ...roles import Role
from ..role_colours import FRAME
from .straight_member import Plane, head_under, member, square

UP: Point3 = (0.0, 0.0, 1.0)


@dataclass(frozen=True)
class _Chain:
    """One frame as a chain of members under the faces that its plane cuts, mitred where they meet.

    y: of the plane. inward: which way along y the building lies from an end frame (1, -1); 0 between.
    """

    lines: SteelLines
    name: str
    cut: Sequence[Crossing]
    y: float
    inward: float

    def part(self, wall: Crossing, name: str, role: Role, recipe: Recipe, place: Place) -> Part:
        """A part that belongs to the column under a wall."""
        return Part(f"{self.name} {wall.face} {name}", role, ("frame", self.name), recipe, place, FRAME)

    def joint(self, number: int) -> tuple[Plane, Point2]:
        """The mitre between a member and the next one, and the corner that it has inside the building; where
        another building stands beside, the plane of its columns."""
        one, other = self.cut[number : number + 2]
        for wall, out in ((one, -1.0), (other, 1.0)):
            if wall.face == self.lines.building.joined:
                at = (wall.start[0] + out * self.lines.setback, wall.start[1])
                return Plane((at[0], self.y, at[1]), (1.0, 0.0, 0.0)), at
        (ox, oz), (ix, iz) = (
            crossed(*(_inside(crossing, self._depths(crossing)[k]) for crossing in (one, other)))
            for k in (0, 1)
        )
        return Plane((ox, self.y, oz), (oz - iz, 0.0, ix - ox)), (ix, iz)

    def _depths(self, crossing: Crossing) -> Point2:
        """From the steel line to a member's outer and inner face."""
        lines = self.lines
        if lines.named[crossing.face].sloped:
            return lines.rafter_top, lines.rafter_under
        return lines.setback, lines.setback + lines.building.frame.column.depth

    def flush(self, shape: SectionShape) -> float:
        """y of a member: in an end frame one wider than its column has its outer face flush with the
        column's, so that girts pass it; between the ends it is centred. Common practice, no source."""
        past = max(0.0, (shape.width - self.lines.building.frame.column.width) / 2)
        return self.y + self.inward * past


def framed(lines: SteelLines) -> Iterator[Part]:
    """All frames from front to back, then the gables' posts."""
    for number, y in enumerate(lines.frames, 1):
        inward = {1: 1.0, len(lines.frames): -1.0}.get(number, 0.0)
        yield from _frame(_Chain(lines, f"frame {number}", lines.shell.cut(y), y, inward))
    for wall in (wall for wall in lines.walls if wall.raked):
        yield from _posts(lines, wall)


def _frame(chain: _Chain) -> Iterator[Part]:
    """Under each wall its column, the rafters of the slopes that fall to it, its knee and its plate."""
    last = len(chain.cut) - 1
    for wall, beside, step in ((0, 1, 1.0), (last, last - 1, -1.0)):
        column, mitre = chain.cut[wall], chain.joint(min(wall, beside))
        if column.face == chain.lines.building.joined:
            continue  # there the other building's stand
        yield _column(chain, column, mitre[0], step)
        for number, slope in _falling_to(chain, step):
            yield _rafter(chain, column, slope, (chain.joint(number - 1)[0], chain.joint(number)[0]), step)
        if chain.lines.building.frame.knee:
            yield _knee(chain, column, chain.cut[beside], mitre[1], step)
        yield _plate(chain, column, step)


def _falling_to(chain: _Chain, step: float) -> Iterator[tuple[int, Crossing]]:
    """The slopes that fall to the first wall (step 1) or the last (-1), from the eave up, numbered."""
    slopes = list(enumerate(chain.cut))[1:-1]
    for number, slope in slopes if step > 0 else slopes[::-1]:
        if (slope.end[1] > slope.start[1]) == (step > 0):
            yield number, slope


def _column(chain: _Chain, wall: Crossing, mitre: Plane, step: float) -> Part:
    frame = chain.lines.building.frame
    foot = (_under_wall(chain, wall, step), chain.y, frame.plate_thickness)
    made = member(frame.column.section(), foot, UP, (step, 0.0, 0.0), square(foot, UP), mitre)
    return chain.part(wall, "column", Role.COLUMN, *made)


def _under_wall(chain: _Chain, wall: Crossing, step: float) -> float:
    """x of a column's axis."""
    return wall.start[0] + step * (chain.lines.setback + chain.lines.building.frame.column.depth / 2)


def _rafter(chain: _Chain, wall: Crossing, slope: Crossing, mitres: tuple[Plane, Plane], step: float) -> Part:
    """From the eave up, whichever way the cut runs."""
    lines, shape = chain.lines, chain.lines.building.frame.rafter
    foot, head = (slope.start, slope.end) if step > 0 else (slope.end, slope.start)
    along, normal = _ways(foot, head, step)
    axis = add((foot[0], chain.flush(shape), foot[1]), normal, -(lines.rafter_top + lines.rafter_under) / 2)
    ends = mitres if step > 0 else mitres[::-1]
    others = [other for _, other in _falling_to(chain, step)]
    name = f"rafter {others.index(slope) + 1}" if len(others) > 1 else "rafter"
    return chain.part(wall, name, Role.RAFTER, *member(shape.section(), axis, along, normal, *ends))


def _ways(start: Point2, end: Point2, step: float) -> tuple[Point3, Point3]:
    """Along a stretch of the cut, and square to it, outward."""
    along = unit((end[0] - start[0], 0.0, end[1] - start[1]))
    return along, (-step * along[2], 0.0, step * along[0])


def _inside(crossing: Crossing, depth: float) -> tuple[Point2, Point2]:
    """A stretch of the cut moved into the building; the cut has it on its right."""
    one, other = shifted((crossing.start, crossing.end), depth)
    return one, other


def _knee(chain: _Chain, wall: Crossing, slope: Crossing, corner: Point2, step: float) -> Part:
    """A brace from the column's inner face to the rafter's underside, the same reach along both."""
    frame = chain.lines.building.frame
    assert frame.knee is not None
    start, end = (slope.start, slope.end) if step > 0 else (slope.end, slope.start)
    away, normal = _ways(start, end, step)
    at = (corner[0], chain.flush(frame.knee), corner[1])
    low, high = add(at, UP, -frame.knee_reach), add(at, away, frame.knee_reach)
    along = unit(add(high, low, -1.0))
    depth = (-step * along[2], 0.0, step * along[0])
    planes = Plane(low, (1.0, 0.0, 0.0)), Plane(high, normal)
    return chain.part(wall, "knee", Role.KNEE, *member(frame.knee.section(), low, along, depth, *planes))


def _plate(chain: _Chain, wall: Crossing, step: float) -> Part:
    lines, column = chain.lines, chain.lines.building.frame.column
    spot = (_under_wall(chain, wall, step), chain.y, 0.0)
    if lines.setback:
        plate = base_plate(column.depth, column.width, lines, one_way=bool(chain.inward))
        # The plate of a corner column reaches inward only: its gable's base rail stands close outside.
        way = chain.inward or step
        stand = Place(spot, (way, 0.0, 0.0), (0.0, way, 0.0))
    else:
        # Between columns the base rail lies in the wall's plane, and plates reach into the building.
        plate = base_plate(column.width, column.depth, lines, one_way=True)
        stand = Place(spot, (0.0, -step, 0.0), (step, 0.0, 0.0))
    return chain.part(wall, "base plate", Role.BASE_PLATE, plate, stand)


def base_plate(depth: float, width: float, lines: SteelLines, one_way: bool) -> Prism:
    """A plate under an upright, flush with its faces along x (`depth`), with four anchor holes.

    It reaches past the upright by plate_reach along y: both ways with two holes each, or twice as far
    one way (+y) with all four. Local origin under the upright's axis, z = 0 on
    the slab. Four anchor rods a column: 29 CFR 1926.758.
    """
    frame = lines.building.frame
    reach, thick = frame.plate_reach, frame.plate_thickness
    low, high = (-width / 2, width / 2 + 2 * reach) if one_way else (-width / 2 - reach, width / 2 + reach)
    rows = (
        (width / 2 + reach / 2, width / 2 + 3 * reach / 2)
        if one_way
        else (-width / 2 - reach / 2, width / 2 + reach / 2)
    )
    columns = (-depth / 4, depth / 4)
    half = depth / 2
    outline = tuple(
        (grid(x), grid(y), 0.0) for x, y in ((-half, low), (half, low), (half, high), (-half, high))
    )
    holes = tuple(round_hole((x, y), frame.anchor_hole / 2) for y in rows for x in columns)
    return Prism(Section(outline, holes), (0.0, 0.0, 0.0), (0.0, 0.0, grid(thick)))


def _posts(lines: SteelLines, wall: Face) -> Iterator[Part]:
    """Gable posts, from their plates (or a door's header) to the underside of the end rafter."""
    frame = lines.building.frame
    out = -(lines.setback + frame.post.depth / 2)
    half, rafter = frame.post.width / 2, wall.top.lowered(lines.rafter_under)
    upright, outward = (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)
    for number, (u, stop) in enumerate(lines.standing_posts(wall), 1):
        name, group = f"{wall.name} post {number}", ("frame", f"{wall.name} posts")
        foot = (u, frame.plate_thickness if stop is None else stop, out)
        recipe, place = member(
            frame.post.section(), foot, upright, outward, square(foot, upright), head_under(rafter, u, half)
        )
        yield Part(name, Role.POST, group, recipe, wall.frame @ place, FRAME)
        if stop is None:
            # The plate's long way runs along the wall behind the base rail, or into the building.
            if lines.setback:
                plate = base_plate(frame.post.depth, frame.post.width, lines, one_way=False)
                stand = Place((u, 0.0, out), outward, (1.0, 0.0, 0.0))
            else:
                plate = base_plate(frame.post.width, frame.post.depth, lines, one_way=True)
                stand = Place((u, 0.0, out), (1.0, 0.0, 0.0), (0.0, 0.0, -1.0))
            yield Part(f"{name} base plate", Role.BASE_PLATE, group, plate, wall.frame @ stand, FRAME)
