"""Framing elevations: frames that differ, each wall's steel, the purlins of slopes in true length."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import partial
from itertools import pairwise
from math import atan2, degrees

import numpy as np
import shapely
from shapely.geometry import Polygon

from ..drawing.pens import Pen
from ..drawing.values import Polyline, Scale, Shape, Text
from ..measure.placing import STEEL
from ..measure.standing import standing_box
from ..pieces import Piece
from ..place import Place, Point2, Point3, cross
from ..roles import Role
from .elevation_parts import BACKING, ends_of, steel_behind
from .elevation_shapes import beside
from .frame import Content
from .job import Job
from .labels import Labels
from .seen import box_in, flats_of, lines_in, visible
from .single import Row, Station, Subject, around, scale_for, sorted_out, width_for, window_of
from .stacked import stacked

UPRIGHT = 60.0
"""Degrees; steel that leans more from the level tells where it stands, less how high it lies."""
LEVEL = 1.0
"""Degrees."""
SIZES = "Sizes are placeholders until an engineer's drawings."
UNBRACED = f"No bracing is drawn: this is not a stable frame. {SIZES}"
BRACED = f"Bracing by the engineer: as drawn it is a placeholder. {SIZES}"
MORE = "Not drawn: more bays of the same marks; frames stand as on the slab plan."
UP: Point3 = (0.0, 0.0, 1.0)
MOST = 200.0
"""The ratio of the smallest scale that steel is drawn to; what is longer is drawn in parts."""
BRACING = (Role.BRACE, Role.STRUT)
ENDS = ("left", "front")
"""The corners that distances across the building, and along it, are read from."""
FRAMES = (Role.COLUMN, Role.RAFTER, Role.KNEE, Role.BASE_PLATE, Role.POST)


def framing(one: Job) -> Iterator[Content]:
    """Pages of steel: frames, walls, slopes."""
    yield from stacked(one, frames(one))
    for slopes in (False, True):
        found = (plane for plane in planes(one) if plane[3] == slopes)
        drawings = (drawing for plane in found for drawing in _of_plane(one, *plane))
        yield from stacked(one, drawings)


def _note(one: Job) -> str:
    return BRACED if one.listed.braced else UNBRACED


def planes(one: Job) -> Iterator[tuple[str, Place, list[Piece], bool]]:
    """(name, frame, its steel, whether it slopes) of each plane of sheets and each face left bare."""
    met: set[str] = set()
    for plane, _ in one.faces:
        pieces = list(steel_behind(plane, one.model.pieces, (*BACKING, *BRACING)))
        if pieces and plane.name not in met:
            met.add(plane.name)
            yield plane.name, plane.frame, pieces, plane.sloped
    for normal in one.model.terms.bare:
        frame = Place((0.0, 0.0, 0.0), cross(UP, normal), UP)
        pieces = _outermost(frame, one.model.pieces)
        if pieces:
            yield f"open {_side(normal)}", frame, pieces, False


def _side(normal: Point3) -> str:
    """The name of a wall by the way it faces."""
    ways = {"left": (-1, 0), "right": (1, 0), "front": (0, -1), "back": (0, 1)}
    return max(ways, key=lambda name: ways[name][0] * normal[0] + ways[name][1] * normal[1])


def _outermost(frame: Place, pieces: Sequence[Piece]) -> list[Piece]:
    """The steel within reach of the outermost of a bare side."""
    members = [piece for piece in pieces if piece.role in (*BACKING, *BRACING) and piece.role != Role.PURLIN]
    boxes = [box_in(frame, piece) for piece in members]
    if not boxes:
        return []
    out = max(float(most[2]) for _, most in boxes)
    return [piece for piece, (least, _) in zip(members, boxes, strict=True) if least[2] > out - 420.0]


def frames(one: Job) -> Iterator[tuple[Subject, Scale]]:
    """A drawing of each frame that differs from the others."""
    groups: dict[tuple[str, ...], list[Piece]] = defaultdict(list)
    for piece in one.model.pieces:
        if piece.role in FRAMES and piece.group:
            groups[piece.group].append(piece)
    alike: dict[object, list[tuple[str, ...]]] = defaultdict(list)
    for group, pieces in groups.items():
        if not any(piece.role == Role.RAFTER for piece in pieces):
            continue  # the posts of a gable stand on its own page
        alike[_print(pieces, _across(pieces))].append(group)
    for found in alike.values():
        pieces = groups[found[0]]
        across = _across(pieces)
        corner, along = ENDS[across], ENDS[1 - across]
        frame = _seen_from(pieces, across)
        names = [group[-1] for group in found]
        name = names[0] if len(names) == 1 else f"{names[0]}, and {len(names) - 1} like it"
        note = f"Like it: {_listed(names[1:])}. " if names[1:] else ""
        places = ", ".join(one.length(_middle(one, groups[group], 1 - across)) for group in found)
        note += f"Centres from the {along} steel corner: {places}. "
        note += f"Below: centres from the {corner} steel corner; "
        note += f"left: tops above the slab. {_note(one)}"
        yield from _of_frame(one, name, frame, pieces, note)


def _listed(names: Sequence[str]) -> str:
    """ "frame 3, 4, 5": what names have in common said once."""
    common = names[0].rpartition(" ")[0]
    if common and all(name.rpartition(" ")[0] == common for name in names):
        return f"{common} {', '.join(name.rpartition(' ')[2] for name in names)}"
    return ", ".join(names)


def _across(pieces: Sequence[Piece]) -> int:
    """Which way a frame stands: 0 across the building, 1 along it, as a lean-to's at a gable."""
    boxes = np.array([standing_box(piece) for piece in pieces if piece.role == Role.RAFTER])
    return int(np.argmax((boxes[:, 1].max(axis=0) - boxes[:, 0].min(axis=0))[:2]))


