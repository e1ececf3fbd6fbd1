"""Whether half walls go with what is about them: eaves, openings, other walls."""

from __future__ import annotations

from collections.abc import Iterator

from ..description.building import Building
from ..description.said_limits import at_most, over
from .hung_checks import left_open
from .opening_lines import OpeningLines
from .steel_checks import Objection
from .tier_checks import UPPER

UNDER_CAP = ("cee", "tube")
"""Girts with one level top, and a flat for two rows of screws under it."""


def half_misfits(lines: OpeningLines) -> Iterator[Objection]:
    """Every place where walls that are clad in their lower part alone do not go with the rest."""
    building = lines.building
    if building.half_wall is None:
        return
    most = lines.strut_foot(lines.low_eave) - UPPER
    if over(building.half_wall.height, most):
        yield (
            ("half_wall", "height"),
            f"at most {at_most(most, building.units)}, to leave 2 ft open under the eave strut",
        )
    yield from _not_yet(building)
    half = building.half_walls
    yield from list(left_open(building, "half_wall", half)) or _beside(lines)
    for number, opening in enumerate(building.openings):
        if opening.wall in half:
            clad = [wall.name for wall in lines.walls if not wall.open_above]
            where = f"one that is clad up to its eave ({', '.join(clad)})" if clad else "no opening"
            yield (
                ("opening", number, "wall"),
                f"{where}; the {opening.wall} wall is open over its [half_wall]",
            )


def _not_yet(building: Building) -> Iterator[Objection]:
    """What half walls cannot stand with."""
    nearest = "not yet possible with half walls; what comes nearest: "
    if building.framing.girts != "by-pass":
        yield ("framing", "girts"), f'{nearest}"by-pass"'
    if building.framing.girt.shape not in UNDER_CAP:
        yield ("framing", "girt"), "a cee or a tube, which the cap of a half wall lies over flat"
    if building.roof.gable_overhang:
        yield ("roof", "gable_overhang"), f"{nearest}0, the roof ending at the gables"
    others: dict[str, object] = {"a lean-to": building.lean_tos, "a wainscot": building.wainscot}
    others |= {"a skirt": building.skirt, "the infill of a gable": building.infill}
    for other in (name for name, there in others.items() if there):
        yield (
            ("half_wall", "height"),
            f"not yet possible with {other}; what comes nearest: walls open, or clad",
        )


def _beside(lines: OpeningLines) -> Iterator[Objection]:
    """A half wall ends at another one or at an open wall: beside one that is clad up to its eave the corner
    would have sheets on one side alone over the cap."""
    half = [wall for wall in lines.walls if wall.half]
    beside = {wall.beside(hand).other for wall in half for hand in ("left", "right")}
    clad = [wall.name for wall in lines.walls if wall.name in beside and not wall.open_above]
    if clad:
        ways = " and ".join(f'{wall} = "open"' for wall in clad)
        yield (
            ("half_wall", "walls"),
            f"not yet possible beside a wall that is clad up to its eave ({', '.join(clad)}); what comes"
            f' nearest: "all", or [walls] {ways}',
        )
