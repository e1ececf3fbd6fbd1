"""Marks that figures alone do not tell apart: what the lists say of them, held against their bodies."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import replace
from itertools import pairwise

import pytest
from ribwright.intake import starters
from ribwright.measure.congruent import groups
from ribwright.measure.member import MeasuredMember
from ribwright.measure.unlike import unlike
from ribwright.order.buying.order_list import order
from ribwright.order.lists import sheet_cells
from ribwright.order.lists.item_cells import COLUMNS, cells
from ribwright.order.lists.schedule import Schedule
from ribwright.order.written.csv import csv_text
from ribwright.order.written.json import json_text
from ribwright.order.written.table import table
from support.clashes import manifold
from support.csv_rows import rows_of
from support.sample_building import sample_model, sample_schedule
from support.starter_buildings import starter_model, starter_schedule

WIDTH = 30 * 304.8
BESIDE = ("mark", "count", "faces", "people", "up")


@pytest.mark.parametrize("name", starters())
def test_no_two_rows_say_the_same_of_different_marks(name: str) -> None:
    """Sheets too: of the studio's two rips of 14 in one has its overlap rib cut off, and of the
    wainscot's two of 12-7/8 in."""
    listed = starter_schedule(name)
    rows = (cells(item, listed.units) for item in listed.items)
    sheets = (
        {
            "what": row.role,
            **sheet_cells.figures(row, listed.units),
            **sheet_cells.texts(row, listed.units),
            "cutouts": sheet_cells.cuts_text(row, listed.units),
        }
        for row in listed.rows
    )
    said = Counter(
        tuple(cell for column, cell in sorted(row.items()) if column not in BESIDE)
        for row in (*rows, *sheets)
    )
    assert [words for words, count in said.items() if count > 1] == []


@pytest.mark.parametrize("name", ["barn", "lambing-shed", "lean-to", "run-in", "machine-shed"])
def test_no_two_lines_of_an_order_say_the_same(name: str) -> None:
    """Eave trims of two pitches and of open walls, corner trims that stay flat, plates drilled otherwise."""
    said = Counter((line.list, line.item) for line in order(starter_schedule(name)).lines)
    assert [words for words, count in said.items() if count > 1] == []


def test_trims_of_one_kind_are_told_by_what_they_are_bent_from() -> None:
    """The barn's eaves: of 4/12, and of lean-tos of 2/12, one to a wall, one to open columns, whose leg
    covers the strut; at the gables' corners a flat one over the ends of walls in line, whose area is its
    width's."""
    lines = [line for line in order(starter_schedule("barn")).lines if line.list == "trims"]
    eaves = {line.size for line in lines if line.kind == "eave trim"}
    assert len(eaves) == 3
    assert sum("bent 108 deg" in size for size in eaves) == 1  # 90 and atan 4/12, 18.4
    assert sum("bent 99 deg" in size for size in eaves) == 2  # 90 and atan 2/12, 9.5
    (flat,) = (line for line in lines if ", flat, " in line.item)
    assert flat.kind == "corner trim"
    assert flat.area == pytest.approx(flat.length * 10.375 * 25.4, rel=0.01)
    assert all("girth" not in line.size for line in lines if line.kind in ("base trim", "ridge cap"))


def mirrors(listed: Schedule) -> dict[str, str]:
    found = ((item.mark, re.search(r"mirror of (\w+)", item.differs)) for item in listed.items)
    return {mark: other[1] for mark, other in found if other}


def test_a_mirror_is_one_of_the_other() -> None:
    """The workshop is even about its ridge: what its left has, its right has the other way round. One of each
    of the marks, seen in a mirror that stands in the middle, fills the place of one of the other."""
    told, pieces = mirrors(sample_schedule()), sample_model().pieces
    assert len(told) >= 20
    even = {mark: other for mark, other in told.items() if mark.startswith(("TC", "TE", "TR", "RK"))}
    assert len(even) == 16
    for mark, other in even.items():
        assert even[other] == mark
        one = manifold(next(piece for piece in pieces if piece.mark == mark))
        image = one.mirror((1.0, 0.0, 0.0)).translate((WIDTH, 0.0, 0.0))
        others = (manifold(piece) for piece in pieces if piece.mark == other)
        assert max((image ^ body).volume() for body in others) > 0.99 * one.volume(), (mark, other)


def test_holes_that_stand_elsewhere_are_told_by_where() -> None:
    """Plates of 10 in, 3 in past a column of 4 to both sides, holes in the middle of that: 1-1/2 in from each
    end. Those that go 6 in past one side have theirs 1-1/2 and 4-1/2 in from that end. So rows 4-1/2 and
    8-1/2 from there have no fellow, 1-1/2 and 5-1/2 from the other end."""
    plates = {item.mark: item for item in sample_schedule().items if item.role == "base plate"}
    assert plates["BP1"].differs == ""
    assert plates["BP2"].differs.startswith('unlike BP1 1-1/2" to 5-1/2" from an end')


def test_every_way_a_list_is_written_says_it() -> None:
    listed = sample_schedule()
    (twin,) = (item for item in listed.items if item.mark == "RK2")
    assert twin.differs == "mirror of RK1"
    assert {row["mark"]: row["differs"] for row in rows_of(csv_text(listed))}["RK2"] == twin.differs
    assert f'"differs": "{twin.differs}"' in json_text(listed)
    for width in (80, 250):
        assert twin.differs in table(listed, width)


@pytest.mark.parametrize("width", [80, 120, 250])
def test_what_finds_no_room_on_a_line_stands_below_it(width: int) -> None:
    """No cell of the lists after the sheets is left out, however narrow the table."""
    listed = sample_schedule()
    names = ["members", "trims", "closures", "openings"]
    text = table(listed, width, names)
    assert max(map(len, text.splitlines())) <= width
    joined = re.sub(r"\s+", " ", text)
    for item in (one for name in names for one in listed.listed(name)):
        of = cells(item, listed.units)
        for column in COLUMNS:
            assert of[column] in joined, (item.mark, column)


@pytest.mark.parametrize("name", ["workshop", "barn"])
def test_what_differs_hangs_on_no_order_of_the_ways_that_a_piece_lies(name: str) -> None:
    """A body read back from STEP may lie in another of its ways first."""
    found = [group for group in groups(starter_model(name)) if isinstance(group.measured, MeasuredMember)]
    told = 0
    for one, other in pairwise(found):
        first, second = one.measured, other.measured
        if one.members[0].piece.role == other.members[0].piece.role:
            turned = (replace(piece, ways=piece.ways[::-1]) for piece in (first, second))
            assert unlike(first, second) == unlike(*turned)
            told += unlike(first, second) is not None
    assert told > 5
