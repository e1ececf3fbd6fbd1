"""Screws to buy, by what they are called in the trade, with the metric size beside it."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil

from ...roles import Role
from ...units import INCH, Units
from ..lists.items import Item
from ..lists.schedule import Schedule
from .buying import Buying
from .line import EACH, Line
from .words import inches_text

NEAR = 0.003 * INCH
"""mm by which a shank may differ from the size it is told by. Ours."""
LENGTHS_MM = (13, 16, 19, 22, 25, 32, 38, 45, 50, 63, 75, 100)
"""mm; lengths that such screws come in, from memory."""


@dataclass(frozen=True, slots=True)
class TradeSize:
    """A size that screws are bought by. diameter: mm."""

    name: str
    diameter: float
    metric: str


TRADE_SIZES = (
    TradeSize("#8", 0.164 * INCH, "ST4.2"),
    TradeSize("#10", 0.190 * INCH, "ST4.8"),
    TradeSize("#12", 0.216 * INCH, "ST5.5"),
    TradeSize("1/4", 0.250 * INCH, "ST6.3"),
)
"""Diameters: Yu & LaBoube, Table 8.6. Metric neighbours: ISO 1478, from memory."""

DRILL_POINTS = ((0.110 * INCH, "No. 2"), (0.210 * INCH, "No. 3"), (0.500 * INCH, "No. 5"))
"""How thick the steel may be, all together, that a drill point goes through: mm. From memory."""

DRILLED = (
    *(Role.BASE_RAIL, Role.GIRT, Role.EAVE_STRUT, Role.LEDGER, Role.PURLIN, Role.RAKE_ANGLE),
    *(Role.JAMB, Role.HEADER, Role.SILL),
)
"""What screws are driven into."""


def screw_lines(schedule: Schedule, buying: Buying) -> Iterator[Line]:
    """A line for each kind, size, head and colour, with the spares, by the piece or by bags."""
    kinds: dict[tuple[str, str], list[Item]] = defaultdict(list)
    through = thickest(schedule)
    for item in schedule.listed("screws"):
        kinds[screw_text(item, schedule.units), item.colour].append(item)
    for (kind, colour), items in kinds.items():
        wanted = ceil(sum(item.count for item in items) * (1 + buying.spare) - 1e-9)
        bags = ceil(wanted / buying.bag) if buying.bag else 0
        bought = bags * buying.bag or wanted
        yield Line(
            "screws",
            kind,
            f"bag of {buying.bag}" if bags else EACH,
            bags or wanted,
            tuple(item.mark for item in items),
            colour=colour,
            size=drill_point(through),
            names=(items[0].role, "screw"),
            count=bought,
            weight=bought * max(item.weight for item in items),
        )


def screw_text(item: Item, units: Units) -> str:
    """`sheet screw #12 x 1-1/4 hex head with washer (ST5.5 x 32)`; sizes as measured where no trade size
    is near."""
    diameter, length = item.shank or (item.width, item.length)
    size = next((size for size in TRADE_SIZES if abs(size.diameter - diameter) < NEAR), None)
    if size is None:
        unit = "mm" if units == "mm" else "in"
        return " ".join(filter(None, (item.role, f"{item.section} {unit}", item.head)))
    metric = f"{size.metric} x {min(LENGTHS_MM, key=lambda one: abs(one - length))}"
    inches = f"{size.name} x {inches_text(length)}"
    first, second = (metric, inches) if units == "mm" else (inches, metric)
    return " ".join(filter(None, (item.role, first, item.head, f"({second})")))


def thickest(schedule: Schedule) -> float:
    """mm of steel that a screw has to go through at most: two sheets at a lap, a trim, and the framing,
    twice where it laps."""
    sheet = max((row.thickness for row in schedule.rows), default=0.0)
    trim = max((item.thickness for item in schedule.listed("trims")), default=0.0)
    lapped = {one.role for one in schedule.crossings if one.on == "lap"}
    drilled = [item for item in schedule.listed("members") if item.role in DRILLED]
    framing = max((item.thickness * (1 + (item.role in lapped)) for item in drilled), default=0.0)
    return 2 * sheet + trim + framing


def drill_point(through: float) -> str:
    """The drill point for so much steel (mm), or that holes have to be drilled first."""
    found = next((name for most, name in DRILL_POINTS if through <= most), "")
    return f"{found} drill point" if found else "holes drilled first"
