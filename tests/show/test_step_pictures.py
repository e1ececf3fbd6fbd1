"""Pictures of the steps: what is new in colour, what stands pale, from where it is seen."""

from __future__ import annotations

import io

import numpy as np
import numpy.typing as npt
import pytest
from PIL import Image
from ribwright.errors import FileError
from ribwright.show.step_pictures import SIZE, corner_of, step_pictures
from ribwright.show.views import Bounds
from ribwright.steps import Step, steps
from support.store import store

WHOLE = ((0.0, 0.0, 0.0), (9000.0, 12000.0, 4500.0))
LEAST = 12
"""Pixels of the thinnest base trim in a picture."""


@pytest.fixture(scope="module")
def pictured(missing: object) -> list[tuple[Step, npt.NDArray[np.int64] | None]]:
    raising = steps(store())
    try:
        made = step_pictures(store(), raising)
    except FileError as error:
        missing(str(error))  # type: ignore[operator] # a function; fixtures carry no types
        raise
    return [
        (step, np.asarray(Image.open(io.BytesIO(one))).astype(np.int64) if one else None)
        for step, one in zip(raising, made, strict=True)
    ]


def coloured(pixels: npt.NDArray[np.int64]) -> npt.NDArray[np.bool_]:
    return np.asarray(pixels[..., 0] > pixels[..., 2] + 60)


def test_every_step_that_puts_something_up_shows_it_in_colour(
    pictured: list[tuple[Step, npt.NDArray[np.int64] | None]],
) -> None:
    for step, pixels in pictured:
        assert (pixels is not None) == any(not piece.row for piece in step.pieces)
        if pixels is not None:
            assert pixels.shape == (SIZE[1], SIZE[0], 3)
            assert coloured(pixels).sum() > LEAST, step.name


def test_what_stands_already_is_pale(pictured: list[tuple[Step, npt.NDArray[np.int64] | None]]) -> None:
    """All that is seen in the end is what was put up, and but for the last step it has no colour left."""
    (first, *_, last) = (pixels for _, pixels in pictured if pixels is not None)
    grey = (last.max(axis=2) - last.min(axis=2) < 25) & (last.min(axis=2) < 240)
    assert grey.mean() > 0.15
    assert 0 < coloured(last).mean() < 0.1
    slab = (first.min(axis=2) < 240).mean()
    assert coloured(first).mean() > 0.95 * slab > 0.02


@pytest.mark.parametrize(
    ("part", "corner"),
    [
        (WHOLE, "front left"),
        (((0.0, 0.0, 0.0), (9000.0, 100.0, 4500.0)), "front left"),
        (((8900.0, 0.0, 0.0), (9000.0, 12000.0, 3000.0)), "front right"),
        (((0.0, 11900.0, 0.0), (9000.0, 12000.0, 4500.0)), "back left"),
        (((8900.0, 11900.0, 0.0), (9000.0, 12000.0, 4500.0)), "back right"),
    ],
)
def test_a_step_is_seen_from_the_corner_it_is_nearest_to(part: Bounds, corner: str) -> None:
    assert corner_of(part, WHOLE) == corner
