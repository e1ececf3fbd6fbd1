"""Text of unknown origin made fit to be shown: on a terminal, in a message, as a name in a file.

A terminal obeys some characters, and others turn the order of what is read. They are shown as what they are.
"""

from __future__ import annotations


def printable(text: str) -> str:
    """The text on one line, with each character that cannot be printed as an escape, such as `\\x1b`.

    Those are control characters, line ends, marks that change the direction of writing (bidi), others
    without a shape, and halves of surrogate pairs. Text that was made printable stays as it is.
    """
    return text if text.isprintable() else "".join(map(_shown, text))


def _shown(letter: str) -> str:
    if letter.isprintable():
        return letter
    return {"\n": "\\n", "\r": "\\r", "\t": "\\t"}.get(letter) or _escape(ord(letter))


def _escape(code: int) -> str:
    if code > 0xFFFF:
        return f"\\U{code:08x}"
    return f"\\u{code:04x}" if code > 0xFF else f"\\x{code:02x}"
