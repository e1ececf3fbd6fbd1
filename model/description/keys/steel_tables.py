"""The keys of the steel and the trims. Sizes are placeholders until an engineer's drawings replace them."""

from __future__ import annotations

from .catalogued import Colour, Posts, Steel
from .key import Key, Table
from .value_kinds import BayNumbers, Choice, Length, Lengths

MEMBER_KINDS = ("column", "rafter", "post", "girt", "purlin", "eave_strut", "base_rail")
"""Members that may come in lengths of their own."""
TRIM_KINDS = ("base", "corner", "eave", "rake", "ridge", "opening")
"""What trim is for, where each may have a colour of its own."""

CEE = "cee 4x2x0.059"
TUBE = "tube 4x4x0.120"
CEE_MM = "cee 100x50x1.5 mm"
TUBE_MM = "tube 100x100x3 mm"

FRAME = Table(
    "frame",
    "The frames across the building. Sizes are placeholders until an engineer's drawings replace them.",
    (
        Key("spacing", Length("2 ft", "40 ft"), "greatest distance between frames", "10 ft", metric="3 m"),
        Key(
            "bays",
            Lengths("2 ft", "40 ft"),
            "each bay, front to back, instead of a spacing",
            unless="even bays",
            example=("10 ft, 10 ft, 10 ft, 10 ft", "5 m, 5 m, 5 m"),
        ),
        Key("column", Steel(("tube", "cee")), "section of the columns", TUBE, metric=TUBE_MM),
        Key("rafter", Steel(("tube", "cee")), "section of the rafters", TUBE, metric=TUBE_MM),
        Key(
            "knee",
            Steel(("tube", "cee"), none=True),
            'section of the knee braces, or "none"',
            "tube 2x2x0.083",
            metric="tube 50x50x2 mm",
        ),
        Key(
            "knee_reach",
            Length("6 in", "10 ft"),
            "from the inner corner along column and rafter",
            "2 ft",
            metric="600 mm",
        ),
        Key("post", Steel(("tube", "cee")), "section of the gable posts", TUBE, metric=TUBE_MM),
        Key(
            "front_posts",
            Posts(),
            '"none", "centre", or where from the left corner',
            unless="none, or for splices",
            example=("centre", "centre"),
        ),
        Key(
            "back_posts",
            Posts(),
            '"none", "centre", or where from the left corner',
            unless="centre, or for splices",
            example=("centre", "centre"),
        ),
        Key("plate_thickness", Length("1/8 in", "2 in"), "of the base plates", "3/8 in", metric="10 mm"),
        Key("plate_reach", Length("2 in", "8 in"), "of a base plate past its column", "3 in", metric="75 mm"),
        Key(
            "anchor_hole",
            Length("1/4 in", "1-1/2 in"),
            "diameter of the four holes in a base plate",
            "11/16 in",
            metric="18 mm",
        ),
    ),
)

FRAMING = Table(
    "framing",
    "What lies between frames and sheets. Sizes are placeholders, as those of the frames.",
    (
        Key("girts", Choice(("by-pass", "flush")), "in front of the columns, or between them", "by-pass"),
        Key("girt", Steel(("cee", "zee", "hat", "tube")), "section of the girts", CEE, metric=CEE_MM),
        Key(
            "girt_spacing",
            Length("1 ft", "12 ft"),
            "greatest distance between girts",
            "4 ft",
            metric="1200 mm",
        ),
        Key(
            "girt_heights",
            Lengths("6 in", "60 ft"),
            "of the girts' centres above the slab, instead of a spacing",
            unless="even spaces",
            example=("4 ft, 8 ft", "1200 mm, 2400 mm"),
        ),
        Key("purlin", Steel(("cee", "zee", "hat", "tube")), "section of the purlins", CEE, metric=CEE_MM),
        Key(
            "purlin_spacing",
            Length("1 ft", "10 ft"),
            "greatest distance between purlins",
            "4 ft",
            metric="1200 mm",
        ),
        Key(
            "purlin_splices",
            Choice(("butted", "nested")),
            'of purlins longer than they come: on a clip, or "nested": zees wider above lap',
            "butted",
        ),
        Key(
            "purlin_lap",
            Length("3 in", "10 ft"),
            "of nested purlins, past a frame's centre",
            unless="1.5 times their depth",
            example=("15 in", "380 mm"),
        ),
        Key(
            "eave_strut",
            Steel(("cee",)),
            "section of the eave struts",
            unless="6 in deep, or to pass over columns with flush girts",
            example=("cee 6x2x0.059", "cee 150x50x1.5 mm"),
        ),
        Key(
            "base_rail",
            Steel(("angle",)),
            "upright leg first",
            unless="2 x 2 in, no wider than the girts are deep",
            example=("angle 2x2x0.075", "angle 50x50x2 mm"),
        ),
        Key(
            "rake_angle",
            Steel(("angle",)),
            "upright leg first",
            unless="as deep as the purlins, 2 in across",
            example=("angle 4.075x2x0.075", "angle 104x50x1.9 mm"),
        ),
        Key("jamb", Steel(("cee", "tube")), "section of the jambs", CEE, metric=CEE_MM),
        Key("header", Steel(("cee", "tube")), "section of the headers", CEE, metric=CEE_MM),
        Key("sill", Steel(("cee", "tube")), "section of the sills", CEE, metric=CEE_MM),
        Key(
            "stock",
            Lengths("10 ft", "200 ft"),
            "that members come in; longer lines are spliced",
            unless="20, 24, 40 ft; 6, 12 m",
            example=("20 ft, 40 ft", "6 m, 12 m"),
        ),
        *(
            Key(
                f"{kind}_stock",
                Lengths("10 ft", "200 ft"),
                f"that {kind.replace('_', ' ')}s come in",
                unless="the members'",
                example=("20 ft, 30 ft", "6 m, 9 m"),
            )
            for kind in MEMBER_KINDS
        ),
        Key("kerf", Length("0 in", "1/2 in"), "lost at every cut of a member", "1/8 in", metric="3 mm"),
    ),
)

