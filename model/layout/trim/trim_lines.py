"""How far out each trim stands, so that the layers close in the order they are fixed.

From the wall out at the eave: wall sheet, corner trim, outside closure, eave trim; then inside
closure, roof sheet, rake trim, ridge cap.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from ...catalog.trims import TrimProfile, trim_profiles
from ...description.building import Building
from ...envelope.face import Face
from ...envelope.opening_lines import OpeningLines
from ...envelope.shell import Shell
from ...envelope.skin_lines import HEAD_CLEARANCE, corner_trim, foot, lap_room, outermost, wall_skins
from ...place import Point3

WIND: dict[str, Point3] = {"front": (0.0, -1.0, 0.0), "back": (0.0, 1.0, 0.0)}


@dataclass(frozen=True)
class TrimLines:
    """Numbers that the trims share, mm. w: outward from a steel line."""

    building: Building
    measured: Shell | None = None

    @cached_property
    def steel(self) -> OpeningLines:
        """The steel's numbers."""
        return OpeningLines(self.building, self.measured)

    def profile(self, kind: str) -> TrimProfile:
        """A kind's legs."""
        return trim_profiles()[kind]

    @property
    def thickness(self) -> float:
        """Of trim: what flanges between framing and sheet take up, so the sheet plane's distance."""
        return self.building.sheets.flange

    @property
    def lap_room(self) -> float:
        """Room for two thicknesses where pieces of a run lap, and a little for their lean."""
        return lap_room(self.building)

    def crown(self, face: Face) -> float:
        """w of the outermost point of a face's sheets."""
        return max(outermost(self.building.sheets, region.skin) for region in face.regions)

    @cached_property
    def gable_crown(self) -> float:
        """w of the outermost point of the gables' sheets."""
        return max(outermost(self.building.sheets, skin) for skin in wall_skins(self.building, gables=True))

    @cached_property
    def roof_crown(self) -> float:
        """w of the outermost point of the roof's sheets."""
        return outermost(self.building.sheets, self.building.sheets.roof)

    def labels(self, face: str, kind: str) -> tuple[tuple[str, str], ...]:
        """What geometry cannot say of a trim of one kind."""
        trim = self.building.trim
        colour = dict(trim.colours).get(kind, trim.colour)
        return (("face", face), ("gauge", trim.gauge), ("colour", colour), ("material", "steel"))

    @cached_property
    def side(self) -> float:
        """w of the corner trim's inner face on a side wall: clear of the gable sheets' overrun."""
        return corner_trim(self.building)

    @cached_property
    def eave(self) -> float:
        """w of the eave trim's inner face on a side wall."""
        return self.side + self.lap_room

    @cached_property
    def seam(self) -> float:
        """w of a tier trim's front leg, inside: over the corner trim, the same on all walls, so that two meet
        at a corner."""
        return max(self.side, self.gable_crown) + self.lap_room

    @cached_property
    def gable(self) -> float:
        """w of the rake trim's inner face on a gable, and of the eave trim's ends."""
        return self.gable_crown + self.lap_room

    @cached_property
    def ridge(self) -> float:
        """w of the ridge cap's inner face on a slope: over the rake trim."""
        return self.roof_crown + self.lap_room

    @cached_property
    def bottom(self) -> float:
        """Height of the concrete under the walls' sheets."""
        return -self.building.slab.below

    @cached_property
    def base_leg(self) -> float:
        """Of the base trim's upright leg: up the base rail, past the edge of a slab where sheets hang."""
        return self.profile("base").in_plane + self.building.slab.hang

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
        """The way it mostly comes from."""
        return WIND[self.building.trim.wind]

    @property
    def head_clearance(self) -> float:
        """Between heads and what lies over them."""
        return HEAD_CLEARANCE
