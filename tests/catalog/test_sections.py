"""Sections as typed, their limits, and how they stand in their frame."""

import re
from dataclasses import replace
from itertools import pairwise
from math import cos, hypot, radians, sin

import pytest
from hypothesis import assume, example, given
from hypothesis import strategies as st
from ribwright.catalog.sections import SectionShape, parse_section, sections
from ribwright.recipe import Section
from ribwright.units import Unreadable
from shapely.geometry import Polygon

INCH = 25.4


def polygon(section: Section) -> Polygon:
    """The section with its corners left sharp."""
    return Polygon([(x, y) for x, y, _ in section.outer], [[(x, y) for x, y, _ in h] for h in section.holes])


def remedy(text: str) -> str:
    with pytest.raises(Unreadable) as caught:
        parse_section(text)
    return str(caught.value)


# -- as typed ------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "text",
    [
        "tube 4x4x0.120",
        "TUBE 4 x 4 x .12",
        "tube4x4x0.12",
        "  Tube\t4×4×0.12 in ",  # noqa: RUF001 - the sign that people paste
        'tube 4"x4"x0.12"',
        "tube 101.6x101.6x3.048 mm",
        "tube 101.6mmx101.6 mm x3.048mm",
        "hss 4x4x0.12",
    ],
)
def test_one_tube_in_many_spellings(text: str) -> None:
    assert parse_section(text) == SectionShape("tube", 101.6, 101.6, 3.048)
    assert parse_section(text).text == " ".join(text.split())


def test_fractions() -> None:
    assert parse_section("tube 6x4x1/4") == parse_section("tube 6x4x0.25")
    assert parse_section("hat 1-1/2x1 1/4x0.0346") == parse_section("hat 1.5x1.25x0.0346")
    assert (
        parse_section("flat 8x3/8")
        == parse_section("plate 8x0.375")
        == SectionShape("plate", 203.2, 9.525, 9.525)
    )


def test_words_override_defaults() -> None:
    cee = parse_section("cee 6x2.5x0.059")
    assert (cee.lip, cee.radius, cee.angle) == pytest.approx((0.75 * INCH, 3 / 16 * INCH, 90))
    stated = parse_section("cee 6x2.5x0.059 radius 1/8 lip 0.773")
    assert (stated.lip, stated.radius) == pytest.approx((0.773 * INCH, 0.125 * INCH))
    zee = parse_section("zee 200x60x1.5 mm lip 22 angle 45 radius 5")
    assert (zee.lip, zee.angle, zee.radius) == (22, 45, 5)
    hat = parse_section("hat 1.5x1.25x0.0346 flange 0.75 angle 80")
    assert (hat.flange, hat.angle) == pytest.approx((0.75 * INCH, 80))
    assert parse_section("angle 2x2x0.125").radius == 3.175
    assert parse_section("angle 2x2x0.125 radius 1/4").radius == 6.35


def test_defaults_of_narrow_and_light_sections() -> None:
    assert parse_section("cee 4x1.5x0.05").lip == pytest.approx(0.3 * 1.5 * INCH)
    assert parse_section("cee 2x2x0.05").lip == pytest.approx(0.3 * 2 * INCH), "never over 0.3 of the depth"
    assert parse_section("zee 4x1.5x0.05").lip == pytest.approx(0.4 * 1.5 * INCH)
    assert parse_section("cee 4x2x0.049").radius == pytest.approx(1.5 * 0.049 * INCH)
    assert parse_section("hat 1.5x1.25x0.03").radius == pytest.approx((3 / 32 - 0.015) * INCH)


@pytest.mark.parametrize("name", ["9CS2.5x059", "9cs2.5X059", " 9CS2.5 x 059 "])
def test_a_catalogue_name_in_many_spellings(name: str) -> None:
    found = parse_section(name)
    assert found == parse_section("cee 9x2.5x0.059 lip 0.773 radius 0.1875")
    assert (found.text, found.source) == ("9CS2.5x059", "AISI D100-17, examples I-8B and II-1B")
    assert parse_section("hss 4x4x1/4").text == "HSS4X4X1/4"


