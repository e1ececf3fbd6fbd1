"""A screw measured off its solid: shank diameter and length under its head."""

from __future__ import annotations

from collections import Counter

import numpy as np
from OCP.BRepAdaptor import BRepAdaptor_Surface
from OCP.GeomAbs import GeomAbs_Cylinder
from OCP.TopAbs import TopAbs_FACE
from OCP.TopExp import TopExp_Explorer
from OCP.TopoDS import TopoDS, TopoDS_Solid

from .faces import Vectors, body
from .member import MeasuredMember, measure_member
from .round_body import inertia, measure_body

SAME = 1e-3  # mm
LONGEST, THICKEST = 300.0, 20.0
"""mm; a longer or thicker turned body is taken for no screw. Ours."""
HEAD, SLENDER = 1.3, 1.5
"""How many times its shank's diameter a screw's head is wide, and the shank long, at least. Ours."""
FEWEST = 5  # flats that a turned body is drawn in
ROUND = 1e-3  # share by which a turned body's two moments across may differ


def screw_size(solid: TopoDS_Solid) -> tuple[float, float] | None:
    """(diameter, length under the head) of a body turned about one axis with a head on one end, mm.

    It may be round, or drawn in flats and then is measured across its corners. None for other bodies.
    """
    curved = body(solid).curved
    whole = measure_body(solid)
    if whole.length > LONGEST or whole.width < 0.8 * whole.depth:
        return None
    found = _round(solid, whole) if curved else _faceted(solid)
    if found is None:
        return None
    diameter, length = found
    headed = whole.width > HEAD * diameter and SLENDER * diameter < length < whole.length - SAME
    return found if headed and diameter < THICKEST else None


def _faceted(solid: TopoDS_Solid) -> tuple[float, float] | None:
    """Of a body drawn in flats: as many corners in each ring about its axis, at one distance from it."""
    measured = measure_member(solid)
    radius, heights = _about_axis(measured.ways[0].points)
    off = radius > SAME
    keys = zip(np.round(heights[off], 2).tolist(), np.round(radius[off], 2).tolist(), strict=True)
    rings = set(Counter(keys).values())
    if len(rings) != 1 or rings.pop() < FEWEST:
        return None
    return shank(measured)


def _round(solid: TopoDS_Solid, whole: MeasuredMember) -> tuple[float, float] | None:
    """Of a round body: its longest cylinder, and from the tip to where that ends under the head."""
    axes, moments, middle = inertia(solid)
    if moments[2] - moments[1] > ROUND * moments[2]:
        return None
    best = (0.0, 0.0, 0.0, 0.0)  # length, radius, from, to
    explorer = TopExp_Explorer(solid, TopAbs_FACE)
    while explorer.More():
        surface = BRepAdaptor_Surface(TopoDS.Face_s(explorer.Current()))
        if surface.GetType() == GeomAbs_Cylinder:
            place = surface.Cylinder().Axis()
            way, at = place.Direction(), place.Location()
            along = np.array([way.X(), way.Y(), way.Z()]) @ axes[1]
            spot = np.array([at.X(), at.Y(), at.Z()])
            aside = np.linalg.norm(np.cross(spot - middle, axes[1]))
            low, high = sorted(
                float(spot @ axes[1] + along * end)
                for end in (surface.FirstVParameter(), surface.LastVParameter())
            )
            if abs(along) > 1 - SAME and aside < 10 * SAME and high - low > best[0]:
                best = (high - low, float(surface.Cylinder().Radius()), low, high)
        explorer.Next()
    length, radius, low, high = best
    if not length:
        return None
    foot = float(np.array(whole.ways[0].bench.origin) @ axes[1])
    heavy = float(middle @ axes[1]) > foot + whole.length / 2  # the head's side
    return 2 * radius, high - foot if heavy else foot + whole.length - low


def shank(measured: MeasuredMember) -> tuple[float, float]:
    """(diameter, length under the head) of a turned body on the bench, mm.

    The shank is the ring of corners nearest the axis, but for those on it; the head's seat is where
    the shank ends. Faceted bodies are measured across their corners.
    """
    points = measured.ways[0].points
    radius, _ = _about_axis(points)
    least = float(radius[radius > SAME].min())
    ring = points[np.abs(radius - least) < SAME][:, 1]
    tip = points[radius <= SAME][:, 1]
    ends = tip if len(tip) else points[:, 1]
    return 2 * least, float(np.abs(ring - _tip(ends, ring)).max())


def head_kind(measured: MeasuredMember) -> str:
    """What head a turned body on the bench has: "hex head with washer" where it steps in above its seat,
    "pan head" where it does not; "" for a round body, of which only its ends show."""
    points = measured.ways[0].points
    radius, heights = _about_axis(points)
    wide = radius > SAME
    if not wide.any():
        return ""
    rings = set(zip(np.round(heights[wide], 2).tolist(), np.round(radius[wide], 2).tolist(), strict=True))
    stepped = sum(count > 1 for count in Counter(height for height, _ in rings).values())
    return "hex head with washer" if stepped > 1 else "pan head"


def _about_axis(points: Vectors) -> tuple[Vectors, Vectors]:
    """(n,) how far points on the bench are from the axis in the middle, and how far along it."""
    axis = (points[:, [0, 2]].max(axis=0) + points[:, [0, 2]].min(axis=0)) / 2
    return np.hypot(*(points[:, [0, 2]] - axis).T), points[:, 1]


def _tip(ends: Vectors, ring: Vectors) -> float:
    """Of the points on the axis, the tip: the one nearer the shank's own ring."""
    return float(min(ends, key=lambda y: float(np.abs(ring - y).min())))
