"""Gutters and downspouts, by straight lines through the finished solids, and in the order and the steps."""

from __future__ import annotations

from functools import cache
from itertools import pairwise

import numpy as np
import pytest
from ribwright.audit import audit
from ribwright.errors import DescriptionError
from ribwright.intake import parse
from ribwright.order.buying.order_list import order
from ribwright.order.buying.spout_lines import straps
from ribwright.order.lists.handling import Carried
from ribwright.order.lists.schedule import schedule
from ribwright.order.written.order_text import order_table
from ribwright.pieces import Model, Piece
from ribwright.raising import raise_building
from ribwright.roles import list_of
from ribwright.steps.raising_order import steps
from support.clashes import manifold
from support.rays import Solids

pytestmark = pytest.mark.broad

FOOT = 304.8
TEXT = 'width = "20 ft"\nlength = "{length} ft"\neave_height = "10 ft"\npitch = "{pitch}"\n{more}'
RUN_ON = '[roof]\ngable_overhang = "1 ft"\n'
GUTTERS = '[trim]\ngutters = "low eaves"\n'
DOOR = (
    '[[opening]]\nkind = "walk door"\nwall = "{wall}"\n'
    'width = "3 ft"\nheight = "7 ft"\nfrom_left = "{at} ft"\n'
)


@cache
def guttered(length: int = 30, pitch: str = "3/12", more: str = "") -> Model:
    text = TEXT.format(length=length, pitch=pitch, more='[sheets]\noverhang = "2-3/4 in"\n' + GUTTERS + more)
    return raise_building(parse(text, "guttered")).model


def pieces(model: Model, role: str) -> list[Piece]:
    return [piece for piece in model.pieces if piece.role == role]


def box(piece: Piece) -> np.ndarray:
    """Lowest and highest corner, (2, 3)."""
    return np.array(manifold(piece).bounding_box()).reshape(2, 3)


@pytest.mark.parametrize(
    ("pitch", "more"), [("1/12", ""), ("3/12", ""), ("6/12", ""), ("12/12", ""), ("4/12", RUN_ON)]
)
def test_what_runs_off_the_roof_falls_into_a_gutter_and_out_of_its_outlet(pitch: str, more: str) -> None:
    """Down from the foot of every roof sheet one meets the gutter's bottom, or looks out of an outlet and
    through its downspout, whose walls stand around; behind the foot the back is 1 to 2 in away."""
    model = guttered(pitch=pitch, more=more)
    gutters, spouts = pieces(model, "gutter"), pieces(model, "downspout")
    assert (len(gutters), len(spouts)) == (2, 2)
    around = Solids(gutters + spouts)
    for sheet in pieces(model, "roof sheet"):
        (x0, y0, z0), (x1, y1, _) = box(sheet)
        x, out = (x0, -1.0) if sheet.label("face") == "left slope" else (x1, 1.0)
        for y in np.linspace(y0 + 60.0, y1 - 60.0, 7):
            spans = around.along((x + out, y, z0), (0.0, 0.0, -1.0), 200.0)
            over_hole = any(box(spout)[0, 1] < y < box(spout)[1, 1] for spout in spouts)
            assert over_hole or (spans and spans[0].piece.role == "gutter"), (x, y)
        back = around.along((x + out, (y0 + y1) / 2, z0 - 20.0), (-out, 0.0, 0.0), 200.0)
        assert 25.4 <= back[0].enter + 1.0 <= 52.0 + 20.0  # by the crowns, which lean out with the pitch
    for spout in spouts:
        (x0, y0, z0), (x1, y1, z1) = box(spout)
        middle = ((x0 + x1) / 2, (y0 + y1) / 2, z1 + 20.0)
        assert 20.0 < z0 < 30.0
        for dx, dy in ((0, 0), (35, 35), (-35, 35), (35, -35), (-35, -35)):
            start = (middle[0] + dx, middle[1] + dy, middle[2])
            assert around.along(start, (0.0, 0.0, -1.0), 4000.0) == [], (dx, dy)
        for way in ((1.0, 0, 0), (-1.0, 0, 0), (0, 1.0, 0), (0, -1.0, 0)):
            assert around.along((middle[0], middle[1], 500.0), way, 100.0)[0].piece is spout
    assert [finding for finding in audit(model).findings if finding.fault] == []


