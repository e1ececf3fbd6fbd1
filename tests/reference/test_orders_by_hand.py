"""The orders of two starters worked by hand, as a buyer would with a pencil: the arithmetic is here, in
inches, and leans on nothing of the program; the tool's lines must be the same, line by line.

Screws, steel and weights are in test_screws_and_steel_by_hand.py.
"""

from __future__ import annotations

from collections import Counter
from math import ceil, floor, hypot

import pytest
from ribwright.order.buying.order_list import Order, order
from ribwright.units import format_length
from support.starter_buildings import starter_schedule

SHORT, LONG, LAP, COVER = 120.0, 144.0, 3.0, 36.0
"""Trim comes in 10 and 12 ft."""
SHEET, FLANGE, RIB = 0.0172, 0.0217, 0.75
LIFT = 2.1 * FLANGE
"""Wall sheets stand on the base trim's lying leg and a hair."""
CORNER = RIB + FLANGE - 0.005
"""A trim runs past the steel at a corner by the sheet and the corner trim: 0.7667."""
OVER = RIB + 2 * SHEET + 4.1 * FLANGE
"""From the steel to the outside of the trim over a gable's head, and as much from the roof's to the ridge
cap's."""
NICK = 0.03
"""A folded end stands a hair before what it closes."""


def size(inches: float) -> str:
    """A length as it is ordered: that of a sheet cut on site rounded up to half an inch."""
    return format_length(ceil(2 * inches - 1e-6) / 2 * 25.4, "ft-in")


def whole(inches: float) -> float:
    """The half inches within a length: what a wall's square sheet comes in."""
    return floor(2 * inches) / 2


def across(length: float) -> int:
    """Sheets that a run from a corner takes: the last lap rib is 1 in in."""
    return ceil((length - 2) / COVER)


def low_head(eave: float, pitch: float) -> float:
    """Top of a side wall's sheet: under the roof over its overlap rib, 1/8 in clear."""
    return eave - (FLANGE + RIB + 2 * SHEET) * pitch - 0.125


def roof(width: float, pitch: float) -> float:
    """Half the width and 2 in of overhang, along the slope, less 1 in of ridge gap: the nearest half inch."""
    return round(2 * ((width / 2 + 2) * hypot(1, pitch) - 1)) / 2


def run(length: float) -> list[float]:
    """Pieces of a run: full sticks, each lapped by the next, and what is left; of the sticks that make the
    fewest, and with as many of both those of which less is bought. None is under 24 in here."""
    ways = []
    for stick in (SHORT, LONG):
        count = max(1, ceil((length - LAP) / (stick - LAP)))
        pieces = [stick] * (count - 1) + [length - (count - 1) * (stick - LAP)]
        ways.append((count, sum(SHORT if piece <= SHORT else LONG for piece in pieces), pieces))
    pieces = min(ways)[2]
    assert len(pieces) == 1 or pieces[-1] >= 24
    return pieces


def fitted(pieces: list[float], stick: float) -> int:
    """First fit, longest first; for lists as short as these a pencil sees that none does with fewer."""
    left: list[float] = []
    for piece in sorted(pieces, reverse=True):
        for number, free in enumerate(left):
            if piece <= free + 0.01:
                left[number] -= piece
                break
        else:
            left.append(stick - piece)
    return len(left)


def sticks(*pieces: float) -> Counter[str]:
    """How many of 10 and of 12 ft: whole ones as they are, longer pieces from 12 ft; shorter ones from
    whichever comes to less, and with as much from fewer sticks."""
    whole = [piece for piece in pieces if piece in (SHORT, LONG)]
    short = [piece for piece in pieces if piece < SHORT]
    long = [piece for piece in pieces if SHORT < piece < LONG]
    ways = [(fitted(short, SHORT), fitted(long, LONG)), (0, fitted(short + long, LONG))]
    tens, twelves = min(ways, key=lambda way: (10 * way[0] + 12 * way[1], sum(way)))
    return +Counter({"10'": tens + whole.count(SHORT), "12'": twelves + whole.count(LONG)})


def tool(like: str) -> Order:
    return order(starter_schedule(like))


def said(wanted: Order, name: str) -> Counter[tuple[str, str]]:
    """(kind, size) of a list's lines, with how many."""
    return Counter({(line.kind, line.size): int(line.quantity) for line in wanted.lines if line.list == name})


