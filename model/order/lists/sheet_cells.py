"""The cells of a schedule in words and figures, the same in every kind of output."""

from __future__ import annotations

from ...heading import job, short, units_said
from ...measure.blank import Cutout, End
from ...roles import LIGHTS
from ...units import format_area, format_length, format_weight
from .handling import people_text
from .items import format_thickness
from .schedule import Row, Schedule, Units
from .standing_row import standing

TEXTS = ("ends", "ribs", "colour", "profile", "gauge", "thickness", "faces", "up", "people")
"""Columns of words, in order."""
FIGURES = ("mark", "count", "width", "cover", "length", "area", "weight")
"""Columns of figures, in order, after the mark that they belong to."""


STANDING = {"foot": "bottom", "head": "top"}
"""What the ends of a sheet as it is measured are where it stands with its foot down."""


def figures(row: Row, units: Units) -> dict[str, str]:
    """The cells of FIGURES."""
    return {
        "mark": row.mark,
        "count": str(row.count),
        "width": format_length(row.width, units),
        "cover": format_length(row.cover, units),
        "length": format_length(row.length, units),
        "area": format_area(row.area, units),
        "weight": format_weight(row.weight, units) if row.weight else "",
    }


def texts(row: Row, units: Units) -> dict[str, str]:
    """The cells of TEXTS."""
    stands = standing(row)
    return {
        "ends": f"{end(stands.foot, units)} / {end(stands.head, units)}",
        "ribs": _ribs(stands, units),
        "colour": row.colour,
        "profile": row.profile,
        "gauge": row.gauge,
        "thickness": "" if row.role in LIGHTS else format_thickness(row.thickness, units),
        "faces": ", ".join(row.faces),
        "up": up(row),
        "people": people_text(row),
    }


def _ribs(row: Row, units: Units) -> str:
    """Whether its overlap rib is on the right as it stands; of one that has none, where its first rib is."""
    if row.overlap or not row.ribs:
        return "overlap rib right" if row.overlap and row.turned == row.count else ""
    return f"no overlap rib, first rib at {format_length(row.ribs[0], units)}"


def end(cut: End, units: Units) -> str:
    """How an end is cut: square, rake with its drop and its high edge, peak with where and its drops; bent,
    where and by how much it falls there and at its lower edge."""
    if cut.kind == "rake":
        return f"rake {format_length(cut.drop, units)} high {cut.high}"
    if cut.kind == "peak":
        drops = f"{format_length(cut.left, units)} left, {format_length(cut.right, units)} right"
        return f"peak at {format_length(cut.at, units)}, down {drops}"
    if cut.kind == "bent":
        low = f"{format_length(cut.drop, units)} {'right' if cut.high == 'left' else 'left'}"
        return f"bent at {format_length(cut.at, units)}, down {format_length(cut.bend, units)} there, {low}"
    return cut.kind


def up(row: Row) -> str:
    """How many stand with their head up, how many turned end for end."""
    upright = row.count - row.turned
    parts = [f"{upright} head up" if upright else "", f"{row.turned} turned" if row.turned else ""]
    return ", ".join(filter(None, parts))


def cuts(row: Row) -> tuple[Cutout, ...]:
    """The cutouts of a row, as its sheets stand."""
    return standing(row).cutouts


def cuts_text(row: Row, units: Units, between: str = "; ") -> str:
    """All of them on one line."""
    return between.join(cut_text(cut, units) for cut in cuts(row))


def sides(cut: Cutout) -> tuple[str, ...]:
    """The sides that a cutout opens, by their names in the wall."""
    return tuple(STANDING.get(side, side) for side in cut.sides)


def cut_name(cut: Cutout) -> str:
    """A hole, or a notch and the sides it opens."""
    return f"notch {' '.join(sides(cut))}" if cut.sides else "hole"


def cut_figures(cut: Cutout, units: Units) -> tuple[str, str, str, str]:
    """x, y, width, height."""
    x, y, width, height = (format_length(size, units) for size in (cut.x, cut.y, cut.width, cut.height))
    return (x, y, width, height)


def cut_text(cut: Cutout, units: Units) -> str:
    """A cutout on one line."""
    x, y, width, height = cut_figures(cut, units)
    return f"{cut_name(cut)} x {x}, y {y}, {width} wide, {height} high"


def totals(schedule: Schedule) -> dict[str, str]:
    """The cells of the last row."""
    return {
        "mark": "total",
        "count": str(schedule.count),
        "area": format_area(schedule.area, schedule.units),
        "weight": format_weight(schedule.weight, schedule.units),
    }


def heading(schedule: Schedule) -> tuple[str, str]:
    """The title, and what all the figures are in and reckoned from."""
    said = short(braced=schedule.braced)
    return (
        f"Sheet list: {job(schedule.name, schedule.terms)}",
        f"{units_said(schedule.units)} Area and weight are of one piece. Sheets are told as they stand, seen "
        "from outside: ends are bottom / top; ribs and cutouts are measured from the lower left corner. "
        f"Turned: with the foot of its cut sheet up; where only some are, the others are told. {said}",
    )
