"""What a page of an elevation tells by its texts and lines alone: rows of distances, where sheets go."""

from __future__ import annotations

import re
from bisect import bisect_left
from dataclasses import dataclass
from math import hypot

from ribwright.units import Unreadable, parse_length
from shapely.geometry import Point
from support.read_pdf import Read, Written

NEAR = 2.0  # mm on paper
UNDER = 3.0  # mm on paper from a mark to its number
MARK = re.compile(r"([WR]L?\d+)(↓?)(?: #(\d+))?$")
NUMBER = re.compile(r"#(\d+)$")


def rows(read: Read) -> tuple[list[Written], list[Written]]:
    """The upright texts that are lengths, below and above the drawing, from left to right."""
    found = [one for one in read.texts if abs(one.turn - 90) < 0.1 and is_length(one.text)]
    middle = (min(one.ink.bounds[1] for one in found) + max(one.ink.bounds[3] for one in found)) / 2
    parts: tuple[list[Written], list[Written]] = ([], [])
    for one in sorted(found, key=lambda text: text.ink.centroid.x):
        parts[one.ink.centroid.y > middle].append(one)
    return parts


def length(text: str) -> float:
    """mm of a length as pages say it."""
    return float(text) if text.isdigit() else parse_length(text)


def is_length(text: str) -> bool:
    try:
        length(text)
    except Unreadable:
        return False
    return True


@dataclass(frozen=True)
class Laid:
    """A sheet as the page tells: number, mark, turned or not, where its rib and leading edge are (mm)."""

    number: int | None
    mark: str
    turned: bool
    rib: float
    edge: float
    metric: bool = False


def station(read: Read, text: Written) -> float:
    """x on paper of the place that a text's leader leads to: the far end of the line that starts at it."""
    best, place = 1e9, 0.0
    for line, _ in read.lines:
        first, last = line.coords[0], line.coords[-1]
        for near, far in ((first, last), (last, first)):
            box = text.ink.distance(Point(near))
            if box < min(best, NEAR) and hypot(far[0] - near[0], far[1] - near[1]) > NEAR:
                best, place = box, far[0]
    assert best < NEAR, f"no leader at {text.text}"
    return place


def rebuilt(read: Read, start: str) -> list[Laid]:
    """The sheets of a wall, from the page alone: a mark belongs to the leading edge that is next to it in
    the direction of the run, and to the overlap rib that is next on the side that lies on its neighbour."""
    below, above = rows(read)
    metric = all(one.text.isdigit() for one in below)
    edges = sorted((station(read, one), length(one.text)) for one in above)
    ribs = sorted((station(read, one), length(one.text)) for one in below)
    zero = next(station(read, one) for one in (*below, *above) if one.text == "0")
    xs = [x for x, _ in edges]
    side = -1 if any("the right sheet is on top" in one.text for one in read.texts) else 1
    found = []
    for one in read.texts:
        said = MARK.match(one.text)
        if not said:
            continue
        x = one.ink.centroid.x
        outward = {"left": 1, "right": -1}.get(start) or (1 if x > zero else -1)
        i = bisect_left(xs, x)
        edge = edges[i] if outward > 0 else edges[i - 1]
        lapped = [rib for rib in ribs if (rib[0] - x) * side > 0]
        rib = min(lapped, key=lambda rib: rib[0] * side)
        found.append(Laid(_number(read, one, said[3]), said[1], bool(said[2]), rib[1], edge[1], metric))
    return found


def _number(read: Read, mark: Written, beside: str | None) -> int | None:
    """The number of laying beside a mark, or next to it; None where there was room for the mark alone."""
    if beside:
        return int(beside)
    others = ((one.ink.distance(mark.ink), said[1]) for one in read.texts if (said := NUMBER.match(one.text)))
    return next((int(number) for far, number in sorted(others) if far < UNDER), None)


def heights(read: Read) -> list[float]:
    """The heights of a drawing's screw lines, from below (mm): level texts between its rows."""
    below, above = rows(read)
    low, high = (one[0].ink.bounds for one in (below, above))
    band = [one for one in read.texts if low[3] < one.ink.centroid.y < high[1] and abs(one.turn) < 0.1]
    return sorted(length(one.text) for one in band if is_length(one.text))


def listed(read: Read) -> list[tuple[int, str, bool]]:
    """Number and mark of the sheets that had no room on the drawing, and whether they are turned."""
    text = " ".join(one.text for one in read.texts)
    without = re.search(r"No room on the drawing for: ([^.]*)\.", text)
    found = re.findall(r"([WR]L?\d+)(↓?) #(\d+)", without[1] if without else "")
    return [(int(number), mark, bool(turned)) for mark, turned, number in found]
