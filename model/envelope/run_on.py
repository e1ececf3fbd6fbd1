"""A roof that runs on over its gables: how far down trims reach beside it, and what must go with it.

Purlins and eave struts run on past the gable's steel line; its sheets stop under them. Common practice, no
source.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import hypot

from ..catalog.trims import trim_profiles
from ..description.building import Building
from ..description.said_limits import NOISE, at_least, at_most, over, under
from ..description.steel import STRUT_CLEAR
from .opening_lines import OpeningLines
from .roof_lines import Eave
from .skin_lines import (
    DEEP,
    PAST_WASHER,
    SCREW_EDGE,
    corner_trim,
    head_angle,
    heads_fall,
    lap_room,
    outermost,
    over_shelf,
)
from .steel_checks import Objection

OVER_HEADS = 25.4
"""mm; an eave trim reaches so far (1 in) down over the heads of corner trims that stop lower. Ours."""

LEAST = 101.6
"""mm; sheets alone reach so far (4 in) past the last steel; purlins run on for no less. Common practice."""


def under_run_on(building: Building, rise: float) -> float:
    """How much lower than the roof's steel plane, plumb, corner trims end at an eave from which it rises so
    much in one of run: under the lip of the J at a gable's head, which is under the purlins; 0 where no
    purlins run on."""
    if not building.roof.gable_overhang:
        return 0.0
    room = lap_room(building)
    lip = building.framing.roof_depth + room + trim_profiles()["j"].out_of_plane
    return lip * hypot(1.0, rise) + room


def run_on_drop(building: Building, rise: float) -> float:
    """How far down the eave trim reaches there, to cover the heads of the corner trims."""
    return under_run_on(building, rise) + OVER_HEADS


def run_on_misfits(lines: OpeningLines) -> Iterator[Objection]:
    """Every place where what runs on over the gables does not go with the rest."""
    building, units, past = lines.building, lines.building.units, lines.run_on
    if not past:
        return
    if building.lean_tos:
        yield (
            ("roof", "gable_overhang"),
            "not yet possible with a lean-to; what comes nearest: 0, both roofs ending at the gables",
        )
    rake = building.framing.rake_angle
    across = rake.width if lines.setback else rake.thickness
    # The angle out there turns in under the purlins, before the trim at the gable's head.
    least = max(LEAST, across + outermost(building.sheets, building.sheets.gables) + 3 * lap_room(building))
    if under(past, least):
        yield ("roof", "gable_overhang"), f"0, or at least {at_least(least, units)}"
    deepest = min(_strut(lines, eave) for eave in lines.eaves.values())
    if over(building.framing.eave_strut.depth, deepest):
        depth = f"a section at most {at_most(deepest, units)} deep"
        yield ("framing", "eave_strut"), f"{depth}: it runs on over the gables' sheets, as the purlins do"
    yield from _strut_rows(lines)
    for number, opening in enumerate(building.openings):
        if (eave := lines.eaves.get(opening.wall)) is None:
            continue
        out = corner_trim(building) + lap_room(building)
        foot = eave.height - max(0.0, out * eave.rise) - run_on_drop(building, eave.rise)
        most = foot - over_shelf(building) - head_angle(building, opening) - opening.sill
        if over(opening.height, most):
            where = "its drip stays under the eave trim, which is as deep as the purlins that run on"
            yield ("opening", number, "height"), f"at most {at_most(most, units)}: {where}"


def _strut_rows(lines: OpeningLines) -> Iterator[Objection]:
    """A strut has a row of screws under the foam over its wall's heads, which a steep roof brings down."""
    building, strut = lines.building, lines.building.framing.eave_strut
    for eave in (eave for eave in lines.eaves.values() if not lines.named[eave.wall].open_above):
        wall, rise = lines.named[eave.wall], max(0.0, eave.rise)
        foam = eave.height - wall.upper.head + heads_fall(building, wall.skin, rise) + DEEP
        least = foam + PAST_WASHER + SCREW_EDGE + strut.thickness + strut.radius + NOISE
        if not over(least, strut.depth):
            continue
        where = "its row of screws stands under the foam over the sheets' heads"
        if over(least, _strut(lines, eave)):
            size = at_least((least + rise * max(STRUT_CLEAR, lines.strut_stop)) * eave.cos, building.units)
            yield (
                ("framing", "purlin"),
                f"a section at least {size} deep, with an eave strut as deep: {where}",
            )
        else:
            size = at_least(least, building.units)
            yield ("framing", "eave_strut"), f"a section at least {size} deep: {where}"
        return


def _strut(lines: OpeningLines, eave: Eave) -> float:
    """How deep an eave strut lies that is over the purlins' undersides."""
    return lines.rafter_top / eave.cos - max(0.0, eave.rise) * lines.strut_stop
