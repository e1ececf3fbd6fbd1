"""The sample's GLB as `raise` writes it, read by trimesh and by the Khronos validator."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import trimesh
from ribwright.catalog.colours import rgb
from ribwright.exchange.glb import write_glb
from ribwright.order.lists.figures import figures_by_mark
from ribwright.solids.placed import placed_triangles
from ribwright.solids.planar import planar_faces
from ribwright.solids.properties import volume
from support.sample_building import sample_model, sample_schedule

LARGEST = 4_000_000  # bytes; what a page can be asked to load


@pytest.fixture(scope="module")
def path(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("sample") / "model.glb"
    write_glb(sample_model(), path, figures_by_mark(sample_schedule()))
    return path


@pytest.fixture(scope="module")
def content(path: Path) -> dict[str, Any]:
    """The JSON chunk."""
    data = path.read_bytes()
    return dict(json.loads(data[20 : 20 + int.from_bytes(data[12:16], "little")]))


@pytest.fixture(scope="module")
def scene(path: Path) -> trimesh.Scene:
    return trimesh.load_scene(path)


@pytest.fixture(scope="module")
def nodes(content: dict[str, Any]) -> dict[str, dict[str, Any]]:
    return {node["name"]: node for node in content["nodes"] if "mesh" in node}


@pytest.fixture(scope="module")
def bodies(scene: trimesh.Scene) -> dict[str, trimesh.Trimesh]:
    """Meshes by their node's name, in its frame (m)."""
    return {node: scene.geometry[scene.graph[node][1]] for node in scene.graph.nodes_geometry}


def test_no_two_nodes_have_the_same_name(content: dict[str, Any]) -> None:
    """Whole paths name the groups: the walls' back is not the roof's."""
    names = [node["name"] for node in content["nodes"]]
    assert len(set(names)) == len(names)
    assert {"walls back", "trims back", "screws back", "framing back"} <= set(names)


def test_it_is_small_enough_for_a_page(path: Path) -> None:
    assert path.stat().st_size < LARGEST


def test_the_building_is_in_metres_y_up(scene: trimesh.Scene) -> None:
    points = np.concatenate([points for points, _ in placed_triangles(sample_model().pieces)])
    (x0, y0, z0), (x1, y1, z1) = points.min(axis=0) / 1000, points.max(axis=0) / 1000
    assert scene.bounds == pytest.approx(np.array([[x0, z0, -y1], [x1, z1, -y0]]), abs=1e-5)
    assert np.ptp(scene.bounds, axis=0)[1] < np.ptp(scene.bounds, axis=0)[2]  # a workshop is longer than high


def test_every_body_has_its_pieces_volume(bodies: dict[str, trimesh.Trimesh]) -> None:
    """Of flat faces to the 32 bits of their points; rounded corners are flats here, 0.1 mm off at most."""
    for piece in sample_model().pieces:
        if not piece.row:
            mesh = bodies[piece.name]
            assert mesh.is_watertight, piece.name
            near = 1e-4 if planar_faces(piece.solid) else 2e-3
            assert mesh.volume * 1e9 == pytest.approx(volume(piece.solid), rel=near), piece.name


def test_together_they_are_the_models_volume(bodies: dict[str, trimesh.Trimesh]) -> None:
    single = [piece for piece in sample_model().pieces if not piece.row]
    assert len(single) > 300
    found = sum(bodies[piece.name].volume for piece in single)
    assert found * 1e9 == pytest.approx(sum(volume(piece.solid) for piece in single), rel=1e-4)


def test_every_piece_is_a_node_that_says_what_it_is(nodes: dict[str, dict[str, Any]]) -> None:
    assert len(nodes) == len(sample_model().pieces)
    for piece in sample_model().pieces:
        extras = nodes[piece.name]["extras"]
        assert (extras["mark"], extras["role"]) == (piece.mark, piece.role)
        assert extras.items() >= dict(piece.labels).items()
        assert extras.get("count") == (len(piece.row) or None)


def test_the_root_carries_once_what_the_schedule_says_of_each_mark(
    content: dict[str, Any], nodes: dict[str, dict[str, Any]]
) -> None:
    """A roof sheet of the sample, 15' 6-1/2" (its length is worked by hand in the test of run rules)."""
    by_mark = content["nodes"][0]["extras"]["marks"]
    assert {node["extras"]["mark"] for node in nodes.values()} == set(by_mark)
    assert not any("count of mark" in node["extras"] for node in nodes.values())
    listed = sample_schedule()
    assert {row.mark for row in listed.rows} | {item.mark for item in listed.items} == set(by_mark)
    roof = by_mark["R1"]
    assert {name: roof[name] for name in ("count of mark", "length", "width", "cover", "ends")} == {
        "count of mark": "26",
        "length": "15' 6-1/2\"",
        "width": "3' 2\"",
        "cover": "3'",
        "ends": "square / square",
    }
    (row,) = [row for row in listed.rows if row.mark == "R1"]
    assert float(roof["weight"].removesuffix(" lb")) == pytest.approx(row.weight / 0.45359237, abs=0.05)
    assert float(roof["area"].removesuffix(" ft2")) == pytest.approx(row.area / 304.8**2, abs=0.005)
    column = by_mark["C1"]
    assert (column["count of mark"], column["section"]) == ("10", "tube 4 x 4 x 0.12")
    notched = next(row for row in listed.rows if row.cutouts)
    assert by_mark[notched.mark]["cutouts"].startswith("notch bottom")


def test_equal_solids_share_a_mesh(content: dict[str, Any], nodes: dict[str, dict[str, Any]]) -> None:
    mesh_of: dict[object, set[int]] = {}
    for piece in sample_model().pieces:
        key = (piece.solid, piece.row, piece.label("colour"))
        mesh_of.setdefault(key, set()).add(nodes[piece.name]["mesh"])
    assert all(len(meshes) == 1 for meshes in mesh_of.values())
    assert len(content["meshes"]) == len(mesh_of) < len(nodes) / 2


def test_a_roof_is_painted_in_its_colour(content: dict[str, Any], nodes: dict[str, dict[str, Any]]) -> None:
    """CSS slategray is 112 128 144; linear by IEC 61966-2-1, worked by hand: 0.1620, 0.2159, 0.2789."""
    assert rgb("slategray") == (112, 128, 144)
    roof = next(piece for piece in sample_model().pieces if piece.role == "roof sheet")
    assert roof.label("colour") == "slategray"
    (primitive,) = content["meshes"][nodes[roof.name]["mesh"]]["primitives"]
    factor = content["materials"][primitive["material"]]["pbrMetallicRoughness"]["baseColorFactor"]
    assert factor == pytest.approx([0.1620, 0.2159, 0.2789, 1.0], abs=1e-4)


VALIDATE = """
const data = new Uint8Array(require('fs').readFileSync(process.argv[1]));
require('gltf-validator').validateBytes(data, {maxIssues: 0}).then(r => console.log(JSON.stringify(r)));
"""


def test_the_khronos_validator_has_no_complaint_about_the_sample(
    path: Path, missing: Callable[[str], None]
) -> None:
    if not shutil.which("node"):
        missing("node")
    if not (Path(os.environ.get("NODE_PATH", "nowhere")) / "gltf-validator").is_dir():
        missing("the npm package gltf-validator, in a folder that NODE_PATH names")
    done = subprocess.run(["node", "-e", VALIDATE, path], capture_output=True, text=True, check=True)
    report = json.loads(done.stdout)
    messages = [(found["code"], found["message"], found["pointer"]) for found in report["issues"]["messages"]]
    assert messages == []
    assert report["info"]["totalTriangleCount"] > 10_000
