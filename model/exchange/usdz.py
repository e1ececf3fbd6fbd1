"""USDZ: the building for the viewers that phones and tablets have built in, in metres, Y up.

A prim for every piece in a tree of groups, an instance of the body or the row that it shares with its
equals. Faces carry their normals, since those viewers would round a folded sheet without.
"""

from __future__ import annotations

import io
import tempfile
import zipfile
from collections import Counter
from pathlib import Path

import numpy as np
from OCP.TopoDS import TopoDS_Solid
from pxr import Gf, Kind, Sdf, Tf, Usd, UsdGeom, UsdShade, Vt

from ..catalog.colours import linear_rgb
from ..pieces import Model, Piece
from ..place import Place, Point3
from ..solids.placed import row_triangles
from ..solids.surface import facing
from .archives import undated
from .atomic_files import Target, whole_file
from .names import shown_colour, title, with_printable_names

Look = tuple[TopoDS_Solid, tuple[Point3, ...]]
ROOT, SHAPES, PAINTS = "/building", "/building/shapes", "/building/paints"
INSIDE = "model.usdc"
HEADER, BOUNDARY = 30, 64  # bytes before a zip entry's name; what its data must begin at a multiple of
PADDING = 0x1986  # the field of a zip entry that holds nothing, as the format's description has it


def write_usdz(model: Model, target: Target) -> None:
    """Writes a model as USDZ. Equal models give equal bytes. target: a path, or a binary stream."""
    stage = _Writer(with_printable_names(model)).stage()
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / INSIDE
        stage.GetRootLayer().Export(str(path))
        data = path.read_bytes()
    with whole_file(target) as stream:
        stream.write(_packed(data))


def _packed(data: bytes) -> bytes:
    """The one file in a zip archive, not compressed, so that it can be read where it lies."""
    held = io.BytesIO()
    with zipfile.ZipFile(held, "w", zipfile.ZIP_STORED) as archive:
        entry = undated(INSIDE)
        fill = -(HEADER + len(INSIDE) + 4) % BOUNDARY
        entry.extra = PADDING.to_bytes(2, "little") + fill.to_bytes(2, "little") + bytes(fill)
        archive.writestr(entry, data)
    return held.getvalue()


class _Writer:
    """A stage as it comes together."""

    def __init__(self, model: Model) -> None:
        self._model = model
        self._stage = Usd.Stage.CreateInMemory()
        UsdGeom.SetStageUpAxis(self._stage, UsdGeom.Tokens.y)
        UsdGeom.SetStageMetersPerUnit(self._stage, 1.0)
        root = UsdGeom.Xform.Define(self._stage, ROOT)
        root.AddRotateXOp().Set(-90.0)
        root.GetPrim().SetDisplayName(model.name)
        Usd.ModelAPI(root).SetKind(Kind.Tokens.component)
        self._stage.SetDefaultPrim(root.GetPrim())
        UsdGeom.Scope.Define(self._stage, PAINTS)
        self._stage.CreateClassPrim(SHAPES)
        self._groups: dict[tuple[str, ...], str] = {(): ROOT}
        self._names: Counter[str] = Counter((SHAPES, PAINTS))
        self._shapes: dict[Look, str] = {}
        self._paints: dict[str, UsdShade.Material] = {}

    def stage(self) -> Usd.Stage:
        """The model in it."""
        for piece in self._model.pieces:
            self._add(piece)
        return self._stage

    def _add(self, piece: Piece) -> None:
        placed = UsdGeom.Xform.Define(self._stage, self._free(self._group(piece.group), piece.name))
        placed.AddTransformOp().Set(_matrix(piece.place))
        prim = placed.GetPrim()
        prim.SetDisplayName(piece.name)
        for key, text in (("mark", piece.mark), ("role", piece.role), *piece.labels):
            prim.SetCustomDataByKey(Tf.MakeValidIdentifier(key), text)
        colour = piece.label("colour")
        UsdShade.MaterialBindingAPI.Apply(prim).Bind(self._paint(shown_colour(colour)))
        prim.GetReferences().AddInternalReference(self._shape(piece))
        prim.SetInstanceable(True)

    def _group(self, path: tuple[str, ...]) -> str:
        if path not in self._groups:
            found = self._free(self._group(path[:-1]), path[-1])
            UsdGeom.Xform.Define(self._stage, found).GetPrim().SetDisplayName(path[-1])
            self._groups[path] = found
        return self._groups[path]

    def _free(self, above: str, name: str) -> str:
        """A path that no prim has yet."""
        path = f"{above}/{Tf.MakeValidIdentifier(name)}"
        self._names[path] += 1
        return path if self._names[path] == 1 else self._free(above, f"{name}_{self._names[path]}")

    def _shape(self, piece: Piece) -> str:
        look = (piece.solid, piece.row)
        if look not in self._shapes:
            path = self._free(SHAPES, title(piece))
            UsdGeom.Xform.Define(self._stage, path)
            self._mesh(f"{path}/body", look)
            self._shapes[look] = path
        return self._shapes[look]

    def _mesh(self, path: str, look: Look) -> None:
        points, faces = row_triangles(*look)
        metres = np.ascontiguousarray(points / 1000, np.float32)
        mesh = UsdGeom.Mesh.Define(self._stage, path)
        mesh.CreateSubdivisionSchemeAttr(UsdGeom.Tokens.none)
        mesh.CreatePointsAttr(Vt.Vec3fArray.FromNumpy(metres))
        mesh.CreateExtentAttr(
            [Gf.Vec3f(*metres.min(axis=0).tolist()), Gf.Vec3f(*metres.max(axis=0).tolist())]
        )
        mesh.CreateFaceVertexCountsAttr(Vt.IntArray(len(faces), 3))
        mesh.CreateFaceVertexIndicesAttr(Vt.IntArray.FromNumpy(faces.astype(np.int32).ravel()))
        corners = np.repeat(facing(points, faces), 3, axis=0).astype(np.float32)
        mesh.CreateNormalsAttr(Vt.Vec3fArray.FromNumpy(corners))
        mesh.SetNormalsInterpolation(UsdGeom.Tokens.faceVarying)

    def _paint(self, colour: str) -> UsdShade.Material:
        if colour not in self._paints:
            path = self._free(PAINTS, colour)
            paint = UsdShade.Material.Define(self._stage, path)
            shader = UsdShade.Shader.Define(self._stage, f"{path}/surface")
            shader.CreateIdAttr("UsdPreviewSurface")
            shader.CreateInput("diffuseColor", Sdf.ValueTypeNames.Color3f).Set(Gf.Vec3f(*linear_rgb(colour)))
            shader.CreateInput("roughness", Sdf.ValueTypeNames.Float).Set(0.7)
            shader.CreateInput("metallic", Sdf.ValueTypeNames.Float).Set(0.1)
            paint.CreateSurfaceOutput().ConnectToSource(shader.ConnectableAPI(), "surface")
            self._paints[colour] = paint
        return self._paints[colour]


def _matrix(place: Place) -> Gf.Matrix4d:
    """A place in metres, as the rows that a point, as a row, is multiplied by."""
    x, y, z, (u, v, w) = place.x, place.y, place.z, place.origin
    return Gf.Matrix4d(*x, 0.0, *y, 0.0, *z, 0.0, u / 1000, v / 1000, w / 1000, 1.0)
