"""The planes and lines that the steel hangs from: setback, roof planes, rakes, struts.

Face frames: u right, v up, w outward.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property
from math import hypot

from ..description.building import Building
from ..description.said_limits import NOISE
from ..description.skin import Hand, Run
from ..place import Place, Point2, way
from .closing import Closing, closing
from .edges import Edge
from .face import Face, Side
from .faces import faces_of
from .footprint import shell_of
from .nesting import Nest, nest_of
from .shell import Shell


@dataclass(frozen=True, slots=True)
class Eave:
    """A side wall's head: its corners (u, v) from the wall's left end to its right, and how much the roof
    rises inward from it in one of run (falls, at a high eave, where it is below nought)."""

    wall: str
    slope: str
    left: Point2
    right: Point2
    rise: float

    @property
    def height(self) -> float:
        """Of its lower end."""
        return min(self.left[1], self.right[1])

    @property
    def along(self) -> Point2:
        """Unit vector from its left end to its right."""
        return way(self.left, self.right)

    @property
    def cos(self) -> float:
        """Cosine of the pitch."""
        return 1 / hypot(1.0, self.rise)

    @property
    def sin(self) -> float:
        """Sine of the pitch."""
        return self.rise * self.cos

    def plane(self, inward: float, below: float) -> float:
        """Height, so far in from the wall's steel line, of the plane `below` (square) under the roof's."""
        return self.height + inward * self.rise - below / self.cos


@dataclass(frozen=True)
class RoofLines:
    """Numbers that follow from the shell of a building and the depths of its steel."""

    building: Building
    measured: Shell | None = None
    """A shell as it stands on its site, instead of the one that the description's sizes make."""

    @cached_property
    def shell(self) -> Shell:
        """The corners and loops it all follows."""
        return self.measured or shell_of(self.building)

    @cached_property
    def faces(self) -> tuple[Face, ...]:
        """All faces, in the order in which the model lists its parts."""
        return faces_of(self.shell, self.building)

    @cached_property
    def named(self) -> dict[str, Face]:
        """The faces by name."""
        return {face.name: face for face in self.faces}

    @cached_property
    def walls(self) -> tuple[Face, ...]:
        """The walls."""
        return tuple(face for face in self.faces if not face.sloped)

    @cached_property
    def slopes(self) -> tuple[Face, ...]:
        """The roof's slopes."""
        return tuple(face for face in self.faces if face.sloped)

    @cached_property
    def eaves(self) -> dict[str, Eave]:
        """The heads of the side walls, by wall."""
        found = {}
        for wall in self.walls:
            for side in wall.named(Edge.EAVE, Edge.HIGH_EAVE, Edge.HEADWALL):
                found[wall.name] = Eave(wall.name, side.other, side.end, side.start, side.rise)
        return found

    def eave_beside(self, gable: Face, hand: str) -> Eave | None:
        """The head of the side wall around a gable's left or right corner."""
        return self.eaves.get(gable.beside(hand).other)

    def closing_at_head(self, slope: Face) -> Closing:
        """What closes the edge at a slope's head."""
        return closing(self.named, slope, slope.sides[2]) or Closing()

    def run(self, face: Face) -> Run:
        """How a face's sheets are laid. A gable of which nothing is said is begun in the middle, left half
        first; one that falls to one side all along, at its low corner (a convention of ours)."""
        if (said := self.building.runs[face.name]) is not None:
            return said
        if len(face.top.points) > 2:  # a line of two ends has no peak between them
            return Run("centre", "left")
        low: Hand = "left" if face.top.slope(0.0) > 0 else "right"
        return Run(low, low)

    @cached_property
    def setback(self) -> float:
        """Steel line to the outer faces of the frames: the girts' depth where they by-pass."""
        framing = self.building.framing
        return framing.girt.depth if framing.girts == "by-pass" else 0.0

    def reaches_frames(self, depth: float) -> bool:
        """Whether a wall's member of that depth reaches in as far as the frames stand."""
        return depth > self.setback + NOISE

    @cached_property
    def rafter_top(self) -> float:
        """Roof steel plane down to the rafters, square to the slope: what the purlins take."""
        return self.building.framing.roof_depth

    @cached_property
    def nest(self) -> Nest | None:
        """How purlins lie in each other where they are spliced; None where they butt."""
        framing = self.building.framing
        return nest_of(framing.purlin) if framing.nested and framing.purlin.shape == "zee" else None

    def arm(self, face: Face) -> float:
        """How far pieces of a face's lines of steel run on past where these are spliced: nested purlins'."""
        return self.building.framing.arm if face.sloped else 0.0

    def under(self, face: Face) -> float:
        """How far under a face's steel line purlins lie that are nested under others."""
        return self.nest.deep if self.nest and face.sloped else 0.0

    @cached_property
    def rafter_under(self) -> float:
        """Roof steel plane down to the rafters' undersides."""
        return self.rafter_top + self.building.frame.rafter.depth

    @cached_property
    def rake_leg(self) -> float:
        """How far what closes the purlins' ends along a rake reaches down from the roof's steel plane."""
        return self.building.framing.rake_leg

    @cached_property
    def run_on(self) -> float:
        """How far the roof, its purlins and its eave struts run on past the gables' steel lines."""
        return self.building.roof.gable_overhang

    def verge(self, gable: Face) -> Face:
        """Where the roof ends at a gable: the gable itself, or an open face as far out as it overhangs."""
        if gable.verge or not self.run_on:
            return gable
        frame = gable.frame @ Place((0.0, 0.0, self.run_on))
        return replace(gable, frame=frame, regions=(), openings=(), open=True, gaps=(), cuts=(), verge=True)

    @cached_property
    def verges(self) -> tuple[Face, ...]:
        """The ends of a roof that runs on out over its gables."""
        return tuple(self.verge(wall) for wall in self.walls if wall.raked and self.run_on)

    @cached_property
    def rake_back(self) -> Point2:
        """From the roof steel plane to both edges of what backs the heads of a gable's sheets: the rake
        angle's leg; under purlins that run on one hung below them, or with flush girts the end rafter."""
        if not self.run_on:
            return 0.0, self.rake_leg
        leg = self.building.framing.rake_angle.depth if self.setback else self.building.frame.rafter.depth
        return self.rafter_top, self.rafter_top + leg

    def rake_limit(self, depth: float) -> float:
        """Roof steel plane down to what a gable member of that depth must stay under."""
        leg = self.rake_back[1]
        return max(leg, self.rafter_under) if self.reaches_frames(depth) else leg

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

    def strut_foot(self, eave: Eave) -> float:
        """Height of the eave strut's underside."""
        return eave.height - self.building.framing.eave_strut.depth

    def rafter_foot(self, eave: Eave) -> float:
        """Height at which rafters meet the inner faces of their columns."""
        return eave.plane(self.setback + self.building.frame.column.depth, self.rafter_under)

    @cached_property
    def low_eave(self) -> Eave:
        """The lowest of the eaves."""
        return min(self.eaves.values(), key=lambda eave: eave.height)

    def ridge_of(self, slope: Face) -> Side | None:
        """A slope's ridge; None where it ends at something else."""
        return next(iter(slope.named(Edge.RIDGE)), None)
