"""A description read and checked: every problem of its keys and of its envelope, each at its line."""

from __future__ import annotations

from pathlib import Path

from ..description.building import Building
from ..description.from_text import building_of, draft_of
from ..description.reading.source import read_text
from ..envelope.fit_checks import misfits
from ..envelope.lapped_walls import with_room_for_laps
from ..envelope.lean_to_bays import with_lean_tos_in_bays
from ..errors import DescriptionError


def read(path: str | Path) -> Building:
    """The building that a file describes. The file's stem names it where no key does.

    Raises FileError when the file cannot be read, and DescriptionError with all that is wrong in it.
    """
    path = Path(path)
    return _checked(read_text(path), path.stem, str(path))


def parse(text: str, name: str) -> Building:
    """The building that a text describes. name: the building's, where no key gives it one.

    Raises as `read` does.
    """
    return _checked(text, name, name)


def _checked(text: str, name: str, source_name: str) -> Building:
    draft = draft_of(text, source_name)
    if draft.problems:
        raise DescriptionError(draft.in_order(), source_name)
    building = with_lean_tos_in_bays(with_room_for_laps(building_of(draft, name)))
    for path, remedy in misfits(building, even_bays=not draft.tables["frame"]["bays"]):
        draft.object_to(path, remedy)
    if draft.problems:
        raise DescriptionError(draft.in_order(), source_name)
    return building
