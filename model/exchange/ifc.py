"""IFC4 (ISO 16739-1): the building for those who plan with building information models.

Every piece is an element of the class that the standard has for its role, with its mark as tag and the
schedule's figures as quantities. Equal bodies are one map placed many times. What stands in groups is
kept: frames are assemblies, the sheets of a face are a wall, those of the roof a roof, and each group of
the model's tree is an IFC group.
"""

from __future__ import annotations

from collections import defaultdict
from functools import cache
from typing import Any

import ifcopenshell
import numpy as np
from OCP.TopoDS import TopoDS_Solid

from .. import __version__
from ..catalog.colours import rgb
from ..measure.member import measure_member
from ..order.lists.schedule import Schedule
from ..pieces import Model, Piece
from ..place import Place, Point3
from ..roles import list_of
from ..solids.placed import placed_triangles
from ..units import FOOT
from .atomic_files import Target, whole_file
from .ifc_bodies import Bodies, Entity
from .ifc_classes import WHOLES, IfcClass, class_of
from .ifc_lists import Ids, Lists, Standing, units
from .names import shown_colour, with_printable_names

Path = tuple[str, ...]
Look = tuple[TopoDS_Solid, tuple[Point3, ...], str]
FILLS = {"IfcDoor", "IfcWindow"}
PRECISION = 1e-3  # mm


def write_ifc(model: Model, target: Target, listed: Schedule) -> None:
    """Writes a model as IFC4, in feet or in mm as it is to be shown. Equal models give equal bytes.

    target: a path, or a binary stream. listed: the schedule that its figures are taken from.
    """
    text = _Writer(with_printable_names(model), listed).text()
    with whole_file(target) as stream:
        stream.write(text.encode())


