"""A drawing in the sun, on the ground, under a sky; rendered without a screen, by VTK.

Imported only when a picture is asked for: the graphics libraries take their time to load.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from vtkmodules.vtkRenderingCore import vtkActor, vtkProp, vtkRenderer, vtkTexture

from ..place import Point3, add, dot
from .actors import line_work, shine, skin, tell, texture
from .lines import Drawing, Floats, Ints, bounds_of
from .offscreen import Pixels, depths_of, new_window, taken, thinned
from .paint import inked
from .sunlight import (
    GLAZED,
    GROUNDED,
    LIFT,
    LINE,
    PAINTED,
    SHADE,
    SHADOW_ALONE,
    SUN,
    SURFACE,
    depth_range,
    shadow_matrix,
    sunward,
)
from .surroundings import person
from .views import Bounds, Camera, corners, middle

Values = dict[str, float | Sequence[float] | Floats]

FINE = 2  # every pixel of the picture is the mean of FINE x FINE rendered ones: smooth thin lines
HAZE, HIGH = (0.9, 0.93, 0.95), (0.52, 0.69, 0.86)
GROUND, CLOTHES = (184, 186, 168), (107, 117, 133)
PAPER = (1.0, 1.0, 1.0)
UNDER = 6.0  # mm of the ground under what stands on it, whose lowest edges are seen so
REACH = 60.0  # of the ground, in diagonals of what is drawn
NEAREST = 50.0  # mm before the eye
LINE_WIDTH = 0.8  # pixels
STRONG, FAINT = 0.7, 0.2  # of edges and of bends


@dataclass(frozen=True, slots=True)
class Setting:
    """What stands around what is drawn. ground: its height, mm, None for none. person: where one stands.

    clear: nothing around is painted, and of the ground the shadow alone. dim: how bright shadows are.
    """

    ground: float | None = None
    person: Point3 | None = None
    clear: bool = False
    dim: float = 0.62


class Scene:
    """A drawing whose actors are made once, to be seen from as many places as are wanted."""

    def __init__(self, drawing: Drawing) -> None:
        self._window = new_window()
        self._bounds = drawing.bounds
        self._skins = [skin(*mesh, colour) for colour, mesh in drawing.skins.items()]
        self._panes = [skin(*mesh, colour) for colour, mesh in drawing.panes.items()]
        self._lines = [
            line_work(creases, inked(colour, strength), LINE_WIDTH * FINE)
            for gathered, strength in ((drawing.bends, FAINT), (drawing.edges, STRONG))
            for colour, creases in gathered.items()
        ]

    def seen(
        self, camera: Camera, width: int, height: int, setting: Setting, over: Iterable[vtkProp] = ()
    ) -> Pixels:
        """(height, width, 4), from the top row down. over: what is laid over it, in pixels of a picture
        FINE times as large."""
        ground = self._bounds[0][2] if setting.ground is None else setting.ground
        someone = skin(*person(setting.person), CLOTHES) if setting.person else None
        boxes = [self._bounds, *([bounds_of(person(setting.person)[0])] if setting.person else [])]
        casting = [*self._skins, *([someone] if someone else [])]
        sun = sunward(boxes, ground, camera)
        fine = min(SHADE, 2 * FINE * max(width, height))
        shade = self._shade(casting, sun, fine)
        renderer = vtkRenderer()
        aim(renderer, camera, boxes, ground)
        _background(renderer, camera, height, setting)
        values = self._values(renderer, sun, ground)
        values |= {"dim": setting.dim, "lift": LIFT * 2.0 * sun.half / fine}
        for actor in self._lit(shade, casting, ground, camera, setting):
            tell(actor, values)
            renderer.AddActor(actor)
        for prop in over:
            renderer.AddViewProp(prop)
        return thinned(taken(self._window, renderer, width * FINE, height * FINE), FINE)

    def _lit(
        self, shade: vtkTexture, casting: Sequence[vtkActor], ground: float, camera: Camera, setting: Setting
    ) -> Iterator[vtkActor]:
        """Everything that is seen, and how it is lit."""
        for actor in casting:
            yield shine(actor, shade, SURFACE, PAINTED)
        for actor in self._lines:
            yield shine(actor, shade, LINE, PAINTED)
        for actor in self._panes:
            actor.GetProperty().SetOpacity(0.9)  # drawn after what is behind them
            yield shine(actor, shade, SURFACE, GLAZED)
        if setting.ground is None or camera.eye[2] < ground:
            return
        earth = skin(*_earth(self._bounds, camera, ground - UNDER), GROUND)
        if setting.clear:
            earth.GetProperty().SetOpacity(0.9)
            if not camera.half or camera.axes[2][2] > 0.5:
                yield shine(earth, shade, SHADOW_ALONE)
        else:
            yield shine(earth, shade, GROUNDED)

    def _values(self, renderer: vtkRenderer, sun: Camera, ground: float) -> Values:
        """What the light asks for, as the eye has it."""
        view = view_matrix(renderer)
        x, y, _ = middle(self._bounds)
        return {
            "sun": view[:3, :3] @ np.array(SUN),
            "above": view[:3, 2],
            "sunward": shadow_matrix(sun) @ np.linalg.inv(view),
            "centre": view[:3, :3] @ np.array((x, y, ground)) + view[:3, 3],
            "reach": math.dist(*self._bounds),
            "haze": HAZE,
            "high": HIGH,
        }

    def _shade(self, casting: Sequence[vtkActor], sun: Camera, fine: int) -> vtkTexture:
        """What the sun sees, as depths. fine: pixels each way."""
        renderer = vtkRenderer()
        _lens(renderer, sun, *depth_range(sun))
        for actor in casting:
            actor.GetShaderProperty().ClearAllFragmentShaderReplacements()
            renderer.AddActor(actor)
        taken(self._window, renderer, fine, fine)
        return texture(depths_of(self._window))


def _lens(renderer: vtkRenderer, camera: Camera, near: float, far: float) -> None:
    """Points VTK's camera."""
    eye = renderer.GetActiveCamera()
    eye.SetPosition(*camera.eye)
    eye.SetFocalPoint(*camera.target)
    eye.SetViewUp(*camera.up)
    eye.SetViewAngle(camera.angle)
    eye.SetParallelProjection(camera.half > 0.0)
    eye.SetParallelScale(camera.half or 1.0)
    eye.SetWindowCenter(*camera.shift)
    eye.SetClippingRange(near, far)


