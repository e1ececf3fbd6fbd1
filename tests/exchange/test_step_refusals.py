"""Files that are no STEP file, or no longer: one line, quickly, and nothing printed by the kernel."""

from __future__ import annotations

import io
import random
import re
import sys
from pathlib import Path

import pytest
from ribwright.errors import FileError
from ribwright.exchange.apart import apart
from ribwright.exchange.step import read_step, write_step
from ribwright.pieces import Model, Piece
from ribwright.place import Place
from support.small_model import POST, small_model


def good(model: Model | None = None) -> bytes:
    stream = io.BytesIO()
    write_step(model or small_model(), stream)
    return stream.getvalue()


GOOD = good()
EMPTY_DATA = GOOD[: GOOD.index(b"DATA;")] + b"DATA;\nENDSEC;\nEND-ISO-10303-21;\n"
BAD = {
    "empty": (b"", "is empty"),
    "garbage": (bytes(range(256)) * 40, "is not a STEP file"),
    "text": (b"width = 30 ft\n", "is not a STEP file"),
    "cut in the middle": (GOOD[: len(GOOD) // 2], "is a STEP file cut short"),
    "cut near the end": (GOOD[:-30], "is a STEP file cut short"),
    "no entities": (EMPTY_DATA, "has no solids in it"),
    "garbage within": (
        GOOD[:3000] + bytes(range(256)) * 40 + GOOD[-40:],
        "is a damaged STEP file|has no solids",
    ),
}


@pytest.mark.parametrize("name", BAD)
def test_one_line_says_what_is_wrong(name: str, tmp_path: Path, capfd: pytest.CaptureFixture[str]) -> None:
    data, message = BAD[name]
    path = tmp_path / "model.step"
    path.write_bytes(data)
    with pytest.raises(FileError, match=rf"^{re.escape(str(path))}: ({message})[^\n]*$"):
        read_step(path)
    assert capfd.readouterr() == ("", "")


def test_what_is_no_plain_file_is_said(tmp_path: Path) -> None:
    with pytest.raises(FileError, match=r"^[^\n]*nowhere\.step: no such file or directory$"):
        read_step(tmp_path / "nowhere.step")
    with pytest.raises(FileError, match="is not a plain file"):
        read_step(tmp_path)


def test_a_file_far_too_large_is_not_read(tmp_path: Path) -> None:
    path = tmp_path / "huge.step"
    with path.open("wb") as stream:
        stream.write(GOOD[:1000])
        stream.truncate(20_000_000_000)
    with pytest.raises(FileError, match="is larger than 100 MB"):
        read_step(path)


def test_neither_reading_nor_writing_prints(tmp_path: Path, capfd: pytest.CaptureFixture[str]) -> None:
    write_step(small_model(), tmp_path / "model.step")
    read_step(tmp_path / "model.step")
    assert capfd.readouterr() == ("", "")


@pytest.mark.parametrize("seed", range(12))
def test_a_damaged_file_is_read_or_refused(seed: int, tmp_path: Path) -> None:
    """Entities left out, references bent: on some of these the kernel takes its process down."""
    chance = random.Random(seed)
    text = good(Model("post", "mm", (Piece("post", "post", ("frame",), POST, Place(), mark="M1"),)))
    if seed % 2:
        lines = text.split(b";\n")
        for _ in range(4):
            del lines[chance.randrange(8, len(lines) - 2)]
        text = b";\n".join(lines)
    else:
        most = text.count(b"#") // 2
        text = re.sub(
            rb"#\d+(?=[,)])",
            lambda found: found[0] if chance.random() > 0.01 else b"#%d" % chance.randrange(1, most),
            text,
        )
    path = tmp_path / "model.step"
    path.write_bytes(text)
    try:
        assert len(read_step(path).pieces) <= 1
    except FileError as error:
        assert str(error).count("\n") == 0


@pytest.mark.skipif(sys.platform != "linux", reason="elsewhere the work is done in this process")
def test_work_that_dies_is_noticed() -> None:
    def die() -> bytes:
        import ctypes  # noqa: PLC0415 (only the forked process may load it)

        ctypes.string_at(0)
        return b""

    def refuse() -> bytes:
        raise FileError("no good")

    assert apart(lambda: b"x" * 1_000_000) == b"x" * 1_000_000
    assert apart(die) is None
    with pytest.raises(FileError, match=r"^no good$"):
        apart(refuse)
    with pytest.raises(RuntimeError, match="ZeroDivisionError"):
        apart(lambda: bytes(1 // 0))
