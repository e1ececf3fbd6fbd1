"""Folders named after buildings."""

from __future__ import annotations

from pathlib import Path, PurePosixPath, PureWindowsPath

import pytest
from hypothesis import given
from hypothesis import strategies as st
from ribwright.cli.folders import LONGEST, RESERVED, default_folder, folder_name
from ribwright.errors import FileError


@pytest.mark.parametrize(
    ("name", "folder"),
    [
        ("my-shop", "my-shop"),
        ("Two-car garage", "Two-car-garage"),
        ("../../etc/passwd", "etc-passwd"),
        ("a/b\\c:d", "a-b-c-d"),
        ("nul\0byte", "nul-byte"),
        ("CON", "CON-"),
        ("lpt1.txt", "lpt1.txt-"),
        ("Schuppen für Öl", "Schuppen-für-Öl"),
        ("v1.2", "v1.2"),
    ],
)
def test_names_people_give(name: str, folder: str) -> None:
    assert folder_name(name) == folder


@given(st.text(st.characters(codec=None), max_size=400))
def test_a_folder_lies_directly_in_out_whatever_the_name(name: str) -> None:
    try:
        folder = folder_name(name)
    except FileError:
        return
    assert default_folder(name).parent == Path("out")
    for path in (PurePosixPath(folder), PureWindowsPath(folder)):
        assert path.parts == (folder,)
    assert folder[0] not in ".-"
    assert len(folder.encode()) <= LONGEST + 1
    assert folder.split(".")[0].lower() not in RESERVED
    assert folder.isprintable()


@pytest.mark.parametrize("name", ["", "..", "/", "\0", "///...", "💡"])
def test_a_name_of_which_nothing_is_left_is_refused(name: str) -> None:
    with pytest.raises(FileError, match="--out"):
        folder_name(name)
