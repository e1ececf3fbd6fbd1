"""What makes rows quick from the first one on."""

from __future__ import annotations

from ..intake import sample_text
from .entry import entry
from .task import Task

MOST = 100_000


def warm() -> None:
    """Loads all that a row needs, by making one of the built-in sample."""
    entry(Task(sample_text(), "sample", MOST, prices=()))
