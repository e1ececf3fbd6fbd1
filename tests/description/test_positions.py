"""Where keys and values stand, in a text that has a bit of everything TOML allows."""

from __future__ import annotations

import tomllib
from typing import Any

import pytest
from ribwright.description.reading.positions import Path, find_positions

TEXT = '''# a comment = "not a key"
name = "barn" # 'after'
  indented   =   'literal # not a comment'
"quoted key" = 1
'single.quoted' = 2
a.b.c = 3
a . "d" = 4
when = 1979-05-27 07:32:00 # a date
many = """
first ] = [
second \\""" still """
raw = \'\'\'
it's [here]\'\'\'\'
lengths = [
  "1 ft", # one
  ["2 ft", "3 ft"],

  {x = 4, y = [5]},
]
point = { x = 1.5, "y z" = { deep = true }, list = [] }

[ sheets ]
gauge = 29
[slab . ledge]
depth = "1 in"
[[opening]]
width = "3 ft"

[[opening]]
width = "4 ft"
kind = "window"
[opening.frame]
size = "2 in"
[[opening.hinge]]
side = "left"
[[opening.hinge]]
side = "right"
[[opening]]
width = "5 ft"
[[opening.hinge]]
side = "top"
'''


def leaves(value: Any, path: Path = ()) -> list[tuple[Path, Any]]:
    """Every value that is no table and no list, with its path."""
    items: list[tuple[str | int, Any]]
    if isinstance(value, dict):
        items = list(value.items())
    elif isinstance(value, list):
        items = list(enumerate(value))
    else:
        return [(path, value)]
    return [leaf for key, inner in items for leaf in leaves(inner, (*path, key))]


def test_every_value_is_found_and_reads_the_same_there() -> None:
    positions = find_positions(TEXT)
    values = leaves(tomllib.loads(TEXT))
    assert len(values) == 26
    for path, value in values:
        assert tomllib.loads(f"k = {positions.source(path)}")["k"] == value, path


@pytest.mark.parametrize(
    ("path", "key", "value"),
    [
        (("name",), (2, 1), (2, 8)),
        (("indented",), (3, 3), (3, 18)),
        (("quoted key",), (4, 1), (4, 16)),
        (("single.quoted",), (5, 1), (5, 19)),
        (("a",), (6, 1), (6, 1)),
        (("a", "b"), (6, 1), (6, 1)),
        (("a", "b", "c"), (6, 1), (6, 9)),
        (("a", "d"), (7, 1), (7, 11)),
        (("when",), (8, 1), (8, 8)),
        (("many",), (9, 1), (9, 8)),
        (("raw",), (12, 1), (12, 7)),
        (("lengths",), (14, 1), (14, 11)),
        (("lengths", 0), (15, 3), (15, 3)),
        (("lengths", 1, 1), (16, 12), (16, 12)),
        (("lengths", 2, "x"), (18, 4), (18, 8)),
        (("lengths", 2, "y", 0), (18, 16), (18, 16)),
        (("point", "x"), (20, 11), (20, 15)),
        (("point", "y z", "deep"), (20, 30), (20, 37)),
        (("point", "list"), (20, 45), (20, 52)),
        (("sheets",), (22, 1), (22, 1)),
        (("sheets", "gauge"), (23, 1), (23, 9)),
        (("slab", "ledge", "depth"), (25, 1), (25, 9)),
        (("opening", 0), (26, 1), (26, 1)),
        (("opening", 0, "width"), (27, 1), (27, 9)),
        (("opening", 1, "kind"), (31, 1), (31, 8)),
        (("opening", 1, "frame", "size"), (33, 1), (33, 8)),
        (("opening", 1, "hinge", 0, "side"), (35, 1), (35, 8)),
        (("opening", 1, "hinge", 1, "side"), (37, 1), (37, 8)),
        (("opening", 2, "width"), (39, 1), (39, 9)),
        (("opening", 2, "hinge", 0, "side"), (41, 1), (41, 8)),
    ],
)
def test_lines_and_columns(path: Path, key: tuple[int, int], value: tuple[int, int]) -> None:
    positions = find_positions(TEXT)
    spot = positions.spots[path]
    assert positions.line_column(spot.key) == key
    assert positions.line_column(spot.start) == value


def test_a_text_without_keys() -> None:
    assert find_positions("").spots == {}
    assert find_positions("# nothing\n\n").spots == {}
    assert find_positions("").source(("x",)) == ""


def test_columns_count_characters() -> None:
    positions = find_positions('"\u00fc\u00e4" = "\U0001f3e0"')
    assert positions.line_column(positions.spots[("\u00fc\u00e4",)].start) == (1, 8)
