"""What to order: every quantity counted off the schedule, which is read off the solids."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, field
from math import ceil

from ...measure.snap import snapped
from ...roles import roles_of
from ...terms import Terms
from ...units import INCH, format_length
from ..lists.items import Item, format_thickness
from ..lists.schedule import Row, Schedule, Units
from .blanks import Pair, rake_pairs, rip_pairs
from .stock import StockPlan, stock_plan

YARD = 914.4
STOCK = 3048.0  # mm; the length that trim mostly comes in. Common practice, no source
FULL = 0.5  # mm by which a leaning full stick may measure longer than its stock length


@dataclass(frozen=True, slots=True)
class Buying:
    """How things are bought. step: to which sheet lengths are rounded up (mm). spare: share of screws
    added. stock, kerf: of trim (mm)."""

    step: float = INCH
    spare: float = 0.05
    stock: float = STOCK
    kerf: float = 0.0


def buying_on(
    terms: Terms,
    *,
    stock: float | None = None,
    kerf: float | None = None,
    step: float = INCH,
    spare: float = 0.05,
) -> Buying:
    """How the trims, sheets and screws of a building are bought: as said, else as its terms ask."""
    kerf = terms.kerf if kerf is None else kerf
    return Buying(step, spare, stock or terms.stock or STOCK, kerf or 0.0)


@dataclass(frozen=True, slots=True)
class Line:
    """One line of an order. quantity in `unit` ("each", "ft", "m", "yd3", "m3"); marks: what it makes."""

    list: str
    item: str
    unit: str
    quantity: float
    marks: tuple[str, ...] = ()
    price: float | None = None

    @property
    def cost(self) -> float | None:
        """Quantity times price, where there is one."""
        return None if self.price is None else round(self.quantity * self.price, 2)


@dataclass(frozen=True, slots=True)
class Order:
    """The lines, list by list; the stock plans of the trims by item; blanks that give two sheets."""

    name: str
    units: str
    lines: tuple[Line, ...]
    plans: tuple[tuple[str, StockPlan], ...]
    pairs: tuple[Pair, ...]
    unpriced: tuple[str, ...] = field(default=())


def order(schedule: Schedule, buying: Buying | None = None) -> Order:
    """The order of a building. buying: how things are bought; as its terms ask unless given."""
    buying = buying or buying_on(schedule.terms)
    pairs = (*rake_pairs(schedule.rows), *rip_pairs(schedule.rows))
    plans = tuple(_plans(schedule, buying))
    lines = (
        *_sheets(schedule, pairs, buying),
        *(_trim_line(item, plan, buying, schedule.units) for item, plan in plans),
        *_screws(schedule, buying),
        *_closures(schedule),
        *_tape(schedule),
        *_members(schedule),
        *_concrete(schedule),
    )
    return Order(schedule.name, schedule.units, tuple(lines), plans, pairs)


def _sheets(schedule: Schedule, pairs: tuple[Pair, ...], buying: Buying) -> Iterator[Line]:
    """Whole sheets by kind and order length; a pair of rakes counts one blank."""
    units, rows = schedule.units, {row.mark: row for row in schedule.rows}
    left = {row.mark: row.count for row in schedule.rows}
    wanted: dict[tuple[str, float], Counter[str]] = defaultdict(Counter)
    for pair in pairs:
        left[pair.first] -= pair.count
        left[pair.second] -= pair.count
        key = (_sheet_kind(rows[pair.first], units), _rounded_up(pair.length + buying.kerf, buying.step))
        wanted[key][f"{pair.first}+{pair.second}"] += pair.count
    for mark, count in left.items():
        if count:
            wanted[_sheet_kind(rows[mark], units), _rounded_up(rows[mark].length, buying.step)][mark] += count
    for (kind, length), marks in sorted(wanted.items(), key=lambda one: (one[0][0], -one[0][1])):
        item = f"{kind}, {_long(length, units)}"
        yield Line("sheets", item, "each", sum(marks.values()), tuple(marks))


def _sheet_kind(row: Row, units: Units) -> str:
    gauge = f"{row.gauge} {_thick(row.thickness, units)}"
    return _kind(f"{row.role} {row.profile}", gauge, row.colour)


def _kind(*words: str) -> str:
    """What is said of a kind, without what nobody said."""
    return ", ".join(word.strip() for word in words if word.strip())


def _thick(mm: float, units: Units) -> str:
    return format_thickness(mm, units) + (" mm" if units == "mm" else "")


def _plans(schedule: Schedule, buying: Buying) -> Iterator[tuple[str, StockPlan]]:
    """The stock plan of each kind and colour of trim."""
    kinds: dict[str, list[tuple[str, float]]] = defaultdict(list)
    for item in schedule.listed("trims"):
        length = min(item.length, buying.stock) if item.length <= buying.stock + FULL else item.length
        kind = _kind(item.role, _thick(item.thickness, schedule.units), item.colour)
        kinds[kind] += [(item.mark, length)] * item.count
    for kind, pieces in kinds.items():
        longest = max(length for _, length in pieces)
        # Pieces cut for a longer stock than is bought are ordered at their own length.
        yield kind, stock_plan(pieces, max(buying.stock, longest), buying.kerf)


def _trim_line(item: str, plan: StockPlan, buying: Buying, units: str) -> Line:
    stock = plan.sticks[0].stock if plan.sticks else buying.stock
    marks = dict.fromkeys(name for stick in plan.sticks for name, _ in stick.cuts)
    return Line("trims", f"{item}, {_long(stock, units)}", "each", len(plan.sticks), tuple(marks))


def _screws(schedule: Schedule, buying: Buying) -> Iterator[Line]:
    counts: dict[str, list[Item]] = defaultdict(list)
    for item in schedule.listed("screws"):
        kind = _kind(f"{item.role} {item.section} {_inches(schedule.units)}", item.colour)
        counts[kind].append(item)
    for kind, items in counts.items():
        count = sum(item.count for item in items)
        yield Line(
            "screws", kind, "each", ceil(count * (1 + buying.spare) - 1e-9), tuple(i.mark for i in items)
        )


def _closures(schedule: Schedule) -> Iterator[Line]:
    for role in roles_of("closures"):
        items = [item for item in schedule.listed("closures") if item.role == role]
        if items:
            whole = max(item.length for item in items)
            kind = f"{role}, {_long(whole, schedule.units)}"
            yield Line("closures", kind, "each", sum(i.count for i in items), tuple(i.mark for i in items))


def _tape(schedule: Schedule) -> Iterator[Line]:
    """Sealant tape along the roof's side laps, where the pitch asks for it."""
    if schedule.sealed_laps:
        unit, size = ("m", 1000.0) if schedule.units == "mm" else ("ft", 12 * INCH)
        length = sum(schedule.sealed_laps)
        yield Line("tape", "sealant tape for side laps", unit, float(ceil(length / size - 1e-9)))


