"""A value with bodies in it as bytes for another process of the same run: exact, fast, no file format."""

from __future__ import annotations

import io
import pickle
from typing import Any

from OCP.BinTools import BinTools, BinTools_FormatVersion
from OCP.BRep import BRep_Builder
from OCP.TopoDS import TopoDS, TopoDS_Compound, TopoDS_Iterator, TopoDS_Solid


def packed(value: object) -> bytes:
    """The value, such as a model, its bodies apart from what is said of them, each once."""
    said = io.BytesIO()
    packer = _Packer(said)
    packer.dump(value)
    return pickle.dumps((_bodies_as_bytes(list(packer.bodies)), said.getvalue()))


def unpacked(data: bytes) -> Any:
    """The value that was packed; what shared a body shares one again."""
    bodies, said = pickle.loads(data)
    return _Unpacker(io.BytesIO(said), _bodies_from_bytes(bodies)).load()


class _Packer(pickle.Pickler):
    def __init__(self, stream: io.BytesIO) -> None:
        super().__init__(stream)
        self.bodies: dict[TopoDS_Solid, int] = {}

    def persistent_id(self, obj: Any) -> int | None:
        if isinstance(obj, TopoDS_Solid):
            return self.bodies.setdefault(obj, len(self.bodies))
        return None


class _Unpacker(pickle.Unpickler):
    def __init__(self, stream: io.BytesIO, bodies: list[TopoDS_Solid]) -> None:
        super().__init__(stream)
        self._bodies = bodies

    def persistent_load(self, pid: int) -> TopoDS_Solid:
        return self._bodies[pid]


def _bodies_as_bytes(bodies: list[TopoDS_Solid]) -> bytes:
    builder, together, stream = BRep_Builder(), TopoDS_Compound(), io.BytesIO()
    builder.MakeCompound(together)
    for body in bodies:
        builder.Add(together, body)
    version = BinTools_FormatVersion.BinTools_FormatVersion_CURRENT
    BinTools.Write_s(together, stream, False, False, version)
    return stream.getvalue()


def _bodies_from_bytes(data: bytes) -> list[TopoDS_Solid]:
    together, found = TopoDS_Compound(), []
    BinTools.Read_s(together, io.BytesIO(data))
    inside = TopoDS_Iterator(together)
    while inside.More():
        found.append(TopoDS.Solid_s(inside.Value()))
        inside.Next()
    return found
