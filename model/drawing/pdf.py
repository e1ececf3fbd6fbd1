"""PDF: pages as drawn, with text that can be searched and copied. Equal pages give equal bytes."""

from __future__ import annotations

import io
from collections.abc import Sequence

from reportlab.lib.colors import HexColor
from reportlab.lib.utils import ImageReader
from reportlab.pdfgen.canvas import Canvas

from ..place import Point2
from .dimensions import Word
from .font import BELOW, NAME, font, shown, size_of, width
from .ink import Area, Ink, Picture, Stroke, inked
from .pens import DASHES, STYLES, Pen, Style
from .values import Page

POINT = 72 / 25.4
"""Points in a mm."""
PAD = 0.4
"""mm of a patch around its text."""
ACCENT = "#c03000"


def pdf(pages: Sequence[Page], title: str) -> bytes:
    """The bytes of a PDF of these pages, an outline entry for each. Raises FileError without the font."""
    font()
    stream = io.BytesIO()
    canvas = Canvas(stream, invariant=1, pageCompression=1)
    canvas.setTitle(title)
    for number, page in enumerate(pages):
        canvas.setPageSize((page.paper.width * POINT, page.paper.height * POINT))
        canvas.bookmarkPage(f"page {number}")
        canvas.addOutlineEntry(page.title, f"page {number}")
        canvas.scale(POINT, POINT)
        canvas.setLineJoin(1)
        canvas.setLineCap(0)
        for ink in inked(page):
            _put(canvas, ink, STYLES[page.units])
        canvas.showPage()
    canvas.save()
    return stream.getvalue()


def _put(canvas: Canvas, ink: Ink, style: Style) -> None:
    match ink:
        case Stroke():
            canvas.setLineWidth(style.width(ink.pen))
            canvas.setStrokeColor(HexColor(ACCENT if ink.pen is Pen.ACCENT else "#000000"))
            canvas.setDash(list(DASHES.get(ink.pen, ())))
            _path(canvas, ink.points, closed=ink.closed, fill=False)
        case Area():
            canvas.setFillColor(HexColor(ink.colour))
            _path(canvas, ink.points, closed=True, fill=True)
        case Word():
            _write(canvas, ink)
        case Picture():
            image = ImageReader(io.BytesIO(ink.data))
            canvas.drawImage(image, *ink.at, ink.width, ink.height)


def _path(canvas: Canvas, points: Sequence[Point2], *, closed: bool, fill: bool) -> None:
    path = canvas.beginPath()
    path.moveTo(*points[0])
    for point in points[1:]:
        path.lineTo(*point)
    if closed:
        path.close()
    canvas.drawPath(path, stroke=int(not fill), fill=int(fill))


def _write(canvas: Canvas, word: Word) -> None:
    long, size = width(word.text, word.height), size_of(word.height)
    left = {"left": 0.0, "middle": -long / 2, "right": -long}[word.anchor]
    canvas.saveState()
    canvas.translate(*word.at)
    canvas.rotate(word.turn)
    if word.patch:
        canvas.setFillColor(HexColor("#ffffff"))
        below = BELOW * size
        canvas.rect(left - PAD, -below, long + 2 * PAD, word.height + below + PAD, stroke=0, fill=1)
    canvas.setFillColor(HexColor("#000000"))
    canvas.setFont(NAME, size)
    canvas.drawString(left, 0.0, shown(word.text))
    canvas.restoreState()
