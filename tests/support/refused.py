"""What `check` says of a description that it refuses."""

from __future__ import annotations

import pytest
from ribwright.errors import DescriptionError, Problem
from ribwright.intake import parse


def refusals(text: str) -> tuple[Problem, ...]:
    """Everything that is wrong with a text, in order; fails where nothing is."""
    with pytest.raises(DescriptionError) as refused:
        parse(text, "x")
    return tuple(refused.value.problems)


def refusal(text: str) -> Problem:
    """The one thing that is wrong with a text."""
    (problem,) = refusals(text)
    return problem
