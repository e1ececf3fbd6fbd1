"""What of a description can be changed on the page, and which of it belongs to each piece."""

from __future__ import annotations

import tomllib
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from ..description.building import Building
from ..description.keys.key import Key, Table
from ..description.keys.sheet_tables import GABLE_SHEETS, RIDGE_VENT, SHEETS, WAINSCOT
from ..description.keys.steel_tables import TRIM
from ..description.keys.tables import LEAN_TO, OPENING, ROOF, RUNS, TOP
from ..description.keys.value_kinds import Choice
from ..description.reading.draft import dotted
from ..pieces import Piece
from ..printable import printable
from ..roles import Role, list_of
from ..show.page.paints import paint_numbers, paints

Path = tuple[str | int, ...]
"""Of a key in a description: tables, items counted from 0, its name as it is spelled there."""

SIZES = ("width", "length", "eave_height", "pitch")
SHAPED = ("right_eave_height", "ridge", "break_at", "lower_pitch")
OFFERED = (
    (TOP, SIZES),
    (ROOF, SHAPED),
    (SHEETS, ("wall_colour", "roof_colour")),
    (GABLE_SHEETS, ("colour",)),
    (WAINSCOT, ("height", "colour")),
    (RIDGE_VENT, ("length",)),
    (TRIM, tuple(key.name for key in TRIM.keys if key.name.endswith("colour"))),
    (RUNS, tuple(key.name for key in RUNS.keys)),
    (LEAN_TO, ("width", "pitch", "eave_height")),
    (OPENING, tuple(key.name for key in OPENING.keys)),
)


@dataclass(frozen=True, slots=True)
class Field:
    """A key that can be changed. words: what it is, as people say it. typed: what stands there, "" for
    nothing; usual: what then holds; choices: the words that it may be, none where it may be others."""

    path: Path
    words: str
    key: Key
    typed: str
    usual: str
    choices: tuple[str, ...]

    def content(self) -> dict[str, Any]:
        """For JSON; every text is printable."""
        return {
            "name": printable(dotted(self.path)),
            "words": printable(self.words),
            "help": self.key.help,
            "typed": printable(self.typed),
            "usual": self.usual,
            "choices": list(self.choices),
        }


def fields(text: str, building: Building) -> tuple[Field, ...]:
    """All that can be changed of a description that can be built, in the order of the tables."""
    given = tomllib.loads(text.removeprefix("\ufeff").replace("\r\n", "\n"))
    return tuple(
        _field(path, key, values, building)
        for table, names in OFFERED
        for path, values in _places(table, given)
        for key in table.keys
        if key.name in names
    )


def _places(table: Table, given: dict[str, Any]) -> Iterator[tuple[Path, dict[str, Any]]]:
    """Where a table stands and what it says; a plain one that does not stand is there to be begun."""
    if table.shape == "top":
        yield (), given
    elif table.shape == "array":
        for number, values in enumerate(given.get(table.name, [])):
            yield (table.name, number), values
    elif table.name in given or table not in (WAINSCOT, RIDGE_VENT):
        yield (table.name,), given.get(table.name, {})


def _field(at: Path, key: Key, values: dict[str, Any], building: Building) -> Field:
    name = next((name for name in (key.name, *key.also) if name in values), key.name)
    choices = key.kind.words if isinstance(key.kind, Choice) else ()
    usual = key.usual(building.units) or key.unless
    return Field((*at, name), _words(at, key, building), key, str(values.get(name, "")), usual, choices)


def _words(at: Path, key: Key, building: Building) -> str:
    """ "left window 1: from left", "trim: rake colour", "left slope: run starts", "eave height"."""
    said = key.name.replace("_", " ")
    match at:
        case () | (SHEETS.name,):
            return said
        case (RUNS.name,):
            return f"{said}: run starts"
        case (OPENING.name, int(number)):
            return f"{next(name for name, of in _opening_names(building).items() if of == number)}: {said}"
        case (LEAN_TO.name, int(number)):
            return f"lean-to {number + 1}: {said}"
    return f"{str(at[0]).replace('_', ' ')}: {said}"


def offered(
    found: Sequence[Field], building: Building, pieces: Sequence[Piece]
) -> tuple[list[list[int]], list[int]]:
    """Lists of the numbers of fields, and for each piece which of the lists belongs to it."""
    numbers = {(*field.path[:-1], field.key.name): number for number, field in enumerate(found)}
    openings = _opening_names(building)
    painted = paints(pieces)
    shaped = [(ROOF.name, name) for name in SHAPED if _said(numbers, found, (ROOF.name, name))]
    lists: dict[tuple[int, ...], int] = {}
    own = []
    for piece, paint in zip(pieces, paint_numbers(pieces, painted), strict=True):
        asked = list(_of_opening(piece.name, openings))
        if list_of(piece.role) == "sheets":
            asked.append((RUNS.name, piece.label("face").replace(" ", "_")))
        if piece.role == Role.RIDGE_VENT:
            asked.append((RIDGE_VENT.name, "length"))
        if paint >= 0 and painted[paint].part == WAINSCOT.name:
            asked.append((WAINSCOT.name, "height"))
        if paint >= 0:
            asked.append((painted[paint].table, painted[paint].key))
        for number, beside in enumerate(building.lean_tos):
            if piece.name.startswith(f"{beside.name} "):
                asked += [(LEAN_TO.name, number, name) for name in ("width", "pitch", "eave_height")]
        asked += [*((name,) for name in SIZES), *shaped]
        known = tuple(dict.fromkeys(numbers[path] for path in asked if path in numbers))
        own.append(lists.setdefault(known, len(lists)))
    return [list(one) for one in lists], own


def _said(numbers: Mapping[Path, int], found: Sequence[Field], path: Path) -> bool:
    """Whether the description says something there: a roof without a break is not asked about one."""
    return path in numbers and bool(found[numbers[path]].typed)


def _opening_names(building: Building) -> dict[str, int]:
    """What each opening is called, as the pieces around it are, and which one it is."""
    counts: Counter[str] = Counter()
    found = {}
    for number, opening in enumerate(building.openings):
        counts[opening.wall] += 1
        found[f"{opening.wall} {opening.kind} {counts[opening.wall]}"] = number
    return found


def _of_opening(name: str, openings: dict[str, int]) -> Iterator[Path]:
    for begun, number in openings.items():
        if name.startswith(f"{begun} "):
            yield from ((OPENING.name, number, key.name) for key in OPENING.keys)
