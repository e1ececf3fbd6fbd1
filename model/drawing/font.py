"""The one font of all papers: DejaVu Sans, free, and with the fractions' and units' characters.

It comes with matplotlib, which the kernel's renderer brings; that is found, not imported.
"""

from __future__ import annotations

from functools import cache
from importlib.util import find_spec
from pathlib import Path

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

from ..errors import FileError
from ..printable import escaped

NAME = "DejaVuSans"
CAPITALS = 1493 / 2048
"""Height of its capitals and figures over its size."""
BELOW = 0.24
"""How far its letters reach below the line, over its size."""


def size_of(height: float) -> float:
    """The font size whose capitals are as high as this."""
    return height / CAPITALS


@cache
def font() -> TTFont:
    """The font, registered for PDF. Raises FileError where matplotlib's files are not there."""
    found = find_spec("matplotlib")
    folders = found.submodule_search_locations if found else None
    path = Path(*folders or [""]) / "mpl-data" / "fonts" / "ttf" / f"{NAME}.ttf"
    if not path.is_file():
        raise FileError(
            f"{path}: the font of papers is not here; python3 -m pip install matplotlib brings it"
        )
    loaded = TTFont(NAME, str(path))
    pdfmetrics.registerFont(loaded)
    return loaded


def width(text: str, height: float) -> float:
    """How long a text is whose capitals are so high; in the unit of the height."""
    return float(font().stringWidth(shown(text), size_of(height)))


def lacking(text: str) -> str:
    """The characters of a text that the font does not have, each once."""
    return "".join(dict.fromkeys(letter for letter in text if ord(letter) not in font().face.charToGlyph))


def shown(text: str) -> str:
    """A text as it is drawn: what the font lacks as what it is (`\\u4e2d`), never as a box."""
    for letter in lacking(text):
        text = text.replace(letter, escaped(letter))
    return text