def test_every_row_is_found_by_its_name_and_says_its_source() -> None:
    assert len(sections()) >= 11
    for name, shape in sections().items():
        assert parse_section(name) is shape
        assert shape.text == name
        assert shape.source


# -- what would do -------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", '"tube 4x4x0.120"'),
        ("4x4x0.12", '"tube 4x4x0.120"'),
        ("tubee 4x4x0.12", 'perhaps "tube"'),
        ("600S162-43", 'the nearest in the catalogue is "600S162-54"'),
        ("9CS2.5x06", 'the nearest in the catalogue is "9CS2.5x059"'),
        ("tube 4x4", "tube as depth x width x wall"),
        ("tube 4x4x0", "tube as depth x width x wall"),
        ("tube 4x4x-1", "tube as depth x width x wall"),
        ("tube 4x4x1/0", "tube as depth x width x wall"),
        ("tube 4x4x0.12 lip 1", "tube as depth x width x wall"),
        ("cee 6x2.5x0.059 lipp 1", "with lip or radius if you like"),
        ("cee 6x2.5x0.059 lip", "a number after lip"),
        ("cee 6x2.5x0.059 lip 1 lip 1", "with lip or radius if you like"),
        ("tube 4 inx4 inx3 mm", "in inches, or all in mm"),
        ("tube 61x4x1/4", "at most 60 in"),
        ("tube 1525x100x3 mm", "at most 1524 mm"),
        ("tube 4x4x0.009", "at least 0.01 in thick"),
        ("tube 1x1x0.25", "less than 0.249 in thick"),
        ("cee 4x0.25x0.2", "less than 0.123 in thick"),
        ("plate 1/4x8", "width first"),
        ("zee 8x2.25x0.059 angle 10", "angle of 30 to 90 degrees"),
        ("zee 8x2.25x0.059 wider 2.5", "wider by at most 2.25 in"),
        ("hat 1.5x1.25x0.0346 angle 91", "angle of 45 to 90 degrees"),
        ("angle 2x2x0.125 radius 2", "a radius of at most 1.871 in"),
        ("cee 6x2.5x0.059 lip 3.5", "lips of at most 2.998 in"),
        ("cee 6x2.5x0.059 lip 0.2", "a lip of at least 0.251 in for bends of radius 0.1875 in"),
        ("cee 6x0.45x0.059", "a lip of at least 0.251 in"),
        ("cee 6x0.45x0.059 lip 0.3", "a flange of at least 0.497 in"),
        ("hat 0.3x1.25x0.0346 radius 0.3", "a depth of at least"),
    ],
)
def test_what_would_do(text: str, says: str) -> None:
    assert says in remedy(text)


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("cee 6x2.5x0.059 lip {}", "lip"),
        ("zee 8x2.25x0.059 lip {}", "lip"),
        ("cee 6x{}x0.059 lip 0.3", "flange"),
        ("hat {}x1.25x0.0346 radius 0.2 angle 80", "depth"),
        ("hat 1.5x{}x0.0346 angle 80 flange 0.5", "crown"),
        ("cee 150x65x1.5 mm lip {}", "lip"),
    ],
)
def test_the_figure_that_a_message_gives_will_do(text: str, word: str) -> None:
    figure = re.search(
        rf"a {word} of at least ([0-9.]+) ",
        remedy(text.format("0.2" if word in ("flange", "depth") else "0.1")),
    )
    assert figure
    assert polygon(parse_section(text.format(figure[1])).section()).is_valid


