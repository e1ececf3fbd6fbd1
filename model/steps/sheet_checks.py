"""What the tape must read of sheets as they are laid, measured off the solids."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

import numpy as np

from ..measure.clad_planes import CladPlane
from ..measure.faces import Vectors
from ..measure.placing import OTHER, FacePlan, PlacedSheet
from ..measure.standing import standing_corners
from ..pieces import Piece
from ..roles import list_of
from ..units import INCH
from .frame_checks import COMMON, SAME
from .frames import Frame
from .step import Dimension

EVERY = 5
"""Cover is read at every so many sheets, and before the last. Common practice."""
PER_SHEET = INCH / 8
"""mm that is corrected at a sheet at most. Common practice."""
UNDER = 200.0
"""mm; steel whose corners are this near under a roof, and this near past its sheets' ends, carries it."""
FLUSH = 3.0
"""mm; feet nearer than this to the slab's top stand on it. Ours."""
ALONG = 0.999
"""Of a direction: it runs along the building."""
TOUCHING = 600.0
"""mm that the heads of two slopes stand apart at a ridge at most. Ours."""


def run_checks(plan: FacePlan, sloped: bool) -> Iterator[Dimension]:
    """Where lap ribs and leading edges must be, at every fifth sheet and before the last of each run, and
    the cover between."""
    ends = _ends(sloped)
    for half, run in _runs(plan):
        read_from = plan.said.split(",")[0] + (f", {half} half" if half else "")
        for one in _read(run):
            at = f"sheet {one.number}, {ends}"
            if one.rib is not None:
                yield Dimension(f"overlap rib, {read_from}", at, one.rib, PER_SHEET, COMMON)
            yield Dimension(f"leading edge, {read_from}", at, one.edge, PER_SHEET, COMMON)
        where = f"at every sheet read{f', {half} half' if half else ''}, {ends}"
        for cover in _covers(run):
            yield Dimension("cover, from one overlap rib to the next", where, cover, PER_SHEET, COMMON)


def frames_ahead(plane: CladPlane, plan: FacePlan, stations: Sequence[Frame]) -> Iterator[Dimension]:
    """How far a roof's leading edge is from the middle of the next frame, at the sheets that are read: the
    same at the eave and at the head where the run is square. None where frames do not stand along it."""
    if abs(plane.frame.x[1]) < ALONG:
        return
    middles = [plane.frame.seen((0.0, one.at, 0.0))[0] for one in stations]
    for half, run in _runs(plan):
        way = -1.0 if "right" in (plan.start, OTHER.get(half)) else 1.0
        for one in _read(run):
            ahead = [way * (u - plan.zero) - one.edge for u in middles]
            ahead = [far for far in ahead if far > 0]
            if ahead:
                at = f"sheet {one.number}, {_ends(True)} the same"
                yield Dimension(
                    "leading edge to the middle of the next frame", at, min(ahead), PER_SHEET, COMMON
                )


def _ends(sloped: bool) -> str:
    return "at the eave and at the head" if sloped else "at the foot and at the head"


def _runs(plan: FacePlan) -> Iterator[tuple[str, list[PlacedSheet]]]:
    """The lowest sheet of each column, run by run ("", or the half of a run from the centre)."""
    for half in dict.fromkeys(one.half for one in plan.sheets):
        yield half, _columns(one for one in plan.sheets if one.half == half)


def _read(run: Sequence[PlacedSheet]) -> Iterator[PlacedSheet]:
    """The sheets of a run at which the tape is laid."""
    return (one for count, one in enumerate(run, 1) if not count % EVERY or count == len(run) - 1)


def _covers(run: Sequence[PlacedSheet]) -> list[float]:
    """The covers of a run, each once (mm)."""
    ribs = [one.rib for one in run if one.rib is not None]
    found: list[float] = []
    for cover in (abs(other - one) for one, other in pairwise(ribs)):
        if not any(abs(cover - known) < SAME for known in found):
            found.append(cover)
    return found


def _columns(sheets: Iterator[PlacedSheet]) -> list[PlacedSheet]:
    """The lowest sheet of each column, in the order of laying."""
    found: dict[int, PlacedSheet] = {}
    for one in sheets:
        found.setdefault(one.number, one)
    return list(found.values())


def foot_check(plane: CladPlane) -> Iterator[Dimension]:
    """How far the feet of a wall's sheets stand over, or hang under, the top of the slab."""
    low = float(plane.outline.bounds[1])
    foot = plane.point(0.0, low)[2]
    if abs(foot) < FLUSH:
        return
    what = "feet of the sheets under the slab's top" if foot < 0 else "feet of the sheets over the slab's top"
    yield Dimension(what, plane.name, abs(foot))


def roof_checks(
    plane: CladPlane, members: Sequence[Piece], planes: Sequence[CladPlane], over_eave: bool
) -> Iterator[Dimension]:
    """How far a roof hangs over its eave, and at its head over the steel or apart from the other slope."""
    _, foot, _, head = plane.outline.bounds
    steel = _steel(plane, members)
    if over_eave and (out := _over(plane, foot, 1.0, steel)) is not None:
        yield Dimension("overhang, in plan past the steel", f"{plane.name}, eave", out)
    gap = ridge_gap(plane, planes)
    if gap is not None:
        yield Dimension("gap between the slopes' sheets", "ridge", gap)
    elif (out := _over(plane, head, -1.0, steel)) is not None and out > 0.0:  # a wall stands over it
        yield Dimension("overhang, in plan past the steel", f"{plane.name}, high eave", out)


def ridge_gap(plane: CladPlane, planes: Sequence[CladPlane]) -> float | None:
    """mm between the heads of the sheets of two slopes at their ridge; None for a slope without one."""
    here = np.array(plane.point(0.0, plane.outline.bounds[3]))
    for other in planes:
        if not other.sloped or np.dot(_level(plane), _level(other)) > -1 + 1e-6:
            continue
        apart = np.array(other.point(0.0, other.outline.bounds[3])) - here
        apart[1 if abs(_level(plane)[0]) > 0.5 else 0] = 0.0  # along the ridge
        size = float(np.linalg.norm(apart))
        if size < TOUCHING:
            return size
    return None


def _level(plane: CladPlane) -> Vectors:
    """The direction in plan in which a roof falls."""
    x, y, _ = plane.frame.z
    way: Vectors = np.array([x, y, 0.0]) / np.hypot(x, y)
    return way


def _steel(plane: CladPlane, members: Sequence[Piece]) -> Vectors | None:
    """(n, 3) mm: corners of steel right under a roof."""
    corners = [standing_corners(piece) for piece in members if list_of(piece.role) == "members"]
    if not corners:
        return None
    points = np.concatenate(corners)
    _, foot, _, head = plane.outline.bounds
    up, off = np.array([plane.frame.y, plane.frame.z]) @ (points - np.array(plane.frame.origin)).T
    near: Vectors = points[(off > -UNDER) & (off < 1.0) & (up > foot - UNDER) & (up < head + UNDER)]
    return near if len(near) else None


def _over(plane: CladPlane, v: float, sign: float, steel: Vectors | None) -> float | None:
    """How far sheets that end at v reach past the steel in plan, dropped square onto the steel's plane."""
    if steel is None:
        return None
    normal, way = np.array(plane.frame.z), sign * _level(plane)
    lift = float(((steel - np.array(plane.frame.origin)) @ normal).max())
    return float((np.array(plane.point(0.0, v)) + lift * normal) @ way - (steel @ way).max())
