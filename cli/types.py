"""What options take, so that each kind of input is complained of in one way."""

from __future__ import annotations

import re
from collections.abc import Sequence

import click

from ..units import POUND, Unreadable, parse_length


class Length(click.ParamType[float]):
    """A length as people type it, in mm. least, most: mm."""

    name = "length"

    def __init__(self, least: float = 0.0, most: float = 1e6) -> None:
        self.least, self.most = least, most

    def convert(self, value: str | float, param: click.Parameter | None, ctx: click.Context | None) -> float:
        """Millimetres."""
        if not isinstance(value, str):
            return value
        try:
            length = parse_length(value)
        except Unreadable as error:
            self.fail(f"read {value!r}; would do: {error}", param, ctx)
        if not self.least <= length <= self.most:
            self.fail(f"read {value!r}; would do: {self.least:g} to {self.most:g} mm", param, ctx)
        return length


class Weight(click.ParamType[float]):
    """A weight such as 50 lb or 25 kg, in kg."""

    name = "weight"

    def convert(self, value: str | float, param: click.Parameter | None, ctx: click.Context | None) -> float:
        """Kilograms."""
        if not isinstance(value, str):
            return value
        found = re.fullmatch(r"\s*(\d{1,6}(?:\.\d{1,6})?)\s*(lb|kg)\s*", value.lower())
        if not found:
            self.fail(f"read {value!r}; would do: 50 lb or 25 kg", param, ctx)
        return float(found[1]) * (POUND if found[2] == "lb" else 1.0)


class Words(click.ParamType[tuple[str, ...]]):
    """Words of a list, with commas between them."""

    name = "words"

    def __init__(self, known: Sequence[str]) -> None:
        self.known = tuple(known)

    def convert(
        self, value: str | tuple[str, ...], param: click.Parameter | None, ctx: click.Context | None
    ) -> tuple[str, ...]:
        """The words, in the order of the list."""
        if not isinstance(value, str):
            return value
        words = [word.strip().lower() for word in value.split(",") if word.strip()]
        unknown = [word for word in words if word not in self.known]
        if unknown or not words:
            self.fail(f"read {value!r}; would do: {','.join(self.known)}, or some of them", param, ctx)
        return tuple(word for word in self.known if word in words)
