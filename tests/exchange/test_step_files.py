"""STEP: what is written is what is read, and what other readers find in it."""

from __future__ import annotations

import hashlib
import io
import os
import re
import subprocess
import sys
from pathlib import Path

import gmsh
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from OCP.gp import gp_Trsf, gp_Vec
from OCP.Interface import Interface_Static
from OCP.Quantity import Quantity_Color, Quantity_TOC_sRGB
from OCP.STEPCAFControl import STEPCAFControl_Reader, STEPCAFControl_Writer
from OCP.STEPControl import STEPControl_AsIs
from OCP.TopLoc import TopLoc_Location
from OCP.XCAFDoc import XCAFDoc_ColorSurf, XCAFDoc_DocumentTool, XCAFDoc_ShapeTool
from ribwright.exchange.kernel import (
    components,
    listed,
    name_of,
    new_document,
    referred,
    set_name,
    set_up_step,
    silence,
)
from ribwright.exchange.names import with_printable_names
from ribwright.exchange.part21 import quoted
from ribwright.exchange.step import read_step, write_step
from ribwright.pieces import Model, Piece
from ribwright.place import Place, Point3
from ribwright.solids.properties import is_valid, triangles, volume
from support.small_model import BAR, POST, SHEET, small_model

TEXT = st.text(st.characters(codec=None), min_size=1, max_size=12)


def text_of(model: Model) -> bytes:
    stream = io.BytesIO()
    write_step(model, stream)
    return stream.getvalue()


def round_trip(model: Model, folder: Path) -> Model:
    write_step(model, folder / "model.step")
    return read_step(folder / "model.step")


def said(piece: Piece) -> tuple[object, ...]:
    return piece.name, piece.role, piece.group, piece.labels, piece.mark, piece.row


def assert_same(read: Model, model: Model) -> None:
    assert (read.name, read.units) == (model.name, model.units)
    assert [said(piece) for piece in read.pieces] == [said(piece) for piece in model.pieces]
    for found, piece in zip(read.pieces, model.pieces, strict=True):
        for got, put in ((found.place.x, piece.place.x), (found.place.y, piece.place.y)):
            assert got == pytest.approx(put, abs=1e-14)
        assert found.place.origin == pytest.approx(piece.place.origin, rel=1e-15, abs=1e-12)
        assert volume(found.solid) == pytest.approx(volume(piece.solid), rel=1e-9)
    for a, b in zip(read.pieces, model.pieces, strict=True):
        for c, d in zip(read.pieces, model.pieces, strict=True):
            assert (a.solid is c.solid) == (b.solid is d.solid)


def test_what_is_read_is_what_was_written(tmp_path: Path) -> None:
    assert_same(round_trip(small_model(), tmp_path), small_model())


def test_bodies_come_back_valid_and_to_the_kernels_own_precision(tmp_path: Path) -> None:
    for found, piece in zip(round_trip(small_model(), tmp_path).pieces, small_model().pieces, strict=True):
        assert is_valid(found.solid)
        (points, faces), (expected, their) = triangles(found.solid), triangles(piece.solid)
        assert len(faces) == len(their)
        assert points[np.lexsort(np.round(points, 6).T)] == pytest.approx(
            expected[np.lexsort(np.round(expected, 6).T)], abs=1e-8
        )


def test_a_second_trip_changes_nothing(tmp_path: Path) -> None:
    once = round_trip(small_model(), tmp_path)
    assert_same(round_trip(once, tmp_path), small_model())


@settings(max_examples=25, deadline=None)
@given(st.lists(st.tuples(TEXT, TEXT, TEXT, TEXT, TEXT), min_size=1, max_size=4))
def test_any_letters_survive_and_others_are_seen(
    tmp_path_factory: pytest.TempPathFactory, texts: list[tuple[str, ...]]
) -> None:
    pieces = tuple(
        Piece(
            f"{name}{i}", role, (group,), POST, Place(), ((f"key {key}.", value), ("gauge", role)), mark=value
        )
        for i, (name, role, group, key, value) in enumerate(texts)
    )
    model = Model(texts[0][0], texts[0][1], pieces)
    read, shown = round_trip(model, tmp_path_factory.mktemp("letters")), with_printable_names(model)
    assert read.name == shown.name
    assert {said(piece) for piece in read.pieces} == {said(piece) for piece in shown.pieces}


