"""Steel sections as a person types them: by shape and dimensions, or by a catalogue name.

    tube 4x4x0.120       depth x width x wall (or hss)
    cee 6x2.5x0.059      depth x flange x thickness; lip 0.773, radius 0.1875 if you like
    zee 8x2.25x0.059     depth x flange x thickness; lip, angle (of the lip), radius; wider: its upper flange
    hat 1.5x1.25x0.0346  depth x crown x thickness; flange, angle (of the sides), radius
    angle 2x2x0.125      leg up x leg across x thickness; radius (inside)
    plate 8x0.375        width x thickness (or flat, or strap)
    rod 5/8              diameter (or round, or cable)

Plain numbers are inches, fractions allowed (1/4, 1-1/2). One `mm` anywhere makes all of them
millimetres. A catalogue name is a row of sections.csv (name, section as above, source).
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from difflib import get_close_matches
from fractions import Fraction
from functools import cache
from math import atan2, degrees
from typing import TypeVar

from ..recipe import grid
from ..units import INCH, Unreadable, parse_number
from .fold import folded
from .rows import rows
from .section_limits import check_bends, check_sizes
from .shapes import SectionShape, Shape, strut_section

__all__ = [
    "SECTION_HINT",
    "SectionShape",
    "folded",
    "listed_as",
    "parse_section",
    "sections",
    "spelled",
    "strut_section",
]

SIDE_LEAN = 0.1
"""Of its crown: how far a hat's side leans out, 1/8 in for one of 1-1/4 in."""
SAME = 0.01
"""mm or degrees; dimensions that differ by less are one."""
_SIZES = ("depth", "breadth", "thickness", "lip", "radius", "flange", "angle", "wider")
_TIMES = "\N{MULTIPLICATION SIGN}"
_Size = TypeVar("_Size", str, float)
_LONGEST = 80  # characters in a section; nobody types more

SECTION_HINT = (
    'a section such as "tube 4x4x0.120", "cee 6x2.5x0.059", "zee 8x2.25x0.059", '
    '"hat 1.5x1.25x0.0346", "angle 2x2x0.125", "plate 8x0.375" or "rod 5/8", inches or mm'
)


@dataclass(frozen=True, slots=True)
class _Form:
    """How one shape is typed: shape, what its dimensions are, an example, the words it takes."""

    shape: Shape
    sizes: tuple[str, ...]
    example: str
    words: tuple[str, ...] = ()

    def __str__(self) -> str:
        words = f", with {' or '.join(self.words)} if you like" if self.words else ""
        return f'{self.shape} as {" x ".join(self.sizes)}, such as "{self.example}"{words}'


_PLATE = _Form("plate", ("width", "thickness"), "plate 8x0.375")
_ROD = _Form("rod", ("diameter",), "rod 5/8")
_FORMS = {
    "tube": _Form("tube", ("depth", "width", "wall"), "tube 4x4x0.120"),
    "cee": _Form("cee", ("depth", "flange", "thickness"), "cee 6x2.5x0.059", ("lip", "radius")),
    "zee": _Form(
        "zee", ("depth", "flange", "thickness"), "zee 8x2.25x0.059", ("lip", "angle", "radius", "wider")
    ),
    "hat": _Form(
        "hat", ("depth", "crown", "thickness"), "hat 1.5x1.25x0.0346", ("flange", "angle", "radius")
    ),
    "angle": _Form("angle", ("leg up", "leg across", "thickness"), "angle 2x2x0.125", ("radius",)),
    "plate": _PLATE,
    "flat": _PLATE,
    "strap": _PLATE,
    "rod": _ROD,
    "round": _ROD,
    "cable": _ROD,
}
_FORMS["hss"] = _FORMS["tube"]  # a designation that is no row still says its sizes


