"""Kinds of value that count: whole numbers, and lists of them."""

from __future__ import annotations

import re
from dataclasses import dataclass

from ...units import Units, Unreadable
from .value_kinds import AsTyped, Json, limits_said

NUMBERS_HINT = "numbers from 1 to 999, such as [3, 6]"


@dataclass(frozen=True, slots=True)
class Whole(AsTyped):
    """A whole number between two limits, typed 3 or "3"."""

    low: int
    high: int

    def read(self, value: object, units: Units) -> int:
        """The number."""
        word = str(value).strip() if isinstance(value, int | str) and not isinstance(value, bool) else ""
        if not re.fullmatch(r"[0-9]{1,9}", word) or not self.low <= int(word) <= self.high:
            raise Unreadable(f"a whole number, {limits_said(str(self.low), str(self.high))}")
        return int(word)

    def schema(self) -> Json:
        """A number, or the same as text."""
        number: Json = {"type": "integer", "minimum": self.low, "maximum": self.high}
        return {"anyOf": [number, {"type": "string", "pattern": "^ *[0-9]+ *$"}]}


@dataclass(frozen=True, slots=True)
class Numbers(AsTyped):
    """Whole numbers from 1 on, in a list or as text, in order, each once."""

    def read(self, value: object, units: Units) -> tuple[int, ...]:
        """The numbers."""
        word = " ".join(value.split()) if isinstance(value, str) and len(value) < 5000 else ""
        listed = re.findall(r"[0-9]+", word) if re.fullmatch(r"[0-9]+( ?, ?[0-9]+)*", word) else value
        numbers = [str(number) for number in (listed if isinstance(listed, list) else [listed])]
        if not numbers or not all(re.fullmatch(r"[1-9][0-9]{0,2}", number) for number in numbers):
            raise Unreadable(NUMBERS_HINT)
        return tuple(sorted({int(number) for number in numbers}))

    def schema(self) -> Json:
        """A number, a list of them, or the same as text."""
        number: Json = {"type": "integer", "minimum": 1, "maximum": 999}
        text: Json = {"type": "string", "pattern": "^ *[0-9]{1,3}( ?, ?[0-9]{1,3})* *$"}
        return {"anyOf": [text, number, {"type": "array", "items": number, "minItems": 1}]}
