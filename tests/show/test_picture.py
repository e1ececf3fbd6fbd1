"""Pictures of real solids, looked at pixel by pixel."""

from __future__ import annotations

import math
import os
import struct
import subprocess
import sys
import zlib
from dataclasses import replace

import numpy as np
import numpy.typing as npt
import pytest
from ribwright.choosing import chosen
from ribwright.errors import FileError, RibwrightError
from ribwright.pieces import Model, Piece
from ribwright.place import Place
from ribwright.recipe import Prism, Section
from ribwright.show.close_up import point_of
from ribwright.show.lines import lines
from ribwright.show.picture import picture
from ribwright.solids import realise
from ribwright.solids.properties import triangles

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
    blue = Piece("blue 1", "post", ("frame",), solid, Place((3000.0, 0.0, 0.0)), (("colour", "blue"),), "B2")
    return Model("two boxes", "mm", (red, blue))


def decoded(png: bytes) -> Pixels:
    """(height, width, 3) of an 8-bit RGB PNG, read here by hand (PNG specification, W3C, 9.2)."""
    assert png[:8] == b"\x89PNG\r\n\x1a\n"
    at, data, head = 8, b"", b""
    while at < len(png):
        (length,), kind = struct.unpack(">I", png[at : at + 4]), png[at + 4 : at + 8]
        body = png[at + 8 : at + 8 + length]
        head = body if kind == b"IHDR" else head
        data += body if kind == b"IDAT" else b""
        at += 12 + length
    width, height, depth, colour = struct.unpack(">IIBB", head[:10])
    assert (depth, colour) == (8, 2)
    rows = np.frombuffer(zlib.decompress(data), dtype=np.uint8).reshape(height, 1 + 3 * width)
    out = np.zeros((height, 3 + 3 * width), dtype=np.int64)
    for y, row in enumerate(rows):
        above = out[y - 1] if y else np.zeros_like(out[0])
        for x in range(3 * width):
            a, b, c = out[y, x], above[x + 3], above[x]
            nearest = min((abs(b - c), 0, a), (abs(a - c), 1, b), (abs(a + b - 2 * c), 2, c))[2]
            out[y, x + 3] = (row[x + 1] + (0, a, b, (a + b) // 2, nearest)[row[0]]) % 256
    return out[:, 3:].reshape(height, width, 3)


@pytest.fixture(scope="module")
def drawn(missing: object) -> Pixels:
    try:
        return decoded(picture(model(), view="front", size=(160, 100)))
    except FileError as error:
        missing(str(error))  # type: ignore[operator] # a function; fixtures carry no types
        raise


def test_pieces_are_where_they_stand_in_their_colours(drawn: Pixels) -> None:
    assert drawn.shape == (100, 160, 3)
    left, right = drawn[50, 25], drawn[50, 135]
    assert left[0] > 120 > 3 * max(left[1], left[2])
    assert right[2] > 120 > 3 * max(right[0], right[1])


def test_between_them_is_ground_below_and_sky_above(drawn: Pixels) -> None:
    sky, ground = drawn[3, 80], drawn[96, 80]
    assert sky[2] > sky[0]
    assert max(ground) - min(ground) < 20


def test_edges_are_drawn_dark(drawn: Pixels) -> None:
    row = drawn[50]
    red = np.flatnonzero((row[:, 0] > 120) & (row[:, 1] < 60))
    assert min(row[red[0] - 1].sum(), row[red[0]].sum()) < 0.8 * row[red[0] + 3].sum()


def test_only_draws_only_that(drawn: Pixels) -> None:
    alone = decoded(picture(model(), view="front", only=["frame"], size=(64, 40)))
    assert not np.any((alone[:, :, 0] > 120) & (alone[:, :, 2] < 60))
    assert alone[20, 32][2] > 120 > alone[20, 32][0]


def test_a_close_up_looks_at_the_piece_named(drawn: Pixels) -> None:
    near = decoded(picture(model(), view="front", at="B2", distance=2500.0, size=(64, 40)))
    assert near[20, 32][2] > 120 > near[20, 32][0]


@pytest.mark.parametrize(
    ("recipe", "edges", "bends"),
    [
        (BOX, 12, 0),
        (OCTAGON, 16, 8),  # its sides meet at 45 degrees
    ],
)
def test_edges_and_bends(recipe: Prism, edges: int, bends: int) -> None:
    sharp, blunt = lines(realise(recipe))
    assert (len(sharp), len(blunt)) == (edges, bends)


def test_round_things_show_no_lines_along_them() -> None:
    solid = realise(TUBE)
    points, _ = triangles(solid)
    sharp, blunt = lines(solid)
    ends = points[np.vstack([sharp, blunt])]
    assert np.all(ends[:, 0, 2] == ends[:, 1, 2])
    assert set(ends[:, 0, 2]) == {0.0, 2000.0}


@pytest.mark.parametrize("word", ["walls", "Walls/Left", "left", "block", "red 1", "b1"])
def test_pieces_are_chosen_by_group_role_name_or_mark(word: str) -> None:
    assert [piece.name for piece in chosen(model(), [word])] == ["red 1"]


def test_without_words_all_is_chosen() -> None:
    assert chosen(model(), []) == model().pieces


def test_a_word_that_names_nothing_is_told_what_there_is() -> None:
    with pytest.raises(
        RibwrightError, match="nothing is called 'roof' here; there are: walls/left, block, frame, post"
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
        "from ribwright.show.rendering import GRAPHICS, _loads, _window\n"
        "try:\n"
        "    _window()\n"
        "    print('drawn' if _loads('libOSMesa.so.8', 'libOSMesa.so') else 'not refused')\n"
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
    """Ink in the lower left corner, where a small picture has none; more of it for a longer name."""

    def ink(name: str, size: tuple[int, int]) -> int:
        pixels = decoded(picture(replace(model(), name=name), view="front", size=size))
        height, width, _ = pixels.shape
        corner = pixels[-height // 20 :, : width // 2]
        return int((corner.max(axis=2) < 120).sum())

    assert drawn.size and ink("hut", (160, 100)) == 0
    assert 100 < ink("hut", (800, 500)) < ink("a hut with a longer name", (800, 500))
