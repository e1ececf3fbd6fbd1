"""A section is named off its solid as what it was typed as, and its name typed back gives the section."""

from __future__ import annotations

import os
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import HealthCheck, assume, example, given, settings
from hypothesis import strategies as st
from OCP.TopoDS import TopoDS_Solid
from ribwright.catalog.sections import SectionShape, listed_as, parse_section, sections, strut_section
from ribwright.exchange.step import read_step, write_step
from ribwright.measure.section_shape import measure_section
from ribwright.order.lists.items import section_text
from ribwright.pieces import Model, Piece
from ribwright.place import Place
from ribwright.recipe import Cut, Joined, Prism, Recipe, Section
from ribwright.solids import realise
from ribwright.units import Unreadable
from support.poses import moved

INCH = 25.4
LONG = bool(os.environ.get("LONG"))
"""Ten times as many random sections, other ones at every run."""
SIZES = ("depth", "breadth", "thickness", "lip", "radius", "flange", "angle", "wider")
SQUARE, MITRED = ((0.0, 0.0), (0.0, 0.0)), ((0.7, -0.4), (-0.3, 1.1))


def raised(section: Section, length: float, slopes: tuple[tuple[float, float], tuple[float, float]]) -> Prism:
    """A member between two planes of some slopes, `length` long along its axis."""
    (a, b), (c, d) = slopes
    return Prism(section, (a, b, 0.0), (c, d, length))


def notched(member: Prism, shape: SectionShape, flush: float) -> Recipe:
    """The member with a corner taken out half way along and another at its end.

    flush: how far in from the box of the section the middle notch reaches; a wall's thickness lays it
    flush with the wall's inner face.
    """
    length, half = member.end[2], (shape.width / 2, shape.depth / 2)
    middle = block((-half[0] - 1, -half[1] - 1), (flush - half[0], flush - half[1]), (0.4, 0.6), length)
    end = block((0.3 * half[0], -0.4 * half[1]), (half[0] + 1, half[1] + 1), (0.9, 9.0), length)
    return Cut(member, (middle, end))


def block(
    low: tuple[float, float], high: tuple[float, float], share: tuple[float, float], length: float
) -> tuple[Prism, Place]:
    """A tool over a rectangle of the section and a share of the length."""
    ring = ((low[0], low[1]), (high[0], low[1]), (high[0], high[1]), (low[0], high[1]))
    section = Section(tuple((round(x, 6), round(y, 6), 0.0) for x, y in ring))
    return Prism(section, (0.0, 0.0, 0.0), (0.0, 0.0, (share[1] - share[0]) * length)), Place(
        (0.0, 0.0, share[0] * length)
    )


def lying(shape: SectionShape) -> SectionShape:
    """The shape as it is measured: the longer leg or side is the depth."""
    if shape.shape in ("tube", "angle") and shape.depth < shape.breadth:
        return replace(shape, depth=shape.breadth, breadth=shape.depth)
    return shape


def sizes(shape: SectionShape) -> list[float]:
    if shape.shape == "zee" and not shape.lip:
        shape = replace(shape, angle=0.0)  # of the lip
    return [getattr(shape, size) for size in SIZES]


def is_measured(solid: TopoDS_Solid, shape: SectionShape, within: float = 1e-3) -> None:
    found = measure_section(solid)
    assert found is not None
    assert (found.shape.shape, found.pitch, found.corners) == (shape.shape, 0.0, "")
    assert sizes(found.shape) == pytest.approx(sizes(lying(shape)), abs=within)


def bodies(shape: SectionShape) -> Iterator[TopoDS_Solid]:
    """Members of a section: square, mitred, notched, notched flush with a wall, and turned in space."""
    length = 6 * max(shape.depth, shape.width) + 300
    square = raised(shape.section(), length, SQUARE)
    yield realise(square)
    yield realise(raised(shape.section(), length, MITRED))
    yield realise(notched(square, shape, 0.3 * min(shape.depth, shape.width)))
    yield moved(realise(notched(square, shape, shape.thickness)))


def member(solid: TopoDS_Solid, number: int = 0) -> Piece:
    return Piece(f"girt {number}", "girt", (), solid, Place((0.0, 500.0 * number, 0.0)))


def typed(solid: TopoDS_Solid, units: str) -> str:
    """What the lists print, without the catalogue's name."""
    return section_text(member(solid), units).split(" (")[0]  # type: ignore[arg-type]  # both are tried


