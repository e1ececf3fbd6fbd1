"""A row of sheets as they stand in the building, told of what was measured as they lie on the bench."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from ...measure.blank import Cutout, End
from ...measure.outline import started
from ...measure.snap import snapped
from .schedule import Row

ACROSS = {"foot": "head", "head": "foot", "left": "right", "right": "left"}
"""Where a side of a sheet is once it is turned end for end; in the order that a cutout names its sides."""


def standing(row: Row) -> Row:
    """The row as someone outside sees its sheets: turned end for end where all of them are; where some are,
    as the others stand."""
    if row.turned < row.count:
        return row
    cuts = (_turned(cut, row) for cut in row.cutouts)
    return replace(
        row,
        foot=_end(row.head, row.width),
        head=_end(row.foot, row.width),
        cutouts=tuple(sorted(cuts, key=lambda cut: (snapped(cut.y, 1e-3), snapped(cut.x, 1e-3)))),
        ribs=tuple(row.width - rib for rib in reversed(row.ribs)),
    )


def _end(end: End, width: float) -> End:
    at = width - end.at if end.at else 0.0
    return replace(end, left=end.right, right=end.left, at=at)


def _turned(cut: Cutout, row: Row) -> Cutout:
    return replace(
        cut,
        x=row.width - cut.x - cut.width,
        y=row.length - cut.y - cut.height,
        sides=tuple(side for side in ACROSS if ACROSS[side] in cut.sides),
        corners=tuple((u, v) for u, v in started((row.width, row.length) - np.array(cut.corners)).tolist()),
    )
