"""Where each sheet goes, against running distances by hand, off the model and off its STEP file."""

from __future__ import annotations

from pathlib import Path

import pytest
from ribwright.exchange.step import read_step, write_step
from ribwright.intake import parse
from ribwright.measure.placing import FacePlan
from ribwright.order.buying.order_list import order
from ribwright.order.lists.schedule import schedule
from ribwright.order.written.order_csv import placing_csv
from ribwright.order.written.place_cells import placing_text
from ribwright.raising import raise_building
from support.csv_rows import job_of, rows_of
from support.sample_building import sample_model, sample_schedule
from support.starter_buildings import starter_model

INCH = 25.4


@pytest.fixture(scope="module")
def plans() -> dict[str, FacePlan]:
    return {plan.face: plan for plan in sample_schedule().plans}


def inches(plan: FacePlan, name: str) -> list[float]:
    return [round(getattr(one, name) / INCH, 2) for one in plan.sheets]


@pytest.mark.parametrize(
    ("face", "start"),
    [("right", "right"), ("left slope", "left"), ("right slope", "right")],
)
def test_a_run_from_a_corner(plans: dict[str, FacePlan], face: str, start: str) -> None:
    """40 ft: lap ribs at 1, 37, 73 ..., leading edges at 38, 74 ... and the last on the corner, at 480. Each
    laps over the one before, so that none is lifted."""
    plan = plans[face]
    assert (plan.start, plan.said) == (start, f"from the {start} steel corner")
    assert inches(plan, "rib") == [1.0 + 36 * k for k in range(14)]
    assert inches(plan, "edge") == [38.0 + 36 * k for k in range(13)] + [480.0]
    assert {one.overlap for one in plan.sheets} == {start}
    assert not any(one.lift for one in plan.sheets)
    assert [one.number for one in plan.sheets] == list(range(1, 15))


def test_a_run_from_the_centre(plans: dict[str, FacePlan]) -> None:
    """30 ft, left half first, no post: the first under-lap edge 1 in past the centre line, and the lap rib of
    the other half's first on it. Left: ribs 36, 72 ... 180, edges an inch past; each slipped under
    the one before. Right: ribs 0, 36 ... 144, edges 37 ... 181."""
    plan = plans["back"]
    assert plan.said == "from the centre line, left half first"
    assert inches(plan, "rib") == [36.0 * k for k in (1, 2, 3, 4, 5)] + [36.0 * k for k in (0, 1, 2, 3, 4)]
    assert inches(plan, "edge") == [36.0 * k + 1 for k in (1, 2, 3, 4, 5)] * 2
    assert [one.lift for one in plan.sheets] == [False, True, True, True, True] + [False] * 5
    assert {one.overlap for one in plan.sheets} == {"left"}


def test_headers_and_sills_stand_under_their_column(plans: dict[str, FacePlan]) -> None:
    """Two windows in the left wall, 5 ft wide, each in the column of one whole sheet; sill and head stand in
    columns 2 and 9. The overhead door takes columns 1 to 3 of the front."""
    parts = [(one.number, one.part) for one in plans["left"].sheets if one.part]
    assert parts == [(2, "sill"), (2, "header"), (9, "sill"), (9, "header")]
    assert [(one.number, one.part) for one in plans["front"].sheets if one.part] == [
        (1, "header"), (2, "header"), (3, "header"),
    ]  # fmt: skip


def test_every_sheet_is_placed_once(plans: dict[str, FacePlan]) -> None:
    marks = sorted(one.mark for plan in plans.values() for one in plan.sheets)
    assert marks == sorted(piece.mark for piece in sample_model().pieces if piece.role.endswith("sheet"))


@pytest.mark.parametrize("like", ["garage", "machine-shed"])
def test_the_same_off_step(like: str, tmp_path: Path) -> None:
    model = starter_model(like)
    write_step(model, tmp_path / "model.step")
    one, other = schedule(model), schedule(read_step(tmp_path / "model.step"))
    assert placing_csv(one) == placing_csv(other)
    for plan in one.plans:
        edges = [round(sheet.edge, 3) for sheet in plan.sheets]
        if plan.start != "centre":
            assert edges == sorted(edges)
    assert placing_text(one) == placing_text(other)


def test_written_as_people_read_it() -> None:
    rows = rows_of(placing_csv(sample_schedule()))
    right = [row for row in rows if row["face"] == "right"]
    assert (right[1]["overlap rib at"], right[1]["leading edge at"], right[1]["up"]) == (
        "3' 1\"",
        "6' 2\"",
        "turned",
    )
    assert {row["lift"] for row in rows} == {"", "overlap leg of the one before"}
    assert job_of(placing_csv(sample_schedule()), "face")[0] == "workshop"
    text = placing_text(sample_schedule())
    assert "back: from the centre line, left half first" in text


def test_gutters_and_downspouts_stand_under_their_wall(tmp_path: Path) -> None:
    """60 ft: a downspout a foot from both ends of each eave, an outlet for each; off STEP the same."""
    text = 'width = "20 ft"\nlength = "60 ft"\neave_height = "10 ft"\npitch = "3/12"\n'
    text += '[trim]\ngutters = "low eaves"\n'
    model = raise_building(parse(text, "x")).model
    listed = schedule(model)
    found = {plan.face: plan.drains for plan in listed.plans}
    assert {face for face, drains in found.items() if drains} == {"left", "right"}
    for face in ("left", "right"):
        spouts = [one for one in found[face] if one.role == "downspout"]
        assert [round(one.middle / INCH, 2) for one in spouts] == [12.0, 708.0]
    past = 0.75 + 3 * 0.0217  # the rib beside the corner, the corner trim, and a hair
    (gutter,) = [one for one in found["left"] if one.role == "gutter"]
    assert gutter.near / INCH == pytest.approx(-past, abs=0.05)
    assert gutter.far / INCH == pytest.approx(720 + past, abs=0.05)
    (outlets,) = [line for line in order(listed).lines if line.kind == "gutter outlet"]
    assert (outlets.count, outlets.size) == (4, '3" x 3"')
    write_step(model, tmp_path / "model.step")
    assert placing_csv(schedule(read_step(tmp_path / "model.step"))) == placing_csv(listed)
    rows = [row for row in rows_of(placing_csv(listed)) if "spout" in row["part"]]
    assert [(row["part"], row["middle at"]) for row in rows] == [
        ("downspout", "1'"),
        ("downspout", "59'"),
        ("downspout", "1'"),
        ("downspout", "59'"),
    ]