LONG = "tube 4x4x0.12" + " " * 10 + "9" * 100_000
SHAPES = st.sampled_from(["tube", "cee", "zee", "hat", "angle", "plate", "flat", "hss", "lip", "9CS2.5x059"])
NUMBERS = st.one_of(
    st.floats(0, 12).map(lambda x: f"{x:.3f}"),
    st.sampled_from(["1/4", "1-1/2", "1/0", "-1", "1e9", "½", "999999999", "0", "", "nan", "٣"]),
)
WORDS = st.sampled_from([" lip ", " radius ", " flange ", " angle ", " mm", " in", '"', "x", " x ", "×"])  # noqa: RUF001


@given(st.one_of(st.text(), st.lists(st.one_of(SHAPES, NUMBERS, WORDS), max_size=12).map("".join)))
@example(LONG)
@example("tube 4x4x0.12\0")
@example("tube 4\u2028x4x0.12")
def test_any_text_is_read_or_refused(text: str) -> None:
    try:
        shape = parse_section(text)
    except Unreadable as error:
        assert str(error)
    else:
        assert polygon(shape.section()).is_valid


def test_what_it_is_called_does_not_make_a_section_another() -> None:
    cee = parse_section("cee 6x2.5x0.059")
    assert replace(cee, text="girt", source="here") == cee
    assert hash(replace(cee, text="girt")) == hash(cee)


# -- drawn ---------------------------------------------------------------------------------------


@st.composite
def typed_sections(draw: st.DrawFn) -> SectionShape:
    """Sections of every shape that can be made, in mm."""
    shape = draw(st.sampled_from(["tube", "cee", "zee", "hat", "angle", "plate"]))
    depth, breadth = (draw(st.integers(20, 400)) for _ in range(2))
    thickness = draw(st.sampled_from(["0.5", "1", "1.5", "3", "6.35"]))
    words = {"cee": ["lip"], "zee": ["lip", "angle", "wider"], "hat": ["angle", "flange"]}.get(shape, [])
    size = f"{depth}x{thickness}" if shape == "plate" else f"{depth}x{breadth}x{thickness}"
    chosen = draw(st.fixed_dictionaries({}, optional={word: st.integers(0, 90) for word in words}))
    try:
        return parse_section(f"{shape} {size} mm " + " ".join(f"{word} {n}" for word, n in chosen.items()))
    except Unreadable:
        assume(False)
        raise


@given(typed_sections())
def test_sections_are_centred_sound_and_as_deep_as_stated(shape: SectionShape) -> None:
    drawn = shape.section()
    sharp = polygon(drawn)
    assert sharp.is_valid
    assert sharp.exterior.is_ccw
    low_x, low_y, high_x, high_y = sharp.bounds
    assert (-low_y, high_y) == pytest.approx((shape.depth / 2, shape.depth / 2), abs=1e-6)
    assert (-low_x, high_x) == pytest.approx((shape.width / 2, shape.width / 2), abs=1e-6)
    if shape.shape not in ("zee", "hat"):
        assert shape.width == pytest.approx(shape.breadth, abs=1e-6)
    for ring in (drawn.outer, *drawn.holes):
        for a, b in pairwise([*ring, ring[0]]):
            assert hypot(b[0] - a[0], b[1] - a[1]) > 1e-3


