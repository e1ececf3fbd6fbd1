"""A STEP that went through another program: solids without names or roles, told by their shape."""

from __future__ import annotations

import json
from collections import Counter
from dataclasses import replace
from pathlib import Path

import gmsh
import pytest
from OCP.BRep import BRep_Builder
from OCP.BRepPrimAPI import BRepPrimAPI_MakeBox, BRepPrimAPI_MakeSphere
from OCP.gp import gp_Pnt
from OCP.IFSelect import IFSelect_RetDone
from OCP.STEPControl import STEPControl_AsIs, STEPControl_Reader, STEPControl_Writer
from OCP.TopoDS import TopoDS_Compound, TopoDS_Shape, TopoDS_Solid
from ribwright.catalog.sections import parse_section, sections
from ribwright.cli.main import run
from ribwright.exchange.step import read_step, write_step
from ribwright.intake import read, sample
from ribwright.layout.screws.screw_kinds import NUMBER_12, hex_screw, pan_screw
from ribwright.measure.told_by_shape import told, told_by_shape
from ribwright.order.lists.schedule import Schedule, schedule
from ribwright.pieces import Model, Piece
from ribwright.place import Place
from ribwright.raising import raise_building
from ribwright.recipe import Prism, Turned
from ribwright.roles import list_of, roles_of
from ribwright.solids import realise
from ribwright.solids.properties import volume
from shapely import box
from support.bodies import LEFT, sheet_over
from support.poses import moved

pytestmark = pytest.mark.broad

PLATES = {"base plate"}
"""Members that no shape tells: a flat bar may be anything."""
SHED = """name = "shed"
width = "12'"
length = "10'"
eave_height = "8'"
pitch = "3/12"
"""


def written(shape: TopoDS_Shape, path: Path) -> Path:
    writer = STEPControl_Writer()
    writer.Transfer(shape, STEPControl_AsIs)
    assert writer.Write(str(path)) == IFSelect_RetDone
    return path


def through_the_kernel(source: Path, path: Path) -> Path:
    """Read by the kernel's plain reader, which drops names and attributes, and written again."""
    reader = STEPControl_Reader()
    assert reader.ReadFile(str(source)) == IFSelect_RetDone
    reader.TransferRoots()
    return written(reader.OneShape(), path)


def through_gmsh(source: Path, path: Path) -> Path:
    """Every body a solid of its own, with its coordinates where it stands."""
    gmsh.initialize(interruptible=False)
    try:
        gmsh.option.setNumber("General.Terminal", 0)
        gmsh.option.setString("Geometry.OCCTargetUnit", "MM")
        gmsh.model.occ.importShapes(str(source))
        gmsh.model.occ.synchronize()
        gmsh.write(str(path))
    finally:
        gmsh.finalize()
    return path


def expected(model: Model) -> Counter[str]:
    """How many bodies of each list shape can tell, by the roles they were made with."""
    found: Counter[str] = Counter()
    for piece in model.pieces:
        lists = {
            "sheets": roles_of("sheets"),
            "members": set(roles_of("members")) - PLATES,
            "screws": roles_of("screws"),
        }
        found[next((name for name, roles in lists.items() if piece.role in roles), "unknown")] += piece.count
    return found


def counted(listed: Schedule) -> Counter[str]:
    lists = ("members", "screws", "unknown")
    items = {name: sum(item.count for item in listed.listed(name)) for name in lists}
    return Counter({"sheets": listed.count, **items})


def is_the_same_but_for_its_words(ours: Model, foreign: Model) -> None:
    """Every body is counted where it belongs, by volume to 0.01 %; no role, label or face is invented."""
    before, after = schedule(ours), schedule(foreign)
    assert counted(after) == expected(ours)
    assert {piece.role for piece in told_by_shape(foreign).pieces} == {"sheet", "member", "screw", "unknown"}
    assert not any(piece.labels or piece.mark for piece in foreign.pieces)
    whole = sum(volume(piece.solid) * piece.count for piece in ours.pieces)
    assert sum(volume(piece.solid) for piece in foreign.pieces) == pytest.approx(whole, rel=1e-4)
    assert figures(before) == figures(after)
    assert sections_of(before) == sections_of(after)
    assert after.weight == pytest.approx(before.weight, rel=1e-4)
    for row in after.rows:
        assert (row.faces, row.colour, row.profile, row.gauge) == ((), "", "", "")


def figures(listed: Schedule) -> list[object]:
    """Every sheet as its figures: which marks it shares by its labels does not count."""
    return sorted(
        (
            *(round(row.length, 1), round(row.width, 1), round(row.thickness, 4), round(row.area, -1)),
            *(row.foot.kind, row.head.kind, len(row.cutouts)),
        )
        for row in listed.rows
        for _ in range(row.count)
    )


def sections_of(listed: Schedule) -> Counter[str]:
    """How many members have which section, but for plates."""
    found: Counter[str] = Counter()
    for item in listed.listed("members"):
        found[item.section] += item.count if item.role not in PLATES else 0
    return +found


@pytest.fixture(scope="module")
def shed(tmp_path_factory: pytest.TempPathFactory) -> tuple[Model, Path]:
    """A small building with a few of its screws, and its STEP: gmsh takes minutes for thousands."""
    folder = tmp_path_factory.mktemp("shed")
    (folder / "shed.toml").write_text(SHED, encoding="utf-8")
    model = raise_building(replace(read(folder / "shed.toml"), units="mm")).model
    kept = tuple(p for p in model.pieces if list_of(p.role) not in ("screws", "closures"))
    screws = [replace(p, row=p.row[:3]) for p in model.pieces if list_of(p.role) == "screws" and p.row][:4]
    model = replace(model, pieces=(*kept, *screws))
    write_step(model, folder / "ours.step")
    return model, folder / "ours.step"


