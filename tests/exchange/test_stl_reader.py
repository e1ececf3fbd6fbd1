"""The sample's STL, read by trimesh: every body closed and of its volume, where it stands."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest
import trimesh
from ribwright.exchange.stl import read_stl, write_marks, write_stl
from ribwright.outputs import OUTPUTS, write_outputs
from ribwright.pieces import Model, Piece
from ribwright.roles import list_of
from ribwright.solids.placed import row_triangles
from ribwright.solids.properties import triangles, volume
from support.sample_building import sample_model
from support.store import store, store_schedule


@pytest.fixture(scope="module")
def path(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("stl") / "model.stl"
    write_stl(sample_model(), path)
    return path


@pytest.fixture(scope="module")
def soup(path: Path) -> trimesh.Trimesh:
    """All triangles, their corners not yet joined."""
    return trimesh.load_mesh(path, process=False)


def bodies(soup: trimesh.Trimesh) -> Iterator[tuple[Piece, trimesh.Trimesh]]:
    """The pieces with their own triangles, which lie in the file piece by piece; corners joined."""
    first = 0
    for piece in sample_model().pieces:
        count = len(row_triangles(piece.solid, piece.row)[1])
        corners = soup.triangles[first : first + count].reshape(-1, 3)
        first += count
        yield piece, trimesh.Trimesh(corners, np.arange(len(corners)).reshape(-1, 3), process=True)
    assert first == len(soup.faces)


def test_it_is_binary_and_of_its_stated_length(path: Path) -> None:
    data = path.read_bytes()
    assert not data.startswith(b"solid")  # which is how the text form begins
    assert len(data) == 84 + 50 * int.from_bytes(data[80:84], "little")


def test_the_signed_volume_is_that_of_all_solids(soup: trimesh.Trimesh) -> None:
    """The whole file at once: what is inside out would be taken off. Rounded sections are flats here."""
    expected = sum(volume(piece.solid) * piece.count for piece in sample_model().pieces)
    assert soup.volume == pytest.approx(expected, rel=1e-4)


def test_each_distinct_solid_is_closed() -> None:
    solids = dict.fromkeys(piece.solid for piece in sample_model().pieces)
    assert len(solids) > 80
    for solid in solids:
        mesh = trimesh.Trimesh(*triangles(solid), process=False)
        assert mesh.is_watertight
        assert mesh.is_winding_consistent
        assert mesh.body_count == 1


def test_every_body_is_closed_in_the_file_too(soup: trimesh.Trimesh) -> None:
    """With 32-bit numbers, 1/1000 mm at 12 m: a thin sheet's volume is right to a hundredth of it."""
    for piece, mesh in bodies(soup):
        assert mesh.is_watertight, piece.name
        assert mesh.is_winding_consistent, piece.name
        points, faces = triangles(piece.solid)
        own = trimesh.Trimesh(points, faces, process=False).volume * piece.count
        assert mesh.volume == pytest.approx(own, rel=1e-2), piece.name


def test_every_body_stands_in_its_place(soup: trimesh.Trimesh) -> None:
    for piece, mesh in bodies(soup):
        points = np.array([piece.place.point(p) for p in row_triangles(piece.solid, piece.row)[0].tolist()])
        assert mesh.bounds == pytest.approx(np.array([points.min(axis=0), points.max(axis=0)]), abs=2e-3)


def test_each_mark_by_itself_lies_on_the_bench(tmp_path: Path) -> None:
    """Its lowest corner at the origin, as long along y as the schedule says, closed, of its volume."""
    write_marks(store(), tmp_path / "marks.zip")
    listed = store_schedule()
    rows = {row.mark: row for row in (*listed.rows, *listed.items)}
    of_mark = {piece.mark: piece for piece in store().pieces}
    with zipfile.ZipFile(tmp_path / "marks.zip") as archive:
        assert {name.split(" ")[0] for name in archive.namelist()} == rows.keys()
        for mark, row in rows.items():
            mesh = trimesh.load_mesh(io.BytesIO(archive.read(f"{mark} {row.role}.stl")), "stl")
            assert mesh.is_watertight, mark
            assert mesh.bounds[0] == pytest.approx([0, 0, 0], abs=2e-3), mark
            assert mesh.volume == pytest.approx(volume(of_mark[mark].solid), rel=1e-2), mark
            if list_of(row.role) in ("sheets", "members", "trims"):
                assert mesh.bounds[1][1] == pytest.approx(row.length, abs=2e-3), mark


def test_equal_models_give_equal_archives() -> None:
    one, other = io.BytesIO(), io.BytesIO()
    write_marks(store(), one)
    write_marks(Model(store().name, store().units, store().pieces), other)
    assert one.getvalue() == other.getvalue()


def test_the_building_and_its_screws_are_written_apart(tmp_path: Path) -> None:
    """Together they are the whole, triangle for triangle; bodies by their corners."""
    outputs = [output for output in OUTPUTS if output.name.endswith(".stl")]
    write_outputs(store(), tmp_path, outputs)
    screws = sum(piece.count for piece in store().pieces if list_of(piece.role) == "screws")
    counts = {}
    for output in outputs:
        counts[output.name] = trimesh.load_mesh(tmp_path / output.name).body_count
    assert counts["screws.stl"] == screws > 100
    whole = sum(len(triangles(piece.solid)[1]) * piece.count for piece in store().pieces)
    assert sum(len(read_stl(tmp_path / output.name)) for output in outputs) == whole
