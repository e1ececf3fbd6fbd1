"""The placing list: where each sheet goes on its face, as running distances from where the run starts.

Measured off the solids, from the steel corner or the centre line between two of them; where a run starts
is what was asked of the building, or, where nobody said, the side that its overlap ribs are on.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from ..pieces import Model, Piece
from ..place import dot
from ..roles import LEAN_TO, Role
from ..terms import Asked
from .clad_planes import CladPlane
from .faces import Vectors
from .laid_sheets import LaidSheet
from .standing import standing_corners

STEEL = (Role.BASE_RAIL, Role.GIRT, Role.EAVE_STRUT, Role.LEDGER, Role.PURLIN, Role.RAKE_ANGLE)
"""What reaches from corner to corner of the steel."""
DRAINS = (Role.GUTTER, Role.DOWNSPOUT)
SAME_WAY = 1 - 1e-6
RAISED = 150.0
"""mm; a foot that stands so much over the lowest of its face is over an opening. Ours."""
OTHER = {"left": "right", "right": "left"}


@dataclass(frozen=True, slots=True)
class PlacedSheet:
    """One sheet as it is laid (mm).

    number: in the order of laying; the pieces of one column share it. part: "header", "between" or "sill" of
    a column that openings divide, "course 1" and up of one whose sheets lap each other, else "". rib, edge:
    the running distances of its overlap rib's middle and of its leading edge; rib is None for a sheet that
    has none. overlap: the side of its overlap leg, seen from outside. foot: of its foot above the lowest of
    the face. lift: whether the overlap leg of the one before is lifted to slip it under. half: "left" or
    "right" of the centre line, for a run from there. piece: the sheet itself.
    """

    number: int
    part: str
    mark: str
    rib: float | None
    edge: float
    overlap: str
    head_up: bool
    foot: float
    lift: bool
    half: str
    piece: Piece

    @property
    def name(self) -> str:
        """The piece's."""
        return self.piece.name

    @property
    def raised(self) -> bool:
        """Whether it stands over an opening, or over another sheet."""
        return self.foot > RAISED


@dataclass(frozen=True, slots=True)
class PlacedDrain:
    """A gutter or a downspout along a wall that is laid from a corner, as those with low eaves are (mm).
    near, far: running distances of its ends, or of its sides."""

    mark: str
    role: str
    near: float
    far: float

    @property
    def middle(self) -> float:
        """Running distance of its middle."""
        return (self.near + self.far) / 2


@dataclass(frozen=True, slots=True)
class FacePlan:
    """The sheets of a face in the order of laying. start: "left", "right" or "centre"; first: the half
    that is laid first, of a run from the centre. corners: the steel's, along the plane (mm). drains: gutters
    along it, then its downspouts, as the run goes."""

    face: str
    start: str
    first: str
    sheets: tuple[PlacedSheet, ...]
    corners: tuple[float, float] = (0.0, 0.0)
    drains: tuple[PlacedDrain, ...] = ()

    @property
    def zero(self) -> float:
        """Where distances are read from, along the plane (mm)."""
        low, high = self.corners
        return {"left": low, "right": high}.get(self.start, (low + high) / 2)

    @property
    def said(self) -> str:
        """Where distances are read from."""
        if self.start == "centre":
            return f"from the centre line, {self.first} half first"
        return f"from the {self.start} steel corner"


@dataclass(frozen=True, slots=True)
class _Run:
    """Where distances on a face are read from: its corners along u, start and hand."""

    low: float
    high: float
    start: str
    hand: str

    def distance(self, u: float) -> float:
        """From the start; from the centre line both ways."""
        if self.start == "centre":
            return abs(u - (self.low + self.high) / 2)
        return u - self.low if self.start == "left" else self.high - u

    def side(self, u: float) -> str:
        """Which way the run goes at a place."""
        if self.start == "centre":
            return "left" if u < (self.low + self.high) / 2 else "right"
        return OTHER[self.start]

    def order(self, u: float) -> tuple[bool, float]:
        """What sheets are laid by: the half laid first, then outward."""
        return self.start == "centre" and self.side(u) != self.hand, self.distance(u)


def face_plans(
    model: Model, planes: Sequence[CladPlane], placed: Mapping[int, tuple[str, bool]]
) -> Iterator[FacePlan]:
    """A plan for each plane of sheets, in their order. placed: (mark, head up) of each piece by its id()."""
    drains = [(piece.label("face"), piece) for piece in model.pieces if piece.role in DRAINS]
    steel = [
        (_beside(piece.label("face")), standing_corners(piece))
        for piece in model.pieces
        if piece.role in STEEL
    ]
    for plane in planes:
        own = [corners for beside, corners in steel if beside == _beside(plane.name)]
        run = _run(model, plane, np.concatenate(own) if own else None)
        sheets = tuple(_sheets(plane, run, placed))
        along = [_drain(plane, run, piece, placed) for face, piece in drains if face == plane.name]
        along.sort(key=lambda one: (DRAINS.index(Role(one.role)), one.near))
        yield FacePlan(plane.name, run.start, run.hand, sheets, (run.low, run.high), tuple(along))


