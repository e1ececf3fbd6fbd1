"""Clips, bolts and joints: how many places want one, counted where members meet. Which, is the engineer's."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from ..lists.schedule import Schedule
from .line import BY_ENGINEER, EACH, Line

BOLTS = 2
"""For each end that a clip holds, and each member that passes over one. Common practice, no source."""
LAP_BOLTS = 4
"""For each lap of two nested members: two through both webs at each of its ends. Common practice."""
PLACES = {"frame": "on a frame", "jamb": "at a jamb"}


def clip_lines(schedule: Schedule) -> Iterator[Line]:
    """Clips by what they hold and on what, their bolts, and the joints of frames."""
    clips = [one for one in schedule.crossings if one.on in PLACES]
    for (role, on), count in Counter((one.role, one.on) for one in clips).items():
        article = "an" if role[0] in "aeiou" else "a"
        kind = f"clip of {article} {role} {PLACES[on]}{BY_ENGINEER}"
        yield Line("clips", kind, EACH, count, names=(f"{role} clip", "clip"), count=count)
    if clips:
        count = BOLTS * sum(one.ends for one in clips)
        said = f"{BOLTS} for each end that is held"
        yield Line(
            "clips", f"bolt of a clip{BY_ENGINEER}", EACH, count, size=said, names=("bolt",), count=count
        )
    for role, count in Counter(one.role for one in schedule.crossings if one.on == "lap").items():
        kind, said = f"bolt of a {role} lap{BY_ENGINEER}", f"{LAP_BOLTS} for each lap"
        bolts, names = LAP_BOLTS * count, ("lap bolt", "bolt")
        yield Line("clips", kind, EACH, bolts, size=said, names=names, count=bolts)
    if joints := sum(one.on == "joint" for one in schedule.crossings):
        kind = f"joint within a frame{BY_ENGINEER}"
        yield Line("clips", kind, EACH, joints, names=("joint",), count=joints)
