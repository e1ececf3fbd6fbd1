"""Few examples in a plain run, many in a long one: RIBWRIGHT_LONG=1."""

from __future__ import annotations

import os

LONG = bool(os.environ.get("RIBWRIGHT_LONG"))


def examples(few: int) -> int:
    """How many examples a random test tries: few, or 300 in a long run."""
    return 300 if LONG else few
