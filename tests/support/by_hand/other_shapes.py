"""Two of the papers' drawings each, worked by hand, of the starters with roofs of other shapes, and of those
whose walls are open, in whole or in part."""

from __future__ import annotations

from support.by_hand.figures import (
    CLEAR,
    CROWN,
    DRIP,
    EAVE,
    FOOT,
    HAIR,
    LEVEL,
    ON_LEFT,
    ON_RIGHT,
    PAST,
    POCKET,
    RAIL,
    SHELF,
    ByHand,
    CutSheet,
    Elevation,
    Sheet,
    laid,
    strut,
)

# The front of the left lean-to, 10 ft, from its low corner (eave 96): the first leg 1 past it, overlap rib on
# it. It ends 1/8 short of the main wall's corner trim, which stands a leg (1) out. Two spaces of 95 / 2, and
# a girt on the eave's line.
BARN = ByHand(
    Elevation(
        "left lean-to front: sheets",
        (0, 120),
        [*laid(1, 0, 37, "W33 W31 W18"), Sheet(4, "W16", 108, 120 - 1 - CLEAR)],
        [RAIL - FOOT, 1 + 95 / 2 - FOOT, 96 - FOOT],
        ON_RIGHT,
    ),
    # The left wall under the lean-to's roof, which meets it at 96 + 120 x 2/12 = 116: heads under the ledger,
    # 4 deep, less 1/8 and FOOT, 111.83, in steps 111-1/2. In the first sheet the end frame's rafter, from 4
    # to 8 of the corner, 1/8 round: down to its underside (4 + 4 square to the roof, 1.0138 in one of run)
    # over the ribs' crowns.
    CutSheet(
        "W20",
        [
            (0, 0),
            (38, 0),
            (38, 111.5),
            (8 + 1 / 8, 111.5),
            (8 + 1 / 8, 116 - CROWN * 2 / 12 - 8 * 1.0138 - 1 / 8 - FOOT),
            (4 - 1 / 8, 116 - CROWN * 2 / 12 - 8 * 1.0138 - 1 / 8 - FOOT),
            (4 - 1 / 8, 111.5),
            (0, 111.5),
        ],
        ["1 piece: left #1; head up square ends; cut from 3' 2\" x 9' 3-1/2\"", "firebrick, 29 ga"],
    ),
)

# 22 ft are 264: 262 / 36 = 7.3, eight sheets, the last from 253 on. Up the slope at 3/12 (1.0308 in one of
# run) 120 x 1.0308 + 2 x 1.0308 - 1 = 124.75, in steps 125; the upper purlin 3 under the heads, three even
# spaces from the strut's middle.
SLOPE_3 = 17**0.5 / 4
CARPORT = ByHand(
    Elevation(
        "left slope: sheets",
        (0, 264),
        [*laid(1, 1, 38, "R1 R1 R1 R1 R1 R1 R1"), Sheet(8, "R2", 253, 264)],
        [
            2 * SLOPE_3 + strut(3 / 12, SLOPE_3),
            *((2 * SLOPE_3 + 1) * (3 - n) / 3 + (125 - 3) * n / 3 for n in (1, 2, 3)),
        ],
        ON_RIGHT,
    ),
    # The last: from 252 to 264.
    CutSheet(
        "R2",
        [(0, 0), (264 - 252, 0), (264 - 252, 125), (0, 125)],
        [
            "2 pieces: left slope #8; right slope #8; 1 head up, 1 foot up square ends",
            "ripped 2' 2\" off the right",
        ],
        ribs=(1, 10),
    ),
)

# 24 ft are 288: eight sheets, the last from 253 on, two of them up each slope. 240 x 1.0308 + 2 x 1.0308 - 1
# = 248.45, in steps 248-1/2; six even spaces from the strut's middle to 3 under the heads. They lap on the
# third purlin: the upper foot 1-1/2 under its row is 122.78 up; to be a whole step long (126) it reaches down
# to 122-1/2. The lower head is 6 over that, 128-1/2.
HAY_BARN = ByHand(
    Elevation(
        "left slope: sheets",
        (0, 288),
        [*laid(1, 1, 38, "R1+R6 R2+R6 R2+R6 R2+R6 R2+R6 R2+R6 R2+R6"), Sheet(8, "R4+R7", 253, 288)],
        [
            2 * SLOPE_3 + strut(3 / 12, SLOPE_3),
            *((2 * SLOPE_3 + 1) * (6 - n) / 6 + (248.5 - 3) * n / 6 for n in range(1, 7)),
        ],
        f'{ON_RIGHT} End laps 6": the higher sheet is on top, its foot 10\' 2-1/2" up.',
    ),
    # Where four meet, the corner of the lower one's overlap leg is cut off: both legs wide, the lap long.
    CutSheet(
        "R2",
        [(0, 0), (38, 0), (38, 128.5), (2, 128.5), (2, 128.5 - 6 - HAIR), (0, 128.5 - 6 - HAIR)],
        [
            "6 pieces: left slope #2 to 7; 6 head up square ends",
            '2" wide from the overlap edge; 6-1/16" high from the head',
        ],
    ),
)