def _seen_from(pieces: Sequence[Piece], across: int) -> Place:
    """The plane a frame is drawn in, behind it: seen from the front, or from the right."""
    lows = [standing_box(piece)[0] for piece in pieces]
    if across:
        return Place((min(float(low[0]) for low in lows), 0.0, 0.0), (0.0, 1.0, 0.0), UP)
    return Place((0.0, max(float(low[1]) for low in lows), 0.0), (1.0, 0.0, 0.0), UP)


def _print(pieces: Sequence[Piece], across: int) -> object:
    """What frames that are alike have in common: which way they stand, marks and where across and up."""
    sizes = (np.round(standing_box(piece)[:, [across, 2]], 1).ravel().tolist() for piece in pieces)
    return across, tuple(sorted((piece.mark, *size) for piece, size in zip(pieces, sizes, strict=True)))


def _middle(one: Job, pieces: Sequence[Piece], along: int) -> float:
    """Where a frame's uprights stand along the way that frames follow each other."""
    boxes = [standing_box(piece) for piece in pieces if piece.role in (Role.COLUMN, Role.POST)]
    low, high = (np.array([box[i] for box in boxes or map(standing_box, pieces)]) for i in (0, 1))
    return float((low[:, along].min() + high[:, along].max()) / 2) - corners_of(one)[0][along]


def corners_of(one: Job) -> tuple[Point3, Point3]:
    """The steel's least and greatest corner."""
    steel = [p for p in one.model.pieces if p.role in STEEL] or list(one.model.pieces)
    boxes = np.array([standing_box(piece) for piece in steel])
    (ax, ay, az), (bx, by, bz) = boxes[:, 0].min(axis=0).tolist(), boxes[:, 1].max(axis=0).tolist()
    return (ax, ay, az), (bx, by, bz)


def _of_frame(
    one: Job, name: str, frame: Place, pieces: list[Piece], note: str
) -> Iterator[tuple[Subject, Scale]]:
    left = frame.seen(corners_of(one)[0])[0]
    uprights = [piece for piece in pieces if piece.role in (Role.COLUMN, Role.POST)]
    tops = [piece for piece in pieces if piece.role in (Role.COLUMN, Role.POST, Role.RAFTER)]
    boxes = {piece.name: box_in(frame, piece) for piece in pieces}
    low = min(float(box[0][1]) for box in boxes.values())
    below = tuple(Station((u, low), abs(u - left)) for u in (_centre(boxes[p.name])[0] for p in uprights))
    start = min(float(box[0][0]) for box in boxes.values())
    heights = tuple(Station((start, v), v) for v in (float(boxes[p.name][1][1]) for p in tops))
    rows = (Row("below", (left, low), below), Row("left", (start, 0.0), heights))
    yield from _drawings(one, (f"framing: {name}", name), frame, pieces, note, rows)


