"""The planes and lines that the steel hangs from: setback, roof planes, rake and strut.

Face frames: u right, v up, w outward.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from math import cos, radians, sin, tan

from .building import Building
from .said_limits import NOISE


@dataclass(frozen=True)
class RoofLines:
    """Numbers that follow from the sizes of a building and the depths of its steel."""

    building: Building

    @cached_property
    def rise(self) -> float:
        """Rise over run of the roof."""
        return tan(radians(self.building.pitch))

    @cached_property
    def cos(self) -> float:
        """Cosine of the pitch."""
        return cos(radians(self.building.pitch))

    @cached_property
    def sin(self) -> float:
        """Sine of the pitch."""
        return sin(radians(self.building.pitch))

    @cached_property
    def setback(self) -> float:
        """Steel line to the outer faces of the frames: the girts' depth where they by-pass."""
        framing = self.building.framing
        return framing.girt.depth if framing.girts == "by-pass" else 0.0

    def reaches_frames(self, depth: float) -> bool:
        """Whether a wall's member of that depth reaches in as far as the frames stand."""
        return depth > self.setback + NOISE

    @cached_property
    def rafter_length(self) -> float:
        """Eave steel line to ridge, along the slope of the roof's steel plane."""
        return self.building.width / 2 / self.cos

    def roof(self, u: float, below: float = 0.0) -> float:
        """Height, over a gable's u, of the plane that lies `below` (square) under the roof steel plane."""
        return self.building.eave_height + min(u, self.building.width - u) * self.rise - below / self.cos

    @cached_property
    def rafter_top(self) -> float:
        """Roof steel plane down to the rafters, square to the slope: the purlins' depth."""
        return self.building.framing.purlin.depth

    @cached_property
    def rafter_under(self) -> float:
        """Roof steel plane down to the rafters' undersides."""
        return self.rafter_top + self.building.frame.rafter.depth

    @cached_property
    def rake_leg(self) -> float:
        """How far the rake angle's vertical leg reaches down from the roof steel plane.

        It closes the purlins' ends. With by-pass girts its other leg turns in under the purlins; with
        flush girts the end rafter lies there and the vertical leg alone is left.
        """
        framing = self.building.framing
        return framing.rake_angle.depth if self.setback else framing.purlin.depth

    def rake_limit(self, depth: float) -> float:
        """Roof steel plane down to what a gable member of that depth must stay under."""
        return max(self.rake_leg, self.rafter_under) if self.reaches_frames(depth) else self.rake_leg

    @cached_property
    def rake_stop(self) -> float:
        """Gable steel line to the purlins' ends: clear of the rake angle's leg and of its bend."""
        rake = self.building.framing.rake_angle
        return rake.thickness + (rake.radius if self.setback else 0.0)

    @cached_property
    def strut_stop(self) -> float:
        """Eave steel line to what stops beside the eave strut: clear of its sloped flange's lip."""
        strut = self.building.framing.eave_strut
        return strut.width + strut.thickness + strut.radius

    @cached_property
    def strut_foot(self) -> float:
        """Height of the eave strut's underside."""
        return self.building.eave_height - self.building.framing.eave_strut.depth

    @cached_property
    def rafter_foot(self) -> float:
        """Height at which rafters meet the inner faces of their columns."""
        return self.roof(self.setback + self.building.frame.column.depth, self.rafter_under)
