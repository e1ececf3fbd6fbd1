"""The screws and the steel of two starters counted with a pencil on their elevations, and every list of their
orders worked somewhere: here, or in test_orders_by_hand.py. In inches; nothing of the program is asked.

Whole sheets have four pans between their ribs. A row next to a sheet's end is a pair at every rib, 8; a row
between has one a pan, 4. Up a jamb and at a gable's end a screw stands on every line that no other holds
near it.
"""

from __future__ import annotations

from collections import Counter
from math import ceil, floor, hypot

import pytest
from ribwright.order.buying.line import Line
from ribwright.order.buying.order_list import Order, order
from support.starter_buildings import starter_schedule

PAIRS, SINGLES = 8, 4
SPARE = 1.05
SHEET = "sheet screw #12 x 1-1/4 hex head with washer (ST5.5 x 32)"
LONG, SHORT = (f"trim screw #12 x {size} hex head with washer" for size in ("1-1/2", "1-1/4"))
ANGLE, PAN = "trim screw #10 x 1 hex head with washer", "trim screw #10 x 3/4 pan head"
DENSITY, THIN, FLANGE = 490 / 1728, 0.0172, 0.0217
"""lb/in3, in, in."""


@pytest.fixture(scope="module", params=["workshop", "garage"])
def named(request: pytest.FixtureRequest) -> tuple[str, Order]:
    return request.param, order(starter_schedule(request.param))


def lines(wanted: Order, name: str) -> list[Line]:
    return [line for line in wanted.lines if line.list == name]


def bought(*counts: int) -> int:
    return ceil(sum(counts) * SPARE)


def apart(length: float, most: float = 24.0) -> int:
    """Screws evenly along a length, the first and the last 3 in from its ends."""
    return ceil((length - 6) / most) + 1


WHOLE = 2 * PAIRS + 2 * SINGLES  # foot, two girts, head
ROOF = 2 * PAIRS + 3 * SINGLES  # eave, three purlins between, the upper one
GABLE = 2 * PAIRS + 3 * SINGLES  # foot, three girts, rake
END = GABLE - 2, GABLE + 1
"""Of a gable's outer sheets: the upper girt meets the rake before it is at the corner, two places fall away;
at the end of the run one more holds it on each lower girt, and on the upper one a third is left."""


def workshop_walls() -> list[int]:
    """Right: 13 whole sheets, and 12 in with one pan and the outer places of a second, 2 on each line.

    Left: windows 31 to 91 and 271 to 331 from the corner, 48 to 84 up, girts at 44-3/4 and 88-1/4: each has
    three screws up each jamb. Sheets 2 and 9 are sills (foot, girt, sill) and headers. Sheet 1 has a strip
    under and over the window with a screw each; sheet 3 two pans there, a pair on sill and header; sheet 8
    the same, and one on each girt beside the jamb, from which the next is 3 in; sheet 10 both of sheet 1 and
    those.

    Back: four whole sheets a half, and the outer ones. Front: the overhead door 48 to 192 leaves headers
    (header, girt, rake) of three sheets of the left half; sheet 4 has foot 2 and the jamb's 7, two on both
    lower girts, 5 on the header. Sheet 6: foot 5, the jamb 7, girts 3, header 3, 5 on the upper girt, of
    which one is the jamb's. The walk door 264 to 300, 80 high: sheet 8 foot 2, jamb 5, girt 2, header 5;
    sheet 9 foot 5, jamb 5, girt 3, header 3, and 5 on two girts over it."""
    right = [WHOLE] * 13 + [4 * 2]
    piece = 2 * PAIRS + SINGLES
    left = [WHOLE] * 7 + [4 * 2] + [piece] * 4
    left += [WHOLE + 3 + 2, WHOLE + 3 + 2 * 4, WHOLE + 3 + 2 * 4 + 2, WHOLE + 3 + 2 + 2]
    back = [GABLE] * 8 + list(END)
    front = [piece] * 3 + [2 + 7 + 2 * 2 + 5 + SINGLES + PAIRS, END[0]]
    front += [5 + 7 + 2 * 3 + 3 + 5 + PAIRS, GABLE, 2 + 5 + 2 + 5 + 2 * SINGLES + PAIRS]
    front += [5 + 5 + 3 + 3 + 2 * 5 + PAIRS, END[1]]
    return [sum(right), sum(left), sum(back), sum(front)]


