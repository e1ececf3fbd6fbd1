"""DXF (AutoCAD 2010) of a page: its views in their true size, in inches or mm, a layer for each pen.

Views stand as on paper, as far apart as the smallest scale wants; texts are as high as they are on paper at
their view's scale. Dimensions are DIMENSION entities with our texts, since a reader would else show decimals.
"""

from __future__ import annotations

import io
from collections.abc import Sequence

from ezdxf.colors import RGB
from ezdxf.document import Drawing
from ezdxf.enums import InsertUnits, TextEntityAlignment
from ezdxf.filemanagement import new
from ezdxf.layouts.layout import Modelspace

from ..place import Point2
from ..units import INCH
from .dimensions import ABOVE, APART, BEYOND, GAP, ZERO, along, direction, spread
from .font import shown
from .ink import chords, hatched, word
from .pens import DASHES, STYLES, Pen, Size, Style
from .steady_dxf import same_every_time
from .values import (
    Arc,
    Dimension,
    Hatch,
    Image,
    Line,
    Page,
    Polyline,
    RunningDimension,
    Shape,
    Text,
    View,
    settled,
)

LETTERS = "DejaVu Sans"
WHITE = "#ffffff"
ALIGN = {
    "left": TextEntityAlignment.LEFT,
    "middle": TextEntityAlignment.CENTER,
    "right": TextEntityAlignment.RIGHT,
}


def dxf(page: Page) -> bytes:
    """The bytes of a page as DXF; pictures are left out."""
    text = io.StringIO()
    with same_every_time():
        _Writer(page).drawing().write(text)
    return text.getvalue().encode("utf-8", "surrogateescape")


class _Writer:
    """A drawing as it comes together."""

    def __init__(self, page: Page) -> None:
        feet = page.units != "mm"
        self._page, self._style = page, STYLES[page.units]
        self._unit = 1 / INCH if feet else 1.0
        self._units = InsertUnits.Inches if feet else InsertUnits.Millimeters
        self._apart = max((view.scale.ratio for view in page.views), default=1.0)
        self._file: Drawing = new("R2010", units=self._units)
        self._file.header["$MEASUREMENT"] = 0 if feet else 1
        self._space: Modelspace = self._file.modelspace()

    def drawing(self) -> Drawing:
        """The page in it."""
        self._file.styles.add(LETTERS, font="DejaVuSans.ttf")
        for pen in Pen:
            kind = "Continuous"
            if pen in DASHES:
                kind = f"ribwright {pen}"
                parts = [part if i % 2 == 0 else -part for i, part in enumerate(DASHES[pen])]
                self._file.linetypes.add(kind, [sum(DASHES[pen]), *parts])
            layer = self._file.layers.add(pen.value, linetype=kind)
            layer.dxf.lineweight = round(100 * self._style.width(pen))
        for view in self._page.layers:
            for shape in view.shapes:
                _View(self._file, self._space, view, self._style, self._unit, self._apart).put(shape)
        paper = self._page.paper
        reach = (paper.width * self._apart * self._unit, paper.height * self._apart * self._unit)
        self._space.reset_extents((0, 0, 0), (*reach, 0))
        self._file.set_modelspace_vport(reach[1] * 1.05, (reach[0] / 2, reach[1] / 2))
        return self._file


