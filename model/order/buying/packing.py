"""Whether pieces fit on so many sticks, by search: small demands are settled here at once."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

TINY = 1e-6

Pattern = tuple[int, ...]

MOST = 2000
"""Sticks tried before the search gives up: a few hundredths of a second."""
LARGE = 100
"""Sticks; more are not searched at all."""


class Undecided(Exception):
    """The search was given up."""


def packed(weights: Sequence[float], demand: Pattern, room: float, sticks: int) -> list[Pattern] | None:
    """Patterns, a stick each, that hold a demand on so many sticks; None where there are none.

    weights: longest first. Bin completion: each stick holds the longest piece that remains, and whatever
    remains and still fits is on it; more waste than the sticks can spare ends a branch (Martello and Toth,
    Knapsack Problems, 1990). Raises Undecided after MOST sticks.
    """
    if sticks > LARGE:
        raise Undecided
    spare = sticks * room - sum(w * d for w, d in zip(weights, demand, strict=True))
    tried = 0
    hopeless: set[Pattern] = set()

    def rest(wanted: Pattern, spare: float) -> list[Pattern] | None:
        nonlocal tried
        if not any(wanted):
            return []
        if wanted in hopeless:
            return None
        for pattern, left in _filled(weights, wanted, room):
            if left > spare + TINY:
                continue
            tried += 1
            if tried > MOST:
                raise Undecided
            others = rest(tuple(w - p for w, p in zip(wanted, pattern, strict=True)), spare - left)
            if others is not None:
                return [pattern, *others]
        hopeless.add(wanted)
        return None

    return rest(demand, spare)


def _filled(weights: Sequence[float], wanted: Pattern, room: float) -> Iterator[tuple[Pattern, float]]:
    """Every way to fill a stick from what is wanted so that nothing more of it fits, the longest piece on
    it; what is left of the stick beside."""
    longest = next(kind for kind, count in enumerate(wanted) if count)

    def fill(kind: int, left: float, pattern: Pattern) -> Iterator[tuple[Pattern, float]]:
        if kind == len(weights):
            if not any(
                w > p and weight <= left + TINY for weight, w, p in zip(weights, wanted, pattern, strict=True)
            ):
                yield pattern, left
            return
        most = min(wanted[kind], int((left + TINY) // weights[kind]))
        for count in range(most, -1 if kind != longest else 0, -1):
            yield from fill(kind + 1, left - count * weights[kind], (*pattern, count))

    yield from fill(0, room, ())
