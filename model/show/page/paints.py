"""What each piece is painted with, and which key of the description asks for it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from ...catalog.colours import colour_names, is_colour, rgb
from ...pieces import Piece
from ...printable import printable
from ...roles import LIGHTS, Role, list_of

GABLES = {"front", "back"}
FRAME = {Role.COLUMN, Role.RAFTER, Role.KNEE, Role.POST, Role.BASE_PLATE}
PLAIN = {"frame": "#83888c", "members": "#b2b6b8", "slab": "#b4b1aa"}
"""Unpainted things, so that a frame reads as steel and a slab as concrete whatever their labels say."""
GLASS, BARE = "#9db9c4", "#a8acb0"
PAINTED = ("sheets", "trims")
PARTS = ("walls", "wainscot", "roof", "trims")


@dataclass(frozen=True, slots=True)
class Paint:
    """A colour that can be tried. part: one of PARTS; colour: as labelled; table, key: of the
    description, empty where more than one would have to change."""

    part: str
    colour: str
    table: str = ""
    key: str = ""


def part_of(piece: Piece) -> str:
    """One of PARTS; "" for what is not painted to choice."""
    kind = list_of(piece.role)
    if kind not in PAINTED or piece.role in LIGHTS or not is_colour(piece.label("colour")):
        return ""
    if kind == "trims":
        return "trims"
    if piece.role == Role.ROOF_SHEET:
        return "roof"
    return "wainscot" if "wainscot" in piece.name.split() else "walls"


def paints(pieces: Sequence[Piece]) -> list[Paint]:
    """Every colour of every part, the most used of a part first."""
    counts: dict[tuple[str, str], int] = {}
    faces: dict[tuple[str, str], set[str]] = {}
    roles: dict[tuple[str, str], set[str]] = {}
    for piece in pieces:
        if part := part_of(piece):
            key = (part, piece.label("colour"))
            counts[key] = counts.get(key, 0) + 1
            faces.setdefault(key, set()).add(piece.label("face"))
            roles.setdefault(key, set()).add(piece.role)
    found = sorted(counts, key=lambda key: (PARTS.index(key[0]), -counts[key]))
    firsts = {part: next((key for key in found if key[0] == part), None) for part in PARTS}
    return [
        Paint(*key, *_asked_by(key[0], key == firsts[key[0]], faces[key], roles[key], found)) for key in found
    ]


def _asked_by(
    part: str, first: bool, faces: set[str], roles: set[str], found: list[tuple[str, str]]
) -> tuple[str, str]:
    """Table and key behind a colour of a part."""
    alone = sum(key[0] == part for key in found) == 1
    if part in ("roof", "wainscot"):
        key = ("sheets", "roof_colour") if part == "roof" else ("wainscot", "colour")
        return key if alone else ("", "")
    if part == "walls":
        if alone or (first and not faces <= GABLES):
            return ("sheets", "wall_colour")
        return (
            ("gable_sheets", "colour")
            if faces <= GABLES
            else ("sheets", "wall_colour")
            if first
            else ("", "")
        )
    if alone or first:
        return ("trim", "colour")
    kind = next(iter(roles)).removesuffix(" trim") if len(roles) == 1 else ""
    return ("trim", f"{kind}_colour") if kind in ("corner", "eave", "rake", "base") else ("", "")


def paint_numbers(pieces: Sequence[Piece], found: Sequence[Paint]) -> list[int]:
    """For each piece the number of its paint, -1 for none. A painted screw goes with what it holds."""
    numbers = {(paint.part, paint.colour): number for number, paint in enumerate(found)}
    held: dict[tuple[str, str], int] = {}
    for piece in pieces:
        if part := part_of(piece):
            colour = piece.label("colour")
            number = numbers[part, colour]
            held.setdefault((piece.label("face") if part != "trims" else "trims", colour), number)
    return [_number(piece, numbers, held) for piece in pieces]


def _number(piece: Piece, numbers: dict[tuple[str, str], int], held: dict[tuple[str, str], int]) -> int:
    colour = piece.label("colour")
    if part := part_of(piece):
        return numbers[part, colour]
    if list_of(piece.role) != "screws":
        return -1
    over = "trims" if piece.role == Role.TRIM_SCREW else piece.label("face")
    return held.get((over, colour), -1)


def shown(piece: Piece) -> str:
    """The colour a piece is drawn in, #rrggbb."""
    kind = list_of(piece.role)
    if piece.role == Role.PANE:
        return GLASS
    if piece.role in LIGHTS:
        return _glazed(piece.label("colour"))
    if piece.role in FRAME:
        return PLAIN["frame"]
    if kind in PLAIN:
        return PLAIN[kind]
    colour = piece.label("colour")
    return hex_of(colour) if is_colour(colour) else BARE


def _glazed(colour: str) -> str:
    """A colour half way to that of glass, so that a light sheet among steel ones of its colour is told."""
    own, glass = (rgb(one) for one in (colour if is_colour(colour) else BARE, GLASS))
    return "#{:02x}{:02x}{:02x}".format(*((a + b) // 2 for a, b in zip(own, glass, strict=True)))


def hex_of(colour: str) -> str:
    """A colour's name as #rrggbb."""
    return "#{:02x}{:02x}{:02x}".format(*rgb(colour))


def content(found: Sequence[Paint]) -> list[dict[str, str]]:
    """For JSON."""
    return [
        {
            "part": paint.part,
            "name": printable(paint.colour),
            "hex": hex_of(paint.colour),
            "typed": paint.colour if paint.colour in colour_names() else hex_of(paint.colour),
            "table": paint.table,
            "key": paint.key,
        }
        for paint in found
    ]