class _Writer:
    """The entities of one file as they come together."""

    def __init__(self, model: Model, listed: Schedule) -> None:
        self._model, feet = model, model.units != "mm"
        self._file = ifcopenshell.file(schema="IFC4")
        self._bodies = Bodies(self._file, 1 / FOOT if feet else 1.0)
        self._make, self._ids = self._bodies.make, Ids(model.name)
        self._lists = Lists(self._bodies, self._ids, listed)
        self._sections = {item.mark: item.section for item in listed.items}
        self._maps: dict[Look, Entity] = {}
        self._styles: dict[str, Entity] = {}
        self._origin = self._bodies.axes(Place())
        precision = self._bodies.length(PRECISION)
        context = self._make(
            "IfcGeometricRepresentationContext", None, "Model", 3, precision, self._origin, None
        )
        self._context = self._make(
            "IfcGeometricRepresentationSubContext",
            "Body",
            "Model",
            *[None] * 4,
            context,
            None,
            "MODEL_VIEW",
            None,
        )
        self._storey = self._site(self._project(context, units(self._bodies, feet)))
        self._of_mark: dict[str, list[tuple[Standing, Entity]]] = defaultdict(list)
        self._of_group: dict[Path, list[Entity]] = defaultdict(list)
        self._of_material: dict[tuple[str, TopoDS_Solid | None], list[Entity]] = defaultdict(list)

    def text(self) -> str:
        """The file."""
        wholes = self._wholes()
        loose: list[Entity] = [whole for whole, _ in wholes.values()]
        parts: dict[Path, list[Entity]] = defaultdict(list)
        for piece in self._model.pieces:
            element = self._element(piece)
            self._of_group[piece.group].append(element)
            (parts[piece.group] if piece.group in wholes else loose).append(element)
            self._open(piece, element, wholes)
        for path, elements in parts.items():
            self._relate("IfcRelAggregates", f"parts of {'/'.join(path)}", wholes[path][0], elements)
        self._contain(loose)
        for path, elements in self._of_group.items():
            self._group(path, elements)
        for found in self._of_mark.values():
            self._lists.define(found[0][0], [element for _, element in found])
        for (name, solid), elements in self._of_material.items():
            self._material(name, solid, elements)
        return self._headed()

    def _headed(self) -> str:
        head, name = self._file.header, self._model.name
        head.file_description.description = ("ViewDefinition [DesignTransferView_V1.0]",)
        head.file_name.name, head.file_name.time_stamp = name, "1970-01-01T00:00:00"
        head.file_name.preprocessor_version = head.file_name.originating_system = f"ribwright {__version__}"
        return str(self._file.to_string())

    def _project(self, context: Entity, units: Entity) -> Entity:
        name = self._model.name
        return self._make(
            "IfcProject", self._ids("project"), None, name, None, None, None, None, [context], units
        )

    def _site(self, project: Entity) -> Entity:
        """The storey, below its building, below its site."""
        above = project
        for kind, more in (("Site", [None] * 5), ("Building", [None] * 3), ("BuildingStorey", [None])):
            place = self._placed(Place(), None if above is project else above)
            name = "ground" if kind == "BuildingStorey" else self._model.name
            head = (self._ids(kind), None, name, None, None, place, None, None, "ELEMENT")
            below = self._make(f"Ifc{kind}", *head, *more)
            self._relate("IfcRelAggregates", f"below {above.is_a()}", above, [below])
            above = below
        return above

    def _wholes(self) -> dict[Path, tuple[Entity, set[str]]]:
        """For each group that is a frame, a wall or a roof: that, and the faces that its pieces say."""
        groups: dict[Path, list[Piece]] = defaultdict(list)
        for piece in self._model.pieces:
            groups[piece.group].append(piece)
        found = {}
        for path, pieces in groups.items():
            kind = next(
                (kind for roles, kind in WHOLES if any(piece.role in roles for piece in pieces)), None
            )
            if kind and path:
                found[path] = (self._whole(path, kind), {piece.label("face") for piece in pieces} - {""})
        return found

    def _whole(self, path: Path, kind: IfcClass) -> Entity:
        head = (self._ids("/".join(path)), None, " ".join(path), None, None)
        more = ("FACTORY",) if kind.name == "IfcElementAssembly" else ()
        place = self._placed(Place(), self._storey)
        return self._make(kind.name, *head, place, None, None, *more, kind.kind)

    def _element(self, piece: Piece) -> Entity:
        kind = class_of(piece.role)
        own = piece.role or "part" if kind.kind == "USERDEFINED" else None
        shape = self._make("IfcProductDefinitionShape", None, None, [self._shape(piece)])
        place = self._placed(piece.place, self._storey)
        head = (self._ids(piece.name), None, piece.name, None, own, place, shape, piece.mark or None)
        standing = _standing(piece, kind.name)
        sizes: tuple[Any, ...] = ()
        if kind.name in FILLS:
            sizes = (self._bodies.length(standing.height), self._bodies.length(standing.width))
        elif kind.name == "IfcMechanicalFastener":
            sizes = (None, None)
        more = (None, None) if kind.name in FILLS else ()
        element = self._make(kind.name, *head, *sizes, kind.kind, *more)
        self._of_mark[piece.mark or piece.name].append((standing, element))
        if material := piece.label("material"):
            profiled = list_of(piece.role) == "members" and self._bodies.profile(piece.solid)
            self._of_material[material, piece.solid if profiled else None].append(element)
        return element

    def _shape(self, piece: Piece) -> Entity:
        """A piece's own representation: one map, in its place. Sharing more than the map is not allowed."""
        look = (piece.solid, piece.row, piece.label("colour"))
        if look not in self._maps:
            self._maps[look] = self._map(look, self._sections.get(piece.mark, ""))
        return self._represented("MappedRepresentation", [self._mapped(self._maps[look], (0.0, 0.0, 0.0))])

    def _map(self, look: Look, section: str) -> Entity:
        """A body as something that can be placed again and again; a row as its body so placed."""
        solid, row, colour = look
        if row:
            one = (solid, (), colour)
            if one not in self._maps:
                self._maps[one] = self._map(one, section)
            items = [self._mapped(self._maps[one], point) for point in row]
            return self._make(
                "IfcRepresentationMap", self._origin, self._represented("MappedRepresentation", items)
            )
        body = self._bodies.body(solid, section)
        self._make("IfcStyledItem", body, [self._style(shown_colour(colour))], None)
        kind = "SweptSolid" if body.is_a("IfcExtrudedAreaSolid") else "Tessellation"
        shown = self._represented(kind, [body])
        return self._make("IfcRepresentationMap", self._origin, shown)

    def _mapped(self, source: Entity, point: Point3) -> Entity:
        origin = self._bodies.point(point)
        target = self._make("IfcCartesianTransformationOperator3D", None, None, origin, None, None)
        return self._make("IfcMappedItem", source, target)

    def _represented(self, kind: str, items: list[Entity]) -> Entity:
        return self._make("IfcShapeRepresentation", self._context, "Body", kind, items)

    def _style(self, colour: str) -> Entity:
        if colour not in self._styles:
            parts = (value / 255 for value in rgb(colour))
            shade = self._make("IfcSurfaceStyleShading", self._make("IfcColourRgb", None, *parts), None)
            self._styles[colour] = self._make("IfcSurfaceStyle", colour, "BOTH", [shade])
        return self._styles[colour]

    def _open(self, piece: Piece, filling: Entity, wholes: dict[Path, tuple[Entity, set[str]]]) -> None:
        """The opening that a leaf or a sash fills, exactly as large, in the wall of the face it says.

        The sheets of that wall have their own holes, so nothing is taken away from them.
        """
        walls = [whole for whole, faces in wholes.values() if piece.label("face") in faces]
        if filling.is_a() not in FILLS or not walls or walls[0].is_a() != "IfcWall":
            return
        lying = measure_member(piece.solid).ways[0]
        x, y, z = lying.points.max(axis=0).tolist()
        box = self._bodies.box(lying.bench, (0.0, 0.0, 0.0), (x, y, z))
        shape = self._make("IfcProductDefinitionShape", None, None, [self._represented("SweptSolid", [box])])
        place = self._placed(piece.place, walls[0])
        name = f"{piece.name} opening"
        head = (self._ids(name), None, name, None, None, place, shape, None, "OPENING")
        opening = self._make("IfcOpeningElement", *head)
        self._relate("IfcRelVoidsElement", f"{name} in its wall", walls[0], opening)
        self._relate("IfcRelFillsElement", f"{name} and what fills it", opening, filling)
        filling.ObjectPlacement = self._placed(Place(), opening)

    def _contain(self, elements: list[Entity]) -> None:
        key = self._ids("contained")
        self._make("IfcRelContainedInSpatialStructure", key, None, None, None, elements, self._storey)

    def _group(self, path: Path, elements: list[Entity]) -> None:
        name = "/".join(path)
        group = self._make("IfcGroup", self._ids(f"group {name}"), None, name or self._model.name, None, None)
        key = self._ids(f"members of group {name}")
        self._make("IfcRelAssignsToGroup", key, None, None, None, elements, None, group)

    def _material(self, name: str, solid: TopoDS_Solid | None, elements: list[Entity]) -> None:
        """A material, with the profile where it is a member's."""
        material, key = self._steel(name), self._ids(f"material {name}")
        profile = self._bodies.profile(solid) if solid else None
        if profile:
            one = self._make("IfcMaterialProfile", profile.ProfileName, None, material, profile, None, None)
            material = self._make("IfcMaterialProfileSet", profile.ProfileName, None, [one], None)
        self._make("IfcRelAssociatesMaterial", key, None, None, None, elements, material)

    @cache  # noqa: B019 (a writer lives as long as its file)
    def _steel(self, name: str) -> Entity:
        return self._make("IfcMaterial", name, None, None)

    def _placed(self, place: Place, above: Entity | None) -> Entity:
        axes = self._origin if place == Place() else self._bodies.axes(place)
        return self._make("IfcLocalPlacement", above.ObjectPlacement if above else None, axes)

    def _relate(self, kind: str, key: str, one: Entity, other: Entity | list[Entity]) -> None:
        self._make(kind, self._ids(key), None, None, None, one, other)


def _standing(piece: Piece, name: str) -> Standing:
    if name not in FILLS:
        return Standing(piece, name, 0.0, 0.0)
    ((points, _),) = placed_triangles([piece])
    x, y, z = np.ptp(points, axis=0).tolist()
    return Standing(piece, name, max(x, y), z)
