"""Files that are no description at all: one line each, and never a traceback."""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from ribwright.description.reading.source import LARGEST
from ribwright.errors import DescriptionError, FileError
from ribwright.intake import read

GOOD = b'width = "30 ft"\nlength = "40 ft"\neave_height = "10 ft"\npitch = "3/12"\n'


def refusal(path: Path) -> str:
    with pytest.raises(FileError) as caught:
        read(path)
    assert "\n" not in str(caught.value)
    return str(caught.value)


@pytest.fixture
def good(tmp_path: Path) -> Path:
    path = tmp_path / "my-shop.toml"
    path.write_bytes(GOOD)
    return path


def test_a_file_and_its_name(good: Path) -> None:
    assert read(good).name == "my-shop"


def test_a_link_to_a_file(good: Path) -> None:
    link = good.with_name("link.toml")
    link.symlink_to(good)
    assert read(link).width == 9144


@pytest.mark.parametrize("prefix", [b"", b"\xef\xbb\xbf"], ids=["plain", "byte order mark"])
def test_line_ends_of_another_system(good: Path, prefix: bytes) -> None:
    good.write_bytes(prefix + GOOD.replace(b"\n", b"\r\n"))
    assert read(good).width == 9144


def test_no_such_file(tmp_path: Path) -> None:
    assert refusal(tmp_path / "none.toml") == f"{tmp_path}/none.toml: no such file"


def test_a_folder(tmp_path: Path) -> None:
    assert "is a folder" in refusal(tmp_path)


def test_a_file_for_a_folder(good: Path) -> None:
    assert "cannot be read: Not a directory" in refusal(good / "inside.toml")


def test_a_pipe_is_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe")
    assert "is not a plain file" in refusal(tmp_path / "pipe")


def test_a_device() -> None:
    assert "is not a plain file" in refusal(Path("/dev/zero"))


def test_a_dangling_link(tmp_path: Path) -> None:
    (tmp_path / "link").symlink_to(tmp_path / "gone")
    assert "a link to a file that is not there" in refusal(tmp_path / "link")


def test_a_link_to_itself(tmp_path: Path) -> None:
    (tmp_path / "loop").symlink_to(tmp_path / "loop")
    assert "cannot be read" in refusal(tmp_path / "loop")


@pytest.mark.parametrize("name", ["x" * 5000, "nul\x00byte"])
def test_names_that_no_file_has(tmp_path: Path, name: str) -> None:
    assert "cannot be read" in refusal(tmp_path / name)


def test_a_name_of_bytes_that_are_no_text(tmp_path: Path) -> None:
    message = refusal(tmp_path / os.fsdecode(b"caf\xe9.toml"))
    assert message.encode("utf-8").endswith(b"caf\\udce9.toml: no such file")


@contextmanager
def as_nobody() -> Iterator[None]:
    """Without the rights of root, for whom nothing is unreadable."""
    if os.geteuid() != 0:
        yield
        return
    os.seteuid(65534)
    try:
        yield
    finally:
        os.seteuid(0)


def test_no_permission(good: Path) -> None:
    good.chmod(0)
    with as_nobody():
        assert "its permissions forbid it" in refusal(good)


def test_the_largest_file(good: Path) -> None:
    good.write_bytes(GOOD + b"#" * (LARGEST - len(GOOD)))
    assert read(good).width == 9144
    good.write_bytes(GOOD + b"#" * (LARGEST - len(GOOD) + 1))
    assert "is over 250,000 bytes" in refusal(good)


def test_an_empty_file_lacks_everything(tmp_path: Path) -> None:
    path = tmp_path / "empty.toml"
    path.touch()
    with pytest.raises(DescriptionError) as caught:
        read(path)
    assert [p.key for p in caught.value.problems] == ["width", "length", "eave_height", "pitch"]


def test_bytes_that_are_no_utf8(good: Path) -> None:
    good.write_bytes(GOOD + b'name = "caf\xe9"\n')
    with pytest.raises(DescriptionError) as caught:
        read(good)
    (problem,) = caught.value.problems
    assert (problem.line, problem.column, problem.read) == (5, 12, "byte 0xe9")
    assert problem.remedy == "text saved as UTF-8"


@pytest.mark.parametrize("encoding", ["utf-16-le", "utf-16-be"])
def test_utf_16(good: Path, encoding: str) -> None:
    good.write_bytes(("\ufeff" + GOOD.decode()).encode(encoding))
    assert "saved as UTF-16; save it as UTF-8" in refusal(good)


def test_a_nul_byte(good: Path) -> None:
    good.write_bytes(GOOD + b"\x00")
    with pytest.raises(DescriptionError, match="line 5, column 1: read a NUL character; plain text"):
        read(good)
