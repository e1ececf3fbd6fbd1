"""STEP files as two other programs read them: gmsh, and steputils, which knows no geometry and no kernel."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import gmsh
import numpy as np
import pytest
from numpy.typing import NDArray
from ribwright.catalog.colours import rgb
from ribwright.exchange.step import write_step
from ribwright.pieces import Model, Piece
from ribwright.place import Place
from ribwright.printable import printable
from ribwright.solids.properties import triangles, volume
from steputils import p21
from support.sample_building import sample_model
from support.small_model import SHEET, small_model

pytestmark = pytest.mark.broad

Matrix = NDArray[np.float64]  # (4, 4), from an occurrence's frame to the frame it stands in


@pytest.fixture(scope="module")
def gmsh_volumes(tmp_path_factory: pytest.TempPathFactory) -> list[float]:
    """Volumes of the sample's solids as gmsh imports them; without labels, whose look-up takes it minutes."""
    path = tmp_path_factory.mktemp("gmsh") / "model.step"
    write_step(sample_model(), path)
    gmsh.initialize(interruptible=False)
    try:
        gmsh.option.setNumber("General.Terminal", 0)
        gmsh.option.setString("Geometry.OCCTargetUnit", "MM")
        gmsh.option.setNumber("Geometry.OCCImportLabels", 0)
        solids = [tag for dim, tag in gmsh.model.occ.importShapes(str(path)) if dim == 3]
        return sorted(gmsh.model.occ.getMass(3, tag) for tag in solids)
    finally:
        gmsh.finalize()


def test_gmsh_reads_every_solid_of_the_sample(gmsh_volumes: list[float]) -> None:
    pieces = sample_model().pieces
    assert max(piece.count for piece in pieces) > 1  # rows of screws are counted one by one
    expected = sorted(volume(piece.solid) for piece in pieces for _ in range(piece.count))
    assert len(gmsh_volumes) == len(expected)
    assert gmsh_volumes == pytest.approx(expected, rel=1e-6)


class Part21:
    """A STEP file as plain entities; a complex entity counts as all of its parts."""

    def __init__(self, path: Path) -> None:
        file = p21.readfile(str(path))
        self.schema = str(file.header.get("FILE_SCHEMA").params[0][0])
        self.entities: dict[str, dict[str, Any]] = {}  # by number: a name and parameters for each part
        for instance in file.data[0].instances.values():
            parts = instance.entities if p21.is_complex_entity_instance(instance) else [instance.entity]
            self.entities[instance.ref] = {part.name: list(part.params) for part in parts}

    def __getitem__(self, kind: str) -> dict[str, list[Any]]:
        """The parameters of all entities of a kind."""
        return {ref: parts[kind] for ref, parts in self.entities.items() if kind in parts}

    def matrix(self, placement: str) -> Matrix:
        """An AXIS2_PLACEMENT_3D; its third axis is x's neighbour, made from the other two."""
        _, origin, z, x = self.entities[placement]["AXIS2_PLACEMENT_3D"]
        p, z, x = (np.array(next(iter(self.entities[ref].values()))[1], float) for ref in (origin, z, x))
        matrix = np.eye(4)
        matrix[:3] = np.column_stack([x, np.cross(z, x), z, p])
        return matrix


@pytest.fixture(scope="module")
def part21(tmp_path_factory: pytest.TempPathFactory) -> Part21:
    path = tmp_path_factory.mktemp("part21") / "model.step"
    write_step(small_model(), path)
    return Part21(path)


def references(value: Any) -> Iterator[str]:
    if p21.is_reference(value):
        yield value
    elif isinstance(value, list | tuple):
        for inner in value:
            yield from references(inner)


def test_every_entity_that_is_referred_to_is_there(part21: Part21) -> None:
    parts = [params for found in part21.entities.values() for params in found.values()]
    assert {ref for params in parts for ref in references(params)} <= set(part21.entities)


