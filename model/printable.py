"""Text of unknown origin made fit to be shown: on a terminal, in a message, in a file, in a table's cell.

A terminal obeys some characters, and others turn the order of what is read. They are shown as what they are.
"""

from __future__ import annotations

import re

RUNS = re.compile(r"\s*[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]")  # the last four are the wide ones
FIGURE = re.compile(r"-?[0-9]+(\.[0-9]+)?")


def printable(text: str) -> str:
    """The text on one line, with each character that cannot be printed as an escape, such as `\\x1b`.

    Those are control characters, line ends, marks that change the direction of writing (bidi), others
    without a shape, and halves of surrogate pairs. Text that was made printable stays as it is.
    """
    return text if text.isprintable() else "".join(map(_shown, text))


def _shown(letter: str) -> str:
    if letter.isprintable():
        return letter
    return {"\n": "\\n", "\r": "\\r", "\t": "\\t"}.get(letter) or escaped(letter)


def escaped(letter: str) -> str:
    """A character as an escape, such as `\\x1b`."""
    code = ord(letter)
    if code > 0xFFFF:
        return f"\\U{code:08x}"
    return f"\\u{code:04x}" if code > 0xFF else f"\\x{code:02x}"


def cell(value: object) -> object:
    """The value; text that begins as a formula does has an apostrophe before it, a figure never."""
    if isinstance(value, str) and RUNS.match(value) and not FIGURE.fullmatch(value):
        return f"'{value}"
    return value
