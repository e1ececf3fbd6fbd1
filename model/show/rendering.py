"""A drawing rendered without a screen, by VTK.

Imported only when a picture is asked for: the graphics libraries take their time to load.
"""

from __future__ import annotations

import ctypes
import os
from collections.abc import Iterator

import numpy as np
import numpy.typing as npt
from vtkmodules.util.numpy_support import numpy_to_vtk, numpy_to_vtkIdTypeArray, vtk_to_numpy
from vtkmodules.vtkCommonCore import VTK_UNSIGNED_CHAR, vtkLogger, vtkPoints
from vtkmodules.vtkCommonDataModel import vtkCellArray, vtkImageData, vtkPolyData
from vtkmodules.vtkIOImage import vtkPNGWriter
from vtkmodules.vtkRenderingCore import (
    vtkActor,
    vtkLight,
    vtkPolyDataMapper,
    vtkRenderer,
    vtkRenderWindow,
    vtkTextActor,
    vtkWindowToImageFilter,
)

# Rendering is done by the plug-in that this import registers.
import vtkmodules.vtkRenderingOpenGL2  # isort: skip
import vtkmodules.vtkRenderingFreeType  # noqa: F401  # isort: skip

from ..errors import FileError
from ..place import add, dot, unit
from .lines import Drawing, Floats, Ints
from .paint import Colour
from .views import Bounds, Camera, corners, middle

FINE = 2  # every pixel of the picture is the mean of FINE x FINE rendered ones: smooth thin lines
STAND_BACK = (0.4, 0.2)  # slope, and units of depth; less than is usual, since sheets are thin
SKY = (0.80, 0.87, 0.94)
HAZE = (0.97, 0.98, 0.98)
GROUND = (0.80, 0.81, 0.78)
GROUND_NEARER = 0.3  # share of the nearest depth of what is drawn: ground before it is drawn too
GROUND_REACH = 150.0  # times the largest side of what is drawn
LIGHTS = (((-0.7, 1.0, 1.1), 0.70), ((1.5, 0.3, 0.8), 0.25), ((0.0, 1.0, 0.1), 0.15), ((0.0, 0.0, 1.0), 0.42))
NEAREST = 50.0  # mm before the eye
INK = (0.13, 0.14, 0.16)
LINE = 0.8  # pixels
STRONG, FAINT = 0.8, 0.22  # opacity of edges and of bends
GRAPHICS = "no graphics library to draw pictures with (Debian, Ubuntu: apt-get install libegl1 libgl1)"


def png(
    drawing: Drawing, camera: Camera, width: int, height: int, ground: bool = True, caption: str = ""
) -> bytes:
    """A PNG file's bytes: the drawing on a plain ground under a soft sky.

    width, height: pixels. caption: a line in the lower left corner. Raises FileError where this machine has
    no graphics library.
    """
    window = _window()
    renderer = vtkRenderer()
    renderer.SetBackground(*HAZE)
    renderer.SetBackground2(*SKY)
    renderer.GradientBackgroundOn()
    renderer.SetTwoSidedLighting(True)
    for actor in _actors(drawing, ground, camera):
        renderer.AddActor(actor)
    if caption:
        renderer.AddViewProp(_words(caption, width, height))
    _light(renderer)
    _aim(renderer, camera, drawing.bounds)
    window.AddRenderer(renderer)
    window.SetSize(width * FINE, height * FINE)
    window.Render()
    return _encoded(_thinned(_pixels(window)))


def _window() -> vtkRenderWindow:
    """An offscreen window. Without a library to draw with, rendering would end the process."""
    os.environ.setdefault("EGL_LOG_LEVEL", "fatal")
    vtkLogger.SetStderrVerbosity(vtkLogger.VERBOSITY_OFF)
    window = vtkRenderWindow()
    if window.GetClassName() == "vtkOSOpenGLRenderWindow" and not _loads("libOSMesa.so.8", "libOSMesa.so"):
        raise FileError(GRAPHICS)
    window.SetOffScreenRendering(True)
    window.SetMultiSamples(0)
    return window


def _loads(*names: str) -> bool:
    for name in names:
        try:
            ctypes.CDLL(name)
        except OSError:
            continue
        return True
    return False


def _actors(drawing: Drawing, ground: bool, camera: Camera) -> Iterator[vtkActor]:
    for colour, (points, triangles) in sorted(drawing.skins.items()):
        yield _skin(points, triangles, colour)
    yield _lines(*drawing.bends, strength=FAINT)
    yield _lines(*drawing.edges, strength=STRONG)
    if ground and camera.eye[2] > drawing.bounds[0][2]:
        yield _ground(drawing.bounds)


def _words(text: str, width: int, height: int) -> vtkTextActor:
    """A line of text, no wider than the picture."""
    actor = vtkTextActor()
    actor.SetInput(text)
    look = actor.GetTextProperty()
    look.SetColor(*INK)
    look.SetFontSize(round(FINE * min(height / 55, 1.7 * width / len(text))))
    actor.SetPosition(FINE * height / 80, FINE * height / 80)
    return actor


def _skin(points: Floats, triangles: Ints, colour: Colour) -> vtkActor:
    data = _poly_data(points)
    data.SetPolys(_cells(triangles))
    actor = _actor(data)
    look = actor.GetProperty()
    look.SetColor(*(part / 255.0 for part in colour))
    look.SetInterpolationToFlat()
    look.SetAmbient(0.48)
    look.SetDiffuse(0.75)
    look.SetSpecular(0.08)
    look.SetSpecularPower(20.0)
    return actor


