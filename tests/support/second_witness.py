"""A second witness: a model judged by the kernel's mesher, manifold3d and straight rays, by no code of ours.

It takes from a piece its solid, its place and row as numbers, and its role as a word.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache

import manifold3d
import numpy as np
from OCP.BRep import BRep_Tool
from OCP.BRepMesh import BRepMesh_IncrementalMesh
from OCP.TopAbs import TopAbs_FACE, TopAbs_REVERSED
from OCP.TopExp import TopExp_Explorer
from OCP.TopLoc import TopLoc_Location
from OCP.TopoDS import TopoDS, TopoDS_Solid
from ribwright.pieces import Model, Piece

SCREWS = ("sheet screw", "lap screw", "trim screw")
STEEL = (
    *("column", "rafter", "knee", "post", "base plate", "base rail", "girt", "eave strut", "ledger"),
    *("purlin", "rake angle", "jamb", "header", "sill"),
)
FRAMES = ("column", "rafter", "knee", "post", "base plate")
SHARED = 1.0
"""mm3 that two bodies may seem to share."""
FILM = 1e-4
"""mm; as thick as places are rounded, over any area: bodies that touch."""
RAYS = 400
"""Cast at each side of a building, at random places that are the same at every run."""
SKIN = 60.0
"""mm; steel met so near to a building's outermost steel has no sheet before it."""


WALL_SHEETS = ("wall sheet", "wall light sheet")
BESIDE = 150.0
"""mm; a column as near to a sheet stands at the end of what is clad."""


@dataclass(frozen=True)
class Body:
    """A mesh in the building: points (n, 3), triangles (m, 3)."""

    piece: Piece
    points: np.ndarray
    faces: np.ndarray


def faults(model: Model) -> list[str]:
    """What is wrong, a line each."""
    meshes = {id(piece.solid): meshed(piece.solid) for piece in model.pieces}
    bodies = [body for piece in model.pieces for body in _stood(piece, *meshes[id(piece.solid)])]
    return [
        *_open(model, meshes),
        *_sharing(bodies),
        *_in_air(model, bodies),
        *_uncovered(bodies, model.terms.bare),
    ]


@lru_cache(maxsize=4096)
def meshed(solid: TopoDS_Solid) -> tuple[np.ndarray, np.ndarray]:
    """The kernel's own triangles, points welded to 1e-5 mm."""
    BRepMesh_IncrementalMesh(solid, 0.1, False, 0.5, False)
    points, faces = [], []
    walk = TopExp_Explorer(solid, TopAbs_FACE)
    while walk.More():
        face, where = TopoDS.Face_s(walk.Current()), TopLoc_Location()
        mesh = BRep_Tool.Triangulation_s(face, where)
        start = len(points)
        points += [
            mesh.Node(i + 1).Transformed(where.Transformation()).Coord() for i in range(mesh.NbNodes())
        ]
        turned = face.Orientation() == TopAbs_REVERSED
        for i in range(mesh.NbTriangles()):
            a, b, c = (start + corner - 1 for corner in mesh.Triangle(i + 1).Get())
            faces.append((a, c, b) if turned else (a, b, c))
        walk.Next()
    keys, back = np.unique(np.round(np.array(points), 5), axis=0, return_inverse=True)
    welded = back.reshape(-1)[np.array(faces)]
    a, b, c = welded.T
    return keys, welded[(a != b) & (b != c) & (c != a)]


def _stood(piece: Piece, points: np.ndarray, faces: np.ndarray) -> Iterator[Body]:
    x, y = np.array(piece.place.x), np.array(piece.place.y)
    turn = np.column_stack([x, y, np.cross(x, y)])
    for shift in piece.row or ((0.0, 0.0, 0.0),):
        yield Body(piece, (points + np.array(shift)) @ turn.T + np.array(piece.place.origin), faces)


def _manifold(points: np.ndarray, faces: np.ndarray) -> manifold3d.Manifold:
    corners = np.ascontiguousarray(faces, dtype=np.uint64)
    return manifold3d.Manifold(manifold3d.Mesh64(np.ascontiguousarray(points), corners))


