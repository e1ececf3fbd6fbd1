"""IFC files read by ifcopenshell, which validates them, and by web-ifc, which shares no kernel with it."""

from __future__ import annotations

import io
import json
import os
import shutil
import subprocess
from collections import Counter
from collections.abc import Callable
from pathlib import Path
from typing import Any

import ifcopenshell
import ifcopenshell.geom
import ifcopenshell.util.element
import ifcopenshell.util.unit
import ifcopenshell.validate
import numpy as np
import pytest
from ribwright.exchange.ifc import write_ifc
from ribwright.exchange.ifc_classes import CLASSES, LISTS, class_of
from ribwright.order.lists.items import Item
from ribwright.order.lists.schedule import schedule
from ribwright.pieces import Model
from ribwright.roles import KINDS, list_of
from ribwright.solids.placed import placed_triangles
from ribwright.solids.properties import volume
from support.small_model import small_model
from support.store import store, store_schedule

pytestmark = pytest.mark.broad

FOOT, POUND = 0.3048, 0.45359237
SCRIPT = Path(__file__).parents[1] / "support" / "web_ifc.js"


@pytest.fixture(scope="module", params=["ft-in", "mm"])
def units(request: pytest.FixtureRequest) -> str:
    return str(request.param)


@pytest.fixture(scope="module")
def path(units: str, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("ifc") / "model.ifc"
    write_ifc(store(units), path, store_schedule(units))
    return path


@pytest.fixture(scope="module")
def file(path: Path) -> ifcopenshell.file:
    return ifcopenshell.open(path)


@pytest.fixture(scope="module")
def elements(file: ifcopenshell.file) -> dict[str, Any]:
    """What stands for pieces, by name."""
    return {one.Name: one for one in file.by_type("IfcElement") if one.Tag}


def issues(path: Path) -> list[object]:
    found = ifcopenshell.validate.json_logger()
    ifcopenshell.validate.validate(str(path), found, express_rules=True)
    return list(found.statements)


def test_no_rule_of_the_schema_is_broken(path: Path) -> None:
    assert issues(path) == []


def test_nor_by_a_model_with_odd_names_and_no_marks(tmp_path: Path) -> None:
    model = small_model()
    write_ifc(model, tmp_path / "small.ifc", schedule(model))
    assert issues(tmp_path / "small.ifc") == []
    found = ifcopenshell.open(tmp_path / "small.ifc")
    assert {one.Name for one in found.by_type("IfcElement")} >= {piece.name for piece in model.pieces}
    assert found.by_type("IfcProject")[0].Name == model.name


def test_every_role_has_a_class_and_every_kind_is_the_schemas() -> None:
    schema = ifcopenshell.schema_by_name("IFC4")
    assert all(role in CLASSES or KINDS[role].list in LISTS for role in KINDS if role != "unknown")
    for kind in (*CLASSES.values(), *LISTS.values()):
        words = schema.declaration_by_name(f"{kind.name}TypeEnum").enumeration_items()
        assert kind.kind in words, kind


def test_every_piece_is_an_element_of_its_class_with_its_mark(elements: dict[str, Any], units: str) -> None:
    assert elements.keys() == {piece.name for piece in store(units).pieces}
    for piece in store(units).pieces:
        element, kind = elements[piece.name], class_of(piece.role)
        assert (element.is_a(), element.PredefinedType, element.Tag) == (kind.name, kind.kind, piece.mark)
        assert element.ObjectType == (piece.role if kind.kind == "USERDEFINED" else None)


def test_frames_walls_and_the_roof_hold_their_parts(file: ifcopenshell.file, units: str) -> None:
    parts = {
        " ".join(piece.group): sum(other.group == piece.group for other in store(units).pieces)
        for piece in store(units).pieces
        if piece.role in ("column", "wall sheet", "roof sheet")
    }
    kinds = [("IfcElementAssembly", "frame"), ("IfcWall", "walls"), ("IfcRoof", "roof")]
    for kind, first in kinds:
        found = {one.Name: len(one.IsDecomposedBy[0].RelatedObjects) for one in file.by_type(kind)}
        assert found == {name: count for name, count in parts.items() if name.startswith(first)}
    groups = Counter(piece.group for piece in store(units).pieces)
    assert {one.Name: len(one.IsGroupedBy[0].RelatedObjects) for one in file.by_type("IfcGroup")} == {
        "/".join(path): count for path, count in groups.items()
    }


def test_doors_and_windows_fill_openings_in_their_walls(file: ifcopenshell.file) -> None:
    found = {
        one.Name: (
            one.FillsVoids[0].RelatingOpeningElement.VoidsElements[0].RelatingBuildingElement.Name,
            one.OverallWidth * ifcopenshell.util.unit.calculate_unit_scale(file),
            one.OverallHeight * ifcopenshell.util.unit.calculate_unit_scale(file),
        )
        for one in (*file.by_type("IfcDoor"), *file.by_type("IfcWindow"))
    }
    assert {name: wall for name, (wall, _, _) in found.items()} == {
        "front walk door 1 leaf": "walls front",
        "left window 1 sash": "walls left",
    }
    _, wide, high = found["front walk door 1 leaf"]
    assert (wide, high) == pytest.approx((3 * FOOT, (6 + 8 / 12) * FOOT), abs=0.02)  # less its play


def test_quantities_are_the_schedules(elements: dict[str, Any], units: str) -> None:
    """In the file's own units: feet and pounds, or millimetres and kilograms."""
    mm, kg = (1 / (1000 * FOOT), 1 / POUND) if units == "ft-in" else (1.0, 1.0)
    of_mark = {element.Tag: element for element in elements.values()}
    listed = store_schedule(units)
    rows = {row.mark: row for row in (*listed.rows, *listed.items)}
    assert of_mark.keys() == rows.keys()
    for mark, row in rows.items():
        sets = ifcopenshell.util.element.get_psets(of_mark[mark])
        own = sets["Ribwright schedule quantities"]
        assert own["Length"] == pytest.approx(row.length * mm, rel=1e-12)
        assert own.get("NetWeight", 0.0) == pytest.approx(row.weight * kg, rel=1e-12)
        if isinstance(row, Item):
            assert own["NetVolume"] == pytest.approx(row.volume * mm**3, rel=1e-6)
            if list_of(row.role) == "members" and row.role != "base plate":
                official = next(values for name, values in sets.items() if name.startswith("Qto_"))
                assert official["Length"] == own["Length"]
                assert official["NetWeight"] == own["NetWeight"]
        else:
            assert own["NetArea"] == pytest.approx(row.area * mm**2, rel=1e-12)
            assert sets["Qto_CoveringBaseQuantities"]["NetArea"] == own["NetArea"]
        assert sets["Ribwright schedule"]["count of mark"] == str(row.count)


def test_the_bodies_are_the_models(file: ifcopenshell.file, units: str) -> None:
    """Volumes and bounds of everything but screws, as ifcopenshell makes them, in metres."""
    settings = ifcopenshell.geom.settings()
    settings.set("use-world-coords", True)
    settings.set("mesher-linear-deflection", 1e-5)
    wanted = {p.name: p for p in store(units).pieces if list_of(p.role) not in ("screws", "closures")}
    chosen = [one for one in file.by_type("IfcElement") if one.Name in wanted]
    shapes = ifcopenshell.geom.iterator(settings, file, 1, include=chosen)
    seen = set()
    assert shapes.initialize()
    while True:
        shape = shapes.get()
        points = np.array(shape.geometry.verts).reshape(-1, 3)
        a, b, c = (points[np.array(shape.geometry.faces).reshape(-1, 3)[:, k]] - points[0] for k in range(3))
        solid = float(np.einsum("ij,ij->", a, np.cross(b, c)) / 6)
        piece = wanted[shape.name]
        assert solid == pytest.approx(volume(piece.solid) / 1e9, rel=2e-4), shape.name
        assert points.min(axis=0) == pytest.approx(bounds(piece.name, units)[0], abs=1e-4), shape.name
        assert points.max(axis=0) == pytest.approx(bounds(piece.name, units)[1], abs=1e-4), shape.name
        seen.add(shape.name)
        if not shapes.next():
            break
    assert seen == wanted.keys()


def bounds(name: str, units: str) -> tuple[np.ndarray, np.ndarray]:
    """Of a piece, in metres."""
    ((points, _),) = placed_triangles([piece for piece in store(units).pieces if piece.name == name])
    return points.min(axis=0) / 1000, points.max(axis=0) / 1000


def test_web_ifc_agrees_piece_by_piece(path: Path, units: str, missing: Callable[[str], None]) -> None:
    """Count, bounds to 0.1 mm, volumes to 0.1 %: screws, closures and all."""
    if not shutil.which("node"):
        missing("node")
    if not (Path(os.environ.get("NODE_PATH", "nowhere")) / "web-ifc").is_dir():
        missing("the npm package web-ifc, in a folder that NODE_PATH names")
    done = subprocess.run(["node", SCRIPT, path], capture_output=True, text=True, check=True)
    found = {one["name"]: one for one in json.loads(done.stdout)}
    assert len(found) == len(store(units).pieces)
    for piece in store(units).pieces:
        one = found[piece.name]
        low, high = bounds(piece.name, units)
        assert one["mark"] == piece.mark
        assert one["volume"] == pytest.approx(volume(piece.solid) * piece.count / 1e9, rel=1e-3), piece.name
        assert one["low"] == pytest.approx(low, abs=1e-4), piece.name
        assert one["high"] == pytest.approx(high, abs=1e-4), piece.name


def test_square_cut_members_are_extruded_profiles_of_their_length(
    elements: dict[str, Any], units: str
) -> None:
    mm = 1 / (1000 * FOOT) if units == "ft-in" else 1.0
    rows = {item.mark: item for item in store_schedule(units).items}
    square = [
        piece
        for piece in store(units).pieces
        if list_of(piece.role) == "members" and not any(rows[piece.mark].ends) and not rows[piece.mark].holes
    ]
    assert len(square) > 8
    for piece in square:
        (mapped,) = elements[piece.name].Representation.Representations[0].Items
        (body,) = mapped.MappingSource.MappedRepresentation.Items
        assert body.is_a("IfcExtrudedAreaSolid"), piece.name
        assert body.Depth == pytest.approx(rows[piece.mark].length * mm, rel=1e-9)
        assert body.SweptArea.ProfileName == rows[piece.mark].section
        (material,) = ifcopenshell.util.element.get_material(elements[piece.name]).MaterialProfiles
        assert (material.Material.Name, material.Profile) == ("steel", body.SweptArea)


def test_equal_bodies_are_one_map(file: ifcopenshell.file, units: str) -> None:
    looks = {(piece.solid, piece.row, piece.label("colour")) for piece in store(units).pieces}
    single = {(solid, (), colour) for solid, _, colour in looks}
    assert len(file.by_type("IfcRepresentationMap")) == len(looks | single)


def test_colours_are_surface_styles(file: ifcopenshell.file, units: str) -> None:
    """CSS slategray is 112 128 144."""
    styles = {one.Name: one.Styles[0].SurfaceColour for one in file.by_type("IfcSurfaceStyle")}
    colours = {piece.label("colour") for piece in store(units).pieces} - {""}
    assert styles.keys() >= colours
    grey = styles["slategray"]
    assert (grey.Red, grey.Green, grey.Blue) == pytest.approx((112 / 255, 128 / 255, 144 / 255))


def test_equal_models_give_equal_bytes(path: Path, units: str) -> None:
    again = io.BytesIO()
    model = store(units)
    write_ifc(Model(model.name, model.units, model.pieces, model.terms), again, store_schedule(units))
    assert again.getvalue() == path.read_bytes()