def _members(schedule: Schedule) -> Iterator[Line]:
    """Members by section and length, as cut."""
    kinds: dict[tuple[str, float], list[Item]] = defaultdict(list)
    for item in schedule.listed("members"):
        kinds[item.section, snapped(item.length, 0.1)].append(item)
    for (section, length), items in kinds.items():
        unit = "" if schedule.units == "mm" else " in"  # mm are said by the section itself
        text = f"{section}{unit}, {_long(length, schedule.units)}"
        yield Line("members", text, "each", sum(i.count for i in items), tuple(i.mark for i in items))


def _concrete(schedule: Schedule) -> Iterator[Line]:
    volume = sum(item.count * item.volume for item in schedule.listed("slab"))
    if volume:
        unit, size = ("m3", 1e9) if schedule.units == "mm" else ("yd3", YARD**3)
        yield Line("slab", "concrete", unit, snapped(volume / size, 0.01), ("SB1",))


def _rounded_up(length: float, step: float) -> float:
    return ceil(snapped(length, 0.01) / step - 1e-6) * step


def _long(mm: float, units: str) -> str:
    return f"{snapped(mm, 1):.0f} mm" if units == "mm" else format_length(mm, "ft-in")


def _inches(units: str) -> str:
    return "mm" if units == "mm" else "in"


LISTS = ("sheets", "trims", "screws", "closures", "tape", "members", "slab")
"""The lists of an order, in order."""
