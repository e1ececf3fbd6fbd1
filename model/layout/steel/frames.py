"""The frames: columns, rafters, knee braces, gable posts and base plates.

A frame is drawn as its members meet: column and rafter mitred at the eave, rafters at the ridge,
knees cut to the faces they stand against. Welds, bolts and clips are not drawn.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import hypot

from ...catalog.sections import SectionShape
from ...description.building import Building, FaceName, Wall
from ...description.steel_lines import SteelLines
from ...place import Place, Point3, add
from ...recipe import Part, Prism, Section, grid, round_hole
from ...roles import Role
from ..faces import Face
from ..role_colours import FRAME
from .straight_member import Plane, member, square, under_roof

UP: Point3 = (0.0, 0.0, 1.0)


def framed(building: Building, faces: dict[FaceName, Face]) -> Iterator[Part]:
    """All frames from front to back, then the gables' posts."""
    lines = SteelLines(building)
    for number, y in enumerate(lines.frames, 1):
        end = {1: "front", len(lines.frames): "back"}.get(number, "")
        for hand in ("left", "right"):
            yield from _half_frame(lines, f"frame {number} {hand}", y, hand, end)
    walls: tuple[Wall, Wall] = ("back", "front")
    for wall in walls:
        yield from _posts(lines, faces[wall])


def _half_frame(lines: SteelLines, name: str, y: float, hand: str, end: str) -> Iterator[Part]:
    """Column, base plate, rafter and knee of one side. Drawn as a left half; a right one is that half
    turned about the building's middle, so that both are the same bodies."""
    building, frame = lines.building, lines.building.frame
    turn = _turned(building.width, y) if hand == "right" else Place()
    front = (end == "front") == (hand == "left") if end else None  # as seen by the half that is drawn
    at, out, inner = y, lines.setback, lines.setback + frame.column.depth
    top = lines.roof(out, lines.rafter_top)
    corner = lines.roof(inner, lines.rafter_under)
    mitre = Plane((out, at, top), (top - corner, 0.0, inner - out))
    group = ("frame", name.rsplit(" ", 1)[0])

    def part(role: Role, made: tuple[Prism, Place]) -> Part:
        return Part(f"{name} {role}", role, group, made[0], turn @ made[1], FRAME)

    foot = (out + frame.column.depth / 2, at, frame.plate_thickness)
    yield part(
        Role.COLUMN, member(frame.column.section(), foot, UP, (1.0, 0.0, 0.0), square(foot, UP), mitre)
    )

    slope: Point3 = (lines.cos, 0.0, lines.sin)
    normal: Point3 = (-lines.sin, 0.0, lines.cos)
    beside = _flush_with_column(lines, frame.rafter, front)
    axis = add((0.0, at + beside, building.eave_height), normal, -(lines.rafter_top + lines.rafter_under) / 2)
    ridge = Plane((building.width / 2, at, 0.0), (1.0, 0.0, 0.0))
    yield part(Role.RAFTER, member(frame.rafter.section(), axis, slope, normal, mitre, ridge))

    if frame.knee:
        beside = at + _flush_with_column(lines, frame.knee, front)
        yield part(Role.KNEE, _knee(lines, beside, (inner, beside, corner), slope, normal))
    spot = (out + frame.column.depth / 2, at, 0.0)
    if lines.setback:
        plate = base_plate(frame.column.depth, frame.column.width, lines, one_way=bool(end))
        # The plate of a corner column reaches inward only: its gable's base rail stands close outside.
        stand = Place(spot, (-1.0, 0.0, 0.0), (0.0, -1.0, 0.0)) if front is False else Place(spot)
    else:
        # Between columns the base rail lies in the wall's plane, and plates reach into the building.
        plate = base_plate(frame.column.width, frame.column.depth, lines, one_way=True)
        stand = Place(spot, (0.0, -1.0, 0.0), (1.0, 0.0, 0.0))
    yield Part(f"{name} base plate", Role.BASE_PLATE, group, plate, turn @ stand, FRAME)


def _flush_with_column(lines: SteelLines, shape: SectionShape, front: bool | None) -> float:
    """How far along y a member wider than its column is set, so that in an end frame its outer face is
    flush with the column's and the girts pass it. front: whether the gable is on the side of smaller y;
    None in a frame between the ends, where members are centred. Common practice, no source."""
    past = max(0.0, (shape.width - lines.building.frame.column.width) / 2)
    return 0.0 if front is None else past if front else -past


def _turned(width: float, y: float) -> Place:
    """Half a turn about the upright through the building's middle, at y."""
    return Place((width, 2 * y, 0.0), (-1.0, 0.0, 0.0), (0.0, -1.0, 0.0))


def _knee(lines: SteelLines, y: float, corner: Point3, slope: Point3, normal: Point3) -> tuple[Prism, Place]:
    """A brace from the column's inner face to the rafter's underside, the same reach along both."""
    frame = lines.building.frame
    assert frame.knee is not None
    low = add(corner, UP, -frame.knee_reach)
    high = add(corner, slope, frame.knee_reach)
    size = hypot(high[0] - low[0], high[2] - low[2])
    along = ((high[0] - low[0]) / size, 0.0, (high[2] - low[2]) / size)
    depth = (-along[2], 0.0, along[0])
    return member(frame.knee.section(), low, along, depth, Plane(low, (1.0, 0.0, 0.0)), Plane(high, normal))


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


def _posts(lines: SteelLines, face: Face) -> Iterator[Part]:
    """Gable posts, from their plates (or a door's header) to the underside of the end rafter."""
    frame = lines.building.frame
    out = -(lines.setback + frame.post.depth / 2)
    half = frame.post.width / 2
    upright, outward = (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)
    for number, (u, stop) in enumerate(lines.standing_posts(face.name), 1):
        name, group = f"{face.name} post {number}", ("frame", f"{face.name} posts")
        if abs(u - lines.building.width / 2) < half:
            under = min(lines.roof(u - half, lines.rafter_under), lines.roof(u + half, lines.rafter_under))
            head = Plane((u, under, 0.0), upright)
        else:
            head = under_roof(lines, u, lines.rafter_under)
        foot = (u, frame.plate_thickness if stop is None else stop, out)
        recipe, place = member(frame.post.section(), foot, upright, outward, square(foot, upright), head)
        yield Part(name, Role.POST, group, recipe, face.frame @ place, FRAME)
        if stop is None:
            # The plate's long way runs along the wall behind the base rail, or into the building.
            if lines.setback:
                plate = base_plate(frame.post.depth, frame.post.width, lines, one_way=False)
                stand = Place((u, 0.0, out), outward, (1.0, 0.0, 0.0))
            else:
                plate = base_plate(frame.post.width, frame.post.depth, lines, one_way=True)
                stand = Place((u, 0.0, out), (1.0, 0.0, 0.0), (0.0, 0.0, -1.0))
            yield Part(f"{name} base plate", Role.BASE_PLATE, group, plate, face.frame @ stand, FRAME)
