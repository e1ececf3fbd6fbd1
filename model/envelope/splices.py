"""Where lines of steel are spliced: on frames and posts, so that no piece is longer than it can be bought."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from ..description.reading.positions import Path
from ..description.said_limits import at_least, over
from ..place import Point2
from ..roles import Role
from .opening_lines import OpeningLines

SPLICE = 3.175
"""mm; between members that butt on a clip (1/8 in). Common practice, no source."""

NEAREST = 25.4
"""mm; no splice stands nearer to an end of a line (1 in)."""


def in_stock(span: Point2, backs: Sequence[float], longest: float) -> list[Point2]:
    """A span in the fewest pieces that stock gives, as even as they can be, divided only where there is steel
    behind; in one where none of that helps.

    backs: where steel stands behind it, from the least on.
    """
    points = [span[0], *(u for u in backs if span[0] + NEAREST < u < span[1] - NEAREST), span[1]]
    best: list[tuple[int, float, list[float]] | None] = [(0, 0.0, [])]
    for end in points[1:]:
        ways = [
            (done[0] + 1, max(done[1], end - start), [*done[2], start])
            for start, done in zip(points, best, strict=False)
            if done is not None and not over(end - start, longest)
        ]
        best.append(min(ways, default=None))
    if (found := best[-1]) is None:
        return [span]
    return list(pairwise([*found[2], span[1]]))


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
        points = (0.0, *lines.backs(face), face.width)
        side = face.name in lines.eaves
        roles = (Role.PURLIN,) if face.sloped else (Role.GIRT, Role.BASE_RAIL, *[Role.EAVE_STRUT] * side)
        what = "from frame to frame" if face.sloped or side else "from post to post"
        for role in roles:
            yield role, max(b - a for a, b in pairwise(points)), f"a bay of the {face.name}, {what}"