def _centre(box: tuple[np.ndarray, np.ndarray]) -> Point2:
    return float(box[0][0] + box[1][0]) / 2, float(box[0][1] + box[1][1]) / 2


def _of_plane(
    one: Job, name: str, frame: Place, pieces: list[Piece], sloped: bool
) -> Iterator[tuple[Subject, Scale]]:
    low, high = corners_of(one)
    ends = [frame.seen(corner)[0] for corner in (low, high)]
    zero = min(ends)
    boxes = {piece.name: box_in(frame, piece) for piece in pieces}
    foot = min(float(box[0][1]) for box in boxes.values())
    start = min(float(box[0][0]) for box in boxes.values())
    uprights, levels = [], []
    for piece in pieces:
        (ax, ay), (bx, by) = ends_of(frame, piece)
        lean = abs(degrees(atan2(by - ay, bx - ax)))
        lean = min(lean, 180.0 - lean)
        u, v = _centre(boxes[piece.name])
        if piece.role == Role.BRACE:
            continue  # it leans as its bay is wide
        if lean > UPRIGHT:
            uprights.append(Station((u, foot), abs(u - zero)))
        elif lean < LEVEL:
            levels.append(v)
    if sloped:
        base = min(levels, default=foot)
        said = "Left: centres up the slope from the lowest."
        title = f"purlins: {name}"
    else:
        base = frame.seen((0.0, 0.0, 0.0))[1]
        said = "Left: centres above the slab."
        title = f"framing: {name}"
    heights = tuple(Station((start, v), abs(v - base)) for v in levels)
    corner = Station((max(ends), foot), abs(max(ends) - zero))
    rows = (Row("below", (zero, foot), (*uprights, corner)), Row("left", (start, base), heights))
    note = f"Seen from outside. Below: centres from the left steel corner. {said} {_note(one)}"
    yield from _drawings(one, (title, title), frame, pieces, note, rows)


def _drawings(
    one: Job,
    title: tuple[str, str],
    frame: Place,
    pieces: list[Piece],
    note: str,
    rows: tuple[Row, ...],
) -> Iterator[tuple[Subject, Scale]]:
    seen = visible([flat for piece in pieces for flat in flats_of(frame, piece)])
    paint = partial(_painted, frame, seen)
    subject = Subject(title[0], title[1], around([area for _, area in seen]), note, rows, paint)
    scale = scale_for(one, subject, MOST)
    left, low, right, high = subject.window.bounds
    count = int(-(-(right - left) // width_for(one, subject, scale)))
    cuts = [left + number * (right - left) / count for number in range(count + 1)]
    parts: list[Subject] = []
    for number, window in enumerate((window_of(a, low, b, high) for a, b in pairwise(cuts)), 1):
        part = "" if count == 1 else f", part {number} of {count}"
        if 1 < number < count and _marks_in(seen, window) <= _marks_in(seen, parts[-1].window):
            parts[-1] = replace(parts[-1], said=MORE)
        else:
            parts.append(replace(subject, title=title[0] + part, name=title[1] + part, window=window))
    yield from ((part, scale) for part in parts)


def _marks_in(seen: Sequence[tuple[Piece, shapely.Geometry]], window: Polygon) -> set[str]:
    """The marks of what is seen in a window, in whole or in part."""
    return {piece.mark for piece, area in seen if area.intersects(window)}


def _painted(
    frame: Place,
    seen: Sequence[tuple[Piece, shapely.Geometry]],
    labels: Labels,
    window: Polygon,
) -> tuple[list[Shape], list[str]]:
    shapes: list[Shape] = []
    found: list[Text | str] = []
    for _, area in seen:
        lines = lines_in(area.boundary.simplify(0.02), window)
        shapes += [Polyline(part, Pen.THIN, False) for part in lines]
    ratio = labels.view.scale.ratio
    middle = (window.centroid.x, window.centroid.y)
    for piece, area in seen:
        if piece.role != Role.BASE_PLATE and window.contains(area.centroid):
            ends = ends_of(frame, piece)
            found.append(labels.place(beside(piece.mark, ends, ratio, middle)) or piece.mark)
    texts, listed = sorted_out(found)
    return [*shapes, *texts], listed
