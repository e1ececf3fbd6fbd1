"""The order of raising: every piece once, the trade's order, dimensions by hand, the same from STEP."""

from __future__ import annotations

import csv
import io
import json
from collections import Counter
from dataclasses import replace
from pathlib import Path

import pytest
from ribwright.cli.main import run
from ribwright.exchange.step import read_step, write_step
from ribwright.intake import starters
from ribwright.measure.bends import measure_bends
from ribwright.measure.standing import standing_box
from ribwright.pieces import Piece
from ribwright.roles import Role, list_of
from ribwright.steps import steps
from ribwright.steps.step_json import steps_json
from ribwright.steps.step_text import steps_csv, steps_table
from support.sample_building import sample_model
from support.starter_buildings import starter_model
from support.told_steps import named

INCH = 25.4


@pytest.mark.parametrize("name", starters())
def test_every_piece_stands_in_exactly_one_step_and_step_files_give_the_same(
    name: str, tmp_path: Path
) -> None:
    raised = starter_model(name)
    found = steps(raised)
    names = [piece.name for step in found for piece in step.pieces]
    assert Counter(names) == Counter(piece.name for piece in raised.pieces)
    write_step(raised, tmp_path / "model.step")
    again = read_step(tmp_path / "model.step")
    assert steps_json(again, steps(again), "mm") == steps_json(raised, found, "mm")
    assert not any(step.name == "not told what it is" for step in found)


@pytest.mark.parametrize("name", starters())
def test_nothing_stands_before_what_carries_or_covers_it(name: str) -> None:
    """The trade's order, by role: a number for the step of each piece."""
    found = steps(starter_model(name))
    at = [(number, piece) for number, step in enumerate(found) for piece in step.pieces]
    when = {role: [number for number, piece in at if piece.role == role] for role in Role}

    def before(first: Role, then: Role) -> bool:
        return not when[first] or not when[then] or max(when[first]) < min(when[then])

    assert before(Role.SLAB, Role.COLUMN)
    assert before(Role.COLUMN, Role.HEADER) and before(Role.GIRT, Role.HEADER)
    for trim in (Role.BASE_TRIM, Role.J_TRIM, Role.JAMB_ANGLE, Role.HEAD_ANGLE, Role.DRIP):
        assert before(trim, Role.WALL_SHEET)
    order = (Role.PURLIN, Role.WALL_SHEET, Role.CORNER_TRIM, Role.EAVE_TRIM, Role.ROOF_SHEET, Role.RAKE_TRIM)
    for first, then in zip(order, (*order[1:], Role.RIDGE_CAP), strict=True):
        if first is Role.ROOF_SHEET and when[Role.BREAK_TRIM]:
            continue  # the lower slope's rake trims lie under the trim that the upper one's sheets lie over
        assert before(first, then)
    assert before(Role.RAKE_TRIM, Role.LEAF) and before(Role.RIDGE_CAP, Role.LEAF)
    assert before(Role.SASH, Role.WALL_SHEET)


TRIMS = {
    "inside corner trim": "inside corner trim",
    "corner trim": "corner trim",
    "in-line trim": "corner trim",
    "rake trim": "rake trim",
    "eave trim": "eave trim",
    "ridge cap": "ridge cap",
    "pitch break trim": "pitch break trim",
    "cap trim": "cap trim",
    "drip": "drip",
    "headwall flashing": "outside closure",
    "head": "head angle",
    "jamb": "jamb angle",
}
"""What the layout calls a row of trim screws after, and the trim it holds; a flashing's are driven when its
closures lie under it."""


@pytest.mark.parametrize("name", starters())
def test_screws_stand_with_what_they_hold(name: str) -> None:
    """Told by where they are; held against what the layout named each row after."""
    for step in steps(starter_model(name)):
        names, roles = {piece.name for piece in step.pieces}, {piece.role for piece in step.pieces}
        for screw in (piece for piece in step.pieces if list_of(piece.role) == "screws"):
            stem = screw.name.removesuffix(" screws")
            if screw.role == Role.SHEET_SCREW:
                assert stem in names
            else:
                assert next(role for word, role in TRIMS.items() if word in stem) in roles, (step.name, stem)


def test_the_flashing_at_a_headwall_goes_on_before_the_sheets_above_it() -> None:
    names = [step.name for step in steps(starter_model("lean-to"))]
    first = names.index("lower sheets of the left")
    assert names[first + 1 : first + 3] == [
        "headwall flashing at the left, its screws later",
        "upper sheets of the left",
    ]
    assert "eave struts, ledgers, purlins, girts" in names


def test_the_sample_goes_up_in_the_order_of_the_trade() -> None:
    assert [step.name for step in steps(sample_model())] == [
        "delivery",
        "slab",
        "frames 1 and 2",
        "frames 3 to 5",
        "eave struts, purlins, girts",
        "base rails, girts, rake angles",
        "plumb, square, tighten",
        "framing of openings",
        "base trim",
        "windows",
        "trim of openings",
        "sheets of the left",
        "sheets of the right",
        "sheets of the back",
        "sheets of the front",
        "corner trim",
        "closures at the heads, eave trim",
        "sheets of the left slope",
        "sheets of the right slope",
        "rake trim",
        "closures and ridge cap",
        "doors",
        "punch list",
    ]


def test_frames_are_tied_as_they_go() -> None:
    """Spliced purlins and struts stand behind the frame that they end on, before the next one."""
    pieces = named(steps(starter_model("long-store")), "frames 3 to 7").pieces
    assert sum(piece.role == Role.PURLIN for piece in pieces) == 18
    reached = 0.0
    for piece in pieces:
        _, far = standing_box(piece)[:, 1]
        if piece.role in (Role.PURLIN, Role.EAVE_STRUT):
            assert far < reached + 1.5 * 8 * INCH  # past the column's face
        elif piece.role == Role.COLUMN:
            reached = max(reached, float(far))
    backwards = [standing_box(piece)[1, 1] for piece in pieces if piece.role == Role.COLUMN]
    assert backwards == sorted(backwards)


