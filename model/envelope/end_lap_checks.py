"""Whether sheets come long enough: those of slopes that change their pitch in one length, all else in as many
as purlins or girts let them."""

from __future__ import annotations

from collections.abc import Iterator

from ..description.said_limits import at_least, over
from .end_laps import least_longest
from .opening_lines import OpeningLines
from .steel_checks import Objection

LONGEST = ("sheets", "longest")


def length_misfits(lines: OpeningLines) -> Iterator[Objection]:
    """What asks for longer sheets than there are."""
    units, sheets = lines.building.units, lines.building.sheets
    if lines.building.roof.break_at is not None:
        # The trim where a pitch changes lies as low as one sheet lets it.
        slopes = [(slope.upper.head - slope.upper.foot, slope.name) for slope in lines.slopes]
        tallest, name = max(slopes, key=lambda one: one[0])
        if over(tallest, sheets.longest):
            needed = f"at least {at_least(tallest, units)}: the sheets of the {name} go up in one length"
            yield LONGEST, f"{needed}; end laps there are not yet possible"
            return
    regions = ((face, number, region) for face in lines.faces for number, region in enumerate(face.regions))
    lapped = [(face, one) for face, number, one in regions if lines.end_laps[face.name, number] is None]
    needs = [(least_longest(lines.up(face, region), sheets), face.sloped) for face, region in lapped]
    if needs:
        least, sloped = max(needs)
        steel, clear = ("purlins", "") if sloped else ("girts", ", clear of openings")
        needed = f"at least {at_least(least, units)}, or {steel} closer together"
        yield LONGEST, f"{needed}: sheets lap on a {steel[:-1]}{clear}, and none is under 4 ft"
