"""Zee purlins that nest over frames where they are spliced: as they lie, in stock, screwed, ordered."""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest
from ribwright.audit import audit
from ribwright.catalog.sections import parse_section
from ribwright.envelope.nesting import least_wider, nest_of
from ribwright.envelope.opening_lines import OpeningLines
from ribwright.envelope.splices import in_stock
from ribwright.envelope.tiers import flat_of
from ribwright.intake import parse
from ribwright.layout import lay_out
from ribwright.measure.nested import member_laps
from ribwright.order.buying.order_list import order
from ribwright.order.lists.schedule import Schedule, schedule
from ribwright.papers.job import job_of
from ribwright.papers.places import details_of
from ribwright.pieces import Model
from ribwright.raising import raise_building
from ribwright.recipe import Part, Prism, Turned
from ribwright.solids.placed import placed_triangles
from ribwright.steps import steps
from shapely.affinity import rotate, translate
from shapely.geometry import Polygon
from support.judged import judged
from support.refused import refusals

INCH, FT = 25.4, 304.8
THICK = 0.059 * INCH
SHED = """width = "20 ft"
length = "45 ft"
eave_height = "9 ft"
pitch = "3/12"
frame.spacing = "15 ft"
[framing]
stock = ["20 ft"]
purlin = "zee 8x2.25x0.059 wider 1/8"
purlin_splices = "nested"
"""
MM = """units = "mm"
width = "6 m"
length = "15 m"
eave_height = "3 m"
pitch = "10 deg"
roof.shape = "single slope"
frame.spacing = "5 m"
[framing]
stock = ["6500 mm"]
purlin = "zee 200x60x2 mm wider 5"
purlin_splices = "nested"
purlin_lap = "400 mm"
"""


@cache
def model() -> Model:
    return raise_building(parse(SHED, "shed")).model


@cache
def lists() -> Schedule:
    return schedule(model())


# -- sections --------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "text",
    ["8x2.25x0.059", "8x2.25x0.059 angle 90", "8x2.5x0.105 angle 30 lip 1", "4x1.5x0.035", "6x2x0.07 lip 0"],
)
def test_a_zee_turned_over_lies_in_its_mate_where_one_flange_is_so_much_wider_and_no_less(text: str) -> None:
    """Corners left sharp: bends within bends lie farther off. The least is t (1 + tan(angle / 2)): what the
    web takes, and what its thickness takes of the lip's slant."""
    plain = parse_section(f"zee {text}")
    least, slant = least_wider(plain) / INCH, np.tan(np.radians(plain.angle) / 2)
    assert least == pytest.approx(plain.thickness / INCH * (1 + slant) * bool(plain.lip))
    for more, shared in ((1e-6, False), (-0.01, True)):
        if least + more < 0:
            continue
        zee = parse_section(f"zee {text} wider {least + more:.7f}")
        upper = Polygon([(x, y) for x, y, _ in zee.section().outer])
        nest = nest_of(zee)
        assert nest.deep == zee.thickness
        lower = translate(rotate(upper, 180.0, origin=(0.0, 0.0)), nest.aside, -nest.deep)
        assert (upper.intersection(lower).area > 1e-3) is shared
        assert upper.distance(lower) < 1e-6


def test_the_row_stands_in_the_middle_of_what_both_flats_share() -> None:
    """From the upper one's back its flange is flat to 2-3/8 in, the lower one's from 0.059 to 2.309 in, less
    the same at each end: the middle is at 0.059 + 2.25 / 2, the upper one's centre at (0.059 + 0.125) / 2."""
    nest = nest_of(parse_section("zee 8x2.25x0.059 wider 1/8"))
    assert nest.row == pytest.approx((0.059 + 2.25 / 2 - (0.059 + 0.125) / 2) * INCH)
    assert nest.aside == pytest.approx((0.059 - 0.125) * INCH)
    assert nest.flat == pytest.approx(flat_of(parse_section("zee 8x2.25x0.059"))[0])


