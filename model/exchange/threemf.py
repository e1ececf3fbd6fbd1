"""3MF: the building as closed bodies in mm, each shape once, named by its mark, in its colour.

An object is a body or a row of them, placed by an item of the build for every piece; an item's part number
is the piece's name. Written through lib3mf, which keeps the rules of the format, and writes where an item
stands to six digits: 0.05 mm at 30 ft, 0.5 mm at 400 ft.
"""

from __future__ import annotations

import uuid
from collections.abc import Iterator
from ctypes import c_float

import lib3mf
import numpy as np
from OCP.TopoDS import TopoDS_Solid

from ..catalog.colours import rgb
from ..pieces import Model, Piece
from ..place import Place, Point3
from ..solids.properties import triangles
from .atomic_files import Target, whole_file
from .names import shown_colour, title, with_printable_names

Look = tuple[TopoDS_Solid, tuple[Point3, ...], str, str]  # body, row, colour, name
DIGITS = 9  # of the points of a body, all that 32 bits hold


def write_3mf(model: Model, target: Target) -> None:
    """Writes a model as 3MF. Equal models give equal bytes. target: a path, or a binary stream."""
    data = _Writer(with_printable_names(model)).written()
    with whole_file(target) as stream:
        stream.write(data)


class _Writer:
    """The parts of one file as they come together."""

    def __init__(self, model: Model) -> None:
        self._model = model
        self._library = lib3mf.get_wrapper()
        self._file = self._library.CreateModel()
        self._file.SetUnit(lib3mf.ModelUnit.MilliMeter)
        self._file.GetMetaDataGroup().AddMetaData("", "Title", model.name, "xs:string", True)
        self._ids = _ids(model.name)
        self._file.SetBuildUUID(next(self._ids))
        self._paints = self._file.AddBaseMaterialGroup()
        self._colours: dict[str, int] = {}
        self._objects: dict[Look, lib3mf.Object] = {}

    def written(self) -> bytes:
        """The file."""
        for piece in self._model.pieces:
            item = self._file.AddBuildItem(self._object(_look(piece)), _transform(piece.place))
            item.SetPartNumber(piece.name)
            item.SetUUID(next(self._ids))
        writer = self._file.QueryWriter("3mf")
        writer.SetDecimalPrecision(DIGITS)
        return bytes(writer.WriteToBuffer())

    def _object(self, look: Look) -> lib3mf.Object:
        if look not in self._objects:
            _, row, _, name = look
            made = self._row(look) if row else self._mesh(look)
            made.SetName(f"{name} row" if row else name)
            made.SetUUID(next(self._ids))
            self._objects[look] = made
        return self._objects[look]

    def _mesh(self, look: Look) -> lib3mf.MeshObject:
        solid, _, colour, _ = look
        points, faces = triangles(solid)
        mesh = self._file.AddMeshObject()
        corners = np.ascontiguousarray(points, np.float32)
        mesh.SetGeometry(
            (lib3mf.Position * len(corners)).from_buffer_copy(corners),
            (lib3mf.Triangle * len(faces)).from_buffer_copy(np.ascontiguousarray(faces, np.uint32)),
        )
        mesh.SetObjectLevelProperty(self._paints.GetResourceID(), self._paint(colour))
        return mesh

    def _row(self, look: Look) -> lib3mf.ComponentsObject:
        """A body at every point of a row."""
        solid, row, colour, name = look
        body = self._object((solid, (), colour, name))
        together = self._file.AddComponentsObject()
        for point in row:
            together.AddComponent(body, _transform(Place(point))).SetUUID(next(self._ids))
        return together

    def _paint(self, colour: str) -> int:
        colour = shown_colour(colour)
        if colour not in self._colours:
            painted = self._library.RGBAToColor(*rgb(colour), 255)
            self._colours[colour] = self._paints.AddMaterial(colour, painted)
        return self._colours[colour]


def _look(piece: Piece) -> Look:
    """What pieces that are the same object have in common."""
    return piece.solid, piece.row, piece.label("colour"), title(piece)


def _transform(place: Place) -> lib3mf.Transform:
    """A place as the rows that a point, as a row, is multiplied by."""
    transform = lib3mf.Transform()
    for row, vector in enumerate((place.x, place.y, place.z, place.origin)):
        transform.Fields[row] = (c_float * 3)(*vector)
    return transform


def _ids(name: str) -> Iterator[str]:
    """Identifiers that are the same whenever the same building is written."""
    space, number = uuid.uuid5(uuid.NAMESPACE_URL, f"ribwright:{name}"), 0
    while True:
        yield str(uuid.uuid5(space, str(number)))
        number += 1
