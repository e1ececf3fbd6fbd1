"""Findings marked in a picture: rings with numbers, and their words in a list to stand below it."""

from __future__ import annotations

import math
import textwrap
from collections.abc import Iterator, Sequence

from vtkmodules.vtkRenderingCore import vtkProp, vtkRenderer

from ..findings import Finding, words
from ..place import Point3
from ..printable import printable
from ..units import Units
from .actors import line_of_text, ring
from .offscreen import Pixels, new_window, taken, thinned
from .paint import Colour
from .rendering import FINE
from .views import Camera

RING: Colour = (196, 0, 122)
WHITE: Colour = (255, 255, 255)
INK: Colour = (33, 36, 41)
RADIUS = 1 / 45  # of the picture's height
LISTED = 24  # findings told under a picture; of more nobody reads
BEHIND = "Dashed: behind what is seen there."
LETTER = 0.55  # of its size a letter is wide, in the mean


def rings(
    places: Sequence[Point3 | None], behind: Sequence[bool], camera: Camera, width: int, height: int
) -> Iterator[vtkProp]:
    """A ring with its number for every place in the picture, from 1 on; those that would overlap share one.

    behind: whether a place is hidden by what is seen there. A ring about such places alone is dashed.
    """
    radius = RADIUS * FINE * height
    shared: dict[tuple[float, float], list[int]] = {}
    for number, place in enumerate(places, 1):
        spot = place and spot_of(place, camera, width, height)
        if spot:
            near = (at for at in shared if math.dist(at, spot) < 1.6 * radius)
            shared.setdefault(next(near, spot), []).append(number)
    for at, numbers in shared.items():
        yield from ringed(at, radius, all(behind[number - 1] for number in numbers))
        beside = (at[0] + 1.15 * radius, at[1] + 0.6 * radius)
        yield line_of_text(f" {spans(numbers)} ", radius, beside, RING, patch=True)


def spans(numbers: Sequence[int]) -> str:
    """Rising numbers in few words: 1, 3-5."""
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    return ", ".join(f"{run[0]}-{run[-1]}" if len(run) > 2 else ", ".join(map(str, run)) for run in runs)


def ringed(at: tuple[float, float], radius: float, dashed: bool = False) -> Iterator[vtkProp]:
    """A ring that is seen on light and on dark."""
    yield ring(at, radius, radius / 4, WHITE, dashed)
    yield ring(at, radius, radius / 8, RING, dashed)


def spot_of(place: Point3, camera: Camera, width: int, height: int) -> tuple[float, float] | None:
    """Where a point falls, in rendered pixels from the lower left corner; None outside the picture."""
    x, y = camera.seen(place, width / height)
    if max(abs(x), abs(y)) > 1.0:
        return None
    return 0.5 * (x + 1.0) * width * FINE, 0.5 * (y + 1.0) * height * FINE


def told(findings: Sequence[Finding], behind: Sequence[bool], units: Units) -> list[str]:
    """What stands below a picture with rings. behind: whether each is hidden by what is seen there."""
    lines = [f"{number}  {printable(words(one, units))}" for number, one in enumerate(findings[:LISTED], 1)]
    if len(findings) > LISTED:
        lines.append(f"and {len(findings) - LISTED} more: see the audit")
    lines += [BEHIND] if any(behind) else []
    return lines or ["The audit of the solids found nothing."]


def written(lines: Sequence[str], width: int, size: float) -> Pixels:
    """Lines of text on white, as wide as a picture: (height, width, 4), from the top row down.

    size: pixels of the letters.
    """
    room = max(20, int(width / (LETTER * size)) - 2)
    rows = [row for line in lines for row in textwrap.wrap(line, room, subsequent_indent="     ")]
    step = 1.5 * size
    height = math.ceil(step * (len(rows) + 1))
    renderer = vtkRenderer()
    renderer.SetBackground(1.0, 1.0, 1.0)
    renderer.SetBackgroundAlpha(1.0)
    for number, row in enumerate(rows):
        low = height - step * (number + 1.3)
        renderer.AddViewProp(line_of_text(row, FINE * size, (FINE * size, FINE * low), INK))
    return thinned(taken(new_window(), renderer, FINE * width, FINE * height), FINE)
