"""How lines and texts are drawn, by what they mean: widths and heights are data, a row for each standard."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from ..units import INCH, Units


class Pen(StrEnum):
    """What a line means. It is a layer of a DXF file."""

    CUT = "cut"  # the edge of what a section cuts through
    OUTLINE = "outline"  # of what is drawn
    THIN = "thin"  # ribs, folds, edges within an outline
    HIDDEN = "hidden"  # behind what is drawn: dashed
    CENTRE = "centre"  # centre lines, screw lines: chain
    DIMENSION = "dimension"  # dimension, extension and leader lines
    HATCH = "hatch"
    FRAME = "frame"  # of pages, tables and title blocks
    ACCENT = "accent"  # what a step adds: in colour


class Size(StrEnum):
    """How large a text is. None is smaller than SMALL."""

    SMALL = "small"  # dimensions, notes
    PLAIN = "plain"  # marks
    LARGE = "large"  # titles of views and pages


@dataclass(frozen=True, slots=True)
class Style:
    """Line widths and text heights (mm on paper). height: of capitals. arrow: its length."""

    name: str
    thick: float
    thin: float
    heights: dict[Size, float]
    arrow: float

    @property
    def row(self) -> float:
        """mm from a line of small text to the next: half a height between two (ASME Y14.2; ISO 3098-1 has as
        much for letters without accents; both from memory)."""
        return 1.5 * self.heights[Size.SMALL]

    def width(self, pen: Pen) -> float:
        """Of a line."""
        return self.thick if pen in THICK else self.thin


THICK = (Pen.CUT, Pen.OUTLINE, Pen.FRAME, Pen.ACCENT)
DASHES: dict[Pen, tuple[float, ...]] = {Pen.HIDDEN: (3.0, 1.5), Pen.CENTRE: (9.0, 1.5, 1.0, 1.5)}
"""mm on paper: drawn, left out, ... Lines of other pens are whole."""

STYLES: dict[Units, Style] = {
    # ISO 128-2: line group 0.5 (0.5 and 0.25); ISO 3098-1: heights 2.5, 3.5, 5.
    "mm": Style("iso", 0.5, 0.25, {Size.SMALL: 2.5, Size.PLAIN: 3.5, Size.LARGE: 5.0}, 2.5),
    # ASME Y14.2: thick lines 0.6 mm, thin ones 0.3 mm; letters 0.12 in (3 mm) or more, titles 0.24 in.
    "ft-in": Style(
        "asme", 0.6, 0.3, {Size.SMALL: 0.12 * INCH, Size.PLAIN: 0.12 * INCH, Size.LARGE: 0.24 * INCH}, 3.0
    ),
}
