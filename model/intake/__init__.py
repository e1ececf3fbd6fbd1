"""Where a description is taken in: read, held against its envelope, begun from a starter. No kernel."""

from __future__ import annotations

from .checked import parse, read
from .doors import clad_walls, put_at
from .estimate import MOST, refuse_too_many
from .starter import SHAPES, sample, sample_text, starter_text, starters

__all__ = [
    "read",
    "parse",
    "sample",
    "sample_text",
    "starters",
    "starter_text",
    "MOST",
    "clad_walls",
    "put_at",
    "SHAPES",
    "refuse_too_many",
]
