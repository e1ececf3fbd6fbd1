"""Whether sheets come long enough: walls in one length, slopes in as many as their purlins let them."""

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
    whole = list(lines.walls)
    if lines.building.joined:  # its flashing lies as low as one sheet lets it
        whole += lines.slopes
    regions = [(region.head - region.foot, face) for face in whole for region in face.regions]
    tallest, face = max(regions, key=lambda one: one[0], default=(0.0, lines.walls[0]))
    if over(tallest, longest):
        what = "the roof of a lean-to goes" if face.sloped else f"the sheets of the {face.name} go"
        needed = f"at least {at_least(tallest, units)}: {what} up in one length"
        yield LONGEST, f"{needed}; end laps there are not yet possible"
        return
    for slope in lines.slopes:
        if lines.end_laps[slope.name] is None:
            least = least_longest(lines.up_slope(slope), lines.building.sheets)
            needed = f"at least {at_least(least, units)}, or purlins closer together"
            yield LONGEST, f"{needed}: sheets lap on a purlin, and none is under 4 ft"
            return
