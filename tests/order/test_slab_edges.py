"""A slab with a thicker edge and mesh, worked by hand, from STEP alone too."""

from __future__ import annotations

from pathlib import Path

import pytest
from ribwright.drawing.values import Text
from ribwright.errors import DescriptionError
from ribwright.exchange.step import read_step, write_step
from ribwright.intake import parse
from ribwright.order.buying.order_list import buying_on, order
from ribwright.order.lists.schedule import schedule
from ribwright.papers.pages import papers
from ribwright.pieces import Model
from ribwright.raising import raise_building

SHED = """\
width = "20 ft"
length = "30 ft"
eave_height = "9 ft"
pitch = "4/12"
[sheets]
profile = "36 x 9 x 3/4"
[slab]
thickness = "4 in"
"""
EDGED = SHED + 'edge_depth = "12 in"\nedge_width = "16 in"\nmesh = "6x6 W1.4"\n'


def slab_lines(model: Model) -> list[tuple[str, float, str, str]]:
    wanted = order(schedule(model), buying_on(model.terms))
    return [(one.kind, one.quantity, one.unit, one.size) for one in wanted.lines if one.list == "slab"]


def test_concrete_and_mesh_as_worked_by_hand(tmp_path: Path) -> None:
    """The slab's side is 1 in past the outermost sheet, 1-13/16 in past the steel: 243-5/8 x 363-5/8 in,
    615.19 ft2. Concrete 1 ft thick, less 8 in over what is 16 in in from each side, 211-5/8 x 331-5/8 in or
    487.36 ft2: 290.28 ft3 are 10.75 yd3, 11.29 with the waste. Mesh 615.19 x 1.1 = 676.7 ft2. Without an edge
    4 in thick: 205.06 ft3 are 7.59 yd3."""
    plain, edged = (raise_building(parse(text, "shed")).model for text in (SHED, EDGED))
    step = tmp_path / "shed.step"
    write_step(edged, step)
    for model in (edged, read_step(step)):
        assert slab_lines(model) == [
            ("concrete", 11.5, "yd3", "10.75 yd3 drawn, 5% waste, rounded up to 1/4 yd3"),
            ("mesh", 677, "ft2", "6x6 W1.4, 615 ft2 covered, 10% for laps and cuts"),
        ]
    assert slab_lines(plain) == [("concrete", 8, "yd3", "7.59 yd3 drawn, 5% waste, rounded up to 1/4 yd3")]


def test_the_slab_plan_says_how_thick_it_is() -> None:
    (page,) = (one for one in papers(raise_building(parse(EDGED, "shed")).model) if one.title == "slab plan")
    texts = (shape.text for shape in page.shapes if isinstance(shape, Text))
    assert "Slab 4\" thick, 1' at its edge, 1' 4\" wide; 6x6 W1.4 in it." in " ".join(texts)


@pytest.mark.parametrize(
    ("lines", "said"),
    [
        ('edge_depth = "4 in"', "more than the slab's thickness, 4\""),
        ('edge_width = "1 ft"', "edge_depth with it, or neither"),
    ],
)
def test_an_edge_that_is_none_is_refused(lines: str, said: str) -> None:
    with pytest.raises(DescriptionError, match=said):
        parse(SHED + lines, "shed")
