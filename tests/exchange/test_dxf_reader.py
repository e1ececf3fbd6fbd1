"""DXF files read back by ezdxf: its audit, and every piece where it stands, block by block."""

from __future__ import annotations

import io
from collections import Counter
from pathlib import Path

import ezdxf
import numpy as np
import pytest
from ezdxf.document import Drawing
from ezdxf.entities import Insert, Polyface
from ezdxf.math import Matrix44
from ribwright.catalog.colours import is_colour, rgb
from ribwright.exchange.dxf import write_dxf
from ribwright.pieces import Model, Piece
from ribwright.place import Place
from ribwright.recipe import Prism, Section
from ribwright.solids import realise
from ribwright.solids.placed import placed_triangles
from ribwright.solids.properties import volume
from support.small_model import small_model
from support.store import store

pytestmark = pytest.mark.broad

MODELS = {"store": store, "store in mm": lambda: store("mm"), "odd names": small_model}
SCREWS_TRIED = 3  # rows; every screw of them


@pytest.fixture(scope="module", params=MODELS)
def model(request: pytest.FixtureRequest) -> Model:
    return MODELS[request.param]()


@pytest.fixture(scope="module")
def path(model: Model, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("dxf") / "model.dxf"
    write_dxf(model, path)
    return path


@pytest.fixture(scope="module")
def read(path: Path) -> Drawing:
    return ezdxf.readfile(path)


@pytest.fixture(scope="module")
def inserts(read: Drawing) -> dict[str, Insert]:
    return {insert.get_attrib_text("NAME"): insert for insert in read.modelspace().query("INSERT")}


def test_the_audit_finds_nothing(read: Drawing) -> None:
    audit = read.audit()
    assert (audit.errors, audit.fixes) == ([], [])


def test_it_is_in_inches_or_millimetres_as_the_building_is_shown(read: Drawing, model: Model) -> None:
    inches = model.units != "mm"
    assert (read.header["$INSUNITS"], read.header["$MEASUREMENT"]) == ((1, 0) if inches else (4, 1))
    points = np.concatenate([points for points, _ in placed_triangles(model.pieces)])
    scale = 25.4 if inches else 1.0
    assert np.array(read.header["$EXTMIN"]) * scale == pytest.approx(points.min(axis=0))
    assert np.array(read.header["$EXTMAX"]) * scale == pytest.approx(points.max(axis=0))


def test_every_piece_is_an_insert_on_the_layer_of_its_role_in_its_colour(
    inserts: dict[str, Insert], model: Model
) -> None:
    assert inserts.keys() == {piece.name for piece in model.pieces}
    for piece in model.pieces:
        insert = inserts[piece.name]
        assert insert.dxf.layer == piece.role
        assert insert.get_attrib_text("MARK") == piece.mark
        if is_colour(piece.label("colour")):
            assert insert.rgb == rgb(piece.label("colour"))
        assert all(attribute.is_invisible for attribute in insert.attribs)


def test_equal_pieces_share_a_block_that_bears_their_mark(inserts: dict[str, Insert], model: Model) -> None:
    blocks: dict[object, set[str]] = {}
    for piece in model.pieces:
        key = (piece.solid, piece.row, piece.mark or piece.name)
        blocks.setdefault(key, set()).add(inserts[piece.name].dxf.name)
        if piece.mark:
            assert inserts[piece.name].dxf.name.startswith(f"{piece.mark} {piece.role}")
    assert all(len(names) == 1 for names in blocks.values())
    assert len(set.union(*blocks.values())) == len(blocks)


def bodies(read: Drawing, insert: Insert, outer: Matrix44) -> list[tuple[float, np.ndarray]]:
    """Volume and points in place of every polyface in an insert, however deep; in the drawing's units."""
    here, found = insert.matrix44() @ outer, []
    for entity in read.blocks[insert.dxf.name]:
        if isinstance(entity, Insert):
            found += bodies(read, entity, here)
        elif isinstance(entity, Polyface):
            corners = np.array(
                [[vertex.dxf.location.xyz for vertex in face[:-1]] for face in entity.faces()], float
            )
            a, b, c = (corners[:, k] - corners[0, 0] for k in range(3))
            points = here.transform_vertices(corners.reshape(-1, 3).tolist())
            found.append(
                (float(np.einsum("ij,ij->", a, np.cross(b, c)) / 6), np.array([p.xyz for p in points]))
            )
    return found


def test_every_body_has_its_volume_where_it_stands(
    read: Drawing, inserts: dict[str, Insert], model: Model
) -> None:
    scale = 25.4 if model.units != "mm" else 1.0
    rows = [piece for piece in model.pieces if piece.row][:SCREWS_TRIED]
    for piece in (*(piece for piece in model.pieces if not piece.row), *rows):
        found = bodies(read, inserts[piece.name], Matrix44())
        assert len(found) == piece.count
        ((expected, _),) = placed_triangles([piece])
        points = np.concatenate([points for _, points in found]) * scale
        assert points.min(axis=0) == pytest.approx(expected.min(axis=0), abs=1e-3), piece.name
        assert points.max(axis=0) == pytest.approx(expected.max(axis=0), abs=1e-3), piece.name
        for size, _ in found:
            assert size * scale**3 == pytest.approx(volume(piece.solid), rel=2e-3), piece.name


def test_only_edges_show() -> None:
    """A box has 12 edges, each of two faces, and 6 diagonals that are hidden on both sides."""
    section = Section(((0, 0, 0), (50, 0, 0), (50, 20, 0), (0, 20, 0)))
    box = realise(Prism(section, (0, 0, 0), (0, 0, 100)))
    stream = io.BytesIO()
    write_dxf(Model("box", "mm", (Piece("box", "girt", (), box, Place()),)), stream)
    read = ezdxf.read(io.StringIO(stream.getvalue().decode()))
    (mesh,) = read.blocks["girt"]
    sides: Counter[tuple[frozenset[object], bool]] = Counter()
    for *corners, record in mesh.faces():
        places = [corner.dxf.location.round(6) for corner in corners]
        shown = [record.dxf.get(f"vtx{k}") > 0 for k in range(3)]
        sides.update((frozenset((places[k], places[(k + 1) % 3])), shown[k]) for k in range(3))
    assert Counter(shown for (_, shown) in sides) == {True: 12, False: 6}
    assert set(sides.values()) == {2}


def test_equal_models_give_equal_bytes(path: Path, model: Model) -> None:
    again = io.BytesIO()
    write_dxf(Model(model.name, model.units, tuple(model.pieces), model.terms), again)
    assert again.getvalue() == path.read_bytes()
