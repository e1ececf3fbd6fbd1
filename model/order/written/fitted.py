"""Lines of text that fit a terminal."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Iterable, Iterator

HUNG = 4
TOGETHER = re.compile(r"(?<=') (?=\d)| (?=(?:wide|high|deg)\b)")
"""Spaces inside a length, and before what it is."""
KEPT = "\N{NO-BREAK SPACE}"


def fitted(lines: Iterable[str], width: int, margin: str = "") -> Iterator[str]:
    """Lines of at most `width` characters: what is longer goes on under itself, at the margin or hung in by
    four more, and no length is broken."""
    for line in lines:
        if len(line) <= width:
            yield line
            continue
        indent = margin or " " * (len(line) - len(line.lstrip()) + HUNG)
        whole = TOGETHER.sub(KEPT, line)
        for part in textwrap.wrap(whole, width, subsequent_indent=indent, break_on_hyphens=False):
            yield part.replace(KEPT, " ")
