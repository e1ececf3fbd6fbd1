"""Where the steel stands, as numbers that follow from the shell: frames, girts, purlins, posts.

Nothing is drawn here. Checks of the description and the layout share these numbers.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from math import ceil

from ..description.walls_around import around
from ..roles import Role
from .at_another import short_of
from .edges import AT_ANOTHER, Edge
from .end_laps import BESIDE_EDGE, ON_WALL, EndLap, UpSlope, barred_at, barred_by, end_laps, least_lap
from .face import Face, Region
from .girt_lines import LEAST_GIRT, GirtLines, between
from .headwall import frame_planes, headwall_of
from .pitch_break import break_over, break_under
from .roof_lines import Eave
from .shell import along_foot
from .sliding import rails_of
from .splices import splice_points
from .tiers import flat_of

LEAST_POST = 609.6
"""mm; a post stopped on a header must be at least 2 ft long to be worth its welds. Common practice."""

RIDGE_LINE = 76.2
"""mm; the ridge purlin's centre lies this far (3 in) below the sheets' upper ends, so that the ridge
cap's screws find it."""

BESIDE_RIDGE = 12.7
"""mm; between the purlins on both sides of a ridge (1/2 in each). Common practice, no source."""


@dataclass(frozen=True)
class SteelLines(GirtLines):
    """Numbers that frames and framing share."""

    @cached_property
    def frames(self) -> tuple[float, ...]:
        """y of all frames' centre planes, front to back."""
        return frame_planes(self.building)

    @cached_property
    def frame_half(self) -> float:
        """Half of what a frame takes up along the side walls under the eave: its wider member."""
        frame = self.building.frame
        return max(frame.column.width, frame.rafter.width) / 2

    def end_jamb(self, wall: Face, hand: str) -> bool:
        """Whether an upright stands at a clad wall's left or right end, since the next wall is open: it backs
        the corner trim's leg there. With flush girts the corner's column does, if it is the wall's own."""
        side = wall.beside(hand)
        return not wall.open_at(hand) and side.open and (self.setback > 0 or side.kind in AT_ANOTHER)

    def steel_end(self, wall: Face, hand: str) -> float:
        """u at which a wall's lines of steel end at its left or right corner: on it, or short of another
        building's wall."""
        short = short_of(self.building, wall.beside(hand))
        return short if hand == "left" else wall.width - short

    def hung_jamb(self, wall: Face, hand: str) -> bool:
        """Whether a short upright stands on the girt at the foot of hung sheets, beside that of the next
        wall, which is clad: it backs their end beside the corner rib."""
        beside = self.named[wall.beside(hand).other]
        if wall.hung is None or beside.hung or wall.beside(hand).open or not self.setback:
            return False
        girt = wall.hung.girt + self.building.framing.girt.width / 2
        return self.strut_foot(self.over_corner(wall, hand)) - girt > LEAST_GIRT

    def gap_spans(self, wall: Face) -> list[tuple[float, float]]:
        """What a wall's open bays take of its lines of steel, the uprights at their ends included."""
        jamb = self.building.framing.jamb.depth if self.setback else 0.0
        ends = [u for u, _ in wall.gap_ends()]
        return [(low - jamb * (low in ends), high + jamb * (high in ends)) for low, high in wall.gaps]

    def end_depth(self, wall: Face, hand: str) -> float:
        """How far in from a clad wall's steel line the upright at such an end reaches."""
        column = self.building.frame.column
        if self.setback:
            return self.building.framing.jamb.width
        return column.width if wall.raked else column.depth

    def over_corner(self, wall: Face, hand: str) -> Eave:
        """The eave at a wall's left or right corner."""
        return self.eaves.get(wall.name) or self.eaves[wall.beside(hand).other]

    @cached_property
    def longest_bay(self) -> float:
        """The longest of the bays along the side walls, from steel line to steel line at their ends."""
        planes = (0.0, *self.building.frame.stations, self.building.length)
        return max(b - a for a, b in pairwise(planes))

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

    def to_corner(self, gable: Face, hand: str, v: float) -> bool:
        """Whether a gable's girt at v runs to its left or right corner, where the side wall's meets it, clear
        of the end rafter."""
        half = self.building.framing.girt.width / 2
        eave = self.eave_beside(gable, hand)
        if eave is None:
            return True
        inner = self.setback + self.building.frame.column.depth
        clear = bool(self.setback) or v + half <= eave.plane(inner, self.rafter_under)
        if gable.half is not None:
            return clear
        at_foot = gable.hung is not None and v == gable.hung.girt
        return (at_foot or v in self.girts_down(self.named[eave.wall])) and clear

    def knee_reach(self, gable: Face, hand: str, top: float, depth: float) -> float:
        """u, from a gable's corner, of what the end frame's knee takes up below a height, for a member of
        that depth: nothing where it stays in front of the frames, or at another building's wall."""
        frame, eave = self.building.frame, self.eave_beside(gable, hand)
        if frame.knee is None or eave is None or eave.wall == self.building.joined:
            return 0.0
        low = self.rafter_foot(eave) - frame.knee_reach
        if not self.reaches_frames(depth) or top <= low - 2 * frame.knee.depth:
            return 0.0
        share = min(1.0, max(0.0, (top - low) / (frame.knee_reach * (1 + eave.sin))))
        along, beside = share * frame.knee_reach * eave.cos, frame.knee.depth * (1 + eave.cos)
        return self.setback + frame.column.depth + along + beside

    def purlins(self, slope: Face) -> tuple[float, ...]:
        """v of the purlins' centres on a slope, from its foot up; under a ridge the last one backs its cap,
        at a break of the pitch the last one below and the first one above back the trim there."""
        framing = self.building.framing
        half, spacing = framing.purlin.width / 2, framing.purlin_spacing
        first, last = framing.eave_strut.width / 2, self._last_purlin(slope)
        if (under := break_under(self.building, slope)) is not None:
            lean = under.beside(framing.roof_depth) + half + BESIDE_RIDGE
            first = max(lean, slope.upper.foot + RIDGE_LINE)
        over = () if slope.sides[2].kind in (Edge.HIGH_EAVE, Edge.HEADWALL) else (last,)
        between_them = between(first, last, spacing, last - 2 * half)
        return (*((first,) if under else ()), *between_them, *over)

    def _last_purlin(self, slope: Face) -> float:
        """v of what carries the heads of a slope's sheets. Under a ridge it keeps clear of its neighbour on
        the other slope, whose lower side leans towards it."""
        framing = self.building.framing
        head, length = slope.sides[2], self.slope_length(slope)
        if (over := break_over(self.building, slope)) is not None:
            lean = over.beside(framing.roof_depth)
        elif head.kind is Edge.RIDGE:
            lean = framing.roof_depth * -head.rise
        else:
            return length - framing.eave_strut.width / 2
        lean += framing.purlin.width / 2 + BESIDE_RIDGE
        return min(slope.upper.head - RIDGE_LINE, length - lean)

    def purlin_rows(self, slope: Face) -> tuple[float, ...]:
        """v of the screws along a slope's purlins: the middle of their flanges."""
        middle = self.nest.row if self.nest else flat_of(self.building.framing.purlin)[1]
        return tuple(v + middle for v in self.purlins(slope))

    def up_slope(self, slope: Face) -> UpSlope:
        """What the sheets of a slope reach over, and where they may lap."""
        lap = least_lap(self.building.sheets, abs(slope.sides[0].rise))
        most = slope.upper.skin.courses if self.building.joined else None  # its flashing is clear of those
        return UpSlope(slope.upper.foot, slope.upper.head, self.purlin_rows(slope), lap, most=most)

    def up_wall(self, wall: Face, region: Region) -> UpSlope:
        """The same of a wall: on girts of no seam, clear of openings and rafters, under its lowest head."""
        middle = flat_of(self.building.framing.girt)[1]
        lap = self.building.sheets.end_lap or ON_WALL
        barred = list(barred_by(wall, lap))
        barred += [barred_at(rail.seam, lap) for rail in rails_of(self.building, wall.name)]
        barred += [(low - lap - BESIDE_EDGE, high) for _, low, _, high in wall.cuts]
        rows = (v - middle for v in self.girts(wall) if not self.behind_seam(v))
        free = tuple(row for row in rows if not any(low < row < high for low, high in barred))
        heads = [v for _, v in region.clad[2:]]
        return UpSlope(region.foot, region.head, free, lap, min(heads), region.skin.courses)

    @cached_property
    def end_laps(self) -> dict[tuple[str, int], tuple[EndLap, ...] | None]:
        """Where sheets lap up each region of a face, by its number; None where steel lets none be short."""
        return {
            (face.name, number): end_laps(self.up(face, region), self.building.sheets)
            for face in (*self.walls, *self.slopes)
            for number, region in enumerate(face.regions)
        }

    def up(self, face: Face, region: Region) -> UpSlope:
        """What the sheets of a region reach over, and where they may lap."""
        return self.up_slope(face) if face.sloped else self.up_wall(face, region)

    def laps_of(self, face: Face, region: Region | None = None) -> tuple[EndLap, ...]:
        """Where sheets lap up a region of a face, the uppermost unless another is given, from its foot up."""
        number = len(face.regions) - 1 if region is None else face.regions.index(region)
        return self.end_laps.get((face.name, number)) or ()

    def slope_length(self, slope: Face) -> float:
        """From a slope's foot to its head, on the steel plane."""
        return max(v for _, v in slope.outline)

    def standing_posts(self, wall: Face) -> tuple[tuple[float, float | None], ...]:
        """(u, foot) of a gable's posts; foot None is on the slab, otherwise a door's header.

        A post in an opening's way is left out. With flush girts it stands in the header's own plane,
        and is stopped on a door's header where enough of it is left above.
        """
        frame, framing = self.building.frame, self.building.framing
        standing: list[tuple[float, float | None]] = []
        half = frame.post.width / 2
        for u in self.wanted_posts(wall):
            reach = half + (0.0 if self.setback else framing.jamb.width)
            way = [o for o in wall.openings if o.from_left - reach < u < o.from_left + o.width + reach]
            if not way:
                standing.append((u, None))
            elif not self.setback and len(way) == 1:
                head = way[0].sill + way[0].height + framing.header.width
                inside = way[0].from_left + half <= u <= way[0].from_left + way[0].width - half
                room = wall.top.lowered(self.rafter_under).height(u) - head
                if way[0].sill == 0 and inside and room >= LEAST_POST:
                    standing.append((u, head))
        return tuple(standing)

    def wanted_posts(self, wall: Face) -> tuple[float, ...]:
        """u of the posts that a gable was asked to have; unsaid, as many as its girts need to be spliced on,
        and in the centre of the back one where there is room, unless it stands open; with a lean-to so many
        that its bays are no longer than the building's."""
        frame = self.building.frame
        if not wall.raked:
            return ()
        back = wall.name == around(self.building.joined)[2]
        posts = frame.back_posts if back else frame.front_posts
        if posts is not None:
            return posts
        parts = ceil(wall.width / max(self.building.framing.sticks(Role.GIRT)))
        parts = max(parts, 2) if back else parts
        carries = headwall_of(self.building, wall.name) is not None
        if carries:  # its rafters stand on posts
            parts = max(parts, ceil(wall.width / self.longest_bay - 1e-9))
        if wall.open or (wall.hung and not carries) or self.post_room > wall.width / parts:
            return ()
        return tuple(wall.width * k / parts for k in range(1, parts))

    def footprints(self, wall: Face) -> tuple[tuple[float, float, float, float], ...]:
        """(low, high, before, after) of every column and post on the slab behind a wall: from side to side,
        and how far its base plate reaches past it to the left and to the right where girts by-pass."""
        reach = self.building.frame.plate_reach
        stubs = {u for u, foot in self.standing_posts(wall) if foot is not None}
        spans = [(u - half, u + half) for u, half in self.uprights(wall) if u not in stubs]
        plates = [(reach, reach)] * len(spans)
        # The plates of corner columns reach inward along the side walls only, with all their holes.
        corners = ((0.0, 0.0), (0.0, 0.0)) if wall.raked else ((0.0, 2 * reach), (2 * reach, 0.0))
        for hand, at, own in (("left", 0, corners[0]), ("right", -1, corners[1])):
            if wall.beside(hand).kind not in AT_ANOTHER:
                plates[at] = own
        return tuple((*span, *plate) for span, plate in zip(spans, plates, strict=True))

    def rafters(self, wall: Face) -> tuple[tuple[float, float], ...]:
        """u from side to side of every frame's rafter, or its wider column, along a side wall."""
        column, wide = self.building.frame.column.width, 2 * self.frame_half
        first, *between, last = self._along(wall)
        # In an end frame the outer faces of column and rafter are flush.
        spans = [(first - column / 2, first - column / 2 + wide)]
        spans += [(u - wide / 2, u + wide / 2) for u in between]
        return (*spans, (last + column / 2 - wide, last + column / 2))

    def _along(self, wall: Face) -> list[float]:
        """u of every frame's centre plane along a side wall, from its left."""
        return sorted(along_foot(wall.frame, y) for y in self.frames)

    def backs(self, face: Face) -> tuple[float, ...]:
        """u of what a face's lines of steel may be spliced on: frames, and posts of a gable."""
        if face.sloped:
            return tuple(sorted(along_foot(face.frame, y) for y in self.frames))
        return tuple(u for u, _ in self.uprights(face))

    def splice_points(self, face: Face) -> list[float]:
        """u of where a face's lines of steel end or may be spliced."""
        return splice_points((0.0, face.width), self.backs(face), self.arm(face))

    def uprights(self, wall: Face) -> tuple[tuple[float, float], ...]:
        """(u, half width) of every column and post that stands behind a wall, corners included."""
        frame = self.building.frame
        if wall.name in self.eaves:
            return tuple((u, frame.column.width / 2) for u in self._along(wall))
        half = frame.column.depth / 2
        corners = {"left": self.setback + half, "right": wall.width - self.setback - half}
        own = (hand for hand in corners if wall.beside(hand).kind not in AT_ANOTHER)
        ends = [(corners[hand], half) for hand in own]
        return tuple(sorted(ends + [(u, frame.post.width / 2) for u, _ in self.standing_posts(wall)]))
