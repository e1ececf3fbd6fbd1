"""Descriptions to begin with: the starters that come with the program, and a commented blank one."""

from __future__ import annotations

import re
from dataclasses import replace
from functools import cache
from math import ceil
from pathlib import Path

from ..description.building import Building
from ..description.keys.key import Key
from ..description.keys.schema import SCHEMA_FILE
from ..description.keys.steel_tables import BRACING
from ..description.keys.tables import OPENING, TABLES, TOP
from ..description.keys.value_kinds import Lengths, one_of
from ..description.reading.positions import find_positions
from ..errors import DescriptionError, Problem
from ..units import FOOT, INCH, Units, format_exact
from .checked import parse
from .doors import doors, quoted, spelled

SAMPLE = "workshop"
"""The starter that is raised when no file is named."""

SHAPES = (
    *(
        "single-slope",
        "offset-ridge",
        "lean-to",
        "porch",
        "carport",
        "pavilion",
        "run-in",
        "lambing-shed",
        "wainscot",
    ),
    *("hay-barn", "barn", "day-barn"),
)
"""Starters that show a shape of building; the others show a use."""

LARGE, POSTS_APART = 40 * FOOT, 15 * FOOT
"""mm; a building longer or wider than this (40 ft) is begun with braces, and in gables wider than it with
posts so far apart at most (15 ft). Ours."""

POST_STEP: dict[Units, float] = {"ft-in": INCH / 2, "mm": 5.0}
"""mm; those posts stand at whole ones. Ours."""

_FOLDER = Path(__file__).with_name("starters")


@cache
def starters() -> tuple[str, ...]:
    """The names of the starters, in alphabetical order."""
    return tuple(sorted(file.stem for file in _FOLDER.glob("*.toml")))


def sample() -> Building:
    """The built-in sample."""
    return parse(sample_text(), SAMPLE)


def sample_text() -> str:
    """The text of the built-in sample."""
    return _text(SAMPLE)


def starter_text(
    name: str,
    like: str = "",
    *,
    walk_doors: int | None = None,
    overhead_doors: int | None = None,
    **answers: str,
) -> str:
    """A commented description to go on from, sure to be readable.

    name: of the building. like: one of `starters()`; without it, every key with what it does, the
    optional ones commented out. answers: any key at the top (units, width, length, eave_height, pitch)
    as typed. walk_doors, overhead_doors: how many, in the left wall and in the front gable; where
    either is given they stand instead of the starter's own openings.

    Raises DescriptionError when the answers make no building; its problems have no lines.
    """
    units: Units = "mm" if answers.get("units") == "mm" else "ft-in"
    text = _text(like) if like else _blank(units)
    for key, typed in {**answers, "name": name}.items():
        text = _answered(text, key, typed)
    if not like:
        text = _if_large(text, _valid(text, name))
    if walk_doors is not None or overhead_doors is not None:
        building = _valid(_without_openings(text), name)
        text = _without_openings(text) + doors(building, walk_doors or 0, overhead_doors or 0)
    _valid(text, name)
    return text


def _if_large(text: str, building: Building) -> str:
    """A blank description with what only a large building needs said: posts in wide gables, braces."""
    if building.width > LARGE:
        bays = ceil(building.width / POSTS_APART)
        step = POST_STEP[building.units]
        places = [round(building.width * number / bays / step) * step for number in range(1, bays)]
        typed = ", ".join(quoted(spelled(format_exact(place, building.units))) for place in places)
        for key in ("front_posts", "back_posts"):
            text = _said(text, key, f"[{typed}]")
    if max(building.width, building.length) > LARGE:
        text = _said(text, "bays", '"ends"', of=BRACING.name)
    return text


def _said(text: str, key: str, value: str, of: str = "frame") -> str:
    """The text of a blank description with a key of a table said."""
    before, header, after = text.partition(f"\n[{of}]\n")
    return before + header + re.sub(rf"(?m)^# {key} = .*?(?= *#|$)", f"{key} = {value}", after, count=1)


def _text(like: str) -> str:
    if like not in starters():
        raise DescriptionError([Problem("like", repr(like), one_of(like, starters()))])
    return (_FOLDER / f"{like}.toml").read_text(encoding="utf-8")


def _valid(text: str, name: str) -> Building:
    try:
        return parse(text, name)
    except DescriptionError as error:  # nobody has seen the text, so its lines mean nothing
        raise DescriptionError([replace(p, line=0, column=0) for p in error.problems]) from None


def _answered(text: str, name: str, typed: str) -> str:
    """The text with another value for a key at the top."""
    known = tuple(key.name for key in TOP.keys)
    if name not in known:
        raise DescriptionError([Problem(name, typed, one_of(name, known))])
    spot = find_positions(text).spots[(name,)]
    value, rest = quoted(typed), text[spot.end :]
    if comment := re.match(" +(?=#)", rest):  # which stays in its column
        rest = " " * max(1, spot.end - spot.start + comment.end() - len(value)) + rest[comment.end() :]
    return text[: spot.start] + value + rest


def _blank(units: Units) -> str:
    """Every key of every table: required ones set to an example, the others commented out."""
    lines = [f"#:schema {SCHEMA_FILE}"]
    for table in TABLES:
        live = table is TOP
        named = [f"[{table.name}]", f"# {table.example}"]
        headers = {"top": [], "table": named[:1], "array": [f"# [[{table.name}]]"], "named": named}
        header = headers[table.shape]
        keys = (_line(key, units, live and key.unless != "none") for key in table.keys)
        lines += [f"# {table.help}", *header, *keys, ""]
    return "\n".join(lines)


def _line(key: Key, units: Units, live: bool) -> str:
    """One key with its comment; `live` ones at the top stand without the comment sign."""
    usual = key.usual(units)
    typed = key.example[units == "mm"] if usual is None else key.kind.typed(usual, units)
    if key.name == "units":
        typed = units
    note = f" (unless set: {key.unless})" if key.unless else ""
    items = [quoted(spelled(item.strip())) for item in typed.split(",")]
    value = f"[{', '.join(items)}]" if isinstance(key.kind, Lengths) else quoted(spelled(typed))
    return f"{'' if live else '# '}{key.name} = {value}".ljust(34) + f" # {key.help}{note}"


def _without_openings(text: str) -> str:
    """The text up to its first opening; starters have them last."""
    return re.split(rf"(?m)^\[\[{OPENING.name}\]\]", text)[0].rstrip() + "\n"
