"""Doors that slide before their wall: rail, cover, leaf, and the sheets that end there. Lengths in inches."""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest
from ribwright.audit import audit
from ribwright.description.opening import SLIDING
from ribwright.errors import DescriptionError
from ribwright.findings import Code
from ribwright.intake import parse
from ribwright.order.buying.order_list import order
from ribwright.order.lists.schedule import schedule
from ribwright.pieces import Model, Piece
from ribwright.raising import raise_building
from ribwright.roles import Role
from ribwright.solids.placed import placed_triangles
from ribwright.steps import steps
from ribwright.units import INCH
from support.judged import judged
from support.plants import Plant, drop, move

SHED = 'width = "30 ft"\nlength = "40 ft"\neave_height = "12 ft"\npitch = "3/12"\n'


def door(wall: str, size: tuple[str, str], from_left: str, more: str = "", kind: str = SLIDING) -> str:
    lines = f'width = "{size[0]}"\nheight = "{size[1]}"\nfrom_left = "{from_left}"\n{more}'
    return f'[[opening]]\nkind = "{kind}"\nwall = "{wall}"\n{lines}'


BARN = SHED + door("right", ("8 ft", "8 ft"), "125 in", 'colour = "firebrick"\n')
LOW = BARN.replace('"8 ft"\nfrom', '"2 ft"\nfrom')

GABLE = SHED + door("front", ("5 ft", "6 ft"), "8 ft")
LEAN_TO = '[[lean_to]]\nwall = "front"\nwidth = "8 ft"\npitch = "2/12"\neave_height = "7 ft"\n'


@cache
def barn() -> Model:
    return raise_building(parse(BARN, "barn")).model


def spread(piece: Piece) -> list[list[float]]:
    """Along the right wall from the left, up, and out of it."""
    points = np.vstack([points for points, _ in placed_triangles([piece])]) / INCH
    along, up, out = points[:, 1], points[:, 2], points[:, 0] - 360
    return [[float(one.min()), float(one.max())] for one in (along, up, out)]


def named(name: str) -> Piece:
    return next(piece for piece in barn().pieces if piece.name == name)


def test_leaf_rail_and_cover_stand_where_reckoned_by_hand() -> None:
    """The opening is 125 to 221 in. Its leaf laps it by 2 in, 123 to 223; the rail is twice that,
    123 to 323; its cover an inch more, leg and lip another half.

    Up: sheets begin at 2.1 thicknesses of 0.0217, 0.0456. Head 96, leaf 2 over it, 1/2 mm, rail 3, 1/8, the
    shelf's fall and clearance 1/4, a step 1/2: 101.895. Feet are 1/4 and 0.0456 over that, in steps from
    0.0456 up: 102.1902 becomes 102.5456, the shelf 102.25, heads under it 101.5456, the rail's top 101.4206.
    Out: flange, rib and two sheets, 0.0217 + 0.75 + 0.0344 = 0.8061; the rail 1 mm off it, the leaf 1/4
    before the drip's lip, which is four thicknesses and twice 0.0456 out."""
    along, up, out = spread(named("right sliding door 1 rail"))
    assert along == pytest.approx([123, 323], abs=1e-4)
    assert up == pytest.approx([98.4206, 101.4206], abs=1e-3)
    assert out == pytest.approx([0.8455, 3.3455], abs=1e-3)
    along, up, out = spread(named("right sliding door 1 leaf"))
    assert along == pytest.approx([123, 223], abs=1e-4)
    assert up == pytest.approx([0.5, 98.4009], abs=1e-3)
    assert out[0] == pytest.approx(0.8061 + 0.0868 + 0.0911 + 0.25, abs=1e-3) and out[1] < 3.3455
    covers = [spread(piece) for piece in barn().pieces if piece.role == Role.RAIL_COVER]
    assert min(one[0][0] for one in covers) == pytest.approx(121.5, abs=1e-4)
    assert max(one[0][1] for one in covers) == pytest.approx(324.5, abs=1e-4)
    assert min(one[1][0] for one in covers) == pytest.approx(102.25 - 0.125 - 2, abs=0.06)
    assert max(one[1][1] for one in covers) == pytest.approx(102.25 + 2, abs=0.06)
    assert max(one[2][1] for one in covers) > 3.3455


