"""Where details are cut: planes across edges of what stands, clear of frames and ribs."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from itertools import pairwise

import numpy as np
import shapely

from ..measure.clad_planes import CladPlane
from ..place import Place, Point2, Point3, dot, unit
from ..roles import ROOF_SHEETS, WALL_SHEETS, Role
from .detail import Detail, Measured
from .elevation_parts import Opening, near, openings, screw_lines
from .job import Job
from .lap_details import lap_details
from .seen import box_in

UP: Point3 = (0.0, 0.0, 1.0)
IN_PAN = 0.28
"""Share of the way from a major rib to the next at which a pan is cut: beside minor ribs."""
CLEAR = 150.0
"""mm between a cut and what stands upright there."""
AT_CORNER = 200.0
"""mm from a corner of the steel in which sheets end at it."""
LEVEL, BUTT = 1.0, 10.0
"""mm by which two members of a line stand askew, and of air between their ends, at the most."""
ALONG_X: Point3 = (1.0, 0.0, 0.0)
ALONG_Y: Point3 = (0.0, 1.0, 0.0)
BELOW, BEFORE = 110.0, 40.0
"""mm that a cut through an end lap shows under and over the sheets."""
OFF = 0.1371
"""mm by which planes are moved off round places, so that none runs along a face."""
CLOSE = 700.0
"""mm between the heads of two slopes that meet at a ridge."""
SEAM, FEWEST = 200.0, 3
"""mm between the head of one tier and the foot of the next; sheets that end so at least."""
SAME_WAY = 1 - 1e-6

WALL, ROOF = (*WALL_SHEETS, Role.SHEET), (*ROOF_SHEETS, Role.SHEET)
SHEETS = (*WALL_SHEETS, *ROOF)
INSIDE = (Role.INSIDE_CORNER_TRIM,)
FOOT: tuple[Measured, ...] = (("gap", WALL, (Role.SLAB,), 1), ("lap", WALL, (Role.SLAB,), 1))


def details_of(one: Job) -> Iterator[Detail]:
    """The cuts that a building has, one of a kind."""
    met: set[str] = set()
    for detail in _all(one):
        if detail.name not in met:
            met.add(detail.name)
            yield detail


def _all(one: Job) -> Iterator[Detail]:
    planes = [plane for plane, _ in one.faces]
    slopes = [plane for plane in planes if plane.sloped]
    walls = [plane for plane in planes if not plane.sloped]
    for plane in slopes:
        yield from _slope(one, plane, slopes)
    for plane in walls:
        yield from _wall(one, plane, walls)
    for plane in walls:
        for opening in openings(one, plane):
            yield from _opening(one, plane, opening)
    for plane in walls:
        yield from _end_of_cladding(one, plane)
        yield from _inside_corner(one, plane)
    yield from _splice(one)
    yield from lap_details(one)
    for plane in (*walls, *slopes):
        yield from _side_lap(one, plane)
        yield from _end_lap(one, plane)


def _slope(one: Job, plane: CladPlane, slopes: list[CladPlane]) -> Iterator[Detail]:
    left, low, right, high = plane.outline.bounds
    u = clear_of_uprights(one, plane, (left + right) / 2)
    x, y, _ = plane.frame.z
    inward = unit((-x, -y, 0.0))
    overhang: Measured = ("low", ROOF, (Role.EAVE_STRUT,), 0)
    lap: Measured = ("lap", WALL, (Role.EAVE_TRIM,), 1)
    at = Place(plane.point(u, low), inward, UP)
    yield Detail("eave", at, (-80.0, -150.0, 120.0, 60.0), (overhang, lap))
    head = plane.point(u, high)
    partner = [other for other in slopes if other is not plane and _near_head(other, head)]
    if _head_under(one, plane, Role.BREAK_TRIM):
        over_heads: Measured = ("lap", ROOF, (Role.BREAK_TRIM,), 0)
        yield Detail("pitch break", Place(head, inward, UP), (-180.0, -150.0, 230.0, 130.0), (over_heads,))
    elif _head_under(one, plane, Role.FLASHING):
        over: Measured = ("lap", ROOF, (Role.FLASHING,), 0)
        behind: Measured = ("lap", WALL, (Role.FLASHING,), 1)
        yield Detail("headwall", Place(head, inward, UP), (-200.0, -170.0, 90.0, 170.0), (over, behind))
    elif partner:
        window, gap = (-185.0, -150.0, 185.0, 60.0), ("gap", ROOF, ROOF, 0)
        capped: Measured = ("lap", ROOF, (Role.RIDGE_CAP,), 0)
        yield Detail("ridge", Place(head, inward, UP), window, (gap, capped))
    else:
        under: Measured = ("lap", ROOF, (Role.EAVE_TRIM,), 0)
        yield Detail("high eave", Place(head, inward, UP), (-120.0, -150.0, 80.0, 60.0), (under,))
    v = between_lines(one, plane)
    rake: tuple[Measured, ...] = (("lap", ROOF, (Role.RAKE_TRIM,), 0), ("lap", WALL, (Role.RAKE_TRIM,), 1))
    yield Detail(
        "rake", Place(plane.point(left, v), plane.frame.x, plane.frame.z), (-70.0, -160.0, 130.0, 50.0), rake
    )


def _head_under(one: Job, plane: CladPlane, role: Role) -> bool:
    """Whether a roof's head lies under a trim of that role."""
    _, _, _, high = plane.outline.bounds
    trims = (piece for piece in near(plane, one.model.pieces, ("trims",)) if piece.role == role)
    return any(low[1] < high < most[1] + CLOSE for low, most in (box_in(plane.frame, one) for one in trims))


