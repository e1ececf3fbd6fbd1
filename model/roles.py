"""Roles: what a piece is, in the trade's words, and what follows from it. One table for every floor.

A role's list is what the piece is bought, listed and checked as; nothing decides by a role's spelling.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Literal

Measure = Literal["sheet", "member", "body"]
List = Literal[
    "sheets", "members", "trims", "closures", "screws", "openings", "insulation", "slab", "unknown"
]

LISTS: tuple[List, ...] = (
    *("sheets", "members", "trims", "closures", "screws", "openings", "insulation", "slab", "unknown"),
)
"""The lists of a schedule, in order."""


FACES = (
    "front",
    "back",
    "left",
    "right",
    "left slope",
    "left upper slope",
    "right slope",
    "right upper slope",
)
"""Every name that a face of a building may have, in the order that people are shown them."""
LEAN_TO = "lean-to"
"""What the names of a lean-to's pieces and faces begin with; of two after "left" or "right"."""


class Role(StrEnum):
    """What a piece is."""

    WALL_SHEET = "wall sheet"
    ROOF_SHEET = "roof sheet"
    WALL_LIGHT = "wall light sheet"
    ROOF_LIGHT = "roof light sheet"
    COLUMN = "column"
    RAFTER = "rafter"
    KNEE = "knee"
    POST = "post"
    BRACE = "brace"
    STRUT = "strut"
    BASE_PLATE = "base plate"
    BASE_RAIL = "base rail"
    GIRT = "girt"
    EAVE_STRUT = "eave strut"
    LEDGER = "ledger"
    PURLIN = "purlin"
    RAKE_ANGLE = "rake angle"
    JAMB = "jamb"
    HEADER = "header"
    SILL = "sill"
    BASE_TRIM = "base trim"
    CORNER_TRIM = "corner trim"
    INSIDE_CORNER_TRIM = "inside corner trim"
    EAVE_TRIM = "eave trim"
    GUTTER = "gutter"
    DOWNSPOUT = "downspout"
    RAKE_TRIM = "rake trim"
    RIDGE_CAP = "ridge cap"
    BREAK_TRIM = "pitch break trim"
    J_TRIM = "j trim"
    SILL_TRIM = "sill trim"
    JAMB_ANGLE = "jamb angle"
    HEAD_ANGLE = "head angle"
    DRIP = "drip"
    RAIL_COVER = "rail cover"
    TIER_TRIM = "tier trim"
    CAP_TRIM = "cap trim"
    FLASHING = "headwall flashing"
    OUTSIDE_CLOSURE = "outside closure"
    INSIDE_CLOSURE = "inside closure"
    SHEET_SCREW = "sheet screw"
    LAP_SCREW = "lap screw"
    TRIM_SCREW = "trim screw"
    LEAF = "leaf"
    RAIL = "door rail"
    GUIDE = "door guide"
    RIDGE_VENT = "ridge vent"
    SASH = "sash"
    PANE = "pane"
    LOUVRE = "louvre"
    WALL_BLANKET = "wall blanket"
    ROOF_BLANKET = "roof blanket"
    SLAB = "slab"
    # What a body of other origin is told to be by its shape, and no more than that.
    SHEET = "sheet"
    MEMBER = "member"
    SCREW = "screw"
    UNKNOWN = "unknown"


WALL_SHEETS, ROOF_SHEETS = (Role.WALL_SHEET, Role.WALL_LIGHT), (Role.ROOF_SHEET, Role.ROOF_LIGHT)
LIGHTS = (Role.WALL_LIGHT, Role.ROOF_LIGHT)
"""Sheets that let light through."""


@dataclass(frozen=True, slots=True)
class Kind:
    """What follows from a role. prefix: of its marks. list: where it is listed. measure: how. steel:
    whether its weight is that of steel; what is not has none."""

    prefix: str
    list: List
    measure: Measure
    steel: bool


def _of(name: List, steel: bool, prefixes: dict[Role, str], measure: Measure = "member") -> dict[str, Kind]:
    return {role: Kind(prefix, name, measure, steel) for role, prefix in prefixes.items()}


KINDS: dict[str, Kind] = {
    **_of("sheets", True, {Role.WALL_SHEET: "W", Role.ROOF_SHEET: "R"}, "sheet"),
    **_of("sheets", False, {Role.WALL_LIGHT: "WL", Role.ROOF_LIGHT: "RL"}, "sheet"),
    **_of(
        "members",
        True,
        {
            Role.COLUMN: "C",
            Role.RAFTER: "RA",
            Role.KNEE: "K",
            Role.POST: "PO",
            Role.BASE_PLATE: "BP",
            Role.BASE_RAIL: "BR",
            Role.GIRT: "G",
            Role.EAVE_STRUT: "ES",
            Role.LEDGER: "LE",
            Role.PURLIN: "P",
            Role.RAKE_ANGLE: "RK",
            Role.JAMB: "J",
            Role.HEADER: "H",
            Role.SILL: "SI",
            Role.BRACE: "BX",
            Role.STRUT: "BS",
        },
    ),
    **_of(
        "trims",
        True,
        {
            Role.BASE_TRIM: "TB",
            Role.CORNER_TRIM: "TC",
            Role.INSIDE_CORNER_TRIM: "TI",
            Role.EAVE_TRIM: "TE",
            Role.GUTTER: "TG",
            Role.DOWNSPOUT: "TW",
            Role.RAKE_TRIM: "TR",
            Role.RIDGE_CAP: "TP",
            Role.BREAK_TRIM: "TX",
            Role.J_TRIM: "TJ",
            Role.SILL_TRIM: "TS",
            Role.JAMB_ANGLE: "TA",
            Role.HEAD_ANGLE: "TH",
            Role.DRIP: "TD",
            Role.RAIL_COVER: "TV",
            Role.TIER_TRIM: "TT",
            Role.CAP_TRIM: "TL",
            Role.FLASHING: "TF",
        },
    ),
    **_of("closures", False, {Role.OUTSIDE_CLOSURE: "CO", Role.INSIDE_CLOSURE: "CI"}),
    **_of("screws", True, {Role.SHEET_SCREW: "SS", Role.LAP_SCREW: "SL", Role.TRIM_SCREW: "ST"}),
    **_of("openings", False, {Role.LEAF: "D", Role.RAIL: "DR", Role.GUIDE: "DG", Role.RIDGE_VENT: "RV"}),
    **_of("openings", False, {Role.SASH: "WS", Role.PANE: "WP", Role.LOUVRE: "LV"}),
    **_of("insulation", False, {Role.WALL_BLANKET: "IW", Role.ROOF_BLANKET: "IR"}),
    **_of("slab", False, {Role.SLAB: "SB"}),
    **_of("sheets", True, {Role.SHEET: "S"}, "sheet"),
    **_of("members", True, {Role.MEMBER: "M"}),
    **_of("screws", True, {Role.SCREW: "SW"}, "body"),
    **_of("unknown", False, {Role.UNKNOWN: "U"}, "body"),
}
"""Every role by its name, in the order of a schedule."""


def list_of(role: str) -> List | None:
    """The list that a role belongs to; None for one that is not ours, as a file may have it."""
    kind = KINDS.get(role)
    return kind.list if kind else None


def roles_of(name: List) -> tuple[str, ...]:
    """The roles of a list, in order."""
    return tuple(role for role, kind in KINDS.items() if kind.list == name)
