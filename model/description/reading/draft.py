"""From TOML values to what they mean: every key read by its line in tables.py, every problem collected."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

from ...errors import Problem
from ...units import Units, Unreadable
from ..keys.catalogued import OWN_NAME, Colour, ColourCode
from ..keys.key import Key, Table
from ..keys.not_yet import NOT_YET
from ..keys.sheet_tables import LIGHT_SHEETS
from ..keys.tables import COLOURS, LEAN_TO, OPENING, TABLES, TOP
from ..keys.value_kinds import closest
from .positions import Path, Positions
from .source import LOST
from .syntax import shorten

MOST_OPENINGS = 500
MOST_LEAN_TOS = 2
"""One along each of two walls that face each other."""
MOST_LIGHT_SHEETS = 50
MOST_PROBLEMS = 100
"""More are not listed; whoever has a hundred mends some of them first."""


class Unread(Exception):
    """A value that is needed was not readable; what it is needed for is left out."""


class Values(dict[str, Any]):
    """The values of one table by key, in mm and degrees. A value that could not be read raises Unread."""

    def __missing__(self, key: str) -> Any:
        raise Unread(key)


@dataclass(slots=True)
class Draft:
    """A description read key by key: its values so far, and the problems found in it.

    given: the TOML values as they stood. colours: names and codes of the file's own. tables: by name, ""
    for the top. openings, lean_tos, light_sheets: in the order of the file.
    """

    given: dict[str, Any]
    positions: Positions
    units: Units = "ft-in"
    colours: tuple[tuple[str, str], ...] = ()
    tables: dict[str, Values] = field(default_factory=dict)
    openings: list[Values] = field(default_factory=list)
    lean_tos: list[Values] = field(default_factory=list)
    light_sheets: list[Values] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)

    def object_to(self, path: Path, remedy: str, *, at_key: bool = False, read: str | None = None) -> None:
        """Notes a problem at a path, with what stood there unless `read` says it better."""
        spot = self.positions.spots.get(path)
        for outer in range(len(path) - 1, 0, -1):  # what is missing stands, so to speak, in its table
            spot = spot or self.positions.spots.get(path[:outer])
        line, column = self.positions.line_column(spot.key if at_key else spot.start) if spot else (0, 0)
        typed = self.positions.source(path) if read is None else read
        self.problems.append(Problem(dotted(path), shorten(typed), remedy, line, column))

    def in_order(self) -> list[Problem]:
        """The problems in the order of the file, those without a place last."""
        ordered = sorted(self.problems, key=lambda p: (p.line == 0, p.line, p.column))
        more = len(ordered) - MOST_PROBLEMS
        if more > 0:
            ordered[MOST_PROBLEMS:] = [
                Problem("", "", f"and {more} problems more", ordered[MOST_PROBLEMS].line)
            ]
        return ordered


def dotted(path: Path) -> str:
    """A path as a person would write it, items counted from 1: `opening[2].width`."""
    text = ""
    for part in path:
        text += f"[{part + 1}]" if isinstance(part, int) else f"{'.' if text else ''}{shorten(part)}"
    return text


def read_values(values: dict[str, Any], positions: Positions, problems: list[Problem]) -> Draft:
    """All tables read, with what was wrong in any of them."""
    draft = Draft(values, positions, problems=list(problems))
    draft.units = _units(values)
    draft.colours = tuple(_read_colours(draft))
    for table in TABLES:
        if table.shape == "top":
            draft.tables[""] = _read_table(draft, table, values, ())
        elif table.shape == "table":
            draft.tables[table.name] = _read_table(
                draft, table, _as_table(draft, table, values), (table.name,)
            )
    draft.openings = _read_items(draft, OPENING, MOST_OPENINGS)
    draft.lean_tos = _read_items(draft, LEAN_TO, MOST_LEAN_TOS)
    draft.light_sheets = _read_items(draft, LIGHT_SHEETS, MOST_LIGHT_SHEETS)
    return draft


def _units(values: dict[str, Any]) -> Units:
    """The units to say limits in; whether the key is right is judged with the others."""
    return "mm" if values.get("units") == "mm" else "ft-in"


def _read_colours(draft: Draft) -> Iterator[tuple[str, str]]:
    """Names and codes of the file's own colours."""
    for name in (name for name in (COLOURS.name, *COLOURS.also) if name in draft.given):
        for typed, value in _as_table(draft, COLOURS, draft.given, name).items():
            word = " ".join(typed.lower().split())
            if not OWN_NAME.fullmatch(word):
                remedy = "a name of at most 40 characters, none of them #, ( or )"
                draft.object_to((name, typed), remedy, at_key=True, read=repr(typed))
                continue
            try:
                yield word, ColourCode().read(value, draft.units)
            except Unreadable as error:
                if value != LOST:
                    draft.object_to((name, typed), str(error))


