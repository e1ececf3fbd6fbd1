"""What makes a building impossible though each key is sound: proportions, and openings in their walls.

Limits without a source are ours: what could be clad at all, not what would be wise.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from contextlib import suppress
from math import ceil, inf

from ..units import parse_length
from .keys.sheet_tables import HALF_WALL, SKIRT, WAINSCOT
from .keys.tables import OPENING
from .keys.word_kinds import OWN_WALL
from .opening import OVERHEAD, SLIDING
from .own_walls import name_of, own_wall, own_walls
from .reading.draft import Draft, Unread, Values
from .said_limits import at_least, at_most, exactly, over, under
from .walls_around import around, is_gable, opposite

STEEPEST_EAVE = 3
"""Times the lesser of width and length."""
COVER = parse_length("2 in")
"""Sheet left above, and below, an opening."""
APART = parse_length("4 in")
"""Between an opening and another one: room for two jambs' trim."""
CORNER = parse_length("6 in")
"""Between an opening and a corner: room for the corner trim's leg and a jamb's. Common practice."""


ADDED_UP = parse_length("1/32 in")
"""What the sum of bays may miss the length by: each was typed to the 1/16 in."""
LEAST_HANG = parse_length("1 in")
"""Of sheets past a slab's top. Common practice, no source."""
UNDER_LEDGE = parse_length("2 in")
"""Concrete left under a ledge: what the thinnest slab has. Ours."""


def check(draft: Draft) -> None:
    """Adds to the draft every problem between its keys; a check whose keys were unreadable is left out."""
    checks: list[Callable[[Draft], None]] = [
        _thickness,
        _eave,
        _ledge_depth,
        _edge,
        _hang,
        _wainscot,
        _bays,
        _open_bays,
    ]
    for one in checks:
        with suppress(Unread):
            one(draft)
    for number in range(len(draft.openings)):
        for one_opening in (_clad, _in_wall, _above_foot, _swing, _slides):
            with suppress(Unread):
                one_opening(draft, number)
    with suppress(Unread):
        _lean_tos(draft)
    _apart(draft)
    for number in range(len(draft.light_sheets)):
        with suppress(Unread):
            _which(draft, number)


def _lean_tos(draft: Draft) -> None:
    """Two lean-tos stand at two walls, across the building; each has walls of its own."""
    walls = [lean_to["wall"] for lean_to in draft.lean_tos]
    if len(walls) > 1 and walls[1] != (free := opposite(walls[0])):
        same = "one lean-to stands at that wall already"
        why = same if walls[0] == walls[1] else "around a corner two are not yet possible"
        draft.object_to(("lean_to", 1, "wall"), f'"{free}": {why}')
    for number, (lean_to, wall) in enumerate(zip(draft.lean_tos, walls, strict=True)):
        ends = around(opposite(wall))[::2]
        if not {*lean_to["walls"]} <= {*ends, "outer"}:
            own = " or ".join(f'"{end}"' for end in sorted(ends))
            draft.object_to(("lean_to", number, "walls"), f'{own}, the ends of one at this wall, or "outer"')


def _thickness(draft: Draft) -> None:
    for name in ("sheets", "gable_sheets", "roof_sheets", "wainscot"):
        sheets = draft.tables[name]
        if sheets["gauge"] is not None and sheets["thickness"] is not None:
            remedy = "either gauge or thickness; leave one of them out"
            draft.object_to((name, "thickness"), remedy, at_key=True)


def _eave(draft: Draft) -> None:
    top = draft.tables[""]
    most = STEEPEST_EAVE * min(top["width"], top["length"])
    if over(top["eave_height"], most):
        draft.object_to(
            ("eave_height",),
            f"at most {at_most(most, draft.units)}, {STEEPEST_EAVE} times the lesser of width and length",
        )


def _ledge_depth(draft: Draft) -> None:
    """A ledge is formed in the slab's edge, with concrete under it."""
    slab = draft.tables["slab"]
    most = slab["thickness"] - UNDER_LEDGE
    if over(slab["ledge_depth"], most):
        draft.object_to(
            ("slab", "ledge_depth"),
            f"at most {at_most(most, draft.units)}: {exactly(UNDER_LEDGE, draft.units)} of the slab "
            "are left under its ledge",
        )


def _edge(draft: Draft) -> None:
    """A slab's thicker edge is deeper than the slab, and who says how wide it is says how deep."""
    slab = draft.tables["slab"]
    if slab["edge_depth"] is None:
        if "edge_width" in draft.given.get("slab", {}):
            draft.object_to(("slab", "edge_width"), "edge_depth with it, or neither", at_key=True)
    elif not over(slab["edge_depth"], slab["thickness"]):
        draft.object_to(
            ("slab", "edge_depth"),
            f"more than the slab's thickness, {exactly(slab['thickness'], draft.units)}; or leave it out",
        )


def _hang(draft: Draft) -> None:
    """Sheets that hang past the slab have no ledge, and pass it by enough to keep water off its top."""
    slab = draft.tables["slab"]
    if not slab["hang"]:
        return
    if slab["ledge_depth"]:
        draft.object_to(
            ("slab", "hang"), "either a ledge or sheets that hang; leave one of them out", at_key=True
        )
    if under(slab["hang"], LEAST_HANG):
        draft.object_to(("slab", "hang"), f"0, or at least {at_least(LEAST_HANG, draft.units)}")


def _wainscot(draft: Draft) -> None:
    """Whoever says anything of a wainscot, a half wall or a skirt says how high it is."""
    for table, key in ((WAINSCOT, "height"), (HALF_WALL, "height"), (SKIRT, "foot")):
        if draft.given.get(table.name) and draft.tables[table.name][key] is None:
            draft.object_to((table.name, key), f"missing; a height, or no {table.name} at all", read="")


def _bays(draft: Draft) -> None:
    bays, length = draft.tables["frame"]["bays"], draft.tables[""]["length"]
    if bays and abs(sum(bays) - length) > ADDED_UP:
        draft.object_to(
            ("frame", "bays"),
            f"bays that add up to the length, {exactly(length, draft.units)}; "
            f"these make {exactly(sum(bays), draft.units)}",
        )


def _open_bays(draft: Draft) -> None:
    """A wall has the bays that it is to be open in."""
    count = bay_count(draft)
    for wall in ("left", "right"):
        bays = draft.tables["walls"][wall]
        if not isinstance(bays, str) and not 1 <= min(bays) <= max(bays) <= count:
            draft.object_to(("walls", wall), f"bays from 1 to {count}, counted from the front")


def _which(draft: Draft, number: int) -> None:
    """Light sheets are of one roof, and told by their numbers, or by every so many."""
    said = draft.light_sheets[number]
    try:
        own_wall(draft, said["face"])
    except Unread:
        named = [f"{name_of(draft, one)} slope" for one in draft.lean_tos]
        remedy = " or ".join(named) if named else "a face of the building, which has no lean-to"
        draft.object_to(("light_sheet", number, "face"), remedy)
    if said["sheets"] is None and said["every"] is None:
        remedy = "missing; which sheets by their numbers, or every so many"
        draft.object_to(("light_sheet", number, "sheets"), remedy, read="")


def bay_count(draft: Draft) -> int:
    """How many bays the frames make."""
    frame, length = draft.tables["frame"], draft.tables[""]["length"]
    return len(frame["bays"] or ()) or max(1, ceil(length / frame["spacing"] - 1e-9))


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
