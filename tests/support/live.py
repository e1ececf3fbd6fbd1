"""A live page as a person starts it: the command in a process of its own, at a file of theirs."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

COMMAND = "import sys; from ribwright.cli.start import main; sys.argv[0] = 'ribwright'; main()"


@dataclass
class Live:
    """address: of the page, its token at the end; file: that it follows; process: that serves it."""

    address: str
    file: Path
    process: subprocess.Popen[str]

    @property
    def host(self) -> str:
        return self.address.split("/")[2]

    @property
    def token(self) -> str:
        return self.address.split("#")[1]

    def write(self, text: str) -> None:
        """As an editor that writes into the file."""
        self.file.write_text(text, encoding="utf-8")

    def replace(self, text: str) -> None:
        """As an editor that puts another file in its place."""
        other = self.file.with_name(f".{self.file.name}.swp")
        other.write_text(text, encoding="utf-8")
        other.replace(self.file)


@contextmanager
def live(file: Path, *more: str) -> Iterator[Live]:
    process = subprocess.Popen(
        [sys.executable, "-c", COMMAND, "show", str(file), "--live", "--no-open", *more],
        cwd=file.parent,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
    )
    assert process.stdout
    try:
        line = process.stdout.readline()
        assert "http://127.0.0.1:" in line, line + process.stdout.read()
        yield Live(line.split()[-1], file, process)
    finally:
        process.terminate()
        process.wait(30)
