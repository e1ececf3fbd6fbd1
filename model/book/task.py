"""One row of a book on its way: what is to be raised, as text, and what came of it, as plain values."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property
from hashlib import sha256

from .. import __version__
from ..order.buying.prices import PriceRow

BUILT, REFUSED, FAILED = "built", "refused", "failed"


@dataclass(frozen=True)
class Task:
    """A building to be raised and priced. It travels between processes and machines.

    text: its description. name: where the description has none. pieces: more are refused. folder: for its
    files, "" for none; words: of the formats wanted besides the usual ones.
    """

    text: str
    name: str
    pieces: int
    prices: tuple[PriceRow, ...] | None = None
    folder: str = ""
    words: tuple[str, ...] = ()

    @cached_property
    def digest(self) -> str:
        """SHA-256 of the description."""
        return sha256(self.text.encode()).hexdigest()

    @cached_property
    def key(self) -> str:
        """SHA-256 of all that the row follows from: description, prices, limits, files, this version."""
        prices = None if self.prices is None else [str(row) + repr(row.price) for row in self.prices]
        settled = (__version__, self.text, self.name, self.pieces, prices, self.folder, self.words)
        return sha256(repr(settled).encode()).hexdigest()


@dataclass(frozen=True, slots=True)
class Entry:
    """What came of a task. state: "built"; "refused", a description that cannot be built; "failed", one that
    should have been. said: why it is not built. figures: by column. seconds: it took."""

    state: str
    said: str = ""
    figures: dict[str, float | int | str | None] = field(default_factory=dict)
    seconds: float = 0.0
