"""An order as text for a terminal."""

from __future__ import annotations

import textwrap
from collections import Counter
from collections.abc import Iterator, Sequence

from ...heading import heading
from ...roles import Role
from ...units import Units, format_length, format_weight, weight_unit
from ..buying.bundles import bundles
from ..buying.line import Line
from ..buying.order_list import LISTS, Order
from ..buying.prices import counted, total, unaccounted
from ..buying.stock import StockPlan
from ..buying.words import long_text
from ..lists.handling import Carried, cautions, lifts
from ..lists.schedule import Schedule
from .bend_text import bend_lines
from .fitted import fitted
from .line_cells import FIGURES, amounts, length_text, money, number, units_of

ABSENT = (
    "Not drawn, so not here: welds, anchors of rails and jambs, rivets at folded ends, "
    "{bracing}{insulation}{gutters}door and window hardware, and sealant round leaves and sashes, which are "
    "drawn with {gap} open round them. Clips, bolts{counted} and anchors are counted, not drawn."
)


def order_table(order: Order, schedule: Schedule, carried: Carried, width: int = 80) -> str:
    """The order list by list with sums, then bends, stock plans, pairs, bundles and what is heavy, in lines
    of at most `width` characters."""
    units = schedule.units
    job, *notes = heading(order.name, order.terms, units, braced=order.braced)
    guttered = any(line.kind == Role.GUTTER for line in order.lines)
    absent = ABSENT.format(
        bracing="" if order.braced else "bracing, ",
        insulation="" if any(line.list == "insulation" for line in order.lines) else "insulation, ",
        gutters="" if guttered else "gutters, ",
        gap="3 mm" if units == "mm" else "1/8 in",
        counted=", outlets, elbows and straps of downspouts" if guttered else "",
    )
    lines = [f"Order: {job}", *(part for note in (*notes, absent) for part in textwrap.wrap(note, width)), ""]
    for name in LISTS:
        found = [line for line in order.lines if line.list == name]
        if found:
            lines += [name.capitalize(), *_aligned(found, units, width), *_sums(found, units), ""]
    if order.trims:
        lines += [*bend_lines(order.trims, units, schedule.pitch), "", "Stock plans"]
        lines += [text for item, plan in order.plans for text in _plan_text(item, plan, units)]
    if order.pairs:
        lines += ["", "Two sheets from one blank"]
        lines += [f"  {pair.count} of {pair.first} + {pair.second}: {pair.how}" for pair in order.pairs]
    if order.longer:
        lines += ["", "Sheets shorter than a mill makes, cut from longer ones"]
        lines += [
            f"  {blank.count} of {long_text(blank.length, units)}: {' + '.join(blank.cuts)}"
            for blank in order.longer
        ]
    lines += ["", *_bundles(order, units), *_weights(order, schedule, carried, width)]
    if order.unpriced or order.unused or any(line.price for line in order.lines):
        lines += ["", *_prices(order)]
    return "\n".join(line.rstrip() for line in fitted(lines, width)) + "\n"


def _aligned(lines: Sequence[Line], units: Units, width: int) -> Iterator[str]:
    """Quantity, unit and item; length, area, weight and cost behind, or under, where it is wide."""
    size = max(len(number(line.quantity)) for line in lines)
    unit = max(len(line.unit) for line in lines)
    margin = " " * (size + unit + 5)
    heads = [f"  {number(line.quantity).rjust(size)} {line.unit.ljust(unit)}  {line.item}" for line in lines]
    tails = _tails(lines, units)
    long = max(map(len, heads))
    broad = long + 2 + max(map(len, tails)) <= width
    for head, tail in zip(heads, tails, strict=True):
        if broad:
            yield f"{head.ljust(long)}  {tail}"
        else:
            yield from fitted([head], width, margin)
            yield from [margin + tail] if tail.strip() else []


def _tails(lines: Sequence[Line], units: Units) -> list[str]:
    """What every line has of each figure, and costs, in columns."""
    of = units_of(units)
    columns = []
    for name in FIGURES:
        column = [amounts(line, units)[name] for line in lines]
        if any(column):
            size = max(map(len, column))
            columns.append(
                [f"{cell.rjust(size)} {of[name] if cell else ' ' * len(of[name])}" for cell in column]
            )
    if any(line.cost is not None for line in lines):
        costs = [money(line.cost) for line in lines]
        columns.append([cost.rjust(max(map(len, costs))) for cost in costs])
    return ["  ".join(cells) for cells in zip(*columns, strict=True)] if columns else [""] * len(lines)


def _sums(lines: Sequence[Line], units: Units) -> Iterator[str]:
    """What a list comes to, where it has more than one line."""
    if len(lines) < 2:
        return
    of = units_of(units)
    sums = {
        "length": length_text(sum(line.length for line in lines), units),
        "area": amounts(Line("", "", "", 0, area=sum(line.area for line in lines)), units)["area"],
        "weight": format_weight(sum(line.weight for line in lines), units),
    }
    said = [f"{sums[name]} {of[name]}" for name in FIGURES if any(getattr(line, name) for line in lines)]
    if said:
        yield f"  in all {', '.join(said)}"


def _plan_text(item: str, plan: StockPlan, units: Units) -> Iterator[str]:
    proof = "proven least" if plan.proven else f"at least {plan.bound} are needed"
    yield f"  {item}: {len(plan.sticks)} ({proof})"
    for count, stick in enumerate(plan.sticks, 1):
        if len(stick.cuts) > 1 or stick.left > 1:
            cuts = " + ".join(f"{name} {format_length(length, units)}" for name, length in stick.cuts)
            left = f", {format_length(stick.left, units)} left" if stick.left > 1 else ""
            yield f"    {count}: {cuts}{left}"
    full = Counter(stick.cuts[0][0] for stick in plan.sticks if len(stick.cuts) == 1 and stick.left <= 1)
    if full:
        yield f"    whole sticks: {', '.join(f'{count} of {mark}' for mark, count in full.items())}"


def _bundles(order: Order, units: Units) -> Iterator[str]:
    found = list(bundles(order.lines))
    if found:
        yield "Bundles, from the bottom up"
        for count, one in enumerate(found, 1):
            sheets = " + ".join(f"{number} x {size}" for size, number in one.sheets)
            weight = f"; {format_weight(one.weight, units)} {weight_unit(units)}" if one.weight else ""
            yield f"  {count}: {one.what}: {sheets}{weight}"
        yield ""


def _weights(order: Order, schedule: Schedule, carried: Carried, width: int) -> Iterator[str]:
    units, unit = schedule.units, weight_unit(schedule.units)
    bought = sum(line.weight for line in order.lines)
    yield f"Steel, all together: {format_weight(schedule.steel, units)} {unit}"
    yield f"As bought, with offcuts and spares: {format_weight(bought, units)} {unit}"
    heavy = lifts(schedule, carried)
    if heavy:
        yield f"Heaviest piece: {heavy[0].mark}, {format_weight(heavy[0].weight, units)} {unit}"
        for people, words in ((2, "For two people"), (3, "For three"), (0, "For more, or a machine")):
            marks = [lift.mark for lift in heavy if lift.people == people]
            yield from textwrap.wrap(f"{words}: {' '.join(marks)}", width) if marks else []
    for caution in cautions(schedule):
        yield from textwrap.wrap(caution, width)


def _prices(order: Order) -> Iterator[str]:
    costs = total(order)
    yield f"{counted(order)}{'' if costs is None else f', together {costs:.2f}'}"
    yield from unaccounted(order)
