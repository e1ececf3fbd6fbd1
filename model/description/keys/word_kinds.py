"""A kind of value: several words of a few."""

from __future__ import annotations

from dataclasses import dataclass

from ...units import Units, Unreadable
from .value_kinds import AsTyped, Json, one_of


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
