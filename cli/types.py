"""What options take, so that each kind of input is complained of in one way."""

from __future__ import annotations

import click

from ..units import Unreadable, parse_length


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
