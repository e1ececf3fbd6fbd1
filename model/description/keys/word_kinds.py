"""Kinds of value: several words of a few; the name of a wall."""

from __future__ import annotations

import re
from dataclasses import dataclass

from ...units import Units, Unreadable
from .value_kinds import AsTyped, Choice, Json, one_of


@dataclass(frozen=True, slots=True)
class Words(AsTyped):
    """One of some words, or several in a list, each once, in the order of `words`; or "none"."""

    words: tuple[str, ...]

    def read(self, value: object, units: Units) -> tuple[str, ...]:
        """The words."""
        listed = value if isinstance(value, list) else [] if value == "none" else [value]
        typed = [" ".join(one.lower().split()) if isinstance(one, str) else "" for one in listed]
        for word in typed:
            if word not in self.words:
                raise Unreadable(f'a list of some of {one_of(word, self.words)}; or "none"')
        return tuple(word for word in self.words if word in typed)

    def schema(self) -> Json:
        """A word, or a list of them."""
        words: Json = {"enum": list(self.words)}
        return {"anyOf": [{"enum": [*self.words, "none"]}, {"type": "array", "items": words}]}


OWN_WALL = r"(?:(left|right|front|back) )?lean-to (left|right|front|back|outer)"
"""A wall of a lean-to; where there are two, of the one at that wall."""

OWN_SLOPE = r"(?:(left|right|front|back) )?lean-to (slope)"
"""The roof of a lean-to, likewise."""


@dataclass(frozen=True, slots=True)
class WallName(Choice):
    """One of the building's walls, or one of a lean-to's."""

    def read(self, value: object, units: Units) -> str:
        """The name as this program spells it."""
        word = " ".join(value.lower().split()) if isinstance(value, str) and len(value) < 200 else ""
        if re.fullmatch(OWN_WALL, word):
            return word
        try:
            return Choice.read(self, value, units)
        except Unreadable as error:
            own = (
                "; of a lean-to 'lean-to front', 'lean-to back' or 'lean-to outer', and so on"
                if "lean" in word
                else ""
            )
            raise Unreadable(f"{error}{own}") from None

    def schema(self) -> Json:
        """An enumeration, or a lean-to's."""
        own: Json = {"type": "string", "pattern": f"^{OWN_WALL}$"}
        return {"anyOf": [{"enum": list(self.words)}, own]}
