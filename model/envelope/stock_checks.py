"""Whether all that is bought whole comes long enough."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from ..description.reading.positions import Path
from ..description.said_limits import at_least, over
from ..roles import Role
from .opening_lines import OpeningLines
from .splices import length_of


def beyond_stock(lines: OpeningLines) -> Iterator[tuple[Path, str]]:
    """Members longer than any length that they come in, and nothing to splice them on."""
    framing, units = lines.building.framing, lines.building.units
    longest: dict[str, tuple[float, str]] = {}
    for role, length, what in _needed(lines):
        if over(length, max(framing.sticks(role))):
            key = f"{role.replace(' ', '_')}_stock" if role in dict(framing.stocks) else "stock"
            longest[key] = max(longest.get(key, (0.0, "")), (length, what))
    for key, (length, what) in longest.items():
        splice = "a splice elsewhere is an engineer's"
        remedy = f"one of at least {at_least(length, units)}, as long as {what}; {splice}"
        yield ("framing", key), remedy


def _needed(lines: OpeningLines) -> Iterator[tuple[Role, float, str]]:
    """The longest pieces that are bought whole, and what they are."""
    for eave in lines.eaves.values():
        yield Role.COLUMN, eave.height, "the columns"
    for wall in (wall for wall in lines.walls if wall.raked):
        for u, _ in lines.standing_posts(wall):
            yield Role.POST, wall.top.height(u), "the gable posts"
    for slope in lines.slopes:
        yield Role.RAFTER, lines.slope_length(slope), "the rafters"
    for face in lines.faces:
        whole, arm, side = (0.0, face.width), lines.arm(face), face.name in lines.eaves
        longest = max(length_of(bay, whole, arm) for bay in pairwise(lines.splice_points(face)))
        roles = (Role.PURLIN,) if face.sloped else (Role.GIRT, Role.BASE_RAIL, *[Role.EAVE_STRUT] * side)
        what = "from frame to frame" if face.sloped or side else "from post to post"
        for role in roles:
            yield role, longest, f"a bay of the {face.name}, {what}{' and its laps' * bool(arm)}"
