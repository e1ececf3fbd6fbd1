"""Breaks of the pitch: a roof that goes on above another at another pitch, over the trim between them.

That trim closes the roof where it reaches up under the sheets above and down over the heads of those below;
the sheets above end past its bend where the lower leg falls away, before it where it rises.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
import shapely

from ..findings import Code, Finding
from ..measure.faces import Vectors
from .clad import Clad, Shade
from .found import found
from .limits import over, under
from .seams import BARE, LEAN
from .site import Box

SAME_WAY = 1 - 1e-6
"""Cosine, in plan, of the ways that two roofs fall that are one slope."""
OTHER_PITCH = 1e-3
"""Of two normals; closer ones are one pitch."""
OVER = (0.0, 100.0)
"""mm over the lower roof in which the feet of the upper one are."""
BESIDE = 400.0
"""mm along the lower roof in which its heads and the upper one's feet are."""
UP, DOWN = 76.2, 76.2
"""mm that the trim reaches up under the feet above, and down over the heads below (3 in), at the least.
Common practice, no source."""
HANG = (12.7, 25.4)
"""mm; of the feet past the trim's bend, or before it (1/2 to 1 in). Common practice, no source."""
IN_PLANE = 3.0
"""mm below the undersides of sheets in which a leg under them lies."""


LEVEL = 0.7
"""mm off its edge's height up to which a leg is flat: its thickness, and a little that pieces lean."""


@dataclass(frozen=True, eq=False)
class Break:
    """Two roofs that meet at one. foot: of the upper sheets (v on the upper one). head: of the lower ones (v
    on the lower one)."""

    upper: Clad
    lower: Clad
    foot: float
    head: float


def breaks(faces: Sequence[Clad]) -> tuple[Break, ...]:
    """Every break between two roofs."""
    roofs = [face for face in faces if face.plane.sloped]
    return tuple(
        one for upper in roofs for lower in roofs if upper is not lower and (one := _break(upper, lower))
    )


def _break(upper: Clad, lower: Clad) -> Break | None:
    (nx, ny, nz), (mx, my, mz) = upper.axes[2], lower.axes[2]
    cosine = (nx * mx + ny * my) / (np.hypot(nx, ny) * np.hypot(mx, my))
    if cosine < SAME_WAY or abs(nz - mz) < OTHER_PITCH:
        return None
    left, foot, right, _ = upper.plane.outline.bounds
    head = lower.plane.outline.bounds[3]
    ends = np.array([upper.plane.point(u, foot) for u in (left, right)])
    heights, up = ends @ lower.axes[2] - lower.offset, ends @ lower.axes[1] - head
    near = (heights > OVER[0]) & (heights < OVER[1]) & (np.abs(up) < BESIDE)
    return Break(upper, lower, foot, head) if near.all() and _side_by_side(upper, lower) else None


def _side_by_side(upper: Clad, lower: Clad) -> bool:
    """Whether they lie over the same stretch of a building."""
    spans = []
    for face in (upper, lower):
        left, _, right, _ = face.plane.outline.bounds
        ends = [np.array(face.plane.point(u, 0.0)) @ upper.axes[0] for u in (left, right)]
        spans.append((min(ends), max(ends)))
    return bool(min(spans[0][1], spans[1][1]) > max(spans[0][0], spans[1][0]))


def open_breaks(here: Break) -> Iterator[tuple[Finding, Box]]:
    """Stretches of a break along which no trim reaches under the upper sheets and over the lower ones."""
    face = here.upper
    left, low, right, _ = face.plane.outline.bounds
    spans = [shade.shape.bounds for shade in face.trims if _closes(here, shade)]
    closed = shapely.union_all([shapely.box(a, -1.0, b, 1.0) for a, _, b, _ in spans])
    line = shapely.LineString([(left, 0.0), (right, 0.0)])
    for part in shapely.get_parts(line.difference(closed)):
        if over(part.length, BARE):
            start, _, end, _ = part.bounds
            middle = (start + end) / 2
            nearest = min(face.plane.sheets, key=lambda one: abs(one.middle - middle))
            where = np.array(face.plane.point(middle, low))
            steps = [(u, low + step) for u in (start, end) for step in (-BESIDE, BESIDE)]
            ends = np.array([face.plane.point(*step) for step in steps])
            finding = found(Code.BREAK_OPEN, (nearest.piece,), where, part.length)
            yield finding, (ends.min(axis=0), ends.max(axis=0))


def feet_at(here: Break) -> Iterator[Finding]:
    """Feet that end too near to the bend of the trim under them, or too far from it."""
    face = here.upper
    for sheet in face.plane.sheets:
        left, foot, right, _ = sheet.outline.bounds
        for shade in face.trims:
            start, _, end, _ = shade.shape.bounds
            if not _closes(here, shade) or not start < (left + right) / 2 < end:
                continue
            past = _bend(here, shade) - foot
            past = past if here.upper.axes[2][2] > here.lower.axes[2][2] else -past
            least, most = HANG
            if under(past, least - LEAN) or over(past, most + LEAN):
                at = np.array(face.plane.point((left + right) / 2, foot))
                about = (sheet.piece, face.site.bodies[shade.body])
                yield found(Code.BREAK_HANG, about, at, past, least if past < least else most)
            break


def _bend(here: Break, shade: Shade) -> float:
    """v on the upper roof of a trim's bend: as far down as its upper leg lies in one plane."""
    leg = _under(here, shade)
    _, w = leg[leg[:, 0].argmax()]
    level: Vectors = leg[np.abs(leg[:, 1] - w) < LEVEL, 0]
    return float(level.min())


def _under(here: Break, shade: Shade) -> Vectors:
    """(n, 2): v and w on the upper roof of a trim's corners that lie right under its sheets."""
    face = here.upper
    seen: Vectors = face.site.corners(shade.body) @ face.axes[1:].T - (0.0, face.offset)
    lying: Vectors = seen[(seen[:, 1] < 1.0) & (seen[:, 1] > -IN_PLANE - face.site.pressed)]
    return lying


def closing(here: Break) -> set[int]:
    """The trims that close a break, or some of it."""
    return {shade.body for shade in here.upper.trims if _closes(here, shade)}


def _closes(here: Break, shade: Shade) -> bool:
    """Whether a trim reaches up under the upper sheets and down over the lower ones."""
    leg = _under(here, shade)
    if not len(leg) or under(float(leg[:, 0].max()), here.foot + UP):
        return False
    v, w = here.lower.axes[1:] @ here.lower.site.corners(shade.body).T
    return bool(((v < here.head - DOWN) & (w - here.lower.offset > 1.0)).any())
