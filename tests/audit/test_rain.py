"""Water falls on the starters as nobody planned it: it gets away from every trim and leaf, and keeps off the
steel. A trim that holds it like a cup, and one that is not there, are found."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

import numpy as np
import pytest
from ribwright.intake import starters
from ribwright.pieces import Piece
from ribwright.place import Place, Point3
from ribwright.roles import KINDS, Role
from support.rain import Standing, standing, weather
from support.rays import standing_triangles
from support.starter_buildings import starter_model

TRIED = 40
"""Drops tried on each piece; of four about one sees the sky."""
LYING = np.array([[1.0, 0.0, 0.0], [0.0, 0.0, 1.0], [0.0, -1.0, 0.0]])
"""Turns what stands in the left wall and looks to the front so that it lies and looks up."""


def lists(*names: str) -> list[Role]:
    return [role for role in Role if role in KINDS and KINDS[role].list in names]


def kept(pieces: tuple[Piece, ...], wet: Iterable[Role] = lists("trims", "openings")) -> list[Standing]:
    """Where drops that fall on some pieces, trims and leaves unless said, come to stand or get in to the
    steel."""
    falling = weather(pieces)
    drops = (standing(falling, drop, frozenset(lists("members"))) for drop in falling.wet(wet, TRIED, seed=1))
    return [drop for drop in drops if drop is not None]


@pytest.mark.parametrize("name", starters())
def test_water_stands_nowhere_and_keeps_off_the_steel(name: str) -> None:
    assert not [
        f"{drop.ran_on}, {drop.held_by}: {drop.at.round()}" for drop in kept(starter_model(name).pieces)
    ]


def test_a_trim_over_a_window_that_opens_upward_is_a_cup() -> None:
    pieces = {piece.name: piece for piece in starter_model("garage").pieces}
    jamb, drip = pieces["left window 1 j trim right"], pieces["left window 1 drip"]
    middle, over = _middle(jamb), _middle(drip) + np.array([0, 0, 10])
    turned = Place(
        _point(over + LYING @ (np.array(jamb.place.origin) - middle)),
        _point(LYING @ np.array(jamb.place.x)),
        _point(LYING @ np.array(jamb.place.y)),
    )
    cup = replace(jamb, name="cup", place=turned)
    found = kept((*(piece for piece in pieces.values() if piece is not drip), cup))
    assert {drop.held_by for drop in found} == {"cup"}


def test_steel_is_dry_under_a_roof_and_wet_where_its_ridge_cap_is_gone() -> None:
    pieces = starter_model("garage").pieces
    under = [Role.PURLIN, Role.RAFTER, Role.EAVE_STRUT, Role.GIRT]
    assert not kept(pieces, under)
    assert kept(tuple(piece for piece in pieces if piece.role != Role.RIDGE_CAP), under)


def _middle(piece: Piece) -> np.ndarray:
    points, _ = standing_triangles(piece)
    return (points.min(axis=0) + points.max(axis=0)) / 2


def _point(values: np.ndarray) -> Point3:
    x, y, z = map(float, values)
    return x, y, z
