"""The first twenty random buildings, judged in every way there is, and what longer runs of them found wrong;
`random_run.py` judges more of them."""

from __future__ import annotations

from itertools import islice

import pytest
from ribwright.audit import audit
from ribwright.description.building import Building
from ribwright.intake import parse
from ribwright.raising import raise_building
from support.judged import judged
from support.random_buildings import buildings

CASES = {str(drawn.number): building for drawn, building in islice(buildings(), 20)}

SMALL = 'width = "12 ft"\nlength = "12 ft"\neave_height = "8 ft"\n'


def opening(kind: str, wall: str, width: float, height: float, from_left: float, sill: float = 0.0) -> str:
    sizes = {"width": width, "height": height, "from_left": from_left, "sill": sill}
    lines = "".join(f'{key} = "{size} in"\n' for key, size in sizes.items())
    return f'[[opening]]\nkind = "{kind}"\nwall = "{wall}"\n{lines}'


FOUND = {
    "sheets that end on corner columns": SMALL + 'pitch = "6/12"\n[framing]\ngirts = "flush"\n',
    "a roof as steep as they go": SMALL + 'pitch = "18/12"\n',
    "a roof that ends at the eave trim": SMALL + 'pitch = "9/12"\n[sheets]\noverhang = "1-1/8 in"\n',
    "a header not as deep as the jambs": SMALL
    + 'pitch = "3/12"\n[framing]\nheader = "tube 2x2x0.120"\n'
    + opening("overhead door", "front", 40, 60, 50),
    "feet as high as they may hang": SMALL + 'pitch = "3/12"\n[sheets]\nfoot_gap = "5/8 in"\n',
    "a ledge that ends the base trim behind the screws": SMALL
    + 'pitch = "3/12"\n[slab]\nledge_depth = "0.641 in"\n',
    "screws through trims where they lap": SMALL + 'pitch = "10 deg"\n[trim]\nlap = "12 in"\n',
    "a single screw a rib on a steep rake": SMALL + 'pitch = "18/12"\n[screws]\nends = "single"\n',
    "an eighth of an inch of a leg beside an opening": SMALL
    + 'pitch = "3/12"\n[sheets]\ncut_clearance = "1/2 in"\n'
    + opening("framed opening", "right", 21, 20, 14.375, 8),
}


KNOWN = dict.fromkeys(
    ("10", "21", "37"),
    "beside an opening an edge on a rib or a girt's stub has no screw",
)
"""Faults that are known and not mended yet, by the building's number."""


@pytest.mark.parametrize(
    "building",
    [
        pytest.param(
            building,
            id=number,
            marks=[pytest.mark.xfail(strict=True, reason=KNOWN[number])] if number in KNOWN else [],
        )
        for number, building in CASES.items()
    ],
)
def test_a_random_building_is_sound(building: Building) -> None:
    assert judged(building).faults == {}


@pytest.mark.parametrize("text", FOUND.values(), ids=FOUND)
def test_what_a_long_run_found_is_mended(text: str) -> None:
    raised = raise_building(parse(text, "found"))
    assert raised.findings == ()
    assert audit(raised.model).findings == ()
