"""What to mind in each step, with where it is published; temporary stability first."""

from __future__ import annotations

from .stages import Stage
from .step import Caution

COMMON = "common practice"
CFR = "29 CFR "


def _table(rows: dict[Stage, tuple[tuple[str, str], ...]]) -> dict[Stage, tuple[Caution, ...]]:
    return {stage: tuple(Caution(text, source) for text, source in said) for stage, said in rows.items()}


NO_BRACING = Caution(
    "No bracing is drawn, and a frame without it does not stand. Guys and temporary bracing stay until the "
    "engineer's bracing is in and the frame is plumb.",
    COMMON,
)
PLACEHOLDER = Caution(
    "The bracing drawn is a placeholder. Guys and temporary bracing, which are something else, stay until "
    "the engineer's bracing is in and tight and the frame is plumb.",
    COMMON,
)
STAND = "Stand both frames, guy them, tie them, plumb them, brace them."
BEGIN = Caution(
    "Begin in the braced bay of the engineer's drawings; this one is the first from the front gable. "
    f"{STAND}",
    COMMON,
)
BEGIN_BRACED = Caution(f"Begin in this bay, the first that has braces. {STAND}", COMMON)
FALLS = (
    "Fall protection from 6 ft (1.8 m) up. The 15 ft (4.6 m) of steel erection is no leave to work "
    "unprotected at 6 ft.",
    f"{CFR}1926.501(b)(1)",
)
NO_ANCHOR = (
    "Purlins and girts are no anchors for fall arrest without a qualified person's written approval.",
    f"{CFR}1926.758",
)
LOOSE = (
    "Never leave a sheet loose, or a face half closed, when wind may come. No federal figure says which "
    "wind is too much for handling sheets.",
    COMMON,
)
LADDER = (
    "Nobody carries on a ladder what could make them fall: sheets go up by scaffold, lift or hauling ramp.",
    f"{CFR}1926.1053(b)(22), from memory",
)
CUTTING = (
    "Gloves and eye protection; offcuts spring. No abrasive saw on coated sheet.",
    "gloves by ANSI/ISEA 105 cut level, A1 200 g to A4 1500 g",
)
STEEP = Caution(
    "A roof over 4/12 has a paragraph of its own for fall protection.",
    f"{CFR}1926.501(b)(11), from memory",
)
LIGHTS = Caution(
    "A light sheet is a hole to a foot: nobody steps, sits or leans on one; cover it or rail it off while "
    "people are on the roof.",
    f"{CFR}1926.501(b)(4), from memory",
)
BLANKET = Caution(
    "A blanket over purlins hides them and holds nobody: step on fastened sheets alone. Hang only what is "
    "covered the same day, facing in, tabs lapped, folded and stapled; what got wet comes off. Gloves, "
    "sleeves and a mask.",
    COMMON,
)
FOLDED = Caution(
    "Folded ends are drawn held by their bend alone; no rivet or screw for them is drawn or counted. Where "
    "one is wanted it goes through a ridge cap's tab into the rake trim behind it; behind the tab at a "
    "rake's foot nothing is flat.",
    COMMON,
)
TACKED = (
    "Opening trim is only tacked until the sheets are on, so that it can be sprung to take their edges into "
    "its pockets; then it is finished.",
    COMMON,
)
SEALED = (
    "Leaves and sashes are drawn with 1/8 in (3 mm) open round them: shim and seal them there, as their "
    "maker says.",
    COMMON,
)
UNTIED = Caution(
    "The struts, purlins and girts drawn here reach over more frames than stand yet: tie these with "
    "temporary struts and guys until those are in.",
    COMMON,
)

CAUTIONS = _table(
    {
        Stage.DELIVERY: (
            ("Count, and look for damage, before the carrier leaves; store sheets off the ground, sloped to "
             "drain, dry and tied down.", COMMON),
            ("Keep sheets, lifts and ladders well away from overhead power lines.", COMMON),
        ),
        Stage.SLAB: (
            ("Anchors are by the engineer: four anchor rods a column.", f"{CFR}1926.758(b)"),
            ("Anchor rods stand within 1/8 in (3 mm) of each other in a group, 1/4 in (6 mm) between "
             "groups.",
             "AISC 303 7.5.1, seen second-hand"),
            ("Drilling concrete makes silica dust.", COMMON),
        ),
        Stage.FIRST_BAY: (
            ("Half the bolts, or the number specified if that is more, before the hoist lets go.",
             f"{CFR}1926.758(c)"),
            ("No load on framing that is not secured.", f"{CFR}1926.758(d)"),
            FALLS,
        ),
        Stage.FRAMES: (
            ("Frame by frame, each tied to those that stand before the hoist lets go.", COMMON),
            ("Half the bolts, or the number specified if that is more, before the hoist lets go.",
             f"{CFR}1926.758(c)"),
        ),
        Stage.TIES: (
            ("Guys and temporary bracing stay.", COMMON),
            ("Two members on the same bolts: the first stays fastened while the second goes on.",
             f"{CFR}1926.758(e)"),
            ("Bundles on the roof only within 8 ft (2.4 m) of a frame's centre line.", f"{CFR}1926.758(i)"),
            FALLS, NO_ANCHOR,
        ),
        Stage.GABLES: (("Guys and temporary bracing stay.", COMMON), NO_ANCHOR),
        Stage.PLUMB: (
            ("Guys stay until bracing and bolts are in and tight.", COMMON),
        ),
        Stage.WINDOWS: (SEALED,),
        Stage.OPENING_TRIM: (TACKED, CUTTING),
        Stage.SIDE_SHEETS: (
            ("The first sheet plumb and square: all follow it. Sheets grow or shrink under the hands: "
             "correct no more than 1/8 in (3 mm) a sheet.", COMMON),
            LOOSE, LADDER, CUTTING,
        ),
        Stage.BACK_SHEETS: (LOOSE, LADDER, CUTTING),
        Stage.FRONT_SHEETS: (LOOSE, LADDER, CUTTING),
        Stage.CORNERS: (LADDER,),
        Stage.EAVES: (
            ("Set the eave trim's top by a straightedge on the roof steel.", COMMON), LADDER,
        ),
        **dict.fromkeys((Stage.LOWER_ROOF, Stage.ROOF), (
            FALLS,
            ("Stand only on sheets that are fastened, over purlins; never on wet or frosty ones.", COMMON),
            ("At least two lay a roof sheet, three better.", COMMON),
            ("A string along the ridge ends lines the sheets up; the distance from the leading edge to the "
             "next frame is the same at top and bottom.", COMMON),
            LOOSE, NO_ANCHOR,
        )),
        **dict.fromkeys((Stage.LOWER_RAKES, Stage.BREAKS, Stage.RAKES, Stage.RIDGE), (FALLS,)),
        Stage.DOORS: (
            ("The springs of overhead doors hold enough to maim: leave them to who knows them.", COMMON),
            SEALED,
        ),
        Stage.PUNCH: (
            ("Finish the trim that was tacked; sweep off every drilling chip, they rust.", COMMON),
        ),
    }
)  # fmt: skip
"""Published sources as the trade's facts have them; the rest is common practice."""


def lifted(numbers: list[int]) -> Caution:
    """The sheets before which the overlap leg of the one laid last is lifted."""
    listed = ", ".join(map(str, numbers))
    return Caution(
        f"Lift the overlap leg of the sheet before to slip under it: sheet{'s' * (len(numbers) > 1)} "
        f"{listed}. Screws of the lap rib wait until the neighbour is on.",
        COMMON,
    )
