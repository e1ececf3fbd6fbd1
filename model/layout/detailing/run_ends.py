"""Runs that end in a sliver, or in a cut along a rib: what a small change of a building's size would save."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator

from ...envelope.face import Face, Region
from ...envelope.sheet_runs import Lay, laid
from ...findings import Code, Finding
from ..trim.trim_lines import TrimLines
from .beside_openings import ribs_of

TOLD = 0.8
"""mm; what a length said in sixteenths of an inch may be off by."""


def run_ends(lines: TrimLines) -> Iterator[Finding]:
    """A note for each measure of the building that would serve better: faces that share it in one."""
    notes: dict[tuple[Code, float | None, float], list[str]] = defaultdict(list)
    for face in (face for face in lines.steel.faces if not face.gaps):
        found = [note for region in face.regions if (note := _note(lines, face, region))]
        if found:
            least = min(abs(length - face.width) for _, _, length in found)
            notes[next(note for note in found if abs(note[2] - face.width) == least)].append(face.name)
    for (code, width, length), names in notes.items():
        yield Finding(code, tuple(names), (), None, width, length, "length")


def _note(lines: TrimLines, face: Face, region: Region) -> tuple[Code, float | None, float] | None:
    """What is amiss where a run ends, how wide its last sheet is, and how wide the face had better be."""
    if (end := _ripped(lines, face, region)) is None:
        return None
    lay, edge, into = end
    start, stop = lay.reach(region.skin.profile)
    width = edge - start if into < 0 else stop - edge
    spare = width - 2 * region.skin.profile.leg
    ends = 2 if lines.steel.run(face).start == "centre" else 1
    if width < lines.building.limits.last_sheet and spare > 0:
        return Code.SLIVER, round(width, 3), round(face.width - ends * spare, 3)
    if out := _off_ribs(lines, region, (lay, edge, into)):
        return Code.RIP_ON_RIB, None, round(face.width + ends * out, 3)
    return None


def _ripped(lines: TrimLines, face: Face, region: Region) -> tuple[Lay, float, float] | None:
    """The sheet that a run ends in, if it is cut there: u of the cut, and the way (1, -1) the sheet lies."""
    lays = [lay for lay, _ in laid(lines.steel, face, region)]
    low, high = region.span
    for lay in lays[::-1]:
        start, end = lay.reach(region.skin.profile)
        if end > high + 1e-6:
            return lay, high, -1.0
        if start < low - 1e-6:
            return lay, low, 1.0
    return None


def _off_ribs(lines: TrimLines, region: Region, end: tuple[Lay, float, float]) -> float:
    """How far out (in: below nought) a rip would keep clear of the ribs' feet; 0 where it does."""
    lay, edge, into = end
    clear = region.skin.profile.base / 2 + lines.building.limits.beside_rib
    for rib in ribs_of(lay, region):
        inside = (rib - edge) * into  # of the rib, in the sheet
        if abs(inside) < clear - TOLD:
            return clear - inside if inside >= 0 else -clear - inside
    return 0.0