def _drain(plane: CladPlane, run: _Run, piece: Piece, placed: Mapping[int, tuple[str, bool]]) -> PlacedDrain:
    along = standing_corners(piece) @ np.array(plane.frame.x) - dot(plane.frame.x, plane.frame.origin)
    low, high = float(along.min()), float(along.max())
    near, far = sorted((run.distance(low), run.distance(high)))
    return PlacedDrain(placed.get(id(piece), (piece.mark, True))[0], piece.role, near, far)


def _beside(face: str) -> str:
    """Which lean-to a face is of, "" for the main building's: its steel is its own."""
    before, named, _ = face.partition(LEAN_TO)
    return before + named if named else ""


def _run(model: Model, plane: CladPlane, steel: Vectors | None) -> _Run:
    if steel is None:
        low, _, high, _ = plane.outline.bounds
    else:
        along = steel @ np.array(plane.frame.x) - dot(plane.frame.x, plane.frame.origin)
        low, high = float(along.min()), float(along.max())
    sides = [_overlap(plane, sheet)[1] for sheet in plane.sheets]
    seen = "right" if sides.count("right") > sides.count("left") else "left"
    hand = _asked(model.terms.overlap, plane) or seen
    return _Run(low, high, _asked(model.terms.start, plane) or hand, hand)


def _asked(asked: Asked, plane: CladPlane) -> str:
    """What was asked of a face; of a lean-to's nothing, where others that look its way differ."""
    sides = [side for normal, side in asked if dot(normal, plane.frame.z) > SAME_WAY]
    if _beside(plane.name) and len(sides) > 1:
        return ""
    return sides[-1] if sides else ""


def _overlap(plane: CladPlane, sheet: LaidSheet) -> tuple[float | None, str]:
    """Where the middle of its overlap rib is, and the side it is on."""
    rib = next((rib for rib in sheet.measured.majors if rib.overlap), None)
    if rib is None:
        return None, ""
    left, _, right, _ = sheet.outline.bounds
    bench = sheet.piece.place @ sheet.measured.bench
    u = left + rib.centre if dot(bench.x, plane.frame.x) > 0 else right - rib.centre
    return float(u), "left" if u < sheet.middle else "right"


def _sheets(plane: CladPlane, run: _Run, placed: Mapping[int, tuple[str, bool]]) -> Iterator[PlacedSheet]:
    lowest = min(float(sheet.outline.bounds[1]) for sheet in plane.sheets)
    lapped = {sheet for lap in plane.end_laps for sheet in (lap.upper, lap.under)}
    before = ""
    for number, column in enumerate(_columns(plane, run), 1):
        way = run.side(column[0].middle)
        lift = way == run.hand and before == way
        before = way
        for place, sheet in enumerate(column):
            left, foot, right, _ = (float(bound) for bound in sheet.outline.bounds)
            rib, side = _overlap(plane, sheet)
            mark, head_up = placed.get(id(sheet.piece), (sheet.piece.mark, True))
            raised = foot - lowest > RAISED
            under_another = place < len(column) - 1
            part = ("between" if under_another else "header") if raised else "sill" if under_another else ""
            if sheet in lapped:
                part = f"course {place + 1}"
            yield PlacedSheet(
                number,
                part,
                mark,
                None if rib is None else run.distance(rib),
                max(run.distance(left), run.distance(right)),
                side or run.hand,
                head_up,
                foot - lowest,
                lift,
                way if run.start == "centre" else "",
                sheet.piece,
            )


def _columns(plane: CladPlane, run: _Run) -> list[list[LaidSheet]]:
    """Sheets over each other, from below, in the order of laying."""
    columns: list[list[LaidSheet]] = []
    for sheet in plane.sheets:
        for column in columns:
            if _over(column[0], sheet):
                column.append(sheet)
                break
        else:
            columns.append([sheet])
    for column in columns:
        column.sort(key=lambda sheet: float(sheet.outline.bounds[1]))
    return sorted(columns, key=lambda column: run.order(column[0].middle))


def _over(one: LaidSheet, other: LaidSheet) -> bool:
    """Whether two share more than half of the narrower one's width."""
    (left, _, right, _), (start, _, end, _) = one.outline.bounds, other.outline.bounds
    return bool(min(right, end) - max(left, start) > min(right - left, end - start) / 2)