# -- pieces ----------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("length", "bays", "stock", "pieces"),
    [
        (45, 15, 20, [16, 17, 16]),
        (100, 20, 40, [21, 22, 22, 22, 21]),  # two bays and two laps are 42 ft
        (60, 15, 40, [31, 31]),
        (60, 15, 60, [60]),
        (45, 15, 16.5, [45]),  # nothing that helps: `check` says so
    ],
)
def test_pieces_that_lap_a_foot_past_frames_are_within_their_stock(
    length: float, bays: float, stock: float, pieces: list[float]
) -> None:
    backs = [bays * FT * k for k in range(1, round(length / bays))]
    found = in_stock((0.0, length * FT), backs, stock * FT, FT)
    assert [round((b - a) / FT, 9) for a, b in found] == pieces


def test_every_second_purlin_lies_a_thickness_lower_and_laps_a_foot_past_each_frame() -> None:
    """The lowest line of the left slope, front to back, off its triangles: 15 ft bays, 1.5 x 8 in of arm."""
    told = [piece for piece in model().pieces if piece.name.startswith("left slope purlin 1")]
    boxes = sorted((p.min(axis=0).tolist(), p.max(axis=0).tolist()) for p, _ in placed_triangles(told))
    boxes.sort(key=lambda box: box[0][1])
    spans = [(low[1] / FT, high[1] / FT) for low, high in boxes]
    ends = [end for span in spans for end in span]
    assert ends[1:-1] == pytest.approx([16, 14, 31, 29], abs=1e-6)
    assert ends[0] == pytest.approx(45 - ends[-1], abs=1e-6)
    down, aside = THICK, THICK - INCH / 8
    rise, run = 3 / 153**0.5, 12 / 153**0.5
    for k, other in ((0, 1), (2, 1)):
        by = np.array(boxes[other][0]) - np.array(boxes[k][0])
        assert by[[0, 2]] == pytest.approx([aside * run + down * rise, aside * rise - down * run], abs=0.02)


def test_laps_are_measured_off_the_solids() -> None:
    """Two frames, and on each slope as many lines as there are purlins numbered."""
    lines = {piece.name[:-1] for piece in model().pieces if piece.role == "purlin"}
    laps = member_laps(model().pieces)
    assert len(laps) == 2 * len(lines)
    for lap in laps:
        assert lap.length == pytest.approx(2 * FT, abs=1e-6)
        assert (lap.deep, lap.depth) == pytest.approx((THICK, 8 * INCH), abs=1e-6)
    (figure,) = (one for one in audit(model(), ("laps",)).measured if one.what == "members past frames")
    assert (figure.count, figure.least, figure.greatest) == (len(laps), 304.8, 304.8)


@pytest.mark.parametrize("text", [SHED, MM], ids=["shed", "metric, one slope"])
def test_every_judge_passes_them(text: str) -> None:
    assert judged(parse(text, "nested")).faults == {}


def test_rafters_lie_a_thickness_lower_where_purlins_nest() -> None:
    nested, butted = parse(SHED, "x"), parse(SHED.replace('"nested"', '"butted"'), "x")
    assert nested.framing.roof_depth - butted.framing.roof_depth == pytest.approx(THICK)
    short = parse(SHED.replace("45 ft", "20 ft"), "x")
    assert not short.framing.nested, "no line is longer than its stock"


# -- what is said of them --------------------------------------------------------------------------


def test_what_is_bought() -> None:
    """Four bolts a lap; screws through two flanges of 0.059 in take a longer point than through one."""
    lines, bought = order(lists()).lines, order(lists()).members
    laps = len(member_laps(model().pieces))
    (bolts,) = (line for line in lines if "lap" in line.item and "bolt" in line.item)
    assert bolts.quantity == 4 * laps
    assert {line.size for line in lines if "sheet screw" in line.item} == {"No. 3 drill point"}
    purlins = [item for item in lists().listed("members") if item.role == "purlin"]
    assert max(item.length for item in purlins) == pytest.approx(17 * FT)
    for one in bought:
        assert one.plan.proven
        assert {round(stick.stock / FT, 6) for stick in one.plan.sticks} == {20}


