"""What comes off the truck, line by line, with room for what is missing or damaged; how it is stored."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from itertools import accumulate, groupby

from ..order.buying.bundles import HEAVIEST, bundles
from ..order.buying.line import EACH, Line
from ..order.lists.handling import Carried, cautions, lifts
from ..order.lists.items import Item
from ..order.lists.schedule import Row
from ..order.written.line_cells import number
from ..units import format_weight, weight_unit
from .checklists import TICK, Section, checklist
from .frame import Content
from .job import Job
from .sheet_notes import said

ELSEWHERE = ("slab",)
"""Lists of an order that do not come on this truck."""
MARKED = ("members", "trims", "closures", "openings", "insulation")
"""Lists, besides the sheets, whose marks are counted."""
DAMAGE = "missing, damaged"
STORAGE = (
    "Count before the carrier leaves; write what is missing, bent, scratched or wet here and on the "
    "carrier's own paper.",
    "Bundles lie off the ground on timbers close enough that nothing sags, one end higher so that water "
    "runs out, tied down, under a cover that lets air through. Sheets that lie wet on each other stain: "
    "part them and let them dry.",
    "Lift sheets, never drag one over another; nothing on top of trims. Closures, tape and screws lie dry "
    "and out of the sun; open sections of steel so that they hold no water.",
)
"""Common practice, no published source."""


def delivery(one: Job) -> Iterator[Content]:
    """The checklist of a delivery, its bundles and their storage, every mark, and who lifts what."""
    yield from checklist(one, "delivery", [_lines(one), *_bundles(one), _marks(one), *_lifting(one)])


def _lines(one: Job) -> Section:
    """What is bought, in the order of its lists."""
    lines = [line for line in one.ordered.lines if line.list not in ELSEWHERE]
    return Section(
        "Delivery",
        ("", "count", "what", "size", "makes", DAMAGE),
        (0.03, 0.06, 0.42, 0.12, 0.17, 0.2),
        tuple((TICK, _quantity(line), _what(line), line.size, _makes(line), "") for line in lines),
        STORAGE[:1],
    )


def _quantity(line: Line) -> str:
    return f"{number(line.quantity)} {'' if line.unit == EACH else line.unit}".strip()


def _what(line: Line) -> str:
    return ", ".join(filter(None, (line.kind, line.gauge, line.colour)))


def _makes(line: Line) -> str:
    """Its marks, those that follow each other by the first and the last."""
    runs: list[list[str]] = []
    for mark in line.marks:
        if runs and _next(runs[-1][-1]) == mark:
            runs[-1].append(mark)
        else:
            runs.append([mark])
    return ", ".join(" to ".join((run[0], run[-1])) if len(run) > 2 else ", ".join(run) for run in runs)


def _next(mark: str) -> str:
    letters = mark.rstrip("0123456789")
    digits = mark[len(letters) :]
    return f"{letters}{int(digits) + 1}" if digits else ""


def _bundles(one: Job) -> Iterator[Section]:
    """Bundles, those that follow each other and are alike in one row."""
    found = [(len(list(alike)), bundle) for bundle, alike in groupby(bundles(one.ordered.lines))]
    firsts = accumulate((count for count, _ in found), initial=1)
    rows = tuple(
        (
            TICK,
            str(first) if count == 1 else f"{first} to {first + count - 1}",
            bundle.what,
            ", ".join(f"{sheets} of {size}" for size, sheets in bundle.sheets),
            _weight(one, bundle.weight),
            "",
        )
        for first, (count, bundle) in zip(firsts, found, strict=False)
    )
    if rows:
        head = ("", "bundle", "what", "from the bottom up", f"{weight_unit(one.units)} each", DAMAGE)
        most = f"{_weight(one, HEAVIEST)} {weight_unit(one.units)}"
        heaviest = f"Bundles of {most} at most, the longest sheets lowest."
        yield Section(
            "Bundles and storage", head, (0.03, 0.07, 0.28, 0.35, 0.07, 0.2), rows, (heaviest, *STORAGE[1:])
        )


def _marks(one: Job) -> Section:
    """Every mark with how many and how long, list by list: what is cut before it comes, or is cut here."""
    found: dict[str, list[Row | Item]] = {"sheets": list(one.listed.rows)}
    found |= {name: list(one.listed.listed(name)) for name in MARKED}
    rows = tuple(
        (TICK, name, ", ".join(_counted(one, piece) for piece in pieces))
        for name, pieces in found.items()
        if pieces
    )
    return Section("Every mark: how many, how long", ("", "list", "marks"), (0.03, 0.11, 0.86), rows)


def _counted(one: Job, piece: Row | Item) -> str:
    return f"{piece.count} {piece.mark} {said(one, piece.length)}"


def _lifting(one: Job) -> Iterator[Section]:
    """What takes more than one person, and what to mind."""
    found: dict[int, list[str]] = defaultdict(list)
    for lift in lifts(one.listed, Carried()):
        found[lift.people].append(f"{lift.mark} {lift.what} {_weight(one, lift.weight)}")
    rows = tuple((str(people or "machine"), ", ".join(found[people])) for people in sorted(found))
    notes = cautions(one.listed)
    head = ("", "people", f"marks, {weight_unit(one.units)} each")
    yield Section("Lifting", head, (0.03, 0.11, 0.86), tuple(("", *row) for row in rows), notes)


def _weight(one: Job, kg: float) -> str:
    return format_weight(kg, one.units)
