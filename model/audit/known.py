"""Answers that are kept for whoever asks the same again, the least lately asked given up first."""

from __future__ import annotations

from collections.abc import Hashable
from typing import Generic, TypeVar

import numpy as np

from ..measure.faces import Vectors

TURN, SHIFT = 12, 9
"""Decimals of a turn and of a shift (mm) that are kept: below is only how they were worked out."""

Answer = TypeVar("Answer")


def key(values: Vectors, decimals: int) -> bytes:
    """An array by which equal ones are known again; 0.0 for -0.0."""
    return (np.round(values, decimals) + 0.0).tobytes()


def vectors(known: bytes) -> Vectors:
    """The array (n, 3) that a key was made of, rounded: what follows from it follows from the key alone."""
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
