"""Where the eye stands: named views and close-ups of a building, as plain numbers in mm.

Kept apart from the graphics so that the command can name the views without loading any.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from ..place import Point3, add, cross, dot, unit

Bounds = tuple[Point3, Point3]

ANGLE = 28.0  # degrees, the height of the field of view; about that of a portrait lens
INSIDE_ANGLE = 75.0  # degrees; a room needs a wide one
EYE_HEIGHT = 1650.0  # mm above what the person stands on
STEEP = 0.5  # most rise or fall from the eye to the middle of what is seen, in distances: else walls lean
MARGIN = 1.1  # how much larger than the subject the field is; a line of words has room below
BELOW = 0.35  # share of the room above and below that is below, where the shadow falls

# From the middle of the building toward the eye. X is to the right, Y to the back, Z up.
_CORNERS: dict[str, Point3] = {
    "front left": (-1.0, -1.25, 0.0),
    "front right": (1.0, -1.25, 0.0),
    "back left": (-1.0, 1.25, 0.0),
    "back right": (1.0, 1.25, 0.0),
}
ABOVE, UNDER, INSIDE = "above", "below", "inside"
_ELEVATIONS: dict[str, Point3] = {
    "front": (0.0, -1.0, 0.0),
    "back": (0.0, 1.0, 0.0),
    "left": (-1.0, 0.0, 0.0),
    "right": (1.0, 0.0, 0.0),
    ABOVE: (0.0, 0.0, 1.0),
}
_UNDER: Point3 = (-0.8, -1.0, -0.6)
VIEWS = (*_CORNERS, *_ELEVATIONS, UNDER, INSIDE)
STANDING = (*_CORNERS, *(view for view in _ELEVATIONS if view != ABOVE))
"""The views of someone who stands outside."""


@dataclass(frozen=True, slots=True)
class Camera:
    """eye, target: mm in the building's axes. up: of the picture. angle: degrees, of its height.

    half: mm, half the height of a parallel picture; 0 for one in perspective. shift: how far the middle of
    the picture is from the target, in halves of its width and height, as with a lens that slides.
    """

    eye: Point3
    target: Point3
    up: Point3 = (0.0, 0.0, 1.0)
    angle: float = ANGLE
    half: float = 0.0
    shift: tuple[float, float] = (0.0, 0.0)

    @property
    def axes(self) -> tuple[Point3, Point3, Point3]:
        """Unit vectors of the picture: to the right, up, and toward the eye."""
        back = unit(add(self.eye, self.target, -1.0))
        right = unit(cross(self.up, back))
        return right, cross(back, right), back

    def seen(self, point: Point3, aspect: float) -> tuple[float, float]:
        """Where a point falls: -1 to 1 to the right and up is the picture."""
        right, high, back = self.axes
        offset = add(point, self.eye, -1.0)
        half = self.half or -math.tan(math.radians(self.angle / 2)) * dot(offset, back)
        return (
            dot(offset, right) / (half * aspect) - self.shift[0],
            dot(offset, high) / half - self.shift[1],
        )


def middle(bounds: Bounds) -> Point3:
    """Centre of a box."""
    low, high = bounds
    return (0.5 * (low[0] + high[0]), 0.5 * (low[1] + high[1]), 0.5 * (low[2] + high[2]))


def corners(*boxes: Bounds) -> list[Point3]:
    """The eight corners of each box."""
    return [
        (x, y, z)
        for low, high in boxes
        for x in (low[0], high[0])
        for y in (low[1], high[1])
        for z in (low[2], high[2])
    ]


def around_all(boxes: Sequence[Bounds]) -> Bounds:
    """The box around boxes."""
    lows, highs = zip(*boxes, strict=True)
    x0, y0, z0 = (min(parts) for parts in zip(*lows, strict=True))
    x1, y1, z1 = (max(parts) for parts in zip(*highs, strict=True))
    return (x0, y0, z0), (x1, y1, z1)


def toward_eye(view: str) -> Point3:
    """The unit vector from what is seen toward the eye."""
    return unit({**_CORNERS, **_ELEVATIONS, UNDER: _UNDER, INSIDE: _CORNERS["front left"]}[view])


def whole(
    boxes: Sequence[Bounds], view: str, aspect: float, ground: float = 0.0, aside: Sequence[Bounds] = ()
) -> Camera:
    """The camera of a named view that looks at the middle of the boxes and holds them and what is aside.

    aspect: width of the picture by its height. ground: mm, what a person stands on. From the corners the
    eye is as high as a person's and looks level, so that what is plumb is upright in the picture; front,
    back, left, right and above are in parallel.
    """
    around = around_all(boxes)
    if view == INSIDE:
        return _inside(around)
    centre, away = middle(around), toward_eye(view)
    points = corners(*boxes, *aside)
    if view in _ELEVATIONS:
        camera = Camera(add(centre, away, 2.0 * math.dist(*around)), centre, _up(view), half=1.0)
    else:
        camera = _standing(points, centre, away, aspect, None if view == UNDER else ground + EYE_HEIGHT)
    return _framed(camera, points, aspect, 0.5 if view in (ABOVE, UNDER) else BELOW)


def from_above(boxes: Sequence[Bounds], corner: str, aspect: float) -> Camera:
    """The camera that looks down a little on all of the boxes from a corner, one of the named views."""
    x, y, _ = toward_eye(corner)
    centre, points = middle(around_all(boxes)), corners(*boxes)
    return _framed(_standing(points, centre, unit((x, y, 0.4)), aspect, None), points, aspect, 0.5)


def close_up(target: Point3, view: str, distance: float) -> Camera:
    """The camera that looks at a point from a named view's side, a little from above, `distance` mm away."""
    x, y, z = toward_eye(view)
    lift = {**dict.fromkeys(_CORNERS, 0.22), INSIDE: 0.22, ABOVE: 0.0, UNDER: 0.0}.get(view, 0.05)
    return Camera(add(target, unit((x, y, z + lift)), distance), target, _up(view))


