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
from ..place import Point3, add, unit
from .lines import drawing, placed_triangles
from .offscreen import png
from .rendering import FINE, Scene, Setting
from .rings import ringed, spot_of
from .views import Camera

MOST = 40
"""Pictures of one audit; more nobody looks through."""
SIZE = (1000, 750)
AWAY, ABOUT = 900.0, 450.0
"""mm: of the eye from the place, and to the sides of it in which other pieces are drawn."""
FIRST, SECOND, UNPAINTED = (222, 96, 44), (46, 117, 182), (168, 172, 176)
"""Colours of the piece that is at fault, of the others that it is about, and of outlines. sRGB."""
RING = 11  # its radius goes so often into the picture's height


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
    first = {id(piece) for piece in own[:1]}
    solid = drawing(own or about[:1], lambda piece: FIRST if id(piece) in first else SECOND)
    lines = drawing([*own, *about], lambda piece: UNPAINTED)
    camera = Camera(add(at, aside, AWAY), at)
    spot = spot_of(at, camera, *SIZE) or (0.0, 0.0)
    scene = Scene(replace(solid, edges=lines.edges, bends=lines.bends))
    return png(scene.seen(camera, *SIZE, Setting(), ringed(spot, FINE * SIZE[1] / RING))[..., :3])


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
