"""A close-up of each kind of finding: its pieces in colour, others in outline, its place ringed."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace
from pathlib import Path

import numpy as np

from ..exchange.atomic_files import whole_folder
from ..findings import Finding
from ..pieces import Model, Piece
from ..place import Place, Point3, add, unit
from .lines import Drawing, Floats, Ints, drawing, placed_triangles
from .rendering import png
from .views import Camera

MOST = 40
"""Pictures of one audit; more nobody looks through."""
SIZE = (1000, 750)
AWAY, ABOUT = 900.0, 450.0
"""mm: of the eye from the place, and to the sides of it in which other pieces are drawn."""
FIRST, SECOND, RING = (222, 96, 44), (46, 117, 182), (196, 0, 122)
"""Colours of the piece that is at fault, of the others that it is about, and of the ring. sRGB."""
RADIUS, THICK, NEARER, TURNS = 40.0, 2.0, 120.0, 48
"""mm: of the ring, of its wire, and how much nearer than the place it stands; its straight pieces."""


def picture_findings(model: Model, findings: Iterable[Finding], folder: Path) -> int:
    """Writes a PNG for the first finding of every code and mark that has a place; returns how many."""
    kinds: dict[tuple[str, tuple[str, ...]], Finding] = {}
    for finding in findings:
        if finding.at is not None:
            kinds.setdefault((finding.code.text, finding.marks[:1]), finding)
    with whole_folder(folder) as room:
        for number, finding in enumerate([*kinds.values()][:MOST], 1):
            image = _close_up(model, finding, finding.at or (0.0, 0.0, 0.0))
            mark = re.sub(r"[^A-Za-z0-9]", "", "".join(finding.marks[:1]))
            (room / f"{number:02}-{finding.code.text}-{mark or 'unmarked'}.png").write_bytes(image)
    return min(len(kinds), MOST)


def _close_up(model: Model, finding: Finding, at: Point3) -> bytes:
    """One finding, from outside and a little above."""
    own = [piece for name in finding.pieces for piece in _named(model, name)]
    about = [piece for piece in model.pieces if piece not in own and not piece.row and _near(piece, at)]
    middle = _middle(model)
    outward = unit((at[0] - middle[0], at[1] - middle[1], 0.0 if at[2] < middle[2] else 600.0))
    aside = unit(add(outward, (-outward[1], outward[0], 0.6), 0.45))
    ring = _ring(at, aside)
    first = {id(piece) for piece in own[:1]}
    solid = drawing(own or about[:1], lambda piece: FIRST if id(piece) in first else SECOND)
    lines = drawing([*own, *about], lambda piece: FIRST)
    skins = {**solid.skins, RING: ring}
    camera = Camera(add(at, aside, AWAY), at)
    return png(Drawing(skins, lines.edges, lines.bends), camera, *SIZE, ground=False)


def _named(model: Model, name: str) -> Iterator[Piece]:
    """The piece of a name; of a screw in a row, that screw alone."""
    for piece in model.pieces:
        if piece.name == name:
            yield replace(piece, row=piece.row[:1]) if piece.row else piece
        elif piece.row and (found := re.fullmatch(rf"{re.escape(piece.name)} (\d+)", name)):
            number = int(found[1])
            if 1 <= number <= len(piece.row):
                yield replace(piece, row=(piece.row[number - 1],))


def _near(piece: Piece, at: Point3) -> bool:
    points, _ = placed_triangles(piece)
    low, high = points.min(axis=0), points.max(axis=0)
    return bool(np.all((low < np.array(at) + ABOUT) & (high > np.array(at) - ABOUT)))


def _middle(model: Model) -> Point3:
    origins = np.array([piece.place.origin for piece in model.pieces])
    x, y, z = ((origins.min(axis=0) + origins.max(axis=0)) / 2).tolist()
    return (x, y, z)


def _ring(at: Point3, toward: Point3) -> tuple[Floats, Ints]:
    """A ring around a point, square to the eye, a little before it: points and triangles."""
    frame = Place(add(at, toward, NEARER), *_across(toward))
    turns = np.linspace(0.0, 2 * np.pi, TURNS, endpoint=False)
    points = [
        frame.point((float(radius * np.cos(turn)), float(radius * np.sin(turn)), height))
        for turn in turns
        for radius, height in ((RADIUS - THICK, 0.0), (RADIUS + THICK, 0.0))
    ]
    faces = []
    for k in range(TURNS):
        a, b, c, d = (2 * k + i for i in range(4))
        faces += [(a, b, d % (2 * TURNS)), (a, d % (2 * TURNS), c % (2 * TURNS))]
    return np.array(points), np.array(faces, dtype=np.int64)


def _across(toward: Point3) -> tuple[Point3, Point3]:
    right = unit((-toward[1], toward[0], 0.0))
    x, y, z = toward
    up = (y * right[2] - z * right[1], z * right[0] - x * right[2], x * right[1] - y * right[0])
    return right, up
