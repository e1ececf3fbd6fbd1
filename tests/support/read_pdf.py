"""A PDF read back: texts as they were written, with their ink on paper, and lines. All in mm, y up."""

from __future__ import annotations

import io
from dataclasses import dataclass
from functools import cache
from importlib.util import find_spec
from math import atan2, degrees, hypot
from pathlib import Path
from typing import Any

import pdfplumber
import shapely
from fontTools.ttLib import TTFont
from shapely.geometry import LineString, Polygon

MM = 25.4 / 72


@dataclass(frozen=True, eq=False)
class Written:
    """A text: where its baseline starts and which way it runs (degrees); ink: what its letters cover."""

    text: str
    start: tuple[float, float]
    turn: float
    ink: Polygon
    patched: bool


@dataclass(frozen=True, eq=False)
class Read:
    """A page: its size, texts, and lines as (line, width)."""

    size: tuple[float, float]
    texts: tuple[Written, ...]
    lines: tuple[tuple[LineString, float], ...]

    def found(self, text: str) -> list[Written]:
        return [one for one in self.texts if text in one.text]


@cache
def _font() -> Any:
    folder = (find_spec("matplotlib").submodule_search_locations or [""])[0]  # type: ignore[union-attr]
    return TTFont(Path(folder) / "mpl-data" / "fonts" / "ttf" / "DejaVuSans.ttf")


@cache
def _reach(letter: str) -> tuple[float, float]:
    """How far a letter's ink goes below and above the line, over the font's size."""
    font = _font()
    glyph = font["glyf"][font.getBestCmap()[ord(letter)]]
    low, high = getattr(glyph, "yMin", 0), getattr(glyph, "yMax", 0)
    return low / 2048, high / 2048


def _advance(letter: str) -> float:
    """How far a letter takes the next one on, over the font's size."""
    font = _font()
    return float(font["hmtx"][font.getBestCmap()[ord(letter)]][0]) / 2048


def read_pdf(data: bytes) -> list[Read]:
    with pdfplumber.open(io.BytesIO(data)) as file:
        return [_page(page) for page in file.pages]


def _page(page: Any) -> Read:
    high = float(page.height)
    runs: list[list[dict[str, Any]]] = []
    for char in page.chars:
        if runs and _goes_on(runs[-1][-1], char):
            runs[-1].append(char)
        else:
            runs.append([char])
    patches = [_box(rect, high) for rect in page.rects if rect["fill"] and not rect["stroke"]]
    patches += [
        Polygon([_at(p, high) for p in curve["pts"]])
        for curve in page.curves
        if curve["fill"] and not curve["stroke"] and _is_white(curve)
    ]
    tree = shapely.STRtree(patches)
    texts = tuple(_written(run, patches, tree) for run in runs if "".join(c["text"] for c in run).strip())
    lines = [
        (LineString([_at(p, high) for p in one["pts"]]), float(one["linewidth"]) * MM)
        for one in (*page.lines, *page.curves)
        if one["stroke"]
    ]
    lines += [(_box(one, high).exterior, float(one["linewidth"]) * MM) for one in page.rects if one["stroke"]]
    return Read((float(page.width) * MM, high * MM), texts, tuple(lines))


def _is_white(curve: dict[str, Any]) -> bool:
    colour = curve["non_stroking_color"]
    return colour is not None and min(colour) > 0.99


def _at(point: tuple[float, float], high: float) -> tuple[float, float]:
    return point[0] * MM, (high - point[1]) * MM


def _box(one: dict[str, Any], high: float) -> Polygon:
    return shapely.box(one["x0"] * MM, one["y0"] * MM, one["x1"] * MM, one["y1"] * MM)


def _goes_on(before: dict[str, Any], char: dict[str, Any]) -> bool:
    a, b, _, _, x, y = before["matrix"]
    if any(abs(p - q) > 1e-3 for p, q in zip(before["matrix"][:4], char["matrix"][:4], strict=True)):
        return False
    size = hypot(a, b)
    far = before["adv"] * size
    dx, dy = char["matrix"][4] - x, char["matrix"][5] - y
    return hypot(dx - far * a / size, dy - far * b / size) < 0.1


def _written(run: list[dict[str, Any]], patches: list[Polygon], tree: shapely.STRtree) -> Written:
    a, b, _, _, x, y = run[0]["matrix"]
    scale = hypot(a, b)
    way, text = (a / scale, b / scale), "".join(char["text"] for char in run)
    size, last = scale * run[0]["adv"] / _advance(run[0]["text"]), run[-1]  # "size" is a turned letter's box
    end = hypot(last["matrix"][4] - x, last["matrix"][5] - y) + last["adv"] * scale
    low = min(_reach(letter)[0] for letter in text) * size
    top = max(_reach(letter)[1] for letter in text) * size
    corners = [(0.0, low), (end, low), (end, top), (0.0, top)]
    ink = Polygon(
        [((x + u * way[0] - v * way[1]) * MM, (y + u * way[1] + v * way[0]) * MM) for u, v in corners]
    )
    patched = any(ink.difference(patches[i]).area < 0.02 * ink.area for i in tree.query(ink))
    return Written(text, (x * MM, y * MM), degrees(atan2(b, a)), ink, patched)