def _near_head(plane: CladPlane, head: Point3) -> bool:
    _, v, _ = plane.frame.seen(head)
    return bool(abs(v - plane.outline.bounds[3]) < CLOSE)


def _wall(one: Job, plane: CladPlane, walls: list[CladPlane]) -> Iterator[Detail]:
    left, low, right, _ = plane.outline.bounds
    u = clear_of_uprights(one, plane, (left + right) / 2)
    inward = _back(plane.frame.z)
    foot = Place(plane.point(u, low), inward, UP)
    hangs = any(other is not plane and _is_under(other, plane) for other in walls)
    seam = low if hangs else _seam(plane)
    if cover := _cover(one, plane):
        across, v = clear_of_uprights(one, plane, cover[0]), cover[1]
        at = Place(plane.point(across, v), inward, UP)
        yield Detail("rail", at, (-110.0, -140.0, 90.0, 70.0), (("gap", WALL, WALL, 1),))
        seam = None if seam is None or abs(seam - v) < SEAM else seam
    if seam is not None:
        tier = Place(plane.point(u, seam), inward, UP)
        yield Detail("tier", tier, (-60.0, -105.0, 140.0, 105.0), (("gap", WALL, WALL, 1),))
    if not hangs:
        yield Detail(
            "base",
            foot,
            (-70.0, -120.0, 130.0, 90.0),
            FOOT,
        )
    corner = Place(plane.point(left, between_lines(one, plane, left + CLEAR)), plane.frame.x, inward)
    lap: Measured = ("lap", WALL, (Role.CORNER_TRIM,), 0)
    yield Detail("corner", corner, (-60.0, -60.0, 140.0, 150.0), (lap,))


def _cover(one: Job, plane: CladPlane) -> Point2 | None:
    """(u, v) of the middle of a cover over a sliding door's rail; None without any."""
    trims = (piece for piece in near(plane, one.model.pieces, ("trims",)) if piece.role == Role.RAIL_COVER)
    spans = (box_in(plane.frame, piece) for piece in trims)
    return next(((float(low[0] + high[0]) / 2, float(low[1] + high[1]) / 2) for low, high in spans), None)


def _seam(plane: CladPlane) -> float | None:
    """The height at which one tier of sheets ends and the next begins; None for a wall of one."""
    low = float(plane.outline.bounds[1])
    feet = Counter(round(float(sheet.outline.bounds[1]), 1) for sheet in plane.sheets)
    heads = [float(sheet.outline.bounds[3]) for sheet in plane.sheets]
    for v in sorted(v for v, count in feet.items() if count >= FEWEST and v > low + SEAM):
        if sum(abs(head - v) < SEAM for head in heads) >= FEWEST:
            return v
    return None