def _as_table(draft: Draft, table: Table, values: dict[str, Any], name: str = "") -> dict[str, Any]:
    name = name or table.name
    value = values.get(name, {})
    if isinstance(value, dict):
        return value
    if value != LOST:
        draft.object_to((name,), f"a table: [{name}] on a line of its own, its keys under it", at_key=True)
    return dict.fromkeys((key.name for key in table.keys), LOST)


def _read_items(draft: Draft, table: Table, most: int) -> list[Values]:
    """The values of each item of a table that may stand many times."""
    name, value = table.name, draft.given.get(table.name, [])
    what = name.replace("_", "-")
    if not isinstance(value, list) or not all(isinstance(item, dict) for item in value):
        if value != LOST:
            remedy = f"[[{name}]], in two pairs of brackets, above each {what}'s keys"
            draft.object_to((name,), remedy, at_key=True)
        return []
    if len(value) > most:
        plural = "" if most == 1 else "s"
        draft.object_to((name, most), f"at most {most} {what}{plural}", read=f"one more {what}")
    return [_read_table(draft, table, item, (name, number)) for number, item in enumerate(value[:most])]


def _read_table(draft: Draft, table: Table, given: dict[str, Any], path: Path) -> Values:
    """The values of one table, defaults filled in. A key without a default that is absent is None."""
    values = Values()
    known = {name for key in table.keys for name in (key.name, *key.also)}
    if table is TOP:
        known.update(name for other in TABLES for name in (other.name, *other.also))
    for name in given:
        if name not in known:
            draft.object_to(
                (*path, name), _unknown(name, table, len(draft.problems)), at_key=True, read=repr(name)
            )
    for key in table.keys:
        typed = [name for name in (key.name, *key.also) if name in given]
        for again in typed[1:]:
            draft.object_to((*path, again), f"said already, as {key.name}", at_key=True, read=repr(again))
        if typed:
            _read_key(draft, key, given[typed[0]], (*path, typed[0]), values)
        elif key.required:
            draft.object_to((*path, key.name), f"missing; {_example(key, draft.units)}", read="")
        else:
            usual = key.usual(draft.units)
            values[key.name] = None if usual is None else key.kind.read(usual, draft.units)
    return values


def _read_key(draft: Draft, key: Key, value: object, path: Path, values: Values) -> None:
    if value == LOST:
        return
    try:
        kind = Colour(draft.colours) if isinstance(key.kind, Colour) else key.kind
        values[key.name] = kind.read(value, draft.units)
    except Unreadable as error:
        draft.object_to(path, "; ".join(filter(None, (str(error), key.not_yet))))


def _example(key: Key, units: Units) -> str:
    example = key.example[units == "mm"]
    return f'such as {key.name} = "{example}" ({key.help})'


def _unknown(name: str, table: Table, problems: int) -> str:
    """What would do instead of a key that this table does not have."""
    word = name.lower().replace("-", "_").removesuffix("s")
    if word in NOT_YET:
        return f"not yet possible; what comes nearest: {NOT_YET[word]}"
    homes = [other for other in TABLES if other is not table and any(key.name == name for key in other.keys)]
    if homes:
        places = " or ".join(_home(other) for other in homes)
        return f"this key belongs {places}"
    own = [key.name for key in table.keys]
    if table is TOP:
        own += [other.name for other in TABLES if other.name]
    if problems > MOST_PROBLEMS:  # likeness is slow to tell, and this will not be read
        return "no such key"
    if close := closest(name, own):
        return f"no such key; the nearest is {close!r}"
    others = {key.name: other for other in TABLES for key in other.keys}
    if close := closest(name, others):
        return f"no such key; the nearest is {close!r} {_home(others[close])}"
    return f"no such key; the keys here are {', '.join(own)}"


def _home(table: Table) -> str:
    if table is TOP:
        return "at the top, above the first [table]"
    return f"under [[{table.name}]]" if table.shape == "array" else f"under [{table.name}]"