def test_it_says_ap242_and_millimetres(part21: Part21) -> None:
    assert part21.schema.startswith("AP242_MANAGED_MODEL_BASED_3D_ENGINEERING_MIM_LF {1 0 10303 442 ")
    lengths = [parts for parts in part21.entities.values() if "LENGTH_UNIT" in parts]
    assert {tuple(parts["SI_UNIT"]) for parts in lengths} == {(".MILLI.", ".METRE.")}


def found_in(part21: Part21) -> Iterator[tuple[tuple[str, ...], Matrix, str]]:
    """Every body: the names from the root down to it, where it stands, and its own number."""
    shape_of = {p[2]: ref for ref, p in part21["PRODUCT_DEFINITION_SHAPE"].items()}
    product = {
        ref: part21.entities[p[2]]["PRODUCT_DEFINITION_FORMATION"][2] for ref, p in _definitions(part21)
    }
    shown = {p[0]: p[1] for p in part21["SHAPE_DEFINITION_REPRESENTATION"].values()}
    placed = {p[1]: p[0] for p in part21["CONTEXT_DEPENDENT_SHAPE_REPRESENTATION"].values()}
    uses = part21["NEXT_ASSEMBLY_USAGE_OCCURRENCE"]

    def walk(definition: str, names: tuple[str, ...], outer: Matrix) -> Iterator[tuple[Any, ...]]:
        representation = part21.entities[shown[shape_of[definition]]]
        if "ADVANCED_BREP_SHAPE_REPRESENTATION" in representation:
            items = representation["ADVANCED_BREP_SHAPE_REPRESENTATION"][1]
            yield from ((names, outer, i) for i in items if "MANIFOLD_SOLID_BREP" in part21.entities[i])
        for ref, (_, name, _, above, below, _) in uses.items():
            if above == definition:
                related = part21.entities[placed[shape_of[ref]]]
                turn = related["REPRESENTATION_RELATIONSHIP_WITH_TRANSFORMATION"][0]
                _, _, start, end = part21.entities[turn]["ITEM_DEFINED_TRANSFORMATION"]
                inner = part21.matrix(end) @ np.linalg.inv(part21.matrix(start))
                yield from walk(below, (*names, name), outer @ inner)

    (root,) = set(product) - {params[4] for params in uses.values()}
    yield from walk(root, (part21.entities[product[root]]["PRODUCT"][1],), np.eye(4))


def _definitions(part21: Part21) -> list[tuple[str, list[Any]]]:
    return list(part21["PRODUCT_DEFINITION"].items())


def vertices(part21: Part21, body: str) -> Matrix:
    """The points of a body's VERTEX_POINTs, in its own frame (n, 3)."""
    waiting, seen, points = [body], {body}, []
    while waiting:
        parts = part21.entities[waiting.pop()]
        if "VERTEX_POINT" in parts:
            points.append(part21.entities[parts["VERTEX_POINT"][1]]["CARTESIAN_POINT"][1])
            continue
        new = {ref for params in parts.values() for ref in references(params)} - seen
        seen |= new
        waiting += new
    return np.array(points, float)


def paths(piece: Piece, model: Model) -> Iterator[tuple[str, ...]]:
    own = (model.name, *piece.group, piece.name)
    yield from ((*own, str(k + 1)) for k in range(len(piece.row))) if piece.row else [own]


def test_the_tree_has_every_name_letter_for_letter(part21: Part21) -> None:
    model = small_model()
    expected = Counter(path for piece in model.pieces for path in paths(piece, model))
    assert Counter(names for names, _, _ in found_in(part21)) == expected


def test_every_body_stands_where_its_piece_does(part21: Part21) -> None:
    """Chains of transformations, multiplied out, to the last digits of a double at 36 m."""
    model = small_model()
    at = {names: matrix for names, matrix, _ in found_in(part21)}
    for piece in model.pieces:
        for path, point in zip(paths(piece, model), piece.row or ((0.0, 0.0, 0.0),), strict=True):
            stand = piece.place @ Place(point)
            expected = np.column_stack([stand.x, stand.y, stand.z, stand.origin])
            assert at[path][:3] == pytest.approx(expected, rel=0, abs=1e-11)


