"""Where the steel stands, as numbers that follow from the description: setbacks, roof planes, lines.

Nothing is drawn here. Checks of the description and the layout share these numbers.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from math import ceil

from .building import FaceName, Opening, OpeningKind
from .roof_lines import RoofLines

LEAST_GIRT = 304.8
"""mm; a gable girt shorter than a foot would hold nothing. Common practice, no source."""

LEAST_POST = 609.6
"""mm; a post stopped on a header must be at least 2 ft long to be worth its welds. Common practice."""

RIDGE_LINE = 76.2
"""mm; the ridge purlin's centre lies this far (3 in) below the sheets' upper ends, so that the ridge
cap's screws find it."""

LEAF_THICKNESS = {"walk door": 44.45, "overhead door": 50.8, "window": 50.8}
"""mm; of leaves and sashes as drawn: stand-ins, so that the building can be looked at."""

LEAF_GAP = 3.175
"""mm; between a leaf or sash and the steel around it (1/8 in). Common practice, no source."""


@dataclass(frozen=True)
class SteelLines(RoofLines):
    """Numbers that frames, framing and openings share."""

    @cached_property
    def side_girts(self) -> tuple[float, ...]:
        """Heights of the side walls' girt centres, from the slab up, all below the eave strut."""
        framing = self.building.framing
        half = framing.girt.width / 2
        top = self.strut_foot - half
        if framing.girt_heights:
            return tuple(v for v in framing.girt_heights if v <= top)
        return _between(framing.base_rail.depth / 2, self.building.eave_height, framing.girt_spacing, top)

    @cached_property
    def gable_peak(self) -> float:
        """Height under the ridge that a gable girt's centre must stay below, had it no length."""
        girt = self.building.framing.girt
        return self.roof(self.building.width / 2, self.rake_limit(girt.depth)) - girt.width / 2

    @cached_property
    def highest_girt(self) -> float:
        """Height of the highest gable girt's centre that is long enough."""
        return self.gable_peak - LEAST_GIRT / 2 * self.rise

    @cached_property
    def gable_girts(self) -> tuple[float, ...]:
        """Heights of the gables' girt centres: those of the side walls, then on under the rakes."""
        framing = self.building.framing
        if framing.girt_heights:
            return tuple(v for v in framing.girt_heights if v in self.side_girts or self._clear(v))
        eave, peak = self.building.eave_height, self.gable_peak
        count = ceil((peak - eave) / framing.girt_spacing - 1e-9)
        above = [eave + (peak - eave) * k / count for k in range(count)] if count > 0 else []
        return self.side_girts + tuple(v for v in above if self._clear(v))

    def _clear(self, v: float) -> bool:
        """Whether a gable girt at v passes above the side walls' girts and is long enough."""
        over_walls = max(self.side_girts, default=0.0) + self.building.framing.girt.width
        return over_walls <= v <= self.highest_girt

    @cached_property
    def post_room(self) -> float:
        """Least distance of a gable post from a corner: clear of column, knee, strut and its own plate."""
        frame = self.building.frame
        half = frame.post.width / 2
        return max(self.knee_room + half + frame.plate_reach, self.strut_stop + half)

    @cached_property
    def knee_room(self) -> float:
        """u, from a gable's corner, of what the end frame's column and knee take up."""
        frame = self.building.frame
        knee = frame.knee_reach + frame.knee.depth if frame.knee else 0.0
        return self.setback + frame.column.depth + knee

    @cached_property
    def frame_half(self) -> float:
        """Half of what a frame takes up along the side walls under the eave: its wider member."""
        frame = self.building.frame
        return max(frame.column.width, frame.rafter.width) / 2

    def across_gable(self, v: float) -> bool:
        """Whether a gable's girt at v runs from corner to corner, clear of the end rafters."""
        half = self.building.framing.girt.width / 2
        inner = self.setback + self.building.frame.column.depth
        clear = bool(self.setback) or v + half <= self.roof(inner, self.rafter_under)
        return v in self.side_girts and clear

    def knee_reach(self, top: float, depth: float) -> float:
        """u, from a gable's corner, of what the end frame's knee takes up below a height, for a member of
        that depth: nothing where it stays in front of the frames."""
        frame = self.building.frame
        inner = self.setback + frame.column.depth
        if frame.knee is None or not self.reaches_frames(depth):
            return 0.0
        rise = frame.knee_reach * (1 + self.sin)
        low = self.rafter_foot - frame.knee_reach
        if top <= low - 2 * frame.knee.depth:
            return 0.0
        share = min(1.0, max(0.0, (top - low) / rise))
        beside = frame.knee.depth * (1 + self.cos)
        return inner + share * frame.knee_reach * self.cos + beside

    @cached_property
    def purlins(self) -> tuple[float, ...]:
        """v of the purlins' centres on a slope, from the eave up; the last one backs the ridge cap.

        The last one keeps clear of its neighbour on the other slope, whose lower side leans towards it.
        """
        framing, sheets = self.building.framing, self.building.sheets
        half = framing.purlin.width / 2
        lean = framing.purlin.depth * self.rise + half + 12.7
        last = self.rafter_length - max(sheets.ridge_gap + RIDGE_LINE, lean)
        first = framing.eave_strut.width / 2
        return (*_between(first, last, framing.purlin_spacing, last - 2 * half), last)

    @cached_property
    def frames(self) -> tuple[float, ...]:
        """y of all frames' centre planes, front to back."""
        half, frame = self.building.frame.column.width / 2, self.building.frame
        inset = self.setback + half
        return (inset, *frame.stations, self.building.length - inset)

    def standing_posts(self, wall: FaceName) -> tuple[tuple[float, float | None], ...]:
        """(u, foot) of a gable's posts; foot None is on the slab, otherwise a door's header.

        A post in an opening's way is left out. With flush girts it stands in the header's own plane,
        and is stopped on a door's header where enough of it is left above.
        """
        frame, framing = self.building.frame, self.building.framing
        wanted = {"front": frame.front_posts, "back": frame.back_posts}.get(wall, ())
        standing: list[tuple[float, float | None]] = []
        half = frame.post.width / 2
        for u in wanted:
            way = [o for o in self.building.openings if o.wall == wall and self._in_the_way(u, o)]
            if not way:
                standing.append((u, None))
            elif not self.setback and len(way) == 1:
                head = way[0].sill + way[0].height + framing.header.width
                inside = way[0].from_left + half <= u <= way[0].from_left + way[0].width - half
                room = self.roof(u, self.rafter_under) - head
                if way[0].sill == 0 and inside and room >= LEAST_POST:
                    standing.append((u, head))
        return tuple(standing)

    def _in_the_way(self, u: float, opening: Opening) -> bool:
        reach = self.building.frame.post.width / 2 + (
            0.0 if self.setback else self.building.framing.jamb.width
        )
        return opening.from_left - reach < u < opening.from_left + opening.width + reach

    def jamb_reach(self, opening: Opening) -> tuple[float, float | None]:
        """(low, high): heights an opening's jambs run between; high None is up to the rake.

        From the slab, or the nearest line under the sill, up to the nearest line over the header that
        passes the whole opening.
        """
        framing, wall = self.building.framing, opening.wall
        half = framing.girt.width / 2
        side = wall in ("left", "right")
        girts = self.side_girts if side else self.gable_girts
        low = 0.0
        if opening.sill > 0:
            under = [v + half for v in girts if v + half <= opening.sill - framing.sill.width]
            low = max(under, default=framing.base_rail.depth)
        head = opening.sill + opening.height + framing.header.width
        left, right = self.jamb_span(opening)
        over = [v - half for v in girts if v - half >= head and self._passes(wall, v, left, right)]
        return low, min(over, default=self.strut_foot if side else None)

    def leaf_back(self, kind: OpeningKind) -> float:
        """How far in the back of an opening's leaf or sash stands from the steel line; 0 without one."""
        jamb, thick = self.building.framing.jamb.depth, LEAF_THICKNESS.get(kind, 0.0)
        if kind == "overhead door":
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

    def _passes(self, wall: FaceName, v: float, left: float, right: float) -> bool:
        """Whether a girt's line at v covers left..right."""
        if wall in ("left", "right") or self.across_gable(v):
            return True
        framing = self.building.framing
        top = v + framing.girt.width / 2
        limit = self.rake_limit(framing.girt.depth)
        return self.roof(left, limit) >= top and self.roof(right, limit) >= top

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
            return ((left, opening.from_left), (opening.from_left + opening.width, right))
        return ((left, right),)

    def footprints(self, wall: FaceName) -> tuple[tuple[float, float, float, float], ...]:
        """(low, high, before, after) of every column and post on the slab behind a wall: from side to side,
        and how far its base plate reaches past it to the left and to the right where girts by-pass."""
        reach = self.building.frame.plate_reach
        stubs = {u for u, foot in self.standing_posts(wall) if foot is not None}
        spans = [(u - half, u + half) for u, half in self.uprights(wall) if u not in stubs]
        plates = [(reach, reach)] * len(spans)
        # The plates of corner columns reach inward along the side walls only, with all their holes.
        corners = (
            ((0.0, 0.0), (0.0, 0.0)) if wall in ("front", "back") else ((0.0, 2 * reach), (2 * reach, 0.0))
        )
        plates[0], plates[-1] = corners
        return tuple((*span, *plate) for span, plate in zip(spans, plates, strict=True))

    def rafters(self, wall: FaceName) -> tuple[tuple[float, float], ...]:
        """u from side to side of every frame's rafter, or its wider column, along a side wall."""
        column, wide = self.building.frame.column.width, 2 * self.frame_half
        first, *between, last = self.frames
        # In an end frame the outer faces of column and rafter are flush.
        spans = [(first - column / 2, first - column / 2 + wide)]
        spans += [(y - wide / 2, y + wide / 2) for y in between]
        spans += [(last + column / 2 - wide, last + column / 2)]
        length = self.building.length
        return tuple(spans) if wall == "right" else tuple((length - b, length - a) for a, b in spans[::-1])

    def uprights(self, wall: FaceName) -> tuple[tuple[float, float], ...]:
        """(u, half width) of every column and post that stands behind a wall, corners included."""
        frame = self.building.frame
        if wall in ("left", "right"):
            along = self.frames if wall == "right" else [self.building.length - y for y in self.frames]
            return tuple((u, frame.column.width / 2) for u in sorted(along))
        corner = self.setback + frame.column.depth / 2
        ends = [(corner, frame.column.depth / 2), (self.building.width - corner, frame.column.depth / 2)]
        return tuple(sorted(ends + [(u, frame.post.width / 2) for u, _ in self.standing_posts(wall)]))


def _between(first: float, last: float, spacing: float, top: float) -> tuple[float, ...]:
    """Even divisions of first..last no longer than spacing, both ends left out, none above top."""
    count = max(1, ceil((last - first) / spacing - 1e-9))
    return tuple(v for k in range(1, count) if (v := first + (last - first) * k / count) <= top + 1e-9)
