"""What is seen of bodies in a plane: their flat faces, nearest first, less what stands before them."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

import numpy as np
import shapely
from shapely.geometry import Polygon

from ..measure.clad_planes import CladPlane
from ..measure.faces import Vectors, flats
from ..measure.round_bar import RoundBar, round_bar
from ..measure.snap import ASIDE, snapped
from ..measure.standing import standing_corners
from ..pieces import Piece
from ..place import Place

FACING = 0.05
"""A face is looked at whose normal leans this much toward the eye at least."""
SLIVER = 0.5
"""mm; what is narrower is nothing to see."""
GRID = 1e-3
"""mm; the grid that what is drawn lies on."""
RANK = 1e-3
"""mm by which a sheet is taken to stand before the one that it lies on."""


@dataclass(frozen=True, eq=False)
class Flat:
    """A flat of a piece in a view's plane. near: how far it stands toward the eye (mm)."""

    piece: Piece
    area: Polygon
    near: float


def on_grid(points: Vectors) -> Vectors:
    """Points on the grid, so that noise in their last digits decides nothing."""
    found: Vectors = np.floor((points + ASIDE) / GRID + 0.5) * GRID
    return found


def in_plane(frame: Place, piece: Piece) -> Vectors:
    """(n, 3) the corners of a piece in a frame."""
    axes = np.array([frame.x, frame.y, frame.z])
    return on_grid((standing_corners(piece) - np.array(frame.origin)) @ axes.T)


def box_in(frame: Place, piece: Piece) -> tuple[Vectors, Vectors]:
    """The least and the greatest corner of a piece in a frame."""
    points = in_plane(frame, piece)
    return points.min(axis=0), points.max(axis=0)


def flats_of(frame: Place, piece: Piece, facing: float = FACING) -> Iterator[Flat]:
    """The flats of a piece that are seen from along a frame's third axis; all that shows of a round bar."""
    if bar := round_bar(piece.solid):
        yield _bar(frame, piece, bar)
        return
    normals, _, rings = flats(piece.solid)
    at = frame.within(piece.place)
    axes, origin = np.array([at.x, at.y, at.z]), np.array(at.origin)
    seen = normals @ axes[:, 2] > facing if len(normals) else np.zeros(0, dtype=bool)
    for number in np.flatnonzero(seen):
        points = [on_grid(ring @ axes + origin) for ring in rings[number]]
        if not points:
            continue
        area = Polygon(points[0][:, :2], [ring[:, :2] for ring in points[1:]]).buffer(0)
        if not area.buffer(-SLIVER / 2).is_empty:
            yield Flat(piece, area, float(points[0][:, 2].mean()))


def _bar(frame: Place, piece: Piece, bar: RoundBar) -> Flat:
    points = in_plane(frame, piece)
    hull = shapely.MultiPoint(points[:, :2]).convex_hull
    return Flat(piece, hull, float(points[:, 2].mean()) + bar.diameter / 2)


def sheet_flats(plane: CladPlane) -> Iterator[Flat]:
    """Each sheet of a plane as one flat, before the ones that it lies on."""
    under: dict[str, set[str]] = defaultdict(set)
    for lap in plane.laps:
        under[lap.upper.piece.name].add(lap.under.piece.name)
    ranks = _ranks(under)
    for sheet in plane.sheets:
        yield Flat(
            sheet.piece,
            shapely.transform(sheet.outline, on_grid),
            RANK * (1 + ranks.get(sheet.piece.name, 0)),
        )


def _ranks(under: dict[str, set[str]]) -> dict[str, int]:
    """How many lie below each, as far as laps go round in no ring."""
    ranks: dict[str, int] = dict.fromkeys(under, 0)
    for _ in range(len(under) + 1):
        raised = {one: 1 + max(ranks.get(other, 0) for other in others) for one, others in under.items()}
        if raised == ranks:
            break
        ranks = raised
    return ranks


def visible(flats: Iterable[Flat]) -> list[tuple[Piece, shapely.Geometry]]:
    """What is seen of each piece, in the order first met from the eye on."""
    order = sorted(flats, key=lambda flat: (-snapped(flat.near, RANK), flat.piece.name, flat.area.bounds))
    areas = [flat.area for flat in order]
    tree = shapely.STRtree(areas)
    parts: dict[str, list[shapely.Geometry]] = defaultdict(list)
    pieces: dict[str, Piece] = {}
    for i, flat in enumerate(order):
        before = [areas[j] for j in sorted(tree.query(flat.area)) if j < i]
        left = flat.area.difference(shapely.union_all(before)) if before else flat.area
        if not left.is_empty:
            parts[flat.piece.name].append(left)
            pieces[flat.piece.name] = flat.piece
    found = []
    for name, seen in parts.items():
        whole = shapely.union_all([part.buffer(0.01, join_style="mitre") for part in seen])
        kept = [part for part in shapely.get_parts(whole) if not part.buffer(-SLIVER / 2).is_empty]
        if kept:
            found.append((pieces[name], tidy(shapely.multipolygons(kept))))
    return found


def tidy(area: shapely.Geometry) -> shapely.Geometry:
    """An area on a grid and in one order of its points, whatever order its solid's faces came in."""
    return shapely.normalize(shapely.set_precision(area, GRID))


def rims(area: shapely.Geometry) -> Iterator[tuple[tuple[float, float], ...]]:
    """The closed rings of an area, without corners on straight lines."""
    for part in shapely.get_parts(area):
        if part.geom_type == "Polygon":
            for ring in (part.exterior, *part.interiors):
                yield coordinates(ring.simplify(0.02))[:-1]


def coordinates(line: shapely.Geometry) -> tuple[tuple[float, float], ...]:
    """The points of a line."""
    return tuple((float(x), float(y)) for x, y in line.coords)


def lines_in(lines: shapely.Geometry, window: Polygon | None) -> Iterator[tuple[tuple[float, float], ...]]:
    """The parts of lines inside a window, joined end to end."""
    cut = lines if window is None else lines.intersection(window)
    if cut.is_empty:
        return
    merged = shapely.normalize(shapely.line_merge(shapely.multilinestrings(_strings(cut))))
    for part in shapely.get_parts(merged):
        if part.geom_type == "LineString" and part.length > SLIVER:
            yield coordinates(part)


def _strings(geometry: shapely.Geometry) -> Sequence[shapely.Geometry]:
    return [part for part in _flattened(geometry) if part.geom_type == "LineString" and part.length > 0]


def _flattened(geometry: shapely.Geometry) -> Iterator[shapely.Geometry]:
    for part in shapely.get_parts(geometry):
        if part.geom_type.startswith("Multi") or part.geom_type == "GeometryCollection":
            yield from _flattened(part)
        elif part.geom_type == "LinearRing":
            yield shapely.LineString(part.coords)
        else:
            yield part
