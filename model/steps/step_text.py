"""The steps as text for a terminal and as CSV."""

from __future__ import annotations

import csv
import io
import textwrap
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence

from ..measure.snap import snapped
from ..printable import cell, printable
from ..units import Units, format_exact, format_length, parse_length
from .frame_checks import SAME
from .step import Dimension, Laid, Step
from .words import FOLD, bent, driven, length, put_up

COLUMNS = ("list", "number", "step", "what", "where", "mark", "count", "size", "within", "source", "size mm")
HANG = 10
FEWEST = 3
"""Sheets, or frames, that follow a first evenly before they are told by the last of them."""


def steps_table(steps: Sequence[Step], units: Units, head: Sequence[str], width: int = 80) -> str:
    """Step by step: what is put up, what is driven, what is checked, what is minded."""
    lines = [part for line in head for part in textwrap.wrap(printable(line), width)]
    for number, step in enumerate(steps, 1):
        lines += ["", f"{number}. {printable(step.name)}"]
        for what, text in said(step, units):
            first, rest = f"   {what.ljust(HANG - 3)}", " " * HANG
            lines += textwrap.wrap(printable(text), width, initial_indent=first, subsequent_indent=rest)
    return "\n".join(lines) + "\n"


def said(step: Step, units: Units) -> Iterator[tuple[str, str]]:
    """A word and what it is about, line by line: up, lay, screws, fold, check, mind."""
    pieces, ends = _by_kind(put_up(step)), _by_kind(bent(step))
    yield from [("up", pieces)] if pieces else []
    yield from (("lay", text) for text in _places(step.laid, units))
    yield from (("screws", f"{count} {mark} {what}") for count, mark, what in driven(step, units))
    yield from [("fold", f"{FOLD}: {ends}")] if ends else []
    yield from (("check", text) for text in _checks(step.dimensions, units))
    yield from (("mind", f"{one.text} ({one.source})") for one in step.cautions)


def _by_kind(counted: Iterable[tuple[int, str, str]]) -> str:
    """`purlin: 9 P2, 1 P4; girt: 2 G9`."""
    kinds: dict[str, list[str]] = defaultdict(list)
    for count, mark, what in counted:
        kinds[what].append(f"{count} {mark}".strip())
    return "; ".join(f"{what}: {', '.join(marks)}" for what, marks in kinds.items())


def _places(laid: Sequence[Laid], units: Units) -> Iterator[str]:
    """Where sheets go, in the order of laying: overlap rib / leading edge, by where they are read from."""
    found: dict[str, list[str]] = defaultdict(list)
    for one in laid:
        gone = one.every * (one.count - 1)
        numbers = f"#{one.first}" if one.count == 1 else f"#{one.first} to {one.last}"
        places = _place(one, 0.0, units)
        if one.count > 1:
            places += f" to {_place(one, gone, units)}, every {_exactly(one.every, units)}"
        found[one.read_from].append(f"{numbers} {' + '.join(one.marks)}: {places}")
    for read_from, said in found.items():
        yield f"overlap rib / leading edge, {read_from}: {'; '.join(said)}"


def _exactly(mm: float, units: Units) -> str:
    """A distance that is gone many times: not to be told to a sixteenth if it is not one."""
    return format_exact(snapped(mm, 0.01), units)


def _place(one: Laid, gone: float, units: Units) -> str:
    rib = "none" if one.rib is None else length(one.rib + gone, units)
    return f"{rib} / {length(one.edge + gone, units)}"


def _checks(dimensions: Sequence[Dimension], units: Units) -> Iterator[str]:
    """What is measured in one way is said once, then what it must read at each place."""
    found: dict[tuple[str, str, float | None, str], list[Dimension]] = defaultdict(list)
    for one in dimensions:
        found[one.what, one.at.partition(", ")[2], one.within, one.source].append(one)
    for (what, ends, within, source), of_one in found.items():
        off = "" if within is None else f", within {length(within, units)} ({source})"
        read = "; ".join(_readings(of_one, units))
        yield f"{', '.join(filter(None, (what, ends)))}{off}: {read}"


def _readings(dimensions: Sequence[Dimension], units: Units) -> Iterator[str]:
    """`sheet 5: 12' 1"`; of those that are as far apart as each other, in number and in place, the first and
    the last."""
    places = [one.at.partition(", ")[0] for one in dimensions]
    start = 0
    while start < len(places):
        end = _even(places, [one.size for one in dimensions], start)
        yield f"{places[start]}: {length(dimensions[start].size, units)}"
        every, exact = _apart(dimensions[start : end + 1], units)
        if end >= start + FEWEST and exact:
            apart = int(_number(places[start + 1]) - _number(places[start]))
            what = places[start].split(maxsplit=1)[0]
            each = f"each {what}" if apart == 1 else f"every {apart} {what}s"
            yield f"{each} {every} on to {places[end]}: {length(dimensions[end].size, units)}"
            start = end
        start += 1


def _apart(even: Sequence[Dimension], units: Units) -> tuple[str, bool]:
    """How far even places are apart; whether that, as it is said, leads to the last of them."""
    first, last, steps = even[0].size, even[-1].size, max(len(even) - 1, 1)
    said = format_length(abs(last - first) / steps, units)
    told = float(said) if units == "mm" else parse_length(said)
    return length(abs(last - first) / steps, units), abs(told * steps - abs(last - first)) < SAME


def _even(places: Sequence[str], sizes: Sequence[float], start: int) -> int:
    """The last of the places from a first on that are even in number and place."""
    end, numbers = start, [_number(place) for place in places]
    first = start + 1
    while end + 1 < len(places) and numbers[end + 1]:
        steps = (
            (values[end + 1] - values[end], values[first] - values[start]) for values in (numbers, sizes)
        )
        if any(abs(one - other) > SAME for one, other in steps):
            break
        end += 1
    return end


def _number(place: str) -> float:
    """Of a sheet or a frame; 0 for another place."""
    what, _, number = place.partition(" ")
    return float(number) if what in ("sheet", "frame") and number.isdigit() else 0.0


def steps_csv(steps: Sequence[Step], units: Units, head: Sequence[str]) -> str:
    """One row a mark, a kind of screw, a mark whose ends are folded, a check, a caution (RFC 4180), after
    those of the list "job"."""
    text = io.StringIO()
    writer = csv.DictWriter(text, COLUMNS, restval="")
    writer.writeheader()
    rows: list[dict[str, object]] = [{"list": "job", "what": printable(line)} for line in head]
    for number, step in enumerate(steps, 1):
        rows += [{"number": number, "step": step.name, **row} for row in _rows(step, units)]
    writer.writerows({key: cell(value) for key, value in row.items()} for row in rows)
    return text.getvalue()


def _rows(step: Step, units: Units) -> Iterator[dict[str, object]]:
    for name, pieces in (("put up", put_up(step)), ("screws", driven(step, units)), ("fold", bent(step))):
        for count, mark, what in pieces:
            yield {"list": name, "what": what, "mark": mark, "count": count}
    for one in step.dimensions:
        within = "" if one.within is None else length(one.within, units)
        sizes = {"size": length(one.size, units), "within": within, "size mm": snapped(one.size, 0.01)}
        yield {"list": "check", "what": one.what, "where": one.at, "source": one.source, **sizes}
    for caution in step.cautions:
        yield {"list": "mind", "what": caution.text, "source": caution.source}