@st.composite
def described(draw: st.DrawFn) -> SectionShape:
    """Sections that a person may type."""
    kind = draw(st.sampled_from(["tube", "cee", "zee", "hat", "angle", "plate"]))
    depth, breadth = (draw(st.integers(20, 400)) for _ in range(2))
    thickness = draw(st.sampled_from(["0.6", "1", "1.5", "3", "6.35"]))
    words = {
        "cee": ["lip", "radius"],
        "zee": ["lip", "angle", "radius", "wider"],
        "hat": ["angle", "flange", "radius"],
        "angle": ["radius"],
    }.get(kind, [])
    size = f"{depth}x{thickness}" if kind == "plate" else f"{depth}x{breadth}x{thickness}"
    numbers = {"radius": st.integers(0, 9), "angle": st.integers(30, 90)}
    chosen = draw(st.fixed_dictionaries({}, optional={w: numbers.get(w, st.integers(0, 90)) for w in words}))
    try:
        return parse_section(f"{kind} {size} mm " + " ".join(f"{word} {n}" for word, n in chosen.items()))
    except Unreadable:
        assume(False)
        raise


@pytest.mark.parametrize("name", sections())
def test_every_catalogued_section_is_named_as_what_it_is(name: str) -> None:
    shape = sections()[name]
    for solid in bodies(shape):
        is_measured(solid, shape)
        for units in ("ft-in", "mm"):
            text = section_text(member(solid), units)  # type: ignore[arg-type]  # both are tried
            words, _, listed = text.partition(" (")
            assert listed == f"{name})"
            assert sizes(parse_section(words)) == pytest.approx(sizes(lying(shape)), abs=0.02)


@settings(
    max_examples=500 if LONG else 50,
    derandomize=not LONG,
    deadline=None,
    suppress_health_check=[HealthCheck.filter_too_much, HealthCheck.too_slow],
)
@example(parse_section("cee 20x33x0.6 mm radius 0"))  # its notch meets its lip
@example(parse_section("cee 4x4x0.059"))
@example(parse_section("cee 2x6x0.059 lip 0.3"))
@example(parse_section("zee 8x2.25x0.059 lip 0"))
@example(parse_section("zee 8x2.25x0.059 angle 90"))
@example(parse_section("zee 8x2.25x0.059 wider 1/8"))
@example(parse_section("hat 1.5x1.25x0.0346 angle 90"))
@example(parse_section("angle 2x3x0.25 radius 0"))
@example(parse_section("tube 2x6x0.12"))
@given(described())
def test_any_section_is_named_as_what_was_typed(shape: SectionShape) -> None:
    assume(shape.shape != "tube" or shape.thickness < min(shape.depth, shape.breadth) / 5)
    for solid in bodies(shape):
        is_measured(solid, shape)
    for units in ("ft-in", "mm"):
        assert sizes(parse_section(typed(solid, units))) == pytest.approx(sizes(lying(shape)), abs=0.02)


def test_a_short_member_mitred_at_both_ends_is_whole_nowhere_and_still_known() -> None:
    """Two parallel cuts at 45 degrees, nearer than it is deep: a cut square across it misses a part."""
    for name in ("9CS2.5x059", "8ZS2.25x059", "800S200-54"):
        shape = sections()[name]
        reach = 0.95 * shape.depth
        is_measured(realise(raised(shape.section(), reach, ((0.0, 1.0), (0.0, 1.0)))), shape)


def test_a_tube_that_is_a_channel_for_most_of_its_length_is_a_tube() -> None:
    """Its upper third is cut away over seven tenths of it."""
    shape = sections()["HSS4X4X1/4"]
    tube = raised(shape.section(), 3000.0, SQUARE)
    tool = block((-60.0, shape.depth / 6), (60.0, 60.0), (0.1, 0.8), 3000.0)
    is_measured(realise(Cut(tube, (tool,))), shape)


@pytest.mark.parametrize("pitch", [1.2, 14.036243, 45.0])
@pytest.mark.parametrize("cee", ["cee 6x2x0.059", "cee 9x2.5x0.059 lip 0.773", "cee 6x2x0.059 lip 0"])
def test_an_eave_strut_is_a_cee_to_the_pitch(cee: str, pitch: float) -> None:
    shape = parse_section(cee)
    for slopes in (SQUARE, MITRED):
        solid = moved(realise(raised(strut_section(shape, pitch), 3000.0, slopes)))
        found = measure_section(solid)
        assert found is not None
        assert (found.shape.shape, found.corners) == ("cee", "")
        assert found.pitch == pytest.approx(pitch, abs=1e-4)
        assert sizes(found.shape) == pytest.approx(sizes(shape), abs=1e-3)


