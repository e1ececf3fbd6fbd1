"""What a drawing is made of: frozen values that know no file format.

Coordinates are mm, x to the right, y up. In a `View` they are those of the building, drawn to the view's
scale; on a `Page` they are those of the paper, from its lower left corner. What is said to be "on paper"
(text sizes, line widths, dashes) does not follow the scale.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from math import floor
from typing import Literal

from ..place import Point2
from ..units import Units
from .pens import Pen, Size

Anchor = Literal["left", "middle", "right"]


@dataclass(frozen=True, slots=True)
class Line:
    """A straight line."""

    start: Point2
    end: Point2
    pen: Pen = Pen.OUTLINE


@dataclass(frozen=True, slots=True)
class Polyline:
    """Lines through points; closed: back to the first. fill: "#rrggbb" that covers what was drawn before
    it, "" for none. pen None: no line, only the fill."""

    points: tuple[Point2, ...]
    pen: Pen | None = Pen.OUTLINE
    closed: bool = True
    fill: str = ""


@dataclass(frozen=True, slots=True)
class Arc:
    """A part of a circle, counter-clockwise from start to end (degrees); 0 to 360: all of it."""

    centre: Point2
    radius: float
    start: float = 0.0
    end: float = 360.0
    pen: Pen = Pen.OUTLINE


@dataclass(frozen=True, slots=True)
class Text:
    """One line of text. at: the left end, middle or right end (anchor) of its baseline; turn: degrees
    counter-clockwise; patch: whether it stands on a patch of paper that hides what was drawn before it."""

    at: Point2
    text: str
    size: Size = Size.SMALL
    anchor: Anchor = "left"
    turn: float = 0.0
    patch: bool = False


@dataclass(frozen=True, slots=True)
class Dimension:
    """The distance between two points along `turn` (degrees), and the text that says it.

    at: a point that the dimension line goes through, off the points measured. text: as it is shown.
    """

    start: Point2
    end: Point2
    at: Point2
    text: str
    turn: float = 0.0


@dataclass(frozen=True, slots=True)
class RunningDimension:
    """Distances of points from one zero along `turn` (degrees), hooked once, as a tape reads them.

    at: a point that the row of texts begins at, off the points; the texts stand across the run.
    points, texts: as many of each. hooked: whether the zero itself is in sight.
    """

    zero: Point2
    points: tuple[Point2, ...]
    texts: tuple[str, ...]
    at: Point2
    turn: float = 0.0
    hooked: bool = True


@dataclass(frozen=True, slots=True)
class Hatch:
    """Parallel thin lines over an area: its outer ring, then its holes. spacing: mm on paper."""

    rings: tuple[tuple[Point2, ...], ...]
    turn: float = 45.0
    spacing: float = 2.0


@dataclass(frozen=True, slots=True)
class Image:
    """A picture (JPEG or PNG bytes) on a rectangle from its lower left corner."""

    at: Point2
    width: float
    height: float
    data: bytes = field(repr=False)


Shape = Line | Polyline | Arc | Text | Dimension | RunningDimension | Hatch | Image


@dataclass(frozen=True, slots=True)
class Scale:
    """How much smaller a view is than what it shows; name: as it is said ("1/4\" = 1'", "1:50")."""

    name: str
    ratio: float


FULL = Scale("full size", 1.0)


def settled(mm: float) -> float:
    """A place to 1e-4 mm; the same whatever noise there is in its last digits, so that bytes are the same."""
    return floor(mm * 1e4 + 1 / 3) / 1e4


@dataclass(frozen=True, slots=True)
class View:
    """Shapes in building mm, drawn to a scale. at: where their origin lies on the page (mm)."""

    name: str
    scale: Scale
    at: Point2
    shapes: tuple[Shape, ...]

    def on_paper(self, point: Point2) -> Point2:
        """A point of the view on its page."""
        ratio = self.scale.ratio
        return settled(self.at[0] + point[0] / ratio), settled(self.at[1] + point[1] / ratio)


@dataclass(frozen=True, slots=True)
class Paper:
    """A size of paper, lying (mm). margin: from its edge to the frame."""

    name: str
    width: float
    height: float
    margin: float


LETTER = Paper("Letter", 279.4, 215.9, 10.0)
A4 = Paper("A4", 297.0, 210.0, 10.0)


@dataclass(frozen=True, slots=True)
class Page:
    """One page: what lies on the paper itself, and views to scale. title: what the sheet index says."""

    title: str
    paper: Paper
    units: Units
    views: tuple[View, ...] = ()
    shapes: tuple[Shape, ...] = ()

    @property
    def layers(self) -> tuple[View, ...]:
        """The views, and then the paper itself as one in full size."""
        return (*self.views, View("", FULL, (0.0, 0.0), self.shapes))
