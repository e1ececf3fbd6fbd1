"""Kinds of value that are looked up in a catalogue."""

from __future__ import annotations

import re
from dataclasses import dataclass
from difflib import get_close_matches
from itertools import chain

from ...catalog.colours import CODE, colour_names, is_colour, own_colour
from ...catalog.gauges import gauges
from ...catalog.profiles import RibProfile, find_profile, profiles
from ...catalog.sections import SectionShape, parse_section
from ...units import Units, Unreadable
from .value_kinds import AsTyped, Json, Lengths, one_of

ALMOST = 0.85  # likeness of a colour's name with a slip in it


@dataclass(frozen=True, slots=True)
class Colour(AsTyped):
    """A CSS colour name, #rrggbb, or a name of the description's own; read to what was typed, lower case.

    own: names and codes of the description's table of colours.
    """

    own: tuple[tuple[str, str], ...] = ()

    def read(self, value: object, units: Units) -> str:
        """The name, lower case; an own one with its code."""
        word = " ".join(value.lower().split()) if isinstance(value, str) and len(value) < 200 else ""
        own = dict(self.own)
        if word in own:
            return own_colour(word, own[word])
        if not is_colour(word) or "(" in word:
            some = "a CSS colour name such as 'gainsboro', 'slategray' or 'firebrick', or '#rrggbb'"
            raise Unreadable(some + _nearest_colour(word, tuple(own)))
        return word

    def schema(self) -> Json:
        """A text, since names may be the file's own; those of CSS for editors to offer."""
        return {"type": "string", "examples": list(colour_names())}


OWN_NAME = re.compile(r"[^#()|\x00-\x1f\x7f]{1,40}")


@dataclass(frozen=True, slots=True)
class ColourCode(AsTyped):
    """The look of a colour that people name themselves: #rrggbb."""

    def read(self, value: object, units: Units) -> str:
        """The code, lower case."""
        code = value.strip().lower() if isinstance(value, str) else ""
        if not CODE.fullmatch(code):
            raise Unreadable("'#' and six hexadecimal digits, such as '#7a2e2a'")
        return code

    def schema(self) -> Json:
        """Six hexadecimal digits."""
        return {"type": "string", "pattern": "^ *#[0-9a-fA-F]{6} *$"}


def _nearest_colour(word: str, own: tuple[str, ...]) -> str:
    """The end of a remedy that points to a colour: the same words, a slip of the pen, its last word.

    Colours whose names only sound alike are not near.
    """
    words = re.findall("[a-z]+", word[:60].replace("grey", "gray"))
    joined, known = "".join(words), (*own, *colour_names())
    alike = (get_close_matches(word[:60], own, n=1), get_close_matches(joined, known, n=1, cutoff=ALMOST))
    near = [joined, *chain(*alike), *reversed(words)]
    found = next((name for name in near if name in known), "")
    return f"; the nearest is {found!r}" if found else ""


@dataclass(frozen=True, slots=True)
class Profile(AsTyped):
    """The name of a ribbed profile in the catalogue."""

    def read(self, value: object, units: Units) -> RibProfile:
        """The profile."""
        name = value if isinstance(value, str) else ""
        found = find_profile(name) if len(name) < 200 else None
        if found is None:
            raise Unreadable(f"a profile of the catalogue: {one_of(name, tuple(profiles()))}")
        return found

    def schema(self) -> Json:
        """The catalogue's names, for editors to offer; other spellings are read too."""
        return {"type": "string", "examples": list(profiles())}


@dataclass(frozen=True, slots=True)
class GaugeNumber(AsTyped):
    """A gauge of the catalogue, typed 29, "29" or "29 ga"; read to its number."""

    def read(self, value: object, units: Units) -> int:
        """The gauge number."""
        if isinstance(value, str) and (
            match := re.fullmatch(r"\s*([0-9]{1,3})\s*(ga|gauge)?\.?\s*", value.lower())
        ):
            value = int(match[1])
        if isinstance(value, bool) or not isinstance(value, int) or value not in gauges():
            raise Unreadable(f"a gauge of the catalogue: {', '.join(map(str, gauges()))}")
        return value

    def schema(self) -> Json:
        """The numbers, for editors to offer, or the same as text."""
        return {
            "anyOf": [
                {"enum": list(gauges())},
                {"type": "string", "pattern": "^ *[0-9]+ *([gG][aA][a-zA-Z.]*)? *$"},
            ]
        }


@dataclass(frozen=True, slots=True)
class Steel(AsTyped):
    """A steel section of one of a few shapes; with none, also the word "none", read to None."""

    shapes: tuple[str, ...]
    none: bool = False

    def read(self, value: object, units: Units) -> SectionShape | None:
        """The section."""
        if self.none and isinstance(value, str) and value.strip().lower() == "none":
            return None
        if not isinstance(value, str):
            raise Unreadable(f"a section in quotes, {self._shapes()}")
        section = parse_section(value)
        if section.shape not in self.shapes:
            raise Unreadable(f"{self._shapes()} here")
        return section

    def schema(self) -> Json:
        """A text; the grammar of sections is told by the program."""
        return {"type": "string"}

    def _shapes(self) -> str:
        return " or ".join(f"a {shape}" for shape in self.shapes)


@dataclass(frozen=True, slots=True)
class Posts(AsTyped):
    """Where gable posts stand: "none", "centre", or a list of lengths; read to a tuple, centre as -1."""

    def read(self, value: object, units: Units) -> tuple[float, ...]:
        """mm from the wall's left corner, seen from outside."""
        word = value.strip().lower() if isinstance(value, str) else ""
        if word == "none":
            return ()
        if word in ("centre", "center"):
            return (CENTRE,)
        if not isinstance(value, list):
            raise Unreadable('"none", "centre", or a list such as ["10 ft", "20 ft"]')
        return Lengths("1 ft", "200 ft", most=20).read(value, units)

    def schema(self) -> Json:
        """A word or lengths."""
        return {
            "anyOf": [{"enum": ["none", "centre", "center"]}, Lengths("1 ft", "200 ft", most=20).schema()]
        }


CENTRE = -1.0
"""Stands for the middle of the wall until its width is known."""
