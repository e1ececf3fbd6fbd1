"""The panel schedule: rows worked by hand, and every way it is written."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest
from ribwright.order.lists.schedule import Row, Schedule, schedule
from ribwright.order.written.csv import csv_text
from ribwright.order.written.json import json_text
from ribwright.order.written.markdown import markdown_text
from ribwright.order.written.table import table
from ribwright.pieces import Model, Piece
from ribwright.place import Place
from ribwright.solids import realise
from shapely.geometry import Polygon, box
from support.bodies import LEFT, RIGHT, sheet_over, volume_between
from support.csv_rows import rows_of

INCH, FOOT, POUND = 25.4, 304.8, 0.45359237

PLAIN = box(LEFT, 0, RIGHT, 8 * FOOT)
RIP = box(LEFT, 0, 20 * INCH, 8 * FOOT)
# 3/12: 38 in across fall 9 1/2 in. A notch 7 in wide and 48 high in the lower right corner, a hole
# 24 x 36 whose corner lies 1 in from the left edge (the leg) and 30 in up.
RAKED = (
    Polygon([(LEFT, 0), (RIGHT, 0), (RIGHT, 129.5 * INCH), (LEFT, 120 * INCH)])
    - box(0, 30 * INCH, 24 * INCH, 66 * INCH)
    - box(30 * INCH, -1, 9999, 48 * INCH)
)
# The ridge 1 in from the right edge: 37 in fall 9 1/4, the leg's inch 1/4.
PEAK = Polygon(
    [(LEFT, 0), (RIGHT, 0), (RIGHT, 143.75 * INCH), (36 * INCH, 144 * INCH), (LEFT, 134.75 * INCH)]
)

UP, DOWN = Place((0, 0, 0), (1, 0, 0), (0, 0, 1)), Place((0, 0, 0), (-1, 0, 0), (0, 0, -1))
SLOPE = 1 / 17**0.5  # of 3/12: 1 up for 4 along
TO_RIDGE = Place((0, 0, 3000), (0, 1, 0), (-4 * SLOPE, 0, SLOPE))
FROM_RIDGE = Place((0, 0, 3000), (0, -1, 0), (4 * SLOPE, 0, -SLOPE))


def piece(name: str, outline: Polygon, place: Place, face: str, colour: str = "white") -> Piece:
    role = "roof sheet" if face.endswith("slope") else "wall sheet"
    labels = (("face", face), ("colour", colour), ("gauge", "29 ga"), ("profile", "36 x 9 x 3/4"))
    return Piece(name, role, (face,), realise(sheet_over(outline)), place, labels)


SHED = Model(
    "Shed",
    "ft-in",
    (
        piece("front 1", RAKED, UP, "front"),
        piece("front 2", PEAK, UP, "front"),
        piece("left 1", PLAIN, UP, "left"),
        piece("left 2", PLAIN, UP, "left"),
        piece("left 3", RIP, UP, "left"),
        piece("right 1", PLAIN, DOWN, "right"),
        piece("slope 1", PLAIN, TO_RIDGE, "right slope", "grey"),
        piece("slope 2", PLAIN, FROM_RIDGE, "left slope", "grey"),
    ),
)

TABLE = """\
Sheet list: Shed
Lengths in feet and inches to 1/16; areas in ft2; weights in lb. Area and weight
are of one piece. Sheets are told as they stand, seen from outside: ends are
bottom / top; ribs and cutouts are measured from the lower left corner. Turned:
with the foot of its cut sheet up; where only some are, the others are told.
Geometry, not engineering; local code governs; no bracing is drawn.

mark   count  width  cover      length    area  weight
------------------------------------------------------
W1         1  3' 2"     3'         12'   36.81    27.8
W2         1  3' 2"     3'  10' 9-1/2"   24.59    18.6
       notch bottom right  x 2' 7"  y    0"  7" wide  4' high
       hole                x    1"  y 2' 6"  2' wide  3' high
