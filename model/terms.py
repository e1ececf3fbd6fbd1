"""Terms: what was asked of a building and no solid can show. Limits to compare with, never measurements."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, fields
from typing import Any

from .place import Point3

Asked = tuple[tuple[Point3, str], ...]
Sticks = tuple[tuple[str, tuple[float, ...]], ...]


@dataclass(frozen=True, slots=True)
class Terms:
    """What was asked (mm); None, or empty, for what was not.

    overhang: of the roof past the eave's steel line, in plan. trim_lap: the least of pieces on a longer run.
    step: of the lengths that sheets come in. end_lap: the least of sheets up a face. roll: how wide blankets
    come; longer: how much longer each is bought than it is drawn. stock: for the role of
    each trim, and of members that come in their own, the lengths that it comes in. kerf: lost at every cut.
    steel, steel_kerf: the same of all other members. wind: the way it mostly comes from, as a direction.
    eave_lap: towards which end of the building each piece of an eave trim lies on the next, as a direction.
    overlap: for the outward normal of each face, the side ("left" or "right" of someone outside) that its
    sheets' overlap ribs are on. bare: the outward normals of faces that are to stand without sheets. start:
    as overlap, where its sheets start: "left", "right" or "centre". address, date: of the job, as typed.
    pairs: "cut" where two sheets may come as one blank. mesh: what lies in the slab, as typed.
    shortest: sheet that a mill makes.
    """

    overhang: float | None = None
    trim_lap: float | None = None
    step: float | None = None
    end_lap: float | None = None
    roll: float | None = None
    longer: float | None = None
    stock: Sticks = ()
    kerf: float | None = None
    steel: tuple[float, ...] = ()
    steel_kerf: float | None = None
    wind: Point3 | None = None
    eave_lap: Point3 | None = None
    overlap: Asked = ()
    bare: tuple[Point3, ...] = ()
    start: Asked = ()
    address: str = ""
    date: str = ""
    pairs: str = ""
    mesh: str = ""
    shortest: float | None = None


DIRECTIONS = ("wind", "eave_lap")
BETWEEN = "; "
LENGTHS = ("overhang", "trim_lap", "step", "end_lap", "roll", "longer", "kerf", "steel_kerf", "shortest")
BY_FACE, TEXTS = ("overlap", "start"), ("address", "date", "pairs", "mesh")


def spelled(terms: Terms) -> Iterator[tuple[str, str]]:
    """The terms that were asked, as names and texts that `read_terms` reads back without loss."""
    for name in (field.name for field in fields(Terms)):
        value = getattr(terms, name)
        if name in LENGTHS and value is not None:
            yield name, repr(value)
        elif name in DIRECTIONS and value is not None:
            yield name, _point(value)
        elif name in TEXTS and value:
            yield name, value
        elif name in BY_FACE and value:
            yield name, BETWEEN.join(f"{_point(normal)} {side}" for normal, side in value)
        elif name == "stock" and value:
            yield name, BETWEEN.join(f"{role}: {' '.join(map(repr, sticks))}" for role, sticks in value)
        elif name == "steel" and value:
            yield name, BETWEEN.join(map(repr, value))
        elif name == "bare" and value:
            yield name, BETWEEN.join(map(_point, value))


def read_terms(texts: Mapping[str, str]) -> Terms:
    """The terms behind names and texts; names that are none are left aside. Raises ValueError."""
    single: dict[str, Any] = {name: float(texts[name]) for name in LENGTHS if name in texts}
    single |= {name: _read_point(texts[name]) for name in DIRECTIONS if name in texts}
    single |= {name: texts[name] for name in TEXTS if name in texts}
    single |= {name: tuple(_read_sides(texts, name)) for name in BY_FACE}
    return Terms(
        **single,
        stock=tuple(_read_sticks(texts)),
        steel=tuple(map(float, _several(texts, "steel"))),
        bare=tuple(map(_read_point, _several(texts, "bare"))),
    )


def _read_sides(texts: Mapping[str, str], name: str) -> Iterator[tuple[Point3, str]]:
    for normal, side in (one.rsplit(" ", 1) for one in _several(texts, name)):
        yield _read_point(normal), side


def _read_sticks(texts: Mapping[str, str]) -> Iterator[tuple[str, tuple[float, ...]]]:
    for role, sticks in (one.split(": ") for one in _several(texts, "stock")):
        yield role, tuple(map(float, sticks.split(" ")))


def _several(texts: Mapping[str, str], name: str) -> list[str]:
    return [one for one in texts.get(name, "").split(BETWEEN) if one]


def _point(point: Point3) -> str:
    return " ".join(repr(value) for value in point)


def _read_point(text: str) -> Point3:
    x, y, z = (float(value) for value in text.split(" "))
    return (x, y, z)