def _open(model: Model, meshes: dict[int, tuple[np.ndarray, np.ndarray]]) -> Iterator[str]:
    first = {id(piece.solid): piece for piece in model.pieces}
    for key, mesh in meshes.items():
        body = _manifold(*mesh)
        if body.status() != manifold3d.Error.NoError or body.volume() <= 0:
            yield f"{first[key].name}: {body.status()}, {body.volume():.1f} mm3"


def _sharing(bodies: list[Body]) -> Iterator[str]:
    """Bodies other than screws that share space."""
    solid = [body for body in bodies if body.piece.role not in SCREWS]
    low = np.array([body.points.min(axis=0) for body in solid])
    high = np.array([body.points.max(axis=0) for body in solid])
    made: dict[int, manifold3d.Manifold] = {}
    for i in range(len(solid)):
        meet = np.all((low < high[i] - 1e-3) & (high > low[i] + 1e-3), axis=1)
        for j in (int(k) for k in np.flatnonzero(meet) if k > i):
            for k in (i, j):
                if k not in made:
                    made[k] = _manifold(solid[k].points, solid[k].faces)
            both = made[i] ^ made[j]
            shared = both.volume()
            if shared > SHARED and 2 * shared / both.surface_area() > FILM:
                yield f"{solid[i].piece.name} and {solid[j].piece.name} share {shared:.1f} mm3"


def _in_air(model: Model, bodies: list[Body]) -> Iterator[str]:
    """Screws, but those of laps, whose axis meets no steel between the underside of the head and the tip."""
    steel = [body for body in bodies if body.piece.role in STEEL]
    low = np.array([body.points.min(axis=0) for body in steel])
    high = np.array([body.points.max(axis=0) for body in steel])
    for body in bodies:
        if body.piece.role not in SCREWS or body.piece.role == "lap screw":
            continue
        tip, head = _ends(body.points)
        box = np.minimum(tip, head) - 1, np.maximum(tip, head) + 1
        near = np.flatnonzero(np.all((low < box[1]) & (high > box[0]), axis=1))
        if not any(len(_met(steel[k], tip, head)) for k in near):
            yield f"{body.piece.name}: a screw at {np.round(head)} meets no steel"


