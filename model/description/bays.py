"""How many bays a description makes."""

from __future__ import annotations

from math import ceil

from .reading.draft import Draft


def bay_count(draft: Draft) -> int:
    """How many bays the frames make."""
    frame, length = draft.tables["frame"], draft.tables[""]["length"]
    return len(frame["bays"] or ()) or max(1, ceil(length / frame["spacing"] - 1e-9))
