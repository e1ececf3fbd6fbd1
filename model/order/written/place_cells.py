"""The placing list, face by face in the order of laying."""

from __future__ import annotations

from collections.abc import Iterator

from ...units import format_length
from ..lists.schedule import Schedule

PLACES = (
    *("face", "read", "number", "part", "mark", "overlap rib at", "leading edge at", "overlap leg", "up"),
    *("foot above lowest", "lift"),
)
LIFT = "overlap leg of the one before"


def place_rows(schedule: Schedule) -> Iterator[tuple[str, ...]]:
    """The cells of PLACES, a row a sheet."""
    units = schedule.units
    for plan in schedule.plans:
        for one in plan.sheets:
            yield (
                *(plan.face, plan.said, str(one.number), one.part, one.mark),
                "" if one.rib is None else format_length(one.rib, units),
                format_length(one.edge, units),
                one.overlap,
                "head" if one.head_up else "turned",
                format_length(one.foot, units) if one.raised else "",
                LIFT if one.lift else "",
            )


def placing_text(schedule: Schedule) -> str:
    """The placing list for a terminal, a table a face."""
    columns, pages = PLACES[2:], []
    rows = list(place_rows(schedule))
    for plan in schedule.plans:
        own = [row[2:] for row in rows if row[0] == plan.face]
        used = [i for i in range(len(columns)) if any(row[i] for row in own)]
        sizes = {i: max(len(row[i]) for row in (columns, *own)) for i in used}
        lines = ["  ".join(row[i].ljust(sizes[i]) for i in used).rstrip() for row in (columns, *own)]
        pages.append("\n".join([f"{plan.face}: {plan.said}", "", *lines]))
    return "\n\n".join(pages) + "\n"
