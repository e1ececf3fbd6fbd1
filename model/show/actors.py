"""Meshes, lines and words as VTK draws them, surfaces in the light of the sun."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from vtkmodules.util.numpy_support import numpy_to_vtk, numpy_to_vtkIdTypeArray
from vtkmodules.vtkCommonCore import vtkPoints
from vtkmodules.vtkCommonDataModel import vtkCellArray, vtkImageData, vtkPolyData
from vtkmodules.vtkRenderingCore import (
    vtkActor,
    vtkActor2D,
    vtkPolyDataMapper,
    vtkPolyDataMapper2D,
    vtkTextActor,
    vtkTexture,
)

from .lines import Creases, Floats, Ints
from .offscreen import Pixels
from .paint import Colour
from .sunlight import LIGHT


def skin(points: Floats, triangles: Ints, colour: Colour) -> vtkActor:
    """A surface of one colour."""
    data = _poly_data(points)
    data.SetPolys(_cells(triangles))
    actor = _actor(data, colour)
    actor.GetProperty().SetInterpolationToFlat()
    return actor


def line_work(creases: Creases, colour: Colour, width: float) -> vtkActor:
    """Lines of one colour. width: pixels."""
    data = _poly_data(creases.points)
    data.SetLines(_cells(np.arange(len(creases.points), dtype=np.int64).reshape(-1, 2)))
    data.GetPointData().SetNormals(numpy_to_vtk(np.ascontiguousarray(creases.normals), deep=True))
    actor = _actor(data, colour)
    actor.GetProperty().SetLineWidth(width)
    return actor


def painted(actor: vtkActor, colour: Colour) -> None:
    """Gives an actor another colour."""
    actor.GetProperty().SetColor(*(part / 255.0 for part in colour))


def shine(actor: vtkActor, shade: vtkTexture, *steps: str) -> vtkActor:
    """Has an actor drawn by steps of `sunlight`; shade: what the sun sees, as depths."""
    actor.GetProperty().SetTexture("shade", shade)
    shader = actor.GetShaderProperty()
    shader.AddFragmentShaderReplacement("//VTK::TMap::Dec", True, f"//VTK::TMap::Dec\n{LIGHT}", False)
    shader.AddFragmentShaderReplacement("//VTK::Light::Impl", True, "\n".join(steps), False)
    return actor


def tell(actor: vtkActor, values: dict[str, float | Sequence[float] | Floats]) -> None:
    """Gives numbers, vectors and matrices to what draws an actor."""
    uniforms = actor.GetShaderProperty().GetFragmentCustomUniforms()
    for name, value in values.items():
        if isinstance(value, float):
            uniforms.SetUniformf(name, value)
        elif isinstance(value, np.ndarray) and value.shape == (4, 4):
            uniforms.SetUniformMatrix4x4(name, value.T.ravel().tolist())
        else:
            uniforms.SetUniform3f(name, [float(part) for part in value])


def line_of_text(
    text: str, size: float, at: tuple[float, float], colour: Colour, patch: bool = False
) -> vtkTextActor:
    """A line of text. size: pixels of its letters; at: of its lower left corner; patch: on a white ground."""
    actor = vtkTextActor()
    actor.SetInput(text)
    look = actor.GetTextProperty()
    look.SetColor(*(part / 255.0 for part in colour))
    look.SetFontSize(max(1, round(size)))
    if patch:
        look.SetBackgroundColor(1.0, 1.0, 1.0)
        look.SetBackgroundOpacity(0.85)
    actor.SetPosition(*at)
    return actor


def ring(
    at: tuple[float, float], radius: float, width: float, colour: Colour, dashed: bool = False
) -> vtkActor2D:
    """A circle over a picture, in pixels."""
    turns = np.linspace(0.0, 2.0 * np.pi, 72)
    points = np.stack([at[0] + radius * np.cos(turns), at[1] + radius * np.sin(turns), 0.0 * turns], axis=1)
    data = _poly_data(points)
    whole = np.arange(72, dtype=np.int64)
    data.SetLines(_cells(whole.reshape(12, 6)[:, :4] if dashed else whole[None, :]))
    mapper = vtkPolyDataMapper2D()
    mapper.SetInputData(data)
    actor = vtkActor2D()
    actor.SetMapper(mapper)
    actor.GetProperty().SetColor(*(part / 255.0 for part in colour))
    actor.GetProperty().SetLineWidth(width)
    return actor


def texture(values: Pixels) -> vtkTexture:
    """(height, width, 3) of bytes, from the bottom row up."""
    height, width, parts = values.shape
    image = vtkImageData()
    image.SetDimensions(width, height, 1)
    flat = np.ascontiguousarray(values.reshape(-1, parts))
    image.GetPointData().SetScalars(numpy_to_vtk(flat, deep=True))
    made = vtkTexture()
    made.SetInputData(image)
    made.SetColorModeToDirectScalars()
    made.InterpolateOff()
    made.RepeatOff()
    return made


def _actor(data: vtkPolyData, colour: Colour) -> vtkActor:
    mapper = vtkPolyDataMapper()
    mapper.SetInputData(data)
    mapper.SetResolveCoincidentTopologyToOff()  # else lines of what is right behind a sheet shine through
    actor = vtkActor()
    actor.SetMapper(mapper)
    actor.GetProperty().SetAmbient(0.0)
    actor.GetProperty().SetDiffuse(1.0)
    painted(actor, colour)
    return actor


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