def test_a_carport_has_no_walls_and_one_slope_no_ridge() -> None:
    names = {name: [step.name for step in steps(starter_model(name))] for name in ("carport", "single-slope")}
    assert not any(name in names["carport"] for name in ("base trim", "corner trim", "sheets of the left"))
    assert "eave trim" in names["carport"]
    assert [name for name in names["single-slope"] if "slope" in name] == ["sheets of the left slope"]
    assert not any("ridge" in name for name in names["single-slope"])


def test_ends_of_trims_are_folded_over_what_stands_by_then() -> None:
    """Each trim with tabs once, when it is up: a drip when the sheets of its wall are on, beside which it
    turns down; the feet of rakes over the roof's sheets; the ends of a ridge cap over the rakes."""
    found = steps(sample_model())
    folded = {step.name: {piece.role for piece in step.folded} for step in found if step.folded}
    assert folded == {
        "sheets of the left": {Role.DRIP},
        "sheets of the front": {Role.DRIP},
        "rake trim": {Role.RAKE_TRIM},
        "closures and ridge cap": {Role.RIDGE_CAP},
    }
    tabbed = [p.name for p in sample_model().pieces if list_of(p.role) == "trims" and _tabs(p)]
    assert Counter(piece.name for step in found for piece in step.folded) == Counter(tabbed)
    text = steps_table(found, "ft-in", [], 200)
    assert "fold   tabs at the ends, over, when all of this is on: ridge cap: 1 TP2, 1 TP3" in text
    told = [step.name for step in found if any("no rivet or screw" in one.text for one in step.cautions)]
    assert told == ["rake trim", "closures and ridge cap"]
    rows = csv.DictReader(io.StringIO(steps_csv(found, "ft-in", [])))
    assert sum(int(row["count"]) for row in rows if row["list"] == "fold") == len(tabbed)


def _tabs(piece: Piece) -> int:
    bends = measure_bends(piece.solid)
    return len(bends.folds) if bends else 0


def test_legs_to_be_lifted_are_those_of_the_placing_list() -> None:
    back = named(steps(sample_model()), "sheets of the back")
    (lift,) = [one.text for one in back.cautions if one.text.startswith("Lift")]
    assert lift.startswith("Lift the overlap leg of the sheet before to slip under it: sheets 2, 3, 4, 5.")
    assert not [
        one for one in named(steps(sample_model()), "sheets of the left").cautions if "Lift" in one.text
    ]


@pytest.mark.parametrize("name", starters())
def test_temporary_stability_comes_first_and_every_caution_has_a_source(name: str) -> None:
    found = steps(starter_model(name))
    first = named(found, "frames 1 and 2")
    braced = any(piece.role == Role.BRACE for piece in starter_model(name).pieces)
    assert first.cautions[0].text.startswith("The bracing drawn is" if braced else "No bracing is drawn")
    assert all(one.source for step in found for one in step.cautions)
    assert any(one.source.startswith("29 CFR 1926.501(b)(1)") for step in found for one in step.cautions)


def test_what_is_open_round_leaves_and_sashes_is_closed_with_them() -> None:
    said = [step.name for step in steps(sample_model()) if any("seal them" in c.text for c in step.cautions)]
    assert said == ["windows", "doors"]


def test_a_steep_roof_is_told_of_its_paragraph() -> None:
    said = {
        name: any("501(b)(11)" in one.source for step in steps(starter_model(name)) for one in step.cautions)
        for name in ("studio", "workshop")
    }
    assert said == {"studio": True, "workshop": False}


def test_a_file_without_words_still_has_every_body_in_one_step() -> None:
    whole = starter_model("run-in")
    bare = replace(whole, pieces=tuple(Piece("", "", (), p.solid, p.place, row=p.row) for p in whole.pieces))
    found = steps(bare)
    assert sum(len(step.pieces) for step in found) == len(bare.pieces)
    roofs = [step for step in found if any(piece.role == Role.SHEET for piece in step.pieces)]
    assert [sum(list_of(piece.role) == "sheets" for piece in step.pieces) for step in roofs] == [8, 4, 4, 8]


def test_table_csv_and_json_say_the_same(capsysbinary: pytest.CaptureFixture[bytes]) -> None:
    found = steps(sample_model())
    assert run(["steps", "--format", "json"]) == 0
    said = json.loads(capsysbinary.readouterr().out)
    assert said == json.loads(steps_json(sample_model(), found, "ft-in"))
    assert [one["name"] for one in said["steps"]] == [step.name for step in found]
    rows = list(csv.DictReader(io.StringIO(steps_csv(found, "ft-in", ("job",)))))
    assert rows[0]["list"] == "job"
    for number, step in enumerate(said["steps"], 1):
        own = [row for row in rows if row["number"] == str(number)]
        marks = {row["mark"]: int(row["count"]) for row in own if row["list"] in ("put up", "screws")}
        assert marks == {one["mark"]: one["count"] for one in (*step["marks"], *step["screws"])}
        checks = [(row["what"], row["where"], row["size"]) for row in own if row["list"] == "check"]
        assert checks == [(one["what"], one["at"], one["shown"]) for one in step["dimensions"]]
    table = steps_table(found, "ft-in", (), 200)
    first = next(one for step in said["steps"] for one in step["screws"] if one["mark"] == "SS1")
    assert f"   screws {first['count']} SS1 sheet screw, hex head with washer, " in table
    assert max(map(len, steps_table(found, "ft-in", ("job",), 80).splitlines())) <= 80