@given(typed_sections())
def test_folded_sections_are_as_thick_as_stated(shape: SectionShape) -> None:
    """Sharp-cornered area = thickness times the mean of both faces' lengths, for any mitred fold."""
    assume(shape.shape in ("cee", "zee", "hat"))
    ring = shape.section().outer
    half = len(ring) // 2
    lengths = [
        sum(hypot(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(face)) for face in (ring[:half], ring[half:])
    ]
    assert polygon(shape.section()).area == pytest.approx(shape.thickness * sum(lengths) / 2, rel=1e-6)


def test_a_tube_has_one_rounded_hole() -> None:
    drawn = parse_section("tube 6x4x1/4").section()
    assert set(drawn.outer) == {(x * 50.8, y * 76.2, 12.7) for x in (-1, 1) for y in (-1, 1)}
    (hole,) = drawn.holes
    assert set(hole) == {(x * 44.45, y * 69.85, 6.35) for x in (-1, 1) for y in (-1, 1)}


def test_a_cee_opens_towards_x() -> None:
    cee = parse_section("cee 150x60x2 mm lip 20 radius 4")
    steel = polygon(cee.section())
    across = steel.intersection(Polygon([(-30, -1), (30, -1), (30, 1), (-30, 1)])).bounds
    assert across == pytest.approx((-30, -1, -28, 1)), "half way up there is the web only"
    tips = sorted({y for x, y, _ in cee.section().outer if x == 30 and abs(y) < 75})
    assert tips == [-55, 55]
    assert sorted({r for _, _, r in cee.section().outer}) == [0, 4, 6]


def test_a_zee_puts_its_top_flange_towards_x_and_its_lips_aslant() -> None:
    zee = parse_section("zee 8x2.25x0.059 lip 0.910 angle 50")
    steel = polygon(zee.section())
    top = steel.intersection(Polygon([(-200, 90), (200, 90), (200, 110), (-200, 110)]))
    assert top.bounds[0] == pytest.approx(-0.059 / 2 * INCH, abs=1e-6)
    assert steel.symmetric_difference(Polygon([(-x, -y) for x, y in steel.exterior.coords])).area < 1e-3
    corner, edge = (zee.width / 2 - 0.91 * INCH * cos(radians(50)), zee.depth / 2), zee.width / 2
    assert corner[0] == pytest.approx((2.25 - 0.059 / 2) * INCH), (
        "flange from the web's back to the sharp corner"
    )
    points = [(x, y) for x, y, _ in zee.section().outer]
    assert any(p == pytest.approx(corner, abs=1e-5) for p in points)
    tip = (edge, corner[1] - 0.91 * INCH * sin(radians(50)))
    assert any(p == pytest.approx(tip, abs=1e-5) for p in points)


def test_a_hat_has_its_crown_on_top() -> None:
    hat = parse_section("hat 1.5x1.25x0.0346")
    ring = hat.section().outer
    top = max(y for _, y, _ in ring)
    assert sorted(x for x, y, _ in ring if y == top) == pytest.approx([-0.625 * INCH, 0.625 * INCH])
    assert hat.width == pytest.approx(2.5 * INCH, abs=1e-5)


def test_an_angle_has_its_corner_low_on_the_left() -> None:
    angle = parse_section("angle 3x2x1/4").section()
    assert angle.outer[0] == (-25.4, -38.1, 0)
    assert (-19.05, -31.75, 6.35) in angle.outer
    steel = polygon(angle)
    assert steel.area == pytest.approx((3 + 2 - 0.25) * 0.25 * INCH**2)


def test_a_zees_upper_flange_may_be_the_wider_one() -> None:
    """2-1/4 in below and 2-3/8 above: both of the web's sides at 1/16 in left of the middle of the whole, and
    the top flange an eighth longer from there."""
    plain, zee = parse_section("zee 8x2.25x0.059"), parse_section("zee 8x2.25x0.059 wider 1/8")
    assert zee.wider == INCH / 8
    assert zee.width == pytest.approx(plain.width + INCH / 8)
    steel = polygon(zee.section())
    web = steel.intersection(Polygon([(-200, -5), (200, -5), (200, 5), (-200, 5)])).bounds
    assert (web[0], web[2]) == pytest.approx(
        ((-0.059 - 1 / 8) / 2 * INCH, (0.059 - 1 / 8) / 2 * INCH), abs=1e-6
    )
    upper, lower = (sorted(sign * y for _, y, _ in zee.section().outer)[-1] for sign in (1, -1))
    assert upper == lower == pytest.approx(4 * INCH)
    ends = sorted(x for x, _, _ in zee.section().outer)
    assert ends[-1] == pytest.approx(-ends[0], abs=1e-6)
