"""What stands beside a sheet's drawing: how many, where, which end up, how its ends and cutouts are cut."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence

from ..measure.blank import Cutout, End
from ..order.lists.handling import people_text
from ..order.lists.items import Item, format_thickness
from ..order.lists.schedule import Row
from ..order.lists.sheet_cells import up
from ..roles import LIGHTS
from ..units import format_weight, weight_unit
from .job import Job

CLOSE = 1.0
"""mm; an edge is nearer than another by more than this, or the overlap edge and the foot are read from."""


def sheet_notes(one: Job, row: Row, whole: float) -> Iterator[str]:
    """Lines beside a sheet's drawing. whole: width of the sheet it is cut from (mm)."""
    stand = up(row).replace("turned", "foot up")
    turned = stand.removeprefix("1 ") if row.count == 1 else stand
    yield f"{row.count} {'piece' if row.count == 1 else 'pieces'}: {where(one, row.mark)}; {turned}"
    overlap = "overlap edge" if row.overlap else "left edge"
    ends = (("head", row.head), ("foot", row.foot))
    words = [f"{name} {end_words(one, end, row.width, overlap)}" for name, end in ends]
    yield "square ends" if row.head.kind == row.foot.kind == "square" else "; ".join(words)
    rip = ""
    if whole - row.width > CLOSE:
        rip = f", ripped {said(one, whole - row.width)} off the {'right' if row.overlap else 'left'}"
    yield f"cut from {said(one, whole)} x {said(one, row.length)}{rip}"
    for number, cut in enumerate(row.cutouts, 1):
        yield f"{number}: {cut_words(one, row, cut, overlap)}"
    thick = "light sheet" if row.role in LIGHTS else format_thickness(row.thickness, one.units)
    yield ", ".join(filter(None, (row.colour, row.gauge or thick, row.profile)))
    weight = f"{format_weight(row.weight, one.units)} {weight_unit(one.units)} each" if row.weight else ""
    yield ", ".join(filter(None, (weight, people_text(row))))


def said(one: Job, mm: float) -> str:
    """A length within a sentence."""
    return one.length(mm) + ("" if one.units == "ft-in" else " mm")


def likewise(one: Job, items: Sequence[Item]) -> Iterator[str]:
    """The others that are cut as the one that is drawn, but for their lengths."""
    told = ", ".join(f"{item.count} {item.mark} {said(one, item.length)}" for item in items)
    if told:
        yield f"cut alike, from either end: {told}"


def where(one: Job, mark: str) -> str:
    """The places of a mark: `front 4, 7; back 2 to 9`, by the numbers of laying."""
    places: dict[str, list[int]] = defaultdict(list)
    for plane, plan in one.faces:
        places[plane.name] += [sheet.number for sheet in plan.sheets if sheet.mark == mark]
    return "; ".join(f"{face} #{stretches(numbers)}" for face, numbers in places.items() if numbers)


def stretches(numbers: Sequence[int]) -> str:
    """Numbers with those that follow each other said by the first and the last."""
    runs: list[list[int]] = []
    for number in sorted(set(numbers)):
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    return ", ".join(str(run[0]) if len(run) == 1 else f"{run[0]} to {run[-1]}" for run in runs)


def end_words(one: Job, end: End, width: float, overlap: str) -> str:
    """How an end is cut: a rake as its drop over the width it falls across."""
    if end.kind == "rake":
        high = overlap if end.high == "left" else "right edge"
        return f"rake {said(one, end.drop)} over {said(one, width)}, long at the {high}"
    if end.kind == "peak":
        return (
            f"peak {said(one, end.at)} from the {overlap}, down {said(one, end.left)} left, "
            f"{said(one, end.right)} right"
        )
    if end.kind == "bent":
        low = "right edge" if end.high == "left" else overlap
        return (
            f"bent {said(one, end.at)} from the {overlap}, down {said(one, end.bend)} there, "
            f"{said(one, end.drop)} at the {low}"
        )
    return end.kind


def cut_words(one: Job, row: Row, cut: Cutout, overlap: str) -> str:
    """A cutout from the nearest edges."""
    far, above = row.width - cut.x - cut.width, row.length - cut.y - cut.height
    wide, high = f"{said(one, cut.width)} wide", f"{said(one, cut.height)} high"
    if {"left", "right"} <= set(cut.sides):
        across = "the whole width"
    elif "left" in cut.sides or "right" in cut.sides:
        across = f"{wide} from the {overlap if 'left' in cut.sides else 'right edge'}"
    elif far < cut.x - CLOSE:
        across = f"{said(one, far)} from the right edge, {wide}"
    else:
        across = f"{said(one, cut.x)} from the {overlap}, {wide}"
    square_head = row.head.kind == "square"
    if "foot" in cut.sides:
        along = f"{high} from the foot"
    elif "head" in cut.sides and square_head:
        along = f"{high} from the head"
    elif square_head and above < cut.y - CLOSE:
        along = f"{said(one, above)} below the head, {high}"
    else:
        along = f"{said(one, cut.y)} above the foot, {high}"
    return f"{'notch' if cut.sides else 'hole'} {across}; {along}"
