"""What a steel section may measure, said so that the person can mend it.

unit, throughout: "in" or "mm", the one the person typed and is answered in.
"""

from __future__ import annotations

from collections.abc import Callable
from math import ceil, floor, radians, sin, tan

from ..units import INCH, Unreadable
from .shapes import SectionShape

LARGEST = 60 * INCH
"""mm: no section is deeper or wider (ours)."""
THINNEST = 0.25
"""mm: nothing thinner is steel framing (ours)."""
SHORTEST_FLAT = 0.1
"""mm: what bends must leave of every leg (ours)."""


def check_sizes(shape: SectionShape, unit: str) -> None:
    """Raises Unreadable for sizes that no section has."""
    largest, smallest = max(shape.depth, shape.breadth), min(shape.depth, shape.breadth)
    if largest > LARGEST:
        raise Unreadable(f"a {shape.shape} of at most {_down(LARGEST, unit)}")
    if shape.thickness < THINNEST:
        raise Unreadable(f"a {shape.shape} at least {_up(THINNEST, unit)} thick")
    if shape.shape == "plate":
        if shape.depth < shape.thickness:
            raise Unreadable('a plate\'s width first, then its thickness, such as "plate 8x0.375"')
        return
    if shape.shape == "rod":
        return
    share = 4 if shape.shape == "tube" else 2
    if shape.thickness * share >= smallest - SHORTEST_FLAT:
        why = ", since its corners are rounded to twice the wall" if share == 4 else ""
        most = _down((smallest - SHORTEST_FLAT) / share, unit)
        raise Unreadable(f"a {shape.shape} less than {most} thick{why}")


def check_bends(shape: SectionShape, unit: str) -> None:
    """Raises Unreadable for lips, angles and radii that do not fit the sizes."""
    least = {"zee": 30.0, "hat": 45.0}.get(shape.shape)
    if least and not least <= shape.angle <= 90:
        raise Unreadable(f"a {shape.shape}'s angle of {least:g} to 90 degrees")
    if shape.shape == "angle":
        room = min(shape.depth, shape.breadth) - shape.thickness - SHORTEST_FLAT
        if shape.radius > room:
            raise Unreadable(f"a radius of at most {_down(room, unit)} inside this angle")
    if shape.wider > shape.breadth:
        raise Unreadable(
            f"an upper flange wider by at most {_down(shape.breadth, unit)}, as the other is wide"
        )
    if 2 * shape.lip > shape.depth - SHORTEST_FLAT:
        most = _down((shape.depth - SHORTEST_FLAT) / 2, unit)
        raise Unreadable(f"lips of at most {most}, so that they leave a gap")
    for leg, size, taken in _legs(shape):
        if size < taken + SHORTEST_FLAT - 1e-9:
            enough = _up(taken + SHORTEST_FLAT, unit)
            bend = f"{shape.radius:.4g} mm" if unit == "mm" else f"{shape.radius / INCH:.4g} in"
            raise Unreadable(f"a {leg} of at least {enough} for bends of radius {bend}, or a smaller radius")


def _legs(shape: SectionShape) -> list[tuple[str, float, float]]:
    """Of each leg of a folded shape: its name, its size, and what of that its bends take (mm)."""
    inside, outside = shape.radius, shape.radius + shape.thickness
    slant = tan(radians(shape.angle) / 2)
    if shape.shape == "hat":
        rise = sin(radians(shape.angle)) * slant * (inside + outside)
        return [
            ("flange", shape.flange, inside * slant),
            ("crown", shape.breadth, 2 * outside * slant),
            ("depth", shape.depth, shape.thickness + rise),
        ]
    if shape.shape in ("cee", "zee"):
        lip = [("lip", shape.lip, outside * slant)] if shape.lip else []
        flange = outside + outside * slant if lip else outside
        return [*lip, ("flange", shape.breadth, flange), ("depth", shape.depth, 2 * outside)]
    return []


def _up(mm: float, unit: str, rounded: Callable[[float], int] = ceil) -> str:
    """A limit for people, rounded so that the figure shown will do: to 0.01 mm or 0.001 in."""
    if unit == "mm":
        return f"{rounded(round(mm * 100, 6)) / 100:.10g} mm"
    return f"{rounded(round(mm / INCH * 1000, 6)) / 1000:.10g} in"


def _down(mm: float, unit: str) -> str:
    return _up(mm, unit, floor)
