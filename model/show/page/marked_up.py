"""Words, lengths and colours of a building as they may stand in a page."""

from __future__ import annotations

from html import escape

from ...catalog.colours import is_colour
from ...order.lists.schedule import Schedule
from ...printable import printable
from ...units import format_length
from .paints import hex_of


def shown(text: str) -> str:
    """A text of the building's as it may stand between tags or in an attribute."""
    return escape(printable(text), quote=True)


def capital(text: str) -> str:
    """The text with its first letter large."""
    return text[:1].upper() + text[1:]


def length(mm: float, listed: Schedule) -> str:
    """A length in the units of the lists, with theirs where figures have none."""
    return escape(format_length(mm, listed.units) + (" mm" if listed.units == "mm" else ""))


def coloured(colour: str) -> str:
    """A colour's name beside a patch of it."""
    if not is_colour(colour):
        return shown(colour)
    patch = f'<path d="M0 0H1V1H0Z" fill="{hex_of(colour)}"/>'
    seen = f'<svg class="patch" viewBox="0 0 1 1" aria-hidden="true">{patch}</svg>'
    return f'<span class="colour">{seen} {shown(colour)}</span>'
