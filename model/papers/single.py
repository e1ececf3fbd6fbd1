"""A page with a view, or two beside each other: rows of running distances round each, notes above, a table
and a list below."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

import shapely
from shapely.geometry import Polygon

from ..drawing.dimensions import APART, JOG, spread
from ..drawing.font import width
from ..drawing.pens import Size
from ..drawing.values import RunningDimension, Scale, Shape, Text, View
from ..place import Point2
from .frame import Content, grid, lines_down, room_of, table, titled, wrapped
from .job import Job
from .labels import Labels
from .scales import fitting

Side = Literal["below", "above", "left", "right"]
HEAD = 9.0
"""mm on paper that the title of a view takes."""
MARGIN = 3.0
"""mm on paper about what is drawn."""
GAP = 2.5
"""mm on paper between what is drawn and the bends of leaders."""
SPARE = 2
"""Lines kept free for what has no room on the drawing."""
BETWEEN = 6.0
"""mm on paper between two views beside each other."""
SAME = 1.0
"""mm; places nearer than this are one."""


@dataclass(frozen=True, slots=True)
class Station:
    """A place that a row tells of: where its leader begins, and how far it is from the row's zero (mm)."""

    at: Point2
    away: float


@dataclass(frozen=True, slots=True)
class Row:
    """A row of running distances beside a view, all read from one zero (a point of the view)."""

    side: Side
    zero: Point2
    stations: tuple[Station, ...]

    @property
    def upright(self) -> bool:
        """Whether it tells heights."""
        return self.side in ("left", "right")

    def within(self, window: Polygon) -> Row:
        """The stations in a window, in order, each once and none at the zero."""
        axis = 1 if self.upright else 0
        low, high = window.bounds[axis], window.bounds[axis + 2]
        found: dict[int, Station] = {}
        for station in self.stations:
            place = station.at[axis]
            if low - SAME <= place <= high + SAME and station.away >= SAME:
                found.setdefault(round(place / SAME), station)
        return Row(self.side, self.zero, tuple(found[key] for key in sorted(found)))

    def hooked(self, window: Polygon) -> bool:
        """Whether its zero is in the window."""
        axis = 1 if self.upright else 0
        return bool(window.bounds[axis] - SAME <= self.zero[axis] <= window.bounds[axis + 2] + SAME)


@dataclass(frozen=True)
class Subject:
    """What a page shows. window: the part of the plane that is seen; paint: the shapes in it, and the
    texts that found no room. head, cells: of a table under it. said, listed: what is said of what is not
    drawn, and a list of it in columns, under that."""

    title: str
    name: str
    window: Polygon
    notes: str
    rows: tuple[Row, ...]
    paint: Callable[[Labels, Polygon], tuple[list[Shape], list[str]]]
    head: tuple[str, ...] = ()
    cells: tuple[tuple[str, ...], ...] = ()
    said: str = ""
    listed: tuple[str, ...] = ()


Drawing = tuple[Subject, Scale]


def scale_for(one: Job, subject: Subject, most: float = 1000.0) -> Scale:
    """The largest standard scale in which a subject fits its page; most: the ratio of the smallest that
    is taken though it be too wide."""
    room = _free(one, subject)
    left, low, right, high = subject.window.bounds
    whole = fitting((right - left, high - low), room, one.units, most)
    upright = fitting((1.0, high - low), room, one.units)
    return max(whole, upright, key=lambda scale: scale.ratio)


def width_for(one: Job, subject: Subject, scale: Scale, beside: int = 1) -> float:
    """mm of the building that fit across a page, or across each of so many views beside each other."""
    return _free(one, subject, beside)[0] * scale.ratio


def goes_across(one: Job, drawing: Drawing, beside: int) -> bool:
    """Whether a drawing and its title go into the width of one of so many beside each other."""
    subject, scale = drawing
    left, _, right, _ = subject.window.bounds
    title = width(subject.name, one.style.heights[Size.LARGE])
    return bool(right - left <= width_for(one, subject, scale, beside) and title <= column(one, beside))


