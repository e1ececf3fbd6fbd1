"""One sun: where it stands, what it sees, and how a surface looks in its light and in shadow.

Colours stay true: what the sun falls on is drawn in the colour it has, as on the customer's page. So there
is no lamp, no gloss and no exposure, and light is not linear: a colour is multiplied as written, in sRGB.
"""

from __future__ import annotations

import math

import numpy as np

from ..place import Point3, add, cross, dot, unit
from .lines import Floats
from .views import Bounds, Camera, around_all, corners, middle

SUN: Point3 = unit((-0.62, -0.78, 0.72))
"""Toward it: from the front left and high enough that both walls of the opening view stand in it."""
SHADE = 4096  # pixels of what it sees, each way, at most
ABOUT = 3.0  # distances of the eye from what it looks at, around which there are shadows
LIFT = 2.5  # pixels of that by which a point is lifted off its surface, which else would shade itself

LIGHT = """
float sunlight(vec3 at, vec3 n) {
  float d = dot(n, sun);
  if (d <= 0.0) return 0.0;
  float sunny = min(1.0, 3.0 * d);
  vec3 q = (sunward * vec4(at + lift * n, 1.0)).xyz;
  if (any(lessThan(q, vec3(0.0))) || any(greaterThan(q, vec3(1.0)))) return sunny;
  float lit = 0.0;
  for (int i = 0; i < 9; i++) {
    vec2 aside = (vec2(float(i % 3), float(i / 3)) - 1.0) / float(textureSize(shade, 0).x);
    vec3 bytes = texture(shade, q.xy + aside).rgb; // the lowest first
    lit += step(q.z, dot(bytes, vec3(255.0, 65280.0, 16711680.0)) / 16777215.0);
  }
  return sunny * lit / 9.0;
}
vec3 shaded(vec3 c, vec3 n, float light) { // a little less where the sun comes aslant: walls read apart
  float sky = dim + 0.1 * dot(n, above);
  return c * mix(sky, 0.94 + 0.06 * clamp(2.5 * dot(n, sun) - 0.6, 0.0, 1.0), light);
}
"""
"""Of points, normals, the sun and what is above as the eye has them."""
SURFACE = "vec3 n = normalize(cross(dFdx(vertexVC.xyz), dFdy(vertexVC.xyz)));"
LINE = "vec3 n = normalVCVSOutput;"
PAINTED = "fragOutput0 = vec4(shaded(diffuseColor, n, sunlight(vertexVC.xyz, n)), opacity);"
GLAZED = """
  vec3 way = normalize(vertexVC.xyz);
  float up = clamp(dot(reflect(way, n), above), 0.0, 1.0);
  float glance = pow(1.0 - abs(dot(way, n)), 3.0);
  vec3 air = mix(haze, high, sqrt(up));
  vec3 pane = mix(shaded(diffuseColor, n, 1.0), air, 0.3 + 0.6 * glance);
  fragOutput0 = vec4(pane, 0.42 + 0.5 * glance);
"""
GROUNDED = """
  vec3 n = above;
  vec3 c = shaded(diffuseColor, n, sunlight(vertexVC.xyz, n));
  float away = smoothstep(1.5 * reach, 12.0 * reach, distance(vertexVC.xyz, centre));
  fragOutput0 = vec4(mix(c, haze, away), 1.0);
"""
SHADOW_ALONE = """
  float light = sunlight(vertexVC.xyz, above);
  fragOutput0 = vec4(vec3(0.0), 0.35 * (1.0 - light));
"""


def sunward(boxes: list[Bounds], ground: float, eye: Camera) -> Camera:
    """The sun as a camera that sees the boxes and the ground their shadows fall on.

    eye: who looks; of a close-up the sun sees no more than what is around it, so that shadows stay sharp.
    """
    centre = middle(boxes[0])
    points = corners(*boxes, *(shadow_of(box, ground) for box in boxes))
    right = unit(cross((0.0, 0.0, 1.0), SUN))
    high = cross(SUN, right)
    offsets = [add(point, centre, -1.0) for point in points]
    half = 1.02 * max(abs(dot(offset, axis)) for offset in offsets for axis in (right, high))
    deep = max(abs(dot(offset, SUN)) for offset in offsets)
    near = ABOUT * math.dist(eye.eye, eye.target)
    if near < half:
        aside = add(eye.target, centre, -1.0)
        centre, half = add(eye.target, SUN, -dot(aside, SUN)), near
    return Camera(add(centre, SUN, 1.1 * deep + 100.0), centre, half=half)


def shadow_of(box: Bounds, ground: float) -> Bounds:
    """What holds the shadow of a box on the ground."""
    fallen = [add(corner, SUN, -(corner[2] - ground) / SUN[2]) for corner in corners(box)]
    low, high = around_all([(point, point) for point in fallen])
    return (low[0], low[1], ground), (high[0], high[1], ground)


def depth_range(camera: Camera) -> tuple[float, float]:
    """mm from the sun to the nearest and the farthest that it sees."""
    away = math.dist(camera.eye, camera.target)
    return 1.0, 2.0 * away


def shadow_matrix(camera: Camera) -> Floats:
    """(4, 4) from building axes to 0 to 1 in what the sun sees: across, up, and deep."""
    near, far = depth_range(camera)
    right, high, back = camera.axes
    rows = np.zeros((4, 4))
    for row, (axis, scale, middle_) in enumerate(
        ((right, 0.5 / camera.half, 0.5), (high, 0.5 / camera.half, 0.5), (back, -1.0 / (far - near), 0.0))
    ):
        rows[row, :3] = np.array(axis) * scale
        rows[row, 3] = middle_ - scale * dot(axis, camera.eye)
    rows[2, 3] -= near / (far - near)
    rows[3, 3] = 1.0
    return rows
