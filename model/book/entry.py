"""A building raised, audited, ordered, priced: from a task to its entry. Needs the kernel."""

from __future__ import annotations

from collections import Counter
from pathlib import Path
from threading import Lock
from time import perf_counter

from ..audit import audit
from ..description.building import Building
from ..errors import DescriptionError, RibwrightError
from ..findings import Finding
from ..heading import is_braced, short
from ..intake import parse
from ..order.buying.line import YARD
from ..order.buying.order_list import LISTS, Order, buying_on, order
from ..order.buying.prices import priced, total
from ..order.lists.schedule import Schedule, schedule
from ..outputs import asked_for, write_outputs
from ..raising import raise_building
from ..units import FOOT, POUND
from .task import BUILT, FAILED, REFUSED, Entry, Task

Figures = dict[str, float | int | str | None]

ONE_AT_A_TIME = Lock()
"""The kernel's results are remembered for one building at a time: workers of a cluster may have threads."""


def entry(task: Task) -> Entry:
    """What comes of a task, whatever that is."""
    start = perf_counter()
    figures: Figures = {}
    try:
        with ONE_AT_A_TIME:
            figures = _figures(parse(task.text, task.name), task)
        state, said = BUILT, ""
    except DescriptionError as error:
        state, said = REFUSED, "; ".join(_without_line(str(problem)) for problem in error.problems)
    except RibwrightError as error:
        state, said = REFUSED, str(error)
    except MemoryError:
        state, said = FAILED, "there is not enough memory for this building"
    except Exception as error:  # one bad row must not end a run of thousands
        state, said = FAILED, f"a defect of this program: {type(error).__name__}: {error}"
    return Entry(state, said, figures, round(perf_counter() - start, 3))


def _without_line(problem: str) -> str:
    """A problem without its line, which is that of a text nobody wrote."""
    return problem.split(": ", 1)[1] if problem.startswith("line ") else problem


def _figures(building: Building, task: Task) -> Figures:
    raised = raise_building(building, most=task.pieces)
    if task.folder:
        written = write_outputs(raised.model, Path(task.folder), asked_for(task.words))
        listed, audited = written.schedule, written.audit
    else:
        listed, audited = schedule(raised.model, paint=False), audit(raised.model)
    wanted = order(listed, buying_on(listed.terms))
    if task.prices is not None:
        wanted = priced(wanted, task.prices)
    found = (*raised.findings, *audited.findings)
    marks = len({piece.mark for piece in raised.model.pieces})
    metric = building.units == "mm"
    caution = short(braced=is_braced(piece.role for piece in raised.model.pieces))
    amounts = _amounts(listed, wanted, metric)
    return {"marks": marks, **amounts, **_costs(wanted, task), **_found(found), "caution": caution}


def _amounts(listed: Schedule, wanted: Order, metric: bool) -> Figures:
    """Counts off the schedule, areas and weights off the order; in m2, kg, m3, or ft2, lb, yd3."""
    area, weight, volume = (1e6, 1.0, 1e9) if metric else (FOOT**2, POUND, YARD**3)
    counts = {name: sum(item.count for item in listed.listed(name)) for name in LISTS if listed.listed(name)}
    bought = sum(line.area for line in wanted.lines if line.list == "sheets")
    concrete = sum(line.volume for line in wanted.lines if line.list == "slab")
    return {
        "sheets": listed.count,
        **{name: counts.get(name, 0) for name in ("members", "trims", "screws", "closures", "openings")},
        "sheet_area": round(listed.area / area, 2),
        "bought_area": round(bought / area, 2),
        "steel_weight": round(listed.steel / weight, 1),
        "concrete": round(concrete / volume, 3),
        "in_units": "m2 kg m3" if metric else "ft2 lb yd3",
    }


def _costs(wanted: Order, task: Task) -> Figures:
    if task.prices is None:
        return {}
    return {
        "lines": len(wanted.lines),
        "unpriced_lines": len(wanted.unpriced),
        "cost": total(wanted),
    }


def _found(found: tuple[Finding, ...]) -> Figures:
    """How many faults, and every code with how often it came, by name."""
    codes = sorted(Counter(finding.code.text for finding in found).items())
    return {
        "faults": sum(finding.fault for finding in found),
        "findings": "; ".join(f"{code} {count}" for code, count in codes),
    }
