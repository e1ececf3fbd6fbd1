"""The cells of the lists after the sheets, the same in every kind of output."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ...measure.snap import snapped
from ...units import Units, format_length, format_weight
from .handling import people_text
from .items import Item, format_thickness

if TYPE_CHECKING:
    from .schedule import Schedule

COLUMNS = (
    "mark",
    "count",
    "what",
    "length",
    "weight",
    "section",
    "thickness",
    "ends",
    "holes",
    "differs",
    "colour",
    "faces",
    "people",
)
FIGURES = ("count", "length", "weight", "thickness")
YARD = 914.4


def cells(item: Item, units: Units) -> dict[str, str]:
    """One item's cells; weight is of one. The section of a member says how thick it is."""
    return {
        "mark": item.mark,
        "count": str(item.count),
        "what": item.role,
        "section": item.section or _size(item, units),
        "thickness": "" if item.section or not item.thickness else format_thickness(item.thickness, units),
        "length": format_length(item.length, units),
        "ends": ends(item),
        "holes": _holes(item, units),
        "differs": item.differs,
        "weight": format_weight(item.weight, units) if item.weight else "",
        "colour": item.colour,
        "faces": ", ".join(item.faces),
        "people": people_text(item),
    }


def ends(item: Item) -> str:
    """How both ends are cut: square, or degrees off square, to a tenth."""
    one, other = (snapped(angle, 0.1) for angle in item.ends)
    if not one and not other:
        return "square"
    said = [f"{angle:.1f}" if angle else "square" for angle in (one, other)]
    return f"{said[0]} deg both" if one == other else f"{said[0]} / {said[1]} deg"


def total(items: tuple[Item, ...], units: Units) -> dict[str, str]:
    """The cells of a list's last row."""
    weight = sum(item.count * item.weight for item in items)
    return {
        "mark": "total",
        "count": str(sum(item.count for item in items)),
        "weight": format_weight(weight, units) if weight else "",
    }


def concrete(schedule: Schedule) -> str:
    """The slab's volume in the unit that concrete is ordered in."""
    volume = sum(item.count * item.volume for item in schedule.listed("slab"))
    if schedule.units == "mm":
        return f"{snapped(volume / 1e9, 0.01):.2f} m3"
    return f"{snapped(volume / YARD**3, 0.01):.2f} yd3"


def _size(item: Item, units: Units) -> str:
    """What has no section is told by its depth and width."""
    return f"{format_length(item.depth, units)} x {format_length(item.width, units)}"


def _holes(item: Item, units: Units) -> str:
    if not item.holes:
        return ""
    sizes = dict.fromkeys(format_length(hole, units) for hole in item.holes)
    return f"{len(item.holes)} of {', '.join(sizes)}"
