"""Whether sheets come long enough: a tier under others, and slopes that change their pitch, in one length;
all else in as many as its purlins or girts let them."""

from __future__ import annotations

from collections.abc import Iterator

from ..description.said_limits import at_least, over
from .end_laps import least_longest
from .opening_lines import OpeningLines
from .steel_checks import Objection

LONGEST = ("sheets", "longest")


def length_misfits(lines: OpeningLines) -> Iterator[Objection]:
    """What asks for longer sheets than there are."""
    units, longest = lines.building.units, lines.building.sheets.longest
    # Those under lean-tos: a wainscot is never as high as the least that `longest` may be.
    whole = [(region, wall) for wall in lines.walls for region in wall.regions[:-1]]
    # The trim where a pitch changes lies as low as one sheet lets it.
    if lines.building.roof.break_at is not None:
        whole += [(region, slope) for slope in lines.slopes for region in slope.regions]
    tallest, face = max(
        ((region.head - region.foot, face) for region, face in whole),
        key=lambda one: one[0],
        default=(0.0, lines.walls[0]),
    )
    if over(tallest, longest):
        what = f"the {'sheets' if face.sloped else 'lower sheets'} of the {face.name} go"
        needed = f"at least {at_least(tallest, units)}: {what} up in one length"
        yield LONGEST, f"{needed}; end laps there are not yet possible"
        return
    lapped = (face for face in lines.faces if lines.end_laps.get(face.name, ()) is None)
    needs = [(least_longest(lines.up(face), lines.building.sheets), face.sloped) for face in lapped]
    if needs:
        least, sloped = max(needs)
        steel, clear = ("purlins", "") if sloped else ("girts", ", clear of openings")
        needed = f"at least {at_least(least, units)}, or {steel} closer together"
        yield LONGEST, f"{needed}: sheets lap on a {steel[:-1]}{clear}, and none is under 4 ft"
