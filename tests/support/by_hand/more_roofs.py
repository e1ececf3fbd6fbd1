"""Two drawings each of the papers, worked by hand, of the starters with a roof along a gable, and with slopes
that change their pitch."""

from __future__ import annotations

from support.by_hand.figures import (
    CLEAR,
    CROWN,
    FOOT,
    LEVEL,
    ON_LEFT,
    ON_RIGHT,
    ByHand,
    CutSheet,
    Elevation,
    Sheet,
    laid,
    strut,
)

# The roof of the porch, 20 ft, 6 ft out: seven sheets from the right, from 2 past the eave in plan to 1/2 off
# the gable, 73-1/2 x 1.0138 = 74.51, in steps 74-1/2. A purlin halfway between the rows of strut and ledger,
# each in the middle of its 2 in.
SLOPE_2 = 148**0.5 / 12
PORCH = ByHand(
    Elevation(
        "lean-to front slope: sheets",
        (-240, 0),
        [*laid(1, -1, -38, "R3↓ " * 6, -36), Sheet(7, "R4↓", -217, -240)],
        [
            2 * SLOPE_2 + strut(2 / 12, SLOPE_2),
            2 * SLOPE_2 + 72 * SLOPE_2 / 2,
            (2 + 72) * SLOPE_2 - 1,
        ],
        ON_LEFT,
    ),
    CutSheet(
        "R4",
        [(0, 0), (240 - 216, 0), (240 - 216, 74.5), (0, 74.5)],
        [
            "1 piece: lean-to front slope #7; foot up square ends",
            "ripped 1' 2\" off the right",
            "sienna, 29 ga, 36 x 9 x 3/4",
        ],
        ribs=(1, 10, 19),
    ),
)

# 36 ft are 432: 430 / 36 = 11.9, twelve sheets, the last from 397 on. Below the break, 96 in, 9/12 is 1.25 in
# one of run: from 2 past the eave 98 x 1.25 = 122.5, less 1/8 to the trim's bend, which is where the slope of
# 4/12 above is a crown and a lap over this one: the tangent between them is (9/12 - 4/12) / (1 + 9/12 x 4/12)
# = 1/3. In steps down 119-1/2. The upper purlin is 3 under the heads, three even spaces from the strut's
# middle.
UNDER_BEND = 98 * 1.25 - (CROWN + FOOT) * 3 - CLEAR
DOUBLE_PITCH = ByHand(
    Elevation(
        "left slope: sheets",
        (0, 432),
        [*laid(1, 1, 38, "R1 " * 11), Sheet(12, "R2", 397, 432)],
        [
            2 * 1.25 + strut(9 / 12, 1.25),
            *((2 * 1.25 + 1) * (3 - n) / 3 + (int(2 * UNDER_BEND) / 2 - 3) * n / 3 for n in (1, 2, 3)),
        ],
        ON_RIGHT,
    ),
    # Third of the front's right half, from 71 to 109 out of the middle, over the break at 96: 120 + 96 x 9/12
    # = 192 there, 25 x 4/12 more at the overlap edge, 13 x 9/12 less at the other.
    CutSheet(
        "W9",
        [
            (0, 0),
            (38, 0),
            (38, 192 - 13 * 9 / 12 - LEVEL),
            (25, 192 - LEVEL),
            (0, 192 + 25 * 4 / 12 - LEVEL),
        ],
        [
            "1 piece: front #9; head up",
            # 25 x 4/12 = 8-1/3, and 13 x 9/12 more is 18-1/12.
            'head bent 2\' 1" from the overlap edge, down 8-5/16" there, 1\' 6-1/16" at the right edge',
            "foot square",
            "firebrick, 29 ga, 36 x 9 x 3/4",
        ],
    ),
)

MORE_ROOFS = {"double-pitch": DOUBLE_PITCH, "porch": PORCH}