def _ends(points: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """The tip of a screw, and the middle of its widest ring: the underside of its washer or head."""
    centre = points.mean(axis=0)
    _, ways = np.linalg.eigh(np.cov((points - centre).T))
    spread = [np.linalg.norm(np.cross(points - centre, ways[:, k]), axis=1).max() for k in range(3)]
    axis = ways[:, int(np.argmin(spread))]
    away = np.linalg.norm(np.cross(points - centre, axis), axis=1)
    heights = (points - centre) @ axis
    seat = heights[away > 0.98 * away.max()]
    tip = (
        heights.min()
        if abs(heights.min() - seat.mean()) > abs(heights.max() - seat.mean())
        else heights.max()
    )
    under = seat[np.argmin(np.abs(seat - tip))]
    return centre + axis * tip, centre + axis * under


def _met(body: Body, start: np.ndarray, end: np.ndarray) -> np.ndarray:
    """Where a segment crosses a mesh, in mm from its start: Moeller and Trumbore's test."""
    way = end - start
    size = np.linalg.norm(way)
    way = way / size
    a, b, c = (body.points[body.faces[:, k]] for k in range(3))
    one, other = b - a, c - a
    p = np.cross(way, other)
    det = np.einsum("ij,ij->i", one, p)
    keep = np.abs(det) > 1e-9
    a, one, other, p, det = a[keep], one[keep], other[keep], p[keep], det[keep]
    t = start - a
    u = np.einsum("ij,ij->i", t, p) / det
    q = np.cross(t, one)
    v = q @ way / det
    depth = np.einsum("ij,ij->i", other, q) / det
    inside = (u >= -1e-9) & (v >= -1e-9) & (u + v <= 1 + 1e-9) & (depth > 0) & (depth < size)
    return np.sort(depth[inside])


def _uncovered(bodies: list[Body], bare: Sequence[tuple[float, float, float]]) -> Iterator[str]:
    """Rays from all sides and from above: what they meet first is no steel of the outermost layer; of a side
    that was asked bare, none but that of the frames."""
    solid = [body for body in bodies if body.piece.role not in SCREWS]
    mesh = np.concatenate([body.points[body.faces] for body in solid])
    owner = np.repeat(np.arange(len(solid)), [len(body.faces) for body in solid])
    steel = np.concatenate([body.points for body in solid if body.piece.role in STEEL])
    low, high = steel.min(axis=0), steel.max(axis=0)
    places = np.random.default_rng(7).uniform(0.003, 0.997, (RAYS, 2))
    for axis, sign in ((0, 1), (0, -1), (1, 1), (1, -1), (2, -1)):
        others = [k for k in range(3) if k != axis]
        rays = low[others] + places * (high - low)[others]
        first, depth = _first(mesh, rays, axis, sign)
        outermost = low[axis] if sign > 0 else high[axis]
        is_bare = tuple(-sign * (k == axis) + 0.0 for k in range(3)) in bare
        hidden = [role for role in STEEL if not (is_bare and role in FRAMES)]
        for ray, hit, at in zip(rays, first, depth, strict=True):
            near = axis == 2 or abs(at - outermost) < SKIN
            if hit >= 0 and near and solid[owner[hit]].piece.role in hidden:
                if solid[owner[hit]].piece.role in FRAMES and _in_open_bays(solid, axis, ray[0], outermost):
                    continue
                name = solid[owner[hit]].piece.name
                yield f"{name} is seen from {'above' if axis == 2 else 'outside'} at {np.round(ray)}"


def _in_open_bays(bodies: list[Body], axis: int, along: float, outermost: float) -> bool:
    """Whether a side of the building has no sheet at a place along it, nor next to it."""
    for body in bodies:
        if axis < 2 and body.piece.role in WALL_SHEETS:
            low, high = body.points.min(axis=0), body.points.max(axis=0)
            on_side = low[axis] - SKIN < outermost < high[axis] + SKIN and high[axis] - low[axis] < SKIN
            if on_side and low[1 - axis] - BESIDE < along < high[1 - axis] + BESIDE:
                return False
    return axis < 2


def _first(mesh: np.ndarray, rays: np.ndarray, axis: int, sign: int) -> tuple[np.ndarray, np.ndarray]:
    """For rays (n, 2) along an axis the first triangle each meets (-1: none), and where on the axis."""
    others = [k for k in range(3) if k != axis]
    flat, heights = mesh[:, :, others], mesh[:, :, axis]
    low, high = flat.min(axis=1), flat.max(axis=1)
    first, depth = np.full(len(rays), -1), np.full(len(rays), np.inf)
    for n, ray in enumerate(rays):
        near = np.flatnonzero(np.all((low <= ray) & (high >= ray), axis=1))
        a, b, c = (flat[near, k] for k in range(3))
        shares = [_cross(b - a, ray - a), _cross(c - b, ray - b), _cross(a - c, ray - c)]
        whole = sum(shares)
        hit = (np.abs(whole) > 1e-9) & (np.min(np.array(shares) * np.sign(whole), axis=0) >= 0)
        near, whole, parts = near[hit], whole[hit], [share[hit] for share in shares]
        if not len(near):
            continue
        h = heights[near]
        at = (parts[1] * h[:, 0] + parts[2] * h[:, 1] + parts[0] * h[:, 2]) / whole
        nearest = int(np.argmin(sign * at))
        first[n], depth[n] = near[nearest], at[nearest]
    return first, depth


def _cross(a: np.ndarray, b: np.ndarray) -> np.ndarray:
    return a[..., 0] * b[..., 1] - a[..., 1] * b[..., 0]
