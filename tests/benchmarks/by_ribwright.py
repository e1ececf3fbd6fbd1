"""The sheets and members of the sample made and saved by ribwright. `python by_ribwright.py FOLDER`."""

from __future__ import annotations

import sys
from pathlib import Path

from chosen import chosen, say
from ribwright.exchange.glb import write_glb
from ribwright.exchange.step import write_step
from ribwright.pieces import Model, Piece
from ribwright.recipe import Part
from ribwright.solids import realise
from ribwright.solids.properties import volume


def piece(part: Part) -> Piece:
    return Piece(part.name, part.role, part.group, realise(part.recipe), part.place, part.labels)


def save(pieces: list[Piece], folder: Path) -> None:
    model = Model("building", "ft-in", tuple(pieces))
    write_step(model, folder / "model.step")
    write_glb(model, folder / "model.glb")


if __name__ == "__main__":
    parts, pieces, folder = chosen(), list[Piece](), Path(sys.argv[1])
    say(
        folder,
        build=lambda: pieces.extend(map(piece, parts)),
        save=lambda: save(pieces, folder),
        mm3=lambda: sum(volume(each.solid) for each in pieces),
    )
