"""Where the screws of a face stand already."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator

from ...place import Point2

STRIP = 304.8
"""mm of a face's width: of a long wall's thousands of screws those of few strips are near a place."""


class Taken:
    """The places (u, v) of a face's screws, strip by strip of its width."""

    def __init__(self, places: Iterable[Point2] = ()) -> None:
        self._strips: defaultdict[int, list[Point2]] = defaultdict(list)
        for place in places:
            self.add(place)

    def add(self, place: Point2) -> None:
        """A screw more."""
        self._strips[int(place[0] // STRIP)].append(place)

    def between(self, left: float, right: float) -> Iterator[Point2]:
        """Those from left to right."""
        for strip in range(int(left // STRIP), int(right // STRIP) + 1):
            for place in self._strips.get(strip, ()):
                if left <= place[0] <= right:
                    yield place

    def holds(self, across: Point2, up: Point2) -> bool:
        """Whether one stands within spans of u and of v."""
        return any(up[0] < v < up[1] for _, v in self.between(*across))
