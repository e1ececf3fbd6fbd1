"""Screws through the sheets, in the usual pattern (trade practice, no published source).

At each framing line next to a sheet's end or the edge of a cutout across its ribs: a pair straddling
every major rib. At the lines between: one at every major rib, always on the same side, or on the other
one where the run's end or an opening leaves no flat there. A lap rib counts once, since each pan's
screws belong to its own sheet. Where the run's end leaves a rib no outer flat, the outer one of a pair is
left out. Along every jamb and every flush corner column runs a column of them, and at the run's ends stands a
screw on every line.

A screw whose place is taken by a rib, a lip or a joint goes to the nearest flat of its pan with steel
behind; where there is none it is left out, and said.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import hypot

import numpy as np
import shapely
from shapely.geometry import LineString

from ...description.skin import Skin
from ...place import Point2, Point3
from ...recipe import Part, Sheet, Turned, grid
from ...roles import Role
from ..skin.cladding import Tile
from .bare_ends import bare_ends
from .fastening import Fastening, Missed, ScrewedSheet, put, unscrewed
from .room import segments
from .screw_kinds import APART, EDGE, INCH, NUMBER_12, hex_screw
from .screw_lines import ScrewLine
from .taken import Taken
from .upright_screws import along_uprights

HOLDS = 12 * INCH
"""mm of a sheet's end past its last screw; down a steep rake a single one a rib would leave more. Ours."""
LEAST_EDGE = 3 * INCH
"""mm; a sheet's edge at an opening's head or sill longer than this has a screw of its own. Ours."""
LEAST_STRETCH = 6 * INCH
"""mm; so has what of a sheet lies on steel elsewhere. Ours."""
AT_EDGE, FROM_EDGE = 5.5 * INCH, INCH
"""mm; a line holds the run's end with a screw this near to it; else one is added about an inch in. Ours."""


def sheet_screws(plan: Fastening, tiles: Iterable[tuple[Tile, Part]]) -> tuple[list[Part], list[Missed]]:
    """A row for each sheet of a face, and the screws that would miss."""
    laid = [unscrewed(plan, tile, sheet) for tile, sheet in tiles]
    if not laid:
        return [], []
    one_less = [miss for sheet in laid for miss in _at_ribs(plan, sheet)]
    for sheet in laid:
        _at_run_ends(plan, sheet)
        _on_bare_stretches(plan, sheet)
    base = max(sheet.profile.base for sheet in laid)
    astride = base + 2 * plan.screws.beside_rib + 2 * APART
    missed = [miss for miss in one_less if not _near(plan.room.taken, miss.at, (astride, 4 * INCH))]
    missed += along_uprights(plan, laid)
    for sheet in laid:
        bare = bare_ends(plan.lines, sheet.region.span, sheet.inside, plan.room.taken)
        missed += [Missed(sheet.part.name, plan.face.name, at) for at in bare]
    rows = [row for sheet in laid if (row := _row(plan, sheet))]
    return rows, missed


def _near(taken: Taken, at: Point2, reach: Point2) -> bool:
    """Whether a screw stands within a reach (u, v) of a place: the rib is held there after all."""
    return taken.holds((at[0] - reach[0], at[0] + reach[0]), (at[1] - reach[1], at[1] + reach[1]))


@dataclass(frozen=True, slots=True)
class _Want:
    """A crossing of a rib's one side with a line: where the screw goes and how far it may slide."""

    line: ScrewLine
    at: Point2
    pan: Point2
    pair: bool

    @property
    def along(self) -> LineString:
        """The stretch of the line over the pan beside the rib."""
        return _along(self.line, self.pan)


def _at_ribs(plan: Fastening, sheet: ScrewedSheet) -> Iterator[Missed]:
    """The pattern at every rib of a sheet; yields what finds no room."""
    profile = sheet.profile
    count = round(profile.cover / profile.pitch)
    firsts, seconds = [(k, 1.0) for k in range(count)], [(k, -1.0) for k in range(1, count + 1)]
    sides = _sides(plan, sheet, [*firsts, *seconds])
    for k in range(count + 1):
        first, second = sides.get((k, 1.0), {}), sides.get((k, -1.0), {})
        left_out = set()
        for number, want in first.items():
            if not _set(plan, sheet, want):
                if want.pair or number not in second:
                    yield Missed(sheet.part.name, plan.face.name, want.at)
                left_out.add(number)
        for number, want in second.items():
            alone = number in left_out or (number not in first and not _beyond(plan, sheet, k, want))
            if (want.pair or alone) and not _set(plan, sheet, want):
                yield Missed(sheet.part.name, plan.face.name, want.at)


