"""Text of unknown origin, and what is shown of it."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from ribwright.errors import FileError
from ribwright.printable import printable


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("Große Halle, 9' 2-1/2\"", "Große Halle, 9' 2-1/2\""),
        ("\x1b]0;owned\x07", "\\x1b]0;owned\\x07"),
        ("one\r\ntwo\tthree", "one\\r\\ntwo\\tthree"),
        ("moc.\u202etxt", "moc.\\u202etxt"),
        ("\udcff", "\\udcff"),
        ("a\U000e0041", "a\\U000e0041"),
    ],
)
def test_what_a_terminal_would_obey_is_seen(text: str, shown: str) -> None:
    assert printable(text) == shown


@given(st.text(st.characters(codec=None)))
def test_it_can_be_printed_on_one_line_and_stays_so(text: str) -> None:
    shown = printable(text)
    assert shown.isprintable()
    assert shown.encode("utf-8").decode("utf-8") == shown
    assert printable(shown) == shown


def test_a_message_about_a_file_is_one_line_whatever_its_name() -> None:
    assert str(FileError("a\nb\x1b[2J: is empty")) == "a\\nb\\x1b[2J: is empty"
