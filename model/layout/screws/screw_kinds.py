"""The screws: one body a kind, axis along z, z = 0 where the head's seat lies on the sheet.

Diameters: #10 0.190 in, #12 0.216 in (Yu & LaBoube, Table 8.6). Heads and lengths are ours.
"""

from __future__ import annotations

from ...envelope.skin_lines import PAST_WASHER, SCREW_EDGE, WASHER
from ...recipe import Turned, grid

INCH = 25.4
NUMBER_10, NUMBER_12 = 0.190 * INCH, 0.216 * INCH
HEX, FLATS = 6, 5 / 16 * INCH
WASHER_THICKNESS = 1.5
SHANK, RIM = NUMBER_12 / 2, WASHER / 2
EDGE, APART = SCREW_EDGE, 3 * NUMBER_12 + 0.05
"""mm; from a screw's middle to an edge, and to another screw: 1.5 and 3 diameters (AISI S100) and a hair."""
PAST_EDGE = SHANK + 0.3
"""mm from the middle of a screw to a bend, or to an edge beside it of a sheet that laps with others. Ours."""
CLEAR = PAST_WASHER


def hex_screw(diameter: float, length: float) -> Turned:
    """A hex-head self-driller with a washer. length: under the washer, mm."""
    r, head, washer = diameter / 2, FLATS / 2, WASHER / 2
    return _turned(
        [
            (0.0, -length),
            (r, r - length),
            (r, 0.0),
            (washer, 0.0),
            (washer, WASHER_THICKNESS),
            (head, WASHER_THICKNESS),
            (head, WASHER_THICKNESS + 4.5),
            (0.0, WASHER_THICKNESS + 4.5),
        ]
    )


def pan_screw(diameter: float, length: float) -> Turned:
    """A low pan head without washer."""
    r, head = diameter / 2, diameter
    return _turned([(0.0, -length), (r, r - length), (r, 0.0), (head, 0.0), (0.8 * head, 2.0), (0.0, 2.5)])


def _turned(meridian: list[tuple[float, float]]) -> Turned:
    return Turned(tuple((grid(r), grid(z)) for r, z in meridian), HEX)