def _is_under(lower: CladPlane, upper: CladPlane) -> bool:
    if dot(lower.frame.z, upper.frame.z) < SAME_WAY:
        return False
    return bool(abs(float(lower.outline.bounds[3]) - float(upper.outline.bounds[1])) < SEAM)


def _opening(one: Job, plane: CladPlane, opening: Opening) -> Iterator[Detail]:
    kind = " ".join(word for word in opening.name.split() if not word.isdigit())
    kind = kind.removeprefix(plane.name).strip() or "opening"
    inward = _back(plane.frame.z)
    v = clear_of_levels(one, plane, (opening.low + opening.high) / 2)
    jamb = Place(plane.point(opening.left, v), plane.frame.x, inward)
    beside: Measured = ("high", WALL, (Role.JAMB,), 0)
    yield Detail(f"{kind}: jamb", jamb, (-130.0, -60.0, 70.0, 150.0), (beside,))
    u = clear_of_uprights(one, plane, (opening.left + opening.right) / 2)
    head = Place(plane.point(u, opening.high), inward, UP)
    yield Detail(f"{kind}: head", head, (-60.0, -80.0, 140.0, 130.0), (("low", WALL, (Role.HEADER,), 1),))
    if plane.point(0.0, opening.low)[2] > CLEAR:
        sill = Place(plane.point(u, opening.low), inward, UP)
        yield Detail(f"{kind}: sill", sill, (-60.0, -130.0, 140.0, 80.0), (("high", WALL, (Role.SILL,), 1),))


def _end_of_cladding(one: Job, plane: CladPlane) -> Iterator[Detail]:
    """Where sheets end on a wall between its corners: at an open bay."""
    corners = next(plan.corners for other, plan in one.faces if other is plane)
    spans = sorted(part.bounds for part in shapely.get_parts(plane.outline))
    ends = [u for left, _, right, _ in spans for u in (left, right)]
    for u in (u for u in ends if min(abs(u - corner) for corner in corners) > AT_CORNER):
        at = Place(plane.point(u, between_lines(one, plane)), plane.frame.x, _back(plane.frame.z))
        covered: Measured = ("lap", WALL, (Role.CORNER_TRIM,), 0)
        yield Detail("end of cladding", at, (-130.0, -70.0, 130.0, 150.0), (covered,))


def _inside_corner(one: Job, plane: CladPlane) -> Iterator[Detail]:
    """Where a wall ends before another one, that it stands out from."""
    trims = (piece for piece in near(plane, one.model.pieces, ("trims",)) if piece.role in INSIDE)
    for low, high in (box_in(plane.frame, piece) for piece in trims):
        for u, into in zip(plane.outline.bounds[::2], (1.0, -1.0), strict=True):
            if low[0] < u < high[0]:
                at = plane.point(u, between_lines(one, plane, u + into * CLEAR))
                across = sorted((-into * 60.0, into * 140.0))
                covered: Measured = ("lap", WALL, INSIDE, 0)
                beyond: Measured = ("lap", WALL, INSIDE, 1)
                window = (across[0], -160.0, across[1], 50.0)
                yield Detail(
                    "inside corner", Place(at, plane.frame.x, _back(plane.frame.z)), window, (covered, beyond)
                )


def _splice(one: Job) -> Iterator[Detail]:
    """Where two members of one line butt, cut along them."""
    for role in (Role.PURLIN, Role.GIRT, Role.EAVE_STRUT, Role.BASE_RAIL):
        numbers = [k for k, piece in enumerate(one.model.pieces) if piece.role == role]
        for i, j in pairwise(numbers):
            (low, high), (least, most) = one.boxes[i], one.boxes[j]
            for axis, way in ((0, ALONG_X), (1, ALONG_Y)):
                apart = max(least[axis] - high[axis], low[axis] - most[axis])
                others = [k for k in range(3) if k != axis]
                in_line = np.abs(low[others] - least[others]).max() < LEVEL
                if in_line and 0 < apart < BUTT:
                    end = (min(high[axis], most[axis]) + max(low[axis], least[axis])) / 2
                    x, y, z = ((low + high) / 2).tolist()
                    middle = (end, y, z) if axis == 0 else (x, end, z)
                    gap: Measured = ("gap", (role,), (role,), 0)
                    frame = Place(middle, way, UP)
                    yield Detail(f"splice, {role}", frame, (-150.0, -120.0, 150.0, 120.0), (gap,))
                    return


