"""The shapes of an elevation in the plane of its sheets: outlines, steel, screws, distances, marks."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from math import atan2, degrees

import shapely
from shapely.geometry import LineString, Polygon

from ..drawing.dimensions import along, direction, readable
from ..drawing.pens import Pen, Size
from ..drawing.values import Line, Polyline, Shape, Text
from ..measure.clad_planes import CladPlane
from ..measure.placing import FacePlan
from ..pieces import Piece
from ..place import Point2
from ..roles import list_of
from .elevation_parts import (
    Opening,
    ScrewLine,
    ends_of,
    lies_in,
    near,
    openings,
    screw_lines,
    steel_behind,
)
from .job import Job
from .labels import Labels
from .seen import box_in, flats_of, lines_in, sheet_flats, visible
from .single import Row, Station

TOGETHER = 60.0
"""mm; steel so near a screw line is not drawn beside it."""
EDGE_ON = 0.93
"""Of a slope's trims only what lies in it is drawn: its ridge cap's other leg belongs to the other slope."""
REACH = 1e6
"""mm; longer than any sheet."""
LETTER_AT, LETTER_UP = (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8), (0.5, 0.35, 0.2, 0.1)
"""Across an opening and up it, where its letter may stand."""
HUNG = 26.0
"""mm on paper under a sheet in which its name may stand."""
SAME = 1.0
"""mm; places nearer than this are one."""
NEAR = 250.0
"""mm about an opening in which trims are its own."""
LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


@dataclass(frozen=True, eq=False)
class Face:
    """A plane of sheets with all that its elevation shows, found once."""

    plane: CladPlane
    plan: FacePlan
    seen: tuple[tuple[Piece, shapely.Geometry], ...]
    steel: tuple[tuple[Piece, tuple[Point2, Point2]], ...]
    screws: tuple[ScrewLine, ...]
    openings: tuple[Opening, ...]

    @cached_property
    def bounds(self) -> tuple[float, float, float, float]:
        """Of all that is seen: left, low, right, high (mm)."""
        left, low, right, high = shapely.total_bounds([area for _, area in self.seen]).tolist()
        return left, low, right, high

    @property
    def foot(self) -> float:
        """The lowest foot of its sheets."""
        return float(self.plane.outline.bounds[1])


def face_of(one: Job, plane: CladPlane, plan: FacePlan) -> Face:
    """What the elevation of a plane shows."""
    flats = list(sheet_flats(plane))
    own = shapely.box(*plane.outline.bounds).buffer(NEAR)
    for piece in near(plane, one.model.pieces, ("trims",) if plane.sloped else ("trims", "openings")):
        least, most = box_in(plane.frame, piece)
        if not plane.sloped:
            flats += flats_of(plane.frame, piece)
        elif own.contains(shapely.Point(*((least + most)[:2] / 2))):  # not of the slope beyond the ridge
            flats += flats_of(plane.frame, piece, EDGE_ON)
    lines = screw_lines(one, plane)
    return Face(
        plane,
        plan,
        tuple(visible(flats)),
        tuple((piece, ends_of(plane.frame, piece)) for piece in steel_behind(plane, one.model.pieces)),
        lines,
        () if plane.sloped else openings(one, plane),
    )


def drawn_lines(face: Face, window: Polygon) -> Iterator[Shape]:
    """Outlines of what is seen, steel behind as dashed middle lines, screw lines as chains."""
    for _, line in face.steel:
        if not any(_beside(line, screws) for screws in face.screws):
            yield from (Polyline(part, Pen.HIDDEN, False) for part in lines_in(LineString(line), window))
    for screws in face.screws:
        line = LineString([(screws.start, screws.v), (screws.end, screws.v)]).intersection(face.plane.outline)
        yield from (Polyline(part, Pen.CENTRE, False) for part in lines_in(line, window))
    for piece, area in face.seen:
        pen = Pen.OUTLINE if list_of(piece.role) == "sheets" else Pen.THIN
        yield from (Polyline(part, pen, False) for part in lines_in(area.boundary.simplify(0.02), window))


def _beside(line: tuple[Point2, Point2], screws: ScrewLine) -> bool:
    return all(abs(point[1] - screws.v) < TOGETHER for point in line)


def rib_row(face: Face) -> Row:
    """Where overlap ribs stand, and the steel corners."""
    plan = face.plan
    corners = [Station((u, face.foot), abs(u - plan.zero)) for u in plan.corners]
    return Row("below", (plan.zero, face.foot), (*_stations(face, edge=False), *corners))


def edge_row(face: Face) -> Row:
    """Where leading edges stand."""
    return Row("above", (face.plan.zero, face.bounds[3]), tuple(_stations(face, edge=True)))


def _stations(face: Face, *, edge: bool) -> Iterator[Station]:
    """Each sheet's leading edge at its head, or overlap rib at the foot; the highest sheets first."""
    by_name = {sheet.piece.name: sheet for sheet in face.plane.sheets}
    for placed in sorted(face.plan.sheets, key=lambda sheet: -sheet.foot):
        away = placed.edge if edge else placed.rib
        if away is None:
            continue
        outline, zero = by_name[placed.name].outline, face.plan.zero
        left, _, right, _ = (float(bound) for bound in outline.bounds)
        u = min((zero + away, zero - away), key=lambda place: abs(place - (left + right) / 2))
        inside = u + (0.5 if u < (left + right) / 2 else -0.5)
        upright = outline.intersection(LineString([(inside, -REACH), (inside, REACH)]))
        yield Station((u, float(upright.bounds[3]) if edge else face.foot), away)


