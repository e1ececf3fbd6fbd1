"""Sheets, and what ends or holds them off, as a description states them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from ..catalog.profiles import RibProfile
from .opening import Wall

Hand = Literal["left", "right"]
Start = Literal["left", "right", "centre"]


@dataclass(frozen=True, slots=True)
class Run:
    """How the sheets of one face are laid. Left and right are those of someone outside, facing it.

    start: the corner the run leaves from, or "centre".
    first: for a run from the centre, the half that is laid first; otherwise equal to start. All
    sheets of a face keep one hand: their overlap rib is on this side.
    """

    start: Start
    first: Hand


@dataclass(frozen=True, slots=True)
class Skin:
    """Which sheets cover a face. thickness: of the coated sheet (mm). gauge: how it was asked for ("29 ga",
    "0.5 mm"), a label. off: how far a blanket, pressed on the steel, holds it off (mm). courses: how many may
    lie over others up a wall."""

    profile: RibProfile
    thickness: float
    gauge: str
    colour: str
    off: float = 0.0
    courses: int = 0


@dataclass(frozen=True, slots=True)
class Sheets:
    """The sheets (mm).

    sides, gables, roof: which cover the side walls, the gables and the slopes. overhang: of the roof past
    the eave steel line, in plan. ridge_gap: between each slope's sheets and the ridge, along the slope,
    give or take half a step. step: of the lengths that sheets come in; 0: any. pairs: whether two may be
    cut from one. tolerance: cuts of sheets that differ by no more are made one; 0: none. longest: that they
    come in. end_lap: of sheets up a face, one over the other; None: as the pitch asks. foot_gap: under the
    feet of wall sheets; foot_closures: whether foam is under their ribs there. cut_clearance: between an
    opening and the edge of the sheet cut around it. flange: thickness of the trim flanges that lie between
    framing and sheet; it sets the sheet plane off the steel line.
    """

    sides: Skin
    gables: Skin
    roof: Skin
    overhang: float
    ridge_gap: float
    step: float
    pairs: bool
    tolerance: float
    longest: float
    end_lap: float | None
    foot_gap: float
    foot_closures: bool
    cut_clearance: float
    flange: float


@dataclass(frozen=True, slots=True)
class Wainscot:
    """Sheets of their own on the foot of walls. height: from the top of the slab to the seam (mm)."""

    height: float
    walls: tuple[Wall, ...]
    skin: Skin


@dataclass(frozen=True, slots=True)
class Skirt:
    """Sheets on the upper part of walls that are open below. foot: from the top of the slab to the shelf of
    the drip under them (mm)."""

    foot: float
    walls: tuple[Wall, ...]


@dataclass(frozen=True, slots=True)
class Insulation:
    """Blankets between steel and sheets. walls, roof: how thick they are bought, as typed; "" for none. roll:
    how wide they come; longer: how much longer each is bought than it is drawn (mm)."""

    walls: str
    roof: str
    roll: float
    longer: float


@dataclass(frozen=True, slots=True)
class RidgeVents:
    """Vents on the ridge (mm). places: y where each begins; length: of each."""

    places: tuple[float, ...]
    length: float


@dataclass(frozen=True, slots=True)
class HalfWall:
    """Walls that are clad up to a height and open above. height: from the top of the slab to the cap (mm)."""

    height: float
    walls: tuple[Wall, ...]


@dataclass(frozen=True, slots=True)
class LightSheets:
    """Sheets of a face that let light through, of the profile of those beside them.

    face: by its name. numbers: which, in the order of laying, counted from 1. every: and every so many, 0
    for none.
    """

    face: str
    numbers: tuple[int, ...]
    every: int
    colour: str

    def chosen(self, count: int) -> tuple[int, ...]:
        """Which of so many sheets they are; of every so many none is the last, at an edge."""
        return (*self.numbers, *(range(self.every, count, self.every) if self.every else ()))
