"""Descriptions of random buildings, for hypothesis: over every key there is, each at both ends of its range
and between, a few at a time on a small building; openings of every kind, as many as fit."""

from __future__ import annotations

import json

from hypothesis import assume
from hypothesis import strategies as st
from ribwright.catalog.gauges import gauges
from ribwright.catalog.profiles import profiles
from ribwright.description import parse
from ribwright.description.building import Building
from ribwright.description.keys.catalogued import Colour, GaugeNumber, Posts, Profile, Steel
from ribwright.description.keys.key import Key
from ribwright.description.keys.tables import KINDS, OPENING, TABLES, TOP
from ribwright.description.keys.value_kinds import Choice, Kind, Length, Lengths, Name, Pitch
from ribwright.errors import DescriptionError
from ribwright.units import INCH, parse_length

PITCHES = ["0.5/12", "1/12", "2/12", "4/12", "6/12", "9/12", "12/12", "18/12", "10 deg", "22.5 deg"]
SIZES = ["2x1.5", "3x2", "3.5x2", "4x2", "4x4", "5x3", "6x2", "6x2.5", "6x4", "8x2.5"]
THICKNESS = {"tube": "0.120", "angle": "0.075", "hat": "0.0346"}
WHOLE_BUILDING = ("width", "length", "eave_height", "pitch")


def inches(low: float, high: float) -> st.SearchStrategy[str]:
    """A length between two numbers of inches, on sixteenths."""
    return st.integers(round(low * 16), round(high * 16)).map(lambda n: f"{n / 16} in")


def steel(kind: Steel) -> st.SearchStrategy[str]:
    """A section of one of the shapes."""
    made = st.tuples(st.sampled_from(kind.shapes), st.sampled_from(SIZES)).map(
        lambda one: f"{one[0]} {one[1]}x{THICKNESS.get(one[0], '0.059')}"
    )
    return st.one_of(st.just("none"), made) if kind.none else made


def lengths(key: Key, kind: Length) -> st.SearchStrategy[str]:
    """Both ends of a key's range, and what lies about its default or low in the range."""
    low, high = parse_length(kind.low) / INCH, parse_length(kind.high) / INCH
    about = parse_length(key.default) / INCH if key.default else 0.0
    about = about or low + (high - low) / 10
    near = st.floats(max(low, about / 2), min(high, about * 2)).map(lambda x: f"{x:.3f} in")
    return st.one_of(near, st.sampled_from([kind.low, kind.high]), near)


def values(key: Key, kind: Kind, width: int, length: int, eave: int) -> st.SearchStrategy[object]:  # noqa: PLR0911  # one a kind
    """Values for a key of a building of that many inches."""
    match kind:
        case Steel():
            return steel(kind)
        case Posts():
            third = st.just([f"{width / 3:.4f} in", f"{2 * width / 3:.4f} in"])
            return st.one_of(st.sampled_from(["none", "centre"]), third)
        case Lengths() if key.name == "bays":
            return st.just([f"{length / 2} in", f"{length / 2} in"])
        case Lengths():
            return st.lists(inches(8, eave - 12), min_size=1, max_size=3)
        case Length():
            return lengths(key, kind)
        case Choice():
            return st.sampled_from(kind.words)
        case Pitch():
            return st.sampled_from(PITCHES)
        case Colour():
            return st.sampled_from(["gainsboro", "firebrick", "#102030"])
        case Profile():
            return st.sampled_from(list(profiles()))
        case GaugeNumber():
            return st.sampled_from(list(gauges()))
        case Name():
            return st.just("a name")
    raise AssertionError(f"no random values for {key.name}")


@st.composite
def openings(draw: st.DrawFn, width: int, length: int, eave: int) -> list[str]:
    """Up to three openings that may or may not fit, of any kind in any wall."""
    found = []
    for _ in range(draw(st.integers(0, 3))):
        wall = draw(st.sampled_from(["front", "back", "left", "right"]))
        along = width if wall in ("front", "back") else length
        kind = draw(st.sampled_from(KINDS))
        wide = draw(st.integers(14, max(15, along // 4)))
        high = draw(st.booleans()) if kind == "framed opening" else kind == "window"
        opening = {
            "kind": kind,
            "wall": wall,
            "width": f"{wide} in",
            "height": draw(inches(8, eave / 3) if high else inches(24, eave - 14)),
            "from_left": draw(inches(8, along - wide - 8)),
        }
        if high:
            opening["sill"] = draw(inches(6, eave / 2))
        found.append(f"[[{OPENING.name}]]\n" + _lines(opening))
    return found


@st.composite
def descriptions(draw: st.DrawFn) -> tuple[str, list[str]]:
    """A description without openings, and openings that may be added to it."""
    width, length = draw(st.integers(8, 24)) * 12, draw(st.integers(8, 30)) * 12
    eave = draw(st.integers(80, 144))
    top: dict[str, object] = {"width": f"{width} in", "length": f"{length} in", "eave_height": f"{eave} in"}
    top["pitch"] = draw(st.sampled_from(["3/12", "3/12", *PITCHES]))
    every = [(t.name, key) for t in TABLES if t is not OPENING for key in t.keys]
    free = [(name, key) for name, key in every if key.name not in WHOLE_BUILDING]
    chosen = draw(st.lists(st.sampled_from(free), min_size=0, max_size=4, unique_by=lambda one: one[1]))
    tables: dict[str, dict[str, object]] = {TOP.name: top}
    for name, key in chosen:
        if (name, key.name) == ("sheets", "thickness") and "gauge" in tables.get("sheets", {}):
            continue
        tables.setdefault(name, {})[key.name] = draw(values(key, key.kind, width, length, eave))
    text = _lines(tables.pop(TOP.name))
    text += "".join(f"[{name}]\n{_lines(table)}" for name, table in tables.items())
    return text, draw(openings(width, length, eave))


@st.composite
def buildings(draw: st.DrawFn) -> Building:
    """A building that can be built, with as many of its openings as fit."""
    text, more = draw(descriptions())
    built = parsed(text)
    assume(built is not None)
    for opening in more:
        if (larger := parsed(text + opening)) is not None:
            built, text = larger, text + opening
    assert built is not None
    return built


def parsed(text: str) -> Building | None:
    """The building of a description; None where it is refused."""
    try:
        return parse(text, "random")
    except DescriptionError:
        return None


def _lines(table: dict[str, object] | dict[str, str]) -> str:
    return "".join(f"{key} = {json.dumps(value)}\n" for key, value in table.items())
