"""A detailer's notes: what must be found is found, what would do does, and nothing is said without cause."""

from __future__ import annotations

import pytest
from ribwright.description.building import Building
from ribwright.findings import Code, Finding, amount, words
from ribwright.intake import parse, starter_text
from ribwright.layout.detailing import detailed
from ribwright.layout.detailing.beside_openings import RIBS, STRIPS
from ribwright.units import INCH

FT = 12 * INCH
SHED = (
    'width = "{width}"\nlength = "{length}"\neave_height = "9 ft"\npitch = "3/12"\nframe.spacing = "12 ft"\n'
)
WINDOW = """[[opening]]
kind = "window"
wall = "right"
width = "3 ft"
height = "3 ft"
from_left = "{from_left}"
"""


def shed(width: str = "24 ft 2 in", length: str = "36 ft", more: str = "") -> Building:
    return parse(SHED.format(width=width, length=length) + more, "shed")


def notes(building: Building, *codes: Code) -> list[Finding]:
    return [note for note in detailed(building) if note.code in codes]


def test_a_sixteenth_of_an_inch_buys_a_sheet_on_each_of_four_faces() -> None:
    """12 sheets cover 12 x 36 in and two legs of 1 in, 36 ft 2 in. A sixteenth more and a thirteenth is
    bought of which 2-1/16 in is used, on both sides and both slopes."""
    assert not notes(shed(length="36 ft 2 in"), Code.SLIVER, Code.RIP_ON_RIB)
    (note,) = notes(shed(length="36 ft 2-1/16 in"), Code.SLIVER)
    assert note.pieces == ("left", "right", "left slope", "right slope")
    assert note.measured is not None and note.limit is not None
    assert note.measured / INCH == pytest.approx(2 + 1 / 16, abs=1e-3)
    assert note.limit / INCH == pytest.approx(36 * 12 + 2, abs=1e-3)
    assert "36' 2\" saves one on each" in words(note, "ft-in")


def test_a_rip_along_a_rib_is_named_with_a_size_that_has_a_flat_edge() -> None:
    """At 30 ft the cut is at 360 in; ribs stand at 1 + 9 k, so at 361: the middle of that rib is an inch past
    it. Its half base of 1-1/4 and 1/2 in: a rip at 359-1/4 in is clear."""
    (note,) = notes(shed(length="30 ft"), Code.RIP_ON_RIB)
    assert note.pieces == ("left", "right", "left slope", "right slope")
    base = shed().sheets.sides.profile.base / INCH
    assert note.limit is not None
    assert note.limit / INCH == pytest.approx(361 - base / 2 - 1 / 2, abs=1e-3)
    better = shed(length=f"{note.limit / INCH:.4f} in")
    assert not notes(better, Code.RIP_ON_RIB, Code.SLIVER)


@pytest.mark.parametrize("inches", [60 + quarter / 4 for quarter in range(0, 36, 3)])
def test_a_window_is_clear_of_ribs_or_told_where_it_would_be(inches: float) -> None:
    """All along the pitch of the ribs: at what is said to do there is nothing to say."""
    found = notes(shed(more=WINDOW.format(from_left=f"{inches} in")), *RIBS, *STRIPS)
    for note in found:
        assert note.limit is not None
        better = shed(more=WINDOW.format(from_left=f"{note.limit / INCH:.6f} in"))
        assert not notes(better, *RIBS, *STRIPS)


@pytest.mark.parametrize(
    ("inches", "code"), [(60, Code.OPENING_ON_RIBS), (63, Code.OPENING_ON_RIBS), (74, Code.STRIPS_BESIDE)]
)
def test_a_window_that_no_place_suits_is_told_a_width_that_does(inches: float, code: Code) -> None:
    """31-1/4 in and two clearances span two edges of ribs 9 in apart wherever it stands. As wide as it says,
    about the same middle, there is nothing to say."""
    wide = WINDOW.replace('"3 ft"', '"31.25 in"', 1)
    (note,) = notes(shed(more=wide.format(from_left=f"{inches} in")), *RIBS, *STRIPS)
    assert note.code is code and note.limit is not None
    width = note.limit / INCH
    better = WINDOW.replace('"3 ft"', f'"{width:.6f} in"', 1)
    assert not notes(
        shed(more=better.format(from_left=f"{inches + (31.25 - width) / 2:.6f} in")), *RIBS, *STRIPS
    )
    assert f"{amount(note.limit, 'length', 'ft-in')} wide about the same middle" in words(note, "ft-in")