def parse_section(text: str) -> SectionShape:
    """The section that a text names, its defaults filled in.

    Defaults, all ours. Inside bends: radius 3/16 in from 0.05 in of thickness, as purlins are formed;
    under it the greater of 1.5 thicknesses and 3/32 in less half of one, as light framing is. Lips: a
    cee's 3/4 in from a 2 in flange, under it 0.3 of the flange; a zee's 0.9 in, under it 0.4, at 50
    degrees so that zees nest; never more than that share of the depth; its flanges alike. A hat: flanges
    0.4 of the crown and sides leaning out 0.1 of it (at least 60 degrees), so that a 1-1/4 in crown has
    the 1/2 in flanges and 2-1/2 in overall that light hats commonly have. An angle: inside radius its
    thickness.

    Raises Unreadable; `str(error)` is what would do, for a Problem's remedy.
    """
    tidy = " ".join(text.split())
    return _by_plain_name().get(_plain(tidy)) or _typed(tidy, tidy)


@cache
def sections() -> dict[str, SectionShape]:
    """The rows of sections.csv by name, in the file's order."""
    return {row["name"]: _typed(row["section"], row["name"], row["source"]) for row in rows("sections.csv")}


def spelled(shape: SectionShape, unit: str, bends: bool = True) -> str:
    """A section as a person would type it, in "in" or "mm": `parse_section` of it gives the section.

    Lengths to 0.0001 in or 0.01 mm, angles to 0.01 degrees; what parse_section would fill in is not said.
    bends: False leaves their radius unsaid.
    """
    sizes = (shape.depth, shape.breadth, shape.thickness)[: len(_FORMS[shape.shape].sizes)]
    shown = [_shown(size, unit) for size in sizes]
    depth, breadth, thickness = (_mm(size, unit) for size in _three(shown))
    filled = defaults(SectionShape(shape.shape, depth, breadth, thickness))
    unsaid = [*([] if bends else ["radius"]), *(["angle"] if shape.shape == "zee" and not shape.lip else [])]
    stated = ""
    for word in _FORMS[shape.shape].words:
        measured = getattr(shape, word)
        if word not in unsaid and abs(measured - filled[word]) > SAME:
            stated += f" {word} {_shown(measured, 'deg' if word == 'angle' else unit)}"
    return f"{shape.shape} {' x '.join(shown)}{stated}{' mm' if unit == 'mm' else ''}"


def listed_as(shape: SectionShape) -> str:
    """The catalogue's name of a section, all of whose dimensions must agree to SAME; "" for no row's.

    A tube or an angle may lie on its side.
    """
    for name, row in sections().items():
        flat = row.shape in ("tube", "angle") and row.depth < row.breadth
        upright = replace(row, depth=row.breadth, breadth=row.depth) if flat else row
        apart = (abs(getattr(upright, size) - getattr(shape, size)) for size in _SIZES)
        if row.shape == shape.shape and max(apart) < SAME:
            return name
    return ""


@cache
def _by_plain_name() -> dict[str, SectionShape]:
    return {_plain(name): shape for name, shape in sections().items()}


def _plain(name: str) -> str:
    return re.sub(r"\s", "", name).replace(_TIMES, "x").lower()


def _typed(typed: str, text: str, source: str = "") -> SectionShape:
    """The section of a text in shape and dimensions; text is what it is to be called."""
    if len(typed) > _LONGEST:
        raise Unreadable(SECTION_HINT)
    unit, bare = _unit(typed)
    match = re.match(r"[a-z]+", bare)
    form = _FORMS.get(match[0]) if match else None
    if not match or not form:
        raise Unreadable(SECTION_HINT + _nearest(typed))
    sizes, *rest = re.split(r"([a-z]{2,})", bare[match.end() :])
    stated = _words(form, rest, unit)
    try:
        size = [_mm(number, unit) for number in sizes.split("x")]
    except Unreadable:
        raise Unreadable(str(form)) from None
    if len(size) != len(form.sizes) or not all(size):
        raise Unreadable(str(form))
    depth, breadth, thickness = _three(size)
    shape = SectionShape(form.shape, depth, breadth, thickness, text=text, source=source)
    check_sizes(shape, unit)
    filled = defaults(shape) | stated
    words = ("lip", "radius", "flange", "angle", "wider")
    lip, radius, flange, angle, wider = (grid(filled.get(word, 0.0)) for word in words)
    whole = replace(shape, lip=lip, radius=radius, flange=flange, angle=angle, wider=wider)
    check_bends(whole, unit)
    return whole