_Side = tuple[int, float]
"""A major rib's number from the left, and which side of it: 1 the right one, -1 the left."""


def _sides(plan: Fastening, sheet: ScrewedSheet, sides: Sequence[_Side]) -> dict[_Side, dict[int, _Want]]:
    """The crossings on sides of ribs with the lines of the face, by the lines' numbers."""
    if sheet.inside.is_empty:
        return {}
    foot_to_screw = sheet.profile.base / 2 + plan.screws.beside_rib
    across = {(k, side): sheet.u(k * sheet.profile.pitch + side * foot_to_screw) for k, side in sides}
    on_face = {one: u for one, u in across.items() if 0.0 <= u <= plan.face.width}
    _, low, _, high = sheet.inside.bounds
    upright = shapely.linestrings(
        np.array([[(u, low - 1), (u, high + 1)] for u in on_face.values()]).reshape(-1, 2, 2)
    )
    along = shapely.intersection(sheet.inside, upright)
    return {
        one: _side(plan, sheet, one, u, part) for (one, u), part in zip(on_face.items(), along, strict=True)
    }


def _side(
    plan: Fastening, sheet: ScrewedSheet, rib: _Side, u: float, along: shapely.Geometry
) -> dict[int, _Want]:
    """The crossings on one side of a rib, at u; along: what of the sheet lies there."""
    (k, side), profile = rib, sheet.profile
    foot = k * profile.pitch + side * profile.base / 2
    foot_to_screw = profile.base / 2 + plan.screws.beside_rib
    pan = (sheet.u(foot), sheet.u(k * profile.pitch + side * profile.pitch / 2))
    found = {}
    for a, b in segments(along):
        heights = [
            (v, i) for i, line in enumerate(plan.lines) if (v := line.height(u)) is not None and a <= v <= b
        ]
        crossed = _apart(sorted(heights))
        for place, (v, i) in enumerate(crossed):
            at_end = place in (0, len(crossed) - 1)
            slant, rise = hypot(1.0, plan.lines[i].rise), abs(plan.lines[i].rise)
            # Along the edge, to where it meets the sheet's side: down a rake that leans away from the screw.
            from_edge = min(v - a, b - v) / slant + EDGE
            alone = (profile.pitch + profile.leg - foot_to_screw) * slant + from_edge * rise
            asked = plan.screws.ends if at_end else plan.screws.between
            pair = asked == "pair" or (at_end and alone > HOLDS) or (place == 0 and sheet.lap is not None)
            if v < sheet.covered:  # past it the sheet above is screwed through this one
                found[i] = _Want(plan.lines[i], (u, v), pan, pair)
    return found


def _apart(heights: list[tuple[float, int]]) -> list[tuple[float, int]]:
    """Crossings from the foot up, none closer than allowed; the last one stays."""
    kept: list[tuple[float, int]] = []
    for one in heights:
        if not kept or one[0] - kept[-1][0] >= APART:
            kept.append(one)
    if heights and kept[-1] != heights[-1]:
        kept[-1] = heights[-1]
    return kept


def _along(line: ScrewLine, span: Point2) -> LineString:
    """The stretch of a line over a range of u."""
    low, high = (min(max(u, line.left), line.right) for u in sorted(span))
    return LineString([(u, line.at + line.rise * (u - line.left)) for u in (low, high)])


def _beyond(plan: Fastening, sheet: ScrewedSheet, k: int, want: _Want) -> bool:
    """Whether the rib's other side, the neighbour's, has skin and steel on the line."""
    profile = sheet.profile
    rib = k * profile.pitch
    pan = (sheet.u(rib + profile.base / 2), sheet.u(rib + profile.pitch / 2))
    if not all(want.line.left <= u <= want.line.right for u in pan):
        return False
    along = _along(want.line, pan)
    skin = along if shapely.covers(plan.skin, along) else along.intersection(plan.skin)
    return bool(shapely.intersects(plan.room.steel, skin))


