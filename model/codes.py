"""Every finding there is, as a table: its short stable name, the check it belongs to, its words."""

from __future__ import annotations

from enum import Enum
from typing import Literal

Check = Literal[
    "layout", "detailing", "clash", "cover", "laps", "overhang", "bite", "bodies", "labels", "reach", "audit"
]
CHECKS: tuple[Check, ...] = ("clash", "cover", "laps", "overhang", "bite", "bodies", "labels")
"""The checks of the audit, in the order of their findings; `reach` wants an order of raising besides."""


class Code(Enum):
    """Every finding there is: its short stable name, the check it belongs to, its words, whether a fault.

    In the words stand {pieces}, {one} and {other} (the first two), {measured} and {limit}.
    """

    POST_LEFT_OUT = (
        "post-left-out",
        "layout",
        "the post {measured} from the left corner of the {pieces} wall is left out: an opening is there",
        False,
    )
    POST_ON_HEADER = (
        "post-on-header",
        "layout",
        "the post {measured} from the left corner of the {pieces} wall stops on the header of the opening "
        "below it",
        False,
    )
    SCREW_LEFT_OUT = (
        "screw-left-out",
        "layout",
        "screws that the pattern asks of {one} and no steel would hold are left out: {measured}",
    )
    OPEN_OVER_GABLE = (
        "open-over-gable",
        "layout",
        "the gap over the sheets of the {pieces} gable, {measured} deep between the purlins that run on over "
        "it, is open",
        False,
    )
    DOOR_ROOM = (
        "door-room",
        "layout",
        "{one} stands in the room that {other} needs; move the door, or give it other headroom, side_room "
        "or depth_back",
    )
    OPENING_ON_RIB = (
        "opening-on-rib",
        "detailing",
        "{one} has an edge along a rib of the sheets, which is hard to cut and to screw; {measured} to one "
        "side, with from_left {limit}, its edges would be clear",
        False,
    )
    OPENING_ON_RIBS = (
        "opening-on-ribs",
        "detailing",
        "{one} has an edge along a rib of the sheets, which is hard to cut and to screw, and no place nearby "
        "is clear of them; {limit} wide about the same middle it would be",
        False,
    )
    OPENING_RIBS_STAY = (
        "opening-ribs-stay",
        "detailing",
        "{one} has an edge along a rib of the sheets, which is hard to cut and to screw, and neither another "
        "place nor another width nearby is clear of them",
        False,
    )
    STRIP_BESIDE = (
        "strip-beside-opening",
        "detailing",
        "{one} leaves a strip of {measured} of a sheet beside it; with from_left {limit} it would not",
        False,
    )
    STRIPS_BESIDE = (
        "strips-beside-opening",
        "detailing",
        "{one} leaves a strip of {measured} of a sheet beside it, and no place nearby is better; {limit} "
        "wide about the same middle it would be",
        False,
    )
    STRIP_STAYS = (
        "strip-stays",
        "detailing",
        "{one} leaves a strip of {measured} of a sheet beside it, and neither another place nor another "
        "width nearby is better",
        False,
    )
    SLIVER = (
        "last-sheet-narrow",
        "detailing",
        "the last sheet of {pieces} is {measured} wide; a width there of {limit} saves one on each",
        False,
    )
    RIP_ON_RIB = (
        "rip-on-rib",
        "detailing",
        "the last sheet of {pieces} is cut along a rib; a width there of {limit} leaves a flat edge",
        False,
    )
    SHEET_SHORT = (
        "sheet-short",
        "detailing",
        "{pieces}: under {limit}, the least a mill makes, so cut from longer sheets",
        False,
    )
    SHEET_LONG = (
        "sheet-long",
        "detailing",
        "{pieces}: up to {measured}, and a mill makes {limit} at most",
        False,
    )
    DRIP_SHORT = (
        "drip-short",
        "detailing",
        "over the {pieces} wall the roof ends {measured} past the eave trim; {limit} drips clear",
        False,
    )
    GIRT_SPAN = (
        "girt-span",
        "detailing",
        "girts of {pieces} run free for {measured}; from {limit} on ask the engineer, or add posts",
        False,
    )
    PURLIN_SPAN = (
        "purlin-span",
        "detailing",
        "purlins of {pieces} run free for {measured}; from {limit} on ask the engineer, or add frames",
        False,
    )
    CLASH = ("clash", "clash", "{one} and {other} share {measured} of space")
    SCREW_CLASH = (
        "screw-clash",
        "clash",
        "{one} runs into {other}, which it does not fasten: {measured} shared",
    )
    UNCLAD = ("face-unclad", "cover", "no sheet is on {measured} of framing, beside {pieces}")
    UNCOVERED = ("uncovered", "cover", "{measured} beside {pieces} has steel behind it and no sheet")
    COVERED_TWICE = ("covered-too-often", "cover", "{pieces} lie over each other on {measured}")
    IN_OPENING = ("sheet-in-opening", "cover", "{one} reaches {measured} into the opening of {other}")
    HOLE = ("hole-without-opening", "cover", "a hole of {measured} in {pieces} has no opening behind it")
    OPEN_TO_SKY = ("open-to-sky", "cover", "{measured} is open to the sky beside {pieces}")
    SEAM_OPEN = (
        "seam-open",
        "cover",
        "{measured} of the seam of {one} over {other} has no trim behind the one and before the other",
    )
    SEAM_OFF_STEEL = (
        "seam-off-steel",
        "cover",
        "{measured} of the seam of {one} has no steel right behind it",
    )
    HEADWALL_OPEN = (
        "headwall-open",
        "cover",
        "{measured} of the head of {pieces} at the wall has no flashing up behind the sheets above",
    )
    BREAK_OPEN = (
        "pitch-break-open",
        "cover",
        "{measured} of the foot of {pieces} at the pitch break has no trim under it, over those below",
    )
    RAW_EDGE = ("raw-edge", "cover", "{measured} of the cut edge of {pieces} has no trim over or under it")
    BARE_EAVE = ("bare-eave", "cover", "{measured} of the eave of {pieces} has no trim along it")
    LAP_OPEN = (
        "lap-open",
        "laps",
        "{measured} of air between {one} and {other} at their lap, {limit} allowed",
    )
    LAP_PRESSED = ("lap-pressed", "laps", "{one} and {other} lie {measured} inside each other at their lap")
    LAP_WIDTH = ("lap-width", "laps", "{one} and {other} lap {measured}; the laps of their face are {limit}")
    RIBS_APART = ("ribs-apart", "laps", "the lap ribs of {one} and {other} stand {measured} apart")
    LAP_WITHOUT_RIB = ("lap-without-rib", "laps", "no rib of {one} lies over a rib of {other} at their lap")
    LAP_TURNED = ("lap-turned", "laps", "{one} lies over {other}, against the way the others of the face lap")
    LAP_NOT_AS_ASKED = (
        "lap-not-as-asked",
        "laps",
        "the overlap ribs of {pieces} are on the other side than was asked",
    )
    END_LAP_TURNED = (
        "end-lap-turned",
        "laps",
        "the foot of {other} lies under the head of {one}, where water runs in",
    )
    END_LAP_SHORT = ("end-lap-short", "laps", "{one} lies {measured} over {other}, {limit} asked")
    END_LAP_LOOSE = (
        "end-lap-loose",
        "laps",
        "a rib of {one} where it lies over {other} has no screw through both into steel within {limit}",
    )
    MEMBER_LAP_SHORT = (
        "member-lap-short",
        "laps",
        "{one} and {other} lap {measured} past the middle of a frame, {limit} asked",
    )
    OFF_PLANE = ("sheet-off-plane", "laps", "{pieces} lies {measured} off the plane of its face")
    TRIM_LAP_SHORT = ("trim-lap-short", "laps", "{one} and {other} lap {measured}, {limit} asked")
    TRIM_LAP_UPHILL = ("trim-lap-uphill", "laps", "{one} lies outside {other}, though it is lower")
    TRIM_LAP_WINDWARD = ("trim-lap-windward", "laps", "the edge of {one} over {other} faces the wind")
    TRIM_LAP_TURNED = (
        "trim-lap-turned",
        "laps",
        "{one} lies on {other} at the eave, against the way that was asked",
    )
    RIB_OPEN = ("rib-end-open", "laps", "the hollow under a rib of {one} is open at its end, {measured}")
    OUT_OF_REACH = (
        "out-of-reach",
        "reach",
        "{one} cannot be put where it belongs in this order, on the ways tried: {other} is in the way",
    )
    OVERHANG = ("overhang", "overhang", "{pieces} reaches {measured} past the steel, {limit} asked")
    EAVE_CROOKED = ("eave-crooked", "overhang", "{one} and {other} end {measured} apart at the eave")
    FEET_UNEVEN = ("feet-uneven", "overhang", "the feet of {one} and {other} are {measured} apart in height")
    SEAM_HANG = (
        "seam-hang",
        "overhang",
        "the foot of {one} hangs {measured} over the shelf of {other}, {limit} asked",
    )
    HEADWALL_HANG = (
        "headwall-hang",
        "overhang",
        "the foot of {one} hangs {measured} over the bend of {other}, {limit} asked",
    )
    BREAK_HANG = (
        "pitch-break-hang",
        "overhang",
        "the foot of {one} ends {measured} from the bend of {other}, {limit} asked",
    )
    RIDGE_BARE = ("ridge-bare", "overhang", "{measured} at the head of {pieces} is not under the ridge cap")
    SCREW_IN_AIR = ("screw-in-air", "bite", "{one} passes through nothing that it could hold")
    SCREW_MISSES = ("screw-misses-steel", "bite", "{one} goes through {other} and finds no steel behind")
    BITE_SHORT = ("bite-short", "bite", "{one} reaches {measured} past the face of {other}, {limit} asked")
    SCREW_ALONG = ("screw-along-steel", "bite", "{one} runs {measured} down a wall of {other}, not through")
    SCREW_GAP = ("screw-gap", "bite", "{one} has {measured} of air under {other} before the next it holds")
    WASHER_OFF = ("washer-off", "bite", "the washer of {one} stands {measured} off {other}")
    WASHER_RIDES = (
        "washer-rides",
        "bite",
        "a rib or an edge of {other} is {measured} from flat under {one}'s washer",
    )
    HEAD_BEHIND = ("head-behind", "bite", "the head of {one} is behind {other}")
    SCREWS_NEAR = ("screws-near", "bite", "{one} and {other} stand {measured} apart, {limit} asked")
    EDGE_NEAR = ("edge-near", "bite", "{one} stands {measured} from an edge of {other}, {limit} asked")
    EDGE_LOOSE = ("edge-loose", "bite", "{measured} of an edge of {one} has steel behind it and no screw")
    TRIM_LOOSE = ("trim-loose", "bite", "no screw holds {one}")
    TRIM_TO_TACK = (
        "trim-to-tack",
        "bite",
        "no sheet shows a flat for a screw through {one}: tack it to the steel before the sheets go on",
        False,
    )
    BODY_OPEN = ("body-open", "bodies", "the solid of {pieces} is not closed, or folds into itself")
    BODY_HOLLOW = ("body-inside-out", "bodies", "the solid of {pieces} has no volume, or is inside out")
    BODY_INVALID = ("body-invalid", "bodies", "the kernel's own checks find the solid of {pieces} invalid")
    FLOATING = ("floating", "bodies", "{pieces} touches nothing")
    BRACE_LOOSE = (
        "brace-loose",
        "bodies",
        "an end of {one} stands {measured} off the columns and rafters, {limit} allowed",
    )
    GAUGE = ("gauge-differs", "labels", "{pieces} is {measured} thick, its label says {limit}")
    PROFILE = ("profile-differs", "labels", "{pieces}: its ribs are not those of the profile on its label")
    ROLE = ("role-unknown", "labels", "{pieces} has a role that is not known; it is on no list")
    NOT_LOOKED_AT = ("not-looked-at", "audit", "the check of {pieces} found nothing to look at")

    def __init__(self, text: str, check: Check, words: str, fault: bool = True) -> None:
        self.text = text
        self.check: Check = check
        self.words = words
        self.fault = fault
