"""Pictures of real solids, looked at pixel by pixel."""

from __future__ import annotations

import io
import math
import os
import subprocess
import sys
from dataclasses import replace

import numpy as np
import numpy.typing as npt
import pytest
from PIL import Image
from ribwright.choosing import chosen
from ribwright.errors import FileError, RibwrightError
from ribwright.pieces import Model, Piece
from ribwright.place import Place
from ribwright.recipe import Prism, Section
from ribwright.show.close_up import point_of
from ribwright.show.lines import lines
from ribwright.show.picture import Wish, picture
from ribwright.show.rendering import GROUND
from ribwright.solids import realise

Pixels = npt.NDArray[np.int64]

BOX = Prism(
    Section(((0.0, 0.0, 0.0), (1000.0, 0.0, 0.0), (1000.0, 1000.0, 0.0), (0.0, 1000.0, 0.0))),
    (0.0, 0.0, 0.0),
    (0.0, 0.0, 1000.0),
)
TUBE = Prism(
    Section(
        ((0.0, 0.0, 10.0), (100.0, 0.0, 10.0), (100.0, 100.0, 10.0), (0.0, 100.0, 10.0)),
        (((5.0, 5.0, 5.0), (95.0, 5.0, 5.0), (95.0, 95.0, 5.0), (5.0, 95.0, 5.0)),),
    ),
    (0.0, 0.0, 0.0),
    (0.0, 0.0, 2000.0),
)
OCTAGON = Prism(
    Section(
        tuple(
            (
                round(500.0 * math.cos(math.radians(turn)), 6),
                round(500.0 * math.sin(math.radians(turn)), 6),
                0.0,
            )
            for turn in range(0, 360, 45)
        )
    ),
    (0.0, 0.0, 0.0),
    (0.0, 0.0, 1000.0),
)


def model() -> Model:
    """A red box at the left, a blue one at the right."""
    solid = realise(BOX)
    red = Piece("red 1", "block", ("walls", "left"), solid, Place(), (("colour", "red"),), "B1")
    blue = Piece("blue 1", "beam", ("frame",), solid, Place((3000.0, 0.0, 0.0)), (("colour", "blue"),), "B2")
    return Model("two boxes", "mm", (red, blue))


def taken(*models: Model, **wish: object) -> Pixels:
    """What a picture's file holds, read by another library than wrote it: (height, width, 3 or 4)."""
    data = picture(models or [model()], Wish(**{"size": (160, 100), **wish}))  # type: ignore[arg-type] # of a test
    return np.asarray(Image.open(io.BytesIO(data))).astype(np.int64)


@pytest.fixture(scope="module")
def drawn(missing: object) -> Pixels:
    try:
        return taken(view="front")
    except FileError as error:
        missing(str(error))  # type: ignore[operator] # a function; fixtures carry no types
        raise


def red(pixels: Pixels) -> npt.NDArray[np.bool_]:
    return (pixels[..., 0] > 120) & (pixels[..., 1:3].max(axis=-1) < 60)


def blue(pixels: Pixels) -> npt.NDArray[np.bool_]:
    return (pixels[..., 2] > 120) & (pixels[..., :2].max(axis=-1) < 60)


def test_pieces_are_where_they_stand_in_their_colours(drawn: Pixels) -> None:
    assert drawn.shape == (100, 160, 3)
    assert np.flatnonzero(red(drawn).any(axis=0)).max() < np.flatnonzero(blue(drawn).any(axis=0)).min()


def test_between_them_is_ground_below_and_sky_above(drawn: Pixels) -> None:
    sky, ground = drawn[3, 80], drawn[96, 80]
    assert sky[2] > sky[0] + 50
    assert max(ground) - min(ground) < 20


def test_edges_are_drawn_dark(drawn: Pixels) -> None:
    found = red(drawn)
    row = drawn[np.flatnonzero(found.any(axis=1)).mean().astype(int)]
    first = np.flatnonzero((row[:, 0] > 90) & (row[:, 1] < 60))[0]
    assert min(row[first - 1].sum(), row[first].sum()) < 0.8 * row[first + 3].sum()


def test_only_draws_only_that(drawn: Pixels) -> None:
    alone = taken(view="front", only=["frame"])
    assert red(drawn).any() and not red(alone).any()
    assert blue(alone).sum() > blue(drawn).sum()


def test_a_close_up_looks_at_the_piece_named(drawn: Pixels) -> None:
    assert drawn.size and blue(taken(view="front", at="B2", distance=2500.0))[50, 80]


@pytest.mark.parametrize(
    ("recipe", "edges", "bends"),
    [
        (BOX, 12, 0),
        (OCTAGON, 16, 8),  # its sides meet at 45 degrees
    ],
)
def test_edges_and_bends(recipe: Prism, edges: int, bends: int) -> None:
    sharp, blunt = lines(realise(recipe))
    assert (len(sharp.points), len(blunt.points)) == (2 * edges, 2 * bends)
    assert np.allclose(np.linalg.norm(np.vstack([sharp.normals, blunt.normals]), axis=1), 1.0)


def test_round_things_show_no_lines_along_them() -> None:
    solid = realise(TUBE)
    heights = np.vstack([found.points for found in lines(solid)]).reshape(-1, 2, 3)[:, :, 2]
    assert np.all(heights[:, 0] == heights[:, 1])
    assert set(heights[:, 0]) == {0.0, 2000.0}


