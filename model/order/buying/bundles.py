"""Sheets in bundles, as they come off a truck."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from ...units import POUND
from .line import Line
from .sheet_lines import SHORTER

HEAVIEST = 2000 * POUND
"""kg of one bundle: common practice, no source."""


@dataclass(frozen=True, slots=True)
class Bundle:
    """One bundle, the longest sheets at its bottom. sheets: (size, count), from the bottom. weight: kg."""

    what: str
    sheets: tuple[tuple[str, int], ...]
    weight: float


def bundles(lines: Sequence[Line], heaviest: float = HEAVIEST) -> Iterator[Bundle]:
    """The sheets of an order, kind by kind, longest first, no bundle heavier than it may be."""
    sheets = [line for line in lines if line.list == "sheets"]
    for what in dict.fromkeys(_what(line) for line in sheets):
        inside: dict[str, int] = {}
        weight = 0.0
        ordered = sorted((line for line in sheets if _what(line) == what), key=_longest_first)
        for line in ordered:
            one, size = line.weight / line.count, line.size.removesuffix(SHORTER)
            for _ in range(round(line.count)):
                if inside and weight + one > heaviest:
                    yield Bundle(what, tuple(inside.items()), weight)
                    inside, weight = {}, 0.0
                inside[size] = inside.get(size, 0) + 1
                weight += one
        yield Bundle(what, tuple(inside.items()), weight)


def _what(line: Line) -> str:
    return ", ".join(filter(None, (line.names[0] if line.names else line.kind, line.colour)))


def _longest_first(line: Line) -> float:
    return -line.length / line.count
