"""Two of the papers' drawings each, worked by hand, of the starters whose roof is an even gable on walls that
are clad all over."""

from __future__ import annotations

from support.by_hand.figures import (
    ANGLE,
    CLEAR,
    DRIP,
    EAVE,
    EDGE,
    FOOT,
    LEVEL,
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

# 26 ft are 312: (312 - 2) / 36 = 8.6, nine sheets, the last from 289 to the corner. Feet stand 1-1/2 down in
# the ledge. Girts in even spaces of 48 at most from the rail (1) to the eave (114): three of 113 / 3. The
# window is 48 wide from 130 on, 36 high from 44 to 80; rows 1 under its sill and 1 over its head.
GARAGE = ByHand(
    Elevation(
        "left: sheets",
        (0, 312),
        [*laid(1, 1, 38, "W13 W13 W13 W15 W16 W13 W13 W13"), Sheet(9, "W17", 289, 312)],
        [1.5 - FOOT + v for v in (RAIL, 1 + 113 / 3, 44 - 1, 1 + 2 * 113 / 3, 80 + 1, 114 - EAVE)],
        ON_RIGHT,
    ),
    # Fourth from the left, from 108 to 146. Its head: 114 + 1.5 - FOOT less 1/8 and 0.806 x 4/12 under the
    # roof, 115.06, in steps of 1/2 in 115.
    CutSheet(
        "W15",
        [
            (0, 0),
            (38, 0),
            (38, 44 + 1.5 - FOOT - POCKET),
            (130 - POCKET - 108, 44 + 1.5 - FOOT - POCKET),
            (130 - POCKET - 108, 80 + 1.5 - FOOT - DRIP),
            (130 - PAST - 108, 80 + 1.5 - FOOT - DRIP),
            (130 - PAST - 108, 80 + 1.5 - FOOT + SHELF),
            (38, 80 + 1.5 - FOOT + SHELF),
            (38, 115),
            (0, 115),
        ],
        ["1 piece: left #4; head up square ends cut from 3' 2\" x 9' 7\"", "wheat, 29 ga, 36 x 9 x 3/4"],
    ),
)

# The back, 30 ft, from its centre line without a post: underlap ribs of the first two on it, five sheets each
# way, the fifth rib on the corner (180), its leg 1 past it. Girts: three spaces of 131 / 3 from the rail to
# the eave (132), one on its line. The left half is slipped under.
WORKSHOP = ByHand(
    Elevation(
        "back: sheets",
        (-180, 180),
        [*laid(1, -36, -37, "W1 W4 W6 W9 W13", -36), *laid(6, 0, 37, "W2 W5 W7 W10 W14")],
        [RAIL - FOOT, 1 + 131 / 3 - FOOT, 1 + 2 * 131 / 3 - FOOT, 132 - FOOT],
        f'{ON_RIGHT} Trims lap 3". Lift the overlap leg of the one before at #2 to #5.',
    ),
    # Second of the right half: from 35 to 73 right of the centre, 145 and 107 from the corner. At 3/12 it
    # drops 38 x 3/12 = 9-1/2.
    CutSheet(
        "W5",
        [(0, 0), (38, 0), (38, 132 + 107 * 3 / 12 - LEVEL), (0, 132 + 145 * 3 / 12 - LEVEL)],
        ["2 pieces: back #7; front #7", 'rake 9-1/2" over 3\' 2", long at the overlap edge; foot square'],
    ),
)

# 50 ft are 600: 598 / 36 = 16.6, seventeen sheets, every fourth a light one, the last from 577 on. 15 ft of
# run are 180 x 12.65 / 12 = 189.74 up the slope at 4/12 (1.0541 in one of run), 2.11 more are the overhang, 1
# less the gap at the ridge: 190.84, in steps 191. The upper purlin is 3 under the sheets' heads; from the
# strut's middle to it four even spaces of 48 at most.
SLOPE_4 = 10**0.5 / 3
DAY_BARN = ByHand(
    Elevation(
        "left slope: sheets",
        (0, 600),
        [*laid(1, 1, 38, "R1 R1 R1 RL1 " * 4), Sheet(17, "R2", 577, 600)],
        [
            2 * SLOPE_4 + strut(4 / 12, SLOPE_4),
            *((2 * SLOPE_4 + 1) * (4 - n) / 4 + (191 - 3) * n / 4 for n in (1, 2, 3, 4)),
        ],
        ON_RIGHT,
    ),
    # First of the front's left half, over the door of 8 ft (96) and beside the vent that is 24 wide from 168
    # on, 18 high from 156: from 143 to 181, the ridge (144 + 180 x 4/12 = 204) at 180. Its foot hangs over
    # the drip that stands over the head angle.
    CutSheet(
        "W21",
        [
            (0, 0),
            (38, 0),
            (38, 156 - POCKET - (96 + ANGLE + SHELF)),
            (168 - POCKET - 143, 156 - POCKET - (96 + ANGLE + SHELF)),
            (168 - POCKET - 143, 174 - DRIP - (96 + ANGLE + SHELF)),
            (168 - PAST - 143, 174 - DRIP - (96 + ANGLE + SHELF)),
            (168 - PAST - 143, 174 + SHELF - (96 + ANGLE + SHELF)),
            (38, 174 + SHELF - (96 + ANGLE + SHELF)),
            (38, 204 - 1 * 4 / 12 - CLEAR - (96 + ANGLE + SHELF)),
            (37, 204 - CLEAR - (96 + ANGLE + SHELF)),
            (0, 204 - 37 * 4 / 12 - CLEAR - (96 + ANGLE + SHELF)),
        ],
        [
            "1 piece: front #1; head up",
            'head peak 3\' 1" from the overlap edge, down 1\' 0-5/16" left, 5/16" right; foot square',
        ],
    ),
)

# The first part of 90 ft: twenty-two sheets, the next one's overlap rib at 1 + 22 x 36 = 793. Three spaces of
# 107 / 3 from the rail to the eave (108). The walk door's header 1 over 80; over the overhead door's head
# (84) the row is as near to its sheets' feet as a screw may be.
LONG_STORE = ByHand(
    Elevation(
        "left: sheets, part 1 of 2",
        (0, 793),
        laid(1, 1, 38, "W17 " * 10 + "W19 W23 W23 W23 W20 W21 W22 " + "W17 " * 5),
        [
            *(v - FOOT for v in (RAIL, 1 + 107 / 3, 1 + 2 * 107 / 3, 80 + 1)),
            84 + ANGLE + SHELF + EDGE - FOOT,
            108 - EAVE - FOOT,
        ],
        ON_RIGHT,
    ),
    # Left of the overhead door that begins at 391: from 360 to 398. Its head: 108 - FOOT less 1/8 and the
    # crown's distance, two sheets of 26 ga (0.815) x 1/12, is 107.76; in steps 107-1/2.
    CutSheet(
        "W19",
        [
            (0, 0),
            (391 - POCKET - 360, 0),
            (391 - POCKET - 360, 84 + ANGLE - DRIP - FOOT),
            (391 - PAST - 360, 84 + ANGLE - DRIP - FOOT),
            (391 - PAST - 360, 84 + ANGLE + SHELF - FOOT),
            (38, 84 + ANGLE + SHELF - FOOT),
            (38, 107.5),
            (0, 107.5),
        ],
        ["1 piece: left #11; head up square ends cut from 3' 2\" x 8' 11-1/2\"", "firebrick, 26 ga"],
    ),
)

# The back, 14 ft, from its centre without a post: ribs of 12 in. The third to the left has lost its overlap
# rib, 108 from the centre; the wall ends at 84, the last legs 1 past it. Three of the four spaces of 155 / 4
# from the rail to the eave (156), one on its line, then half way up to what the rake angles (4.075 square to
# 9/12, 1.25 in one of run, and half a girt) leave under the ridge (156 + 84 x 9/12 = 219). The window is 72
# wide from 44 on, from 108 to 168.
STUDIO = ByHand(
    Elevation(
        "back: sheets",
        (-84, 84),
        [
            *laid(1, -36, -37, "W16+W17 W6", -36),
            Sheet(3, "W8", None, -85),
            *laid(4, 0, 37, "W3 W4"),
            Sheet(6, "W9", 72, 85),
        ],
        [
            v - FOOT
            for v in (
                *(RAIL, 1 + 155 / 4, 1 + 2 * 155 / 4, 108 - 1, 1 + 3 * 155 / 4, 156, 168 + 1),
                (156 + 219 - 4.075 * 1.25 - 1) / 2,
            )
        ],
        f'{ON_RIGHT} Trims lap 3". Lift the overlap leg of the one before at #2 to #3.',
    ),
    # Second of the left half: from 35 to 73 left of the centre, 49 to 11 from the corner.
    CutSheet(
        "W6",
        [
            (0, 0),
            (38, 0),
            (38, 108 - POCKET - FOOT),
            (44 - POCKET - 11, 108 - POCKET - FOOT),
            (44 - POCKET - 11, 168 - DRIP - FOOT),
            (44 - PAST - 11, 168 - DRIP - FOOT),
            (44 - PAST - 11, 168 + SHELF - FOOT),
            (38, 168 + SHELF - FOOT),
            (38, 156 + 49 * 9 / 12 - LEVEL),
            (0, 156 + 11 * 9 / 12 - LEVEL),
        ],
        ["1 piece: back #2; head up head rake 2' 4-1/2\" over 3' 2\", long at the right edge; foot square"],
        ribs=(1, 13, 25, 37),
    ),
)

# 30 ft: ten sheets in two tiers. Lower heads: 40 less 1/8 that the shelf falls, 1/8 under it and FOOT, 39.70,
# in steps 39-1/2. Upper feet 1/4 over the shelf; rows 3/4 from either end. Over the seam's middle, between
# the rows, two spaces to the eave (120). The window is 48 wide from 162.5 on, from 48 to 84.
UPPER = 40 + SHELF
WAINSCOT = ByHand(
    Elevation(
        "left: sheets",
        (0, 360),
        [
            *laid(1, 1, 38, "W15+W23 W15+W23 W15+W23 W15+W23 W18+W23 W20+W23 W15+W23 W15+W23 W15+W23"),
            Sheet(10, "W16+W25", 325, 360),
        ],
        [
            RAIL - FOOT,
            39.5 - 3 / 4,
            UPPER + 3 / 4 - FOOT,
            48 - 1 - FOOT,
            ((39.5 - 3 / 4 + FOOT + UPPER + 3 / 4) / 2 + 120) / 2 - FOOT,
            84 + 1 - FOOT,
            120 - EAVE - FOOT,
        ],
        ON_RIGHT,
    ),
    # Fifth of the upper ones, from 144 to 182: 120 less 0.806 x 4/12 and 1/8, from UPPER on, 79.31: 79.
    CutSheet(
        "W18",
        [
            (0, 0),
            (38, 0),
            (38, 48 - POCKET - UPPER),
            (162.5 - POCKET - 144, 48 - POCKET - UPPER),
            (162.5 - POCKET - 144, 84 - DRIP - UPPER),
            (162.5 - PAST - 144, 84 - DRIP - UPPER),
            (162.5 - PAST - 144, 84 + SHELF - UPPER),
            (38, 84 + SHELF - UPPER),
            (38, 79),
            (0, 79),
        ],
        ["1 piece: left #5; head up square ends; cut from 3' 2\" x 6' 7\"", "linen, 29 ga, 36 x 9 x 3/4"],
    ),
)

# Metric: sheets cover 1000 with legs of 28. 15 m: (15000 - 56) / 1000 = 14.9, fifteen, from the front corner,
# at the right of someone outside. Feet 10 over the base trim (2.1 x 0.551). Four spaces of (4200 - 25) / 4; a
# zee's row stands off its web, in the middle of the flat of a flange of 50 (bends of 3/16 in and 1.5 outside;
# the lip's, of 50 degrees, takes tan 25 of that).
MM_FOOT, MM_PAST, MM_POCKET = 10 + FOOT * 25.4, PAST * 25.4, POCKET * 25.4
OFF_WEB = (50 + (1 - 0.4663) * (4.7625 + 1.5)) / 2 - 1.5 / 2
TAN_10 = 0.176327
MACHINE_SHED = ByHand(
    Elevation(
        "left: sheets",
        (-15000, 0),
        [*laid(1, -28, -1056, "W19↓ " * 14, -1000), Sheet(15, "W20↓", -14028, -15000)],
        [
            25 - MM_FOOT,
            *(25 + 4175 * n / 4 - OFF_WEB - MM_FOOT for n in (1, 2, 3)),
            4200 - EAVE * 25.4 - MM_FOOT,
        ],
        "Side laps 56 mm: the left sheet is on top.",
    ),
    # Seventh of the front, from the right: from 5972 to 7028, head down on the bench. The door's right edge
    # is 9000 - 1225 - 950 = 6825 from there, its head 2100. Rakes rise from 4200 at the left corner.
    CutSheet(
        "W10",
        [
            (0, 0),
            (1056, 1056 * TAN_10),
            *(
                (across, 4200 + 3028 * TAN_10 - CLEAR * 25.4 - along)
                for across, along in (
                    (1056, 2100 + SHELF * 25.4),
                    (6825 - MM_PAST - 5972, 2100 + SHELF * 25.4),
                    (6825 - MM_PAST - 5972, 2100 - DRIP * 25.4),
                    (6825 - MM_POCKET - 5972, 2100 - DRIP * 25.4),
                    (6825 - MM_POCKET - 5972, MM_FOOT),
                    (0, MM_FOOT),
                )
            ),
        ],
        ["1 piece: front #7; foot up head square; foot rake 186 mm over 1056 mm, long at the overlap edge"],
        ribs=(28, 278, 528, 778, 1028),
    ),
    step=1.0,
)

EVEN_ROOFS = {
    "garage": GARAGE,
    "workshop": WORKSHOP,
    "day-barn": DAY_BARN,
    "long-store": LONG_STORE,
    "studio": STUDIO,
    "wainscot": WAINSCOT,
    "machine-shed": MACHINE_SHED,
}
