"""What the two processes say to each other, as plain values, and how they are sent through pipes."""

from __future__ import annotations

import pickle
import struct
from asyncio import StreamReader
from dataclasses import dataclass
from typing import Any, BinaryIO

from ..show.page.carried import Geometry

SIZE = struct.Struct(">Q")


@dataclass(frozen=True, slots=True)
class Job:
    """A text to be raised. number: counts the texts; digest: what the text is known by; name: the building's,
    where no key gives it one; pieces: the most that are raised."""

    number: int
    digest: str
    text: str
    name: str
    pieces: int


@dataclass(frozen=True, slots=True)
class Seen:
    """A building raised: what a picture needs. digest: of its text; content: as JSON has it, all but the
    geometry; paths: of the keys that can be changed, as they are numbered there."""

    number: int
    digest: str
    content: dict[str, Any]
    geometry: Geometry
    paths: tuple[tuple[str | int, ...], ...]


@dataclass(frozen=True, slots=True)
class Found:
    """What is known of it once it was listed and audited. content: as JSON has it; words: text for the places
    of the page, by their names."""

    number: int
    content: dict[str, Any]
    words: dict[str, str]


@dataclass(frozen=True, slots=True)
class Wrong:
    """A text that cannot be raised: what is wrong with it, each with its line, key, what was read, what would
    do, and the line's own text."""

    number: int
    problems: tuple[dict[str, Any], ...]


@dataclass(frozen=True, slots=True)
class Ready:
    """The process that raises listens."""


Answer = Seen | Found | Wrong | Ready


def packet(value: Job | Answer) -> bytes:
    """A value as it goes through a pipe, its length before it."""
    data = pickle.dumps(value, pickle.HIGHEST_PROTOCOL)
    return SIZE.pack(len(data)) + data


def received(stream: BinaryIO) -> Any:
    """The next value; waits for it. Raises EOFError at the end."""
    data = _exactly(stream, SIZE.unpack(_exactly(stream, SIZE.size))[0])
    return pickle.loads(data)


def _exactly(stream: BinaryIO, size: int) -> bytes:
    data = bytearray()
    while len(data) < size:
        part = stream.read(size - len(data))
        if not part:
            raise EOFError
        data += part
    return bytes(data)


async def heard(stream: StreamReader) -> Any:
    """The same of a stream that is read beside other work. Raises IncompleteReadError at the end."""
    (size,) = SIZE.unpack(await stream.readexactly(SIZE.size))
    return pickle.loads(await stream.readexactly(size))
