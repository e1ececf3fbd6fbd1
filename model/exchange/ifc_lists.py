"""What the schedule says of each mark, as IFC's sets of properties and quantities."""

from __future__ import annotations

import uuid
from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass

import ifcopenshell.guid

from ..order.lists.figures import figures_by_mark
from ..order.lists.items import Item
from ..order.lists.schedule import Row, Schedule
from ..pieces import Piece
from ..solids.properties import volume
from ..units import FOOT, POUND
from .ifc_bodies import Bodies, Entity
from .ifc_classes import QUANTITIES

OURS = "Ribwright schedule"


class Ids:
    """Identifiers that are the same whenever the same building is written."""

    def __init__(self, name: str) -> None:
        self._space = uuid.uuid5(uuid.NAMESPACE_URL, f"ribwright:{name}")
        self._seen: Counter[str] = Counter()

    def __call__(self, key: str) -> str:
        """A new one for something called so; the next that is called so gets another."""
        self._seen[key] += 1
        return str(ifcopenshell.guid.compress(uuid.uuid5(self._space, f"{key}:{self._seen[key]}").hex))


@dataclass(frozen=True, slots=True)
class Standing:
    """A piece as an element: its class, and its width and height as it stands (mm)."""

    piece: Piece
    name: str
    width: float
    height: float


class Lists:
    """The sets of a file, one of each kind a mark."""

    def __init__(self, bodies: Bodies, ids: Ids, listed: Schedule) -> None:
        self._bodies, self._ids, self._feet = bodies, ids, listed.units != "mm"
        self._said = figures_by_mark(listed)
        rows: list[Row | Item] = [*listed.rows, *listed.items]
        self._rows = {row.mark: row for row in rows}

    def define(self, standing: Standing, elements: list[Entity]) -> None:
        """Says of all the elements of one mark what is known of it. standing: one of them."""
        piece, kind = standing.piece, standing.name.removeprefix("Ifc")
        labels = {key: text for key, text in piece.labels if key != "face"}  # of a mark, not of a piece
        said = {"mark": piece.mark, "role": piece.role, **labels, **self._said.get(piece.mark, {})}
        self._properties(OURS, piece.mark, said, "IfcText", elements)
        figures = self._figures(standing)
        self._quantities(f"{OURS} quantities", piece.mark, figures, elements)
        if standing.name in QUANTITIES:
            self._properties(
                f"Pset_{kind}Common", piece.mark, {"Reference": piece.mark}, "IfcIdentifier", elements
            )
            official = {name: figures[name] for name in QUANTITIES[standing.name] if name in figures}
            self._quantities(f"Qto_{kind}BaseQuantities", piece.mark, official, elements)

    def _figures(self, standing: Standing) -> dict[str, float]:
        """mm, mm2, mm3, kg; of one piece. What is 0 says nothing."""
        row = self._rows.get(standing.piece.mark)
        found = {"NetVolume": volume(standing.piece.solid)}
        if row:
            found |= {"Length": row.length, "NetWeight": row.weight, "Thickness": row.thickness}
        match row:
            case Row():
                found |= {"NetArea": row.area, "OverallWidth": row.width, "CoverWidth": row.cover}
            case Item():
                found |= {"SectionDepth": row.depth, "SectionWidth": row.width}
        if standing.name in ("IfcDoor", "IfcWindow"):
            found |= {"Width": standing.width, "Height": standing.height}
        return {name: value for name, value in found.items() if value > 0}

    def _properties(
        self, title: str, mark: str, said: Mapping[str, str], kind: str, elements: list[Entity]
    ) -> None:
        make = self._bodies.make
        held = [
            make("IfcPropertySingleValue", name, None, make(kind, text), None)
            for name, text in said.items()
            if text
        ]
        if held:
            self._relate(title, mark, make("IfcPropertySet", *self._head(title, mark), held), elements)

    def _quantities(
        self, title: str, mark: str, figures: Mapping[str, float], elements: list[Entity]
    ) -> None:
        make = self._bodies.make
        held = [self._quantity(name, value) for name, value in figures.items()]
        if held:
            self._relate(
                title, mark, make("IfcElementQuantity", *self._head(title, mark), None, held), elements
            )

    def _quantity(self, name: str, value: float) -> Entity:
        """A figure in the file's units; what it is one of is told by its name."""
        scale, make = self._bodies.length(1.0), self._bodies.make
        if name.endswith("Weight"):
            return make("IfcQuantityWeight", name, None, None, value / (POUND if self._feet else 1.0), None)
        for power, kind in ((2, "Area"), (3, "Volume")):
            if name.endswith(kind):
                return make(f"IfcQuantity{kind}", name, None, None, value * scale**power, None)
        return make("IfcQuantityLength", name, None, None, value * scale, None)

    def _head(self, title: str, mark: str) -> tuple[str, None, str, None]:
        return self._ids(f"{title} of {mark}"), None, title, None

    def _relate(self, title: str, mark: str, held: Entity, elements: list[Entity]) -> None:
        key = self._ids(f"{title} of {mark}'s pieces")
        self._bodies.make("IfcRelDefinesByProperties", key, None, None, None, elements, held)


def units(bodies: Bodies, feet: bool) -> Entity:
    """The units of a file: feet and pounds, or millimetres and kilograms; areas and volumes to match."""
    make = bodies.make
    length = make("IfcSIUnit", None, "LENGTHUNIT", None if feet else "MILLI", "METRE")
    area = make("IfcSIUnit", None, "AREAUNIT", None if feet else "MILLI", "SQUARE_METRE")
    bulk = make("IfcSIUnit", None, "VOLUMEUNIT", None if feet else "MILLI", "CUBIC_METRE")
    weight = make("IfcSIUnit", None, "MASSUNIT", "KILO", "GRAM")
    angle = make("IfcSIUnit", None, "PLANEANGLEUNIT", None, "RADIAN")
    if not feet:
        return make("IfcUnitAssignment", [length, area, bulk, weight, angle])
    foot = FOOT / 1000
    converted = [
        (length, "LENGTHUNIT", "FOOT", foot, "IfcLengthMeasure", (1, 0, 0)),
        (area, "AREAUNIT", "SQUARE FOOT", foot**2, "IfcAreaMeasure", (2, 0, 0)),
        (bulk, "VOLUMEUNIT", "CUBIC FOOT", foot**3, "IfcVolumeMeasure", (3, 0, 0)),
        (weight, "MASSUNIT", "POUND", POUND, "IfcMassMeasure", (0, 1, 0)),
    ]
    found = [angle]
    for base, kind, name, factor, measure, powers in converted:
        dimensions = make("IfcDimensionalExponents", *powers, 0, 0, 0, 0)
        ratio = make("IfcMeasureWithUnit", make(measure, factor), base)
        found.append(make("IfcConversionBasedUnit", dimensions, kind, name, ratio))
    return make("IfcUnitAssignment", found)
