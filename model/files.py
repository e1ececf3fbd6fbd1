"""Files as they are found on a disk: read whole, and what goes wrong said plainly."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from .errors import FileError


@contextmanager
def said_plainly(path: Path) -> Iterator[None]:
    """The system's errors as one line that names the file or folder."""
    try:
        yield
    except OSError as error:
        raise FileError(f"{path}: {(error.strerror or str(error)).lower()}") from error


def read_whole(path: str | Path, limit: int) -> bytes:
    """The bytes of a plain file, at most `limit`. Raises FileError for anything else."""
    path = Path(path)
    with said_plainly(path):
        if path.exists() and not path.is_file():
            raise FileError(f"{path}: is not a plain file")
        with path.open("rb") as stream:
            data = stream.read(limit + 1)
    if len(data) > limit:
        raise FileError(f"{path}: is larger than {limit // 1_000_000} MB")
    if not data:
        raise FileError(f"{path}: is empty")
    return data
