"""The order of the workshop starter: a wall by hand, prices, the spreadsheet read by another program."""

from __future__ import annotations

import csv
import io
import os
from math import ceil
from pathlib import Path

import openpyxl
import pytest
from ribwright.catalog.profiles import profiles
from ribwright.errors import FileError
from ribwright.intake import parse, sample
from ribwright.layout.skin.ribs import graphs
from ribwright.order.buying.blanks import rake_pairs, rip_pairs
from ribwright.order.buying.order_list import Buying, Order, order
from ribwright.order.buying.prices import priced, read_prices, total
from ribwright.order.lists.handling import Carried, lifts
from ribwright.order.lists.schedule import Schedule, schedule
from ribwright.order.written.bend_text import bend_text
from ribwright.order.written.order_csv import order_csv
from ribwright.order.written.order_text import order_table
from ribwright.order.written.workbook import workbook
from ribwright.pieces import Model, Piece
from ribwright.place import Place
from ribwright.raising import raise_building
from ribwright.recipe import Sheet
from ribwright.roles import list_of
from ribwright.solids import realise
from ribwright.solids.properties import volume
from support.csv_rows import rows_of

INCH, POUND = 25.4, 0.45359237


@pytest.fixture(scope="module")
def model() -> Model:
    return raise_building(sample()).model


@pytest.fixture(scope="module")
def listed(model: Model) -> Schedule:
    return schedule(model)


@pytest.fixture(scope="module")
def ordered(listed: Schedule) -> Order:
    return order(listed, Buying())


def test_the_right_wall_by_hand(listed: Schedule, model: Model) -> None:
    """The workshop's right wall: 40 ft, no openings. n = ceil((480 - 2) / 36) = 14 sheets: 13 whole, one
    ripped. All are 132 in less the roof's fall over the ribs, 1/8 in, and the feet's 2.1 x 0.0217 in:
    132 - (0.0217 + 0.75 + 2 * 0.0172) / 4 - 0.125 - 0.0456 = 131.628, so they come in 10 ft 11-1/2 in.
    Screws: foot and head 2 a pan, two girts 1 a pan: 6 a pan. 13 sheets of 4 pans; the last, 12 in wide,
    has one pan and the half of the next. Its right screw of the pair is in it, the next pan's left is
    too: at 1.75 and 7.25 in from the rib and at 10.75 from it. So 13 * 24 + 6 + 4 = 322, unless the last
    one is past the wall's end: ribs at 469 and 478, so 478 + 1.75 is 479.75, an edge away of 1/4 in: out.
    There the rib's other side takes the two girts' screws, which hold the run's end: 6 + 2.
    """
    marks = [placed.mark for placed in listed.placed if placed.face == "right"]
    assert len(marks) == 14
    rows = {row.mark: row for row in listed.rows}
    for mark in marks:
        assert rows[mark].length / INCH == pytest.approx(131.5, abs=1e-6)
    assert sorted(rows[mark].width / INCH for mark in marks) == pytest.approx([12.0] + [38.0] * 13)
    screws = [p for p in model.pieces if p.role == "sheet screw" and p.label("face") == "right"]
    assert sum(piece.count for piece in screws) == 13 * 24 + 6 + 2


def test_sheets_are_ordered_by_kind_and_length(ordered: Order, listed: Schedule) -> None:
    """As long as they are laid: the side walls', and the windows' cut ones with them."""
    sides = next(line for line in ordered.lines if line.item.endswith("gainsboro, 10' 11-1/2\""))
    rows = {row.mark: row for row in listed.rows}
    assert sides.quantity == sum(rows[mark].count for mark in sides.marks)
    assert {face for mark in sides.marks for face in rows[mark].faces} == {"left", "right"}
    total_sheets = sum(line.quantity for line in ordered.lines if line.list == "sheets")
    assert total_sheets == listed.count - 2  # of four under 4 ft two come from one


def test_every_quantity_is_counted_off_solids(ordered: Order, model: Model) -> None:
    """Trims in their stock plans, screws with their spares, concrete as the slab's own volume."""
    cuts = sum(len(stick.cuts) for bought in ordered.trims for stick in bought.plan.sticks)
    assert cuts == sum(1 for piece in model.pieces if piece.group[0] == "trims")
    cuts = sum(len(stick.cuts) for bought in ordered.members for stick in bought.plan.sticks)
    steel = [piece for piece in model.pieces if list_of(piece.role) == "members"]
    assert cuts == sum(piece.role != "base plate" for piece in steel)
    assert all(plan.proven for _, plan in ordered.plans)
    screws = sum(piece.count for piece in model.pieces if piece.group[0] == "screws")
    bought = sum(line.quantity for line in ordered.lines if line.list == "screws")
    assert screws * 1.05 <= bought <= screws * 1.05 + 5
    (slab,) = [piece for piece in model.pieces if piece.role == "slab"]
    (concrete,) = [line for line in ordered.lines if line.list == "slab"]
    drawn = volume(slab.solid) / 914.4**3
    assert f"{drawn:.2f} yd3 drawn, 5% waste" in concrete.item
    assert concrete.quantity == ceil(round(drawn, 2) * 1.05 * 4) / 4