def _lines(points: Floats, pairs: Ints, strength: float) -> vtkActor:
    """strength: 1 for ink that lets nothing through."""
    data = _poly_data(points)
    data.SetLines(_cells(pairs))
    actor = _actor(data)
    look = actor.GetProperty()
    look.SetColor(*INK)
    look.SetLineWidth(LINE * FINE)
    look.SetOpacity(strength)
    look.LightingOff()
    return actor


def _ground(bounds: Bounds) -> vtkActor:
    """A wide square under everything."""
    x, y, _ = middle(bounds)
    reach = GROUND_REACH * _size(bounds)
    under = bounds[0][2] - 1.0
    square = np.array(
        [(x + a * reach, y + b * reach, under) for a, b in ((-1, -1), (1, -1), (1, 1), (-1, 1))]
    )
    data = _poly_data(square)
    data.SetPolys(_cells(np.arange(4, dtype=np.int64).reshape(1, 4)))
    actor = _actor(data)
    actor.GetProperty().SetColor(*GROUND)
    actor.GetProperty().LightingOff()
    return actor


def _size(bounds: Bounds) -> float:
    low, high = bounds
    return max(high[0] - low[0], high[1] - low[1], high[2] - low[2])


def _poly_data(points: Floats) -> vtkPolyData:
    carrier = vtkPoints()
    carrier.SetData(numpy_to_vtk(np.ascontiguousarray(points), deep=True))
    data = vtkPolyData()
    data.SetPoints(carrier)
    return data


def _cells(corners: Ints) -> vtkCellArray:
    """Cells of equally many points each, (n, points)."""
    count, each = corners.shape
    offsets = np.arange(count + 1, dtype=np.int64) * each
    cells = vtkCellArray()
    flat = np.ascontiguousarray(corners.ravel(), dtype=np.int64)
    cells.SetData(numpy_to_vtkIdTypeArray(offsets, deep=True), numpy_to_vtkIdTypeArray(flat, deep=True))
    return cells


def _actor(data: vtkPolyData) -> vtkActor:
    """An actor whose faces stand back a little, so that edges drawn on them are seen whole."""
    mapper = vtkPolyDataMapper()
    mapper.SetInputData(data)
    mapper.SetResolveCoincidentTopologyToPolygonOffset()
    mapper.SetResolveCoincidentTopologyPolygonOffsetParameters(*STAND_BACK)
    mapper.SetResolveCoincidentTopologyLineOffsetParameters(0.0, 0.0)
    actor = vtkActor()
    actor.SetMapper(mapper)
    return actor


def _light(renderer: vtkRenderer) -> None:
    """A key light over the left shoulder, weak ones from the right, from above and from the eye."""
    renderer.AutomaticLightCreationOff()
    for place, strength in LIGHTS:
        light = vtkLight()
        light.SetLightTypeToCameraLight()
        light.SetPosition(*place)
        light.SetFocalPoint(0.0, 0.0, 0.0)
        light.SetIntensity(strength)
        renderer.AddLight(light)


def _aim(renderer: vtkRenderer, camera: Camera, bounds: Bounds) -> None:
    """Points the camera; what is drawn lies between the ground before the bounds and the ground's edge."""
    look = unit(add(camera.target, camera.eye, -1.0))
    depths = [dot(look, add(corner, camera.eye, -1.0)) for corner in corners(bounds)]
    farthest = max(*depths, NEAREST) + 2.0 * GROUND_REACH * _size(bounds)
    eye = renderer.GetActiveCamera()
    eye.SetPosition(*camera.eye)
    eye.SetFocalPoint(*camera.target)
    eye.SetViewUp(*camera.up)
    eye.SetViewAngle(camera.angle)
    eye.SetClippingRange(max(GROUND_NEARER * min(depths), NEAREST), farthest)


def _pixels(window: vtkRenderWindow) -> npt.NDArray[np.uint8]:
    """What was rendered: (height, width, 3), from the bottom row up."""
    grab = vtkWindowToImageFilter()
    grab.SetInput(window)
    grab.SetInputBufferTypeToRGB()
    grab.ReadFrontBufferOff()
    grab.ShouldRerenderOff()
    grab.Update()
    image = grab.GetOutput()
    width, height, _ = image.GetDimensions()
    pixels: npt.NDArray[np.uint8] = vtk_to_numpy(image.GetPointData().GetScalars())
    return pixels.reshape(height, width, 3)


def _thinned(pixels: npt.NDArray[np.uint8]) -> npt.NDArray[np.uint8]:
    """The mean of every FINE x FINE pixels."""
    height, width, parts = pixels.shape
    blocks = pixels.reshape(height // FINE, FINE, width // FINE, FINE, parts)
    thinned: npt.NDArray[np.uint8] = blocks.mean(axis=(1, 3)).round().astype(np.uint8)
    return thinned


def _encoded(pixels: npt.NDArray[np.uint8]) -> bytes:
    height, width, parts = pixels.shape
    image = vtkImageData()
    image.SetDimensions(width, height, 1)
    flat = np.ascontiguousarray(pixels.reshape(-1, parts))
    image.GetPointData().SetScalars(numpy_to_vtk(flat, deep=True, array_type=VTK_UNSIGNED_CHAR))
    writer = vtkPNGWriter()
    writer.SetInputData(image)
    writer.SetCompressionLevel(9)
    writer.WriteToMemoryOn()
    writer.Write()
    return bytes(vtk_to_numpy(writer.GetResult()))