@pytest.mark.parametrize("text", ["',", "a',b", "')", "''),", "','"])
def test_a_quote_before_a_comma_or_bracket_ends_no_string(text: str, tmp_path: Path) -> None:
    """The kernel's reader takes a doubled quote before them for the end; as a code it reads it right."""
    piece = Piece("post", "post", ("frame",), POST, Place(), (("note", text),), "M1")
    assert round_trip(Model("m", "mm", (piece,)), tmp_path).pieces[0].label("note") == text


def test_strings_are_ascii_and_spelled_by_the_standard() -> None:
    """ISO 10303-21: a quote and a backslash double; \\X2\\ takes four digits a letter, \\X4\\ eight."""
    assert quoted("9' \\ 2\"") == "'9'' \\\\ 2\"'"
    assert quoted("Größe") == "'Gr\\X2\\00F600DF\\X0\\e'"
    assert quoted("a\U0001f3e0é") == "'a\\X4\\0001F3E0\\X0\\\\X2\\00E9\\X0\\'"
    assert text_of(small_model()).isascii()


def test_equal_models_give_equal_bytes_in_every_process() -> None:
    script = (
        "import sys, io, hashlib\n"
        f"sys.path.insert(0, {str(Path(__file__).parents[1])!r})\n"
        "from support.small_model import small_model\n"
        "from ribwright.exchange.step import write_step\n"
        "write_step(small_model(), first := io.BytesIO())\n"
        "print(hashlib.sha256(first.getvalue()).hexdigest())\n"
    )
    prints = {hashlib.sha256(text_of(small_model())).hexdigest() for _ in range(2)}
    for seed in "12":
        environment = {**os.environ, "PYTHONHASHSEED": seed}
        prints.add(
            subprocess.check_output([sys.executable, "-c", script], env=environment, text=True).strip()
        )
    assert len(prints) == 1


def test_the_head_names_no_machine_person_or_time() -> None:
    head = text_of(small_model()).split(b"ENDSEC;")[0].decode()
    assert "'1970-01-01T00:00:00',(''),(''),'ribwright','ribwright',''" in head
    assert "AP242_MANAGED_MODEL_BASED_3D_ENGINEERING" in head


def test_every_reference_is_to_an_entity_and_every_number_is_used_once() -> None:
    text = re.sub(rb"'(?:[^']|'')*'", b"''", text_of(small_model()))
    numbers = re.findall(rb"\n#(\d+) ?=", text)
    assert len(set(numbers)) == len(numbers)
    assert set(re.findall(rb"#(\d+)", text)) == set(numbers)


def test_equal_bodies_are_written_once_for_each_mark() -> None:
    """The sheet has two marks, so it stands there twice; post, bar and screw once."""
    text = text_of(small_model())
    assert text.count(b"MANIFOLD_SOLID_BREP(") == 5
    assert text.count(b" row',") == 2  # PRODUCT states its name twice: one row, shared


def test_gmsh_finds_the_same_solids_in_place(tmp_path: Path) -> None:
    write_step(small_model(), tmp_path / "model.step")
    gmsh.initialize(interruptible=False)
    try:
        gmsh.option.setNumber("General.Terminal", 0)
        gmsh.option.setString("Geometry.OCCTargetUnit", "MM")
        solids = [tag for dim, tag in gmsh.model.occ.importShapes(str(tmp_path / "model.step")) if dim == 3]
        found = sorted(
            (gmsh.model.occ.getMass(3, tag), gmsh.model.occ.getCenterOfMass(3, tag)) for tag in solids
        )
    finally:
        gmsh.finalize()
    expected = sorted(
        (volume(piece.solid), middle) for piece in small_model().pieces for middle in middles(piece)
    )
    assert [mass for mass, _ in found] == pytest.approx([mass for mass, _ in expected], rel=1e-6)
    by_place = sorted(tuple(np.round(middle, 1)) for _, middle in found)
    assert np.array(by_place) == pytest.approx(
        np.array(sorted(tuple(np.round(m, 1)) for _, m in expected)), abs=0.3
    )


def middles(piece: Piece) -> list[Point3]:
    """Centres of mass of a piece's bodies, off their triangles."""
    points, faces = triangles(piece.solid)
    a, b, c = (points[faces[:, k]] for k in range(3))
    weights = np.einsum("ij,ij->i", a, np.cross(b, c))
    middle = (weights[:, None] * (a + b + c) / 4).sum(axis=0) / weights.sum()
    return [
        piece.place.point((middle[0] + x, middle[1] + y, middle[2] + z))
        for x, y, z in piece.row or ((0.0, 0.0, 0.0),)
    ]


