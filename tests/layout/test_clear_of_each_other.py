"""No two pieces share volume, and every solid is valid: the starters, and what is made to fit."""

from __future__ import annotations

import pytest
from ribwright.intake import parse, starters
from ribwright.raising import raise_building
from ribwright.solids.properties import is_valid, triangles
from support.clashes import clashes
from support.starter_buildings import starter_raised

INCH = 25.4


@pytest.mark.parametrize("name", starters())
def test_a_starter_stands_without_clashes_or_findings(name: str) -> None:
    raised = starter_raised(name)
    assert [finding for finding in raised.findings if finding.fault] == []
    assert all(is_valid(piece.solid) for piece in raised.model.pieces)
    assert clashes(raised.model.pieces) == []


SMALL = 'width = "12 ft"\nlength = "12 ft"\neave_height = "8 ft"\npitch = "3/12"\n'
LONG = SMALL.replace('length = "12 ft"', 'length = "24 ft"')
TALL = SMALL.replace('"8 ft"', '"12 ft"')


def opening(kind: str, wall: str, size: str, from_left: str, sill: str = "0 in") -> str:
    width, height = size.split(" x ")
    return (
        f'[[opening]]\nkind = "{kind}"\nwall = "{wall}"\nwidth = "{width}"\nheight = "{height}"\n'
        f'from_left = "{from_left}"\nsill = "{sill}"\n'
    )


MADE_TO_FIT = {
    "a rafter wider than its column": SMALL + '[frame]\nrafter = "tube 3.105x4.274x0.1875"\n',
    "a knee wider than its column": SMALL + '[frame]\nknee = "tube 3.587x5.746x0.25"\n',
    "a column of a light stud": SMALL + '[frame]\ncolumn = "tube 3.5x1.625x0.059"\n',
    "a wide rafter between flush girts": LONG
    + '[frame]\nrafter = "tube 4x6x0.1875"\n[framing]\ngirts = "flush"\neave_strut = "cee 8x2x0.059"\n',
    "a door as near to the corner as its jamb may be": LONG
    + '[frame]\ncolumn = "600S162-54"\n'
    + opening("walk door", "right", "3 ft x 6 ft 8 in", "6 in"),
    "a trim of the least thickness": SMALL
    + '[sheets]\nflange = "0.012 in"\n'
    + opening("overhead door", "front", "3 ft x 6 ft", "3 ft"),
    "a trim of the greatest thickness": TALL
    + '[sheets]\nflange = "1/16 in"\n[trim]\nstock = ["4 ft"]\ncorner_stock = ["10 ft"]\n'
    + '[framing]\nheader = "cee 4x2.5x0.059"\n'
    + opening("overhead door", "front", "4 ft x 8 ft", "3 ft"),
    "a tall door beside a ledge": TALL
    + '[slab]\nledge_depth = "1-1/2 in"\n[trim]\nstock = ["4 ft"]\ncorner_stock = ["10 ft"]\n'
    + opening("walk door", "left", "2 ft x 8 ft", "1 ft"),
    "a sheet cut as near to a door as it may": SMALL
    + '[sheets]\ncut_clearance = "1/16 in"\n'
    + opening("walk door", "front", "3 ft x 6 ft", "4 ft"),
    "roof sheets that end at the eave trim": SMALL + '[sheets]\noverhang = "1-1/8 in"\n',
    "roof sheets as far past the eave as they go": SMALL + '[sheets]\noverhang = "4 in"\n',
    "a ledge as deep as the slab lets it": SMALL + '[slab]\nledge_depth = "2 in"\n',
    "feet as high as they may hang": SMALL + '[sheets]\nfoot_gap = "5/8 in"\n',
    "flush girts and a post just wide enough": SMALL
    + '[frame]\npost = "cee 3.45x2.0625x0.0713"\n[framing]\ngirts = "flush"\n',
    "a base trim of short sticks with long laps": SMALL.replace('length = "12 ft"', 'length = "30 ft"')
    + '[trim]\nlap = "12 in"\nstock = ["4 ft"]\ncorner_stock = ["10 ft"]\n'
    + opening("framed opening", "left", "40 in x 52 in", "17 in"),
    "an overhead door beside a base plate": LONG
    + opening("overhead door", "left", "7 ft x 6 ft", "5 in").replace('"5 in"', '"8 ft 5 in"'),
    "plugs under lap ribs at an odd sixteenth": SMALL.replace('length = "12 ft"', 'length = "145.4375 in"'),
    "girts that touch": SMALL + '[framing]\ngirt_heights = ["4 ft", "4 ft 2 in"]\n',
}


@pytest.mark.parametrize("text", MADE_TO_FIT.values(), ids=MADE_TO_FIT)
def test_what_a_builder_would_make_fit_is_made_to_fit(text: str) -> None:
    pieces = raise_building(parse(text, "x")).model.pieces
    assert all(is_valid(piece.solid) for piece in pieces)
    assert clashes(pieces) == []


def test_an_end_frames_wide_rafter_is_flush_with_the_outside_of_its_column() -> None:
    """A tube 4.274 in wide on a column of 4 in: 0.274 in further in, at both gables and on both slopes."""
    pieces = raise_building(parse(MADE_TO_FIT["a rafter wider than its column"], "x")).model.pieces
    for number, face in ((1, 4 * INCH), (3, 140 * INCH)):
        for hand in ("left", "right"):
            (rafter,) = [p for p in pieces if p.name == f"frame {number} {hand} rafter"]
            y = [rafter.place.point(tuple(point))[1] for point in triangles(rafter.solid)[0].tolist()]
            outer = min(y) if number == 1 else max(y)
            assert outer == pytest.approx(face, abs=0.01)


def test_a_base_rail_is_one_piece_whatever_the_girts_depth() -> None:
    """The usual rail is as wide as the girts are deep, exactly, and so passes in front of the columns."""
    pieces = raise_building(parse(LONG + '[framing]\ngirt = "hat 1.924x2x0.0346"\n', "x")).model.pieces
    assert len([p for p in pieces if p.role == "base rail"]) == 4