def garage_walls() -> list[int]:
    """26 ft: eight whole sheets and 23 in of a ninth, two pans and a place: 5 and 3 on its lines.

    Left: the window 130 to 178, 44 to 80 up, girts at 38-3/4 and 76-1/4. Sheet 4: three pans' places left of
    it on the upper girt, 3 on sill and header, 3 up the jamb. Sheet 5: the upper girt ends at its jamb; 7 on
    sill and header, 3 up the jamb and one beside it on the lower girt. Right: the door 26 to 62, 80 high:
    sheet 7 has one over it on the header, 4 up the jamb over the foot's; sheet 8 is a header of 7 and a pair
    row, down to the slab at its far edge by a jamb of 5.

    Gables from a corner, posts behind; the overhead door 48 to 240, 84 high: sheet 2 as in the workshop with
    a jamb of 5; four headers; sheet 7 with foot 2, jamb 5, one on each lower girt, header 5, upper girt 5."""
    last = 2 * 5 + 2 * 3
    left = [WHOLE] * 6 + [WHOLE - 1 + 3 + 2 * 3, 2 * PAIRS + 5 + 2 * 7 + 3, last]
    right = [WHOLE] * 6 + [WHOLE + 4 + 1, 5 + 7 + PAIRS, last]
    back = [GABLE] * 6 + list(END)
    front = [2 + 5 + 2 * 2 + 5 + SINGLES + PAIRS, *[2 * PAIRS + SINGLES] * 4, 2 + 5 + 2 + 5 + 5 + PAIRS, *END]
    return [sum(left), sum(right), sum(back), sum(front)]


def test_the_screws(named: tuple[str, Order]) -> None:
    """Corner trim: in both legs at base rail and two girts, on the side walls through the ends of the gables'
    sheets too, so longer. Rake trims: in both slopes' three lower purlins at both ends, and down the gable on
    the rake angle from the strut (3 in) on. Ridge cap: in every pan that neither rake trim covers. Door
    angles: up both jambs and along the head. A drip's pan heads under every second rib over the door, since
    27 in would be over 24."""
    name, wanted = named
    if name == "workshop":
        walls, roof = workshop_walls(), 2 * (13 * ROOF + 2 * 5)
        slope, length, jamb, head, ribs = 180 * hypot(1, 1 / 4), 480, 120, 144, 16
    else:
        walls, roof = garage_walls(), 2 * (8 * ROOF + 2 * 5 + 3 * 3)
        slope, length, jamb, head, ribs = 144 * hypot(1, 1 / 3), 312, 84 + 1.5, 192, 21
    corner = 4 * 3
    leg = 2.4375
    # Ribs at 1, 10, 19 ...: pans between two that stand clear of both rake trims' legs.
    pans = floor((length - leg - 9 - 1) / 9)
    rakes = 4 * (apart(slope - 3) + 3)
    by_hand = {
        SHEET: {bought(*walls), bought(roof)},
        LONG: {bought(corner)},
        SHORT: {bought(corner, rakes, 2 * pans)},
        ANGLE: {bought(2 * apart(jamb), apart(head))},
        PAN: {bought(ceil(ribs / 2))},
    }
    found: dict[str, set[int]] = {}
    for line in lines(wanted, "screws"):
        kind = next(kind for kind in by_hand if line.kind.startswith(kind))
        found.setdefault(kind, set()).add(int(line.quantity))
    assert found == by_hand


def test_the_steel(named: tuple[str, Order]) -> None:
    """Of 20, 24 and 40 ft, one length a section, as few feet as will do and then as few sticks.

    Workshop. Tubes of columns and rafters: eight of 40 ft, see test_orders_by_hand.py. Knees: ten of 3 ft
    4-3/8 are 33.6 ft, one of 40 or two of 20. Base rails 40, 40, 30 + 5'8 + 3'10, and 4'10 that fits to none:
    4. Cees: four girts and eight purlins of 40 ft; the others are 233 ft, more than five sticks hold: six.

    Garage. Tubes: eight columns of 9 ft 2-3/4, eight rafters of 12 ft 3-9/16, a post of 12 ft 8-1/2: 185 ft,
    so five of 40; of 24 ft the post alone and eight of a rafter and a column are 216. Knees: eight of 3 ft
    5-11/16. Base rails 26 + 3'10 + 3'10 + 2, 24, 20'8: 3. Cees: nine of 26 ft, two of 24, of 22'4 and of 20'8
    are each more than half of 40, so 15; what is left of them holds all others. Rake angles: four of 12 ft
    6-3/4, three to a stick of 40. Plates: at corners four, the others."""
    name, wanted = named
    found = {(line.kind, line.size): int(line.quantity) for line in lines(wanted, "members")}
    if name == "workshop":
        rest = 2 * 360 + 2 * 334.4 + 166 + 68 + 58 + 2 * 46 + 2 * 131 + 2 * 87.3 + 4 * 41.7
        rest += 144 + 2 * 60 + 36 + 2 * 60
        assert 5 * 480 < rest < 6 * 480
        counts, strut, inner = [8, 1, 4, 12 + 6, 2, 2], "3/12", 6
    else:
        assert 4 * 40 < 8 * 9.23 + 8 * 12.3 + 12.71 < 5 * 40
        counts, strut, inner = [5, 1, 3, 9 + 2 + 2 + 2, 2, 2], "4/12", 5
    kinds = [
        "tube 4 x 4 x 0.12 in",
        "tube 2 x 2 x 0.083 in",
        "angle 2 x 2 x 0.075 in",
        "cee 4 x 2 x 0.059 in",
    ]
    kinds += [f"cee to the pitch 6 x 2 x 0.059 in at {strut}", "angle 4.075 x 2 x 0.075 in"]
    plates = {("plate 4 x 0.375 in", '10", BP1'): 4, ("plate 4 x 0.375 in", '10", BP2'): inner}
    assert found == {(kind, "40'"): count for kind, count in zip(kinds, counts, strict=True)} | plates


