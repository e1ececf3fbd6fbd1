"""A picture for each step of the raising: what stands already pale, what is put up in it in colour."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from vtkmodules.vtkRenderingCore import vtkActor, vtkRenderer, vtkTexture

from ..pieces import Model, Piece
from ..place import unit
from ..steps import Step
from .actors import line_work, painted, shine, skin, tell, texture
from .lines import drawing
from .offscreen import jpeg, new_window, taken
from .paint import Colour, inked
from .rendering import STRONG, aim, view_matrix
from .sunlight import LINE, PAINTED, SURFACE
from .surroundings import bounds_of_pieces
from .views import Bounds, from_above, middle

SIZE = (880, 660)  # pixels
PALE: Colour = (226, 228, 230)
NEW: Colour = (230, 120, 50)
SHOULDER = unit((-0.45, 0.6, 0.66))
"""Toward the light, as the eye has it: over the left shoulder, so that no side of a building is dark."""
DIM = 0.72
UNSHADED = np.array([[0.0, 0.0, 0.0, 2.0]] * 3 + [[0.0, 0.0, 0.0, 1.0]])
"""Every point lies beyond what throws a shadow."""


def step_pictures(model: Model, steps: Sequence[Step]) -> list[bytes]:
    """A JPEG file's bytes for each step; none for a step in which nothing is put up. Screws are not drawn.

    Each is seen from the corner that its pieces are nearest to. Raises FileError where there is no
    graphics library.
    """
    window, renderer = new_window(), vtkRenderer()
    renderer.SetBackground(1.0, 1.0, 1.0)
    whole = bounds_of_pieces(model.pieces)
    shade = texture(np.full((2, 2, 3), 255, dtype=np.uint8))
    standing: list[tuple[vtkActor, Colour]] = []
    found = []
    for step in steps:
        pieces = [piece for piece in step.pieces if not piece.row]
        if not pieces:
            found.append(b"")
            continue
        for actor, pale in standing:
            painted(actor, pale)
        standing += _put_up(pieces, renderer, shade)
        camera = from_above([whole], corner_of(bounds_of_pieces(pieces), whole), SIZE[0] / SIZE[1])
        aim(renderer, camera, [whole], whole[0][2])
        above = view_matrix(renderer)[:3, 2]
        for actor, _ in standing:
            tell(actor, {"sun": SHOULDER, "above": above, "sunward": UNSHADED, "dim": DIM, "lift": 0.0})
        found.append(jpeg(taken(window, renderer, *SIZE)[..., :3]))
    return found


def _put_up(
    pieces: Sequence[Piece], renderer: vtkRenderer, shade: vtkTexture
) -> list[tuple[vtkActor, Colour]]:
    """Actors of pieces in the colour of what is new, with what they fade to."""
    drawn = drawing(pieces, lambda piece: NEW)
    surfaces = [skin(*mesh, NEW) for mesh in (*drawn.skins.values(), *drawn.panes.values())]
    lines = [line_work(creases, inked(NEW, STRONG), 1.0) for creases in drawn.edges.values()]
    for actor in surfaces:
        renderer.AddActor(shine(actor, shade, SURFACE, PAINTED))
    for actor in lines:
        renderer.AddActor(shine(actor, shade, LINE, PAINTED))
    return [*((actor, PALE) for actor in surfaces), *((actor, inked(PALE, STRONG)) for actor in lines)]


def corner_of(part: Bounds, whole: Bounds) -> str:
    """The corner of the whole that a part is nearest to; the front left where it is nearest to none."""
    (x, y, _), (across, along, _) = middle(part), middle(whole)
    near = 0.02 * (whole[1][0] - whole[0][0])
    return f"{'back' if y > along + near else 'front'} {'right' if x > across + near else 'left'}"
