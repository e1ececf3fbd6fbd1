"""What `raise` says when it is done: the building in a few lines, each figure off its solids."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from ..findings import Quantity, amount
from ..roles import LISTS, list_of
from ..units import area_unit, format_area, format_weight, weight_unit

if TYPE_CHECKING:
    from ..audit import Audit
    from ..order.lists.schedule import Schedule
    from ..pieces import Model

LAPS = ("side laps", "end laps", "trim laps")


def summary(model: Model, listed: Schedule, audit: Audit) -> Iterator[str]:
    """Counts, area and weight, measured laps, how many faults."""
    units = listed.units
    counts: Counter[str] = Counter()
    for piece in model.pieces:
        counts[list_of(piece.role) or LISTS[-1]] += piece.count
    said = ", ".join(f"{counts[name]} {_one_or_more(name, counts[name])}" for name in LISTS if counts[name])
    yield f"{counts.total()} bodies: {said}"
    weight = f"steel {format_weight(listed.steel, units)} {weight_unit(units)}"
    yield f"Sheets {format_area(listed.area, units)} {area_unit(units)}, laps counted twice; {weight} in all"
    laps = [f"{what} {sizes}" for what in LAPS if (sizes := _measured(audit, what, listed))]
    yield f"Measured: {'; '.join(laps) or 'no laps'}"
    faults = sum(finding.fault for finding in audit.findings)
    yield f"Found: {faults or 'no'} fault{'' if faults == 1 else 's'}"


def _one_or_more(name: str, count: int) -> str:
    return name.removesuffix("s") if count == 1 else name


def _measured(audit: Audit, what: str, listed: Schedule) -> str:
    """The least and the greatest of all figures of a name."""
    figures = [figure for figure in audit.measured if figure.what == what]
    sizes = [size for figure in figures for size in (figure.least, figure.greatest) if size is not None]
    if not sizes:
        return ""
    length: Quantity = "length"
    shown = dict.fromkeys(amount(size, length, listed.units) for size in (min(sizes), max(sizes)))
    return f"{sum(figure.count for figure in figures)} of {' to '.join(shown)}"


def sizes(folder: Path, files: Sequence[tuple[str, str]]) -> Iterator[str]:
    """A line for each file (name, what it is) with its size."""
    for name, what in files:
        path = folder / name
        inside = path.rglob("*") if path.is_dir() else (path,)
        size = sum(file.stat().st_size for file in inside if file.is_file())
        yield f"  {name:<14} {_bytes(size):>8}  {what}"


def _bytes(count: int) -> str:
    return f"{count / 1e6:.1f} MB" if count >= 1e6 else f"{max(1, round(count / 1e3))} kB"
