"""Whether braces can stand where they are asked for: bays without openings, with room beside the frames."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ..description.braced_bays import bay_spans, free_bays, in_bay
from ..description.building import Building
from ..description.said_limits import at_least, at_most, over, under
from ..place import Point2
from .bracing import CLEAR, BraceLines, brace_lines
from .steel_checks import Objection
from .steel_lines import SteelLines

LEAST = 609.6
"""mm; an X is at least 2 ft wide and high, or it braces nothing. Ours."""


def bracing_misfits(lines: SteelLines) -> Iterator[Objection]:
    """Every place where braces do not go with what stands about them."""
    found = brace_lines(lines)
    if found is None:
        return
    where = list(_bays(lines.building, found.bays))
    yield from where
    if where:
        return
    small = [*_room(found), *_strut(found), *_size(found)]
    yield from small
    if not small:
        yield from _stock(found)


def _bays(building: Building, bays: Sequence[int]) -> Iterator[Objection]:
    """They are bays of this building, and no opening of either side wall is in them."""
    path, count, free = ("bracing", "bays"), len(bay_spans(building)), free_bays(building)
    would_do = f"{_listed(free)} would do" if free else "none is free of them; ask the engineer for a portal"
    if not bays:
        yield path, f"bays without openings: the last two at either end have some; {would_do}"
    elif over(max(bays), count):
        yield path, f"bays from 1 to {count}, counted from the front"
    elif barred := [bay for bay in bays if bay not in free]:
        opening = in_bay(building, barred[0])[0]
        what = f"in bay {barred[0]} the {opening.wall} wall has a {opening.kind}"
        yield path, f"bays without openings in the side walls: {what}; {would_do}"


def _listed(bays: Sequence[int]) -> str:
    *others, last = map(str, bays)
    return f"{', '.join(others)} or {last}" if others else last


def _room(braces: BraceLines) -> Iterator[Objection]:
    """Both braces of an X lie inside the girts and under the purlins, within the depth of the frames."""
    units, flush = braces.steel.building.units, not braces.steel.setback
    inside = "inside girts that are flush" if flush else "beside it"
    for key, (first, last), where in (
        ("column", braces.wall_room(), inside),
        ("rafter", braces.roof_room(), "beside it"),
    ):
        short = braces.needed - (last - first)
        if over(short, 0.0):
            shape = getattr(braces.steel.building.frame, key)
            deep = f"{key} at least {at_least(shape.depth + short, units)} deep"
            pass_ = f"so that two pass each other {where}"
            most = (last - first) / 2 - CLEAR
            if most < CLEAR:
                yield ("frame", key), f"a {deep}, for braces: {pass_}"
            else:
                yield ("bracing", "brace"), f"at most {at_most(most, units)} thick, or a {deep}, {pass_}"


def _strut(braces: BraceLines) -> Iterator[Objection]:
    """A strut lies in the rafters' depth."""
    first, last = braces.roof_room()
    most = last - first - 2 * CLEAR
    if braces.strut and over(braces.strut.depth, most):
        deep = f"at most {at_most(most, braces.steel.building.units)} deep"
        yield ("bracing", "strut"), f'a tube {deep}, to lie between rafters, or "none"'


def _size(braces: BraceLines) -> Iterator[Objection]:
    """Each X is wide and high enough to be one."""
    least, units = max(LEAST, 2 * braces.brace.depth), braces.steel.building.units
    for cross in braces.crosses():
        if any(under(side, least) for side in cross.size):
            of = f"{braces.steel.building.name}'s " if braces.steel.building.joined else ""
            where = f"bay {cross.bay} leaves less on the {of}{cross.face.name}"
            yield (
                ("bracing", "bays"),
                f"bays with room for an X of {at_least(least, units)} each way; {where}",
            )
            return


def _stock(braces: BraceLines) -> Iterator[Objection]:
    """No brace is longer than steel comes in."""
    longest, building = max(braces.steel.building.framing.stock), braces.steel.building
    lengths: list[Point2] = [cross.size for cross in braces.crosses()]
    length = max((across**2 + up**2) ** 0.5 for across, up in lengths)
    if over(length, longest):
        remedy = f"one of at least {at_least(length, building.units)}, as long as the braces"
        yield ("framing", "stock"), remedy
