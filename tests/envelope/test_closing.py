"""The table of what closes each edge, held against the trims that stand along the edges of real models."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import product

import numpy as np
import pytest
from ribwright.envelope.beside import beside
from ribwright.envelope.closing import CLOSINGS, closing, unclosed
from ribwright.envelope.edges import Edge
from ribwright.envelope.face import Face
from ribwright.envelope.footprint import shell_of
from ribwright.envelope.roof_lines import RoofLines
from ribwright.intake import parse, starters
from ribwright.pieces import Model
from ribwright.place import Place
from ribwright.roles import Role
from ribwright.solids.placed import placed_triangles
from support.starter_buildings import starter, starter_model

NEAR = 330.0
"""mm from an edge within which all of a trim along it lies: the drop of an eave trim over a strut."""
PART = 0.25
"""Of an edge; along so much of it runs its trim, doors left out, and no end of another's."""
TRIMS = {row.trim for row in CLOSINGS.values() if row.trim} | {Role.GUTTER}
NOT_YET = {Edge.VALLEY, Edge.FREE}


def faces_of(name: str) -> Iterator[tuple[dict[str, Face], str, Place]]:
    """The faces of a starter and of its lean-tos, the wall that these are joined to, and where they stand."""
    building = starter(name)
    for one, place in [(building, Place()), *((one, beside(building, one)) for one in building.lean_tos)]:
        yield RoofLines(one).named, one.joined or "", place


def trims_of(model: Model) -> list[tuple[Role, np.ndarray]]:
    """Role and points (n, 3) of every trim that runs along some edge."""
    trims = [piece for piece in model.pieces if piece.role in TRIMS]
    return [(Role(p.role), points) for p in trims for points, _ in placed_triangles([p])]


def along(trims: list[tuple[Role, np.ndarray]], start: np.ndarray, end: np.ndarray) -> dict[Role, float]:
    """How much of an edge trims of each role run along, of its length."""
    length = float(np.linalg.norm(end - start))
    way = (end - start) / length
    steps = (np.arange(1000) + 0.5) / 1000 * length
    found = {role: np.zeros(1000, bool) for role, _ in trims}
    for role, points in trims:
        at = (points - start) @ way
        aside = np.linalg.norm(points - start - np.outer(at, way), axis=1)
        if aside.max() < NEAR and np.ptp(at) > aside.max():
            found[role] |= (at.min() < steps) & (steps < at.max())
    return {role: float(there.mean()) for role, there in found.items() if there.any()}


@pytest.mark.parametrize("name", starters())
def test_what_runs_along_an_edge_is_what_its_row_says(name: str) -> None:
    trims = trims_of(starter_model(name))
    for named, joined, place in faces_of(name):
        for face, side in ((one, side) for one in named.values() for side in one.sides):
            row = closing(named, face, side)
            assert row is not None
            if joined in (face.name, side.other) and side.kind in (Edge.BASE, Edge.CORNER):
                continue  # the main building's own
            if side.kind is Edge.CORNER and (face.hung or named[side.other].hung):
                continue  # its trim is as long as the sheets that hang there
            ends = [np.array((place @ face.frame).point((*point, 0.0))) for point in (side.start, side.end)]
            runs = {role for role, share in along(trims, *ends).items() if share > PART}
            guttered = row.trim is Role.EAVE_TRIM and Role.GUTTER in runs
            due = Role.GUTTER if guttered else row.trim
            assert runs == ({due} if due else set()), (face.name, side.kind)


def test_a_kind_of_edge_is_in_the_table_or_refused() -> None:
    """Every kind with every number of clad faces that may meet there: the rows are just these."""
    alone = {Edge.BASE, Edge.IN_LINE, Edge.INSIDE_CORNER, Edge.HEADWALL}
    roofs = {Edge.RIDGE, Edge.BREAK, Edge.HOLLOW}
    always = {Edge.EAVE, Edge.HIGH_EAVE, Edge.RAKE}
    for kind, clad in product(Edge, range(3)):
        most = 1 if kind in alone else 2
        least = most if kind in roofs | {Edge.INSIDE_CORNER, Edge.HEADWALL} else 1 if kind in always else 0
        assert ((kind, clad) in CLOSINGS) == (kind not in NOT_YET and least <= clad <= most), (kind, clad)


def test_a_valley_is_refused() -> None:
    """Two slopes that fall towards each other between high walls."""
    shed = parse('width = "20 ft"\nlength = "20 ft"\neave_height = "10 ft"\npitch = "3/12"\n', "valley")
    plain = shell_of(shed)
    points = [(x, y, 2 * 3048.0 - z if z > 3048.0 else z) for x, y, z in plain.vertices]
    faces = RoofLines(shed, replace(plain, vertices=tuple(points))).named
    assert {remedy for _, remedy in unclosed(faces)} == {
        "a shape without a valley: what closes one is not yet possible"
    }
