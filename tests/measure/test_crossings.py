"""Where members meet is counted as a crew would: a clip a place, two ends where they butt in line."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest
from ribwright.measure.crossings import NEAR, ONE, Crossing, crossings
from ribwright.pieces import Model, Piece
from ribwright.place import Place, Point3
from ribwright.recipe import Prism, Section
from ribwright.solids import realise

COLUMN = Section(((-50, -50, 0.0), (50, -50, 0.0), (50, 50, 0.0), (-50, 50, 0.0)))
GIRT = Section(((0, -30, 0.0), (60, -30, 0.0), (60, 30, 0.0), (0, 30, 0.0)))


def bar(name: str, role: str, section: Section, place: Place, length: float) -> Piece:
    solid = realise(Prism(section, (0.0, 0.0, 0.0), (0.0, 0.0, length)))
    return Piece(name, role, (role,), solid, place)


def column(name: str, y: float) -> Piece:
    """100 square, upright at x 0."""
    return bar(name, "column", COLUMN, Place((0.0, y, 0.0)), 3000.0)


def girt(name: str, start: Point3, length: float) -> Piece:
    """60 square along y, its inner face at the start's x."""
    return bar(name, "girt", GIRT, Place(start, (1.0, 0.0, 0.0), (0.0, 0.0, -1.0)), length)


def met(*pieces: Piece) -> Counter[Crossing]:
    return Counter(crossings(Model("bay", "mm", pieces)))


def test_a_girt_over_three_columns_and_two_that_butt_on_one() -> None:
    columns = [column(f"c{k}", 3000.0 * k) for k in range(3)]
    one = Crossing("girt", "frame", 1)
    assert met(*columns, girt("g", (50.0, -50.0, 1000.0), 6100.0)) == {one: 3}
    halves = (girt("g", (50.0, -50.0, 1000.0), 3048.0), girt("h", (50.0, 3002.0, 1000.0), 3048.0))
    assert met(*columns, *halves) == {one: 2, Crossing("girt", "frame", 2): 1}


@pytest.mark.parametrize(
    ("off", "up", "count"),
    [(NEAR - 0.1, 0.0, 2), (NEAR + 0.1, 0.0, 1), (0.0, 61.0, 2), (0.0, ONE + 1, 2), (0.0, -3000.0, 1)],
)
def test_girts_beside_each_other_have_a_clip_each_and_one_that_stands_off_none(
    off: float, up: float, count: int
) -> None:
    first = girt("g", (50.0, -500.0, 1000.0), 1000.0)
    other = girt("h", (50.0 + off, -500.0, 1100.0 + up), 1000.0)
    assert met(column("c", 0.0), first, other) == {Crossing("girt", "frame", 1): count}


def test_a_strut_is_held_off_its_frame_and_turns_with_the_building() -> None:
    """A box that stands aslant of the axes counts by its own sides."""
    strut = replace(girt("s", (110.0, -500.0, 2900.0), 1000.0), role="eave strut")
    pieces = (column("c", 0.0), strut)
    assert met(*pieces) == {Crossing("eave strut", "frame", 1): 1}
    turned = Place((7.0, 8.0, 9.0), (0.6, 0.8, 0.0), (-0.48, 0.36, 0.8))
    assert met(*(replace(one, place=turned @ one.place) for one in pieces)) == {
        Crossing("eave strut", "frame", 1): 1
    }
    beyond = replace(strut, place=Place((126.0, -500.0, 2900.0), strut.place.x, strut.place.y))
    assert met(pieces[0], beyond) == {}


def test_a_girt_at_a_column_and_its_rafter_has_one_clip() -> None:
    """The two stand on each other; between them is a joint."""
    on_top = bar("r", "rafter", COLUMN, Place((0.0, 0.0, 3000.0)), 100.0)
    found = met(column("c", 0.0), on_top, girt("g", (50.0, -500.0, 2990.0), 1000.0))
    assert found == {Crossing("girt", "frame", 1): 1, Crossing("column", "joint", 1): 1}


@pytest.mark.parametrize(("off", "count"), [(NEAR - 0.5, 1), (NEAR + 0.5, 0)])
def test_what_stands_under_a_rafter_aslant_does_not_meet_it(off: float, count: int) -> None:
    """A rafter that falls 45 degrees across a girt's corner: its own sides part the two, not the girt's."""
    s = 0.5**0.5
    across = (
        60.0 + 30.0 + (50.0 + off) / s
    )  # from the girt's face to where the rafter's axis is level with it
    start = (across + 1000.0 * s, 0.0, -1000.0 * s)
    rafter = bar("r", "rafter", COLUMN, Place(start, (s, 0.0, s), (0.0, 1.0, 0.0)), 2000.0)
    one = girt("g", (0.0, -500.0, 0.0), 1000.0)
    assert sum(met(rafter, one).values()) == count
