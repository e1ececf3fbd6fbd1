"""Prices in every unit they are sold by, against the lines as measured; the arithmetic is beside each."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from ribwright.cli.main import run
from ribwright.order.buying.line import MEASURES, Line
from ribwright.order.buying.order_list import Order, order
from ribwright.order.buying.prices import counted, priced, read_prices, total
from ribwright.order.lists.handling import Carried
from ribwright.order.written.order_csv import order_csv
from ribwright.order.written.order_text import order_table
from support.csv_rows import rows_of
from support.sample_building import sample_schedule


@pytest.fixture(scope="module")
def wanted() -> Order:
    return order(sample_schedule())


def with_prices(wanted: Order, text: str, tmp_path: Path, head: str = "item,unit,price") -> Order:
    path = tmp_path / "prices.csv"
    path.write_text(f"{head}\n{text}\n", encoding="utf-8")
    return priced(wanted, read_prices(path))


FULL = Line(
    "x",
    "thing",
    "each",
    250,
    count=250,
    length=609.6e3,
    area=185.80608e6,
    weight=90.718474,
    volume=1.529109715968e9,
)
"""250 pieces, 2000 ft, 2000 ft2, 200 lb, 2 yd3."""
AMOUNTS = {
    **{"each": 250, "hundred": 2.5, "ft": 2000, "m": 609.6, "ft2": 2000, "m2": 185.80608, "square": 20},
    **{"lb": 200, "kg": 90.718474, "cwt": 2, "yd3": 2, "m3": 1.529109715968},
}


def test_every_unit_is_what_it_says() -> None:
    assert set(AMOUNTS) == set(MEASURES)
    for unit, amount in AMOUNTS.items():
        assert FULL.amount(unit) == pytest.approx(amount, rel=1e-12)
        bare = replace(FULL, length=0, area=0, weight=0, volume=0)
        assert (bare.amount(unit) is None) == (unit not in ("each", "hundred"))


def test_one_row_a_foot_prices_every_length(wanted: Order, tmp_path: Path) -> None:
    """Wall sheets at 2.00 a foot, three of 14 ft 9, three of 14 ft 0-1/2, three of 13 ft 3-1/2, four of 12 ft
    6-1/2, four of 11 ft 9-1/2, 26 of 10 ft 11-1/2, then 7 ft 10-1/2 and 7 ft 1-1/2, from which three of 3
    ft 11-1/4 and one of 3 ft 2-1/4 are cut, 4 ft 8, two of 4 ft."""
    found = with_prices(wanted, "wall sheet,ft,2.00", tmp_path)
    costs = [line.cost for line in found.lines if line.cost is not None]
    assert costs == [88.5, 84.25, 79.75, 100.33, 94.33, 569.83, 15.75, 14.25, 9.33, 16.0]
    assert total(found) == 1072.32
    assert counted(found) == f"10 of {len(found.lines)} lines priced"


def test_the_row_that_says_it_closest_counts(wanted: Order, tmp_path: Path) -> None:
    """A whole item before a kind, a kind before a wider name, a gauge or a colour before none."""
    item = next(line.item for line in wanted.lines if line.kind == "corner trim").replace('"', '""')
    rows = ["trim,ft,1,,", "base trim,ft,2,,", "base trim,ft,3,26,", "sheet,ft,4,,", "sheet,ft,5,,slategray"]
    rows += [f'"{item}",each,60,,', "corner trim,ft,9,,"]
    found = with_prices(wanted, "\n".join(rows), tmp_path, "item,unit,price,gauge,colour")
    prices = {line.kind: line.price for line in found.lines}
    assert prices["base trim"] is not None and prices["base trim"].amount == 3
    assert prices["eave trim"] is not None and prices["eave trim"].amount == 1
    assert prices["corner trim"] is not None and prices["corner trim"].amount == 60
    by_colour = {line.colour: line.price for line in found.lines if line.list == "sheets"}
    assert [by_colour[name].amount for name in ("gainsboro", "slategray")] == [4, 5]  # type: ignore[union-attr]
    assert found.unused == (
        "line 3: base trim, per ft (other rows say it closer)",
        "line 8: corner trim, per ft (other rows say it closer)",
    )


def test_every_row_is_used_or_named_and_every_item_without_a_price(wanted: Order, tmp_path: Path) -> None:
    rows = "gutter,ft,3\nsheet screw,ft,1\nconcrete,yd3,150\ntouch-up pen,each,4.50\nsheet screw,hundred,6"
    with pytest.raises(Exception, match="line 6: 'sheet screw' has another price above"):
        with_prices(wanted, rows, tmp_path)
    found = with_prices(wanted, rows.rpartition("\n")[0], tmp_path)
    assert found.unused == (
        "line 2: gutter, per ft (no line is called so)",
        "line 3: sheet screw, per ft (what it means is not measured by ft)",
    )
    assert total(found) == 16 * 150 + 2 * 4.5
    assert len(found.unpriced) == len(found.lines) - 3
    said = order_table(found, sample_schedule(), Carried(), 1000)
    assert f"3 of {len(found.lines)} lines priced, together 2409.00" in said
    assert all(f"No price: {item}" in said for item in found.unpriced)
    assert all(f"Not used: {row}" in said for row in found.unused)


def test_a_line_is_called_by_what_it_is_without_who_chooses_it(wanted: Order, tmp_path: Path) -> None:
    rows = ["anchor rod,each,4,", "outside closure strip,each,1.3,", "clip of a girt on a frame,each,2,"]
    rows += ["anchor,kg,3,", "wall sheet,ft,3,barn red"]
    found = with_prices(wanted, "\n".join(rows), tmp_path, "item,unit,price,colour")
    assert [line.kind for line in found.lines if line.price] == [
        "outside closure strip 36 x 9 x 3/4",
        "clip of a girt on a frame, by the engineer",
        "anchor rod, by the engineer",
    ]
    assert found.unused == (
        "line 5: anchor, per kg (what it means is not measured by kg)",
        "line 6: wall sheet, barn red, per ft (none so called has that gauge or colour)",
    )


def test_what_a_csv_has_no_cell_for_is_said_beside_it(
    tmp_path: Path, capfd: pytest.CaptureFixture[str]
) -> None:
    """On the other stream, so that the file stays a table."""
    prices = tmp_path / "prices.csv"
    prices.write_text("item,unit,price\nunicorn,each,3\nwall sheet,ft,2\n", encoding="utf-8")
    assert run(["order", "--prices", str(prices), "--format", "csv"]) == 0
    told = capfd.readouterr()
    assert "Not used: line 2: unicorn, per each (no line is called so)\n" in told.err
    assert "No price: anchor rod" in told.err
    assert "No price" not in told.out and "unicorn" not in told.out


def test_without_a_price_a_cell_is_blank(wanted: Order, tmp_path: Path) -> None:
    assert total(wanted) is None
    found = with_prices(wanted, "concrete,m3,0", tmp_path)
    rows = {row["item"].split(",")[0]: row for row in rows_of(order_csv(found))}
    assert (rows["base trim"]["price"], rows["base trim"]["per"], rows["base trim"]["cost"]) == ("", "", "")
    assert (rows["concrete"]["price"], rows["concrete"]["per"], rows["concrete"]["cost"]) == (
        "0.00",
        "m3",
        "0.00",
    )
    assert "lines priced" not in order_table(wanted, sample_schedule(), Carried())