BRACING = Table(
    "bracing",
    "Braces in X in roof and side walls: placeholders. Ends: an end bay or the next; over 4 bays, at both.",
    (
        Key(
            "bays",
            BayNumbers(),
            'which bays, from the front, or "ends"',
            unless='none, or "ends" with a brace',
            example=("ends", "ends"),
        ),
        Key(
            "brace",
            Steel(("rod", "plate")),
            "a rod, a cable or a strap",
            unless="rod 5/8 in, or 16 mm",
            example=("rod 5/8", "rod 16 mm"),
        ),
        Key(
            "strut",
            Steel(("tube",), none=True),
            'from frame to frame where braced bays are two or more, or "none"',
            "tube 2x2x0.083",
            metric="tube 50x50x2 mm",
        ),
    ),
)

DOOR_ROOM = Table(
    "door_room",
    "The room that overhead doors need inside.",
    (
        Key("headroom", Length("0 in", "6 ft"), "over the opening", "12 in", metric="300 mm"),
        Key("side_room", Length("0 in", "3 ft"), "beside the opening", "4 in", metric="100 mm"),
        Key(
            "depth_back",
            Length("0 in", "40 ft"),
            "behind the wall",
            unless="the door's height and the headroom",
            example=("9 ft", "2700 mm"),
        ),
    ),
)

TRIM = Table(
    "trim",
    "The folded trim at every edge.",
    (
        Key(
            "colour",
            Colour(),
            "a CSS colour name, #rrggbb or your own",
            unless="the roof's",
            example=("slategray",) * 2,
            also=("color",),
        ),
        *(
            Key(
                f"{kind}_colour",
                Colour(),
                f"of the {kind} trim",
                unless="the trim's",
                example=("slategray",) * 2,
                also=(f"{kind}_color",),
            )
            for kind in TRIM_KINDS
        ),
        Key(
            "stock",
            Lengths("4 ft", "40 ft", most=6),
            "that trim comes in: fewest laps, then least waste",
            unless="10, 12 ft; 3, 3.6 m",
            example=("10 ft 2 in, 12 ft", "3 m, 3600 mm"),
        ),
        *(
            Key(
                f"{kind}_stock",
                Lengths("4 ft", "40 ft", most=6),
                f"that {kind} trim comes in",
                unless="the trim's",
                example=("10 ft, 12 ft", "3 m, 3600 mm"),
            )
            for kind in TRIM_KINDS
        ),
        Key("lap", Length("1 in", "12 in"), "of pieces on a longer run", "3 in", metric="75 mm"),
        Key("kerf", Length("0 in", "1/2 in"), "lost at every cut of a stock length", "0 in"),
        Key(
            "wind",
            Choice(("front", "back")),
            "where it mostly comes from; the ridge cap's laps face away from it",
            "front",
        ),
        Key(
            "gutters",
            Choice(("none", "low eaves")),
            "in place of the eave trim of clad walls, in one length; the roof ends 1 to 2 in into them",
            "none",
        ),
        Key(
            "downspouts",
            Length("10 ft", "80 ft"),
            "one for so much of a guttered eave, at the most",
            "40 ft",
            metric="12 m",
        ),
    ),
)

SCREWS = Table(
    "screws",
    "The screws. A pair straddles each major rib at sheet ends, one stands at each rib between.",
    (
        Key(
            "length", Length("3/4 in", "3 in"), "of sheet screws, under the head", "1-1/4 in", metric="32 mm"
        ),
        Key(
            "beside_rib",
            Length("1/4 in", "2 in"),
            "from a rib's foot to the screw beside it",
            "1/2 in",
            metric="13 mm",
        ),
        Key("ends", Choice(("pair", "single")), "at each major rib, at the ends of sheets", "pair"),
        Key("between", Choice(("single", "pair")), "at each major rib, on the lines between", "single"),
        Key(
            "apart",
            Length("6 in", "48 in"),
            "greatest distance along door angles and rakes",
            "24 in",
            metric="600 mm",
        ),
        Key(
            "stitch",
            Length("0 in", "48 in"),
            "distance of lap screws along the roof's side laps; 0: none",
            "0 in",
        ),
    ),
)
