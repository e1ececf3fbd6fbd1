"""STL and GLB: closed, in place, the right size, and to the letter of their standards."""

from __future__ import annotations

import io
import json
import shutil
import struct
import subprocess
import tracemalloc
from collections import Counter
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import trimesh
from ribwright.errors import FileError
from ribwright.exchange.glb import write_glb
from ribwright.exchange.stl import read_stl, write_stl
from ribwright.pieces import Model, Piece
from ribwright.place import Place
from ribwright.solids.placed import placed_triangles
from ribwright.solids.properties import triangles, volume
from support.small_model import BAR, SHEET, small_model

MODEL = small_model()
FIGURES = {"P1": {"length mm": 2000.0, "area m2": 1.8}}


def expected_volume(model: Model) -> float:
    """Of what the triangles enclose, which for flat faces is the body's own."""
    return sum(piece.count * meshed(piece) for piece in model.pieces)


def meshed(piece: Piece) -> float:
    points, faces = triangles(piece.solid)
    a, b, c = (points[faces[:, k]] for k in range(3))
    return float(np.einsum("ij,ij->", a, np.cross(b, c)) / 6)


def box_of(model: Model) -> tuple[np.ndarray, np.ndarray]:
    points = np.concatenate([points for points, _ in placed_triangles(model.pieces)])
    return points.min(axis=0), points.max(axis=0)


def stl(model: Model) -> bytes:
    stream = io.BytesIO()
    write_stl(model, stream)
    return stream.getvalue()


def test_stl_is_written_piece_by_piece() -> None:
    """In memory stands one piece at a time, however many there are: a hundredth of the file and less."""
    many = replace(MODEL, pieces=MODEL.pieces * 400)
    size = len(stl(MODEL))  # and each body's triangles are remembered from here on
    tracemalloc.start()
    write_stl(many, "/dev/null")
    _, peak = tracemalloc.get_traced_memory()
    tracemalloc.stop()
    assert peak < size * 400 / 100


def glb(model: Model = MODEL) -> tuple[dict[str, Any], bytes, bytes]:
    """A GLB's JSON, its binary chunk, and the whole."""
    stream = io.BytesIO()
    write_glb(model, stream, FIGURES)
    data = stream.getvalue()
    magic, version, size, length, kind = struct.unpack_from("<4sIIII", data)
    assert (magic, version, size, kind) == (b"glTF", 2, len(data), 0x4E4F534A)
    return json.loads(data[20 : 20 + length]), data[20 + length + 8 :], data


def test_stl_holds_all_that_stands_where_it_stands(tmp_path: Path) -> None:
    write_stl(MODEL, tmp_path / "model.stl")
    corners = read_stl(tmp_path / "model.stl")
    assert len(corners) == sum(len(triangles(p.solid)[1]) * p.count for p in MODEL.pieces)
    low, high = box_of(MODEL)
    assert corners.min(axis=(0, 1)) == pytest.approx(low, abs=2e-3)  # 32-bit numbers at 40 m
    assert corners.max(axis=(0, 1)) == pytest.approx(high, abs=2e-3)
    middle = (low + high) / 2
    a, b, c = (corners[:, k] - middle for k in range(3))
    signed = np.einsum("ij,ij->", a, np.cross(b, c)) / 6
    assert signed == pytest.approx(expected_volume(MODEL), rel=1e-3)


@pytest.mark.parametrize("piece", MODEL.pieces, ids=lambda piece: piece.name)
def test_every_body_is_closed_in_stl(piece: Piece, tmp_path: Path) -> None:
    """Sides meet number by number, even as 32-bit numbers in place."""
    write_stl(Model("one", "mm", (piece,)), tmp_path / "one.stl")
    sides: Counter[tuple[tuple[float, ...], ...]] = Counter()
    for triangle in read_stl(tmp_path / "one.stl").tolist():
        corners = [tuple(corner) for corner in triangle]
        sides.update(zip(corners, [*corners[1:], corners[0]], strict=True))
    assert all(count == sides[q, p] for (p, q), count in sides.items())


def test_stl_normals_point_out_and_are_of_length_1() -> None:
    data = np.frombuffer(stl(Model("bar", "mm", (Piece("bar", "", (), BAR, Place()),))), np.uint8)[84:]
    facets = data.view(np.dtype([("n", "<f4", 3), ("p", "<f4", (3, 3)), ("a", "<u2")]))
    outward = facets["p"].mean(axis=1) - facets["p"].mean(axis=(0, 1))
    assert np.linalg.norm(facets["n"], axis=1) == pytest.approx(1.0)
    assert np.all(np.einsum("ij,ij->i", facets["n"], outward) > 0)
    assert not facets["a"].any()


def test_the_head_of_an_stl_cannot_be_taken_for_the_text_form() -> None:
    head = stl(MODEL)[:80]
    assert head.startswith(b"ribwright My shop: ")
    assert head.isascii()


def test_what_is_no_binary_stl_is_refused(tmp_path: Path) -> None:
    for name, data in {"short": b"solid", "text": b"solid x\n" * 40, "cut": stl(MODEL)[:-1]}.items():
        (tmp_path / name).write_bytes(data)
        with pytest.raises(FileError, match="is not a binary STL file"):
            read_stl(tmp_path / name)


