"""Binary glTF 2.0: the building to turn and look at, in metres, Y up.

A node for every piece, in a tree of groups; equal bodies share a mesh, equal rows of screws too. The
meshes carry no normals: glTF 2.0, 3.7.2.1 has a viewer shade such a mesh flat, which a folded sheet is.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

import numpy as np
from OCP.TopoDS import TopoDS_Solid

from .. import __version__
from ..catalog.colours import linear_rgb
from ..pieces import Model, Piece
from ..place import Place, Point3
from ..solids.placed import row_triangles
from .atomic_files import Target, whole_file
from .names import PLAIN, shown_colour, title, with_printable_names

ARRAY, ELEMENTS = 34962, 34963  # glTF's names for vertices and indices
FLOAT, SHORT, LONG = 5126, 5123, 5125
JSON_CHUNK, BIN_CHUNK = 0x4E4F534A, 0x004E4942
Y_UP = [1, 0, 0, 0, 0, 0, -1, 0, 0, 1, 0, 0, 0, 0, 0, 1]  # columns: X to x, Z up to y, Y to -z

MeshKey = tuple[TopoDS_Solid, tuple[Point3, ...]]


def write_glb(model: Model, target: Target, figures: Mapping[str, Mapping[str, Any]] | None = None) -> None:
    """Writes a model as GLB. target: a path, or a binary stream.

    figures: by mark, what the schedule says of it; goes into `marks` of the root's `extras`, once a mark.
    Each piece's own have its mark, role and labels.
    """
    content, binary = _Writer(with_printable_names(model), figures or {}).written()
    text = json.dumps(content, ensure_ascii=False, separators=(",", ":")).encode("utf-8")
    text += b" " * (-len(text) % 4)
    binary += b"\0" * (-len(binary) % 4)
    size = 12 + 8 + len(text) + 8 + len(binary)
    with whole_file(target) as stream:
        stream.write(b"glTF" + _longs(2, size))
        stream.write(_longs(len(text), JSON_CHUNK) + text)
        stream.write(_longs(len(binary), BIN_CHUNK) + binary)


def _longs(*values: int) -> bytes:
    return np.array(values, "<u4").tobytes()


class _Writer:
    """The parts of a glTF file as they come together."""

    def __init__(self, model: Model, figures: Mapping[str, Mapping[str, Any]]) -> None:
        self._model = model
        self._binary = bytearray()
        self._views: list[dict[str, Any]] = []
        self._accessors: list[dict[str, Any]] = []
        self._meshes: list[dict[str, Any]] = []
        self._materials: dict[str, int] = {}
        self._shapes: dict[MeshKey, tuple[int, int]] = {}
        self._mesh_numbers: dict[tuple[int, str], int] = {}
        root = {"name": model.name, "matrix": Y_UP, "children": [], "extras": {"marks": dict(figures)}}
        self._nodes: list[dict[str, Any]] = [root]
        self._groups: dict[tuple[str, ...], int] = {(): 0}
        self._taken = {model.name, *(piece.name for piece in model.pieces)}

    def written(self) -> tuple[dict[str, Any], bytes]:
        """The JSON and the binary chunk."""
        for piece in self._model.pieces:
            self._add(piece)
        materials = [_material(colour) for colour in self._materials]
        content = {
            "asset": {"version": "2.0", "generator": f"ribwright {__version__}"},
            "scene": 0,
            "scenes": [{"name": self._model.name, "nodes": [0]}],
            "nodes": self._nodes,
            "meshes": self._meshes,
            "materials": materials,
            "accessors": self._accessors,
            "bufferViews": self._views,
            "buffers": [{"byteLength": len(self._binary)}],
        }
        return content, bytes(self._binary)

    def _add(self, piece: Piece) -> None:
        extras: dict[str, Any] = {"mark": piece.mark, "role": piece.role, **dict(piece.labels)}
        if piece.row:
            extras["count"] = piece.count
        node: dict[str, Any] = {"name": piece.name, "mesh": self._mesh(piece), "extras": extras}
        if piece.place != Place():
            node["matrix"] = _matrix(piece.place)
        self._below(piece.group, node)

    def _below(self, path: tuple[str, ...], node: dict[str, Any]) -> int:
        """Puts a node into a group; returns its number."""
        group = self._group(path)
        self._nodes.append(node)
        self._nodes[group]["children"].append(len(self._nodes) - 1)
        return len(self._nodes) - 1

    def _group(self, path: tuple[str, ...]) -> int:
        if path not in self._groups:
            self._groups[path] = self._below(path[:-1], {"name": self._free(path), "children": []})
        return self._groups[path]

    def _free(self, path: tuple[str, ...]) -> str:
        """A group's whole path as its name; none comes twice, since viewers would number those that do."""
        name = " ".join(path)
        while name in self._taken:
            name += " group"
        self._taken.add(name)
        return name

    def _mesh(self, piece: Piece) -> int:
        key: MeshKey = (piece.solid, piece.row)
        if key not in self._shapes:
            self._shapes[key] = self._shape(key)
        positions, indices = self._shapes[key]
        colour = piece.label("colour") or PLAIN
        material = self._materials.setdefault(colour, len(self._materials))
        if (positions, colour) not in self._mesh_numbers:
            self._mesh_numbers[positions, colour] = len(self._meshes)
            primitive = {"attributes": {"POSITION": positions}, "indices": indices, "material": material}
            self._meshes.append({"name": title(piece), "primitives": [primitive]})
        return self._mesh_numbers[positions, colour]

    def _shape(self, key: MeshKey) -> tuple[int, int]:
        """Accessors of the points and the triangles of a body or a row."""
        points, faces = row_triangles(*key)
        metres = (points / 1000).astype("<f4")
        box = {"min": metres.min(axis=0).tolist(), "max": metres.max(axis=0).tolist()}
        positions = self._accessor(metres.tobytes(), ARRAY, FLOAT, len(metres), "VEC3", **box)
        short = len(points) < 65535
        indices = faces.astype("<u2" if short else "<u4").tobytes()
        return positions, self._accessor(indices, ELEMENTS, SHORT if short else LONG, faces.size, "SCALAR")

    def _accessor(self, data: bytes, target: int, component: int, count: int, kind: str, **box: Any) -> int:
        self._binary += b"\0" * (-len(self._binary) % 4)
        view = {"buffer": 0, "byteOffset": len(self._binary), "byteLength": len(data), "target": target}
        self._views.append(view)
        self._binary += data
        self._accessors.append(
            {
                "bufferView": len(self._views) - 1,
                "componentType": component,
                "count": count,
                "type": kind,
                **box,
            }
        )
        return len(self._accessors) - 1


def _matrix(place: Place) -> list[float]:
    """A place in metres, column by column."""
    x, y, z, (u, v, w) = place.x, place.y, place.z, place.origin
    return [*x, 0.0, *y, 0.0, *z, 0.0, u / 1000, v / 1000, w / 1000, 1.0]


def _material(colour: str) -> dict[str, Any]:
    """A painted surface. Its colour is linear, as glTF has them."""
    linear = (round(value, 6) for value in linear_rgb(shown_colour(colour)))
    return {
        "name": colour,
        "pbrMetallicRoughness": {
            "baseColorFactor": [*linear, 1.0],
            "metallicFactor": 0.1,
            "roughnessFactor": 0.7,
        },
    }