# 36 ft are 432: twelve sheets, the last from 397 on. Heads: 48 less 1/8 that the cap falls, 1/8 under it and
# FOOT, 47.70, in steps 47-1/2; their row 3/4 lower. No girt between: that is within 48 of the rail.
LAMBING_SHED = ByHand(
    Elevation(
        "left: sheets",
        (0, 432),
        [*laid(1, 1, 38, "W1 " * 11), Sheet(12, "W3", 397, 432)],
        [RAIL - FOOT, 47.5 - 3 / 4],
        ON_RIGHT,
    ),
    # The back, 24 ft, has a post (4 wide) in its middle: from 144 + 2, its edge, less a leg ribs go by 36;
    # the last of the right half from 145 + 3 x 36 - 1 = 252 to the leg past the corner, 289.
    CutSheet(
        "W2",
        [(0, 0), (289 - 252, 0), (289 - 252, 47.5), (0, 47.5)],
        ["1 piece: back #8; head up square ends", 'ripped 1" off the right', "darkseagreen, 29 ga"],
    ),
)

# 30 ft: ten sheets, under the lean-to's roof and over it. That meets the wall at 84 + 120 x 2/12 = 104. Lower
# heads: under the ledger, 4 deep, 1/8 clear and off the slab, 99.83, in steps 99-1/2. The flashing's bend
# lies over crowns and laps, square to the roof (1.0138); upper feet 1/2 over it where it laps. Rows 3/4 from
# either. Three spaces from the rail to the girt behind the lower one. The door's header 1 over 80.
BEND_OF_FLASHING = 104 + (CROWN + FOOT) * 1.0138
LOWER = 99.5 - 3 / 4 + FOOT
LEAN_TO = ByHand(
    Elevation(
        "left: sheets",
        (0, 360),
        [
            *laid(1, 1, 38, "W20+W28 W19+W28 W19+W28 W21+W28 W19+W28 W19+W28 W22+W28 W25+W28 W24+W28"),
            Sheet(10, "W23+W29", 325, 360),
        ],
        [
            v - FOOT
            for v in (
                *(RAIL, 1 + (LOWER - 1) / 3, 1 + (LOWER - 1) * 2 / 3, 80 + 1, LOWER),
                *(BEND_OF_FLASHING + FOOT + 1 / 2 + 3 / 4, 120 - EAVE),
            )
        ],
        ON_RIGHT,
    ),
    # Eighth, from 252 to 290; the door begins at 264-1/2.
    CutSheet(
        "W25",
        [
            (0, 0),
            (264.5 - POCKET - 252, 0),
            (264.5 - POCKET - 252, 80 - DRIP - FOOT),
            (264.5 - PAST - 252, 80 - DRIP - FOOT),
            (264.5 - PAST - 252, 80 + SHELF - FOOT),
            (38, 80 + SHELF - FOOT),
            (38, 99.5),
            (0, 99.5),
        ],
        ["1 piece: left #8; head up square ends cut from 3' 2\" x 8' 3-1/2\"", "linen, 29 ga, 36 x 9 x 3/4"],
    ),
)

# The high right wall, 30 ft (eave 132), from its right corner. Girts as on the low left one: spaces of 107 /
# 3 from the rail, one on its eave's line (108). The window from 60 to 96.
OFFSET_RIDGE = ByHand(
    Elevation(
        "right: sheets",
        (-360, 0),
        [
            *laid(1, -1, -38, "W13↓ W13↓ W13↓ W13↓ W15↓ W16↓ W13↓ W13↓ W13↓", -36),
            Sheet(10, "W14↓", -325, -360),
        ],
        [v - FOOT for v in (RAIL, 1 + 107 / 3, 60 - 1, 1 + 2 * 107 / 3, 96 + 1, 108, 132 - EAVE)],
        ON_LEFT,
    ),
    # Fifth, from 144 to 182 of the right corner; the window, 155 to 203 from the left, begins at 157. The
    # right slope falls (108 + 180 x 4/12 - 132) / 108 = 4/12: heads at 132 - 0.27 - 1/8 - FOOT, in steps
    # 131-1/2. It stands head down: along is from its head.
    CutSheet(
        "W15",
        [
            (0, 0),
            (38, 0),
            (38, 131.5 - (96 + SHELF - FOOT)),
            (157 - PAST - 144, 131.5 - (96 + SHELF - FOOT)),
            (157 - PAST - 144, 131.5 - (96 - DRIP - FOOT)),
            (157 - POCKET - 144, 131.5 - (96 - DRIP - FOOT)),
            (157 - POCKET - 144, 131.5 - (60 - POCKET - FOOT)),
            (38, 131.5 - (60 - POCKET - FOOT)),
            (38, 131.5),
            (0, 131.5),
        ],
        ["1 piece: right #5; foot up square ends cut from 3' 2\" x 10' 11-1/2\"", "lightgray, 29 ga"],
    ),
)