def column(one: Job, beside: int) -> float:
    """mm on paper: the width of each of so many views beside each other, with all that is about it."""
    return (room_of(one).width - BETWEEN * (beside - 1)) / beside


def _free(one: Job, subject: Subject, beside: int = 1) -> tuple[float, float]:
    """(mm, mm) on paper that a view may take; the height of one that stands alone."""
    room = room_of(one)
    sides = sum(reach(one, subject, side) for side in ("left", "right"))
    ends = sum(reach(one, subject, side) for side in ("above", "below"))
    notes = one.style.row * len(wrapped(one, subject.notes, room.width))
    cells = one.style.row * (len(subject.cells) + 1) + 2.0 if subject.cells else 0.0
    return (
        column(one, beside) - sides - 2 * MARGIN,
        room.height - HEAD - notes - ends - cells - one.style.row * SPARE - 2 * MARGIN,
    )


def reach(one: Job, subject: Subject, side: Side) -> float:
    """mm on paper that the row on a side takes."""
    height = one.style.heights[Size.SMALL]
    texts = [one.length(station.away) for row in subject.rows if row.side == side for station in row.stations]
    return max(width(text, height) for text in texts) + JOG + GAP + 2.0 if texts else 0.0


def height_of(one: Job, subject: Subject, scale: Scale) -> float:
    """mm on paper that a subject takes, if all of it has room on its drawing."""
    low, high = float(subject.window.bounds[1]), float(subject.window.bounds[3])
    beside = (
        room_of(one).height - _free(one, subject)[1] - one.style.row * SPARE - reach(one, subject, "above")
    )
    return beside + _over(one, subject, scale) + (high - low) / scale.ratio


def _over(one: Job, subject: Subject, scale: Scale) -> float:
    """mm on paper that texts reach over what is drawn: of the row above, or of crowded heights beside it."""
    pitch = one.style.heights[Size.SMALL] + APART
    high = float(subject.window.bounds[3])
    found = [reach(one, subject, "above")]
    for row in subject.rows:
        if row.upright:
            within = row.within(subject.window)
            hook = (row.zero[1],) if row.hooked(subject.window) else ()
            places = sorted((*hook, *(station.at[1] for station in within.stations)))
            texts = spread([place / scale.ratio for place in places], pitch)
            found += [texts[-1] + pitch / 2 - high / scale.ratio] if texts else []
    return max(found)


def page_of(one: Job, *drawings: Drawing, top: float | None = None) -> Iterator[Content]:
    """The page of a drawing, or of some beside each other, from a height down; one more where a list does not
    fit under it. What is said of all is said once, over and under them."""
    room, many = room_of(one), len(drawings)
    subjects = [subject for subject, _ in drawings]
    top = room.high if top is None else top
    said_once = len({subject.notes for subject in subjects}) == 1
    wide = room.width if said_once else column(one, many)
    notes = [wrapped(one, subject.notes, wide) for subject in subjects[: 1 if said_once else many]]
    y = top - HEAD - one.style.row * (many > 1)
    over = max(_over(one, *drawing) for drawing in drawings)
    head = y - one.style.row * max(map(len, notes)) - over - MARGIN
    lefts = [room.left + (column(one, many) + BETWEEN) * number for number in range(many)]
    drawn = [
        _drawn(one, drawing, left, top, head, many) for drawing, left in zip(drawings, lefts, strict=True)
    ]
    foot = min(low for _, low, _ in drawn)
    shapes: list[Shape] = []
    for (view, _, _), left in zip(drawn, lefts, strict=True):
        shapes += titled(one, view, (left, top - 6.0), under=many > 1)
    for lines, left in zip(notes, lefts, strict=False):
        shapes += lines_down(one, lines, (left, y - 2.0))
    cells = list(dict.fromkeys(cell for subject in subjects for cell in subject.cells))
    under, taken = table(one, subjects[0].head, cells, (room.left, foot), room.width)
    listed = [text for _, _, texts in drawn for text in texts]
    said = f"No room on the drawing for: {', '.join(listed)}." if listed else ""
    below, end = _below(one, subjects, said, foot - taken)
    fits = end > room.low - 2.0
    views = tuple(view for view, _, _ in drawn)
    title = subjects[0].title
    shapes += [*under, *(below if fits else ())]
    yield Content(title, views, tuple(shapes), end if fits else foot - taken, len(listed))
    if not fits:
        below, end = _below(one, subjects, said, room.high)
        yield Content(f"{title}, list", (), tuple(below), end)


