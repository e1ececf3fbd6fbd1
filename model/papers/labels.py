"""Where texts may stand: each takes the first place where it meets no other, or none."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from math import cos, radians, sin

import shapely
from shapely.geometry import Polygon

from ..drawing.dimensions import Word, words
from ..drawing.font import BELOW, size_of, width
from ..drawing.ink import word
from ..drawing.pens import Style
from ..drawing.values import Dimension, RunningDimension, Shape, Text, View

CLEAR = 0.5
"""mm on paper that texts stay apart."""


def box_of(one: Word) -> Polygon:
    """What a word takes on paper, letters that reach below the line too."""
    long, below = width(one.text, one.height), BELOW * size_of(one.height)
    left = {"left": 0.0, "middle": -long / 2, "right": -long}[one.anchor]
    (x, y), (c, s) = one.at, (cos(radians(one.turn)), sin(radians(one.turn)))
    corners = ((left, -below), (left + long, -below), (left + long, one.height), (left, one.height))
    return Polygon([(x + a * c - b * s, y + a * s + b * c) for a, b in corners])


@dataclass
class Labels:
    """The places that are taken on one view's paper.

    within: what a text may not leave (paper mm); None for no bound.
    """

    view: View
    style: Style
    within: Polygon | None = None
    taken: list[Polygon] = field(default_factory=list)

    def keep(self, shapes: Iterable[Shape]) -> None:
        """Marks what stands already."""
        for shape in shapes:
            if isinstance(shape, Text):
                self.taken.append(box_of(word(shape, self.view, self.style)))
            elif isinstance(shape, Dimension | RunningDimension):
                self.taken += [box_of(one) for one in words(shape, self.view, self.style)]

    def place_all(self, tries: Iterable[Sequence[Text]], inside: shapely.Geometry) -> Sequence[Text]:
        """The first of these of which all texts have room together, which they then take; none of them
        else. inside: an area of the view to stay in."""
        bound = self.on_paper(inside)
        shapely.prepare(bound)
        for texts in tries:
            boxes = [self._box(text) for text in texts]
            if all(bound.contains(box) and self.free(box) for box in boxes):
                self.taken += boxes
                return texts
        return ()

    def _box(self, text: Text) -> Polygon:
        return box_of(word(text, self.view, self.style)).buffer(CLEAR, join_style="mitre")

    def place(self, tries: Iterable[Text], inside: shapely.Geometry | None = None) -> Text | None:
        """The first of these that has room, which it then takes; inside: an area of the view to stay in."""
        bound = None if inside is None else self.on_paper(inside)
        for text in tries:
            box = self._box(text)
            if any(area is not None and not area.contains(box) for area in (self.within, bound)):
                continue
            if not any(box.intersects(other) for other in self.taken):
                self.taken.append(box)
                return text
        return None

    def on_paper(self, area: shapely.Geometry) -> shapely.Geometry:
        """An area of the view on its paper."""
        ratio, at = self.view.scale.ratio, self.view.at
        return shapely.transform(area, lambda points: points / ratio + at)

    def has_room(self, one: Dimension) -> bool:
        """Whether the words of a dimension meet nothing that stands."""
        return all(self.free(box_of(said)) for said in words(one, self.view, self.style))

    def free(self, area: shapely.Geometry) -> bool:
        """Whether nothing stands on a part of the paper."""
        return not any(area.intersects(other) for other in self.taken)