# 28 ft and a foot at each end are 360: ten sheets. At 5/12 (13/12 in one of run) 120 x 13/12 + 2 x 13/12 - 1
# = 131.17, in steps 131; three even spaces from the strut's middle to 3 under the heads.
PAVILION = ByHand(
    Elevation(
        "left slope: sheets",
        (0, 360),
        [*laid(1, 1, 38, "R1 " * 9), Sheet(10, "R2", 325, 360)],
        [
            2 * 13 / 12 + strut(5 / 12, 13 / 12),
            *((2 * 13 / 12 + 1) * (3 - n) / 3 + (131 - 3) * n / 3 for n in (1, 2, 3)),
        ],
        ON_RIGHT,
    ),
    # Second of a gable's left half: from 47 to 85 of its corner. Heads stop under the purlins (4 square to
    # the roof), 1/8 clear. The girt at the feet, 2 wide, stays 1/8 under the rake angle (4.075) below them;
    # feet 3/4 under its middle.
    CutSheet(
        "W3",
        [
            (0, 0),
            (38, 0),
            (38, 85 * 5 / 12 - 4 * 13 / 12 + 8.075 * 13 / 12 + 1 + 3 / 4),
            (0, 47 * 5 / 12 - 4 * 13 / 12 + 8.075 * 13 / 12 + 1 + 3 / 4),
        ],
        ["2 pieces: back #2; front #2; 2 head up head rake 1' 3-13/16\" over 3' 2\", long at the right edge"],
    ),
)

# The front, 12 ft, from its low corner (96), on the right; the high wall is open, so that the last sheet ends
# with the steel.
RUN_IN = ByHand(
    Elevation(
        "front: sheets",
        (-144, 0),
        [*laid(1, 0, -37, "W8↓ W6↓ W4↓", -36), Sheet(4, "W2↓", -108, -144)],
        [RAIL - FOOT, 1 + 95 / 2 - FOOT, 96 - FOOT],
        ON_LEFT,
    ),
    # Third: from 71 to 109 of the low corner, at 2/12 6-1/3 higher there. Head down: along is from its peak.
    CutSheet(
        "W4",
        [(0, 38 * 2 / 12), (38, 0), (38, 96 + 109 * 2 / 12 - LEVEL), (0, 96 + 109 * 2 / 12 - LEVEL)],
        ['1 piece: front #3; foot up head square; foot rake 6-5/16" over 3\' 2", long at the right edge'],
    ),
)

# The front, 20 ft, from its low corner (108), on the left: seven sheets, the last from 216 to a leg past the
# corner. Three spaces of 107 / 3, a girt on the eave's line; the door's header 1 over 80.
SINGLE_SLOPE = ByHand(
    Elevation(
        "front: sheets",
        (0, 240),
        [*laid(1, 0, 37, "W18 W16 W14 W12 W10 W8"), Sheet(7, "W2", 216, 240 + 1)],
        [v - FOOT for v in (RAIL, 1 + 107 / 3, 1 + 2 * 107 / 3, 80 + 1, 108)],
        ON_RIGHT,
    ),
    # Third: from 71 to 109; the door begins at 96.
    CutSheet(
        "W14",
        [
            (0, 0),
            (96 - POCKET - 71, 0),
            (96 - POCKET - 71, 80 - DRIP - FOOT),
            (96 - PAST - 71, 80 - DRIP - FOOT),
            (96 - PAST - 71, 80 + SHELF - FOOT),
            (38, 80 + SHELF - FOOT),
            (38, 108 + 109 * 2 / 12 - LEVEL),
            (0, 108 + 71 * 2 / 12 - LEVEL),
        ],
        ['1 piece: front #3; head up head rake 6-5/16" over 3\' 2", long at the right edge; foot square'],
    ),
)

OTHER_SHAPES = {
    "barn": BARN,
    "carport": CARPORT,
    "hay-barn": HAY_BARN,
    "lambing-shed": LAMBING_SHED,
    "lean-to": LEAN_TO,
    "offset-ridge": OFFSET_RIDGE,
    "pavilion": PAVILION,
    "run-in": RUN_IN,
    "single-slope": SINGLE_SLOPE,
}