def test_the_garages_clips() -> None:
    """Four frames, a post behind. Purlins 8 x 4, struts 2 x 4. Girts: two a side wall, each on every column
    however it is cut; behind two on corners and post, the third on both rafters and the post; in front four
    stubs on a corner each, the third on both rafters. At jambs: ends of girts, four at the big door, four at
    the small one, two at the window; the big door's two heads under the third girt, the window's two feet on
    the lower one; its heads and the small door's under the strut. Joints: a rafter on each column, two at
    the ridge, a knee to both; the post to both rafters."""
    clips = {line.kind: int(line.quantity) for line in lines(order(starter_schedule("garage")), "clips")}
    girts = 2 * 2 * 4 + (2 * 3 + 3) + (4 + 2)
    jambs = {"a girt": 4 + 4 + 2 + 2 + 2, "an eave strut": 2 + 2, "a header": 2 * 3, "a sill": 2}
    by_hand = {f"clip of {what} on a frame": n for what, n in (("a purlin", 32), ("a girt", girts))}
    by_hand |= {"clip of an eave strut on a frame": 8}
    by_hand |= {f"clip of {what} at a jamb": n for what, n in jambs.items()}
    by_hand |= {"bolt of a clip": 2 * sum(by_hand.values()), "joint within a frame": 4 * (2 + 1 + 4) + 2}
    assert clips == {f"{kind}, by the engineer": count for kind, count in by_hand.items()}


def test_feet_and_weight_of_every_line(named: tuple[str, Order]) -> None:
    """Lineal feet are sticks times their length, a sheet's square feet 3 times that. A sheet is bent from 38
    in and what its ribs take more: 4 whole and two that end 1 in from their middle, 8 low ones. Trims by
    their legs' sum, less a hair at the bends; the garage's base trim goes 1-1/2 in on, into its ledge."""
    name, wanted = named
    for line in wanted.lines:
        if line.list in ("sheets", "trims", "members"):
            feet = line.length / 304.8
            assert feet * 12 == pytest.approx(line.quantity * _inches(line.size), rel=1e-6), line.item
            if line.list == "sheets":
                assert line.area / 304.8**2 == pytest.approx(3 * feet)
    flank, low = (2.5 - 0.625) / 2, (1 - 0.375) / 2
    more = 2 * (hypot(flank, 0.75) - flank)
    cut = (1 - 0.625 / 2) / flank  # of the outer flank of the outer two
    strip = 38 + more * (3 + 1 + cut) + 8 * 2 * (hypot(low, 0.125) - low)
    for line in lines(wanted, "sheets"):
        pounds = line.length / 25.4 * strip * THIN * DENSITY
        assert line.weight / 0.45359237 == pytest.approx(pounds, rel=2e-3)
    base = 2.25 + (1.5 if name == "garage" else 0.0)
    girths = {"base trim": base, "corner trim": 11.25, "jamb angle": 6, "head angle": 4.75, "drip": 3.75}
    told = [line for line in lines(wanted, "trims") if line.kind in girths]
    assert {line.kind for line in told} == set(girths)
    for line in told:
        square = line.length / 25.4 * girths[line.kind]
        assert line.area / 25.4**2 == pytest.approx(square, rel=0.01)
        assert line.weight / 0.45359237 == pytest.approx(square * FLANGE * DENSITY, rel=0.03)


def _inches(size: str) -> float:
    """Of `12' 6-1/2"`, as it is written; what comes after is no length."""
    size = size.partition(",")[0]
    feet, _, rest = size.rpartition("'")
    whole, _, part = rest.strip(' "').partition("-") if "-" in rest else (rest.strip(' "'), "", "")
    top, _, bottom = part.partition("/")
    return 12 * float(feet or 0) + float(whole or 0) + (float(top) / float(bottom) if part else 0.0)


def test_no_list_is_left_unworked(named: tuple[str, Order]) -> None:
    """Sheets, trims, closures, openings, anchors, paint and concrete are in test_orders_by_hand.py."""
    _, wanted = named
    there = {"sheets", "trims", "closures", "openings", "anchors", "paint", "slab"}
    assert Counter(line.list for line in wanted.lines).keys() == there | {"screws", "members", "clips"}
