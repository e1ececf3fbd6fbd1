"""What each role is in IFC4: its class, the class's own word for its kind, the standard's quantities."""

from __future__ import annotations

from dataclasses import dataclass

from ..roles import ROOF_SHEETS, WALL_SHEETS, Role, list_of


@dataclass(frozen=True, slots=True)
class IfcClass:
    """A class and its predefined type; "USERDEFINED" where the standard has no word for it, so that the
    role itself says it."""

    name: str
    kind: str


OTHER = IfcClass("IfcBuildingElementProxy", "USERDEFINED")
TRIM = IfcClass("IfcCovering", "MOLDING")
OWN = "USERDEFINED"

CLASSES: dict[str, IfcClass] = {
    Role.WALL_SHEET: IfcClass("IfcCovering", "CLADDING"),
    Role.ROOF_SHEET: IfcClass("IfcCovering", "ROOFING"),
    Role.WALL_LIGHT: IfcClass("IfcCovering", "CLADDING"),
    Role.ROOF_LIGHT: IfcClass("IfcCovering", "ROOFING"),
    Role.COLUMN: IfcClass("IfcColumn", "COLUMN"),
    Role.RAFTER: IfcClass("IfcBeam", "BEAM"),
    Role.KNEE: IfcClass("IfcMember", "BRACE"),
    Role.BRACE: IfcClass("IfcMember", "BRACE"),
    Role.STRUT: IfcClass("IfcMember", "STRUT"),
    Role.POST: IfcClass("IfcMember", "POST"),
    Role.BASE_PLATE: IfcClass("IfcPlate", OWN),
    Role.BASE_RAIL: IfcClass("IfcMember", OWN),
    Role.GIRT: IfcClass("IfcMember", OWN),
    Role.EAVE_STRUT: IfcClass("IfcMember", "STRUT"),
    Role.LEDGER: IfcClass("IfcMember", OWN),
    Role.PURLIN: IfcClass("IfcMember", "PURLIN"),
    Role.RAKE_ANGLE: IfcClass("IfcMember", OWN),
    Role.JAMB: IfcClass("IfcMember", OWN),
    Role.HEADER: IfcClass("IfcMember", OWN),
    Role.SILL: IfcClass("IfcMember", OWN),
    Role.LEAF: IfcClass("IfcDoor", "DOOR"),
    Role.RAIL: IfcClass("IfcDiscreteAccessory", OWN),
    Role.GUIDE: IfcClass("IfcDiscreteAccessory", OWN),
    Role.SASH: IfcClass("IfcWindow", "WINDOW"),
    Role.LOUVRE: IfcClass("IfcAirTerminal", "LOUVRE"),
    Role.RIDGE_VENT: IfcClass("IfcAirTerminal", OWN),
    Role.PANE: IfcClass("IfcPlate", OWN),
    Role.SLAB: IfcClass("IfcSlab", "BASESLAB"),
    Role.SHEET: IfcClass("IfcCovering", OWN),
    Role.MEMBER: IfcClass("IfcMember", "MEMBER"),
}
LISTS = {
    "sheets": IfcClass("IfcCovering", OWN),
    "members": IfcClass("IfcMember", OWN),
    "trims": TRIM,
    "closures": IfcClass("IfcDiscreteAccessory", OWN),
    "insulation": IfcClass("IfcCovering", "INSULATION"),
    "screws": IfcClass("IfcMechanicalFastener", "SCREW"),
}
"""Of roles that have no class of their own, by their list."""

FRAME, WALLS, ROOFS = (
    {Role.COLUMN, Role.RAFTER},
    set(WALL_SHEETS),
    set(ROOF_SHEETS),
)
"""A group with a piece of such a role is a frame, a wall, a roof, and its pieces are the parts of it."""
WHOLES = (
    (FRAME, IfcClass("IfcElementAssembly", "RIGID_FRAME")),
    (WALLS, IfcClass("IfcWall", "ELEMENTEDWALL")),
    (ROOFS, IfcClass("IfcRoof", "NOTDEFINED")),
)

BULK = ("Length", "NetVolume", "NetWeight")
QUANTITIES = {
    "IfcColumn": BULK,
    "IfcBeam": BULK,
    "IfcMember": BULK,
    "IfcPlate": ("NetVolume", "NetWeight"),
    "IfcCovering": ("NetArea",),
    "IfcSlab": ("NetVolume",),
    "IfcDoor": ("Width", "Height"),
    "IfcWindow": ("Width", "Height"),
}
"""Of each class what the standard's own set of quantities (`Qto_...BaseQuantities`) is given."""


def class_of(role: str) -> IfcClass:
    """The class of a role; that of a proxy for one that is not ours."""
    return CLASSES.get(role) or LISTS.get(list_of(role) or "", OTHER)
