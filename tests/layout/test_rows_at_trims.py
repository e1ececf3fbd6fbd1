"""Rows of sheet screws beside trims' edges, as one sees them who stands before the wall: no head is half
under an edge, none so near that no socket goes on it."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np
import pytest
import shapely
from ribwright.intake import parse
from ribwright.pieces import Model, Piece
from ribwright.raising import raise_building
from support.clashes import manifold
from support.starter_buildings import starter_model

WASHER, SOCKET = 0.59 * 25.4 / 2, 25.4 / 8
"""mm: half a washer, and what a socket needs beside it."""
SEEN = {
    "left": ((0.0, -1.0, 0.0), (-1.0, 0.0, 0.0)),
    "right": ((0.0, 1.0, 0.0), (1.0, 0.0, 0.0)),
    "front": ((1.0, 0.0, 0.0), (0.0, -1.0, 0.0)),
    "back": ((-1.0, 0.0, 0.0), (0.0, 1.0, 0.0)),
}
"""To the right, and towards the eye, of who faces a wall."""
METRIC = (
    'units = "mm"\nwidth = "6 m"\nlength = "6 m"\neave_height = "3 m"\npitch = "15 deg"\n'
    '[trim]\ngutters = "low eaves"\n'
)


def looked_at(piece: Piece, face: str) -> Iterable[shapely.Polygon]:
    """A piece as it is seen there, across and up, each part by itself."""
    right, out = SEEN[face]
    turn = np.array([(*right, 0.0), (0.0, 0.0, 1.0, 0.0), (*out, 0.0)])
    return map(shapely.Polygon, manifold(piece).transform(turn).project().simplify(0.01).to_polygons())


def beside(piece: Piece, face: str, plane: float) -> bool:
    """Whether it stands in or before the sheets of a wall whose screws sit at so far out."""
    box = np.array(manifold(piece).bounding_box()).reshape(2, 3) @ np.array(SEEN[face][1])
    return bool(box.max() > plane - 60.0)


@pytest.mark.parametrize("name", ["workshop", "garage", "wainscot", "machine-shed", "metric"])
def test_heads_lie_wholly_behind_a_trim_or_clear_of_its_edge(name: str) -> None:
    model = raise_building(parse(METRIC, name)).model if name == "metric" else starter_model(name)
    seen = [min(apart) for face in SEEN for apart in _apart(model, face)]
    assert len(seen) >= 4
    assert min(seen) >= 0.0


def _apart(model: Model, face: str) -> Iterable[tuple[float, ...]]:
    """For each kind of trim at a wall's heads or seams, what the nearest heads have to spare."""
    right, out = SEEN[face]
    rows = [p for p in model.pieces if p.role == "sheet screw" and p.label("face") == face]
    seats = np.array([row.place.point(point) for row in rows for point in row.row])
    spots = shapely.points(seats @ np.array(right), seats[:, 2])
    plane = float(np.median(seats @ np.array(out)))
    level = ("eave trim", "gutter") if face in ("left", "right") else ("rake trim",)
    for role in (*level, "tier trim"):
        trims = [p for p in model.pieces if p.role == role and beside(p, face, plane)]
        if not trims:
            continue
        area = shapely.union_all([part for trim in trims for part in looked_at(trim, face)])
        behind, far = shapely.contains(area, spots), shapely.distance(area.boundary, spots)
        yield tuple((far - np.where(behind, WASHER, WASHER + SOCKET) + 0.02).tolist())
