"""DXF (AutoCAD 2010) of the model: a block for each mark, an insert for each piece, a layer for each role.

Bodies are polyface meshes, of which only the edges show, in inches or mm as the building is to be shown.
Every insert bears NAME and MARK as attributes, for those who draw lists from a drawing.
"""

from __future__ import annotations

import io
import re

import numpy as np
from ezdxf.document import Drawing
from ezdxf.entities.insert import Insert
from ezdxf.enums import InsertUnits
from ezdxf.filemanagement import new
from ezdxf.layouts.blocklayout import BlockLayout
from ezdxf.math import Matrix44
from numpy.typing import NDArray
from OCP.TopoDS import TopoDS_Solid

from ..catalog.colours import rgb
from ..drawing.steady_dxf import same_every_time
from ..pieces import Model
from ..place import Place, Point3
from ..solids.placed import placed_triangles
from ..solids.properties import triangles
from ..solids.surface import Triangles, Vertices, facing
from ..units import INCH
from .atomic_files import Target, whole_file
from .names import shown_colour, title, with_printable_names

BY_BLOCK = 0  # the colour of what takes that of its insert
HIDDEN = 1  # attributes' flag
FORBIDDEN = re.compile(r'[<>/\\":;?*|=`,]+')  # in names of blocks and layers
SMOOTH = np.cos(np.radians(22.0))  # triangles that turn by less are one face to the eye
EYE = (-1.0, -2.0, 1.0)  # the way one looks at the model when the file is opened
AROUND = 1.3  # height of what is seen, in heights and widths of the building

Look = tuple[TopoDS_Solid, tuple[Point3, ...], str]  # body, row, name


def write_dxf(model: Model, target: Target) -> None:
    """Writes a model as DXF. Equal models give equal bytes. target: a path, or a binary stream."""
    text = io.StringIO()
    with same_every_time():
        _Writer(with_printable_names(model)).drawing().write(text)
    with whole_file(target) as stream:
        stream.write(text.getvalue().encode("utf-8", "surrogateescape"))


class _Writer:
    """A drawing as it comes together."""

    def __init__(self, model: Model) -> None:
        feet = model.units != "mm"
        self._model, self._scale = model, 1 / INCH if feet else 1.0
        self._units = InsertUnits.Inches if feet else InsertUnits.Millimeters
        self._file: Drawing = new("R2010", units=self._units)
        self._file.header["$MEASUREMENT"] = 0 if feet else 1
        self._blocks: dict[Look, BlockLayout] = {}
        self._layers: dict[str, str] = {}

    def drawing(self) -> Drawing:
        """The model in it, seen from the front left."""
        space = self._file.modelspace()
        for piece in self._model.pieces:
            block = self._block((piece.solid, piece.row, title(piece)))
            insert = space.add_blockref(block.name, (0, 0, 0), {"layer": self._layer(piece.role)})
            colour = piece.label("colour")
            insert.rgb = rgb(shown_colour(colour))
            self._place(insert, piece.place)
            for tag, text in (("NAME", piece.name), ("MARK", piece.mark)):
                if text:
                    attributes = {"flags": HIDDEN, "layer": insert.dxf.layer}
                    insert.add_attrib(tag, text, insert.dxf.insert, attributes)
        self._look_at_it()
        return self._file

    def _look_at_it(self) -> None:
        points = [points for points, _ in placed_triangles(self._model.pieces)]
        low = np.min([found.min(axis=0) for found in points], axis=0) * self._scale
        high = np.max([found.max(axis=0) for found in points], axis=0) * self._scale
        self._file.modelspace().reset_extents(low.tolist(), high.tolist())
        view = self._file.set_modelspace_vport(float(np.linalg.norm(high - low)) * AROUND / 2)
        view.dxf.direction, view.dxf.target = EYE, ((low + high) / 2).tolist()

    def _place(self, insert: Insert, place: Place) -> None:
        x, y, z, origin = place.x, place.y, place.z, (value * self._scale for value in place.origin)
        insert.transform(Matrix44([*x, 0.0, *y, 0.0, *z, 0.0, *origin, 1.0]))

    def _block(self, look: Look) -> BlockLayout:
        if look not in self._blocks:
            solid, row, name = look
            body = self._block((solid, (), name)) if row else None
            block = self._file.blocks.new(self._free(f"{name} row" if row else name))
            block.units = self._units
            for point in row:
                assert body is not None
                at = tuple(value * self._scale for value in point)
                block.add_blockref(body.name, at, {"color": BY_BLOCK})
            if not row:
                _polyface(block, *triangles(solid), self._scale)
            self._blocks[look] = block
        return self._blocks[look]

    def _free(self, name: str) -> str:
        """A name that no block has yet; case does not tell blocks apart."""
        name, number = _plain(name), 1
        while (f"{name} {number}" if number > 1 else name) in self._file.blocks:
            number += 1
        return f"{name} {number}" if number > 1 else name

    def _layer(self, role: str) -> str:
        name = _plain(role)
        if name not in self._file.layers:
            self._file.layers.add(name)
        return name


def _plain(name: str) -> str:
    """A name without what names in a DXF file may not have."""
    return FORBIDDEN.sub("_", name).strip()[:200] or "part"


def _polyface(block: BlockLayout, points: Vertices, faces: Triangles, scale: float) -> None:
    """The triangles of a body, with the sides hidden at which the surface goes on."""
    mesh = block.add_polyface({"color": BY_BLOCK})
    mesh.append_faces((points * scale)[faces].tolist(), {"color": BY_BLOCK})
    records = [vertex for vertex in mesh.vertices if vertex.is_face_record]
    for record, shown in zip(records, _edges(points, faces).tolist(), strict=True):
        for name, seen in zip(("vtx0", "vtx1", "vtx2"), shown, strict=True):
            if not seen:  # a side whose first corner is negative is not drawn
                record.set_dxf_attrib(name, -abs(record.get_dxf_attrib(name)))


def _edges(points: Vertices, faces: Triangles) -> NDArray[np.bool_]:
    """(m, 3) whether the surface turns at the side after each corner of each triangle."""
    normals, count = facing(points, faces), len(points)
    starts, ends = faces.ravel(), np.roll(faces, -1, axis=1).ravel()
    there, back = starts * count + ends, ends * count + starts
    order = np.argsort(there)
    beyond = order[np.searchsorted(there[order], back)] // 3  # every side is met the other way round once
    turned = np.einsum("ij,ij->i", normals[np.repeat(np.arange(len(faces)), 3)], normals[beyond])
    return np.asarray(turned < SMOOTH).reshape(-1, 3)
