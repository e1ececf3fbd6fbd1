"""The stock plan: pieces cut from stock lengths with the fewest sticks, and the proof beside it.

The cutting-stock problem. First-fit decreasing gives a plan; where it needs no more sticks than the
total length does, it is proven best and nothing more is computed. Otherwise a short search settles a small
demand; for a large one Gilmore and Gomory's column generation (Operations Research 9, 1961) gives a bound,
and the integer program over its patterns a plan.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

import numpy as np
from numpy.typing import NDArray

from .packing import TINY, Pattern, Undecided, packed
from .unheard import unheard

SAME = 0.1
"""mm; lengths this close are cut to one measure, and a piece this much over a stick is a whole stick."""


@dataclass(frozen=True, slots=True)
class Stick:
    """One stock length and what is cut from it: (name, length) each, mm. left: what remains."""

    stock: float
    cuts: tuple[tuple[str, float], ...]
    left: float


@dataclass(frozen=True, slots=True)
class StockPlan:
    """sticks: in the order of cutting, longest pieces first. bound: no plan can need fewer sticks."""

    sticks: tuple[Stick, ...]
    bound: int

    @property
    def proven(self) -> bool:
        """Whether the plan is known to be the best."""
        return len(self.sticks) == self.bound


def stock_plan(pieces: Sequence[tuple[str, float]], stock: float, kerf: float = 0.0) -> StockPlan:
    """Cuts pieces (name, length) from sticks of one stock length, a saw's width lost between two pieces.

    Lengths in mm (any one unit will do). Raises ValueError for a piece longer than a stick.
    """
    if not pieces:
        return StockPlan((), 0)
    longest = max(length for _, length in pieces)
    if longest > stock + SAME:
        raise ValueError(f"a piece of {longest:g} cannot be cut from a stock length of {stock:g}")
    lengths, demand = _demand(pieces, stock)
    # A stick with one more kerf of room holds one kerf for every piece.
    room, weights = stock + kerf, lengths + kerf
    patterns = _first_fit(weights, demand, room)
    bound = _bound(weights, demand, room)
    if len(patterns) > bound:
        patterns, bound = _best(weights, demand, room, patterns, bound)
    return StockPlan(_sticks(patterns, lengths, pieces, stock, kerf), bound)


def _demand(
    pieces: Sequence[tuple[str, float]], stock: float
) -> tuple[NDArray[np.float64], NDArray[np.int64]]:
    """Different lengths, longest first, and how many of each."""
    counted = Counter(min(round(length / SAME) * SAME, stock) for _, length in pieces)
    lengths = sorted(counted, reverse=True)
    return np.array(lengths), np.array([counted[length] for length in lengths])


def _first_fit(weights: NDArray[np.float64], demand: NDArray[np.int64], room: float) -> list[Pattern]:
    """First-fit decreasing: each piece into the first stick that holds it."""
    bins: list[list[int]] = []
    left: list[float] = []
    for kind, (weight, count) in enumerate(zip(weights, demand, strict=True)):
        for _ in range(count):
            number = next((n for n, free in enumerate(left) if weight <= free + TINY), len(bins))
            if number == len(bins):
                bins.append([0] * len(weights))
                left.append(room)
            bins[number][kind] += 1
            left[number] -= weight
    return [tuple(one) for one in bins]


def _bound(weights: NDArray[np.float64], demand: NDArray[np.int64], room: float) -> int:
    """The total's bound, and the pieces of which no two share a stick."""
    return max(ceil(float(weights @ demand) / room - TINY), int(demand[weights > room / 2 + TINY].sum()))


def _best(
    weights: NDArray[np.float64], demand: NDArray[np.int64], room: float, plan: list[Pattern], bound: int
) -> tuple[list[Pattern], int]:
    """A plan of fewer sticks, if there is one, and how few any plan can need, both as well as can be told."""
    wanted = tuple(demand.tolist())
    try:
        while bound < len(plan):
            better = packed(weights.tolist(), wanted, room, bound)
            if better is not None:
                return better, bound
            bound += 1
        return plan, bound
    except Undecided:
        pass  # too many ways for a search
    with unheard():
        columns, relaxed = _generated(weights, demand, room, plan)
        bound = max(bound, ceil(relaxed - TINY))
        if bound == len(plan):
            return plan, bound
        better = _integer(columns, demand)
    return (better if better and len(better) < len(plan) else plan), bound


def _generated(
    weights: NDArray[np.float64], demand: NDArray[np.int64], room: float, start: list[Pattern]
) -> tuple[list[Pattern], float]:
    """Patterns by column generation, and the value of the linear relaxation over all patterns."""
    from scipy.optimize import LinearConstraint, linprog, milp  # costs 0.5 s: only where it is needed

    columns = list(dict.fromkeys(start))
    while True:
        matrix = np.array(columns, dtype=float).T
        solved = linprog(np.ones(len(columns)), A_ub=-matrix, b_ub=-demand.astype(float), method="highs")
        worth = -solved.ineqlin.marginals
        found = milp(
            -worth,
            constraints=LinearConstraint(weights[None, :], -np.inf, room + TINY),
            integrality=np.ones(len(weights)),
            bounds=(0, np.minimum(demand, room // weights)),
        )
        pattern = tuple(round(x) for x in found.x)
        if -found.fun <= 1 + 1e-9 or pattern in columns:
            return columns, float(solved.fun)
        columns.append(pattern)


def _integer(columns: list[Pattern], demand: NDArray[np.int64]) -> list[Pattern]:
    """The best whole-numbered mix of the patterns; more may be cut than is wanted."""
    from scipy.optimize import Bounds, LinearConstraint, milp

    matrix = np.array(columns, dtype=float).T
    solved = milp(
        np.ones(len(columns)),
        constraints=LinearConstraint(matrix, demand, np.inf),
        integrality=np.ones(len(columns)),
        bounds=Bounds(0, np.inf),
        options={"time_limit": 20.0},
    )
    if solved.x is None:
        return []
    return [column for column, times in zip(columns, solved.x, strict=True) for _ in range(round(times))]


def _sticks(
    patterns: list[Pattern],
    lengths: NDArray[np.float64],
    pieces: Sequence[tuple[str, float]],
    stock: float,
    kerf: float,
) -> tuple[Stick, ...]:
    """The patterns with the pieces' names on them; a pattern's surplus stays in its leftover."""
    waiting: dict[float, list[tuple[str, float]]] = {}
    for name, length in pieces:
        waiting.setdefault(min(round(length / SAME) * SAME, stock), []).append((name, length))
    sticks = []
    for pattern in patterns:
        cuts: list[tuple[str, float]] = []
        for length, times in zip(lengths, pattern, strict=True):
            queue = waiting[float(length)]
            cuts += queue[:times]
            del queue[:times]
        if cuts:
            used = sum(length for _, length in cuts) + kerf * (len(cuts) - 1)
            # The last cut is made only where something is left to cut off.
            left = stock - used - kerf
            sticks.append(Stick(stock, tuple(cuts), max(0.0, left)))
    return tuple(sticks)
