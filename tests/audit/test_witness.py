"""What the audit may go by, and what it must not: names, marks and the spelling of roles change nothing."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest
from ribwright.audit import CHECKS, audit
from ribwright.findings import Check, Code, Finding
from ribwright.intake import starters
from ribwright.pieces import Model
from ribwright.roles import LISTS, roles_of
from support.planted import shed
from support.plants import drop, end_moved, move, near, screw
from support.second_witness import faults
from support.starter_buildings import starter_raised

BLIND: tuple[Check, ...] = ("clash", "cover", "laps", "bite")


def faulty() -> Model:
    """A shed with a handful of faults, so that there is something to find."""
    model = shed()
    for plant in (
        drop("back 3"),
        move("frame 2 left column", (-3.0, 0.0, 0.0)),
        end_moved("front", 1),
        drop("left slope inside closure 9"),
        screw("left 6", near(1900, 1400, 1), (0.0, 0.0, 100.0)),
    ):
        model = plant(model)
    return model


def renamed(model: Model) -> Model:
    """Every piece under another role of its list, another name and mark, and on another face."""
    turned = {}
    for name in LISTS:
        roles = roles_of(name)
        turned.update(dict(zip(roles, (*roles[1:], roles[0]), strict=True)))
    pieces = [
        replace(
            piece,
            name=f"{number * 7919 % 10007} {number}",
            role=turned[piece.role],
            mark="X",
            group=("all",),
            labels=tuple((key, "front" if key == "face" else text) for key, text in piece.labels),
        )
        for number, piece in enumerate(model.pieces)
    ]
    return replace(model, pieces=tuple(pieces))


def seen(finding: Finding) -> tuple[object, ...]:
    return (finding.code, finding.at, finding.measured, finding.limit)


def test_names_marks_groups_and_roles_change_no_finding() -> None:
    model = faulty()
    plain, other = audit(model, BLIND).findings, audit(renamed(model), BLIND).findings
    assert Counter(map(seen, plain)) == Counter(map(seen, other))
    assert {finding.code for finding in plain} >= {
        Code.CLASH,
        Code.UNCOVERED,
        Code.LAP_WITHOUT_RIB,
        Code.RIB_OPEN,
        Code.SCREW_MISSES,
    }


def test_every_check_says_how_much_it_looked_at() -> None:
    measured = audit(shed()).measured
    assert [check for check in CHECKS if any(figure.check == check for figure in measured)] == list(CHECKS)
    assert all(figure.count > 0 for figure in measured)


def test_laps_and_overhang_are_measured_as_they_were_asked() -> None:
    """Legs of 1 in past both lap ribs make a lap of 2 in; the overhang is 2 in unless said; nested sheets
    touch."""
    figures = {(figure.what, figure.where): figure for figure in audit(shed(), ("laps", "overhang")).measured}
    for face in ("left", "right", "back", "front", "left slope", "right slope"):
        lap, air = figures["side laps", face], figures["air in side laps", face]
        assert (lap.count, lap.least, lap.greatest) == (7, pytest.approx(50.8), pytest.approx(50.8))
        assert air.greatest == pytest.approx(0.0, abs=1e-3)
    for face in ("left slope", "right slope"):
        out = figures["overhang", face]
        assert out.least == out.greatest == pytest.approx(50.8, abs=1e-3)


@pytest.mark.parametrize("name", starters())
def test_a_starter_is_sound_and_a_second_witness_agrees(name: str) -> None:
    raised = starter_raised(name)
    assert [finding for finding in raised.findings if finding.fault] == []
    assert audit(raised.model, thorough=True).findings == ()
    assert faults(raised.model) == []
