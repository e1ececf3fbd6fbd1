"""Every plane of sheets as seen square on, for who sees no picture: its sheets with their marks, as SVG."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
import shapely

from ...measure.clad_planes import CladPlane, clad_planes
from ...measure.laid_sheets import LaidSheet
from ...pieces import Model
from .marked_up import capital, shown
from .paints import shown as colour_of
from .text import in_order

EDGE = 350.0  # mm around a drawing
LETTERS = 210.0  # mm high
DARK = 0.45  # of light; letters on what is darker are white


def elevations(model: Model) -> str:
    """A figure for each plane, with the outlines of its sheets as they were measured."""
    planes = sorted(clad_planes(model), key=lambda plane: in_order(plane.name))
    return "".join(map(_figure, planes))


def _figure(plane: CladPlane) -> str:
    left, low, right, high = plane.outline.bounds
    name = shown(capital(plane.name))
    box = f"{left - EDGE:.0f} {-high - EDGE:.0f} {right - left + 2 * EDGE:.0f} {high - low + 2 * EDGE:.0f}"
    bodies = "".join(_sheet(sheet) for sheet in plane.sheets)
    return (
        f'<figure><svg role="img" aria-label="{name}, from outside" viewBox="{box}">{bodies}</svg>'
        f"<figcaption>{name}, from outside: {len(plane.sheets)} sheets</figcaption></figure>"
    )


def _sheet(sheet: LaidSheet) -> str:
    colour = colour_of(sheet.piece)
    path = "".join(_ring(ring) for ring in _rings(sheet.outline))
    u, v = sheet.outline.representative_point().coords[0]
    light = np.array([int(colour[k : k + 2], 16) / 255 for k in (1, 3, 5)]) @ (0.3, 0.6, 0.1)
    ink = "#ffffff" if light < DARK else "#1d2528"
    return (
        f'<path d="{path}" fill="{colour}" stroke="#1d2528" stroke-width="12" fill-rule="evenodd"/>'
        f'<text x="{u:.0f}" y="{-v:.0f}" font-size="{LETTERS:.0f}" text-anchor="middle" fill="{ink}">'
        f"{shown(sheet.piece.mark)}</text>"
    )


def _rings(outline: shapely.Geometry) -> Iterator[shapely.LinearRing]:
    for part in shapely.get_parts(outline):
        yield part.exterior
        yield from part.interiors


def _ring(ring: shapely.LinearRing) -> str:
    points = " ".join(f"{u:.0f},{-v:.0f}" for u, v in list(ring.coords)[:-1])
    return f"M{points}Z"