@pytest.fixture(scope="module")
def workshop() -> Order:
    return tool("workshop")


@pytest.fixture(scope="module")
def garage() -> Order:
    return tool("garage")


def trims(by_hand: dict[str, Counter[str]]) -> Counter[tuple[str, str]]:
    return Counter({(kind, size): count for kind, of in by_hand.items() for size, count in of.items()})


def sheets(*lengths: float, kind: str) -> Counter[tuple[str, str]]:
    return Counter((f"{kind} sheet 36 x 9 x 3/4", size(length)) for length in lengths)


def test_the_workshops_sheets(workshop: Order) -> None:
    """30 x 40 ft, eave 132, 3/12. Walls: 14 a side of 132 - 0.8061/4 - 1/8 - 0.0456 = 131.63, so 131.5. Each
    window of the left wall takes a whole sheet's pan: a sill piece to 48 - 0.147 and a header 1/4 over its
    drip's shelf, so 12 and 2 x 2 there. Gables, from the centre: the peak's two to 177 - 1/8; then high
    edges 35, 71, 107, 143 from the centre, each a quarter of that lower. The 12 x 10 ft door takes three
    whole sheets of the front's left half and leaves headers: the peak's, and those with high edges at 35 and
    71. The windows' headers and the latter two are under 4 ft, which no mill makes: two from one as long as
    both."""
    head = whole(low_head(132, 1 / 4) - LIFT)
    cut = 0.125 + FLANGE
    side = [head] * (14 + 12) + 2 * [48 - cut - LIFT]
    tops = [177 - 0.125 - high / 4 for high in (0, 35, 71, 107, 143)]
    back = 2 * [top - LIFT for top in tops]
    over = 120 + 0.8 + 0.25 + LIFT  # the header sheets' feet, over the head trim
    front = [top - LIFT for top in tops[3:] + tops] + [tops[0] - over]
    longer = sheets(2 * (head + LIFT - 84 - 0.25 - LIFT), tops[1] + tops[2] - 2 * over, kind="wall")
    by_hand = Counter(
        {(kind, f"{long}, cut to shorter ones"): count for (kind, long), count in longer.items()}
    )
    by_hand += sheets(*side, *back, *front, kind="wall")
    by_hand += sheets(*[roof(360, 1 / 4)] * 2 * across(480), kind="roof")
    assert said(workshop, "sheets") == by_hand


def test_the_garages_sheets(garage: Order) -> None:
    """24 x 26 ft, eave 114, 4/12, feet in a ledge 1-1/2 deep: 9 a side. The gables start from opposite hands,
    so that a back sheet and a front one of the next length are the two sides of one cut: the back's 1-1/2
    longer one, the front's, less the drop of 38/3. The 16 ft door leaves headers before the four in the
    middle; the peaks go alone."""
    foot = -1.5 + LIFT
    side = [whole(low_head(114, 1 / 3) - foot)] * 2 * across(312)
    tops = [114 + 48 - 0.125 + 1 / 3 * (1 - far) for far in (0, 36, 72, 108)]
    peak = 162 - 0.125
    assert tops[0] > peak  # the sheet that straddles the ridge by its leg is a peak
    raked = [top - foot for top in tops[1:]]
    over = 84 + 0.8 + 0.125 + FLANGE
    pairs = [raked[1] + raked[0], raked[2] + raked[1], raked[2] + tops[1] - over]
    blanks = [pair - 38 / 3 for pair in pairs] * 2
    assert [round(one, 1) for one in blanks[:3]] == [278.7, 254.7, 180.3]
    by_hand = sheets(*side, *blanks, *[peak - foot, peak - over] * 2, kind="wall")
    assert said(garage, "sheets") == by_hand + sheets(*[roof(288, 1 / 3)] * 2 * across(312), kind="roof")


