"""Two sheets from one blank: both lie in it face up, apart by the saw, each with the ribs it was to have."""

from __future__ import annotations

from pathlib import Path

import shapely
from ribwright.exchange.step import read_step, write_step
from ribwright.intake import parse, starter_text
from ribwright.measure.congruent import groups
from ribwright.measure.sheet import MeasuredSheet
from ribwright.order.buying.blanks import Pair, blank_pairs
from ribwright.order.buying.order_list import Buying, Order, buying_on, order
from ribwright.order.lists.schedule import schedule
from ribwright.pieces import Model
from ribwright.raising import raise_building

GABLE = (
    'width = "26 ft"\nlength = "20 ft"\neave_height = "9 ft"\npitch = "4/12"\n[frame]\nback_posts = "none"\n'
)
KERF = 3.0


def raised(text: str) -> Model:
    return raise_building(parse(text, "x")).model


def measured(model: Model) -> dict[str, MeasuredSheet]:
    return {g.mark: g.measured for g in groups(model) if isinstance(g.measured, MeasuredSheet)}


def in_blank(
    pair: Pair, sheets: dict[str, MeasuredSheet], whole: MeasuredSheet
) -> tuple[tuple[float, float], ...]:
    """Where the two lie in the blank: from its left and foot, (u, v)."""
    one, other = sheets[pair.first], sheets[pair.second]
    if one.width + other.width <= whole.width:
        return (0.0, 0.0), (whole.width - other.width, 0.0)
    return (0.0, 0.0), (0.0, pair.length - other.length)


def held(pair: Pair, sheets: dict[str, MeasuredSheet]) -> None:
    """Asserts that a blank of the whole profile and the pair's length holds both as it is."""
    whole = max(sheets.values(), key=lambda sheet: sheet.width)
    blank = shapely.box(0, 0, whole.width, pair.length).buffer(1e-3, join_style="mitre")
    lying = []
    for mark, (u, v) in zip((pair.first, pair.second), in_blank(pair, sheets, whole), strict=True):
        way = sheets[mark].ways[0]
        lying.append(shapely.affinity.translate(way.outline, u, v))
        assert blank.covers(lying[-1])
        for own, of_whole in ((way.lower, whole.ways[0].lower), (way.upper, whole.ways[0].upper)):
            moved = shapely.LineString([(x + u, w) for x, w in own])
            part = shapely.LineString(of_whole).buffer(0.01)
            assert part.covers(moved)  # its ribs are the blank's there, crowns up
    assert lying[0].distance(lying[1]) >= KERF - 0.01


def test_the_two_raked_rips_of_a_gable_come_from_one_sheet(tmp_path: Path) -> None:
    """26 ft from the middle: four sheets a half and 11 or 13 in of a fifth. One end keeps the overlap rib,
    the other the underlap leg; the one that is high on its left lies left. Asked for alone."""
    model = raised(GABLE.replace("[frame]", '[sheets]\npairs = "cut"\n[frame]'))
    found = schedule(model)
    pairs = blank_pairs(found.rows, KERF)
    rows = {row.mark: row for row in found.rows}
    assert sum(pair.count for pair in pairs) == 2
    for pair in pairs:
        one, other = rows[pair.first], rows[pair.second]
        assert one.faces == other.faces
        assert (one.head.kind, one.head.high) == ("rake", "left")
        assert (other.head.kind, other.head.high) == ("rake", "right")
        assert (one.overlap, other.overlap) == (True, False)
        assert pair.length == max(one.length, other.length)
        held(pair, measured(model))
    counts = {asked: _bought(order(found, asked)) for asked in (Buying(), Buying(pairs=True))}
    assert counts[Buying()] - counts[Buying(pairs=True)] == 2
    write_step(model, tmp_path / "model.step")
    again = schedule(read_step(tmp_path / "model.step"))
    asked = buying_on(again.terms)
    assert asked.pairs
    assert [line.item for line in order(again, asked).lines] == [
        line.item for line in order(found, asked).lines
    ]


def _bought(wanted: Order) -> float:
    return sum(line.count for line in wanted.lines if line.list == "sheets")


def test_a_saw_too_wide_parts_no_pair() -> None:
    """The rips leave so much of 38 in between them, and no more."""
    found = schedule(raised(GABLE))
    rows = {row.mark: row for row in found.rows}
    first = blank_pairs(found.rows)[0]
    room = 38 * 25.4 - rows[first.first].width - rows[first.second].width
    assert blank_pairs(found.rows, room - 0.1) and not blank_pairs(found.rows, room + 0.2)


def test_one_rake_cut_across_a_blank_leaves_the_saw_between_both() -> None:
    model = raised(starter_text("garage", "garage"))
    pairs = blank_pairs(schedule(model).rows, KERF)
    assert len(pairs) >= 6
    for pair in pairs:
        held(pair, measured(model))


def test_nothing_is_paired_unless_asked() -> None:
    """Of the long store's gables both ends could be."""
    found = schedule(raised(starter_text("long-store", "long-store")))
    assert len(blank_pairs(found.rows)) == 2
    assert order(found).pairs == ()
