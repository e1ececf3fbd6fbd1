"""USDZ files opened by usd-core, held against all its validators, which are usdchecker's rules."""

from __future__ import annotations

import io
import zipfile
from pathlib import Path

import numpy as np
import pytest
from pxr import Usd, UsdGeom, UsdShade, UsdValidation
from ribwright.catalog.colours import is_colour, linear_rgb
from ribwright.exchange.usdz import write_usdz
from ribwright.pieces import Model
from ribwright.solids.placed import placed_triangles
from ribwright.solids.properties import volume
from support.store import MODELS


@pytest.fixture(scope="module", params=MODELS)
def model(request: pytest.FixtureRequest) -> Model:
    return MODELS[request.param]()


@pytest.fixture(scope="module")
def path(model: Model, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("usdz") / "model.usdz"
    write_usdz(model, path)
    return path


@pytest.fixture(scope="module")
def stage(path: Path) -> Usd.Stage:
    return Usd.Stage.Open(str(path))


@pytest.fixture(scope="module")
def instances(stage: Usd.Stage) -> dict[str, Usd.Prim]:
    return {prim.GetDisplayName(): prim for prim in stage.Traverse() if prim.IsInstance()}


def complaints(stage: Usd.Stage) -> list[str]:
    every = UsdValidation.ValidationRegistry().GetOrLoadAllValidators()
    assert len(every) > 20
    return [error.GetMessage() for error in UsdValidation.ValidationContext(every).Validate(stage)]


def test_no_validator_complains(stage: Usd.Stage) -> None:
    assert complaints(stage) == []


def test_the_validators_would_complain() -> None:
    """Of a stage without a default prim, units and an axis, for one."""
    bare = Usd.Stage.CreateInMemory()
    bare.DefinePrim("/thing", "Mesh")
    assert complaints(bare)


def test_the_package_is_as_the_format_wants_it(path: Path) -> None:
    """One file, not compressed, its data at a multiple of 64 bytes."""
    (entry,) = zipfile.ZipFile(path).infolist()
    data = path.read_bytes()
    name, extra = (int.from_bytes(data[at : at + 2], "little") for at in (26, 28))
    assert entry.compress_type == zipfile.ZIP_STORED
    assert (30 + name + extra) % 64 == 0
    assert data[30 + name + extra :].startswith(b"PXR-USDC")


def test_the_building_is_in_metres_y_up(stage: Usd.Stage, model: Model) -> None:
    assert (UsdGeom.GetStageUpAxis(stage), UsdGeom.GetStageMetersPerUnit(stage)) == ("Y", 1.0)
    points = np.concatenate([points for points, _ in placed_triangles(model.pieces)]) / 1000
    (x0, y0, z0), (x1, y1, z1) = points.min(axis=0), points.max(axis=0)
    low, high = np.full(3, np.inf), np.full(3, -np.inf)
    for mesh, matrix in meshes(stage):
        stood = corners(mesh) @ matrix[:3, :3] + matrix[3, :3]
        low, high = np.minimum(low, stood.min(axis=0)), np.maximum(high, stood.max(axis=0))
    assert low == pytest.approx([x0, z0, -y1], abs=2e-5)
    assert high == pytest.approx([x1, z1, -y0], abs=2e-5)


def meshes(stage: Usd.Stage) -> list[tuple[UsdGeom.Mesh, np.ndarray]]:
    """Every mesh as it stands, instances and all."""
    cache = UsdGeom.XformCache()
    every = Usd.PrimRange(stage.GetDefaultPrim(), Usd.TraverseInstanceProxies())
    return [
        (UsdGeom.Mesh(prim), np.array(cache.GetLocalToWorldTransform(prim)))
        for prim in every
        if prim.IsA(UsdGeom.Mesh)
    ]


def corners(mesh: UsdGeom.Mesh) -> np.ndarray:
    return np.array(mesh.GetPointsAttr().Get(), float)


def test_every_piece_is_an_instance_that_says_what_it_is(
    instances: dict[str, Usd.Prim], model: Model
) -> None:
    assert instances.keys() == {piece.name for piece in model.pieces}
    for piece in model.pieces:
        prim = instances[piece.name]
        told = prim.GetCustomData()
        assert (told["mark"], told["role"]) == (piece.mark, piece.role)
        above = prim.GetParent()
        for name in reversed(piece.group):
            assert above.GetDisplayName() == name
            above = above.GetParent()
        assert above == prim.GetStage().GetDefaultPrim()


def test_equal_bodies_and_rows_are_one_prototype(stage: Usd.Stage, model: Model) -> None:
    looks = {(piece.solid, piece.row, piece.label("colour")) for piece in model.pieces}
    shapes = {(solid, row) for solid, row, _ in looks}
    (held,) = [prim for prim in stage.GetDefaultPrim().GetAllChildren() if prim.IsAbstract()]
    assert len(held.GetAllChildren()) == len(shapes)


def test_every_body_has_its_pieces_volume_and_flat_normals(stage: Usd.Stage, model: Model) -> None:
    found = {}
    for mesh, _ in meshes(stage):
        points, indices = corners(mesh), np.array(mesh.GetFaceVertexIndicesAttr().Get()).reshape(-1, 3)
        a, b, c = (points[indices[:, k]] - points[0] for k in range(3))
        name = mesh.GetPrim().GetParent().GetDisplayName()
        found[name] = float(np.einsum("ij,ij->", a, np.cross(b, c)) / 6)
        across = np.cross(b - a, c - a)
        across /= np.linalg.norm(across, axis=1, keepdims=True)
        normals = np.array(mesh.GetNormalsAttr().Get()).reshape(-1, 3, 3)
        assert mesh.GetNormalsInterpolation() == "faceVarying"
        assert np.einsum("ij,ikj->ik", across, normals).min() > 0.99
    for piece in model.pieces:
        assert found[piece.name] * 1e9 == pytest.approx(volume(piece.solid) * piece.count, rel=3e-3)


def test_pieces_are_in_their_colours(instances: dict[str, Usd.Prim], model: Model) -> None:
    for piece in model.pieces:
        if is_colour(piece.label("colour")):
            paint, _ = UsdShade.MaterialBindingAPI(instances[piece.name]).ComputeBoundMaterial()
            shader, _, _ = paint.ComputeSurfaceSource()
            assert tuple(shader.GetInput("diffuseColor").Get()) == pytest.approx(
                linear_rgb(piece.label("colour")), abs=1e-6
            )


def test_equal_models_give_equal_bytes(path: Path, model: Model) -> None:
    again = io.BytesIO()
    write_usdz(Model(model.name, model.units, tuple(model.pieces), model.terms), again)
    assert again.getvalue() == path.read_bytes()
