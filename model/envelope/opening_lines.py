"""Where the steel around an opening stands, and what it does to the girts beside it."""

from __future__ import annotations

from dataclasses import dataclass

from ..description.opening import OVERHEAD, Opening, OpeningKind
from .face import Face
from .steel_lines import SteelLines
from .top_line import TopLine

LEAF_THICKNESS = {
    "walk door": 44.45,
    "double door": 44.45,
    "overhead door": 50.8,
    "roll-up door": 25.4,
    "window": 50.8,
    "vent": 50.8,
}
"""mm; of leaves, sashes and louvres as drawn: stand-ins, so that the building can be looked at."""

LEAF_GAP = 3.175
"""mm; between a leaf or sash and the steel around it (1/8 in). Common practice, no source."""


@dataclass(frozen=True)
class OpeningLines(SteelLines):
    """Numbers that openings share with the framing around them."""

    def jamb_reach(self, opening: Opening) -> tuple[float, float | None]:
        """(low, high): heights an opening's jambs run between; high None is up to the rake.

        From the slab, or the nearest line under the sill, up to the nearest line over the header that
        passes the whole opening.
        """
        framing, wall = self.building.framing, self.named[opening.wall]
        half = framing.girt.width / 2
        girts = self.girts(wall)
        low = 0.0
        if opening.sill > 0:
            under = [v + half for v in girts if v + half <= opening.sill - framing.sill.width]
            low = max(under, default=framing.base_rail.depth)
        head = opening.sill + opening.height + framing.header.width
        left, right = self.jamb_span(opening)
        over = [v - half for v in girts if v - half >= head and self._passes(wall, v, left, right)]
        if eave := self.eaves.get(wall.name):
            return low, min(over, default=self.strut_foot(eave))
        # Jambs deeper than the girts stop under a rafter that those pass in front of.
        rake = self.jamb_limit(wall)
        return low, min((v for v in over if v <= min(map(rake.height, (left, right)))), default=None)

    def jamb_limit(self, wall: Face) -> TopLine:
        """What jambs of a gable that run up to the rake stop at."""
        return wall.top.lowered(self.rake_limit(self.building.framing.jamb.depth))

    def _stands(self, wall: Face, high: float | None, sides: tuple[float, float], foot: float) -> bool:
        """Whether a jamb, from side to side, is in the way of a girt whose lower edge is at a height."""
        heads = map(self.jamb_limit(wall).height, sides) if high is None else (high,)
        return foot < max(heads)

    def leaf_back(self, kind: OpeningKind) -> float:
        """How far in the back of an opening's leaf or sash stands from the steel line; 0 without one."""
        jamb, thick = self.building.framing.jamb.depth, LEAF_THICKNESS.get(kind, 0.0)
        if kind in OVERHEAD:
            return jamb + LEAF_GAP + thick
        return max((jamb + thick) / 2, thick) if thick else 0.0

    def opening_depth(self, opening: Opening) -> float:
        """How far in an opening's jambs, header and sill reach from the steel line."""
        framing = self.building.framing
        sill = framing.sill.depth if opening.sill > 0 else 0.0
        return max(framing.jamb.depth, framing.header.depth, sill)

    def jamb_span(self, opening: Opening) -> tuple[float, float]:
        """u from the outside of the left jamb to the outside of the right one."""
        jamb = self.building.framing.jamb.width
        return opening.from_left - jamb, opening.from_left + opening.width + jamb

    def _passes(self, wall: Face, v: float, left: float, right: float) -> bool:
        """Whether a girt's line at v covers left..right."""
        if wall.name in self.eaves:
            return True
        framing = self.building.framing
        top = v + framing.girt.width / 2
        limit = wall.top.lowered(self.rake_limit(framing.girt.depth))
        return all(
            self.to_corner(wall, hand, v) or limit.height(u) >= top
            for hand, u in (("left", left), ("right", right))
        )

    def interruption(self, opening: Opening, v: float) -> tuple[tuple[float, float], ...]:
        """What an opening cuts out of a girt's line at v: nothing, jamb to jamb, or, over its header and
        under its sill, the jambs alone."""
        framing = self.building.framing
        half = framing.girt.width / 2
        low, high = self.jamb_reach(opening)
        if v + half <= low or (high is not None and v - half >= high):
            return ()
        left, right = self.jamb_span(opening)
        over = v - half >= opening.sill + opening.height + framing.header.width
        if over or v + half <= opening.sill - framing.sill.width:
            jambs = (left, opening.from_left), (opening.from_left + opening.width, right)
            wall = self.named[opening.wall]
            return tuple(jamb for jamb in jambs if self._stands(wall, high, jamb, v - half))
        return ((left, right),)
