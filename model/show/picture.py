"""Pictures of buildings or of a part of one, as the bytes of PNG files."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np
from vtkmodules.vtkRenderingCore import vtkProp

from ..choosing import chosen
from ..findings import Finding
from ..heading import is_braced, job, short
from ..pieces import Model, Piece
from ..roles import LEAN_TO, Role, list_of
from ..units import Units
from .actors import line_of_text
from .close_up import point_of
from .hidden import hidden
from .lines import bounds_of, drawing
from .offscreen import Pixels, png
from .paint import drawn_colour
from .rendering import FINE, Scene, Setting
from .rings import INK, rings, told, written
from .side_by_side import named_together, side_by_side
from .sunlight import shadow_of
from .surroundings import beside, bounds_of_pieces, ground_level, person
from .views import INSIDE, STANDING, VIEWS, Camera, close_up, whole

WIDTH, HEIGHT = 1600, 1000  # pixels
DISTANCE = 1500.0  # mm, of a close-up
CAPTIONED, SMALLEST = 240, 9.0  # pixels of height from which there is room for words; of their letters
OUTSIDE = ("sheets", "trims", "openings", "slab")
DIM, DIM_INSIDE = 0.62, 0.72
"""How bright shadows are; eyes in a room get used to it."""


@dataclass(frozen=True, slots=True)
class Wish:
    """How a picture is wanted.

    view: one of `ribwright.show.views.VIEWS`. only: what to draw, see `ribwright.choosing`; all when empty.
    at: looks at this from `distance` mm away, see `close_up.point_of`; at the whole when empty. size: width
    and height, pixels. clear: without sky, person and ground, whose shadow stays, for laying over something
    else. plain: without the line that says whose it is and what it is not. findings: to be ringed, numbered
    and told below; None for a picture without.
    """

    view: str = VIEWS[0]
    only: Sequence[str] = ()
    at: str = ""
    distance: float = DISTANCE
    size: tuple[int, int] = (WIDTH, HEIGHT)
    clear: bool = False
    plain: bool = False
    findings: Sequence[Finding] | None = None


def picture(models: Sequence[Model], wish: Wish) -> bytes:
    """One building, or several side by side.

    Raises RibwrightError for a name that is nothing's, FileError where there is no graphics library.
    """
    pixels = pixels_of(models, wish)
    return png(pixels if wish.clear else pixels[..., :3])


def pixels_of(models: Sequence[Model], wish: Wish) -> Pixels:
    """(height, width, 4), from the top row down; with findings it is higher than was wished."""
    pieces, camera, setting = composed(models, wish)
    width, height = wish.size
    over: list[vtkProp] = []
    if not wish.plain and height >= CAPTIONED:
        braced = all(is_braced(model.roles) for model in models)
        text = f"{job(*named_together(models))}. {short(braced=braced)}"
        size = FINE * min(max(height / 55, SMALLEST), 1.7 * width / len(text))
        at = (FINE * height / 80, FINE * height / 80)
        over.append(line_of_text(text, size, at, INK, patch=wish.view == INSIDE))
    places = [one.at for one in wish.findings or ()]
    behind = hidden(places, camera, pieces)
    over += rings(places, behind, camera, width, height)
    scene = Scene(drawing(pieces, drawn_colour, _lined(pieces, wish)))
    pixels = scene.seen(camera, width, height, setting, over)
    if wish.findings is None:
        return pixels
    units: Units = "mm" if models[0].units == "mm" else "ft-in"
    return np.vstack([pixels, written(told(wish.findings, behind, units), width, height / 50)])


def composed(models: Sequence[Model], wish: Wish) -> tuple[list[Piece], Camera, Setting]:
    """What is drawn, from where it is seen, and what stands around it."""
    stood = side_by_side(models, wish.view) if len(models) > 1 else models
    parts = [chosen(model, wish.only) for model in stood]
    pieces = [piece for part in parts for piece in part]
    ground = min(ground_level(model.pieces) for model in stood)
    if wish.at:
        camera = close_up(point_of(stood[0], wish.at), wish.view, wish.distance)
        return pieces, camera, Setting(ground, clear=wish.clear)
    boxes = [bounds_of_pieces(_hall(part) if wish.view == INSIDE else part) for part in parts]
    someone = beside(boxes[-1], wish.view, ground) if wish.view in STANDING and not wish.clear else None
    aside = [bounds_of(person(someone)[0])] if someone else []
    if wish.clear:
        aside += [shadow_of(box, ground) for box in boxes]
    camera = whole(boxes, wish.view, wish.size[0] / wish.size[1], ground, aside)
    return pieces, camera, Setting(ground, someone, wish.clear, DIM_INSIDE if wish.view == INSIDE else DIM)


def _hall(pieces: Sequence[Piece]) -> Sequence[Piece]:
    """A building without its lean-tos, whose walls would stand before an eye that is inside of all."""
    own = [piece for piece in pieces if piece.role != Role.SLAB and LEAN_TO not in piece.name.split()]
    return own or pieces


def _lined(pieces: Sequence[Piece], wish: Wish) -> Callable[[Piece], bool]:
    """Whose lines are drawn: none of framing, which would shine through sheets, nor from afar of screws."""
    clad = wish.view != INSIDE and any(list_of(piece.role) == "sheets" for piece in pieces)
    lists = (*OUTSIDE, "screws") if wish.at else OUTSIDE
    return lambda piece: (not piece.row or bool(wish.at)) and (not clad or list_of(piece.role) in lists)