def test_the_corners_of_a_sheet_are_those_of_its_solid(part21: Part21) -> None:
    (body, *_) = [body for names, _, body in found_in(part21) if names[-1] == "front 1"]
    found, expected = vertices(part21, body), triangles(SHEET)[0]
    assert len(found) == len(expected)
    assert _in_order(found) == pytest.approx(_in_order(expected), abs=1e-6)


def _in_order(points: Matrix) -> Matrix:
    return points[np.lexsort(np.round(points, 4).T)]


def test_bodies_that_are_one_in_the_model_are_one_in_the_file(part21: Part21) -> None:
    """One body for each solid and mark, however many pieces and rows it stands in."""
    bodies = {names[:4]: body for names, _, body in found_in(part21)}
    name = small_model().name
    assert bodies[name, "walls", "front", "front 1"] == bodies[name, "walls", "back", "back 1"]
    expected = {(id(piece.solid), piece.mark) for piece in small_model().pieces}
    assert len(set(bodies.values())) == len(expected) == len(part21["MANIFOLD_SOLID_BREP"])


def test_bodies_bear_the_colours_of_their_pieces(part21: Part21) -> None:
    styled = {params[2]: params[1][0] for params in part21["STYLED_ITEM"].values()}
    of_piece = {piece.name: piece.label("colour") for piece in small_model().pieces}
    for names, _, body in found_in(part21):
        colour = of_piece[names[-2] if names[-1].isdigit() else names[-1]]
        assert (body in styled) == bool(colour)
        if colour:
            assert _colour(part21, styled[body]) == pytest.approx([v / 255 for v in rgb(colour)])


def _colour(part21: Part21, style: str) -> list[float]:
    """What the chain of styles ends in."""
    while "COLOUR_RGB" not in part21.entities[style]:
        (params,) = part21.entities[style].values()
        (style,) = references(params)
    return list(map(float, part21.entities[style]["COLOUR_RGB"][1:]))


def test_attributes_are_on_what_they_belong_to(part21: Part21) -> None:
    """User-defined attributes by the CAx-IF recommended practice, followed entity by entity."""
    read: dict[str, dict[str, str]] = {}
    for definition, representation in part21["PROPERTY_DEFINITION_REPRESENTATION"].values():
        key, said, bearer = part21.entities[definition]["PROPERTY_DEFINITION"]
        (item,) = part21.entities[representation]["REPRESENTATION"][1]
        name, value = part21.entities[item]["DESCRIPTIVE_REPRESENTATION_ITEM"]
        assert (said, key) == ("user defined attribute", name)
        read.setdefault(bearer, {})[name] = value
    occurrences = {p[1]: ref for ref, p in part21["NEXT_ASSEMBLY_USAGE_OCCURRENCE"].items()}
    front, back = read[occurrences["front 1"]], read[occurrences["back 1"]]
    assert (front["face"], back["face"], front["mark"], front["colour"]) == ("front", "back", "P1", "crimson")
    products = {p[2]: ref for ref, p in part21["PRODUCT_DEFINITION"].items()}
    formation = {p[2]: ref for ref, p in part21["PRODUCT_DEFINITION_FORMATION"].items()}
    named = {p[1]: products[formation[ref]] for ref, p in part21["PRODUCT"].items()}
    assert (read[named["P2 wall sheet"]]["role"], read[named["P2 wall sheet"]]["gauge"]) == (
        "wall sheet",
        "29 ga",
    )
    assert read[named[small_model().name]]["units"] == "ft-in"


NAMES = [
    "Ü",
    "小屋",
    "\U0001f3e0 home",
    "9' 2-1/2\"",
    "C:\\new",
    "\\X2\\00DC\\X0\\",
    "''",
    "a\nb",
    "#1=('x');",
]


def test_names_of_all_letters(tmp_path: Path) -> None:
    pieces = tuple(Piece(f"{name} {i}", "post", (name,), SHEET, Place()) for i, name in enumerate(NAMES))
    write_step(Model("Schuppen", "mm", pieces), tmp_path / "model.step")
    found = [names[1:] for names, _, _ in found_in(Part21(tmp_path / "model.step"))]
    assert found == [(*map(printable, piece.group), printable(piece.name)) for piece in pieces]
