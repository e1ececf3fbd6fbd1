"""SVG of a page, in mm, its text as text. Equal pages give equal bytes."""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Iterator, Sequence
from xml.sax.saxutils import escape

from ..place import Point2
from .dimensions import Word
from .font import BELOW, shown, size_of, width
from .ink import Area, Ink, Picture, Stroke, inked
from .pdf import ACCENT, PAD
from .pens import DASHES, STYLES, Pen, Style
from .values import Page

ANCHORS = {"left": "start", "middle": "middle", "right": "end"}
PNG = b"\x89PNG"


def svg(page: Page) -> str:
    """A page as SVG."""
    wide, high = page.paper.width, page.paper.height
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide:g}mm" height="{high:g}mm" '
        f'viewBox="0 0 {wide:g} {high:g}" font-family="DejaVu Sans, sans-serif">',
        f"<title>{escape(shown(page.title))}</title>",
        f'<rect width="{wide:g}" height="{high:g}" fill="#ffffff"/>',
    ]
    for ink in inked(page):
        lines += _put(ink, STYLES[page.units], high)
    return "\n".join([*lines, "</svg>"]) + "\n"


def _put(ink: Ink, style: Style, high: float) -> Iterator[str]:
    match ink:
        case Stroke():
            colour = ACCENT if ink.pen is Pen.ACCENT else "#000000"
            dash = " ".join(f"{part:g}" for part in DASHES.get(ink.pen, ()))
            dashed = f' stroke-dasharray="{dash}"' if dash else ""
            name = "polygon" if ink.closed else "polyline"
            yield (
                f'<{name} class="{ink.pen}" points="{_points(ink.points, high)}" fill="none" '
                f'stroke="{colour}" stroke-width="{style.width(ink.pen):g}"{dashed}/>'
            )
        case Area():
            yield f'<polygon points="{_points(ink.points, high)}" fill="{ink.colour}"/>'
        case Word():
            yield from _word(ink, high)
        case Picture():
            kind = "png" if ink.data.startswith(PNG) else "jpeg"
            (x, y), data = ink.at, b64encode(ink.data).decode("ascii")
            yield (
                f'<image x="{x:.3f}" y="{high - y - ink.height:.3f}" width="{ink.width:.3f}" '
                f'height="{ink.height:.3f}" href="data:image/{kind};base64,{data}"/>'
            )


def _points(points: Sequence[Point2], high: float) -> str:
    return " ".join(f"{x:.3f},{high - y:.3f}" for x, y in points)


def _word(word: Word, high: float) -> Iterator[str]:
    (x, y), size = word.at, size_of(word.height)
    turned = f'transform="translate({x:.3f} {high - y:.3f}) rotate({-word.turn:g})"'
    if word.patch:
        long = width(word.text, word.height)
        left = {"left": 0.0, "middle": -long / 2, "right": -long}[word.anchor] - PAD
        yield (
            f'<rect {turned} x="{left:.3f}" y="{-word.height - PAD:.3f}" width="{long + 2 * PAD:.3f}" '
            f'height="{word.height + PAD + BELOW * size:.3f}" fill="#ffffff"/>'
        )
    text = escape(shown(word.text))
    yield f'<text {turned} font-size="{size:.3f}" text-anchor="{ANCHORS[word.anchor]}">{text}</text>'