def _drawn(
    one: Job, drawing: Drawing, start: float, top: float, head: float, many: int
) -> tuple[View, float, list[str]]:
    """The view of a drawing in a column that starts at a place across; how low it reaches, and the texts that
    found no room. head: where its window ends above (mm on paper)."""
    subject, scale = drawing
    left, low, right, high = subject.window.bounds
    free = _free(one, subject, many)[0] + 2 * MARGIN - (right - left) / scale.ratio
    at = (
        start + reach(one, subject, "left") + free / 2 - left / scale.ratio,
        head - high / scale.ratio,
    )
    foot = at[1] + low / scale.ratio - MARGIN - reach(one, subject, "below")
    empty = View(subject.name, scale, at, ())
    rows = [running(one, row, empty, subject.window) for row in subject.rows]
    labels = Labels(empty, one.style, window_of(start, foot, start + column(one, many), top))
    labels.keep(row for row in rows if row)
    shapes, listed = subject.paint(labels, subject.window)
    return View(subject.name, scale, at, (*shapes, *(row for row in rows if row))), foot, listed


def _below(one: Job, subjects: Sequence[Subject], said: str, top: float) -> tuple[list[Shape], float]:
    """What had no room, and what is not drawn, from a height down; and where it ends."""
    room = room_of(one)
    more = dict.fromkeys(subject.said for subject in subjects)
    lines = wrapped(one, " ".join((said, *more)), room.width)
    end = top - one.style.row * len(lines)
    listed = [cell for subject in subjects for cell in subject.listed]
    columns, taken = grid(one, listed, (room.left, end), room.width)
    return [*lines_down(one, lines, (room.left, top - one.style.row)), *columns], end - taken


def running(one: Job, row: Row, view: View, window: Polygon) -> RunningDimension | None:
    """A row as the dimension that is drawn, None where nothing of it is in the window."""
    shown = row.within(window)
    if not shown.stations:
        return None
    left, low, right, high = window.bounds
    bend = (GAP + JOG) * view.scale.ratio
    at = {
        "below": (left, low - bend),
        "above": (left, high + bend),
        "left": (left - bend, low),
        "right": (right + bend, low),
    }[row.side]
    edge = {"left": left, "right": right}.get(row.side)
    points = [(station.at[0] if edge is None else edge, station.at[1]) for station in shown.stations]
    return RunningDimension(
        row.zero if edge is None else (edge, row.zero[1]),
        tuple(points),
        tuple(one.length(station.away) for station in shown.stations),
        at,
        90.0 if row.upright else 0.0,
        row.hooked(window),
    )


def around(areas: Sequence[shapely.Geometry]) -> Polygon:
    """The rectangle about what is drawn, a millimetre away from it."""
    left, low, right, high = shapely.total_bounds(list(areas)).tolist()
    return window_of(left - SAME, low - SAME, right + SAME, high + SAME)


def window_of(left: float, low: float, right: float, high: float) -> Polygon:
    """A rectangle."""
    return shapely.box(left, low, right, high)


def sorted_out(found: Sequence[Text | str]) -> tuple[list[Shape], list[str]]:
    """The texts that have a place, and the words of those that have none."""
    return [one for one in found if isinstance(one, Text)], [one for one in found if isinstance(one, str)]