def test_the_workshops_trims(workshop: Order) -> None:
    """Base: both sides and the back whole, the front between a corner and the big door's angle (2 in), that
    and the small door's J (2 in), and on to the corner. Corners rise to 132.86 in. Eaves and ridge 481.7 in,
    rakes 187.8, and what their ends are folded from: at the back over the first rib, 1 + 1-1/4 in, in front
    as wide as the leg, since the run ends 2 in past a rib; both ends of the ridge as deep as it stands. J:
    two windows' sills of 60 with 1 in more at each end, their legs 36 and 1 less what falls under the drip,
    36.83, the door's legs 79.83. Angles: jambs to the underside of the header, 10 ft; the head 12 ft. Drips:
    1-1/2 in past each side of two windows and two doors."""
    base = [*run(480 + 2 * CORNER) * 2, *run(360 + 2 * CORNER), 48 + CORNER - 2, 72 - 4, 60 + CORNER - 2]
    rake = 182 * hypot(1, 1 / 4) + 0.21 + NICK
    by_hand = {
        "base trim": sticks(*base),
        "corner trim": sticks(*run(132.86) * 4),
        "eave trim": sticks(*run(481.7) * 2),
        "rake trim": sticks(*run(rake + OVER + 2.25) * 2, *run(rake + OVER + 3.25) * 2),
        "ridge cap": sticks(*run(481.8 + 2 * OVER)),
        "j trim": sticks(*[36.83] * 4, 79.83, 79.83),
        "sill trim": sticks(62, 62),
        "jamb angle": sticks(120, 120),
        "head angle": sticks(144),
        "drip": sticks(*run(147), 63, 63, 39),
    }
    assert said(workshop, "trims") == trims(by_hand)


def test_the_garages_trims(garage: Order) -> None:
    """Base: the left side and the back whole; the front's two ends beside the 16 ft door; the right side in
    two, beside the small door at 26 in. Corners 116.7; eaves and ridge 313.7; rakes 154.2, folded at their
    feet over the first rib, or, where the last stands 5 in in, over the edge. J: the door's legs 81.33 down
    to the ledge; a window of 48 x 36. Jambs 85.5, heads 192: 10 ft and 6 ft 3 in."""
    base = [*run(312 + 2 * CORNER), *run(288 + 2 * CORNER), 48 + CORNER - 2, 48 + CORNER - 2]
    base += [26 + CORNER - 2, *run(250 + CORNER - 2)]
    rake = 146 * hypot(1, 1 / 3) + 0.28 + NICK
    by_hand = {
        "base trim": sticks(*base),
        "corner trim": sticks(*[116.75] * 4),
        "eave trim": sticks(*run(313.7) * 2),
        "rake trim": sticks(*run(rake + OVER + 2.25) * 2, *run(rake + OVER + NICK) * 2),
        "ridge cap": sticks(*run(313.8 + 2 * OVER)),
        "j trim": sticks(81.33, 81.33, 36.83, 36.83),
        "sill trim": sticks(50),
        "jamb angle": sticks(85.5, 85.5),
        "head angle": sticks(*run(192)),
        "drip": sticks(*run(195), 39, 51),
    }
    assert said(garage, "trims") == trims(by_hand)


def test_closures_doors_anchors_and_paint(workshop: Order, garage: Order) -> None:
    """480 / 36 and 312 / 36, rounded up: 14 and 9 strips a line, inside at two eaves, outside at two eaves
    and twice at the ridge. Frames each 10 ft: five, and four with a gable post; four rods a plate.
    A framed door is 4 and 2 in smaller than its rough opening, a window 1/2 in each way."""
    for wanted, strips, plates in ((workshop, ceil(480 / 36), 5 * 2), (garage, ceil(312 / 36), 4 * 2 + 1)):
        assert said(wanted, "closures") == {
            ("outside closure strip 36 x 9 x 3/4", "3'"): 4 * strips,
            ("inside closure strip 36 x 9 x 3/4", "3'"): 2 * strips,
        }
        assert sum(said(wanted, "anchors").values()) == 4 * plates
        pens = [line.colour for line in wanted.lines if line.list == "paint"]
        assert len(pens) == len(set(pens)) == 2
    walk = ("walk door with its frame", "2' 8\" x 6' 6\" nominal, 3' x 6' 8\" rough opening")
    window = ("window", "4' 11-1/2\" x 2' 11-1/2\" nominal, 5' x 3' rough opening")
    doors = {("overhead door", "12' x 10'"): 1, walk: 1, window: 2}
    assert said(workshop, "openings") == doors
    window = ("window", "3' 11-1/2\" x 2' 11-1/2\" nominal, 4' x 3' rough opening")
    doors = {("overhead door", "16' x 7'"): 1, walk: 1, window: 1}
    assert said(garage, "openings") == doors


