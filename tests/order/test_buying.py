"""What else an order says: screws by trade size, closures in strips, bags, spares, bundles, doors."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from dataclasses import replace
from math import ceil

import pytest
from ribwright.intake import parse
from ribwright.order.buying.bundles import HEAVIEST, bundles
from ribwright.order.buying.buying import Buying
from ribwright.order.buying.line import Line
from ribwright.order.buying.order_list import Order, order
from ribwright.order.buying.screw_lines import drill_point, screw_text, thickest
from ribwright.order.buying.sheet_lines import SHORTER
from ribwright.order.lists.handling import Carried, people
from ribwright.order.lists.schedule import Row, schedule
from ribwright.order.lists.strips import StripLine
from ribwright.order.written.bend_drawing import bends_svg
from ribwright.order.written.bend_text import bend_text
from ribwright.order.written.csv import csv_text
from ribwright.order.written.cut_cells import cuts_text
from ribwright.order.written.order_csv import cuts_csv
from ribwright.order.written.order_text import order_table
from ribwright.order.written.table import table
from ribwright.pieces import Model
from ribwright.raising import raise_building
from ribwright.roles import list_of
from support.csv_rows import rows_of
from support.sample_building import sample_model, sample_schedule
from support.starter_buildings import starter_model

INCH, FOOT, POUND = 25.4, 304.8, 0.45359237


@pytest.fixture(scope="module")
def wanted() -> Order:
    return order(sample_schedule())


def lines(wanted: Order, name: str) -> list[Line]:
    return [line for line in wanted.lines if line.list == name]


def test_screws_are_told_by_trade_size_with_the_metric_beside_it(wanted: Order) -> None:
    said = {line.kind for line in lines(wanted, "screws")}
    assert said == {
        "sheet screw #12 x 1-1/4 hex head with washer (ST5.5 x 32)",
        "trim screw #12 x 1-1/2 hex head with washer (ST5.5 x 38)",
        "trim screw #12 x 1-1/4 hex head with washer (ST5.5 x 32)",
        "trim screw #10 x 1 hex head with washer (ST4.8 x 25)",
        "trim screw #10 x 3/4 pan head (ST4.8 x 19)",
    }
    first = sample_schedule().listed("screws")[0]
    assert screw_text(first, "mm").endswith("ST5.5 x 32 hex head with washer (#12 x 1-1/4)")
    odd = replace(first, shank=(7.0, 40.0), section="7 x 40")
    assert screw_text(odd, "mm") == "sheet screw 7 x 40 mm hex head with washer"


def test_the_drill_point_goes_through_all_that_may_lie_there() -> None:
    """Two sheets of 0.0172, a trim of 0.0217 and the thickest framing, 0.075 in: 0.1311 in."""
    assert thickest(sample_schedule()) / INCH == pytest.approx(2 * 0.0172 + 0.0217 + 0.075, abs=1e-6)
    points = [drill_point(inches * INCH) for inches in (0.110, 0.111, 0.210, 0.211, 0.500, 0.501)]
    assert points == [f"No. {n} drill point" for n in (2, 3, 3, 5, 5)] + ["holes drilled first"]


def test_screws_by_bags_and_sheets_to_spare() -> None:
    plain, bought = order(sample_schedule()), order(sample_schedule(), Buying(bag=250, spare_sheets=2))
    for one, other in zip(lines(plain, "screws"), lines(bought, "screws"), strict=True):
        assert (other.unit, other.quantity) == ("bag of 250", ceil(one.quantity / 250))
        assert other.count == 250 * other.quantity
    more = {
        (one.kind, one.size): other.quantity - one.quantity
        for one, other in zip(lines(plain, "sheets"), lines(bought, "sheets"), strict=True)
    }
    assert {key for key, count in more.items() if count} == {
        ("roof sheet 36 x 9 x 3/4", "15' 6-1/2\""),
        ("wall sheet 36 x 9 x 3/4", "14' 9\""),
    }
    assert sum(more.values()) == 4


def test_closures_are_strips_of_a_cover(wanted: Order) -> None:
    """40 ft are 13.3 covers, so 14 strips: inside at two eaves, outside at two eave walls and twice at the
    ridge, as a crew counts them."""
    found = {line.names[1]: (line.quantity, line.size) for line in lines(wanted, "closures")}
    assert found == {"inside closure": (28, "3'"), "outside closure": (56, "3'")}
    assert [StripLine("x", "left", length).strips(914.4) for length in (914.4, 915.5, 1, 12192)] == [
        1,
        2,
        1,
        14,
    ]


def test_doors_windows_anchors_paint_and_concrete(wanted: Order) -> None:
    """Openings as described: a framed door is 4 and 2 in smaller, a window 1/2 in; four holes in each of ten
    plates; 15.08 x 1.05 = 15.83, so 16 yd3."""
    openings = [(line.kind, line.size, line.quantity) for line in lines(wanted, "openings")]
    assert openings == [
        ("overhead door", "12' x 10'", 1),
        ("walk door with its frame", "2' 8\" x 6' 6\" nominal, 3' x 6' 8\" rough opening", 1),
        ("window", "4' 11-1/2\" x 2' 11-1/2\" nominal, 5' x 3' rough opening", 2),
    ]
    (anchors,) = lines(wanted, "anchors")
    assert (anchors.kind, anchors.quantity) == ("anchor rod, by the engineer", 40)
    assert [line.colour for line in lines(wanted, "paint")] == ["gainsboro", "slategray"]
    (concrete,) = lines(wanted, "slab")
    assert (concrete.quantity, concrete.unit) == (16.0, "yd3")
    assert concrete.size == "15.08 yd3 drawn, 5% waste, rounded up to 1/4 yd3"


def test_bundles_are_light_enough_and_longest_first(wanted: Order) -> None:
    found = list(bundles(wanted.lines))
    light = list(bundles(wanted.lines, 300 * POUND))
    assert len(found) == 2 and len(light) > 5
    for some, most in ((found, HEAVIEST), (light, 300 * POUND)):
        assert all(one.weight <= most for one in some)
        sheets = lines(wanted, "sheets")
        assert sum(count for one in some for _, count in one.sheets) == sum(line.quantity for line in sheets)
        assert sum(one.weight for one in some) == pytest.approx(sum(line.weight for line in sheets))
        lengths = {line.size.removesuffix(SHORTER): line.length / line.count for line in sheets}
        for one in some:
            inside = [lengths[size] for size, _ in one.sheets]
            assert inside == sorted(inside, reverse=True)


def test_people_by_weight_and_length() -> None:
    """A roof sheet takes two, over 20 ft any sheet three, over 30 ft a machine; 50 and 100 lb by weight."""
    row = next(row for row in sample_schedule().rows if row.role == "roof sheet")

    def takes(**other: object) -> int:
        return people(replace(row, **other), Carried())  # type: ignore[arg-type]

    assert takes() == 2
    assert takes(role="wall sheet") == 1
    assert [takes(length=feet * FOOT) for feet in (20, 20.1, 30, 30.1)] == [2, 3, 3, 0]
    assert [takes(role="wall sheet", weight=w * POUND) for w in (50, 51, 100, 101)] == [1, 2, 2, 0]
    assert isinstance(row, Row)


def test_a_long_stick_is_not_one_persons_however_light() -> None:
    """Members and trims over 20 ft take two, over 30 ft three: a base rail of 40 ft weighs 40 lb."""
    items = sample_schedule().items
    for role in ("base rail", "gutter"):
        one = replace(next(item for item in items if list_of(item.role) == "members"), role=role, weight=1.0)
        takes = [people(replace(one, length=feet * FOOT), Carried()) for feet in (20, 20.1, 30.1, 40)]
        assert takes == [1, 2, 3, 3]
    slab = next(item for item in items if list_of(item.role) == "slab")
    assert people(slab, Carried()) == 1


@pytest.mark.parametrize(("pitch", "steep"), [("4/12", False), ("5/12", True)])
def test_who_carries_and_what_is_not_here_is_said_in_the_order_itself(pitch: str, steep: bool) -> None:
    text = f'width = "12 ft"\nlength = "12 ft"\neave_height = "8 ft"\npitch = "{pitch}"\n'
    listed = schedule(raise_building(parse(text, "hut")).model)
    said = " ".join(order_table(order(listed), listed, Carried()).split())
    assert ("A roof over 4/12 has a paragraph of its own: 29 CFR 1926.501(b)(11)" in said) == steep
    assert "At least two lay a roof sheet." in said
    assert "sealant round leaves and sashes, which are drawn with 1/8 in open" in said.partition("Sheets")[0]
    roof = [row for row in rows_of(csv_text(listed)) if row["what"] == "roof sheet"]
    assert roof and {row["people"] for row in roof} == {"2 people"}


def test_bends_are_drawn_and_said(wanted: Order) -> None:
    by_kind = {trim.line.kind: trim.items[0] for trim in wanted.trims}
    cap = bend_text(by_kind["ridge cap"], "ft-in")
    assert re.fullmatch(r'legs ([^|]+) \| 151.9 deg \| \1; girth [-0-9/]+"; painted outside', cap)
    assert bend_text(by_kind["jamb angle"], "mm") == "legs 102 | 90 deg | 51; girth 153; painted outside"
    legs = {kind: bend_text(by_kind[kind], "ft-in").partition(";")[0] for kind in ("j trim", "drip")}
    assert legs == {  # a U, and a Z whose shelf falls 1/8 in on its way out
        "j trim": 'legs 2" | 90 deg | 15/16" | 90 deg | 1/2"',
        "drip": 'legs 2" | 97.4 deg | 1" | 97.4 deg back | 3/4"',
    }
    page = ET.fromstring(bends_svg(wanted, sample_schedule().pitch))
    space = "{http://www.w3.org/2000/svg}"
    assert len(page.findall(f"{space}polyline")) == len(wanted.trims)
    seen = [trim.first.painted for trim in wanted.trims]
    assert len(page.findall(f"{space}path")) == sum(map(bool, seen)) >= len(seen) - 1
    texts = [text.text or "" for text in page.findall(f"{space}text")]
    assert texts[0].startswith("Bends: workshop; roof 3/12")
    assert any("Geometry, not engineering" in text for text in texts)
    assert sum("girth" in text for text in texts) == len(wanted.trims)
    spare = order(replace(sample_schedule(), items=(), rows=()))
    assert ET.fromstring(bends_svg(spare, 0.0)).findall(f"{space}polyline") == []


def test_the_cut_list_has_every_piece_of_trim_and_steel_once(wanted: Order) -> None:
    model: Model = sample_model()
    cut = [p for p in model.pieces if p.group[0] == "trims" or list_of(p.role) == "members"]
    pieces = sorted(piece.mark for piece in cut if piece.role != "base plate")
    rows = rows_of(cuts_csv(wanted))
    assert sorted(row["mark"] for row in rows) == pieces
    assert all(row["left of stick"] == "" or row["cut"] for row in rows)
    assert len({(row["item"], row["stick"]) for row in rows}) == sum(
        len(plan.sticks) for _, plan in wanted.plans
    )


def test_the_cut_list_and_the_stock_plans_tell_every_stick(wanted: Order) -> None:
    """The cut list as columns, a row a cut; the plans in the order, whole sticks by how many of a mark."""
    cuts, table = rows_of(cuts_csv(wanted)), cuts_text(wanted)
    told = [line.split() for line in table.splitlines() if line[:1].isdigit()]
    assert [words[:3] for words in told] == [[row["stick"], row["cut"], row["mark"]] for row in cuts]
    plans = dict(wanted.plans)
    lines_of = order_table(wanted, sample_schedule(), Carried(), 1000).splitlines()
    item, whole = "", dict.fromkeys(plans, 0)
    for line in lines_of[lines_of.index("Stock plans") + 1 :]:
        item = item if line.startswith("    ") else line.strip().rpartition(": ")[0]
        if line.startswith("    whole sticks: "):
            whole[item] = sum(int(count) for count in re.findall(r"(\d+) of ", line))
    for item, plan in plans.items():
        assert whole[item] == sum(len(stick.cuts) == 1 and stick.left <= 1 for stick in plan.sticks)
    assert any(whole.values())


@pytest.mark.parametrize("name", ["machine-shed", "workshop"])
def test_an_order_and_its_schedule_fit_a_terminal_and_leave_nothing_out(name: str) -> None:
    """Lines of 80 at most that say word for word what lines without end say, no length broken in two."""
    listed = schedule(starter_model(name))
    bought = order(listed)

    narrow, wide = (order_table(bought, listed, Carried(), width) for width in (80, 2000))
    assert max(map(len, narrow.splitlines())) <= 80
    assert sorted(narrow.split()) == sorted(wide.split())
    narrow, wide = (text + table(listed, width) for text, width in ((narrow, 80), (wide, 2000)))
    assert max(map(len, narrow.splitlines())) <= 80
    lengths = re.compile(r"\d+' \d[\d/-]*\"")
    assert sorted(lengths.findall(narrow)) == sorted(lengths.findall(wide))


def test_closures_follow_the_sheets_of_their_face() -> None:
    """A roof of another profile: closures inside at the eaves and outside at the ridge are that one's."""
    text = 'width = "12 ft"\nlength = "12 ft"\neave_height = "8 ft"\npitch = "4/12"\n'
    text += '[roof_sheets]\nprofile = "36 x 12 x 1-1/4"\n'
    bought = order(schedule(raise_building(parse(text, "hut")).model))
    found = {line.kind: line.quantity for line in lines(bought, "closures")}
    assert found == {
        "outside closure strip 36 x 9 x 3/4": 2 * 4,
        "outside closure strip 36 x 12 x 1-1/4": 2 * 4,
        "inside closure strip 36 x 12 x 1-1/4": 2 * 4,
    }


def test_covers_that_differ_by_rounding_alone_make_one_line() -> None:
    listed = sample_schedule()
    rows = tuple(replace(row, cover=row.cover + 1e-9 * n) for n, row in enumerate(listed.rows))
    there = [replace(line, marks=()) for line in lines(order(listed), "closures")]
    assert [replace(line, marks=()) for line in lines(order(replace(listed, rows=rows)), "closures")] == there
