"""Bend sketches as SVG: each trim's section by its measured corners, its legs, angles and girth beside it."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from math import hypot
from xml.sax.saxutils import escape

from ...heading import job, short, units_said
from ...place import Point2
from ...units import Units, format_length, format_pitch
from ..buying.order_list import Order
from ..buying.stock_line import StockLine
from .bend_text import bend_text

ACROSS, CELL = 3, (330.0, 250.0)  # sketches in a row; the room of one, px
ROOM = 130.0  # px of a cell that the longest side of a section is drawn in
HEAD = 78.0  # px
PAINT = 5.0  # px of the dashed line off the painted side
FONT = 'font-family="sans-serif" font-size="11"'


def bends_svg(order: Order, pitch: float) -> str:
    """A page of sketches, one a kind of trim, all to scales of their own. pitch: of the roof, degrees."""
    units: Units = "mm" if order.units == "mm" else "ft-in"
    trims = [trim for trim in order.trims if trim.first.bends]
    rows = -(-len(trims) // ACROSS)
    width, height = ACROSS * CELL[0], HEAD + rows * CELL[1]
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:g}" height="{height:g}" '
        f'viewBox="0 0 {width:g} {height:g}">',
        f'<rect width="{width:g}" height="{height:g}" fill="white"/>',
    ]
    over = f"Bends: {job(order.name, order.terms)}; roof {format_pitch(pitch, units)}; dashed: painted side"
    for number, text in enumerate((over, units_said(units), short(braced=order.braced))):
        lines.append(_text((12.0, 20.0 + 18 * number), text))
    for number, trim in enumerate(trims):
        corner = (number % ACROSS * CELL[0], HEAD + number // ACROSS * CELL[1])
        lines += _sketch(trim, corner, units)
    return "\n".join([*lines, "</svg>"]) + "\n"


def _sketch(trim: StockLine, corner: Point2, units: Units) -> Iterator[str]:
    bends = trim.first.bends
    if bends is None:
        return
    line = bends.line
    left, low = min(x for x, _ in line), min(y for _, y in line)
    size = max(max(x for x, _ in line) - left, max(y for _, y in line) - low)
    scale, at = ROOM / size, (corner[0] + 60.0, corner[1] + 30.0)
    points = [(at[0] + (x - left) * scale, at[1] + ROOM - (y - low) * scale) for x, y in line]
    drawn = " ".join(f"{x:.1f},{y:.1f}" for x, y in points)
    yield f'<polyline points="{drawn}" fill="none" stroke="black" stroke-width="2"/>'
    if trim.first.painted:
        yield _paint(points, bends.outward if trim.first.painted == "outside" else -bends.outward)
    for (ax, ay), (bx, by), leg in zip(points, points[1:], bends.legs, strict=False):
        away = 14 / max(hypot(bx - ax, by - ay), 1e-9)
        spot = ((ax + bx) / 2 + (by - ay) * away, (ay + by) / 2 - (bx - ax) * away)
        yield _text(spot, format_length(leg, units), "middle")
    for (x, y), angle in zip(points[1:], bends.angles, strict=False):
        yield _text((x + 6, y - 6), f"{angle:.0f}\u00b0")
    words = (trim.line.item, bend_text(trim.first, units), f"marks {' '.join(trim.line.marks)}"[:60])
    for number, text in enumerate(words):
        yield _text((corner[0] + 12.0, corner[1] + ROOM + 62.0 + 15 * number), text)


def _paint(points: list[Point2], side: float) -> str:
    """A dashed line along the painted side. side: 1 to the right of the line, as it is measured."""
    found = []
    for (ax, ay), (bx, by) in pairwise(points):
        away = side * PAINT / max(hypot(bx - ax, by - ay), 1e-9)
        dx, dy = -(by - ay) * away, (bx - ax) * away
        found.append(f"M{ax + dx:.1f},{ay + dy:.1f} L{bx + dx:.1f},{by + dy:.1f}")
    return f'<path d="{" ".join(found)}" stroke="firebrick" stroke-dasharray="4 3" fill="none"/>'


def _text(at: Point2, text: str, anchor: str = "start") -> str:
    return f'<text x="{at[0]:.1f}" y="{at[1]:.1f}" text-anchor="{anchor}" {FONT}>{escape(text)}</text>'