def test_the_clips(workshop: Order, garage: Order) -> None:
    """Purlins: four a slope over five frames, and over four. Girts of the workshop: two a side wall on five
    columns; a gable's two lower ones on two corners, in front cut by the big door at both levels, its third
    on the rafters. At the jambs: eight heads under girts, four windows' feet on them, six ends of girts that
    openings cut; two ends of a header, or of a sill. Bolts: two an end. Joints of each frame: a rafter on
    each column, two at the ridge, a knee to both."""
    clips = said(workshop, "clips")

    def of(what: str) -> int:
        return clips[f"clip of {what}, by the engineer", ""]

    girts = 2 * 2 * 5 + 2 * (2 * 2 + 2)
    heads, feet, cut = 2 * 4, 2 * 2, 6
    assert of("a purlin on a frame") == 8 * 5
    assert of("a girt on a frame") == girts
    assert of("an eave strut on a frame") == 2 * 5
    assert of("a girt at a jamb") == heads + feet + cut
    assert (of("a header at a jamb"), of("a sill at a jamb")) == (2 * 4, 2 * 2)
    held = 40 + girts + 10 + heads + feet + cut + 8 + 4
    assert clips["bolt of a clip, by the engineer", "2 for each end that is held"] == 2 * held
    assert clips["joint within a frame, by the engineer", ""] == 5 * (2 + 1 + 4)
    assert said(garage, "clips")["clip of a purlin on a frame, by the engineer", ""] == 8 * 4


def test_the_concrete(workshop: Order, garage: Order) -> None:
    """4 in under everything out to 1-13/16 past the steel; the garage's less its ledge of 1-1/2, which stops
    at the doors of 16 and 3 ft. With 5 % and rounded up to quarters of a yard: 15.08 is 16, 7.83 is 8-1/4."""
    out = 1.8125
    whole = (360 + 2 * out) * (480 + 2 * out) * 4 / 46656
    ring = out * (2 * (288 + 312) + 4 * out) - out * (192 + 36)
    ledged = ((288 + 2 * out) * (312 + 2 * out) * 4 - ring * 1.5) / 46656
    for wanted, yards in ((workshop, whole), (garage, ledged)):
        (line,) = [line for line in wanted.lines if line.list == "slab"]
        assert line.size.startswith(f"{yards:.2f} yd3 drawn")
        assert line.quantity == ceil(round(yards, 2) * 1.05 * 4) / 4


def test_the_steel_by_counts(workshop: Order, garage: Order) -> None:
    """Workshop: five frames of two columns, two rafters, two knees, ten plates. Purlins: 5 spaces of at most
    4 ft on a slope of 15 ft 5, so four and the strut; rake angles two a gable; headers and sills of three
    openings and a door. Garage: four frames, a post behind.

    Of 20, 24 and 40 ft: the workshop's two struts of 40 ft are two of 40. Its four rake angles of over 15 ft
    are two of 40 ft or four of 20, 80 ft either way, so two. Its ten columns and ten rafters of one tube,
    over 10 and over 15 ft: of 24 ft one takes two columns or a rafter, 15 sticks; of 20 ft one of either, 20;
    of 40 ft a rafter and two columns, five times, and the five rafters left three more: 8. That is 360, 400
    and 320 ft."""
    counts: list[Counter[str]] = []
    for wanted in (workshop, garage):
        found: Counter[str] = Counter()
        for item in (item for bought in wanted.members for item in bought.items):
            found[item.role] += item.count
        found["base plate"] = sum(int(line.quantity) for line in wanted.lines if "base plate" in line.names)
        counts.append(found)
    frames = ("column", "rafter", "knee", "base plate", "purlin", "rake angle", "eave strut")
    assert [counts[0][name] for name in frames] == [10, 10, 10, 10, 8, 4, 2]
    assert [counts[1][name] for name in (*frames, "post")] == [8, 8, 8, 9, 8, 4, 2, 1]
    sticks = {line.names[0]: (line.quantity, line.size) for line in workshop.lines if line.list == "members"}
    assert [sticks[name] for name in ("eave strut", "rake angle", "column")] == [
        (2, "40'"),
        (2, "40'"),
        (8, "40'"),
    ]