@pytest.mark.parametrize(("inches", "code"), [(63, Code.OPENING_RIBS_STAY), (64, Code.STRIP_STAYS)])
def test_an_opening_between_two_others_that_nothing_suits_is_told_so(inches: int, code: Code) -> None:
    """6 in wide, 7 in from a neighbour on either side: it can neither move nor be made another 2 in wider."""
    vent = '[[opening]]\nkind = "framed opening"\nwall = "right"\nheight = "3 ft"\n'
    at = ((6, inches), (30, inches - 37), (30, inches + 13))
    row = "".join(f'{vent}width = "{width} in"\nfrom_left = "{left} in"\n' for width, left in at)
    (note,) = notes(shed(more=row), code)
    assert note.limit is None and "neither another place nor another width" in words(note, "ft-in")


def test_a_leg_of_an_inch_and_seven_eighths_beside_an_opening_is_found() -> None:
    """The right wall's run starts at its right corner, 432 in: sheets begin at 394 - 36 k, so at 70 in. An
    opening from 71-7/8 in on leaves 1-7/8 of that one; it ends at 129-1/2, in the middle of a pan."""
    text = WINDOW.replace('"3 ft"', '"57.625 in"', 1).format(from_left="71.875 in")
    (note,) = notes(shed(more=text), *RIBS, *STRIPS)
    assert note.code is Code.STRIP_BESIDE
    assert note.measured is not None and note.measured / INCH == pytest.approx(1.875)


def test_spans_short_sheets_and_long_ones() -> None:
    """The workshop's gables of 30 ft have no post: between their corner columns 29 ft run free."""
    workshop = parse(starter_text("workshop", "workshop"), "workshop")
    (note,) = notes(workshop, Code.GIRT_SPAN)
    assert note.pieces == ("back", "front") and note.measured == pytest.approx(29 * FT)
    (short,) = notes(workshop, Code.SHEET_SHORT)
    assert short.limit == pytest.approx(48 * INCH) and (short.measured or 0.0) < 48 * INCH
    small = shed(width="20 ft", more='frame.front_posts = "centre"\n')
    assert not notes(small, Code.SHEET_SHORT, Code.SHEET_LONG, Code.GIRT_SPAN, Code.PURLIN_SPAN)
    wide = shed(width="90 ft", more='framing.stock = ["60 ft"]\nsheets.longest = "60 ft"\n')
    (long,) = notes(wide, Code.SHEET_LONG)
    assert long.measured is not None and long.measured / FT == pytest.approx(46.4, abs=0.3)


def test_a_roof_that_ends_behind_the_eave_trims_face_is_named_for_each_eave() -> None:
    found = notes(shed(more='sheets.overhang = "1-1/2 in"\n'), Code.DRIP_SHORT)
    assert {note.pieces for note in found} == {("left",), ("right",)}
    assert not notes(shed(), Code.DRIP_SHORT)


STRIP_OF_2_IN = WINDOW.format(from_left="34 in")
"""A sheet begins at 36 in."""


@pytest.mark.parametrize(
    ("length", "code", "key", "quiet", "loud"),
    [
        ("36 ft", Code.STRIP_BESIDE, "strip", "2 in", "2-1/4 in"),
        ("36 ft 3 in", Code.SLIVER, "last_sheet", "3 in", "3-1/4 in"),
        ("443-1/2 in", Code.RIP_ON_RIB, "beside_rib", "1/8 in", "3/8 in"),  # a rib's foot ends at 443-1/4
        ("36 ft", Code.DRIP_SHORT, "eave_drip", "7/8 in", "1 in"),
        ("36 ft", Code.SHEET_SHORT, "shortest_sheet", "2 ft", "9 ft"),
        ("36 ft", Code.SHEET_LONG, "longest_sheet", "12 ft 7 in", "12 ft 6 in"),  # the middle of the gables
        ("36 ft", Code.PURLIN_SPAN, "span_of_4_in", "12 ft", "11 ft 11 in"),
    ],
)
def test_every_limit_is_settable(length: str, code: Code, key: str, quiet: str, loud: str) -> None:
    """Each a little to either side of what the shed has."""
    said = [
        notes(shed(length=length, more=f'[limits]\n{key} = "{value}"\n{STRIP_OF_2_IN}'), code)
        for value in (quiet, loud)
    ]
    assert [bool(one) for one in said] == [False, True]


def test_the_span_of_deeper_steel_is_settable_too() -> None:
    """A girt of 6 in is half way between 12 ft and 25 ft, or between 12 ft and 20: 18 ft 6 in, or 16 ft."""
    deep = '[framing]\ngirt = "cee 6x2x0.059"\n'
    usual, less = (
        notes(shed(more=f"{deep}{limits}"), Code.GIRT_SPAN)[0].limit
        for limits in ("", '[limits]\nspan_of_8_in = "20 ft"\n')
    )
    assert (usual, less) == pytest.approx((18.5 * FT, 16 * FT))
