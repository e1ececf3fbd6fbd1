"""Ends of a run of sheets that no screw of the pattern holds, such as a strip with its rib over the steel."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import shapely

from ...place import Point2
from .screw_kinds import INCH
from .screw_lines import ScrewLine
from .taken import Taken

BESIDE, ALONG = 7 * INCH, 12 * INCH
"""mm in from an end and along it within which a screw holds the end of a sheet. Ours."""
BACKED = 4 * INCH
"""mm; a line that begins farther in than this does not back the end. Common practice, no source."""


def bare_ends(
    lines: Sequence[ScrewLine], ends: Point2, sheet: shapely.Geometry, taken: Taken
) -> Iterator[Point2]:
    """Where lines cross a sheet's side at an end of its run and no screw through the sheet is near.

    ends: u of the run's left and right end. sheet: its region (u, v) in from its edges. taken: where the
    face's screws stand.
    """
    first, _, last, _ = sheet.bounds
    for u, reaches in ((first, first < ends[0] + INCH), (last, last > ends[1] - INCH)):
        if not reaches:
            continue
        through = [at for at in taken.between(u - BESIDE, u + BESIDE) if shapely.intersects_xy(sheet, *at)]
        for line in lines:
            nearest = min(max(u, line.left), line.right)
            at = (nearest, line.at + line.rise * (nearest - line.left))
            if abs(nearest - u) > BACKED or not shapely.intersects_xy(sheet, *at):
                continue
            if not any(abs(y - at[1]) < ALONG for _, y in through):
                yield at