@pytest.mark.parametrize(("length", "count"), [(30, 1), (40, 1), (41, 2), (80, 2), (90, 4)])
def test_no_downspout_drains_more_than_asked(length: int, count: int) -> None:
    """Each drains to the middle of what is between it and the next, at the ends to the end: 40 ft at most."""
    spouts = [box(piece) for piece in pieces(guttered(length), "downspout")]
    for left in (True, False):
        along = sorted(float(one[:, 1].mean()) for one in spouts if (one[0, 0] < 0) == left)
        assert len(along) == count
        middles = [(a + b) / 2 for a, b in pairwise(along)]
        bounds = [0.0, *middles, length * FOOT]
        assert max(np.diff(bounds)) <= 40 * FOOT + 0.1


def test_a_downspout_stands_clear_of_openings() -> None:
    """Doors at both ends of both walls, where it would stand."""
    doors = "".join(DOOR.format(wall=wall, at=at) for wall in ("left", "right") for at in (0.75, 26.25))
    model = guttered(more=doors)
    trims = [piece for piece in model.pieces if list_of(piece.role) == "trims" and "door" in piece.name]
    for spout in pieces(model, "downspout"):
        (_, y0, _), (_, y1, _) = box(spout)
        for trim in trims:
            if (box(trim)[0, 0] < 3000.0) == (box(spout)[0, 0] < 3000.0):
                assert box(trim)[0, 1] > y1 or box(trim)[1, 1] < y0, trim.name
    assert [finding for finding in audit(model).findings if finding.code.check == "clash"] == []


def test_gutters_are_ordered_and_have_their_steps() -> None:
    """In one length: from gable to gable as the eave trim, 360 in and 2 x 0.852, less what stands clear of
    the rakes' drops, and at both ends what they are folded from, 2-1/4 in less a nick."""
    model = guttered()
    listed = schedule(model)
    wanted = order(listed)
    lines = {line.kind: line for line in wanted.lines}
    assert lines["gutter"].quantity == 2
    by_hand = (360 + 2 * 0.852 - 2 * 0.03 + 2 * (2.22 - 0.0217)) * 25.4
    assert lines["gutter"].length == pytest.approx(2 * by_hand, abs=2 * 2.0)
    assert lines["downspout"].quantity == 2
    assert "gutters" not in order_table(wanted, listed, Carried()).partition("\n\n")[0]
    at = {role: [] for role in ("gutter", "roof sheet", "downspout")}
    for number, step in enumerate(steps(model)):
        for piece in step.pieces:
            at.get(piece.role, []).append(number)
    assert max(at["gutter"]) < min(at["roof sheet"]) < max(at["roof sheet"]) < min(at["downspout"])


def test_what_holds_and_turns_a_downspout_is_counted() -> None:
    """90 ft: four a side. Each of some 9 ft 7 has an outlet, an elbow at its foot, and a strap a foot from
    each end, which are not 8 ft apart."""
    listed = schedule(guttered(90))
    wanted = order(listed)
    found = {line.kind: (line.count, line.size) for line in wanted.lines if line.list == "trims"}
    assert found["gutter outlet"] == (8, '3" x 3"')
    assert found["downspout elbow"] == (8, '3" x 3", one at each foot')
    assert found["downspout strap"] == (16, "3\" x 3\", 1' from each end, at most 8' apart")
    said = " ".join(order_table(wanted, listed, Carried()).partition("\n\n")[0].split())
    assert "elbows and straps of downspouts and anchors are counted, not drawn" in said
    assert "gutters" not in said


@pytest.mark.parametrize(
    ("feet", "count"), [(1.5, 1), (2.0, 1), (2.5, 2), (10.0, 2), (10.1, 3), (18.0, 3), (18.1, 4)]
)
def test_a_downspout_has_a_strap_near_each_end_and_one_every_eight_feet(feet: float, count: int) -> None:
    assert straps(feet * FOOT, "ft-in") == count


def test_a_roof_that_ends_short_of_a_gutter_is_refused() -> None:
    with pytest.raises(DescriptionError, match=r"sheets.overhang.*1 to 2 in into the gutter"):
        parse(
            TEXT.format(length=30, pitch="3/12", more='[sheets]\noverhang = "2 in"\n' + GUTTERS), "guttered"
        )


@pytest.mark.parametrize(("units", "overhang"), [("ft-in", 2.5 * 25.4), ("mm", 65.0)])
def test_unsaid_a_roof_ends_well_into_its_gutters(units: str, overhang: float) -> None:
    text = f'units = "{units}"\n' + TEXT.format(length=30, pitch="3/12", more=GUTTERS)
    assert parse(text, "guttered").sheets.overhang == pytest.approx(overhang)