def test_trimesh_finds_the_building_in_metres_y_up(tmp_path: Path) -> None:
    write_glb(MODEL, tmp_path / "model.glb")
    scene = trimesh.load_scene(tmp_path / "model.glb")
    (x0, y0, z0), (x1, y1, z1) = box_of(MODEL)
    assert scene.bounds == pytest.approx(np.array([[x0, z0, -y1], [x1, z1, -y0]]) / 1000, abs=1e-5)
    bodies = [scene.geometry[name].copy().apply_transform(turn) for turn, name in posed(scene)]
    assert all(body.is_watertight for body in bodies)
    assert sum(body.volume for body in bodies) == pytest.approx(expected_volume(MODEL) / 1e9, rel=1e-4)


def posed(scene: trimesh.Scene) -> list[tuple[np.ndarray, str]]:
    return [scene.graph[node] for node in scene.graph.nodes_geometry]


def test_nodes_stand_in_a_tree_of_groups_and_say_what_they_are() -> None:
    content, _, _ = glb()
    nodes = content["nodes"]
    (root,) = content["scenes"][content["scene"]]["nodes"]

    def tree(number: int) -> Any:
        node = nodes[number]
        return (
            (node["name"], [tree(child) for child in node["children"]])
            if "children" in node
            else node["name"]
        )

    fronts = ["front 1", "front 2", "front 1 screws", "front 2 screws"]
    walls = ("walls", [("walls front", fronts), ("walls back", ["back 1", "back 2"])])
    assert tree(root) == (MODEL.name, [walls, ("frame", ["post"]), "a long one; it's 'odd' #1"])
    by_name = {node["name"]: node for node in nodes}
    assert by_name["front 1"]["extras"] == {
        "mark": "P1", "role": "wall sheet", "face": "front", "gauge": "29 ga", "colour": "crimson",
    }  # fmt: skip
    assert by_name[MODEL.name]["extras"] == {"marks": FIGURES}
    assert by_name["front 1 screws"]["extras"]["count"] == 4
    assert by_name["back 2"]["extras"]["note"] == ""


def test_equal_bodies_share_their_mesh_or_at_least_its_points() -> None:
    content, _, _ = glb()
    by_name = {node["name"]: node.get("mesh") for node in content["nodes"]}
    assert by_name["front 1"] == by_name["front 2"] == by_name["back 1"] != by_name["back 2"]
    assert by_name["front 1 screws"] == by_name["front 2 screws"]
    crimson, blue = (content["meshes"][by_name[name]]["primitives"][0] for name in ("front 1", "back 2"))
    assert crimson["attributes"] == blue["attributes"]
    assert crimson["material"] != blue["material"]


def test_bounds_are_stated_in_metres_to_the_bit() -> None:
    content, binary, _ = glb()
    for accessor in content["accessors"]:
        if accessor["type"] == "VEC3":
            start = content["bufferViews"][accessor["bufferView"]]["byteOffset"]
            points = np.frombuffer(binary, "<f4", accessor["count"] * 3, start).reshape(-1, 3)
            assert points.min(axis=0).tolist() == accessor["min"]
            assert points.max(axis=0).tolist() == accessor["max"]
    mesh = content["meshes"][next(n["mesh"] for n in content["nodes"] if n["name"] == "front 1")]
    stated = content["accessors"][mesh["primitives"][0]["attributes"]["POSITION"]]
    assert stated["max"][1] == pytest.approx(2.0)
    assert volume(SHEET) > 0


def test_colours_are_linear_and_one_sided() -> None:
    """CSS crimson is 220 20 60; linear by the sRGB transfer function, worked by hand."""
    content, _, _ = glb()
    (crimson,) = (m for m in content["materials"] if m["name"] == "crimson")
    hand = [
        ((220 / 255 + 0.055) / 1.055) ** 2.4,
        ((20 / 255 + 0.055) / 1.055) ** 2.4,
        ((60 / 255 + 0.055) / 1.055) ** 2.4,
    ]
    assert crimson["pbrMetallicRoughness"]["baseColorFactor"] == pytest.approx([*hand, 1.0], abs=1e-6)
    assert not any(material.get("doubleSided", False) for material in content["materials"])


def test_equal_models_give_equal_bytes() -> None:
    assert glb()[2] == glb(small_model())[2]
    assert stl(MODEL) == stl(small_model())


SCRIPT = """
const validator = require('gltf-validator');
const data = new Uint8Array(require('fs').readFileSync(process.argv[1]));
validator.validateBytes(data).then(report => console.log(JSON.stringify(report)));
"""


def test_the_khronos_validator_finds_nothing(tmp_path: Path, missing: Callable[[str], None]) -> None:
    if not shutil.which("node"):
        missing("node")
    if subprocess.run(
        ["node", "-e", "require('gltf-validator')"], capture_output=True, check=False
    ).returncode:
        missing("the npm package gltf-validator, in a folder that NODE_PATH names")
    (tmp_path / "model.glb").write_bytes(glb()[2])
    done = subprocess.run(
        ["node", "-e", SCRIPT, str(tmp_path / "model.glb")], capture_output=True, text=True, check=True
    )
    issues = json.loads(done.stdout)["issues"]
    assert issues["messages"] == []
    assert (issues["numErrors"], issues["numWarnings"]) == (0, 0)
