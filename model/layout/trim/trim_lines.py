"""How far out each trim stands, so that the layers close in the order they are fixed.

From the wall out at the eave: wall sheet, corner trim, outside closure, eave trim; then inside
closure, roof sheet, rake trim, ridge cap.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from ...catalog.trims import TrimProfile, trim_profiles
from ...description.building import Building
from ...envelope.at_another import short_of
from ...envelope.beside import at_gable
from ...envelope.edges import Edge
from ...envelope.face import Face
from ...envelope.headwall import headwalls
from ...envelope.opening_lines import OpeningLines
from ...envelope.pitch_break import break_under
from ...envelope.roof_lines import Eave
from ...envelope.run_on import run_on_drop
from ...envelope.shell import Shell
from ...envelope.skin_lines import (
    HEAD_CLEARANCE,
    corner_trim,
    foot,
    inside_bend,
    lap_room,
    outermost,
    over_in_line,
    seam_trim,
    wall_skins,
)
from ...place import Point3
from ...roles import Role
from ..skin.ribs import rise_of_lap

PAST_STEEL = 6.35
"""mm; trim over bare steel hangs this far (1/4 in) past it, so that it drips clear. Ours."""

KINDS = {
    Role.BASE_TRIM: "base",
    Role.CORNER_TRIM: "corner",
    Role.INSIDE_CORNER_TRIM: "corner",
    Role.EAVE_TRIM: "eave",
    Role.DOWNSPOUT: "eave",
    Role.RAKE_TRIM: "rake",
    Role.RIDGE_CAP: "ridge",
    Role.BREAK_TRIM: "ridge",
    Role.TIER_TRIM: "tier",
    Role.CAP_TRIM: "cap",
    Role.FLASHING: "headwall",
    Role.RAIL_COVER: "opening",
    **dict.fromkeys((Role.J_TRIM, Role.SILL_TRIM, Role.JAMB_ANGLE, Role.HEAD_ANGLE, Role.DRIP), "opening"),
}
"""What each folded piece trims, as descriptions name it."""


@dataclass(frozen=True)
class TrimLines:
    """Numbers that the trims share, mm. w: outward from a steel line. main: the building that this one is
    joined to, if any."""

    building: Building
    measured: Shell | None = None
    main: Building | None = None

    @cached_property
    def steel(self) -> OpeningLines:
        """The steel's numbers."""
        return OpeningLines(self.building, self.measured)

    def profile(self, kind: str) -> TrimProfile:
        """A kind's legs."""
        return trim_profiles()[kind]

    def stock(self, role: Role) -> tuple[float, ...]:
        """The lengths that a kind comes in, shortest first."""
        trim = self.building.trim
        if role is Role.GUTTER:  # run on site, in one length
            return (2 * max(wall.width for wall in self.steel.walls),)
        return dict(trim.stocks).get(KINDS[role], trim.stock)

    @property
    def thickness(self) -> float:
        """Of trim: what flanges between framing and sheet take up, so the sheet plane's distance."""
        return self.building.sheets.flange

    @property
    def lap_room(self) -> float:
        """Room for two thicknesses where pieces of a run lap, and a little for their lean."""
        return lap_room(self.building)

    @property
    def ride(self) -> float:
        """How far a piece of a run that rides on another is moved at most, in each way that it nests: a
        thickness, and a little for its lean."""
        return self.lap_room - self.thickness

    def crown(self, face: Face) -> float:
        """w of the outermost point of a face's sheets."""
        return max(outermost(self.building.sheets, skin) for skin in face.skins)

    @cached_property
    def roof_crown(self) -> float:
        """w of the outermost point of the roof's sheets, those that lie on others too."""
        skin = self.building.sheets.roof
        laps = max(len(self.steel.laps_of(slope)) for slope in self.steel.slopes)
        rise = 0.0 if skin.courses else laps * rise_of_lap(skin.profile, skin.thickness)
        return outermost(self.building.sheets, skin) + rise

    def labels(self, face: str, kind: str) -> tuple[tuple[str, str], ...]:
        """What geometry cannot say of a trim of one kind."""
        trim = self.building.trim
        colour = dict(trim.colours).get(kind, trim.colour)
        return (("face", face), ("gauge", trim.gauge), ("colour", colour), ("material", "steel"))

    @cached_property
    def side(self) -> float:
        """w of the corner trim's inner face on a side wall: clear of the gable sheets' overrun."""
        return corner_trim(self.building)

    def corner(self, wall: Face, hand: str) -> float:
        """w of the corner trim's inner face at a wall's left or right end: over its sheets, or on the upright
        that stands there where it is open."""
        if wall.open_at(hand):
            return 0.0
        if wall.beside(hand).kind is Edge.IN_LINE:
            return self.in_line
        if wall.beside(hand).kind is Edge.INSIDE_CORNER:
            return self.crown(wall)
        return self.crown(wall) if wall.beside(hand).covers else self.side

    def corner_leg(self, wall: Face, hand: str) -> float:
        """How far the corner trim's leg reaches along a wall from where its steel ends; over an upright it
        covers that; 0 where no trim stands, between two open walls."""
        side = wall.beside(hand)
        other, there = self.steel.named[side.other], "left" if hand == "right" else "right"
        if wall.open_at(hand) and other.open_at(there):
            return 0.0
        if side.kind is Edge.IN_LINE:
            return 0.0 if wall.open else self.profile("corner").in_plane - self.side
        if side.kind is Edge.INSIDE_CORNER:
            bend = inside_bend(self.building) - short_of(self.building, side)
            return 0.0 if wall.open else self.profile("inside corner").in_plane + bend
        if wall.open_at(hand):
            return self.steel.end_depth(other, there) + PAST_STEEL
        legs = self.profile("corner")
        return (legs.in_plane if side.covers else legs.out_of_plane) - self.corner(other, there)

    @cached_property
    def in_line(self) -> float:
        """w of the inner face of the trim over sheets that are in line with those of another building."""
        return over_in_line(self.building)

    @cached_property
    def corner_beyond(self) -> float:
        """w, on the wall that the building is joined to, of the inner face of the corner trim there, which a
        wainscot of that building may set further out."""
        assert self.main is not None
        if not at_gable(self.building):
            return corner_trim(self.main)
        return max(outermost(self.main.sheets, skin) for skin in wall_skins(self.main, gables=True))

    @cached_property
    def leg_beyond(self) -> float:
        """How far it reaches along that building's wall from the corner there, as the corner trim over it."""
        legs = self.profile("corner")
        leg = legs.out_of_plane if at_gable(self.building) else legs.in_plane
        return leg - self.corner_beyond

    @cached_property
    def end_leg(self) -> float:
        """How far the trim at the end of an open bay reaches over the sheets."""
        return self.profile("corner").out_of_plane - self.side

    def head(self, wall: Face) -> float:
        """w of the inner face of the trim over a wall's head, eave or rake trim: over the corner trim."""
        if wall.open_above:
            return self.lap_room
        beside = (self.steel.named[wall.beside(hand).other] for hand in ("left", "right"))
        # The trim over the ends of hung sheets beside it lies over its own corner trim.
        over = self.lap_room if wall.hung is None and any(one.hung for one in beside) else 0.0
        ends = max(self.crown(wall), self.in_line) if wall.named(Edge.IN_LINE) else self.crown(wall)
        return (self.side if wall.name in self.steel.eaves else ends) + over + self.lap_room

    def head_beside(self, face: Face, hand: str) -> float:
        """The same of the wall at a face's left or right end, or of the roof's end out over it."""
        return self.head(self.steel.verge(self.steel.named[face.beside(hand).other]))

    def guttered(self, wall: Face) -> bool:
        """Whether a wall's eave has a gutter: where asked for, at low eaves of clad walls that drain onto no
        lean-to."""
        eave, building = self.steel.eaves.get(wall.name), self.building
        drained = {one.wall for one in headwalls(building)}
        return (
            building.trim.gutters
            and eave is not None
            and eave.rise > 0.0
            and not (wall.open_above or wall.gaps)
            and wall.name not in drained | {building.joined}
        )

    def eave_drop(self, eave: Eave) -> float:
        """How far an eave trim reaches down from its bend: over the sheets' heads, or past the eave strut
        where the wall is open, be it in a bay; past the corner trims' heads where these stop under purlins
        that run on over a gable."""
        wall = self.steel.named[eave.wall]
        if self.steel.run_on:
            return run_on_drop(self.building, eave.rise)
        if not (wall.open_above or wall.gaps):
            return self.profile("eave").out_of_plane
        return eave.height - self.steel.strut_foot(eave) + PAST_STEEL - self.head(wall) * eave.rise

    def under_eave(self, eave: Eave) -> float:
        """Height under which screws in upright trims stay: the strut's foot, or the edge of an eave trim that
        reaches further down."""
        foot = self.steel.strut_foot(eave)
        if not self.steel.run_on:
            return foot
        out = self.head(self.steel.named[eave.wall])
        return min(foot, eave.height - max(0.0, out * eave.rise) - self.eave_drop(eave))

    def rake_drop(self, gable: Face) -> float:
        """How far a rake trim reaches down from the roof's steel plane, square to it: past the sheets' cut
        edges, or the rake angle where the gable is open."""
        if gable.open_above:
            return self.steel.rake_leg + PAST_STEEL
        return self.head_clearance + max(self.profile("rake").out_of_plane, self._past_breaks)

    @cached_property
    def _past_breaks(self) -> float:
        """The same where a lower slope falls away under an upper one's rake trims: past the heads there."""
        found = (break_under(self.building, slope) for slope in self.steel.slopes)
        return max((one.below_foot for one in found if one), default=0.0) + PAST_STEEL

    @cached_property
    def seam(self) -> float:
        """w of a tier trim's front leg, inside: over the corner trim, the same on all walls, so that two meet
        at a corner."""
        return seam_trim(self.building)

    @cached_property
    def ridge(self) -> float:
        """w of the ridge cap's inner face on a slope: over the rake trim."""
        return self.roof_crown + self.lap_room

    @cached_property
    def at_wall(self) -> float:
        """From another building's steel line to what stands clear of its corner trim."""
        return self.corner_beyond + self.thickness + self.lap_room

    @cached_property
    def bottom(self) -> float:
        """Height of the concrete under the walls' sheets."""
        return -self.building.slab.below

    @cached_property
    def base_leg(self) -> float:
        """Of the base trim's upright leg: up the base rail from where sheets hang to, or from a ledge."""
        return self.profile("base").in_plane + self.building.slab.below

    @cached_property
    def door_foot(self) -> float:
        """Height that the trims beside a door go down to: the concrete, or the base trim that hangs."""
        return self.foot if self.building.slab.hang else self.bottom

    @cached_property
    def foot(self) -> float:
        """Height of the sheets' feet."""
        return foot(self.building)

    @property
    def towards_wind(self) -> Point3:
        """The way it mostly comes from: out of the wall of that name, however the building is turned."""
        return self.steel.named[self.building.trim.wind].frame.z

    @property
    def head_clearance(self) -> float:
        """Between heads and what lies over them."""
        return HEAD_CLEARANCE