def test_weights_come_from_solids(listed: Schedule, model: Model) -> None:
    steel = [p for p in model.pieces if p.label("material") in ("steel", "screw")]
    assert listed.steel == pytest.approx(sum(volume(p.solid) * p.count for p in steel) * 7850e-9, rel=1e-6)
    heavy = lifts(listed, Carried())
    assert heavy[0].weight == max(lift.weight for lift in heavy)
    roof = {row.mark for row in listed.rows if row.role == "roof sheet"}
    assert roof and roof <= {lift.mark for lift in heavy}
    long = {item.mark for item in listed.listed("members") if item.length > 240 * INCH}
    assert long and long <= {lift.mark for lift in heavy}
    assert all(lift.weight > 50 * POUND for lift in heavy if lift.mark not in roof | long)
    assert {lift.people for lift in heavy} <= {0, 2, 3}


def test_rakes_of_opposite_hands_share_a_blank() -> None:
    """One gable from its left half, the other from its right: each sheet of the one has its complement in
    the other, and the order counts one blank for two. With one hand on both, none."""
    text = 'width = "30 ft"\nlength = "20 ft"\neave_height = "10 ft"\npitch = "3/12"\n'
    text += '[frame]\nback_posts = "none"\n'
    one_hand = schedule(raise_building(parse(text, "barn")).model)
    assert rake_pairs(one_hand.rows) == []
    both = schedule(raise_building(parse(text + '[runs]\nback = "centre, right first"\n', "barn")).model)
    pairs = rake_pairs(both.rows)
    assert sum(pair.count for pair in pairs) == 8
    wanted = order(both, Buying(pairs=True))
    sheets = sum(line.quantity for line in wanted.lines if line.list == "sheets")
    assert sheets == both.count - 8
    rows = {row.mark: row for row in both.rows}
    for pair in pairs:
        lengths = rows[pair.first].length + rows[pair.second].length
        assert (lengths - pair.length) / INCH == pytest.approx(9.5, abs=0.001)


def test_prices_are_the_users_own(ordered: Order, tmp_path: Path) -> None:
    path = tmp_path / "prices.csv"
    item = ordered.lines[0].item
    with path.open("w", encoding="utf-8", newline="") as file:
        csv.writer(file).writerows([["item", "unit", "price"], [item.upper(), "each", "12.50"]])
    wanted = priced(ordered, read_prices(path))
    assert wanted.lines[0].cost == 12.5 * wanted.lines[0].quantity
    assert total(wanted) == wanted.lines[0].cost
    assert len(wanted.unpriced) == len(wanted.lines) - 1
    said = f"1 of {len(wanted.lines)} lines priced, together {total(wanted):.2f}"
    assert said in order_table(wanted, _empty(), Carried())


def _empty() -> Schedule:
    return Schedule("none", "ft-in", (), (), ())


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("item,price\na,1\n", "line 1: columns would do: item, unit, price"),
        ("item,unit,price\na,each,cheap\n", "line 2: price: read 'cheap'"),
        ("item,unit,price\na,each,-1\n", "line 2: price: read '-1'"),
        ("item,unit,price\na,each,nan\n", "line 2: price: read 'nan'"),
        ("item,unit,price\na,each,1_000\n", "line 2: price: read '1_000'"),
        ("item,unit,price\na,each,\uff11\uff12\n", "line 2: price: read '\uff11\uff12'"),
        ("item,unit,price\na,each,1e3\n", "line 2: price: read '1e3'"),
        ("item,unit,price\na,each,\n", "line 2: price: read ''"),
        ("item,unit,price\na\n", "line 2: read 1 cell; would do: item, unit, price"),
        ("item,unit,price\n\na, b,each,1\n", "line 3: read 4 cells; would do: item, unit, price"),
        ("item,unit,price,note\na,each,1,x\n", "line 1: columns would do: item, unit, price"),
        ("item,unit,price\na,each,1\nA ,each,2\n", "line 3: 'A ' has another price above"),
        ("item,unit,price\na,furlong,1\n", "line 2: unit: read 'furlong'; would do: each, hundred, ft, m,"),
        ("item,unit,price,gauge,gauge\n", "line 1: columns would do: item, unit, price"),
        ("item,unit,price,gauge\na,each,1\n", "line 2: read 3 cells; would do: item, unit, price, gauge"),
        ("", "is empty"),
    ],
)
def test_a_price_file_that_is_none(text: str, said: str, tmp_path: Path) -> None:
    path = tmp_path / "prices.csv"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(FileError, match=f"prices.csv: {said}"):
        read_prices(path)


