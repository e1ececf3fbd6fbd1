"""3MF files read back by lib3mf, strictly, and by trimesh, which shares no code with it."""

from __future__ import annotations

import io
from collections import Counter
from pathlib import Path
from typing import Any

import lib3mf
import numpy as np
import pytest
import trimesh
from ribwright.catalog.colours import is_colour, rgb
from ribwright.exchange.threemf import write_3mf
from ribwright.pieces import Model
from ribwright.solids.placed import placed_triangles
from ribwright.solids.properties import triangles
from support.store import MODELS

DIGITS = 5e-6  # lib3mf writes the numbers of a transform to six digits


@pytest.fixture(scope="module", params=MODELS)
def model(request: pytest.FixtureRequest) -> Model:
    return MODELS[request.param]()


@pytest.fixture(scope="module")
def path(model: Model, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("3mf") / "model.3mf"
    write_3mf(model, path)
    return path


@pytest.fixture(scope="module")
def read(path: Path) -> Any:
    """As lib3mf reads it, with the strictness of which any oddity is an error."""
    found = lib3mf.get_wrapper().CreateModel()
    reader = found.QueryReader("3mf")
    reader.SetStrictModeActive(True)
    reader.ReadFromFile(str(path))
    assert [reader.GetWarning(i) for i in range(reader.GetWarningCount())] == []
    return found


def each(iterator: Any, what: str) -> list[Any]:
    found = []
    while iterator.MoveNext():
        found.append(getattr(iterator, f"GetCurrent{what}")())
    return found


def test_it_is_in_millimetres_and_bears_the_buildings_name(read: Any, model: Model) -> None:
    assert read.GetUnit() == lib3mf.ModelUnit.MilliMeter
    assert read.GetMetaDataGroup().GetMetaDataByKey("", "Title").GetValue() == model.name


def test_every_piece_is_an_item_at_its_place(read: Any, model: Model) -> None:
    items = each(read.GetBuildItems(), "")
    assert [item.GetPartNumber() for item in items] == [piece.name for piece in model.pieces]
    for item, piece in zip(items, model.pieces, strict=True):
        rows = np.array([list(row) for row in item.GetObjectTransform().Fields])
        place = piece.place
        assert rows[:3] == pytest.approx(np.array([place.x, place.y, place.z]), abs=DIGITS)
        assert rows[3] == pytest.approx(np.array(place.origin), rel=DIGITS, abs=DIGITS)


def test_every_body_is_closed_and_stored_once(read: Any, model: Model) -> None:
    meshes = each(read.GetMeshObjects(), "MeshObject")
    looks = {(piece.solid, piece.label("colour"), piece.mark or piece.name) for piece in model.pieces}
    assert len(meshes) == len(looks)
    assert all(mesh.IsManifoldAndOriented() for mesh in meshes)
    assert Counter(mesh.GetTriangleCount() for mesh in meshes) == Counter(
        len(triangles(solid)[1]) for solid, *_ in looks
    )
    rows = {
        (piece.solid, piece.row, piece.label("colour"), piece.mark) for piece in model.pieces if piece.row
    }
    together = each(read.GetComponentsObjects(), "ComponentsObject")
    assert sorted(one.GetComponentCount() for one in together) == sorted(len(row) for _, row, *_ in rows)


def test_bodies_are_named_and_painted(read: Any, model: Model) -> None:
    meshes = {mesh.GetName() for mesh in each(read.GetMeshObjects(), "MeshObject")}
    assert meshes == {f"{p.mark} {p.role}".strip() if p.mark or p.role else p.name for p in model.pieces}
    (paints,) = each(read.GetBaseMaterialGroups(), "BaseMaterialGroup")
    library = lib3mf.get_wrapper()
    colours = {}
    for number in paints.GetAllPropertyIDs():
        colours[paints.GetName(number)] = library.ColorToRGBA(paints.GetDisplayColor(number))[:3]
    wanted = {colour for p in model.pieces if is_colour(colour := p.label("colour"))}
    assert wanted <= colours.keys()
    assert all(colours[colour] == rgb(colour) for colour in wanted)
    for item, piece in zip(each(read.GetBuildItems(), ""), model.pieces, strict=True):
        if not piece.row and is_colour(piece.label("colour")):
            mesh = read.GetMeshObjectByID(item.GetObjectResource().GetUniqueResourceID())
            _, number, painted = mesh.GetObjectLevelProperty()
            assert (paints.GetName(number), painted) == (piece.label("colour"), True)


def test_trimesh_finds_the_building_where_it_stands(path: Path, model: Model) -> None:
    scene = trimesh.load_scene(path)
    points = np.concatenate([points for points, _ in placed_triangles(model.pieces)])
    far = 3 * DIGITS * float(np.abs(points).max())
    assert scene.bounds == pytest.approx(np.array([points.min(axis=0), points.max(axis=0)]), abs=far)
    assert len(scene.graph.nodes_geometry) == sum(piece.count for piece in model.pieces)
    assert all(mesh.is_watertight for mesh in scene.geometry.values())


def test_equal_models_give_equal_bytes(path: Path, model: Model) -> None:
    again = io.BytesIO()
    write_3mf(Model(model.name, model.units, tuple(model.pieces), model.terms), again)
    assert again.getvalue() == path.read_bytes()
