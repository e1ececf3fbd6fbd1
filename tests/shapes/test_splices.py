"""Steel by stock: lines of framing are spliced on frames and posts; nothing is longer than it is bought."""

from __future__ import annotations

from functools import cache
from itertools import pairwise

import pytest
from ribwright.envelope.splices import in_stock
from ribwright.intake import parse
from ribwright.layout import lay_out
from ribwright.order.buying.order_list import buying_on, order
from ribwright.order.lists.schedule import Schedule, schedule
from ribwright.pieces import Model
from ribwright.raising import raise_building
from ribwright.solids.placed import placed_triangles
from support.judged import judged
from support.refused import refusal

FT = 304.8
LONG = (
    'width = "60 ft"\nlength = "100 ft"\neave_height = "12 ft"\npitch = "3/12"\n[frame]\nspacing = "20 ft"\n'
)


@cache
def model() -> Model:
    return raise_building(parse(LONG, "long")).model


@cache
def lists() -> Schedule:
    return schedule(model())


@pytest.mark.parametrize(
    ("length", "bays", "stock", "pieces"),
    [
        (100, 20, 40, [20, 40, 40]),  # three at least, since two of 40 are too short
        (100, 10, 40, [30, 30, 40]),  # of three the longest is 40 ft at least: tens make no 33
        (60, 20, 40, [20, 40]),
        (60, 15, 40, [30, 30]),
        (39, 13, 40, [39]),
        (100, 20, 24, [20] * 5),
        (90, 30, 24, [90]),  # nothing that helps: `check` says so
    ],
)
def test_lines_are_cut_into_the_fewest_pieces_on_frames(
    length: float, bays: float, stock: float, pieces: list[float]
) -> None:
    backs = [bays * FT * k for k in range(1, round(length / bays))]
    found = in_stock((0.0, length * FT), backs, stock * FT)
    assert sorted(round((b - a) / FT, 9) for a, b in found) == pieces
    assert all(a in (0.0, *backs) for a, _ in found)


def test_a_building_of_60_by_100_feet_can_be_bought() -> None:
    """Bays of 20 ft, so side lines of 40, 40 and 20; gables are divided on a post in their middle."""
    for bought in order(lists()).members:
        assert bought.plan.proven
        assert {round(stick.stock / FT, 6) for stick in bought.plan.sticks} <= {20, 24, 40}
    longest = max(item.length for item in lists().listed("members"))
    assert longest < 40 * FT
    purlins = [item.length / FT for item in lists().listed("members") if item.role == "purlin"]
    assert sorted(round(length) for length in set(purlins)) == [20, 40, 40]


def test_members_butt_an_eighth_of_an_inch_apart_on_a_frames_centre() -> None:
    """Along the lowest purlin of a slope, front to back, off its triangles."""
    told = [piece for piece in model().pieces if piece.name.startswith("left slope purlin 1")]
    spans = [(points[:, 1].min(), points[:, 1].max()) for points, _ in placed_triangles(told)]
    joints = [(end, start) for (_, end), (start, _) in pairwise(sorted(spans))]
    assert len(joints) == 2
    for end, start in joints:
        assert start - end == pytest.approx(25.4 / 8, abs=1e-6)
        assert ((start + end) / 2) % (20 * FT) == pytest.approx(0.0, abs=1e-6)


def test_a_spliced_building_is_sound() -> None:
    short = 'width = "18 ft"\nlength = "26 ft"\neave_height = "8 ft"\npitch = "3/12"\n'
    more = '[framing]\nstock = ["14 ft"]\n[frame]\nspacing = "13 ft"\n'
    assert judged(parse(short + more, "short")).faults == {}


@pytest.mark.parametrize(
    ("keys", "what"),
    [
        ('width = "100 ft"\neave_height = "10 ft"\n', "at least 51' 6-1/2\", as long as the rafters"),
        (
            'width = "20 ft"\neave_height = "42 ft"\nsheets.longest = "60 ft"\n',
            "at least 44' 6\", as long as the gable posts",
        ),
        (
            'width = "20 ft"\neave_height = "8 ft"\nframe.spacing = "20 ft"\nframing.stock = ["15 ft"]\n',
            "at least 20', as long as a bay of the right, from frame to frame",
        ),
    ],
)
def test_what_no_splice_helps_is_refused_with_the_length_that_would_do(keys: str, what: str) -> None:
    problem = refusal(f'length = "100 ft"\npitch = "3/12"\n{keys}')
    assert problem.key == "framing.stock"
    assert what in problem.remedy


OWN = """width = "30 ft"
length = "60 ft"
eave_height = "10 ft"
pitch = "3/12"
frame.spacing = "15 ft"
[framing]
girt_stock = ["30 ft"]
purlin_stock = ["15 ft", "20 ft"]
"""


def test_members_that_come_in_lengths_of_their_own_are_spliced_and_bought_in_those() -> None:
    """Bays of 15 ft: girts over two of them, purlins over one, struts, which come in 40 ft, over two.
    Girts and purlins are of one section, and are bought apart."""
    listed = schedule(raise_building(parse(OWN, "own")).model)
    longest = {
        role: max(item.length for item in listed.items if item.role == role) / FT
        for role in ("girt", "purlin", "eave strut")
    }
    assert longest == pytest.approx({"girt": 30, "purlin": 15, "eave strut": 30}, abs=0.02)
    sticks = {
        role: {round(stick.stock / FT, 6) for stick in line.plan.sticks}
        for line in order(listed, buying_on(listed.terms)).members
        for role in {item.role for item in line.items}
    }
    assert (sticks["girt"], sticks["purlin"], sticks["eave strut"]) == ({30}, {15}, {40})
    trim_stock = buying_on(listed.terms, stock=(12 * FT,))
    assert trim_stock.sticks("girt") == (30 * FT,) and trim_stock.sticks("corner trim") == (12 * FT,)


def test_every_judge_passes_members_of_their_own_lengths() -> None:
    assert judged(parse(OWN, "own")).faults == {}


@pytest.mark.parametrize(
    ("key", "longest", "what"),
    [
        ("purlin_stock", "15'", "a bay of the right slope, from frame to frame"),
        ("girt_stock", "15'", "a bay of the right, from frame to frame"),
        ("rafter_stock", "15' 5-9/16\"", "the rafters"),
    ],
)
def test_lengths_of_their_own_that_are_too_short_are_refused(key: str, longest: str, what: str) -> None:
    text = OWN.split("[framing]", maxsplit=1)[0] + f'[framing]\n{key} = ["12 ft"]\n'
    problem = refusal(text)
    assert problem.key == f"framing.{key}"
    assert problem.remedy.startswith(f"one of at least {longest}, as long as {what}")


def test_a_rake_trim_is_screwed_to_every_purlin_and_not_to_the_strut_in_pieces_below_them() -> None:
    """Struts of 50 ft in 12 ft 6 in bays come in four pieces: rows of one height, none a purlin's."""
    text = 'width = "24 ft"\nlength = "50 ft"\neave_height = "10 ft"\npitch = "4/12"\n'
    laid = lay_out(parse(text + '[frame]\nspacing = "12 ft 6 in"\n[framing]\nstock = ["16 ft"]\n', "long"))
    assert [finding for finding in laid.findings if finding.fault] == []
    rows = [
        len(part.row) for part in laid.parts if "slope rake trim" in part.name and part.role == "trim screw"
    ]
    lines = {part.name[:-1] for part in laid.parts if part.role == "purlin" and part.name.startswith("left")}
    assert rows == [len(lines) - 1] * 4, "at the uppermost lies the ridge cap"