def view_matrix(renderer: vtkRenderer) -> Floats:
    """(4, 4) from building axes to those of the eye: to the right, up, and back."""
    found = renderer.GetActiveCamera().GetViewTransformMatrix()
    return np.array([[found.GetElement(row, column) for column in range(4)] for row in range(4)])


def aim(renderer: vtkRenderer, camera: Camera, boxes: Sequence[Bounds], ground: float) -> None:
    """What is drawn lies between the ground at the foot of the picture and the ground's edge."""
    back = camera.axes[2]
    depths = [-dot(back, add(corner, camera.eye, -1.0)) for corner in corners(*boxes)]
    size = math.dist(*boxes[0])
    beyond = size if camera.half else 2.0 * REACH * size  # in parallel no ground is seen far off
    above = abs(camera.eye[2] - ground)  # what is seen of the ground is no nearer, looking level
    _lens(renderer, camera, max(min(0.3 * min(depths), above), NEAREST), max(*depths, NEAREST) + beyond)


def _background(renderer: vtkRenderer, camera: Camera, height: int, setting: Setting) -> None:
    """A sky, deeper from the horizon up; paper where there is no ground; nothing where all is clear."""
    renderer.SetBackground(*PAPER)
    renderer.SetBackgroundAlpha(0.0 if setting.clear else 1.0)
    if setting.clear:
        renderer.SetBackground(0.0, 0.0, 0.0)
    elif setting.ground is not None:
        renderer.SetBackgroundTexture(texture(_sky(camera, height)))
        renderer.TexturedBackgroundOn()


def _sky(camera: Camera, height: int) -> Pixels:
    """(height, 2, 3) colours, from the bottom row up."""
    up = (np.arange(height) + 0.5) / height * 2.0 - 1.0 + camera.shift[1]
    fall = camera.axes[2][2]
    tangent = math.tan(math.radians(camera.angle / 2))
    horizon = -1.0 if camera.half else -fall / max(math.sqrt(1.0 - fall * fall), 1e-6) / -tangent
    share = np.sqrt(np.clip((up - horizon) * (0.25 if camera.half else 1.6 * tangent), 0.0, 1.0))[:, None]
    colours = np.array(HAZE) * (1.0 - share) + np.array(HIGH) * share
    return np.asarray((255.0 * colours).round().astype(np.uint8)[:, None, :].repeat(2, axis=1))


def _earth(bounds: Bounds, camera: Camera, ground: float) -> tuple[Floats, Ints]:
    """The ground: a wide square; in an elevation, which sees its edge alone, a cut through it."""
    x, y, _ = middle(bounds)
    reach = REACH * math.dist(*bounds)
    spots = ((-1, -1), (1, -1), (1, 1), (-1, 1))
    if camera.half and camera.axes[2][2] < 0.5:
        right, _, back = camera.axes
        near = add(middle(bounds), back, math.dist(*bounds))
        flat = (near[0], near[1], ground - reach)
        square = [add(add(flat, right, a * reach), (0.0, 0.0, 1.0), b * reach) for a, b in spots]
    else:
        square = [(x + a * reach, y + b * reach, ground) for a, b in spots]
    return np.array(square), np.array([(0, 1, 2), (0, 2, 3)], dtype=np.int64)
