"""What makes a building impossible though each key is sound, its openings aside: proportions, parts that do
not go together.

Limits without a source are ours: what could be clad at all, not what would be wise.
"""

from __future__ import annotations

from collections.abc import Callable
from contextlib import suppress

from ..units import parse_length
from .bays import bay_count
from .keys.sheet_tables import HALF_WALL, SKIRT, WAINSCOT
from .opening_checks import check_openings
from .own_walls import name_of, own_wall
from .reading.draft import Draft, Unread
from .said_limits import at_least, at_most, exactly, over, under
from .walls_around import around, opposite

STEEPEST_EAVE = 3
"""Times the lesser of width and length."""
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
    check_openings(draft)
    with suppress(Unread):
        _lean_tos(draft)
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