class _View:
    """One view being put into a drawing."""

    def __init__(
        self, file: Drawing, space: Modelspace, view: View, style: Style, unit: float, apart: float
    ) -> None:
        own = not view.name and view.scale.ratio == 1.0  # the paper itself
        self._file, self._space, self._style, self._unit = file, space, style, unit
        self._at = (0.0, 0.0) if own else (view.at[0] * apart * unit, view.at[1] * apart * unit)
        self._grow = apart if own else 1.0
        self._paper = (apart if own else view.scale.ratio) * unit
        self._view = view

    def _on(self, point: Point2) -> Point2:
        k = self._grow * self._unit
        return settled(self._at[0] + point[0] * k), settled(self._at[1] + point[1] * k)

    def put(self, shape: Shape) -> None:
        """Adds a shape."""
        match shape:
            case Line():
                self._line((shape.start, shape.end), shape.pen)
            case Polyline():
                self._polyline(shape)
            case Arc():
                self._line(chords(shape), shape.pen)
            case Text():
                self._text(shape)
            case Dimension():
                self._dimension(shape)
            case RunningDimension():
                self._running(shape)
            case Hatch():
                spacing = shape.spacing * self._paper / self._unit / self._grow
                for pair in hatched([*map(tuple, shape.rings)], shape.turn, spacing):
                    self._line(pair, Pen.HATCH)
            case Image():
                pass

    def _line(self, points: Sequence[Point2], pen: Pen, *, closed: bool = False) -> None:
        attributes = {"layer": pen.value, "ltscale": self._paper}
        self._space.add_lwpolyline([self._on(p) for p in points], close=closed, dxfattribs=attributes)

    def _polyline(self, shape: Polyline) -> None:
        if shape.fill and shape.fill != WHITE:
            red, green, blue = (int(shape.fill[i : i + 2], 16) for i in (1, 3, 5))
            hatch = self._space.add_hatch(dxfattribs={"layer": (shape.pen or Pen.HATCH).value})
            hatch.set_solid_fill(rgb=RGB(red, green, blue))
            hatch.paths.add_polyline_path([self._on(p) for p in shape.points], is_closed=True)
        if shape.pen:
            self._line(shape.points, shape.pen, closed=shape.closed)

    def _text(self, shape: Text) -> None:
        height = word(shape, self._view, self._style).height * self._paper
        attributes = {"layer": Pen.OUTLINE.value, "style": LETTERS, "rotation": shape.turn}
        entity = self._space.add_text(shown(shape.text), height=height, dxfattribs=attributes)
        entity.set_placement(self._on(shape.at), align=ALIGN[shape.anchor])

    def _dimstyle(self) -> str:
        """The style of dimensions at this view's scale."""
        name = f"ribwright {self._style.name} {self._paper / self._unit:g}"
        if name not in self._file.dimstyles:
            self._file.dimstyles.new(
                name,
                dxfattribs={
                    "dimtxsty": LETTERS,
                    "dimtxt": self._style.heights[Size.SMALL],
                    "dimasz": self._style.arrow,
                    "dimexo": GAP,
                    "dimexe": BEYOND,
                    "dimgap": ABOVE,
                    "dimtad": 1,
                    "dimscale": self._paper,
                    "dimlfac": 1.0,
                },
            )
        return name

    def _dimension(self, shape: Dimension) -> None:
        start, end, at = (self._on(point) for point in (shape.start, shape.end, shape.at))
        self._space.add_linear_dim(
            base=at, p1=start, p2=end, angle=shape.turn, text=shown(shape.text), dimstyle=self._dimstyle(),
            dxfattribs={"layer": Pen.DIMENSION.value},
        ).render()  # fmt: skip

    def _running(self, shape: RunningDimension) -> None:
        """An ordinate dimension a point, its leader bent where texts would touch."""
        upright = shape.turn == 90.0
        way, across = direction(shape.turn), direction(shape.turn + 90)
        zero, at = self._on(shape.zero), self._on(shape.at)
        hook, said = ((shape.zero,), (ZERO,)) if shape.hooked else ((), ())
        points, texts = [self._on(point) for point in (*hook, *shape.points)], (*said, *shape.texts)
        pitch = (self._style.heights[Size.SMALL] + APART) * self._paper
        places = [p[0] * way[0] + p[1] * way[1] for p in points]
        order = sorted(range(len(points)), key=lambda i: places[i])
        spots = dict(zip(order, spread([places[i] for i in order], pitch), strict=True))
        for i, point in enumerate(points):
            rise = (at[0] - point[0]) * across[0] + (at[1] - point[1]) * across[1]
            offset = along(along((0.0, 0.0), way, spots[i] - places[i]), across, rise)
            self._space.add_ordinate_dim(
                feature_location=point, offset=offset, dtype=0 if upright else 1, origin=zero,
                rotation=0.0 if upright else shape.turn,
                text=shown(texts[i]), dimstyle=self._dimstyle(),
                dxfattribs={"layer": Pen.DIMENSION.value},
            ).render()  # fmt: skip
