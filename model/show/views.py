"""Where the eye stands: named views and close-ups of a building, as plain numbers in mm.

Kept apart from the graphics so that the command can name the views without loading any.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from ..place import Point3, add, cross, dot, unit

Bounds = tuple[Point3, Point3]

ANGLE = 28.0  # degrees, the height of the field of view; about that of a portrait lens
INSIDE_ANGLE = 75.0  # degrees; a room needs a wide one
EYE_HEIGHT = 1650.0  # mm above the slab
MARGIN = 1.06  # how much larger than the subject the field is

# From the middle of the building toward the eye. X is to the right, Y to the back, Z up.
_TOWARD_EYE: dict[str, Point3] = {
    "front left": (-1.0, -1.25, 0.36),
    "front right": (1.0, -1.25, 0.36),
    "back left": (-1.0, 1.25, 0.36),
    "back right": (1.0, 1.25, 0.36),
    "front": (0.0, -1.0, 0.05),
    "back": (0.0, 1.0, 0.05),
    "left": (-1.0, 0.0, 0.05),
    "right": (1.0, 0.0, 0.05),
    "top": (0.0, -0.001, 1.0),
    "below": (-0.8, -1.0, -0.6),
}
INSIDE = "inside"
VIEWS = (*_TOWARD_EYE, INSIDE)


@dataclass(frozen=True, slots=True)
class Camera:
    """eye, target: mm in the building's axes. up: of the picture. angle: degrees, of its height."""

    eye: Point3
    target: Point3
    up: Point3 = (0.0, 0.0, 1.0)
    angle: float = ANGLE


def middle(bounds: Bounds) -> Point3:
    """Centre of a box."""
    low, high = bounds
    return (0.5 * (low[0] + high[0]), 0.5 * (low[1] + high[1]), 0.5 * (low[2] + high[2]))


def whole(bounds: Bounds, view: str, aspect: float) -> Camera:
    """The camera of a named view that holds all of a box. aspect: width of the picture by its height."""
    if view == INSIDE:
        return _inside(bounds)
    away = unit(_TOWARD_EYE[view])
    up: Point3 = (0.0, 1.0, 0.0) if view == "top" else (0.0, 0.0, 1.0)
    right = unit(cross(up, away))
    high = cross(away, right)
    centre = middle(bounds)
    tan_high = math.tan(math.radians(ANGLE / 2)) / MARGIN
    distance = 0.0
    for corner in corners(bounds):
        offset = add(corner, centre, -1.0)
        needed = max(abs(dot(offset, right)) / (tan_high * aspect), abs(dot(offset, high)) / tan_high)
        distance = max(distance, needed + dot(offset, away))
    return Camera(add(centre, away, distance), centre, up)


def close_up(target: Point3, view: str, distance: float) -> Camera:
    """The camera that looks at a point from a named view's side, from `distance` mm away."""
    toward = _TOWARD_EYE["front left"] if view == INSIDE else _TOWARD_EYE[view]
    up: Point3 = (0.0, 1.0, 0.0) if view == "top" else (0.0, 0.0, 1.0)
    return Camera(add(target, unit(toward), distance), target, up)


def _inside(bounds: Bounds) -> Camera:
    """A person in the front right corner, who looks along the room at the roof's foot on the far side."""
    (x0, y0, z0), (x1, y1, z1) = bounds
    eye = (x0 + 0.85 * (x1 - x0), y0 + 0.08 * (y1 - y0), min(max(z0, 0.0) + EYE_HEIGHT, 0.5 * (z0 + z1)))
    target = (x0 + 0.3 * (x1 - x0), y0 + 0.8 * (y1 - y0), z0 + 0.55 * (z1 - z0))
    return Camera(eye, target, angle=INSIDE_ANGLE)


def corners(bounds: Bounds) -> list[Point3]:
    """The eight corners of a box."""
    low, high = bounds
    return [(x, y, z) for x in (low[0], high[0]) for y in (low[1], high[1]) for z in (low[2], high[2])]