def test_how_a_strut_is_said() -> None:
    strut = realise(raised(strut_section(parse_section("9CS2.5x059"), 14.036243), 3000.0, SQUARE))
    said = "cee to the pitch 9 x 2.5 x 0.059 lip 0.773 at 3/12"
    assert section_text(member(strut), "ft-in") == said, "a bent row of the catalogue is not that row"
    assert (
        section_text(member(strut), "mm") == "cee to the pitch 228.6 x 63.5 x 1.5 lip 19.63 mm at 14.04 deg"
    )


@pytest.mark.parametrize("name", sections())
@pytest.mark.parametrize("size", SIZES)
def test_a_section_that_differs_in_one_size_does_not_get_the_name(name: str, size: str) -> None:
    shape = sections()[name]
    if getattr(shape, size):
        assert listed_as(replace(shape, **{size: getattr(shape, size) + 0.02})) != name
        assert listed_as(shape) == name


def test_a_cee_with_another_lip_is_no_row_of_the_catalogue() -> None:
    """The row has a lip of 0.773 in; what `cee 9x2.5x0.059` fills in is 3/4."""
    solid = realise(raised(parse_section("cee 9x2.5x0.059").section(), 3000.0, SQUARE))
    assert section_text(member(solid), "ft-in") == "cee 9 x 2.5 x 0.059"


@pytest.mark.parametrize("name", ["9CS2.5x059", "8ZS2.25x059", "150F125-33", "HSS4X4X1/4"])
def test_bends_that_a_typed_section_has_not_are_said(name: str) -> None:
    """Drawn sharp, as sections from elsewhere often are: the shape is known, the name is not given."""
    drawn = sections()[name].section()
    sharp = Section(*_with_radii(drawn, lambda _: 0.0))
    wider = Section(*_with_radii(drawn, lambda radius: 1.2 * radius))
    shape = sections()[name]
    for section, said in ((sharp, "sharp"), (wider, "rounded otherwise")):
        text = section_text(member(realise(raised(section, 3000.0, SQUARE))), "ft-in")
        assert text.startswith(f"{shape.shape} {shape.depth / INCH:g} x ")
        assert text.endswith(said)
        assert "radius" not in text
        assert "(" not in text


def _with_radii(section: Section, change: object) -> tuple[object, object]:
    def ring(corners: tuple[tuple[float, float, float], ...]) -> tuple[tuple[float, float, float], ...]:
        return tuple((x, y, change(r)) for x, y, r in corners)  # type: ignore[operator]  # a function

    return ring(section.outer), tuple(ring(hole) for hole in section.holes)


@pytest.mark.parametrize(
    "ring",
    [
        ((0, 0), (100, 0), (100, 5), (0, 8)),  # a wedge
        ((0, 0), (80, 0), (80, 5), (5, 5), (5, 60), (0, 60), (0, 30), (-9, 30), (-9, 20), (0, 20)),  # a tee
        ((0, 0), (60, 0), (60, 5), (5, 5), (5, 100), (45, 100), (45, 105), (0, 105)),  # unequal flanges
        ((0, 0), (60, 0), (60, 5), (7, 5), (7, 60), (0, 60)),  # legs of two thicknesses
        ((0, 0), (60, 0), (60, 20), (40, 20), (40, 40), (0, 40)),  # legs of 20 and 40
    ],
    ids=["wedge", "tee", "unequal", "two thicknesses", "step"],
)
def test_what_is_none_of_the_shapes_is_not_called_one(ring: tuple[tuple[float, float], ...]) -> None:
    section = Section(tuple((float(x), float(y), 0.0) for x, y in ring))
    text = section_text(member(realise(raised(section, 2000.0, SQUARE))), "mm")
    assert text.startswith("shaped ")


def test_what_is_built_up_on_a_member_does_not_change_its_name() -> None:
    """A plate welded across its foot, wider than it is."""
    plate = Prism(parse_section("plate 12x6").section(), (0.0, 0.0, 0.0), (0.0, 0.0, 9.0))
    post = raised(sections()["HSS4X4X1/4"].section(), 3000.0, SQUARE)
    solid = realise(Joined(((post, Place()), (plate, Place((0.0, 0.0, -9.0))))))
    is_measured(solid, sections()["HSS4X4X1/4"])


def test_step_keeps_the_names(tmp_path: Path) -> None:
    """Every row, square and mitred and notched, written and read back."""
    solids = [solid for shape in sections().values() for solid in bodies(shape)]
    model = Model("sections", "ft-in", tuple(member(solid, i) for i, solid in enumerate(solids)))
    write_step(model, tmp_path / "sections.step")
    read = read_step(tmp_path / "sections.step")
    before, after = ([section_text(piece, "ft-in") for piece in one.pieces] for one in (model, read))
    assert before == after
    assert [text.split(" (")[1][:-1] for text in after] == [name for name in sections() for _ in range(4)]
