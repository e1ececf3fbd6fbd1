"""Heights of a building's girts: on the walls, behind the ends of sheets, under the rakes."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from math import ceil

from .face import Face, Half
from .headwall import EndGirts, Headwall, end_girts, headwall_of
from .roof_lines import Eave, RoofLines
from .tiers import Seam, seam_girts, seam_of
from .top_line import TopLine

LEAST_GIRT = 304.8
"""mm; a gable girt shorter than a foot would hold nothing. Common practice, no source."""


@dataclass(frozen=True)
class GirtLines(RoofLines):
    """Numbers that girts and what stands between them share."""

    @cached_property
    def girt_limit(self) -> TopLine:
        """What the girts of a gable stay under."""
        gable = max((wall for wall in self.walls if wall.raked), key=lambda wall: wall.top.peak[1])
        return gable.top.lowered(self.rake_limit(self.building.framing.girt.depth))

    @cached_property
    def gable_peak(self) -> float:
        """Height that a gable girt's centre must stay below, had it no length."""
        return self.girt_limit.peak[1] - self.building.framing.girt.width / 2

    @cached_property
    def highest_girt(self) -> float:
        """Height of the highest gable girt's centre that is long enough."""
        runs = sum(1 / fall for fall in self.girt_limit.falls if fall)
        return self.gable_peak - LEAST_GIRT / runs

    @cached_property
    def _levels(self) -> tuple[float, ...]:
        """Heights of all girts' centres: divisions of the lowest side wall, then on under the rakes."""
        framing = self.building.framing
        if framing.girt_heights:
            kept = [v for v in framing.girt_heights if not self.behind_seam(v)]
            return tuple(sorted([*kept, *(v for group in self.girts_of_ends for v in group.girts)]))
        eave, peak, foot = self.low_eave.height, self.gable_peak, framing.base_rail.depth / 2
        spacing, top = framing.girt_spacing, self._top(self.low_eave)
        low: tuple[float, ...] = ()
        start = foot
        for group in self.girts_of_ends:
            low, start = (*low, *between(start, group.low, spacing, top), *group.girts), group.high
        low = (*low, *between(start, eave, spacing, top))
        count = ceil((peak - eave) / framing.girt_spacing - 1e-9)
        return low + tuple(eave + (peak - eave) * k / count for k in range(max(0, count)))

    def corner_top(self, eave: Eave) -> float:
        """What the steel at a side wall's corners stays under: the eave strut, and the foot of a rake angle
        deeper than it, of one hung under purlins that run on over the corner."""
        if not self.setback:
            return self.strut_foot(eave)
        rake = eave.plane(0.0 if self.run_on else self.strut_stop, self.rake_back[1])
        return min(self.strut_foot(eave), rake)

    def _top(self, eave: Eave) -> float:
        """What a side wall's girts stay under, by their centres, since they run around the building."""
        return self.corner_top(eave) - self.building.framing.girt.width / 2

    @property
    def past_upright(self) -> float:
        """From a corner past the upright of the next wall, which is clad, and its screws' points."""
        return max(self.building.framing.jamb.width, self.building.screws.length)

    @cached_property
    def seam(self) -> Seam | None:
        """Where tiers meet."""
        return seam_of(self.building)

    def behind_seam(self, v: float) -> bool:
        """Whether a girt at v would touch those behind sheets' ends, or stand between such a pair."""
        wide = self.building.framing.girt.width
        return any(group.girts[0] - wide < v < group.girts[-1] + wide for group in self.girts_of_ends)

    @cached_property
    def seam_girts(self) -> tuple[float, ...]:
        """Heights of the girts behind a seam."""
        return seam_girts(self.building)

    @cached_property
    def girts_of_ends(self) -> tuple[EndGirts, ...]:
        """The girts behind a seam, and those at lean-tos' roofs, from the lowest up. They run around the
        building, so that girts meet at its corners, whichever walls have such ends."""
        return tuple(end_girts(self.building))

    def sheet_ends(self, wall: Face) -> list[Seam | Headwall]:
        """Where sheets of a wall end over each other, from the lowest up."""
        ends: list[Seam | Headwall] = [self.seam] if self.seam and wall.tiered else []
        headwall = headwall_of(self.building, wall.name)
        return [*ends, headwall] if headwall and not (wall.hung or headwall.inset) else ends

    def girts(self, wall: Face) -> tuple[float, ...]:
        """Heights of a wall's girts, from the slab up; of hung sheets from the one at their feet up, of a
        half wall up to the one at its top."""
        if wall.half is not None:
            return (*self._under_half(wall.half), wall.half.girt)
        if wall.hung is None:
            return self.girts_down(wall)
        clear = wall.hung.girt + self.building.framing.girt.width
        return (wall.hung.girt, *(v for v in self.girts_down(wall) if v >= clear))

    def upright_at(self, wall: Face, hand: str) -> bool:
        """Whether a corner trim is held up an upright: where a wall stands open there, or girts end at the
        column that they are flush with; else at the girts alone."""
        return not self.setback or wall.open_at(hand) or wall.beside(hand).open

    def corner_girts(self, before: Face, after: Face) -> tuple[float, ...]:
        """Heights of the girts that alone hold both legs of the trim where two walls meet, the one on its
        left first: of the wall on which they end lower. None where an upright holds it."""
        if self.upright_at(before, "right") or self.upright_at(after, "left"):
            return ()
        return min((self.girts(wall) for wall in (before, after)), key=lambda girts: max(girts, default=0.0))

    def _under_half(self, half: Half) -> tuple[float, ...]:
        """Girts under the one at a half wall's top: those asked for, or even divisions."""
        framing, clear = self.building.framing, half.girt - self.building.framing.girt.width
        if framing.girt_heights:
            return tuple(sorted(v for v in framing.girt_heights if v <= clear))
        return between(framing.base_rail.depth / 2, half.girt, framing.girt_spacing, clear)

    def girts_down(self, wall: Face) -> tuple[float, ...]:
        """Heights of the girts of a wall that is clad down to the slab."""
        if (eave := self.eaves.get(wall.name)) is not None:
            top = self._top(eave) + (0.0 if self.building.framing.girt_heights else 1e-9)
            return tuple(v for v in self._levels if v <= top)
        return tuple(v for v in self._levels if v in self.side_girts or self._clear(v))

    @cached_property
    def side_girts(self) -> tuple[float, ...]:
        """Heights of the girts of the lowest side wall."""
        return self.girts_down(self.named[self.low_eave.wall])

    @cached_property
    def gable_girts(self) -> tuple[float, ...]:
        """Heights of the gables' girts."""
        return self.girts_down(next(wall for wall in self.walls if wall.raked))

    def _clear(self, v: float) -> bool:
        """Whether a gable girt at v passes above the side walls' girts and is long enough."""
        over_walls = max(self.side_girts, default=0.0) + self.building.framing.girt.width
        return over_walls <= v <= self.highest_girt


def between(first: float, last: float, spacing: float, top: float) -> tuple[float, ...]:
    """Even divisions of first..last no longer than spacing, both ends left out, none above top."""
    count = max(1, ceil((last - first) / spacing - 1e-9))
    return tuple(v for k in range(1, count) if (v := first + (last - first) * k / count) <= top + 1e-9)