W3         3  3' 2"     3'          8'   25.33    19.1
W4         1  1' 9"  1' 6"          8'   14.00    10.6
R1         2  3' 2"     3'          8'   25.33    19.1
------------------------------------------------------
total      8                            202.06   152.8
"""


@pytest.fixture(scope="module")
def shed() -> Schedule:
    return schedule(SHED)


@pytest.fixture(scope="module")
def rows(shed: Schedule) -> dict[str, Row]:
    return {row.mark: row for row in shed.rows}


def many() -> Schedule:
    """Twelve roof sheets, each shorter than the one before, in 1000 mm steps less 10."""
    pieces = (piece(str(n), box(LEFT, 0, RIGHT, 3000 - 10 * n), TO_RIDGE, "right slope") for n in range(12))
    return schedule(Model("many", "mm", tuple(pieces)))


def test_the_marks_longest_first_and_where_each_goes(shed: Schedule) -> None:
    """12 ft, 10 ft 9 1/2, and of the two of 8 ft the wider first; roofs after walls."""
    assert {row.mark: (row.count, row.turned, row.faces) for row in shed.rows} == {
        "W1": (1, 0, ("front",)),
        "W2": (1, 0, ("front",)),
        "W3": (3, 1, ("left", "right")),
        "W4": (1, 0, ("left",)),
        "R1": (2, 1, ("right slope", "left slope")),
    }
    assert {one.name: (one.mark, one.head_up) for one in shed.placed} == {
        "front 2": ("W1", True),
        "front 1": ("W2", True),
        "left 1": ("W3", True),
        "left 2": ("W3", True),
        "right 1": ("W3", False),
        "left 3": ("W4", True),
        "slope 1": ("R1", True),
        "slope 2": ("R1", False),
    }


def test_the_raked_sheet_by_hand(rows: dict[str, Row]) -> None:
    """(120 + 129.5) / 2 * 38 in2, less 24 * 36 and 7 * 48: the notch starts 31 in from the left edge."""
    row = rows["W2"]
    assert (row.width / INCH, row.cover / INCH, row.length / INCH) == pytest.approx((38, 36, 129.5), abs=1e-6)
    assert (row.foot.kind, row.head.kind, row.head.high) == ("square", "rake", "right")
    assert row.head.drop / INCH == pytest.approx(9.5, abs=1e-6)
    notch, hole = row.cutouts
    figures = [(cut.x / INCH, cut.y / INCH, cut.width / INCH, cut.height / INCH) for cut in (notch, hole)]
    assert figures == [pytest.approx((31, 0, 7, 48), abs=1e-6), pytest.approx((1, 30, 24, 36), abs=1e-6)]
    assert (notch.sides, hole.sides) == (("foot", "right"), ())
    assert row.area / INCH**2 == pytest.approx(249.5 / 2 * 38 - 24 * 36 - 7 * 48, abs=1e-5)
    assert row.weight == pytest.approx(volume_between(sheet_over(RAKED)) * 7850e-9, rel=1e-9)
    assert (row.colour, row.profile, row.gauge) == ("white", "36 x 9 x 3/4", "29 ga")


def test_the_peak_by_hand(rows: dict[str, Row]) -> None:
    head = rows["W1"].head
    assert head.kind == "peak"
    assert [size / INCH for size in (head.at, head.left, head.right)] == pytest.approx(
        [37, 9.25, 0.25], abs=1e-6
    )


def test_the_rip_covers_from_its_overlap_rib_to_the_last_whole_one(rows: dict[str, Row]) -> None:
    """Ribs at 0, 9 and 18 in; cut at 20: 1 in of leg and 20 in, 2 past the last centre."""
    assert (rows["W4"].width / INCH, rows["W4"].cover / INCH) == pytest.approx((21, 18), abs=1e-6)


def test_totals_are_sums_over_all_pieces(shed: Schedule) -> None:
    outlines = [RAKED, PEAK, RIP, *[PLAIN] * 5]
    assert shed.count == len(outlines)
    assert shed.area == pytest.approx(sum(one.area for one in outlines), rel=1e-9)
    weight = sum(volume_between(sheet_over(one)) for one in outlines) * 7850e-9
    assert shed.weight == pytest.approx(weight, rel=1e-9)


def test_the_table_figure_by_figure(shed: Schedule) -> None:
    """At 80 columns, without the lines of words.

    Areas: peak (134.75 + 144) / 2 * 37 + (144 + 143.75) / 2 * 1, rake as above, 96 * 38, 96 * 21 in2.
    Weights: of the volumes that an integral over the outlines gives.
    """
    outlines = (PEAK, RAKED, PLAIN, RIP, PLAIN)
    areas = [area / 144 for area in (5300.75, 3540.5, 3648, 2016, 3648)]
    weights = [volume_between(sheet_over(one)) * 7850e-9 / POUND for one in outlines]
    cells = [line.split()[-2:] for line in TABLE.splitlines() if line[:1] in ("W", "R")]
    assert cells == [[f"{area:.2f}", f"{weight:.1f}"] for area, weight in zip(areas, weights, strict=True)]
    counts = (1, 1, 3, 1, 2)
    total = [sum(n * one for n, one in zip(counts, column, strict=True)) for column in (areas, weights)]
    assert TABLE.splitlines()[-1].split()[-2:] == [f"{total[0]:.2f}", f"{total[1]:.1f}"]
    words = ("white", "grey", "head up", "turned", "3/4; ")
    lines = [line for line in table(shed, 80).splitlines() if not any(word in line for word in words)]
    assert lines == TABLE.splitlines()


@pytest.mark.parametrize("units", ["ft-in", "mm"])
@pytest.mark.parametrize("width", [80, 120, 200])
def test_a_table_fits_its_columns_and_says_each_thing_once(width: int, units: str) -> None:
    text = table(schedule(replace(SHED, units=units)), width)
    lines = text.splitlines()
    assert max(map(len, lines)) <= width
    assert all(line == line.rstrip() for line in lines)
    assert text.count("36 x 9 x") == 5
    assert (text.count("mm"), text.count(" kg.")) == ((1, 1) if units == "mm" else (0, 0))
    assert text.count(" lb.") == (0 if units == "mm" else 1)
    head = next(line for line in lines if line.startswith("mark"))
    figures = [line for line in lines[lines.index(head) :] if line[:1] in ("W", "R", "t")]
    assert len(figures) == 6
    for name in ("count", "area", "weight"):
        end = head.index(name) + len(name)
        assert all(line[end - 1].isdigit() and line[end : end + 1] in ("", " ") for line in figures)


def test_a_wide_table_has_one_line_a_mark(shed: Schedule) -> None:
    lines = table(shed, 220).splitlines()
    (raked,) = (line for line in lines if line.startswith("W2"))
    assert raked.split("  ")[-1] == "1 head up"
    assert 'square / rake 9-1/2" high right' in raked
    assert 'square / peak at 3\' 1", down 9-1/4" left, 1/4" right' in "\n".join(lines)
    assert "2 head up, 1 turned" in next(line for line in lines if line.startswith("W3"))


def test_marks_sort_as_people_count() -> None:
    listed = many()
    expected = [f"R{n}" for n in range(1, 13)]
    assert [row.mark for row in listed.rows] == expected
    for text in (table(listed), table(listed, 200)):
        assert [line.split()[0] for line in text.splitlines() if line.startswith("R")] == expected
    assert [row["mark"] for row in rows_of(csv_text(listed, ["sheets"]))] == expected


def test_csv_has_a_row_a_mark_and_plain_numbers(shed: Schedule) -> None:
    text = csv_text(shed, ["sheets"])
    assert text.count("\r\n") == text.count("\n") == 6 + 3
    raked = {row["mark"]: row for row in rows_of(text)}["W2"]
    assert (raked["length"], raked["length mm"]) == ("10' 9-1/2\"", "3289.3")
    assert (raked["width mm"], raked["cover mm"]) == ("965.2", "914.4")
    assert int(raked["area mm2"]) == round(3540.5 * INCH**2)
    assert float(raked["weight kg"]) == pytest.approx(
        volume_between(sheet_over(RAKED)) * 7850e-9, abs=0.00051
    )
    assert raked["cutouts"] == (
        "notch bottom right x 2' 7\", y 0\", 7\" wide, 4' high; hole x 1\", y 2' 6\", 2' wide, 3' high"
    )


def test_json_has_every_figure_in_mm_and_as_shown(shed: Schedule) -> None:
    content = json.loads(json_text(shed))
    assert (content["name"], content["units"]) == ("Shed", "ft-in")
    raked = next(row for row in content["sheets"] if row["mark"] == "W2")
    assert raked["length"] == {"mm": 3289.3, "shown": "10' 9-1/2\""}
    assert raked["top"]["kind"] == "rake"
    assert raked["top"]["left"] == {"mm": 241.3, "shown": '9-1/2"'}
    notch, hole = raked["cutouts"]
    assert (notch["kind"], notch["sides"], hole["kind"], hole["sides"]) == (
        "notch",
        ["bottom", "right"],
        "hole",
        [],
    )
    corner = [1 * INCH, 30 * INCH]
    assert hole["corners"][0] == pytest.approx(corner)
    assert (hole["x"]["mm"], hole["y"]["mm"]) == pytest.approx(tuple(corner))
    assert content["totals"]["count"] == sum(row["count"] for row in content["sheets"]) == 8
    assert {one["name"]: one["end up"] for one in content["placed"]}["slope 2"] == "foot"


def test_a_sheet_that_stands_head_down_is_told_as_it_stands() -> None:
    """The raked sheet on its head, as seen from outside: its long edge, on the bench the right one, is on the
    left; the notch of its foot opens the top; the hole is 38 - 1 - 24 in from the left and 129.5 - 30 - 36
    up. Of a mark that stands both ways the upright ones are told."""
    downs = schedule(Model("downs", "ft-in", (piece("front 1", RAKED, DOWN, "front"),)))
    (row,) = rows_of(csv_text(downs, ["sheets"]))
    assert row["ends"] == 'rake 9-1/2" high left / square'
    assert row["cutouts"] == (
        "hole x 1' 1\", y 5' 3-1/2\", 2' wide, 3' high; notch top left x 0\", y 6' 9-1/2\", 7\" wide, 4' high"
    )
    (told,) = json.loads(json_text(downs))["sheets"]
    assert (told["bottom"]["kind"], told["top"]["kind"]) == ("rake", "square")
    assert told["bottom"]["right"] == {"mm": 241.3, "shown": '9-1/2"'}
    assert told["cutouts"][1]["corners"][0] == pytest.approx([0.0, 81.5 * INCH])
    assert (told["turned"], row["up"], row["ribs"]) == (1, "1 turned", "overlap rib right")
    both = (piece("front 1", RAKED, DOWN, "front"), piece("front 2", RAKED, UP, "front"))
    (row,) = rows_of(csv_text(schedule(Model("both", "ft-in", both)), ["sheets"]))
    assert (row["ends"], row["up"]) == ('square / rake 9-1/2" high right', "1 head up, 1 turned")


def test_a_sheet_without_its_overlap_rib_says_where_its_first_rib_is() -> None:
    """Ripped 20 in from the overlap rib, the rest has its next one 27 in from it, 7 in from the cut; on its
    head, seen from outside, what was right is left: the underlap rib, 1 in from the edge."""
    rest = box(20 * INCH, 0, RIGHT, 2000)
    cells = []
    for place in (UP, DOWN):
        listed = schedule(Model("rip", "ft-in", (piece("front 1", rest, place, "front"),)))
        (row,) = rows_of(csv_text(listed, ["sheets"]))
        cells.append((row["ribs"], row["up"]))
    said = "no overlap rib, first rib at"
    assert cells == [(f'{said} 7"', "1 head up"), (f'{said} 1"', "1 turned")]


def test_markdown_is_a_table_and_its_cells_stay_cells() -> None:
    odd = replace(SHED.pieces[0], labels=(("face", "front"), ("colour", "red | white")))
    text = markdown_text(schedule(Model("odd", "mm", (odd, *SHED.pieces[1:]))))
    lines = [line.replace("\\|", "") for line in text.splitlines() if line.startswith("|")]
    assert len(lines) == 2 + 5 + 1
    assert len({line.count("|") for line in lines}) == 1
    assert "red \\| white" in text


def test_nothing_to_list_is_no_trouble() -> None:
    empty = schedule(Model("empty", "mm"))
    assert (empty.count, empty.area, empty.weight) == (0, 0, 0)
    assert "total      0" in table(empty)
    assert json.loads(json_text(empty))["sheets"] == []
    assert rows_of(csv_text(empty)) == []