def opened(path: Path) -> object:
    """A file as the kernel's own reader shows it to any program on it."""
    document, reader = new_document(), STEPCAFControl_Reader()
    for mode in (reader.SetNameMode, reader.SetColorMode, reader.SetMetaMode):
        mode(True)
    with silence():
        reader.ReadFile(str(path))
        reader.Transfer(document)
    return document


def test_the_kernels_reader_shows_tree_names_and_colours(tmp_path: Path) -> None:
    write_step(small_model(), tmp_path / "model.step")
    document = opened(tmp_path / "model.step")
    (root,) = listed(XCAFDoc_DocumentTool.ShapeTool_s(document.Main()).GetFreeShapes)
    walls, frame, _ = components(root)
    assert [name_of(root), name_of(walls), name_of(frame)] == [small_model().name, "walls", "frame"]
    front, back = components(referred(walls))
    assert [name_of(label) for label in components(referred(front))] == [
        "front 1", "front 2", "front 1 screws", "front 2 screws",
    ]  # fmt: skip
    products = [referred(label) for label in components(referred(back))]
    assert [name_of(product) for product in products] == ["P1 wall sheet", "P2 wall sheet"]
    assert [srgb(document, product) for product in products] == [(220, 20, 60), (30, 144, 255)]


def srgb(document: object, product: object) -> tuple[int, int, int]:
    colours, found = XCAFDoc_DocumentTool.ColorTool_s(document.Main()), Quantity_Color()
    body = XCAFDoc_ShapeTool.GetShape_s(product)
    assert colours.GetColor(body, XCAFDoc_ColorSurf, found) or colours.GetColor(
        product, XCAFDoc_ColorSurf, found
    )
    return tuple(round(255 * value) for value in found.Values(Quantity_TOC_sRGB))


def foreign(path: Path, unit: str) -> None:
    """A file of another program: a pair of posts used twice, and a bar, no attributes."""
    set_up_step()
    document = new_document()
    shapes = XCAFDoc_DocumentTool.ShapeTool_s(document.Main())
    root, pair = shapes.NewShape(), shapes.NewShape()
    post, bar = shapes.AddShape(POST, False), shapes.AddShape(BAR, False)
    for label, name in ((root, "shed"), (pair, "pair"), (post, "post"), (bar, "bar")):
        set_name(label, name)
    shapes.AddComponent(pair, post, moved(0.0))
    shapes.AddComponent(pair, post, moved(1000.0))
    shapes.AddComponent(root, pair, moved(0.0))
    shapes.AddComponent(root, pair, moved(5000.0))
    shapes.AddComponent(root, bar, moved(300.0))
    shapes.UpdateAssemblies()
    Interface_Static.SetCVal_s("write.step.unit", unit)
    writer = STEPCAFControl_Writer()
    with silence():
        writer.Transfer(document, STEPControl_AsIs)
        writer.Write(str(path))
    Interface_Static.SetCVal_s("write.step.unit", "MM")


def moved(x: float) -> TopLoc_Location:
    shift = gp_Trsf()
    shift.SetTranslation(gp_Vec(x, 0.0, 0.0))
    return TopLoc_Location(shift)


@pytest.mark.parametrize("unit", ["MM", "INCH", "M"])
def test_a_file_that_is_not_ours_reads_in_mm(tmp_path: Path, unit: str) -> None:
    foreign(tmp_path / "shed.step", unit)
    assert (b"INCH" in (tmp_path / "shed.step").read_bytes()) == (unit == "INCH")
    model = read_step(tmp_path / "shed.step")
    assert (model.name, model.units) == ("shed", "mm")
    assert [(p.name, p.group) for p in model.pieces] == [
        ("post", ("pair",)), ("post 2", ("pair",)), ("post 3", ("pair",)), ("post 4", ("pair",)), ("bar", ()),
    ]  # fmt: skip
    assert {(p.role, p.mark, p.labels) for p in model.pieces} == {("", "", ())}
    assert [p.place.origin[0] for p in model.pieces] == pytest.approx([0, 1000, 5000, 6000, 300], abs=1e-6)
    posts = {id(p.solid) for p in model.pieces[:4]}
    assert len(posts) == 1
    assert volume(model.pieces[0].solid) == pytest.approx(volume(POST), rel=1e-9)
    assert volume(model.pieces[4].solid) == pytest.approx(volume(BAR), rel=1e-9)


def test_a_label_that_would_be_taken_for_ours_is_refused() -> None:
    with pytest.raises(ValueError, match="a label's name is used twice"):
        text_of(Model("m", "mm", (Piece("p", "r", (), SHEET, Place(), (("mark", "x"),)),)))
