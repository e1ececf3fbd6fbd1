"""Whether all that is bought whole comes long enough, and corner trims reach from girt to girt."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from ..catalog.trims import trim_profiles
from ..description.reading.positions import Path
from ..description.said_limits import at_least, over, under
from ..roles import Role
from .edges import Edge
from .face import Face, in_turn
from .opening_lines import OpeningLines
from .skin_lines import HELD, foot
from .splices import length_of
from .steel_checks import Objection


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


def short_of_girts(lines: OpeningLines) -> Iterator[Objection]:
    """Corner trims of sticks so short that a piece could pass no girt, which alone hold it."""
    trim = lines.building.trim
    own, kind = dict(trim.stocks), "corner"
    longest, key = max(own.get(kind, trim.stock)), f"{kind}_stock" if kind in own else "stock"
    sides = ((wall.beside("left"), wall) for wall in in_turn(lines.walls))
    corners = [(lines.named[side.other], wall) for side, wall in sides if side.kind is Edge.CORNER]
    need = max((_least_stick(lines, *corner) for corner in corners), default=0.0)
    if under(longest, need):
        why = "corner trims are held at girts, every piece at one"
        yield ("trim", key), f"one of at least {at_least(need, lines.building.units)}: {why}"


def _least_stick(lines: OpeningLines, before: Face, after: Face) -> float:
    """Of a corner's trim: it reaches from any girt to the next, from the last one over the end, or all the
    way; its second piece to the first one."""
    girts, lap = lines.corner_girts(before, after), lines.building.trim.lap
    if not girts:
        return 0.0
    hung, half = before.hung or after.hung, before.half or after.half
    low = hung.foot if hung else foot(lines.building)
    leg = trim_profiles()["corner"].in_plane
    heads = before.top.height(before.width - leg), after.top.height(leg)
    high = half.shelf if half else max(heads)
    apart = max((b - a for a, b in pairwise(girts)), default=0.0) + 2 * HELD
    first, last = (girts[0] - low + lap + HELD) / 2, high - girts[-1] + lap / 2
    return min(high - low, max(apart, first, last))