def _set(plan: Fastening, sheet: ScrewedSheet, want: _Want) -> bool:
    """Sets a screw as near as may be to where it is wanted; False where there is no room for it."""
    if sheet.has_room(want.at):
        spot: Point2 | None = want.at
        if any(abs(u - want.at[0]) + abs(v - want.at[1]) < 2 * APART for u, v in sheet.spots):
            spot = plan.room.spot(want.at, sheet.flats(want.along))
    else:
        spot = plan.room.spot(want.at, sheet.flats(want.along))
    return put(plan, sheet, spot)


def _at_run_ends(plan: Fastening, sheet: ScrewedSheet) -> None:
    """On every line a screw near the run's ends and beside openings, where the nearest rib is too far in
    to hold the edge."""
    if sheet.inside.is_empty:
        return
    left, right = sheet.region.span
    edges = [(left, 1.0), (right, -1.0)]
    edges += [(o.from_left, -1.0) for o in plan.face.openings]
    edges += [(o.from_left + o.width, 1.0) for o in plan.face.openings]
    edges += [end for low, _, high, _ in plan.face.cuts for end in ((low, -1.0), (high, 1.0))]
    first, _, last, _ = sheet.inside.bounds
    for end, inward in edges:
        beyond = end + inward * AT_EDGE
        if max(end, beyond) < first or min(end, beyond) > last:
            continue
        for line in plan.lines:
            left, right = sorted(min(max(x, line.left), line.right) for x in (end, beyond))
            u = min(max(end + inward * FROM_EDGE, line.left), line.right)
            v = line.at + line.rise * (u - line.left)
            if not plan.room.taken.holds((left, right), (v - 3 * APART, v + 3 * APART)):
                put(plan, sheet, plan.room.spot((u, v), sheet.flats(_along(line, (end, beyond)))))


def _on_bare_stretches(plan: Fastening, sheet: ScrewedSheet) -> None:
    """In the middle of a stretch of a line behind a sheet where no rib has brought it a screw: at the head or
    sill of an opening, over a rail's cover, on steel that ends before the next rib."""
    ends = [((line.left, line.at), (line.right, line.height(line.right))) for line in plan.lines]
    edges = shapely.intersection(sheet.inside, shapely.linestrings(ends))
    for line, edge in zip(plan.lines, edges, strict=True):
        at_opening = any(a <= line.left and line.right <= b for a, b in plan.spans)
        least = LEAST_EDGE if at_opening else LEAST_STRETCH
        for left, low, right, high in (one.bounds for one in shapely.get_parts(edge)):
            near = low - 3 * APART, high + 3 * APART
            if right - left > least and not plan.room.taken.holds((left, right), near):
                middle = ((left + right) / 2, (low + high) / 2)
                put(plan, sheet, plan.room.spot(middle, sheet.flats(edge)))


def _row(plan: Fastening, sheet: ScrewedSheet) -> Part | None:
    """All the screws of a sheet, on its bench."""
    recipe = sheet.part.recipe
    assert isinstance(recipe, Sheet)
    (u0, v0), sign = sheet.origin, sheet.sign
    bench = sorted((grid(sign * (u - u0)), grid(sign * (v - v0))) for u, v in sheet.spots)
    if not bench:
        return None
    row = tuple((u, v, top_of(recipe, u)) for u, v in bench)
    body = hex_screw(NUMBER_12, plan.screws.length + sheet.region.skin.off)
    return row_through(Role.SHEET_SCREW, plan, sheet.region.skin, sheet.part, body, row)


def row_through(
    role: Role, plan: Fastening, skin: Skin, sheet: Part, body: Turned, row: tuple[Point3, ...]
) -> Part:
    """A row of screws through a sheet, in the colour of the steel ones, also where it lets light through."""
    labels = (("face", plan.face.name), ("colour", skin.colour), ("material", "screw"))
    name = f"{sheet.name} {'lap ' if role is Role.LAP_SCREW else ''}screws"
    return Part(name, role, ("screws", plan.face.name), body, sheet.place, labels, row)


def top_of(recipe: Sheet, u: float) -> float:
    """w of the sheet's upper face at u: where a washer sits."""
    for (u0, w0), (u1, w1) in pairwise(recipe.upper):
        if u0 <= u <= u1:
            return grid(w0 + (w1 - w0) * (u - u0) / (u1 - u0))
    return 0.0
