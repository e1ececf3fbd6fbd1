"""The punch list: every step walked over once more when the building stands, and what is looked for."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from ..roles import LISTS, list_of
from .step import Step

LOOKED_FOR: dict[str, str] = {
    "sheets": "laps tight and on the right side, edges straight, cut edges and scratches painted",
    "members": "bolts all in and tight, plumb and level, nothing bent, anchors tight",
    "trims": "laps and ends closed, none only tacked, no sharp end",
    "closures": "none missing, no light under a rib",
    "screws": "rows straight, none missed, washers pressed and not crushed, none beside its steel",
    "openings": "opens, shuts, locks; runs dry",
    "insulation": "tabs closed, facing whole, tucked in at every end, none hanging",
    "slab": "clean, no cracks to report",
    "unknown": "as it belongs",
}
"""By the lists of `roles`. Common practice, no published source."""
LAST = (
    "Temporary guys and bracing are off only if the engineer's bracing is in and tight.",
    "Roof and gutters swept of chips; offcuts gone from the ground, they cut and they rust.",
    "Doors and windows run with the building closed; water run over every opening's head and the ridge.",
    "What was changed against these papers is written on them.",
)
"""Common practice, no published source."""


@dataclass(frozen=True, slots=True)
class Punch:
    """A line of the list. number: of the step; counts: how many pieces of each list of `roles`."""

    number: int
    step: str
    counts: dict[str, int]


def punch(steps: Sequence[Step]) -> Iterator[Punch]:
    """A line for every step that puts something up."""
    for number, step in enumerate(steps, 1):
        found: Counter[str] = Counter()
        for piece in step.pieces:
            found[list_of(piece.role) or "unknown"] += piece.count
        if found:
            yield Punch(number, step.name, {name: found[name] for name in LISTS if found[name]})
