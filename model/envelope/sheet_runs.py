"""Runs of sheets: where each sheet of a face stands, in the order of laying."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import ceil

from ..catalog.profiles import RibProfile
from ..description.skin import Hand, Run
from ..place import Point2
from .face import Face, Region
from .steel_lines import SteelLines
from .stretches import remaining


@dataclass(frozen=True, slots=True)
class Lay:
    """One sheet's place in its run: its overlap rib's centre at u = rib, the sheet on `side` of it.

    number: in the order of laying, from 1.
    """

    number: int
    rib: float
    hand: Hand

    @property
    def sign(self) -> float:
        """1 where u of its bench runs as the face's does, -1 where it is turned end for end."""
        return 1.0 if self.hand == "left" else -1.0

    def reach(self, profile: RibProfile) -> tuple[float, float]:
        """The u range of the whole sheet, legs included."""
        if self.hand == "left":
            return (self.rib - profile.leg, self.rib + profile.cover + profile.leg)
        return (self.rib - profile.cover - profile.leg, self.rib + profile.leg)


def run(profile: RibProfile, plan: Run, clad: Point2, steel: Point2, centre: float) -> list[Lay]:
    """The sheets of a face, in the order of laying.

    clad: the u range that may be covered, where a run from a corner begins. steel: the range between
    the corners, which must be; on a gable the end sheets run past it by what their leg gives.

    From a corner the first sheet's overlap leg lies on that corner. From the centre the first sheet's
    underlap rib stands at `centre`, and all sheets of the face keep one hand, with their overlap rib
    towards the half that is laid first: there each sheet is slipped under the one before, in the other
    half it laps over it. Common practice, no source.
    """
    cover, leg = profile.cover, profile.leg
    anchor = {"left": clad[0] + leg, "right": clad[1] - leg, "centre": centre}[plan.start]
    tiny = 1e-9
    lefts = ceil((anchor - leg - steel[0]) / cover - tiny)
    rights = ceil((steel[1] - anchor - leg) / cover - tiny)
    leftward = [anchor - (k + 1) * cover for k in range(lefts)]
    rightward = [anchor + k * cover for k in range(rights)]
    order = leftward + rightward if plan.first == "left" else rightward + leftward
    shift = 0.0 if plan.first == "left" else cover
    return [Lay(number, rib + shift, plan.first) for number, rib in enumerate(order, 1)]


def laid(lines: SteelLines, face: Face, region: Region) -> Iterator[tuple[Lay, Point2]]:
    """The sheets of a region in the order of laying, each with the u range that it covers its part of: past
    an open bay begins a run of its own."""
    low, high = face.reach()
    plan, number = lines.run(face), 0
    stretches = remaining(region.span, face.gaps)
    for start, end in stretches if plan.first == "left" else stretches[::-1]:
        between = (max(low, start), min(high, end))
        for lay in run(region.skin.profile, plan, (start, end), between, run_centre(lines, face, region)):
            yield replace(lay, number=number + lay.number), (start, end)
        number += lay.number


def run_centre(lines: SteelLines, face: Face, region: Region) -> float:
    """Where the first sheet's underlap rib stands in a run from the centre.

    On the centre line, its edge a leg past it; where a post stands there, its edge is flush with the
    post's, so that the next sheet has steel too. Common practice, no source.
    """
    building, middle = lines.building, face.width / 2
    posts = [u for u, foot in lines.standing_posts(face) if foot is None]
    if not any(abs(u - middle) < 1.0 for u in posts):
        return middle
    past = building.frame.post.width / 2 - region.skin.profile.leg
    return middle + (past if lines.run(face).first == "left" else -past)