def test_sheets_end_over_each_other_at_the_cover_and_nowhere_else() -> None:
    """The run leaves the right corner, 480: sheets 6 to 9 lie wholly between 121.97 and 324.03. Lower ones
    are 101 1/2 long, the upper ones 41: heads of whole ones are at 143.5456."""
    wall = {piece.name: spread(piece) for piece in barn().pieces if piece.role == Role.WALL_SHEET}
    upper = {name: one[1] for name, one in wall.items() if name.startswith("right") and one[1][0] > 99}
    assert sorted(upper) == ["right 6b", "right 7b", "right 8b", "right 9b"]
    assert all(up == pytest.approx([102.5456, 143.5456], abs=1e-3) for up in upper.values())
    for name in ("right 6a", "right 7a"):
        assert wall[name][1] == pytest.approx([0.0456, 101.5456], abs=1e-3)
    assert wall["right 5"][1] == pytest.approx([0.0456, 143.5456], abs=1e-3)


def test_foam_closes_the_heads_behind_the_rail() -> None:
    """All along it, clear of the screws that stand 3/4 in under the heads, an inch down."""
    foam = [spread(piece) for piece in barn().pieces if " rail " in piece.name and "closure" in piece.name]
    ends = min(one[0][0] for one in foam), max(one[0][1] for one in foam)
    assert ends == pytest.approx((123, 323), abs=0.01)
    assert sum(one[0][1] - one[0][0] for one in foam) == pytest.approx(200, abs=0.01)
    assert all(98.4206 < one[1][0] < one[1][1] < 101.5456 - 0.75 for one in foam)
    assert all(one[2][1] == pytest.approx(0.8455, abs=1e-3) for one in foam)


def test_a_sliding_door_is_bought_by_its_leaf_with_a_rail_and_a_guide() -> None:
    lines = [line for line in order(schedule(barn())).lines if line.list == "openings"]
    bought = {(" ".join(filter(None, (line.kind, line.colour, line.size))), line.count) for line in lines}
    assert bought == {
        ("sliding door firebrick 8' 4\" x 8' 2\" leaf", 1),
        ("door rail 16' 8\" long", 1),
        ("door guide", 1),
    }


def test_the_cover_goes_up_between_the_sheets_and_the_leaf_last() -> None:
    done = [step.name for step in steps(barn())]
    sheets = [done.index(f"{which} sheets of the right") for which in ("lower", "upper")]
    assert sheets[0] < done.index("covers over the rails of the right") < sheets[1] < done.index("doors")
    (last,) = (step for step in steps(barn()) if step.name == "doors")
    assert {piece.role for piece in last.pieces} == {Role.RAIL, Role.LEAF, Role.GUIDE}


OTHERS = {
    "apart": SHED + door("front", ("60 in", "8 ft"), "150 in", 'slides = "apart"\n'),
    "left": BARN.replace("125 in", "245 in")
    + 'slides = "left"\n[wainscot]\nheight = "36 in"\n[insulation]\nwalls = "3 in"\n'
    + '[slab]\nledge_depth = "1.5 in"\n',
    "before a wainscot whose trim meets a gable's over deeper ribs": SHED
    + '[wainscot]\nheight = "36 in"\n[gable_sheets]\nprofile = "36 x 12 x 1-1/4"\n'
    + door("left", ("3 ft", "6 ft"), "58 in", 'slides = "left"\n'),
    "flush": BARN.replace("3/12", "5/12") + '[framing]\ngirts = "flush"\n',
}


