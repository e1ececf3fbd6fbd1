"""The placing list, face by face in the order of laying."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator

from ...heading import heading
from ...measure.placing import FacePlan
from ...roles import Role
from ...units import Units, format_length
from ..lists.schedule import Schedule
from .columns import in_columns

PLACES = (
    *("face", "read", "number", "part", "mark", "overlap rib at", "leading edge at", "overlap leg", "up"),
    *("foot above lowest", "lift", "middle at"),
)
WIDTH = 80  # of what stands over it
LIFT = "overlap leg of the one before"


def place_rows(schedule: Schedule) -> Iterator[tuple[str, ...]]:
    """The cells of PLACES, a row a sheet; then one for each gutter, by its far end, and each downspout."""
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
                "",
            )
        yield from _drains(plan, units)


def _drains(plan: FacePlan, units: Units) -> Iterator[tuple[str, ...]]:
    for one in plan.drains:
        spout = one.role == Role.DOWNSPOUT
        edge, middle = ("", one.middle) if spout else (format_length(one.far, units), None)
        said = "" if middle is None else format_length(middle, units)
        yield (plan.face, plan.said, "", one.role, one.mark, "", edge, "", "", "", "", said)


def placing_text(schedule: Schedule) -> str:
    """The placing list for a terminal, a table a face."""
    job, *notes = heading(schedule.name, schedule.terms, schedule.units, braced=schedule.braced)
    said = [f"Placing: {job}", *(line for note in notes for line in textwrap.wrap(note, WIDTH))]
    columns, pages = PLACES[2:], ["\n".join(said)]
    rows = list(place_rows(schedule))
    for plan in schedule.plans:
        own = [row[2:] for row in rows if row[0] == plan.face]
        pages.append("\n".join([f"{plan.face}: {plan.said}", "", *in_columns(columns, own)]))
    return "\n\n".join(pages) + "\n"