def test_the_sample_through_the_kernel(tmp_path: Path) -> None:
    model = raise_building(replace(sample(), units="mm")).model
    write_step(model, tmp_path / "ours.step")
    foreign = through_the_kernel(tmp_path / "ours.step", tmp_path / "foreign.step")
    is_the_same_but_for_its_words(model, read_step(foreign))


def test_a_small_building_through_gmsh(shed: tuple[Model, Path], tmp_path: Path) -> None:
    is_the_same_but_for_its_words(shed[0], read_step(through_gmsh(shed[1], tmp_path / "foreign.step")))


def test_the_commands_list_it_and_say_in_one_line_what_is_unknown(
    shed: tuple[Model, Path], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    wanted = expected(shed[0])
    path = through_the_kernel(shed[1], tmp_path / "foreign.step")
    line = f"{path}: {wanted['unknown']} of {sum(wanted.values())} bodies not recognised; listed as unknown\n"
    assert run(["schedule", str(path), "--format", "json"]) == 0
    said, error = capsys.readouterr()
    assert error == line
    content = json.loads(said)
    assert sum(item["count"] for item in content["unknown"]) == wanted["unknown"]
    assert all("weight" not in item for item in content["unknown"])
    assert all(item["weight"]["kg"] > 0 for item in (*content["members"], *content["screws"]))
    assert run(["order", str(path), "--format", "json"]) == 0
    said, error = capsys.readouterr()
    assert (json.loads(said)["unknown"], error) == (wanted["unknown"], line)


@pytest.mark.parametrize("command", ["schedule", "order"])
def test_a_file_in_which_nothing_is_recognised_is_an_error(
    command: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    both, builder = TopoDS_Compound(), BRep_Builder()
    builder.MakeCompound(both)
    builder.Add(both, BRepPrimAPI_MakeBox(100.0, 100.0, 100.0).Shape())
    builder.Add(both, BRepPrimAPI_MakeSphere(gp_Pnt(500.0, 0.0, 0.0), 60.0).Shape())
    path = written(both, tmp_path / "toys.step")
    assert run([command, str(path)]) == 2
    said, error = capsys.readouterr()
    assert said == ""
    assert error == f"{path}: of its 2 bodies none is recognised as a sheet, member or screw\n"
    listed = schedule(read_step(path)).listed("unknown")
    assert [(item.count, item.weight) for item in listed] == [(1, 0.0), (1, 0.0)]
    assert sorted(item.length for item in listed) == pytest.approx([100.0, 120.0], abs=0.01)


def body(section: str, length: float) -> TopoDS_Solid:
    return realise(Prism(parse_section(section).section(), (0.0, 0.0, 0.0), (0.0, 0.0, length)))


@pytest.mark.parametrize(
    ("solid", "role"),
    [
        *((body(name, 4000.0), "member") for name in sections()),
        (body("9CS2.5x059", 500.0), "unknown"),  # as short as a clip
        (body("plate 5.5x1.5", 4000.0), "unknown"),  # a board
        (body("angle 2x2x0.0217", 3000.0), "unknown"),  # a trim
        (realise(sheet_over(box(LEFT, 0, 300, 2000))), "sheet"),
        (realise(sheet_over(box(40, 0, 180, 2000))), "unknown"),  # flat: no rib is left
        (realise(hex_screw(NUMBER_12, 31.75)), "screw"),
        (realise(pan_screw(NUMBER_12, 25.4)), "screw"),
        (realise(Turned(hex_screw(NUMBER_12, 31.75).meridian)), "screw"),
        (realise(Turned(pan_screw(NUMBER_12, 25.4).meridian)), "screw"),
        (realise(Turned(((0, 0), (3, 0), (3, 40), (0, 40)))), "unknown"),  # a pin
        (realise(Turned(((0, 0), (3, 0), (3, 40), (0, 40)), 6)), "unknown"),
        (realise(Turned(((0, 0), (3, 0), (3, 40), (3.3, 40), (3.3, 45), (0, 45)), 6)), "unknown"),  # a rivet
        (realise(Turned(((0, 0), (60, 0), (60, 3000), (0, 3000)))), "unknown"),  # a pile
        (realise(Turned(((20, 0), (24, 0), (24, 3000), (20, 3000)))), "unknown"),  # a pipe
    ],
)
def test_what_is_told_wherever_it_stands(solid: TopoDS_Solid, role: str) -> None:
    assert told(solid) == role
    assert told(moved(solid)) == role


@pytest.mark.parametrize("sides", [0, 6])
def test_screws_each_a_body_of_its_own_are_one_mark(sides: int) -> None:
    solid = realise(replace(hex_screw(NUMBER_12, 31.75), sides=sides))
    pieces = tuple(Piece(str(i), "", (), moved(solid, i), Place()) for i in range(40))
    (item,) = schedule(Model("screws", "ft-in", pieces)).items
    assert (item.role, item.count, item.section) == ("screw", 40, "0.216 x 1.25")


def test_a_role_that_is_given_is_left_alone() -> None:
    piece = Piece("post", "post", (), body("HSS4X4X1/4", 3000.0), Place())
    model = Model("post", "mm", (piece,))
    assert told_by_shape(model) == model
