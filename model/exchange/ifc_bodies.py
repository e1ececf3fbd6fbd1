"""Bodies as IFC has them: an extruded profile where the body is one, else its faces as triangles.

A mitred member is its faces too, with its profile in its material: of a profile clipped at its ends, which
the standard also has, the reader that most viewers in browsers stand on makes a body of another volume.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING, Any

from OCP.TopoDS import TopoDS_Solid

from ..measure.across import Loop
from ..measure.section_shape import measure_section
from ..measure.straight import Straight, arcs, straight
from ..place import Place, Point3
from ..solids.properties import triangles

if TYPE_CHECKING:
    import ifcopenshell

Entity = Any  # ifcopenshell.entity_instance, whose attributes no type knows

DEFLECTION = 0.01
"""mm; how far triangles stand off a curved face: so little that no volume is a thousandth off."""


class Bodies:
    """Entities of geometry in one file, equal ones made once. scale: of the file's unit of length to mm."""

    def __init__(self, file: ifcopenshell.file, scale: float) -> None:
        self._file, self._scale = file, scale
        self._directions: dict[Point3, Entity] = {}
        self._profiles: dict[TopoDS_Solid, Entity] = {}

    def make(self, name: str, *values: Any) -> Entity:
        """A new entity, its attributes in order."""
        return self._file.create_entity(name, *values)

    def length(self, mm: float) -> float:
        """mm in the file's unit."""
        return float(mm) * self._scale

    def point(self, point: Iterable[float]) -> Entity:
        """A point in mm."""
        return self.make("IfcCartesianPoint", tuple(self.length(value) for value in point))

    def direction(self, vector: Point3) -> Entity:
        """A direction, equal ones shared."""
        if vector not in self._directions:
            self._directions[vector] = self.make("IfcDirection", tuple(map(float, vector)))
        return self._directions[vector]

    def axes(self, place: Place) -> Entity:
        """A place as an axis placement."""
        point, z, x = self.point(place.origin), self.direction(place.z), self.direction(place.x)
        return self.make("IfcAxis2Placement3D", point, z, x)

    def body(self, solid: TopoDS_Solid, section: str = "") -> Entity:
        """A solid in its own frame. section: what its profile is called, where it has one."""
        found = straight(solid)
        if found and all(found.square):
            return self._extruded(solid, found, section)
        return self._faceted(solid)

    def profile(self, solid: TopoDS_Solid, section: str = "") -> Entity | None:
        """The profile of a body that is a section between two planes, None for any other."""
        found = straight(solid)
        if found and solid not in self._profiles:
            self._profiles[solid] = self._profile(solid, found.section, section or None)
        return self._profiles.get(solid)

    def box(self, place: Place, low: Point3, high: Point3) -> Entity:
        """An upright box in a frame, from its lowest to its highest corner (mm)."""
        x, y, z = ((a + b) / 2 for a, b in zip(low, high, strict=True))
        width, depth, height = (self.length(b - a) for a, b in zip(low, high, strict=True))
        flat = self.make("IfcAxis2Placement2D", self.point((x, y)), None)
        base = self.make("IfcRectangleProfileDef", "AREA", None, flat, width, depth)
        lifted = Place(place.point((0.0, 0.0, z - (high[2] - low[2]) / 2)), place.x, place.y)
        return self.make(
            "IfcExtrudedAreaSolid", base, self.axes(lifted), self.direction((0.0, 0.0, 1.0)), height
        )

    def _extruded(self, solid: TopoDS_Solid, found: Straight, section: str) -> Entity:
        frame, (low, high) = found.frame, found.reach
        axes = self.axes(Place(frame.point((0.0, 0.0, low)), frame.x, frame.y))
        up, height = self.direction((0.0, 0.0, 1.0)), self.length(high - low)
        return self.make("IfcExtrudedAreaSolid", self.profile(solid, section), axes, up, height)

    def _profile(self, solid: TopoDS_Solid, section: Sequence[Loop], name: str | None) -> Entity:
        """A tube or a plate by its sizes, any other by its outline: readers differ about the rest."""
        named = measure_section(solid)
        low, high = section[0].corners.min(axis=0), section[0].corners.max(axis=0)
        middle = self.make("IfcAxis2Placement2D", self.point((low + high) / 2), None)
        width, depth = (self.length(size) for size in high - low)
        if named and named.shape.shape == "plate":
            return self.make("IfcRectangleProfileDef", "AREA", name, middle, width, depth)
        if named and named.shape.shape == "tube":
            wall, inner, outer = (
                self.length(size)
                for size in (named.shape.thickness, section[1].radii[0], section[0].radii[0])
            )
            sizes = (width, depth, wall, inner or None, outer or None)
            return self.make("IfcRectangleHollowProfileDef", "AREA", name, middle, *sizes)
        outer, *hollows = (self._curve(loop) for loop in section)
        if hollows:
            return self.make("IfcArbitraryProfileDefWithVoids", "AREA", name, outer, hollows)
        return self.make("IfcArbitraryClosedProfileDef", "AREA", name, outer)

    def _curve(self, loop: Loop) -> Entity:
        """A loop as one curve of lines and arcs."""
        points: list[tuple[float, ...]] = []
        parts: list[Entity] = []
        for start, middle, end in arcs(loop):
            points.append(self._flat(start))
            if len(points) > 1:
                parts.append(self.make("IfcLineIndex", (len(points) - 1, len(points))))
            if middle is not None:
                points += [self._flat(middle), self._flat(end)]
                parts.append(self.make("IfcArcIndex", (len(points) - 2, len(points) - 1, len(points))))
        parts.append(self.make("IfcLineIndex", (len(points), 1)))
        return self.make("IfcIndexedPolyCurve", self.make("IfcCartesianPointList2D", points), parts, False)

    def _flat(self, point: Iterable[float]) -> tuple[float, ...]:
        return tuple(self.length(value) for value in point)

    def _faceted(self, solid: TopoDS_Solid) -> Entity:
        points, faces = triangles(solid, DEFLECTION)
        listed = self.make("IfcCartesianPointList3D", (points * self._scale).tolist())
        return self.make("IfcTriangulatedFaceSet", listed, None, True, (faces + 1).tolist(), None)