@pytest.mark.skipif(not Path("/dev/zero").is_char_device(), reason="no such device")
def test_a_price_file_that_never_ends_or_never_begins(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe")
    for path in (Path("/dev/zero"), tmp_path / "pipe", tmp_path):
        with pytest.raises(FileError, match=f"{path}: is not a plain file"):
            read_prices(path)
    (tmp_path / "long").write_bytes(b"item,unit,price\n" + b"a" * 6_000_000)
    with pytest.raises(FileError, match="long: is larger than 5 MB"):
        read_prices(tmp_path / "long")


def test_another_program_reads_the_spreadsheet(ordered: Order, listed: Schedule) -> None:
    """openpyxl finds a sheet a list, the order's lines on it, and sums as formulas; no price, no cost."""
    content = workbook(ordered, listed)
    assert content == workbook(ordered, listed)
    book = openpyxl.load_workbook(io.BytesIO(content))
    lists = list(dict.fromkeys(line.list for line in ordered.lines))
    assert book.sheetnames == [*lists, "cuts", "bends", "placing", "total"]
    for name in lists:
        rows = list(book[name].iter_rows(values_only=True))[5:]
        lines = [line for line in ordered.lines if line.list == name]
        found = [(*(cell or "" for cell in row[:4]), row[4], row[5]) for row in rows[: len(lines)]]
        assert found == [(x.kind, x.gauge, x.colour, x.size, x.quantity, x.unit) for x in lines]
        last = 5 + len(lines)
        assert rows[len(lines)][12] == f'=IF(COUNT(M6:M{last})=0,"",SUM(M6:M{last}))'
        assert rows[0][12] == '=IF(ISNUMBER(L6),ROUND(K6*L6,2),"")'
    values = openpyxl.load_workbook(io.BytesIO(content), data_only=True)
    assert not values["sheets"].cell(6, 13).value
    assert not values["total"]["B20"].value
    sums = [row for row in values["sheets"].iter_rows(values_only=True) if row[0] == "sum"]
    sheets = [line for line in ordered.lines if line.list == "sheets"]
    assert sums[0][6:9] == pytest.approx(
        [
            sum(x.length for x in sheets) / 304.8,
            sum(x.area for x in sheets) / 304.8**2,
            sum(x.weight for x in sheets) / POUND,
        ]
    )


def test_the_spreadsheet_says_how_trims_are_bent(ordered: Order, listed: Schedule) -> None:
    """A row a line of trims that are bent, with what the bend list of the text says."""
    book = openpyxl.load_workbook(io.BytesIO(workbook(ordered, listed)))
    _, *rows = list(book["bends"].iter_rows(min_row=5, values_only=True))
    bent = [trim for trim in ordered.trims if trim.first.bends]
    assert [row[0] for row in rows] == [trim.line.item for trim in bent]
    for trim, (_, legs, girth, side) in zip(bent, rows, strict=True):
        said = bend_text(trim.first, "ft-in")
        assert said == f"legs {legs}; girth {girth}" + (f"; painted {side}" if side else "")
    assert {row[3] for row in rows} == {"outside", "inside"}


def test_the_spreadsheet_prints(ordered: Order, listed: Schedule) -> None:
    """Lying, one page wide, the job over every sheet, its titles on every page, page numbers below."""
    book = openpyxl.load_workbook(io.BytesIO(workbook(ordered, listed)))
    for sheet in book:
        assert sheet.page_setup.orientation == "landscape"
        assert (sheet.page_setup.fitToWidth or 1, sheet.page_setup.fitToHeight) == (1, 0)
        assert sheet.sheet_properties.pageSetUpPr.fitToPage
        assert sheet.print_title_rows == "$5:$5"
        assert sheet["A1"].value == "workshop"
        assert "Geometry, not engineering" in sheet["A3"].value
        assert "&P" in sheet.oddFooter.right.text


def test_csv_has_every_line(ordered: Order) -> None:
    rows = rows_of(order_csv(ordered))
    assert [(row["list"], row["item"], float(row["quantity"])) for row in rows] == [
        (line.list, line.item, pytest.approx(line.quantity, abs=0.005)) for line in ordered.lines
    ]


def test_two_rips_share_a_blank_only_where_their_edges_allow() -> None:
    """A rip that keeps the overlap rib and one that keeps the underlap leg come from one blank; two that
    both keep the overlap rib do not."""

    def rip(mark: str, start: float, end: float) -> Piece:
        lower, upper = graphs(profile, 0.43688)
        ring = ((start, 0.0), (end, 0.0), (end, 3000.0), (start, 3000.0))
        solid = realise(Sheet(lower, upper, ring))
        return Piece(mark, "wall sheet", ("walls", "left"), solid, Place())

    profile = profiles()["36 x 9 x 3/4"]
    whole = rip("whole", -profile.leg, profile.cover + profile.leg)
    left, right = rip("left", -profile.leg, 300.0), rip("right", 400.0, profile.cover + profile.leg)
    found = rip_pairs(schedule(Model("rips", "mm", (whole, left, right))).rows)
    assert [pair.count for pair in found] == [1]
    other = rip("other", -profile.leg, 350.0)
    assert rip_pairs(schedule(Model("rips", "mm", (whole, left, other))).rows) == []
    wide = rip("wide", 200.0, profile.cover + profile.leg)
    assert rip_pairs(schedule(Model("rips", "mm", (whole, left, wide))).rows) == []
    bare = rip("bare", 10.0 - profile.leg, 300.0)  # a second rip along it would be one more cut
    assert rip_pairs(schedule(Model("rips", "mm", (whole, bare, right))).rows) == []