def height_row(face: Face) -> Row:
    """Heights of the screw lines above the sheets' feet."""
    left = face.bounds[0]
    lines = [line for line in face.screws if line.v > face.foot]
    return Row(
        "left", (left, face.foot), tuple(Station((left, line.v), line.v - face.foot) for line in lines)
    )


def opening_letters(face: Face) -> list[tuple[str, Opening]]:
    """Openings with the letter that each has on the drawing."""
    return [(LETTERS[i % 26] * (1 + i // 26), opening) for i, opening in enumerate(face.openings)]


def letters(face: Face, labels: Labels, window: Polygon) -> Iterator[Text | str]:
    """The letter of each opening, in it; as plain words where it has no room."""
    for letter, opening in opening_letters(face):
        wide, high = opening.right - opening.left, opening.high - opening.low
        if not window.bounds[0] < opening.left + wide / 2 < window.bounds[2]:
            continue
        spots = [(opening.left + a * wide, opening.low + b * high) for b in LETTER_UP for a in LETTER_AT]
        tries = [Text(spot, letter, Size.LARGE, "middle", 0.0, True) for spot in spots]
        yield labels.place(tries) or letter


def sheet_marks(face: Face, labels: Labels, window: Polygon) -> Iterator[Text | str]:
    """Each sheet's mark and its number in the order of laying; as plain words where it has no room."""
    placed = {sheet.name: sheet for sheet in face.plan.sheets}
    for piece, area in face.seen:
        sheet, shown = placed.get(piece.name), area.intersection(window)
        if sheet is None or shown.is_empty or not window.contains(area.centroid):
            continue
        mark, number = f"{sheet.mark}{'' if sheet.head_up else '↓'}", f"#{sheet.number}"
        yield from _placed(labels, (mark, number), (shown, _under(face, shown, labels.view.scale.ratio))) or (
            f"{mark} {number}",
        )


def _placed(labels: Labels, said: tuple[str, str], areas: Sequence[shapely.Geometry]) -> Sequence[Text]:
    """A mark and a number in the first of some areas that has room; none where none has."""
    for area in areas:
        if placed := labels.place_all(_pairs(area, said, labels.view.scale.ratio), area):
            return placed
    return ()


def _under(face: Face, area: shapely.Geometry, ratio: float) -> shapely.Geometry:
    """The part of an opening close under a sheet: a short header is named there."""
    left, low, right, _ = area.bounds
    down = max(low - HUNG * ratio, face.foot)
    hung = shapely.box(left, down, right, low).difference(face.plane.outline)
    parts = [part for part in shapely.get_parts(hung) if part.bounds[3] > low - SAME]
    return max(parts, key=lambda part: float(part.area), default=shapely.Point(left, low))


def _pairs(area: shapely.Geometry, said: tuple[str, str], ratio: float) -> Iterator[tuple[Text, ...]]:
    """Ways to stand in an area: in two lines, in one that goes up, the mark alone."""
    left, low, right, high = area.bounds
    shares = (0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82, 0.1, 0.9)
    spots = [(left + a * (right - left), low + s * (high - low)) for s in shares for a in (0.5, 0.42, 0.58)]
    mark, number = said
    for x, y in spots:
        second = Text((x, y - 5.4 * ratio), number, Size.SMALL, "middle", 0.0, True)
        yield Text((x, y), mark, Size.PLAIN, "middle", 0.0, True), second
    for x, y in spots:
        yield (Text((x + 1.5 * ratio, y), f"{mark} {number}", Size.PLAIN, "middle", 90.0, True),)
    for x, y in spots:
        yield (Text((x, y), mark, Size.PLAIN, "middle", 0.0, True),)
        yield (Text((x + 1.5 * ratio, y), mark, Size.PLAIN, "middle", 90.0, True),)


def trim_marks(face: Face, labels: Labels, window: Polygon) -> Iterator[Text | str]:
    """Each trim's mark beside it, inside the face or the opening it belongs to; as plain words where it has
    no room. Trims that are seen from an end have their mark on another elevation."""
    for piece, area in face.seen:
        if list_of(piece.role) != "trims" or not window.contains(area.centroid):
            continue
        if not lies_in(face.plane, piece):
            continue
        ends = ends_of(face.plane.frame, piece)
        text = labels.place(beside(piece.mark, ends, labels.view.scale.ratio, _toward(face, ends)))
        yield text or piece.mark


def _toward(face: Face, ends: tuple[Point2, Point2]) -> Point2:
    """Which way a trim's mark stands off it: to the middle of its opening, else of the face."""
    x, y = (ends[0][0] + ends[1][0]) / 2, (ends[0][1] + ends[1][1]) / 2
    for opening in face.openings:
        if opening.left - NEAR < x < opening.right + NEAR and opening.low - NEAR < y < opening.high + NEAR:
            return (opening.left + opening.right) / 2, (opening.low + opening.high) / 2
    left, low, right, high = face.plane.outline.bounds
    return (left + right) / 2, (low + high) / 2


def beside(mark: str, ends: tuple[Point2, Point2], ratio: float, middle: Point2) -> Iterator[Text]:
    """Places for a mark along a line, on the side that a middle lies on first."""
    (ax, ay), (bx, by) = ends
    angle = readable(degrees_of(*ends))
    way = direction(angle)
    off = (-way[1], way[0])
    inward = 1.0 if (middle[0] - ax) * off[0] + (middle[1] - ay) * off[1] > 0 else -1.0
    for away in (2.2, 5.0, 8.0, -2.2):
        for share in (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8):
            spot = (ax + share * (bx - ax), ay + share * (by - ay))
            lift = (inward * away - (3.1 if inward * away < 0 else 0.0)) * ratio
            at = along(spot, off, lift)
            yield Text(at, mark, Size.PLAIN, "middle", angle, True)


def degrees_of(start: Point2, end: Point2) -> float:
    """The direction from one point to another."""
    return degrees(atan2(end[1] - start[1], end[0] - start[0]))


def start_arrows(face: Face, labels: Labels, window: Polygon) -> Iterator[Shape]:
    """Where the run starts and which way it goes."""
    ratio, zero, plan = labels.view.scale.ratio, face.plan.zero, face.plan
    ways = {"left": (1,), "right": (-1,)}.get(plan.start, (-1, 1))
    for sign in ways:
        if not window.bounds[0] - 1 <= zero <= window.bounds[2] + 1:
            continue
        first = plan.start != "centre" or (sign < 0) == (plan.first == "left")
        said = "start" if first else "then"
        for up in (14.0, 20.0, 26.0, 8.0, 34.0, 42.0):
            at = (zero, face.foot + (up + 1.5) * ratio)
            way = shapely.LineString([at, (at[0] + sign * 12.0 * ratio, at[1])]).buffer(1.5 * ratio)
            spot = (zero + sign * 18 * ratio, face.foot + up * ratio)
            tries = [Text(spot, said, Size.SMALL, "middle", 0.0, True)]
            if labels.free(labels.on_paper(way)) and (text := labels.place(tries)):
                labels.taken.append(labels.on_paper(way))
                yield text
                yield from _arrow(at, sign, ratio)
                break


def _arrow(at: Point2, sign: int, ratio: float) -> Iterator[Shape]:
    tip = (at[0] + sign * 11.5 * ratio, at[1])
    back = tip[0] - sign * 3.0 * ratio
    yield Line(at, (back, at[1]), Pen.OUTLINE)
    yield Polyline((tip, (back, at[1] + ratio), (back, at[1] - ratio)), None, True, "#000000")