def _side_lap(one: Job, plane: CladPlane) -> Iterator[Detail]:
    for lap in plane.side_laps:
        left, low, right, high = lap.region.bounds
        if right - left > high - low:
            continue
        u = (left + right) / 2
        v = between_lines(one, plane)
        if not low < v < high:
            v = (low + high) / 2
        at = Place(plane.point(u, v), plane.frame.x, plane.frame.z)
        lapped: Measured = ("lap", SHEETS, SHEETS, 0)
        kind = "roof" if plane.sloped else "wall"
        top = "left" if lap.leftward else "right"
        yield Detail(f"side lap, {kind}: {top} on top", at, (-50.0, -25.0, 50.0, 30.0), (lapped,))
        return


def _end_lap(one: Job, plane: CladPlane) -> Iterator[Detail]:
    for lap in plane.end_laps[:1]:
        left, low, right, high = lap.region.bounds
        at = plane.point(clear_of_uprights(one, plane, (left + right) / 2), (low + high) / 2)
        about, kind = (high - low) / 2 + CLEAR / 2, "roof" if plane.sloped else "wall"
        window = (-about, -BELOW, about, BEFORE)
        lapped: Measured = ("lap", SHEETS, SHEETS, 0)
        yield Detail(f"end lap, {kind}", Place(at, plane.frame.y, plane.frame.z), window, (lapped,))


def _back(way: Point3) -> Point3:
    return (-way[0], -way[1], -way[2])


def clear_of_uprights(one: Job, plane: CladPlane, wanted: float) -> float:
    """A u in a pan, near the one wanted, clear of columns, rafters, posts, jambs and laps."""
    taken = []
    for piece in near(plane, one.model.pieces, ("members",)):
        if piece.role in (Role.COLUMN, Role.RAFTER, Role.POST, Role.JAMB, Role.KNEE, Role.RAKE_ANGLE):
            least, most = box_in(plane.frame, piece)
            if most[0] - least[0] < 4 * CLEAR:
                taken.append((float(least[0]) - CLEAR, float(most[0]) + CLEAR))
    pans = [a + IN_PAN * (b - a) for sheet in plane.sheets for a, b in pairwise(sheet.crowns)]
    free = [u for u in pans if not any(low < u < high for low, high in taken)]
    return OFF + min(free or pans or [wanted], key=lambda u: (round(abs(u - wanted), 3), u))


def clear_of_levels(one: Job, plane: CladPlane, wanted: float) -> float:
    """A v near the one wanted, clear of girts and screw lines."""
    lines = [line.v for line in screw_lines(one, plane)]
    tries = [wanted + step for step in (0.0, CLEAR, -CLEAR, 2 * CLEAR, -2 * CLEAR)]
    free = [v for v in tries if all(abs(v - line) > CLEAR / 2 for line in lines)]
    return OFF + (free or tries)[0]


def between_lines(one: Job, plane: CladPlane, u: float | None = None) -> float:
    """A v half way between the two screw lines that are farthest apart; u: where sheets must be there."""
    _, low, _, high = plane.outline.bounds
    if u is not None:
        upright = shapely.LineString([(u, low - 1.0), (u, high + 1.0)])
        _, low, _, high = plane.outline.intersection(upright).bounds
    inside = (line.v for line in screw_lines(one, plane) if low < line.v < high)
    lines = sorted({float(low), *inside, float(high)})
    a, b = max(pairwise(lines), key=lambda pair: (round(pair[1] - pair[0], 3), -pair[0]))
    return OFF + (a + b) / 2
