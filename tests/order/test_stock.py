"""The stock plan against published optima of the cutting-stock problem."""

from __future__ import annotations

from itertools import pairwise, product

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from ribwright.order.buying.packing import Undecided, packed
from ribwright.order.buying.stock import SAME, stock_plan
from scipy.optimize import Bounds, LinearConstraint, milp

# The worked example of the encyclopaedia article "Cutting stock problem": 73 rolls, first-fit
# decreasing needs 82.
PAPER = {
    1380: 22, 1520: 25, 1560: 12, 1710: 14, 1820: 18, 1880: 18, 1930: 20,
    2000: 10, 2050: 12, 2100: 14, 2140: 16, 2150: 18, 2200: 20,
}  # fmt: skip
# The GAMS model library's `cutstock`: 453 rolls, first-fit decreasing 485.
GAMS = {45: 97, 36: 610, 31: 395, 14: 211}


def pieces(demand: dict[int, int]) -> list[tuple[str, float]]:
    return [(f"{length}", float(length)) for length, count in demand.items() for _ in range(count)]


@pytest.mark.parametrize(
    ("stock", "demand", "best"),
    [(5600, PAPER, 73), (100, GAMS, 453), (10, {6: 1, 5: 1, 3: 1, 2: 3}, 2)],
    ids=["encyclopaedia", "cutstock", "made for this check"],
)
def test_known_optima_are_reached_and_proven(stock: float, demand: dict[int, int], best: int) -> None:
    plan = stock_plan(pieces(demand), stock)
    assert len(plan.sticks) == best
    assert plan.proven
    cut = sorted(cut for stick in plan.sticks for cut in stick.cuts)
    assert cut == sorted(pieces(demand))


def test_kerf_is_paid_between_pieces_only() -> None:
    """Four pieces of 25 fill a stick of 100 without kerf; with any kerf only three fit."""
    four = [("a", 25.0)] * 4
    assert len(stock_plan(four, 100.0).sticks) == 1
    assert len(stock_plan(four, 100.0, kerf=1.0).sticks) == 2
    # Three kerfs between four pieces: 4 * 24.25 + 3 = 100 exactly.
    assert len(stock_plan([("a", 24.25)] * 4, 100.0, kerf=1.0).sticks) == 1


def test_a_known_optimum_with_kerf() -> None:
    """Kerf k is the same as every piece and the stick being k longer: 73 again with 20 off everything."""
    shorter = {length - 20: count for length, count in PAPER.items()}
    plan = stock_plan(pieces(shorter), 5600 - 20, kerf=20)
    assert len(plan.sticks) == 73
    assert plan.proven


def test_a_piece_longer_than_a_stick_is_refused() -> None:
    with pytest.raises(ValueError, match="cannot be cut"):
        stock_plan([("a", 101.0)], 100.0)


@settings(max_examples=40, deadline=None)
@given(
    st.lists(st.integers(1, 100), min_size=1, max_size=25),
    st.integers(0, 3),
)
def test_every_plan_is_sound(lengths: list[int], kerf: int) -> None:
    """Every piece is cut once, no stick holds more than it can, and none could be saved below the bound."""
    wanted = [(f"p{number}", float(length)) for number, length in enumerate(lengths)]
    plan = stock_plan(wanted, 100.0, kerf)
    assert sorted(cut for stick in plan.sticks for cut in stick.cuts) == sorted(wanted)
    for stick in plan.sticks:
        used = sum(length for _, length in stick.cuts) + kerf * (len(stick.cuts) - 1)
        assert used <= 100 + SAME
        assert stick.left == pytest.approx(max(0.0, 100 - used - kerf))
    assert plan.bound <= len(plan.sticks) <= plan.bound + 1
    for one, other in pairwise(plan.sticks):
        assert one.stock == other.stock == 100


@settings(max_examples=60, deadline=None)
@given(st.dictionaries(st.integers(20, 100), st.integers(1, 4), min_size=1, max_size=4))
def test_a_search_needs_as_few_sticks_as_the_integer_program_over_all_patterns(
    demand: dict[int, int],
) -> None:
    lengths = sorted(demand, reverse=True)
    wanted = tuple(demand[length] for length in lengths)
    ways = product(*(range(count + 1) for count in wanted))
    patterns = [way for way in ways if sum(n * length for n, length in zip(way, lengths, strict=True)) <= 100]
    least = milp(
        np.ones(len(patterns)),
        constraints=LinearConstraint(np.array(patterns).T, wanted, np.inf),
        integrality=np.ones(len(patterns)),
        bounds=Bounds(0, np.inf),
    )
    fewest = round(least.fun)
    assert packed(lengths, wanted, 100.0, fewest - 1) is None
    found = packed(lengths, wanted, 100.0, fewest)
    assert found is not None and len(found) <= fewest
    assert set(found) <= set(patterns)
    assert tuple(np.sum(found, axis=0).tolist()) == wanted


def test_a_large_demand_is_not_searched() -> None:
    with pytest.raises(Undecided):
        packed([40.0], (1000,), 100.0, 500)


def test_the_solver_prints_nothing_into_our_lists(capfd: pytest.CaptureFixture[str]) -> None:
    """Of this demand the solver of scipy 1.17 writes a line of its own to standard output."""
    demand = {26: 6, 17: 9, 46: 5, 47: 9, 18: 4, 35: 9, 49: 9, 43: 9}
    assert stock_plan(pieces(demand), 100.0).proven
    assert capfd.readouterr().out == ""
