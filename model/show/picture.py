"""A picture of a building or a part of it, as the bytes of a PNG file."""

from __future__ import annotations

from collections.abc import Sequence

from ..choosing import chosen
from ..heading import SHORT, job
from ..pieces import Model
from .close_up import point_of
from .lines import drawing
from .paint import drawn_colour
from .rendering import png
from .views import close_up, whole

WIDTH, HEIGHT = 1600, 1000  # pixels
CAPTIONED = 400  # pixels of height from which there is room for words
DISTANCE = 1500.0  # mm, of a close-up


def picture(
    model: Model,
    *,
    view: str = "front left",
    only: Sequence[str] = (),
    at: str = "",
    distance: float = DISTANCE,
    size: tuple[int, int] = (WIDTH, HEIGHT),
) -> bytes:
    """The model as seen from a named view.

    view: one of `ribwright.show.views.VIEWS`. only: what to draw, see `ribwright.choosing`; all when
    empty. at: looks at this from `distance` mm away, see `close_up.point_of`; at the whole when
    empty. size: width and height, pixels. Raises RibwrightError for a name that is nothing's.
    view: one of `ribwright.show.views.VIEWS`. only: what to draw, see `choosing.chosen`; all when
    empty. at: looks at this from `distance` mm away, see `choosing.point_of`; at the whole when
    empty. size: width and height, pixels; a large one says in a corner whose job it is and what it is not.
    Raises RibwrightError for a name that is nothing's.
    """
    drawn = drawing(chosen(model, only), drawn_colour)
    if at:
        camera = close_up(point_of(model, at), view, distance)
    else:
        camera = whole(drawn.bounds, view, size[0] / size[1])
    caption = f"{job(model.name, model.terms)}. {SHORT}" if size[1] >= CAPTIONED else ""
    return png(drawn, camera, *size, caption=caption)
