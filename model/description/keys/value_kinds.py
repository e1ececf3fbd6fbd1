"""The kinds of value a key may take: how each is read, what would do, and its JSON Schema.

A kind is a frozen value with three methods, so that a new one is a dozen lines:

read(value, units): what the description means by a TOML value, in mm and degrees. Raises Unreadable
with what would do; lengths in that text are in `units`.
schema(): the JSON Schema of what may be typed.
typed(text, units): a default, written as the units' own people would type it.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from difflib import get_close_matches
from typing import Protocol

from ...units import (
    LENGTH_HINT,
    LENGTH_PATTERN,
    PITCH_HINT,
    PITCH_PATTERN,
    Units,
    Unreadable,
    format_exact,
    format_pitch,
    parse_length,
    parse_pitch,
)

Json = dict[str, object]

BAYS_PATTERN = (
    r"open in bays? ([0-9]{1,3}(?: ?- ?[0-9]{1,3})?(?:(?:, ?| and )[0-9]{1,3}(?: ?- ?[0-9]{1,3})?)*)"
)
"""Of a wall that is open in some bays: numbers and ranges of them."""


class Kind(Protocol):
    """How the value of a key is read."""

    def read(self, value: object, units: Units) -> object:
        """The value in mm, degrees or as a word. Raises Unreadable."""

    def schema(self) -> Json:
        """What a JSON Schema says of it."""

    def typed(self, text: str, units: Units) -> str:
        """A default as people who use these units would type it."""


class AsTyped:
    """Base of kinds whose values read the same in all units."""

    def typed(self, text: str, units: Units) -> str:
        """The default as it stands."""
        return text


def limits_said(low: str, high: str) -> str:
    """How limits are said to people."""
    return f"at least {low} and at most {high}"


def closest(word: str, names: Iterable[str]) -> str:
    """The one of the names that the word is almost, "" when it is like none of them."""
    return next(iter(get_close_matches(word[:60].lower(), names, n=1, cutoff=0.6)), "")


def nearest(word: str, names: Iterable[str]) -> str:
    """The end of a remedy that points to the name most like a word; "" when none is like it."""
    close = closest(word, names)
    return f"; the nearest is {close!r}" if close else ""


def one_of(word: str, names: tuple[str, ...]) -> str:
    """What would do instead of a word that is none of the names."""
    *most, last = map(repr, names)
    return (f"{', '.join(most)} or {last}" if most else last) + nearest(word, names)


@dataclass(frozen=True, slots=True)
class Length:
    """A length between two limits, given as typed; read to mm."""

    low: str
    high: str

    def read(self, value: object, units: Units) -> float:
        """Millimetres."""
        if isinstance(value, bool) or not isinstance(value, str | int | float):
            raise Unreadable(LENGTH_HINT)
        length = parse_length(value if isinstance(value, str) else plain(value))
        if not parse_length(self.low) <= length <= parse_length(self.high):
            raise Unreadable(limits_said(self.typed(self.low, units), self.typed(self.high, units)))
        return length

    def schema(self) -> Json:
        """A text in the grammar of lengths, or 0 where nothing is allowed."""
        text: Json = {"type": "string", "pattern": LENGTH_PATTERN}
        return {"anyOf": [text, {"const": 0}]} if parse_length(self.low) <= 0 else text

    def typed(self, text: str, units: Units) -> str:
        """The length in these units, exactly."""
        return format_exact(parse_length(text), units)


@dataclass(frozen=True, slots=True)
class Lengths:
    """A list of lengths, each between the limits; read to a tuple of mm."""

    low: str
    high: str
    most: int = 100

    def read(self, value: object, units: Units) -> tuple[float, ...]:
        """Millimetres, in the order given."""
        if not isinstance(value, list) or len(value) > self.most:
            raise Unreadable(f'a list of at most {self.most} lengths, such as ["10\'", "12\' 6\\""]')
        one = Length(self.low, self.high)
        return tuple(one.read(item, units) for item in value)

    def schema(self) -> Json:
        """An array of lengths."""
        return {"type": "array", "items": Length(self.low, self.high).schema(), "maxItems": self.most}

    def typed(self, text: str, units: Units) -> str:
        """The lengths, divided by commas, in these units."""
        return ", ".join(
            Length(self.low, self.high).typed(one, units) for one in text.split(",") if one.strip()
        )


@dataclass(frozen=True, slots=True)
class Pitch:
    """A roof pitch between two limits; read to degrees."""

    low: str
    high: str

    def read(self, value: object, units: Units) -> float:
        """Degrees."""
        if not isinstance(value, str):
            raise Unreadable(PITCH_HINT)
        pitch = parse_pitch(value)
        if not parse_pitch(self.low) <= pitch <= parse_pitch(self.high):
            raise Unreadable(limits_said(self.typed(self.low, units), self.typed(self.high, units)))
        return pitch

    def schema(self) -> Json:
        """A text in the grammar of pitches."""
        return {"type": "string", "pattern": PITCH_PATTERN}

    def typed(self, text: str, units: Units) -> str:
        """Rise in 12, or degrees where lengths are metric."""
        return format_pitch(parse_pitch(text), units)


@dataclass(frozen=True, slots=True)
class Choice(AsTyped):
    """One of a few words; `also` maps other spellings to them, `instead` words that are none of them to what
    would do."""

    words: tuple[str, ...]
    also: tuple[tuple[str, str], ...] = ()
    instead: tuple[tuple[str, str], ...] = ()

    def read(self, value: object, units: Units) -> str:
        """The word as this program spells it."""
        word = " ".join(value.lower().split()) if isinstance(value, str) and len(value) < 200 else ""
        word = dict(self.also).get(word, word)
        if word not in self.words:
            raise Unreadable(dict(self.instead).get(word) or one_of(word, self.words))
        return word

    def schema(self) -> Json:
        """An enumeration."""
        return {"enum": [*self.words, *(other for other, _ in self.also)]}


BAYS_HINT = '"clad", "open", or bays counted from the front, such as "open in bays 1, 2"'


@dataclass(frozen=True, slots=True)
class Bays(AsTyped):
    """How a side wall stands: "clad", "open", or open in some bays, as a tuple of their numbers."""

    def read(self, value: object, units: Units) -> str | tuple[int, ...]:
        """The word, or the numbers in order, each once."""
        word = " ".join(value.lower().split()) if isinstance(value, str) and len(value) < 500 else ""
        if word in ("clad", "open"):
            return word
        if not (listed := re.fullmatch(BAYS_PATTERN, word)):
            raise Unreadable(BAYS_HINT + nearest(word, ("clad", "open")))
        bays: set[int] = set()
        for first, last in re.findall(r"(\d+)(?: ?- ?(\d+))?", listed[1]):
            bays.update(range(int(first), int(last or first) + 1))
        if not bays:
            raise Unreadable(BAYS_HINT)
        return tuple(sorted(bays))

    def schema(self) -> Json:
        """A word, or bays by their numbers."""
        return {"anyOf": [{"enum": ["clad", "open"]}, {"type": "string", "pattern": f"^{BAYS_PATTERN}$"}]}


NUMBERS_HINT = '"ends", "none", or bays counted from the front, such as [1, 4]'


@dataclass(frozen=True, slots=True)
class BayNumbers(AsTyped):
    """Bays by their numbers, in order, each once; "ends" stays a word, "none" is no bay."""

    def read(self, value: object, units: Units) -> str | tuple[int, ...]:
        """The word, or the numbers."""
        word = " ".join(value.lower().split()) if isinstance(value, str) and len(value) < 500 else ""
        if word in ("ends", "none"):
            return word if word == "ends" else ()
        listed = re.findall(r"\d+", word) if re.fullmatch(r"\d{1,3}(, ?\d{1,3})*", word) else value
        numbers = [str(number) for number in (listed if isinstance(listed, list) else [listed])]
        if not numbers or not all(re.fullmatch(r"[1-9]\d{0,2}", number) for number in numbers):
            raise Unreadable(NUMBERS_HINT + nearest(word, ("ends", "none")))
        return tuple(sorted({int(number) for number in numbers}))

    def schema(self) -> Json:
        """A word, a number, or a list of them."""
        number: Json = {"type": "integer", "minimum": 1, "maximum": 999}
        words: Json = {"type": "string", "pattern": "^ *(ends|none|[0-9]{1,3}(, ?[0-9]{1,3})*) *$"}
        return {"anyOf": [words, number, {"type": "array", "items": number, "minItems": 1}]}


@dataclass(frozen=True, slots=True)
class Name(AsTyped):
    """A name for people that may also name a folder."""

    longest: int = 60
    barred: str = '/\\:*?"<>|'

    def read(self, value: object, units: Units) -> str:
        """The name, without spaces around it."""
        if not isinstance(value, str) or not (name := value.strip()):
            raise Unreadable("a name in quotes")
        if len(name) > self.longest:
            raise Unreadable(f"a name of at most {self.longest} characters")
        if (
            not name.isprintable()
            or set(name) & set(self.barred)
            or name.startswith((".", "-"))
            or name.endswith(".")
        ):
            raise Unreadable(
                f"a name that a folder can have: none of {self.barred}, no dot at its ends, no dash first"
            )
        return name

    def cleaned(self, text: str) -> str:
        """The nearest name that would do; "building" when nothing of it is left."""
        kept = "".join(c for c in text if c.isprintable() and c not in self.barred)
        return kept[: self.longest].strip().lstrip(".-").rstrip(".").strip() or "building"

    def schema(self) -> Json:
        """A text."""
        return {"type": "string", "minLength": 1, "maxLength": self.longest}


@dataclass(frozen=True, slots=True)
class Text(AsTyped):
    """A line for people; a TOML date is one too."""

    longest: int = 100

    def read(self, value: object, units: Units) -> str:
        """The text, without spaces around it."""
        text = value.strip() if isinstance(value, str) else str(value) if isinstance(value, date) else ""
        if not text or len(text) > self.longest or not text.isprintable():
            raise Unreadable(f"a line of at most {self.longest} characters, in quotes")
        return text

    def schema(self) -> Json:
        """A text."""
        return {"type": "string", "minLength": 1, "maxLength": self.longest}


def plain(number: float) -> str:
    """A number as text, short whatever it is."""
    return (
        f"{number:.10g}"
        if isinstance(number, float)
        else "a huge number"
        if abs(number) > 10**12
        else str(number)
    )
