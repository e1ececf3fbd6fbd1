"""What makes openings impossible though each key is sound: their walls, sizes, and each other.

Limits without a source are ours: what could be clad at all, not what would be wise.
"""

from __future__ import annotations

import re
from contextlib import suppress
from math import inf

from ..units import parse_length
from .bays import bay_count
from .keys.tables import OPENING
from .keys.word_kinds import OWN_WALL
from .opening import OVERHEAD, SLIDING
from .own_walls import own_wall, own_walls
from .reading.draft import Draft, Unread, Values
from .said_limits import at_least, at_most, exactly, over, under
from .walls_around import is_gable

COVER = parse_length("2 in")
"""Sheet left above, and below, an opening."""
APART = parse_length("4 in")
"""Between an opening and another one: room for two jambs' trim."""
CORNER = parse_length("6 in")
"""Between an opening and a corner: room for the corner trim's leg and a jamb's. Common practice."""


def check_openings(draft: Draft) -> None:
    """Adds every problem of the openings to the draft; a check whose keys were unreadable is left out."""
    for number in range(len(draft.openings)):
        for one in (_clad, _in_wall, _above_foot, _swing, _slides):
            with suppress(Unread):
                one(draft, number)
    _apart(draft)


def _wall_length(draft: Draft, opening: Values) -> float:
    if own := own_wall(draft, opening["wall"]):
        lean_to, which = own
        if which != "outer":
            return float(lean_to["width"])
        return float(draft.tables[""]["width" if is_gable(lean_to["wall"]) else "length"])
    return float(draft.tables[""]["width" if is_gable(opening["wall"]) else "length"])


def _clad(draft: Draft, number: int) -> None:
    """An opening needs sheets around it."""
    wall, walls = draft.openings[number]["wall"], draft.tables["walls"]
    if re.fullmatch(OWN_WALL, wall):
        _own_clad(draft, number, wall)
        return
    clad = [
        one
        for one, said in walls.items()
        if said == "clad" or (not isinstance(said, str) and len(said) < bay_count(draft))
    ]
    if wall not in clad:
        remedy = f"one that is clad ({', '.join(clad)})" if clad else "no opening, since no wall is clad"
        draft.object_to((OPENING.name, number, "wall"), f"{remedy}; the {wall} wall is open, by [walls]")


def _own_clad(draft: Draft, number: int, wall: str) -> None:
    """So does one in a wall of a lean-to."""
    with suppress(Unread):
        if (own := own_wall(draft, wall)) and own[1] in own[0]["walls"]:
            return
    clad = own_walls(draft)
    remedy = f"one that is clad ({', '.join(clad)})" if clad else "no opening, since no wall of one is clad"
    draft.object_to((OPENING.name, number, "wall"), f"{remedy}, by [[lean_to]] walls")


def _in_wall(draft: Draft, number: int) -> None:
    """An opening stands between the corners of its wall, clear of them."""
    opening = draft.openings[number]
    wall = _wall_length(draft, opening)
    most = wall - CORNER - opening["width"]
    if under(most, CORNER):
        draft.object_to(
            (OPENING.name, number, "width"),
            f"at most {at_most(wall - 2 * CORNER, draft.units)}, "
            f"since the {opening['wall']} wall is {exactly(wall, draft.units)} long",
        )
    elif under(opening["from_left"], CORNER) or over(opening["from_left"], most):
        draft.object_to(
            (OPENING.name, number, "from_left"),
            f"at least {at_least(CORNER, draft.units)} and at most {at_most(most, draft.units)}, "
            f"to stand in the {opening['wall']} wall clear of its corners",
        )


def sill(opening: Values) -> float:
    """The sill, or the kind's own where none is given."""
    if opening["sill"] is None:
        return parse_length("3 ft") if opening["kind"] in ("window", "vent") else 0.0
    return float(opening["sill"])


def _above_foot(draft: Draft, number: int) -> None:
    """An opening reaches to the slab, as a door that goes up or slides must, or leaves sheet under it worth
    cutting."""
    edge = sill(draft.openings[number])
    if edge > 0 and draft.openings[number]["kind"] in (*OVERHEAD, SLIDING):
        kind = draft.openings[number]["kind"]
        article = "an" if kind[0] in "aeiou" else "a"
        draft.object_to((OPENING.name, number, "sill"), f"0: {article} {kind} stands on the slab")
        return
    least = COVER + draft.tables["sheets"]["foot_gap"]
    if edge > 0 and under(edge, least):
        draft.object_to((OPENING.name, number, "sill"), f"0, or at least {at_least(least, draft.units)}")


def _swing(draft: Draft, number: int) -> None:
    """A leaf on hinges swings; of two leaves each has its own side."""
    opening = draft.openings[number]
    kind, swing = opening["kind"], opening["swing"]
    path = (OPENING.name, number, "swing")
    if swing is None:
        return
    if kind == "double door":
        if swing not in ("in", "out"):
            draft.object_to(path, '"out" or "in": a double door has hinges on both sides')
    elif kind != "walk door":
        draft.object_to(path, "no such line: walk doors and double doors have hinges")
    elif swing in ("in", "out"):
        draft.object_to(path, f'"left {swing}" or "right {swing}": which side its hinges are on')


def _slides(draft: Draft, number: int) -> None:
    """Only a leaf on a rail slides."""
    opening = draft.openings[number]
    if opening["slides"] is not None and opening["kind"] != SLIDING:
        draft.object_to((OPENING.name, number, "slides"), "no such line: sliding doors slide")


def _apart(draft: Draft) -> None:
    """No two openings of a wall overlap or stand too near to each other."""
    for number, opening in enumerate(draft.openings):
        for other in range(number):
            with suppress(Unread):
                gap = _between(draft.openings[other], opening)
                if under(gap, APART):
                    fault = (
                        "this one overlaps it" if gap < 0 else f"this one is {exactly(gap, draft.units)} away"
                    )
                    draft.object_to(
                        (OPENING.name, number),
                        f"at least {at_least(APART, draft.units)} from opening[{other + 1}]; {fault}",
                        read=f"{opening['kind']} at {exactly(opening['from_left'], draft.units)}",
                    )
                    break


def _between(one: Values, other: Values) -> float:
    """The gap between two openings, the larger of across and up; negative where they overlap."""
    if one["wall"] != other["wall"]:
        return inf
    return max(
        _gap(one["from_left"], one["width"], other["from_left"], other["width"]),
        _gap(sill(one), one["height"], sill(other), other["height"]),
    )


def _gap(start: float, size: float, other_start: float, other_size: float) -> float:
    """From one stretch to the other; negative where they overlap."""
    return max(other_start - start - size, start - other_start - other_size)