@pytest.mark.parametrize("name", ["right", *OTHERS])
def test_every_judge_finds_a_wall_with_a_sliding_door_sound(name: str) -> None:
    found = judged(parse(OTHERS.get(name, BARN), name))
    assert found.faults == {} and not found.said


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (
            BARN.replace("125 in", "365 in"),
            "at most 22' 11\": the leaf of a sliding door goes before free wall",
        ),
        (BARN.replace("125 in", "6 in"), 'at least 9": the leaf of a sliding door'),
        (SHED + door("front", ("16 ft", "8 ft"), "7 ft"), "at most 14' 1\": the leaf of a sliding door"),
        (BARN + door("right", ("3 ft", "7 ft"), "250 in", kind="walk door"), "at most 4' 1\": the leaf"),
        (
            BARN.replace('"8 ft"\nfrom', '"11 ft"\nfrom'),
            "at most 10' 9-3/16\": over its head, at 11', are leaf",
        ),
        (BARN + door("front", ("6 ft", "7 ft"), "12 ft"), "8', as of the other sliding door"),
        (BARN + 'sill = "1 ft"\n', "0: a sliding door stands on the slab"),
        (LOW + '[wainscot]\nheight = "36 in"\n', "the girts over its rail are over those of the wainscot"),
        (
            BARN + '[[lean_to]]\nwall = "right"\nwidth = "8 ft"\npitch = "1/12"\neave_height = "7 ft"\n',
            "not yet",
        ),
        (GABLE + LEAN_TO, "not yet"),
        (SHED + door("left", ("3 ft", "7 ft"), "125 in", 'slides = "left"\n', "walk door"), "no such line"),
    ],
)
def test_what_is_in_the_way_of_a_leaf_is_said_with_what_would_do(text: str, said: str) -> None:
    with pytest.raises(DescriptionError, match=said):
        parse(text, "barn")


AT_GIRTS = (
    'width = "16 ft"\nlength = "20 ft"\neave_height = "13 ft"\npitch = "4/12"\n[[lean_to]]\nwall = "left"\n'
    'width = "8 ft"\npitch = "0.5/12"\neave_height = "7 ft"\n'
    + door("front", ("62.25 in", "77 in"), "46.875 in", 'slides = "right"\n')
)
"""The girts over its rail would stand among those at the lean-to's roof, at which they run around too."""


def test_girts_over_a_rail_keep_clear_of_those_at_a_lean_tos_roof() -> None:
    with pytest.raises(DescriptionError, match=r"at most 6' 1\" or at least 7' 3-7/8\""):
        parse(AT_GIRTS, "barn")
    for height in ("6 ft 1 in", "87.875 in"):
        raised = raise_building(parse(AT_GIRTS.replace("77 in", height), "barn"))
        assert raised.findings == () and audit(raised.model).findings == ()


def test_a_place_that_a_message_names_will_do() -> None:
    for text, instead in (("365 in", "22 ft 11 in"), ("6 in", "9 in")):
        with pytest.raises(DescriptionError, match="of a sliding door goes"):
            parse(BARN.replace("125 in", text), "barn")
        try:
            parse(BARN.replace("125 in", instead), "barn")
        except DescriptionError as error:
            assert "sliding door" not in str(error)  # a column may stand there
    assert parse(BARN.replace('"8 ft"\nfrom', '"10 ft 9 in"\nfrom'), "barn")


@pytest.mark.parametrize(
    ("plant", "code"),
    [
        (drop("right sliding door 1 rail cover 1"), Code.SEAM_OPEN),
        (move("right sliding door 1 rail cover 2", (25.0, 0.0, 0.0)), Code.SEAM_OPEN),
        (move("right sliding door 1 rail cover 1", (0.0, 0.0, -8.0)), Code.SEAM_HANG),
        (move("right sliding door 1 rail", (-5.0, 0.0, 0.0)), Code.CLASH),
        (move("right sliding door 1 leaf", (-16.0, 0.0, 0.0)), Code.CLASH),
    ],
)
def test_a_fault_planted_at_a_rail_shows_its_code(plant: Plant, code: Code) -> None:
    """Where a cover is missing over a sheet that is cut in from its side, its slot is a hole."""
    found = {one.code for one in audit(plant(barn()), (code.check,)).findings}
    assert code in found and found <= {code, Code.HOLE}