def test_steps_say_how_far_purlins_lap() -> None:
    said = {(one.what, one.at, round(one.size, 3)) for step in steps(model()) for one in step.dimensions}
    assert ("lap over a frame, end to end", "purlins", 609.6) in said


def test_papers_cut_a_lap_across_and_along() -> None:
    names = [detail.name for detail in details_of(job_of(model()))]
    assert {"lap, purlin, across", "lap, purlin, along"} <= set(names)


# -- what cannot be --------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("old", "new", "key", "what"),
    [
        ("zee 8x2.25x0.059 wider 1/8", "cee 8x2.5x0.059", "purlin_splices", '"butted": only zees nest'),
        (" wider 1/8", "", "purlin", 'by at least 1/8", as "zee 8 x 2.25 x 0.059 wider 0.125"'),
        ('"nested"', '"nested"\npurlin_lap = "11 in"', "purlin_lap", "at least 1', 1.5 times"),
        ('"nested"', '"nested"\npurlin_lap = "8 ft"', "purlin_lap", "at most 7': in a bay of 15'"),
        (
            'stock = ["20 ft"]',
            'purlin_stock = ["16 ft"]',
            "purlin_stock",
            "at least 17', as long as a bay of",
        ),
    ],
)
def test_what_cannot_nest_is_refused_with_what_would_do(old: str, new: str, key: str, what: str) -> None:
    problems = {problem.key: problem.remedy for problem in refusals(SHED.replace(old, new))}
    assert what in problems[f"framing.{key}"]


LONG = """units = "mm"
width = "12 m"
length = "30 m"
eave_height = "4 m"
pitch = "15 deg"
frame.spacing = "6 m"
[framing]
purlin = "zee 200x60x2 mm wider 5"
purlin_splices = "nested"
stock = ["8 m", "12 m"]
"""


def test_no_screw_clips_the_end_of_a_purlin_that_it_does_not_go_through() -> None:
    """Beside ribs they would stand 2 mm from where lower purlins end, and their shanks are 5.5 mm thick."""
    parts = lay_out(parse(LONG, "long")).parts
    purlins = [part for part in parts if part.role == "purlin"]
    ends = np.array([part.place.point((0.0, 0.0, end)) for part in purlins for end in _ends(part)])
    rows = [part for part in parts if part.role == "sheet screw" and "slope" in part.name]
    spots = np.array([part.place.point(spot) for part in rows for spot in part.row])
    away = np.abs(spots[:, None] - ends[None])
    beside = (away[:, :, 0] < 60.0) & (away[:, :, 1] > 0.0)
    assert beside.sum() > 1000
    assert away[:, :, 1][beside].min() > 2.75


def _ends(part: Part) -> tuple[float, float]:
    assert isinstance(part.recipe, Prism)
    return part.recipe.start[2], part.recipe.end[2]


@pytest.mark.parametrize("profile", ["36 x 9 x 3/4", "1000 x 250 x 35"])
@pytest.mark.parametrize("thick", ["0.059", "0.075", "0.105"])
def test_trim_screws_are_as_much_longer_as_lower_purlins_lie_lower(thick: str, profile: str) -> None:
    """Through the ridge cap's leg and the air over a pan, 5 mm past the face of one that lies a thickness
    under the steel plane; in whole quarter inches."""
    text = SHED.replace("0.059 wider 1/8", f"{thick} wider 3/16")
    text = text.replace("[framing]", f'sheets.profile = "{profile}"\n[framing]')
    parts = lay_out(parse(text, "x")).parts
    caps = [part for part in parts if part.name.endswith("slope ridge cap screws")]
    assert len(caps) == 2
    for part in caps:
        assert isinstance(part.recipe, Turned)
        heights = [abs(z) for _, z in part.recipe.meridian]
        below = np.array(part.place.point((0.0, 0.0, min(z for _, z in part.recipe.meridian))))
        slope = next(f for f in OpeningLines(parse(text, "x")).slopes if f.name == part.label("face"))
        deep = slope.frame.seen((float(below[0]), float(below[1]), float(below[2])))[2]
        assert deep <= -(float(thick) * INCH + 5.0)
        assert max(heights) % (INCH / 4) == pytest.approx(0.0, abs=1e-6)
