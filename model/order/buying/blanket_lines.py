"""Blanket insulation to buy: lengths off rolls of one width, each longer than it is drawn, rounded up.

Openings are cut out of strips that hang already, so that a strip is bought whole. Rolls come with tabs past
the width that they cover, which are lapped, folded and stapled. Common practice, no source.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from math import ceil

from ...measure.snap import snapped
from ...units import INCH
from ..lists.rolls import Strip
from ..lists.schedule import Schedule
from .line import EACH, Line
from .words import long_text

STEP = {"ft-in": 6 * INCH, "mm": 100.0}
"""mm; of the lengths that strips are cut to. Ours."""


def blanket_lines(schedule: Schedule) -> Iterator[Line]:
    """A line for each kind and length of strip, longest first."""
    step, longer = STEP[schedule.units], schedule.terms.longer or 0.0
    found: dict[tuple[str, str, float], list[Strip]] = defaultdict(list)
    for strip in schedule.blankets:
        long = ceil(snapped(strip.long + longer, 0.01) / step - 1e-6) * step
        found[strip.role, strip.thick, long].append(strip)
    for (role, thick, long), strips in sorted(found.items(), key=lambda one: (*one[0][:2], -one[0][2])):
        roll, count = schedule.terms.roll or max(strip.wide for strip in strips), len(strips)
        yield Line(
            "insulation",
            role,
            EACH,
            count,
            tuple(dict.fromkeys(strip.mark for strip in strips)),
            gauge=thick,
            size=f"{long_text(roll, schedule.units)} x {long_text(long, schedule.units)}",
            names=("blanket", "insulation"),
            count=count,
            length=count * long,
            area=count * long * roll,
        )