@pytest.mark.parametrize("word", ["walls", "Walls/Left", "left", "block", "red 1", "b1"])
def test_pieces_are_chosen_by_group_role_name_or_mark(word: str) -> None:
    assert [piece.name for piece in chosen(model(), [word])] == ["red 1"]


def test_without_words_all_is_chosen() -> None:
    assert chosen(model(), []) == model().pieces


def test_a_word_that_names_nothing_is_told_what_there_is() -> None:
    with pytest.raises(
        RibwrightError, match="nothing is called 'roof' here; there are: walls/left, block, frame, beam"
    ):
        chosen(model(), ["block", "roof"])


def test_a_close_up_takes_pieces_marks_and_points() -> None:
    assert point_of(model(), "blue 1") == pytest.approx((3500.0, 500.0, 500.0))
    assert point_of(model(), "b1") == pytest.approx((500.0, 500.0, 500.0))
    assert point_of(model(), "10 ft, 0, 1 in") == pytest.approx((3048.0, 0.0, 25.4))
    for wrong in ("roof", "1 m, 2 m", "1, 2, 3, 4", ""):
        with pytest.raises(RibwrightError, match="close-up"):
            point_of(model(), wrong)


def test_without_a_graphics_library_it_says_what_to_install() -> None:
    """The window that VTK falls back to when it finds no EGL; drawing with it would end the process."""
    probe = (
        "from vtkmodules.vtkRenderingOpenGL2 import vtkOSOpenGLRenderWindow\n"
        "from ribwright.show.offscreen import GRAPHICS, loads, new_window\n"
        "try:\n"
        "    new_window()\n"
        "    print('drawn' if loads('libOSMesa.so.8', 'libOSMesa.so') else 'not refused')\n"
        "except Exception as error:\n"
        "    print('refused' if str(error) == GRAPHICS else repr(error))\n"
    )
    environment = {**os.environ, "VTK_DEFAULT_OPENGL_WINDOW": "vtkOSOpenGLRenderWindow"}
    done = subprocess.run(
        [sys.executable, "-c", probe], env=environment, capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() in {"refused", "drawn"}
    assert done.stderr == ""


def test_a_large_picture_says_whose_it_is_and_what_it_is_not(drawn: Pixels) -> None:
    """Ink in the lower left corner, more for a longer name; a small or a plain picture has none."""

    def ink(name: str, **wish: object) -> int:
        pixels = taken(replace(model(), name=name), view="front", **{"size": (800, 500), **wish})
        height, width, _ = pixels.shape
        corner = pixels[-height // 20 :, : width // 2]
        return int((corner.max(axis=2) < 120).sum())

    assert drawn.size and ink("hut", size=(160, 100)) == ink("hut", plain=True) == 0
    assert 100 < ink("hut") < ink("a hut with a longer name")


def test_several_stand_side_by_side_as_the_eye_sees_them(drawn: Pixels) -> None:
    """From a corner too, on one level, the last at the right; each whole."""
    first, second = model().pieces
    high = replace(second, place=Place((50_000.0, 9_000.0, 4_000.0)))
    for view in ("front", "back left"):
        seen = taken(replace(model(), pieces=(first,)), replace(model(), pieces=(high,)), view=view)
        one, other = (np.argwhere(colour(seen)) for colour in (dark_red, dark_blue))
        assert one[:, 1].max() < other[:, 1].min()
        assert abs(one[:, 0].max() - other[:, 0].max()) <= 2
        assert 0.8 < len(one) / len(other) < 1.25
    assert drawn.size


def dark_red(pixels: Pixels) -> npt.NDArray[np.bool_]:
    return pixels[..., 0] > 2 * pixels[..., 1:3].max(axis=-1)


def dark_blue(pixels: Pixels) -> npt.NDArray[np.bool_]:
    return pixels[..., 2] > 2 * pixels[..., :2].max(axis=-1)


def test_through_glass_is_seen_what_is_behind(drawn: Pixels) -> None:
    """A pane before both boxes: each still has its hue there, under the sky that glass shows."""
    pane = realise(
        Prism(Section(((0.0, 0.0, 0.0), (4000.0, 0.0, 0.0), (4000.0, 6.0, 0.0), (0.0, 6.0, 0.0))),
              (0.0, 0.0, 0.0), (0.0, 0.0, 1000.0))
    )  # fmt: skip
    glazed = replace(model(), pieces=(*model().pieces, Piece("pane", "pane", (), pane, Place((0, -200, 0)))))
    seen = taken(glazed, view="front")
    height, width = (round(float(part)) for part in np.argwhere(red(drawn)).mean(axis=0))
    left, right = seen[height, width], seen[height, np.argwhere(blue(drawn))[:, 1].max() - 3]
    assert left[0] > left[2] + 20 and right[2] > right[0] + 20
    assert min(*left, *right) > 60


def test_the_ground_begins_at_the_foot_of_the_picture(drawn: Pixels) -> None:
    """Also where what stands on it is far off, as a long building is."""
    first, second = model().pieces
    long = replace(model(), pieces=(first, replace(second, place=Place((0.0, 90_000.0, 0.0)))))
    foot = taken(long)[-1]
    assert drawn.size and np.abs(foot - np.array(GROUND)).max() <= 8
