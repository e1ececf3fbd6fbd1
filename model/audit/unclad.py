"""Faces that no sheet is on: framing that bounds the building with nothing before it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np
import shapely

from ..findings import Code, Finding
from ..measure.faces import Vectors, flats
from ..terms import Terms
from .clad import BEHIND, EAVE, Clad
from .found import found
from .rays import across
from .site import Box, Numbers, Site, point

FRAMING = 3
"""Members that lie in one plane, at the least: fewer are no face that sheets are fixed to."""
LARGE = 1e6
"""mm2; framing around less of a plane is the end of something."""
DOWN = -0.1
"""Rise of a normal under which a plane faces the ground."""
ALIKE = 1e-3
"""How far a normal may be off another of the same face, on each axis."""


def unclad(site: Site, faces: Sequence[Clad], terms: Terms) -> Iterator[tuple[Finding, Box]]:
    """Outermost planes of members, all else behind them, that no sheets lie on and that were not asked bare.

    A model without any sheets is a frame, and is not judged.
    """
    if not faces:
        return
    behind = BEHIND + site.pressed
    covered = np.array([*(face.axes[2] for face in faces), *terms.bare])
    members, normals, heights, rings = _flats(site)
    corners = np.vstack(rings) if rings else np.empty((0, 3))
    for normal in np.unique(np.round(normals, 4) + 0.0, axis=0):
        if normal[2] < DOWN or (np.abs(covered - normal).max(axis=1) < ALIKE).any():
            continue
        outermost = float((corners @ normal).max())
        lying = np.flatnonzero(
            (np.abs(normals - normal).max(axis=1) < ALIKE) & (heights > outermost - behind)
        )
        if len(set(members[lying].tolist())) >= FRAMING:
            yield from _bare(site, normal, members[lying], [rings[k] for k in lying.tolist()])


def _flats(site: Site) -> tuple[Numbers, Vectors, Vectors, list[Vectors]]:
    """The flat faces of all members in the building: whose (n,), normals (n, 3), heights (n,),
    outer rings."""
    whose: list[int] = []
    normals, rings = [np.empty((0, 3))], []
    for k in site.listed("members").tolist():
        turn, origin = site.turns[k], site.origins[k]
        own, _, faces = flats(site.bodies[k].solid)
        normals.append(own @ turn.T)
        whose += [k] * len(own)
        rings += [face[0] @ turn.T + origin for face in faces]
    every = np.vstack(normals)
    heights = np.array([normal @ ring[0] for normal, ring in zip(every, rings, strict=True)])
    return np.array(whose, dtype=np.intp), every, heights, rings


def _bare(
    site: Site, normal: Vectors, members: Numbers, rings: Sequence[Vectors]
) -> Iterator[tuple[Finding, Box]]:
    points = np.vstack(rings)
    hull = shapely.MultiPoint(points @ across(normal).T).convex_hull
    if hull.area < LARGE:
        return
    middle = (points.min(axis=0) + points.max(axis=0)) / 2
    away = [float(np.linalg.norm(ring.mean(axis=0) - middle)) for ring in rings]
    nearest = site.bodies[int(members[int(np.argmin(away))])]
    finding = found(Code.UNCLAD, (nearest,), np.array(point(middle)), hull.area, None, "area")
    low, high = points.min(axis=0) - EAVE, points.max(axis=0) + EAVE
    if normal[2] > -DOWN:  # what is open to the sky is said on a neighbour's plane, at any height
        low[2], high[2] = -np.inf, np.inf
    yield finding, (low, high)
