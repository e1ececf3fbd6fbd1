"""Terms: what was asked of a building and no solid can show. Limits to compare with, never measurements."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, fields

from .place import Point3

Asked = tuple[tuple[Point3, str], ...]


@dataclass(frozen=True, slots=True)
class Terms:
    """What was asked (mm); None, or empty, for what was not.

    overhang: of the roof past the eave's steel line, in plan. trim_lap: the least of pieces on a longer
    run. stock: the length that trim comes in. kerf: lost at every cut. wind: the way it mostly comes
    from, as a direction. overlap: for the outward normal of each face, the side ("left" or "right" of
    someone outside) that its sheets' overlap ribs are on.
    """

    overhang: float | None = None
    trim_lap: float | None = None
    stock: float | None = None
    kerf: float | None = None
    wind: Point3 | None = None
    overlap: Asked = ()


def spelled(terms: Terms) -> Iterator[tuple[str, str]]:
    """The terms that were asked, as names and texts that `read_terms` reads back without loss."""
    for name in (field.name for field in fields(Terms)):
        value = getattr(terms, name)
        if name == "overlap" and value:
            yield name, "; ".join(f"{_point(normal)} {side}" for normal, side in value)
        elif name == "wind" and value:
            yield name, _point(value)
        elif value is not None and name not in ("overlap", "wind"):
            yield name, repr(value)


def read_terms(texts: Mapping[str, str]) -> Terms:
    """The terms behind names and texts; names that are none are left aside. Raises ValueError."""
    single = {name: float(texts[name]) for name in ("overhang", "trim_lap", "stock", "kerf") if name in texts}
    sides = (one.rsplit(" ", 1) for one in texts.get("overlap", "").split("; ") if one)
    return Terms(
        **single,
        wind=_read_point(texts["wind"]) if "wind" in texts else None,
        overlap=tuple((_read_point(normal), side) for normal, side in sides),
    )


def _point(point: Point3) -> str:
    return " ".join(repr(value) for value in point)


def _read_point(text: str) -> Point3:
    x, y, z = (float(value) for value in text.split(" "))
    return (x, y, z)
