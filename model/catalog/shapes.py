"""Steel sections drawn from their dimensions.

All are centred on the middle of their bounding box: y is the depth, x the width, mm.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from functools import lru_cache
from math import cos, radians, sin, tan
from typing import Literal

from ..place import Point2, Point3
from ..recipe import Section, grid, round_hole
from .fold import folded, shifted

Shape = Literal["tube", "cee", "zee", "hat", "angle", "plate", "rod"]


@dataclass(frozen=True, slots=True)
class SectionShape:
    """A steel section by shape and dimensions (mm, degrees). What a shape does not have is 0.

    tube: a rectangular hollow section; the outside corner radius is twice the wall, the inside once.
    cee: its web at x min, opening towards +x, lips turned in square.
    zee: top flange towards +x, bottom flange towards -x; each lip turns towards the other flange. The top
    one may be the wider.
    hat: crown at y max, flanges at y min, the sides leaning out.
    angle: corner at (x min, y min), one leg up, one towards +x; rounded inside only, as if rolled.
    plate: a flat bar on edge.
    rod: a round bar, or a cable drawn as one; depth, breadth and thickness are its diameter.

    depth: overall, along y. breadth: a cee's or zee's flange from the back of the web to the sharp
    corner at the lip, a hat's crown between sharp corners, a tube's width, an angle's leg along x, a
    plate's thickness. lip: out to out, to the sharp corner; 0: none. radius: inside the bends.
    flange: of a hat, each, from the sharp corner on its upper face. wider: how much wider a zee's top flange
    is than its bottom one, the breadth. angle: a zee's lip off the plane
    of its flange, a hat's side off the plane of its flanges, a cee's lip 90.
    text: what it was called. source: where a catalogue row's figures are from. Neither counts when
    two are compared.
    """

    shape: Shape
    depth: float
    breadth: float
    thickness: float
    lip: float = 0.0
    radius: float = 0.0
    flange: float = 0.0
    angle: float = 0.0
    wider: float = 0.0
    text: str = field(default="", compare=False)
    source: str = field(default="", compare=False)

    @property
    def width(self) -> float:
        """Overall, along x (mm): more than the breadth of a zee or hat."""
        across = [x for x, _, _ in self.section().outer]
        return grid(max(across) - min(across))

    def section(self) -> Section:
        """The section drawn. Raises ValueError when bends do not fit (never for a parsed one)."""
        return _drawn(self)

    def line(self) -> tuple[Point2, ...]:
        """(n, 2) the face that `folded` bends a cee, zee or hat from; KeyError for other shapes."""
        return LINES[self.shape](self)


@lru_cache(maxsize=256)
def _drawn(steel: SectionShape) -> Section:
    if steel.shape in LINES:
        return folded(steel.line(), steel.thickness, steel.radius)
    return {"tube": _tube, "angle": _angle, "plate": _plate, "rod": _rod}[steel.shape](steel)


def strut_section(cee: SectionShape, pitch: float) -> Section:
    """An eave strut: a cee whose top flange lies in the roof.

    cee: web plumb, bottom flange square. pitch: of the roof, degrees, less than 60; the roof rises
    away from the web, so web and top flange stand at 90 + pitch; at a high eave it
    falls, and pitch is below 0. The top lip is square to its flange.

    Origin: the sharp outer corner of web and top flange, where wall and roof steel lines meet. x
    runs into the building, y up: the web's back is x = 0, the bottom y = -depth. The flange keeps
    the cee's breadth, measured along the slope. Raises ValueError for another shape or pitch, or
    where the bends do not fit.
    """
    if cee.shape != "cee" or not -60 < pitch < 60:
        raise ValueError("an eave strut is a cee under a roof of less than 60 degrees")
    run, rise = cos(radians(pitch)), sin(radians(pitch))
    bottom = ((cee.breadth, -cee.depth), (0.0, -cee.depth))
    top = ((0.0, 0.0), (cee.breadth * run, cee.breadth * rise))
    if not cee.lip:
        return folded(bottom + top, cee.thickness, cee.radius)
    low = (cee.breadth, cee.lip - cee.depth)
    high = (top[1][0] + cee.lip * rise, top[1][1] - cee.lip * run)
    return folded((low, *bottom, *top, high), cee.thickness, cee.radius)


def _cee_line(cee: SectionShape) -> tuple[Point2, ...]:
    """Its outer face, from the bottom lip's edge to the top lip's."""
    x, y = cee.breadth / 2, cee.depth / 2
    back = ((x, -y), (-x, -y), (-x, y), (x, y))
    return ((x, cee.lip - y), *back, (x, y - cee.lip)) if cee.lip else back


def _zee_line(zee: SectionShape) -> tuple[Point2, ...]:
    """Its left face: along the bottom flange's upper face, up the web, along the top flange's upper face."""
    half = zee.thickness / 2
    turn = radians(zee.angle)
    mitre = half * tan(turn / 2) if zee.lip else 0.0
    web, height = -zee.wider / 2, zee.depth / 2 - half  # so that it is centred, lips and all
    lip = zee.lip - mitre
    over: Point2 = (lip * cos(turn), -lip * sin(turn))

    def flange(breadth: float) -> list[Point2]:
        corner = (breadth - half - mitre, height)
        return [(0.0, height), corner, *[(corner[0] + over[0], corner[1] + over[1])] * bool(zee.lip)]

    lower = [(web - x, -y) for x, y in reversed(flange(zee.breadth))]
    return shifted((*lower, *((web + x, y) for x, y in flange(zee.breadth + zee.wider))), -half)


def _hat_line(hat: SectionShape) -> tuple[Point2, ...]:
    """Its upper face, from left to right."""
    top = hat.depth / 2
    foot = hat.thickness - top
    lean = (top - foot) / tan(radians(hat.angle))
    half = hat.breadth / 2
    right = ((half, top), (half + lean, foot), (half + lean + hat.flange, foot))
    return (*((-x, y) for x, y in reversed(right)), *right)


LINES: dict[str, Callable[[SectionShape], tuple[Point2, ...]]] = {
    "cee": _cee_line,
    "zee": _zee_line,
    "hat": _hat_line,
}
"""How the folded shapes are bent."""


def _tube(tube: SectionShape) -> Section:
    wall = tube.thickness
    inner = _rectangle(tube.breadth - 2 * wall, tube.depth - 2 * wall, wall)
    return Section(_rectangle(tube.breadth, tube.depth, 2 * wall), (inner,))


def _plate(plate: SectionShape) -> Section:
    return Section(_rectangle(plate.breadth, plate.depth, 0.0))


def _rod(rod: SectionShape) -> Section:
    return Section(round_hole((0.0, 0.0), rod.depth / 2))


def _rectangle(width: float, depth: float, radius: float) -> tuple[Point3, ...]:
    x, y, r = grid(width / 2), grid(depth / 2), grid(radius)
    return ((-x, -y, r), (x, -y, r), (x, y, r), (-x, y, r))


def _angle(angle: SectionShape) -> Section:
    x, y, t = grid(angle.breadth / 2), grid(angle.depth / 2), angle.thickness
    inner = (grid(t - x), grid(t - y), grid(angle.radius))
    return Section(
        (
            (-x, -y, 0.0),
            (x, -y, 0.0),
            (x, inner[1], 0.0),
            inner,
            (inner[0], y, 0.0),
            (-x, y, 0.0),
        )
    )
