"""Hoods over slots in the ridge cap: stand-ins for the vents that are bought, drawn so that they look like
what they are. What holds and screens them is their maker's. Common practice, no source."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import hypot

from ...place import Place, Point2
from ...recipe import Cut, Joined, Part, Prism, Recipe, Section, grid
from ...roles import Role
from ..steel.blocks import block
from .ridge_trims import ridge_runs, slots
from .trim_lines import TrimLines
from .trim_run import TrimRun, joints, lift

THROAT = 50.8
"""mm; how high a hood stands over the cap (2 in)."""
FOOT, EAVE, METAL = 12.7, 25.4, 2.0
"""mm; how far its feet stand outside the slot, its roof past them, and how thick it is drawn."""
INSET = 6.35
"""mm; an end's plate stands so far (1/4 in) within the slot, whose edges lean with the cap's pieces."""
OFF = 0.3
"""mm; between its feet and the cap. Ours."""
OPENING, POST = 152.4, 25.4
"""mm; how long an opening in its sides is at the least (6 in), and what stands between two."""
SILL, LINTEL = 12.7, 8.0
"""mm; what of its sides is left under such an opening, and over it."""


def ridge_vents(lines: TrimLines) -> Iterator[Part]:
    """The vents along a ridge, from the front."""
    for run in ridge_runs(lines):
        found = sorted(slots(lines, run.frame), key=lambda slot: run.frame.point((0.0, 0.0, slot[0]))[1])
        for number, (low, high, half) in enumerate(found, 1):
            hood = _Hood(run, half, _ride(lines, run, low, high))
            labels = tuple((key, value) for key, value in run.labels if key in ("face", "colour"))
            at = run.frame @ Place((0.0, 0.0, low))
            yield Part(
                f"ridge vent {number}",
                Role.RIDGE_VENT,
                ("openings", "ridge"),
                hood.body(high - low),
                at,
                (*labels, ("material", "vent")),
            )


def _ride(lines: TrimLines, run: TrimRun, low: float, high: float) -> float:
    """How high, between two places of a run, its outermost piece rides on the others."""
    stock, lap = lines.stock(run.role), lines.building.trim.lap
    starts = [start for start, _ in joints(run, stock, lap) if low < start < high]
    return max(lift(run, stock, lap, z) for z in (low, high, *starts)) * run.nest[1]


@dataclass(frozen=True, slots=True)
class _Hood:
    """In the x and y of a ridge cap's run. half: of the slot. ride: of the cap's outermost piece (mm)."""

    run: TrimRun
    half: float
    ride: float

    def body(self, length: float) -> Recipe:
        """Sides with openings under a roof, a plate at both ends."""
        sides = _prism(self._outline(), 0.0, length)
        ends = (_prism(self._end(), low, low + METAL) for low in (INSET, length - INSET - METAL))
        open_ = Cut(sides, tuple(self._openings(length)))
        return Joined(((open_, Place()), *((end, Place()) for end in ends)))

    def _cap(self, x: float) -> float:
        """The cap's outer face over x."""
        one, apex, other = self.run.line
        end = one if (x - apex[0]) * (one[0] - apex[0]) > 0 else other
        rise = (apex[1] - end[1]) / abs(end[0] - apex[0])
        return apex[1] - rise * abs(x - apex[0]) + self.run.thickness * hypot(1.0, rise) + self.ride

    def _at(self, way: float, out: float) -> float:
        """x so far out of the slot, on its left (-1) or its right."""
        return self.run.line[1][0] + way * (self.half + out)

    @property
    def _ridge(self) -> Point2:
        """Of the roof's underside."""
        x = self.run.line[1][0]
        return x, max(self._cap(x - 1e-6), self._cap(x + 1e-6)) + THROAT

    def _side(self, way: float) -> list[Point2]:
        """From the roof's edge in, along the underside and round a side."""
        inner, outer, edge = (self._at(way, out) for out in (FOOT, FOOT + METAL, FOOT + METAL + EAVE))
        foot = self._cap(inner) + OFF
        under = [(x, self._cap(x) + THROAT) for x in (edge, outer, inner)]
        return [*under[:2], (outer, foot), (inner, foot), under[2]]

    def _outline(self) -> list[Point2]:
        left, right = self._side(-1.0), self._side(1.0)
        (x, y), (a, b), (c, d) = self._ridge, right[0], left[0]
        return [(a, b + METAL), (x, y + METAL), (c, d + METAL), *left, (x, y), *reversed(right)]

    def _end(self) -> list[Point2]:
        """A plate from side to side, half in them, down to the cap beside the slot and across it; corners in
        the sides stand over their feet, so that no edge of it lies in a face of theirs."""
        (ridge, top), found = self._ridge, []
        for way in (-1.0, 1.0):
            side, slot = self._at(way, FOOT + METAL / 2), self._at(way, 0.0)
            corners = [
                (side, self._cap(side) + THROAT + METAL / 2),
                (side, self._cap(self._at(way, FOOT)) + OFF + METAL),
                (slot, self._cap(slot) + OFF),
            ]
            found += corners if way < 0 else corners[::-1]
        return [*found, (ridge, top + METAL / 2)]

    def _openings(self, length: float) -> Iterator[tuple[Recipe, Place]]:
        """The openings of both sides."""
        count = max(1, int((length - POST) / (OPENING + POST)))
        each = (length - POST) / count
        for way in (-1.0, 1.0):
            inner, outer = self._at(way, FOOT - 1.0), self._at(way, FOOT + METAL + 1.0)
            low, high = self._cap(inner) + OFF + SILL, self._cap(outer) + THROAT - LINTEL
            for number in range(count):
                hole = block(abs(outer - inner), high - low, each - POST)
                at = (grid(min(inner, outer)), grid(low), grid(number * each + POST))
                yield hole, Place(at)


def _prism(outline: list[Point2], low: float, high: float) -> Prism:
    points = Section(tuple((grid(x), grid(y), 0.0) for x, y in outline))
    return Prism(points, (0.0, 0.0, grid(low)), (0.0, 0.0, grid(high)))