def _three(sizes: Sequence[_Size]) -> tuple[_Size, _Size, _Size]:
    """Depth, breadth and thickness: what a plate or a rod does not say is its last size."""
    return sizes[0], sizes[min(1, len(sizes) - 1)], sizes[-1]


def _unit(typed: str) -> tuple[str, str]:
    """("in" or "mm", the text in lower case without its units). Raises Unreadable for both at once."""
    text = re.sub("[\"”″“]|''", " in ", typed.replace(_TIMES, "x").lower())
    pattern = r"(?<![a-z])(mm|inches|inch|in)(?=x?(?![a-z]))"
    found = {unit[:2] for unit in re.findall(pattern, text)}
    if len(found) > 1:
        raise Unreadable("all of a section's numbers in inches, or all in mm")
    return (found or {"in"}).pop(), re.sub(pattern, " ", text).strip()


def _nearest(typed: str) -> str:
    """The shape or catalogue name most like what was typed, as the end of a message."""
    plain = _plain(typed)
    names = {key: f'; the nearest in the catalogue is "{s.text}"' for key, s in _by_plain_name().items()}
    close = get_close_matches(plain, names, n=1)
    if close:
        return names[close[0]]
    shapes = get_close_matches(re.split("[^a-z]", plain)[0], _FORMS, n=1)
    return f'; perhaps "{shapes[0]}"' if shapes else ""


def _shown(value: float, unit: str) -> str:
    """A length in "in" or "mm", or an angle in "deg", as it is typed."""
    text = f"{value / INCH:.4f}" if unit == "in" else f"{value:.2f}"
    return text.rstrip("0").rstrip(".")


def _mm(number: str, unit: str) -> float:
    scale = Fraction(1) if unit == "mm" else Fraction(127, 5)
    return float(parse_number(number) * scale)


def _words(form: _Form, rest: list[str], unit: str) -> dict[str, float]:
    """What is said after the dimensions: word, number, word, number ... in mm or degrees."""
    stated: dict[str, float] = {}
    for word, number in zip(rest[::2], rest[1::2], strict=True):
        if word not in form.words or word in stated:
            raise Unreadable(str(form))
        try:
            stated[word] = float(parse_number(number)) if word == "angle" else _mm(number, unit)
        except Unreadable:
            raise Unreadable(f"a number after {word}; {form}") from None
    return stated


def defaults(shape: SectionShape) -> dict[str, float]:
    """What `parse_section` fills in for a shape of which depth, breadth and thickness are known."""
    light = max(3 / 32 * INCH - shape.thickness / 2, 1.5 * shape.thickness)
    bend = 3 / 16 * INCH if shape.thickness >= 0.05 * INCH - 1e-9 else light
    wide = shape.breadth >= 2 * INCH - 1e-9
    match shape.shape:
        case "cee":
            lip = 0.75 * INCH if wide else 0.3 * shape.breadth
            return {"lip": min(lip, 0.3 * shape.depth), "angle": 90.0, "radius": bend}
        case "zee":
            lip = 0.9 * INCH if wide else 0.4 * shape.breadth
            return {"lip": min(lip, 0.4 * shape.depth), "angle": 50.0, "radius": bend, "wider": 0.0}
        case "hat":
            lean = atan2(shape.depth - shape.thickness, SIDE_LEAN * shape.breadth)
            return {"flange": 0.4 * shape.breadth, "angle": max(degrees(lean), 60.0), "radius": bend}
        case "angle":
            return {"radius": shape.thickness}
    return {}
