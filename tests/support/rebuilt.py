"""A sheet rebuilt from its cut sheet as a crew reads it: numbers joined to corners by lines on paper."""

from __future__ import annotations

from dataclasses import replace

import shapely
from ribwright.units import parse_length
from shapely.geometry import LineString, Point
from support.read_pdf import Read, Written

THICK = 0.45  # mm; outlines are drawn thicker than this
AT = 0.12  # mm; what stands so near on paper is at one place
EXACT = 0.07  # mm; a leader starts so near to what it is of: of two that read alike the first stands for both
GAP = 1.0  # mm from a corner to its extension or leader line
NEAR = 1.8  # mm from the end of a line to the number it leads to


class NotSaid(LookupError):
    """A corner that no number is joined to."""


def card(page: Read, mark: str) -> Read:
    """What stands on one card: between the lines over and under it, and on its side of one beside it."""
    (title,) = [one for one in page.texts if one.text == mark]
    x, y = title.start
    wide, high = page.size
    flat = [line.bounds for line, _ in page.lines if line.length > wide * 0.8]
    rules = [bottom for _, bottom, _, top in flat if top - bottom < AT]
    upright = [line.bounds for line, _ in page.lines if abs(line.bounds[0] - wide / 2) < AT]
    walls = [wide / 2 for left, bottom, right, top in upright if right - left < AT and bottom < y < top]
    area = shapely.box(
        max((wall for wall in walls if wall < x), default=0.0),
        max((rule for rule in rules if rule < y), default=0.0) + AT,
        min((wall for wall in walls if wall > x), default=wide),
        min((rule for rule in rules if rule > y + 1), default=high) - AT,
    )
    return replace(
        page,
        texts=tuple(one for one in page.texts if area.contains(one.ink)),
        lines=tuple((line, width) for line, width in page.lines if area.contains(line)),
    )


def outline(drawn: Read) -> tuple[list[list[tuple[float, float]]], list[Written]]:
    """The rings of a sheet (mm): across from its upper edge, along from its foot; and the numbers read."""
    rings = [line for line, width in drawn.lines if _closes(line, width)]
    corners = [[(float(x), float(y)) for x, y in list(ring.coords)] for ring in rings]
    foot = min(x for ring in corners for x, _ in ring)
    read: list[Written] = []
    found = []
    for ring in corners:
        places = ring[:-1] if ring[0] == ring[-1] else ring
        found.append([(_across(drawn, foot, y, read), _along(drawn, foot, x, y, read)) for x, y in places])
    return found, read


def _closes(line: LineString, width: float) -> bool:
    return width > THICK and bool(line.is_ring)


def _across(drawn: Read, foot: float, y: float, read: list[Written]) -> float:
    return _led(drawn, (foot - GAP, y), read)


def _along(drawn: Read, foot: float, x: float, y: float, read: list[Written]) -> float:
    """By a leader under the sheet, or the dimension of the edge that the corner is on."""
    if abs(x - foot) < AT:
        return 0.0
    for sign in (1, -1):
        start = Point(x, y + sign * GAP)
        for line, _ in drawn.lines:
            if len(line.coords) == 2 and start.distance(Point(line.coords[0])) < AT and _upright(line):
                level = line.coords[1][1] - sign * 1.5
                for one in _level(drawn, level, foot, x):
                    read.append(one)
                    return parse(one.text)
    lows = sorted(
        {
            line.coords[0][1]
            for line, _ in drawn.lines
            if abs(line.coords[0][0] - x) < AT and line.coords[0][1] < y
        }
    )
    for low in reversed(lows):
        try:
            return _led(drawn, (x, low), read)
        except NotSaid:
            continue
    raise NotSaid(f"no number along for the corner at {x:.1f}, {y:.1f}")


def _upright(line: LineString) -> bool:
    (a, _), (b, _) = line.coords[0], line.coords[1]
    return abs(a - b) < AT


def _level(drawn: Read, level: float, foot: float, x: float) -> list[Written]:
    """The number over the dimension line at a height, from the foot to the corner."""
    spans = [
        line
        for line, _ in drawn.lines
        if len(line.coords) == 2
        and max(abs(p[1] - level) for p in line.coords) < 2 * AT
        and abs(min(p[0] for p in line.coords) - foot) < AT
        and abs(max(p[0] for p in line.coords) - x) < AT
    ]
    if not spans:
        stub = Point(x + 6.0, level)  # the number does not fit between: it stands beyond the end
        ends = [line for line, _ in drawn.lines if Point(line.coords[-1]).distance(stub) < AT]
        return [one for one in drawn.texts if ends and one.ink.distance(stub) < NEAR and _is_length(one.text)]
    box = shapely.box(foot, level, x, level + 5)
    return [
        one
        for one in drawn.texts
        if box.contains(one.ink) and one.text[:1].isdigit() and _is_length(one.text)
    ]


def _led(drawn: Read, start: tuple[float, float], read: list[Written]) -> float:
    """The number at the other end of the leader that starts at a place."""
    at = Point(start)
    leaders = sorted(
        (Point(line.coords[0]).distance(at), number) for number, (line, _) in enumerate(drawn.lines)
    )
    for far, number in leaders:
        if far > EXACT:
            break
        last = Point(drawn.lines[number][0].coords[-1])
        near = [
            one
            for one in drawn.texts
            if not one.patched and one.ink.distance(last) < NEAR and _is_length(one.text)
        ]
        if near:
            one = min(near, key=lambda one: one.ink.distance(last))
            read.append(one)
            return parse(one.text)
    raise NotSaid(f"no number at the leader from {start}")


def _is_length(text: str) -> bool:
    try:
        parse(text)
    except ValueError:
        return False
    return True


def parse(text: str) -> float:
    """A length as papers say it, mm."""
    return float(text) if text.isdigit() and text != "0" else parse_length(text)
