"""Closures as they are bought: in strips of one cover, along every line that has them."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from math import ceil

import numpy as np

from ...measure.faces import Vectors
from ...measure.standing import standing_box
from ...pieces import Model
from ...roles import list_of

APART = 60.0
"""mm; closures of a face whose heights differ by less are in one line. Ours."""
SHORT = 1.0
"""mm by which a line may pass whole strips without another one."""
BROKEN = 500.0
"""mm from one closure to the next where a line is broken, as by a door: more than ribs stand apart. Ours."""


@dataclass(frozen=True, slots=True)
class StripLine:
    """One unbroken line of closures. role: inside or outside. length: from its first to its last, mm."""

    role: str
    face: str
    length: float

    def strips(self, cover: float) -> int:
        """How many strips of a cover it takes."""
        return max(1, ceil((self.length - SHORT) / cover))


def strip_lines(model: Model) -> Iterator[StripLine]:
    """The unbroken lines of closures of a model, by role and face, from below."""
    found: dict[tuple[str, str], list[Vectors]] = defaultdict(list)
    for piece in model.pieces:
        if list_of(piece.role) == "closures":
            found[piece.role, piece.label("face")].append(standing_box(piece))
    for (role, face), boxes in found.items():
        for line in _lines(boxes):
            yield from (StripLine(role, face, length) for length in _stretches(np.array(line)))


def _stretches(boxes: Vectors) -> Iterator[float]:
    """How long each unbroken part of a line is. boxes: (n, 2, 3)."""
    along = int(np.argmax((boxes[:, 1].max(axis=0) - boxes[:, 0].min(axis=0))[:2]))
    spans = boxes[np.argsort(boxes[:, 0, along])][:, :, along]
    breaks = np.flatnonzero(spans[1:, 0] - np.maximum.accumulate(spans[:, 1])[:-1] > BROKEN) + 1
    yield from (float(part[:, 1].max() - part[0, 0]) for part in np.split(spans, breaks))


def _lines(boxes: Iterable[Vectors]) -> Iterator[list[Vectors]]:
    """Boxes by their heights."""
    ordered = sorted(boxes, key=lambda box: float(box[0, 2]))
    line: list[Vectors] = []
    for box in ordered:
        if line and box[0, 2] - line[-1][0, 2] > APART:
            yield line
            line = []
        line.append(box)
    if line:
        yield line
