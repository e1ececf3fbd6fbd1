"""Drawn sections against the figures that their makers' associations publish.

The independent reference is the package sectionproperties: it meshes the drawn outline and
integrates; it shares no code with ribwright.
"""

from math import atan2, copysign, cos, hypot, pi, radians, sin, sqrt, tan
from typing import NamedTuple

import pytest
from hypothesis import given
from hypothesis import strategies as st
from ribwright.catalog.sections import parse_section, strut_section
from ribwright.recipe import Section
from sectionproperties.analysis import Section as Analysis
from sectionproperties.pre import Geometry
from shapely.geometry import Polygon

INCH = 25.4
POUNDS_PER_IN3 = 490 / 12**3  # 490 lb/ft3, from memory; it reproduces the published HSS weights
STEPS = 24  # flats that stand for an arc of 90 degrees; they cost 5e-5 of an area


class Figures(NamedTuple):
    """area in2, ix and iy about the centroid in4."""

    area: float
    ix: float
    iy: float


def arcs(ring: tuple[tuple[float, float, float], ...]) -> list[tuple[float, float]]:
    """A ring of rounded corners as points in inches."""
    points = []
    for i, (x, y, radius) in enumerate(ring):
        (ax, ay, _), (bx, by, _) = ring[i - 1], ring[(i + 1) % len(ring)]
        before, after = hypot(x - ax, y - ay), hypot(bx - x, by - y)
        ux, uy, vx, vy = (x - ax) / before, (y - ay) / before, (bx - x) / after, (by - y) / after
        turn = atan2(ux * vy - uy * vx, ux * vx + uy * vy)
        reach, side = radius * tan(abs(turn) / 2), copysign(radius, turn)
        centre = (x - reach * ux - side * uy, y - reach * uy + side * ux)
        steps = max(1, round(STEPS * abs(turn) / (pi / 2))) if radius else 0
        for step in range(steps + 1):
            part = turn * step / steps if steps else 0.0
            dx, dy = side * uy, -side * ux
            px = centre[0] + dx * cos(part) - dy * sin(part)
            py = centre[1] + dx * sin(part) + dy * cos(part)
            points.append((px / INCH, py / INCH))
    return points


def outline(section: Section) -> Polygon:
    """The drawn section in inches."""
    drawn = Polygon(arcs(section.outer), [arcs(hole) for hole in section.holes])
    assert drawn.is_valid
    return drawn


def figures(section: Section) -> Figures:
    geometry = Geometry(outline(section))
    geometry.create_mesh(mesh_sizes=[0])
    analysis = Analysis(geometry)
    analysis.calculate_geometric_properties()
    ix, iy, _ = analysis.get_ic()
    return Figures(analysis.get_area(), ix, iy)


def near(published: float, percent: float = 0.5) -> object:
    return pytest.approx(published, rel=percent / 100)


def test_cee_9cs2_5x059() -> None:
    """AISI D100-17, examples I-8B and II-1B."""
    drawn = figures(parse_section("9CS2.5x059").section())
    assert drawn.area == near(0.881)
    assert drawn.ix == near(10.3)
    assert drawn.ix / 4.5 == near(2.29)
    assert drawn.iy == near(0.697)


def test_zee_8zs2_25x059() -> None:
    """AISI D100-17, example II-2B."""
    drawn = figures(parse_section("8ZS2.25x059").section())
    assert drawn.area == near(0.822)
    assert drawn.ix == near(7.76)


def test_stud_362s162_54() -> None:
    """AISI D100-17, example III-3."""
    assert figures(parse_section("362S162-54").section()).area == near(0.422)


def test_stud_800s200_54() -> None:
    """AISI D100-17, example II-5."""
    assert figures(parse_section("800S200-54").section()).ix / 4 == near(1.64)


