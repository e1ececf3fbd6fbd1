"""Where the sheets of a step go: running distances, those of equal sheets at equal distances in one."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import replace

from ..measure.placing import FacePlan
from .frame_checks import SAME
from .step import Laid


def laid(plan: FacePlan) -> tuple[Laid, ...]:
    """The columns of a plan's sheets in the order of laying."""
    found: list[Laid] = []
    for one in _columns(plan):
        every = _apart(found[-1], one) if found else None
        if every is None:
            found.append(one)
        else:
            found[-1] = replace(found[-1], last=one.last, every=every)
    return tuple(found)


def _columns(plan: FacePlan) -> Iterator[Laid]:
    sheets = defaultdict(list)
    for sheet in plan.sheets:
        sheets[sheet.number].append(sheet)
    for number, column in sheets.items():
        low = column[0]
        read_from = plan.said.split(",")[0] + (f", {low.half} half" if low.half else "")
        marks = tuple(sheet.mark for sheet in sorted(column, key=lambda sheet: sheet.foot))
        yield Laid(number, number, marks, read_from, low.rib, low.edge)


def _apart(before: Laid, one: Laid) -> float | None:
    """How far columns are from each other if one goes on from those before it; None where it does not."""
    if (one.marks, one.read_from) != (before.marks, before.read_from) or one.first != before.last + 1:
        return None
    if one.rib is None or before.rib is None:
        return None
    every = before.every or one.edge - before.edge
    edge, rib = before.edge + before.count * every, before.rib + before.count * every
    return every if max(abs(one.edge - edge), abs(one.rib - rib)) < SAME else None
