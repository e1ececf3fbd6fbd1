"""Answers that are kept for whoever asks the same again, the least lately asked given up first."""

from __future__ import annotations

from collections.abc import Hashable
from typing import Generic, TypeVar

import numpy as np

from ..measure.faces import Vectors

TURN, SHIFT = 12, 9
"""Decimals of a turn and of a shift (mm) that are kept: below is only how they were worked out."""

Answer = TypeVar("Answer")


def rounded(values: Vectors, decimals: int) -> Vectors:
    """An array by whose bytes equal ones are known again; 0.0 for -0.0."""
    kept: Vectors = np.round(values, decimals) + 0.0
    return kept


def vectors(known: bytes) -> Vectors:
    """The array (n, 3) of some bytes: what is worked out from it follows from what is known alone."""
    return np.frombuffer(known).reshape(-1, 3)


class Known(Generic[Answer]):
    """Answers by key, for questions that are asked many at once; for single ones there is `lru_cache`."""

    def __init__(self, most: int) -> None:
        self.most = most
        self._answers: dict[Hashable, Answer] = {}

    def get(self, asked: Hashable) -> Answer | None:
        """What was answered, None if nothing was or it was given up."""
        answer = self._answers.pop(asked, None)
        if answer is not None:
            self._answers[asked] = answer
        return answer

    def put(self, asked: Hashable, answer: Answer) -> None:
        """Keeps an answer."""
        self._answers[asked] = answer
        if len(self._answers) > self.most:
            del self._answers[next(iter(self._answers))]
