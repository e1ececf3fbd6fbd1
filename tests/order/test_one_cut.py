"""Sheets that differ by less than a stated tolerance come as one, their solids too."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from ribwright.exchange.step import read_step, write_step
from ribwright.intake import parse, starter_text
from ribwright.measure.standing import standing_box
from ribwright.order.buying.order_list import order
from ribwright.order.lists.schedule import schedule
from ribwright.order.written.csv import csv_text
from ribwright.pieces import Model
from ribwright.raising import raise_building
from ribwright.roles import list_of
from ribwright.units import INCH
from support.judged import judged

pytestmark = pytest.mark.broad

SHED = (
    'width = "16 ft"\nlength = "14 ft"\neave_height = "8 ft"\npitch = "3/12"\n'
    '[roof]\nright_eave_height = "8 ft 1/8 in"\n[sheets]\nstep = "0 in"\ntolerance = "{}"\n'
)


def raised(text: str) -> Model:
    return raise_building(parse(text, "x")).model


def long_store(tolerance: str) -> str:
    text = starter_text("long-store", "long-store")
    return text.replace("[sheets]\n", f'[sheets]\ntolerance = "{tolerance}"\n', 1)


def boxes(model: Model) -> dict[str, np.ndarray]:
    return {p.name: standing_box(p) for p in model.pieces if list_of(p.role) == "sheets"}


def test_sheets_of_two_gables_a_sixteenth_apart_are_one_mark_and_none_comes_longer(tmp_path: Path) -> None:
    """One gable runs from its post, the other from its middle: at 1/12 their rakes stand 1/12 in apart."""
    plain, shared = raised(long_store("0 in")), raised(long_store("1/8 in"))
    before, after = schedule(plain), schedule(shared)
    assert (len(before.rows), len(after.rows)) == (25, 21)
    assert before.count == after.count
    both = [row for row in after.rows if set(row.faces) == {"front", "back"}]
    assert [row.count for row in both] == [2, 2, 2, 2]
    for row in both:
        alike = [one for one in before.rows if (one.head.kind, one.head.high) == ("rake", row.head.high)]
        lengths = [one.length for one in alike if abs(one.length - row.length) < INCH / 8 + 0.01]
        assert row.length == pytest.approx(min(lengths), abs=0.01)
    old, new = boxes(plain), boxes(shared)
    for name, box in old.items():
        shorter = box - new[name]
        assert shorter[0] == pytest.approx(0.0, abs=1e-3)  # feet and left edges where they were
        assert -1e-3 < shorter[1].min() <= shorter[1].max() < INCH / 8
    write_step(shared, tmp_path / "model.step")
    assert csv_text(schedule(read_step(tmp_path / "model.step"))) == csv_text(after)
    assert judged(parse(long_store("1/8 in"), "x")).faults == {}


def test_sheets_with_their_heads_down_share_with_those_that_stand_and_keep_their_feet() -> None:
    """Eaves 1/8 in apart: side walls and slopes come in one length each, the lower wall's and the shorter
    slope's, and the order has one line for both."""
    plain, shared = raised(SHED.format("0 in")), raised(SHED.format("1/4 in"))
    before, after = schedule(plain), schedule(shared)
    sides = [row for row in before.rows if set(row.faces) <= {"left", "right"}]
    assert [(row.count, row.turned) for row in sides] == [(4, 4), (1, 1), (4, 0), (1, 0)]
    common = [row for row in after.rows if set(row.faces) == {"left", "right"}]
    assert [(row.count, row.turned) for row in common] == [(8, 4), (2, 1)]
    assert {row.length for row in common} == {min(row.length for row in sides)}
    lines = [line for line in order(after).lines if set(common[0].mark.split()) & set(line.marks)]
    assert [line.count for line in lines] == [10.0]
    old, new = boxes(plain), boxes(shared)
    for name, box in old.items():
        assert new[name][0] == pytest.approx(box[0], abs=INCH / 4)
        assert new[name][0, 2] == pytest.approx(box[0, 2], abs=1e-3)
    assert judged(parse(SHED.format("1/4 in"), "x")).faults == {}


def test_what_differs_by_more_stays_apart() -> None:
    rows = [len(schedule(raised(SHED.format(asked))).rows) for asked in ("0 in", "1/16 in", "1/8 in")]
    assert rows[0] == rows[1] > rows[2]


@pytest.mark.parametrize(
    ("keys", "faces"),
    [
        # The last sheet of each side wall is ripped by 1/5 in: cut alike, all would lose that of their laps.
        ('width = "16 ft"\nlength = "219.8 in"\n[sheets]\n', {"left", "right"}),
        # Two courses up both slopes, of which one is longer: cut alike, the lap would be less than asked.
        (
            'width = "24 ft"\nlength = "14 ft"\n[roof]\nright_eave_height = "8 ft 1/8 in"\n'
            '[walls]\nfront = "open"\nback = "open"\nleft = "open"\nright = "open"\n'
            '[sheets]\nstep = "0 in"\nlongest = "8 ft"\n',
            {"left slope", "right slope"},
        ),
    ],
)
def test_what_laps_on_another_sheet_keeps_its_width_and_its_lap(keys: str, faces: set[str]) -> None:
    text = f'eave_height = "8 ft"\npitch = "3/12"\n{keys}'
    plain, shared = (raised(f'{text}tolerance = "{asked}"\n') for asked in ("0 in", "1/4 in"))
    old, new = boxes(plain), boxes(shared)
    names = [piece.name for piece in plain.pieces if piece.name in old and piece.label("face") in faces]
    assert names
    for name in names:
        assert new[name] == pytest.approx(old[name], abs=1e-3)
    assert judged(parse(f'{text}tolerance = "1/4 in"\n', "x")).faults == {}