def test_stud_600s162_54() -> None:
    """SSMA product technical information (from memory)."""
    drawn = figures(parse_section("600S162-54").section())
    assert drawn.area == near(0.556)
    assert drawn.area * 12 * POUNDS_PER_IN3 == near(1.89)
    assert drawn.ix == near(2.860)


@pytest.mark.parametrize("name", ["087F125-33", "hat 0.875x1.25x0.0346"])
def test_hat_087f125_33(name: str) -> None:
    """SSMA product technical information 2022, page 68; its slope and bends are not published, so 5 %."""
    drawn = figures(parse_section(name).section())
    assert drawn.area == near(0.127, 5)
    assert drawn.area * 12 * POUNDS_PER_IN3 == near(0.432, 5)
    assert drawn.ix == near(0.016, 5)
    assert drawn.iy == near(0.0641, 5)


@pytest.mark.parametrize("name", ["150F125-33", "hat 1.5x1.25x0.0346"])
def test_hat_150f125_33(name: str) -> None:
    """SSMA product technical information 2022, page 68; its slope and bends are not published, so 5 %."""
    drawn = figures(parse_section(name).section())
    assert drawn.area == near(0.171, 5)
    assert drawn.area * 12 * POUNDS_PER_IN3 == near(0.581, 5)
    assert drawn.ix == near(0.055, 5)
    assert drawn.iy == near(0.0848, 5)


@pytest.mark.parametrize(
    ("depth", "width", "wall", "weight", "area"),
    [
        ("2", "2", "1/8", 3.05, 0.840),
        ("3", "2", "3/16", 5.59, 1.54),
        ("4", "4", "1/4", 12.21, 3.37),
        ("6", "4", "1/4", 15.62, 4.30),
    ],
)
def test_hollow_sections(depth: str, width: str, wall: str, weight: float, area: float) -> None:
    """AISC Shapes Database v16: the weight belongs to the nominal wall, the area to 0.93 of it."""
    nominal = parse_section(f"HSS{depth}X{width}X{wall}")
    assert figures(nominal.section()).area * 12 * POUNDS_PER_IN3 == near(weight)
    design = parse_section(f"tube {depth}x{width}x{0.93 * nominal.thickness / INCH:.6f}")
    assert figures(design.section()).area == near(area)


def test_rolled_angle() -> None:
    """L2X2X1/8 weighs 1.65 lb/ft (AISC, from memory); toes are rounded and fillets larger there, so 1 %."""
    assert figures(parse_section("angle 2x2x1/8").section()).area * 12 * POUNDS_PER_IN3 == near(1.65, 1)


@given(st.sampled_from(["cee 9x2.5x0.059 lip 0.773", "cee 8x2x0.0566 lip 0.625"]), st.floats(0, 45))
def test_an_eave_strut_is_its_cee_with_one_bend_opened(name: str, pitch: float) -> None:
    """Opening a bend from 90 to 90 + pitch changes the blank by what the bend takes, worked by hand:
    two legs each lose (R + t) tan(turn / 2) and gain an arc at mid thickness; the lip's bend stays 90."""
    cee = parse_section(name)
    outside, middle = cee.radius + cee.thickness, cee.radius + cee.thickness / 2

    def bend(turn: float) -> float:
        return middle * turn - 2 * outside * tan(turn / 2)

    opened = bend(radians(90 - pitch)) - bend(radians(90))
    expected = outline(cee.section()).area + opened * cee.thickness / INCH**2
    assert outline(strut_section(cee, pitch)).area == pytest.approx(expected, rel=1e-4)


def test_the_reference_itself_on_a_plate() -> None:
    """b d3 / 12, so that a broken reference cannot pass for agreement."""
    assert figures(parse_section("plate 8x3/8").section()) == pytest.approx(
        (3, 0.375 * 8**3 / 12, 8 * 0.375**3 / 12)
    )
    assert sqrt(figures(parse_section("plate 8x3/8").section()).ix / 3) == pytest.approx(8 / sqrt(12))
