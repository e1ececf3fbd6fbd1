"""What a page becomes as PDF, SVG and DXF, read back by readers that share nothing with our writers."""

from __future__ import annotations

import io
from math import isclose
from xml.etree import ElementTree

import ezdxf
import pytest
from ezdxf import recover
from ezdxf.document import Drawing
from ribwright.drawing.dimensions import readable, spread
from ribwright.drawing.dxf import dxf
from ribwright.drawing.font import lacking, shown
from ribwright.drawing.pdf import pdf
from ribwright.drawing.pens import STYLES, Pen, Size
from ribwright.drawing.svg import svg
from ribwright.drawing.values import (
    LETTER,
    Arc,
    Dimension,
    Hatch,
    Line,
    Page,
    Polyline,
    RunningDimension,
    Scale,
    Text,
    View,
)
from ribwright.units import INCH, Units, parse_length
from support.read_pdf import read_pdf

QUARTER = Scale("1/4\" = 1'", 48.0)


def page(units: Units = "ft-in") -> Page:
    """A view with every kind of shape, at 1:48, its origin at (60, 80) on paper."""
    shapes = (
        Polyline(((0, 0), (6096, 0), (6096, 2540), (0, 2540))),
        Dimension((0, 0), (6096, 0), (0, -500), "20'"),
        Dimension((6096, 0), (6096, 2540), (6600, 0), "8' 4\"", 90.0),
        RunningDimension((0, 0), ((25.4, 0), (50.8, 0), (939.8, 0)), ('1"', '2"', "3' 1\""), (0, -1000)),
        RunningDimension((0, 0), ((0, 152.4), (0, 1524)), ('6"', "5'"), (-700, 0), 90.0),
        Hatch((((2000, 500), (3000, 500), (3000, 1500), (2000, 1500)),)),
        Line((0, 1250), (6096, 1250), Pen.HIDDEN),
        Arc((500, 500), 300),
        Text((3000, 2000), "W16", Size.PLAIN, "middle", 0.0, True),
    )
    return Page("one", LETTER, units, (View("one", QUARTER, (60, 80), shapes),), (Text((15, 15), '5-3/4"'),))


def read_dxf(data: bytes) -> Drawing:
    return ezdxf.read(io.StringIO(data.decode("utf-8")))


def test_texts_stand_in_the_pdf_where_they_were_put() -> None:
    (read,) = read_pdf(pdf([page()], "one"))
    assert {one.text for one in read.texts} == {
        *("20'", "8' 4\"", "0", '1"', '2"', "3' 1\"", '6"', "5'", "W16", '5-3/4"')
    }
    (mark,) = read.found("W16")
    assert mark.patched
    x, y = mark.ink.centroid.x, mark.ink.bounds[1]
    assert isclose(x, 60 + 3000 / 48, abs_tol=0.3)
    assert isclose(y, 80 + 2000 / 48, abs_tol=0.1)


def test_no_text_is_lower_than_the_standard() -> None:
    (read,) = read_pdf(pdf([page()], "one"))
    for text in ("20'", "W16", '5-3/4"'):
        (one,) = read.found(text)
        _, low, _, high = one.ink.bounds
        assert high - low >= STYLES["ft-in"].heights[Size.SMALL] - 0.01


def test_equal_pages_give_equal_bytes() -> None:
    for write in (lambda one: pdf([one], "one"), svg, dxf):
        assert write(page()) == write(page())


@pytest.mark.parametrize(("units", "unit"), [("ft-in", INCH), ("mm", 1.0)])
def test_dimensions_in_dxf_measure_what_they_say(units: Units, unit: float) -> None:
    data = dxf(page(units))
    document, auditor = recover.read(io.BytesIO(data))
    assert (auditor.errors, auditor.fixes) == ([], [])
    found = list(document.modelspace().query("DIMENSION"))
    assert len(found) == 9
    for one in found:
        said = parse_length(one.dxf.text)
        measured = one.get_measurement()
        size = measured if isinstance(measured, float) else max(measured, key=abs)
        assert isclose(abs(size) * unit, said, abs_tol=1e-6)
        assert one.get_geometry_block() is not None, "every dimension is drawn"
        assert document.dimstyles.get(one.dxf.dimstyle).dxf.dimlfac == 1.0


def test_layers_of_dxf_are_pens() -> None:
    document = read_dxf(dxf(page()))
    assert {pen.value for pen in Pen} <= {layer.dxf.name for layer in document.layers}
    used = {entity.dxf.layer for entity in document.modelspace()}
    assert used == {"outline", "dimension", "hatch", "hidden"}


def test_svg_holds_its_texts_and_its_size() -> None:
    root = ElementTree.fromstring(svg(page()))
    assert root.attrib["width"] == "279.4mm"
    texts = {one.text for one in root.iter("{http://www.w3.org/2000/svg}text")}
    assert {"20'", "W16", "3' 1\""} <= texts


def test_what_the_font_lacks_is_written_as_what_it_is() -> None:
    assert lacking('Große Halle 5-3/4" ↓') == ""
    assert lacking("a\u4e2d\U0001f3e0\u4e2d") == "\u4e2d\U0001f3e0"
    assert shown("a\u4e2d\U0001f3e0") == "a\\u4e2d\\U0001f3e0"


def test_a_row_is_spread_no_more_than_it_must() -> None:
    assert spread([0.0, 10.0, 20.0], 4.0) == [0.0, 10.0, 20.0]
    assert spread([0.0, 0.0], 4.0) == [-2.0, 2.0]
    assert spread([0.0, 1.0, 1.0, 30.0], 3.0) == pytest.approx([-7 / 3, 2 / 3, 11 / 3, 30.0])


@pytest.mark.parametrize(("turn", "read"), [(0, 0), (90, 90), (-90, 90), (180, 0), (-89.9, 90.1), (200, 20)])
def test_texts_read_from_below_or_from_the_right(turn: float, read: float) -> None:
    assert readable(turn) == pytest.approx(read)