def _up(view: str) -> Point3:
    return (0.0, 1.0, 0.0) if view == ABOVE else (0.0, 0.0, 1.0)


def _standing(
    points: Sequence[Point3], centre: Point3, away: Point3, aspect: float, eye_height: float | None
) -> Camera:
    """As near as a field of the usual angle holds the points. eye_height: mm; None for that of the centre."""

    def at(distance: float) -> Camera:
        x, y, z = add(centre, away, distance)
        if eye_height is None:
            return Camera((x, y, z), centre)
        return Camera((x, y, eye_height), (centre[0], centre[1], eye_height))

    nearest = max(dot(add(point, centre, -1.0), away) for point in points) + 1.0
    if eye_height is not None:
        nearest = max(nearest, abs(centre[2] - eye_height) / STEEP)
    near, far = nearest, 2.0 * nearest
    while _spread(at(far), points, aspect) > 1.0:
        near, far = far, 2.0 * far
    for _ in range(50):
        between = 0.5 * (near + far)
        near, far = (between, far) if _spread(at(between), points, aspect) > 1.0 else (near, between)
    return at(far)


def _spread(camera: Camera, points: Sequence[Point3], aspect: float) -> float:
    """How much larger than the field the points are, the larger way."""
    return max(0.5 * (high - low) * MARGIN for low, high in _reach(camera, points, aspect))


def _reach(camera: Camera, points: Sequence[Point3], aspect: float) -> list[tuple[float, float]]:
    """From where to where the points are seen, across and up."""
    return [(min(parts), max(parts)) for parts in zip(*(camera.seen(p, aspect) for p in points), strict=True)]


def _framed(camera: Camera, points: Sequence[Point3], aspect: float, below: float) -> Camera:
    """The same eye with the field set close around the points. below: share of what is left of the height."""
    (left, right), (low, high) = _reach(camera, points, aspect)
    grown = 0.5 * max(right - left, high - low) * MARGIN
    left, right, low, high = (part / grown for part in (left, right, low, high))
    room = 2.0 - (high - low)
    shift = (0.5 * (left + right), low - below * room + 1.0)
    angle = 2.0 * math.degrees(math.atan(math.tan(math.radians(camera.angle / 2)) * grown))
    return Camera(camera.eye, camera.target, camera.up, angle, camera.half * grown, shift)


def _inside(bounds: Bounds) -> Camera:
    """A person in the front right corner, who looks along the room at the roof's foot on the far side."""
    (x0, y0, z0), (x1, y1, z1) = bounds
    eye = (x0 + 0.85 * (x1 - x0), y0 + 0.08 * (y1 - y0), min(max(z0, 0.0) + EYE_HEIGHT, 0.5 * (z0 + z1)))
    target = (x0 + 0.3 * (x1 - x0), y0 + 0.8 * (y1 - y0), z0 + 0.55 * (z1 - z0))
    return Camera(eye, target, angle=INSIDE_ANGLE)
