"""Limits that mean what they say: a fault of one and a half times the limit is seen, one of half of it not.

And no sound building stands on the edge of one, in memory or out of a file.
"""

from __future__ import annotations

import math
import pkgutil
from collections.abc import Callable
from importlib import import_module
from pathlib import Path

import numpy as np
import pytest
from ribwright.audit import audit, bite, clash, labels, limits, overhang, sheet_laps, trim_laps
from ribwright.exchange.step import read_step, write_step
from ribwright.findings import Code
from ribwright.intake import starters
from ribwright.layout.screws.screw_kinds import NUMBER_12
from support.planted import THICKNESS, shed
from support.plants import Plant, again, move, narrowed, near, screw, shorter, thick
from support.starter_buildings import starter_model

FLANGE = 0.0217 * 25.4
"""mm; thickness of the trim flanges between framing and sheets (26 ga), and so the air under sheets."""

GIRT = near(1900, 1400, 1)
SLOPE = 3 / math.hypot(3, 12), 12 / math.hypot(3, 12)


def lower_foot(size: float) -> Plant:
    """One roof sheet down its slope of 3/12."""
    return move("left slope 3", (-size * SLOPE[1], 0.0, -size * SLOPE[0]))


SIZED: dict[str, tuple[Code, float, Callable[[float], Plant]]] = {
    "a sheet off its plane": (Code.OFF_PLANE, sheet_laps.LEVEL, lambda mm: move("left 3", (-mm, 0.0, 0.0))),
    "lap ribs apart": (Code.RIBS_APART, sheet_laps.RIBS, lambda mm: move("left 6", (0.0, mm, 0.0))),
    "air in a lap": (Code.LAP_OPEN, sheet_laps.NESTED, lambda mm: thick("left 8", mm)),
    "metal in metal at a lap": (Code.LAP_PRESSED, sheet_laps.NESTED, lambda mm: thick("left 8", -mm)),
    "a narrow lap": (Code.LAP_WIDTH, sheet_laps.EVEN, lambda mm: narrowed("left 6", mm)),
    "a crooked eave": (Code.EAVE_CROOKED, overhang.STRAIGHT, lower_foot),
    "a foot too high": (Code.FEET_UNEVEN, overhang.STRAIGHT, lambda mm: move("left 3", (0.0, 0.0, mm))),
    "a short trim lap": (
        Code.TRIM_LAP_SHORT,
        trim_laps.TOLERANCE,
        lambda mm: move("left eave trim 1", (0.0, mm, 0.0)),
    ),
    "a washer off the sheet": (
        Code.WASHER_OFF,
        bite.SEATED,
        lambda mm: screw("left 6", GIRT, (-mm, 0.0, 0.0)),
    ),
    "air between sheet and girt": (
        Code.SCREW_GAP,
        bite.AIR + FLANGE,
        lambda mm: move("left girt 2", (mm - FLANGE, 0.0, 0.0)),
    ),
    "a body in another": (Code.CLASH, clash.DEPTH, lambda mm: move("frame 2 left column", (-mm, 0.0, 0.0))),
    "a gauge that is another": (Code.GAUGE, labels.THICK, lambda mm: thick("left 6", mm)),
}
"""What is planted: its code, its limit (mm), and the plant of a size."""

LEAST: dict[str, tuple[Code, float, Callable[[float], Plant]]] = {
    "screws side by side": (
        Code.SCREWS_NEAR,
        bite.APART * NUMBER_12,
        lambda mm: again("left 6", GIRT, (0.0, 0.0, mm)),
    ),
    "a short bite": (
        Code.BITE_SHORT,
        bite.LEAST_BITE,
        lambda mm: shorter("left 6 screws", mm + FLANGE + THICKNESS),
    ),
}
"""The same for what there must be at least so much of."""


def codes(plant: Plant, code: Code) -> set[Code]:
    """The codes of that kind that a plant adds."""
    known = set(audit(shed(), (code.check,)).findings)
    return {f.code for f in audit(plant(shed()), (code.check,)).findings if f not in known} & {code}


@pytest.mark.parametrize("case", SIZED)
def test_half_as_much_again_is_seen_and_half_is_not(case: str) -> None:
    code, limit, plant = SIZED[case]
    assert codes(plant(1.5 * limit), code) == {code}
    assert codes(plant(0.5 * limit), code) == set()


@pytest.mark.parametrize("case", LEAST)
def test_two_thirds_are_seen_and_half_as_much_again_is_not(case: str) -> None:
    code, limit, plant = LEAST[case]
    assert codes(plant(limit / 1.5), code) == {code}
    assert codes(plant(1.5 * limit), code) == set()


@pytest.mark.parametrize("name", starters())
def test_a_starter_keeps_away_from_every_limit(
    name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """0.01 mm, so that the last digits of a file decide nothing."""
    seen: list[tuple[float, float]] = []

    def over(value: float, limit: float) -> bool:
        seen.append((value, limit))
        return limits.over(value, limit)

    def under(value: float, limit: float) -> bool:
        seen.append((value, limit))
        return limits.under(value, limit)

    for found in pkgutil.iter_modules(import_module("ribwright.audit").__path__):
        module = import_module(f"ribwright.audit.{found.name}")
        for function in (over, under):
            if hasattr(module, function.__name__) and module is not limits:
                monkeypatch.setattr(module, function.__name__, function)
    model = starter_model(name)
    write_step(model, tmp_path / "model.step")
    for one in (model, read_step(tmp_path / "model.step")):
        seen.clear()
        assert [finding for finding in audit(one).findings if finding.fault] == []
        assert len(seen) > 3000
        margins = np.array([abs(value - limit) for value, limit in seen if np.isfinite(value)])
        assert margins.min() > 0.01, sorted(seen, key=lambda pair: abs(pair[0] - pair[1]))[:3]
