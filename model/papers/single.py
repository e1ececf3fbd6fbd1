"""A page with one view: rows of running distances round it, notes above, a table and a list below."""

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


def scale_for(one: Job, subject: Subject, most: float = 1000.0) -> Scale:
    """The largest standard scale in which a subject fits its page; most: the ratio of the smallest that
    is taken though it be too wide."""
    room = _free(one, subject)
    left, low, right, high = subject.window.bounds
    whole = fitting((right - left, high - low), room, one.units, most)
    upright = fitting((1.0, high - low), room, one.units)
    return max(whole, upright, key=lambda scale: scale.ratio)


def width_for(one: Job, subject: Subject, scale: Scale) -> float:
    """mm of the building that fit across a page."""
    return _free(one, subject)[0] * scale.ratio


def _free(one: Job, subject: Subject) -> tuple[float, float]:
    """(mm, mm) on paper that a view may take."""
    room = room_of(one)
    sides = sum(reach(one, subject, side) for side in ("left", "right"))
    ends = sum(reach(one, subject, side) for side in ("above", "below"))
    notes = one.style.row * len(wrapped(one, subject.notes, room.width))
    cells = one.style.row * (len(subject.cells) + 1) + 2.0 if subject.cells else 0.0
    return (
        room.width - sides - 2 * MARGIN,
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


def page_of(one: Job, subject: Subject, scale: Scale, top: float | None = None) -> Iterator[Content]:
    """The page of a subject, from a height down; one more where a list does not fit under it."""
    room, window = room_of(one), subject.window
    top = room.high if top is None else top
    notes = wrapped(one, subject.notes, room.width)
    left, low, right, high = window.bounds
    head = top - HEAD - one.style.row * len(notes) - _over(one, subject, scale) - MARGIN
    free = _free(one, subject)[0] + 2 * MARGIN - (right - left) / scale.ratio
    at = (
        room.left + reach(one, subject, "left") + free / 2 - left / scale.ratio,
        head - high / scale.ratio,
    )
    foot = at[1] + low / scale.ratio - MARGIN - reach(one, subject, "below")
    empty = View(subject.name, scale, at, ())
    rows = [running(one, row, empty, window) for row in subject.rows]
    labels = Labels(empty, one.style, window_of(room.left, foot, room.right, top))
    labels.keep(row for row in rows if row)
    shapes, listed = subject.paint(labels, window)
    view = View(subject.name, scale, at, (*shapes, *(row for row in rows if row)))
    under, taken = table(one, subject.head, subject.cells, (room.left, foot), room.width)
    said = f"No room on the drawing for: {', '.join(listed)}." if listed else ""
    shapes, end = _below(one, subject, said, foot - taken)
    fits = end > room.low - 2.0
    yield Content(
        subject.title,
        (view,),
        (
            *titled(one, view, (room.left, top - 6.0)),
            *lines_down(one, notes, (room.left, top - HEAD - 2.0)),
            *under,
            *(shapes if fits else ()),
        ),
        end if fits else foot - taken,
        len(listed),
    )
    if not fits:
        shapes, end = _below(one, subject, said, room.high)
        yield Content(f"{subject.title}, list", (), tuple(shapes), end)


def _below(one: Job, subject: Subject, said: str, top: float) -> tuple[list[Shape], float]:
    """What had no room, and what is not drawn, from a height down; and where it ends."""
    room = room_of(one)
    lines = wrapped(one, f"{said} {subject.said}", room.width)
    end = top - one.style.row * len(lines)
    columns, taken = grid(one, subject.listed, (room.left, end), room.width)
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
