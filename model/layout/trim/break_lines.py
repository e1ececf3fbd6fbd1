"""How the rake trims of two slopes meet at the break between them, and what ends over the trim there.

The upper one ends as over an eave; at the same plane the lower one, whose leg is under the trim at the break.
"""

from __future__ import annotations

from math import cos, sin, tan

from ...envelope.face import Rake
from ...envelope.pitch_break import PitchBreak, break_over, break_under
from ..steel.straight_member import Plane
from .end_tabs import CLEAR
from .trim_lines import TrimLines


def rake_foot(lines: TrimLines, there: PitchBreak) -> float:
    """Up the upper slope, where its rake trims begin and the lower ones end: before the sheets' feet; in a
    hollow where the lower trims' legs still pass over the upper slope's steel."""
    if there.turn > 0.0:
        return there.foot - CLEAR
    return -(lines.roof_crown - lines.thickness - CLEAR) / sin(there.turn)


def rake_start(lines: TrimLines, rake: Rake) -> float | None:
    """Along a rake from its foot, where its trim begins at a break; None at an eave."""
    there = break_under(lines.building, lines.steel.named[rake.slope])
    return None if there is None else rake_foot(lines, there)


def rake_stop(lines: TrimLines, rake: Rake) -> Plane | None:
    """The plane, in the frame of a rake's trim, that ends it under a break: square to the upper slope, where
    its trim begins; None at a ridge or a high eave."""
    there = break_over(lines.building, lines.steel.named[rake.slope])
    if there is None:
        return None
    foot, across, along = rake_foot(lines, there), -sin(there.turn), cos(there.turn)
    return Plane((0.0, foot * across, rake.length + foot * along), (0.0, across, along))


def rake_end_at(lines: TrimLines, rake: Rake) -> tuple[float, float] | None:
    """Where that plane crosses a rake, along it from its foot, and how much sooner one farther down the
    gable, square to the slope."""
    there = break_over(lines.building, lines.steel.named[rake.slope])
    if there is None:
        return None
    return rake.length + rake_foot(lines, there) / cos(there.turn), tan(there.turn)


def over_break(lines: TrimLines, there: PitchBreak) -> float:
    """How high over the upper steel plane all is clear of the trim at a break, where the upper rake trims
    begin."""
    leg = (rake_foot(lines, there) - there.bend) * tan(there.turn)
    return leg + (lines.thickness + lines.lap_room) / cos(there.turn) + CLEAR


def tab_over_break(lines: TrimLines, rake: Rake) -> float | None:
    """How high over the upper steel plane a tab at a rake trim's foot ends; None at an eave."""
    there = break_under(lines.building, lines.steel.named[rake.slope])
    return None if there is None else over_break(lines, there)
