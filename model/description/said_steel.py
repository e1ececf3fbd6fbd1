"""Frames, framing and bracing of a draft, and the sizes of members that nobody gave."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import accumulate
from math import ceil, hypot, radians, tan

from ..catalog.sections import SectionShape, parse_section
from ..units import Units, parse_length
from .braced_bays import at_ends
from .building import Building
from .keys.catalogued import CENTRE
from .keys.steel_tables import MEMBER_KINDS
from .reading.draft import Draft, Values
from .said_limits import over
from .steel import LAP_DEPTHS, STRUT_CLEAR, Bracing, Frame, Framing

LEAST_OVER = parse_length("3 in")


def frame_of(draft: Draft) -> Frame:
    """Frames, columns, posts; where the frames stand, from their spacing or their bays."""
    values = dict(draft.tables["frame"])
    length, width = draft.tables[""]["length"], draft.tables[""]["width"]
    spacing, bays = values.pop("spacing"), values.pop("bays")
    if bays:
        stations = tuple(accumulate(bays))[:-1]
    else:
        number = max(1, ceil(length / spacing - 1e-9))
        stations = tuple(length * k / number for k in range(1, number))
    for posts in ("front_posts", "back_posts"):
        if values[posts] is not None:
            values[posts] = tuple(sorted(width / 2 if u == CENTRE else u for u in values[posts]))
    return Frame(stations=stations, **values)


@dataclass(frozen=True, slots=True)
class UsualSteel:
    """Sizes of struts, rails and angles that nobody gave (mm). leg: of angles, and the struts' flanges.
    strut, angle: their thicknesses. stock: the lengths that members come in."""

    depth: float
    leg: float
    strut: float
    angle: float
    stock: tuple[float, ...]


def _usual_steel(stock: tuple[str, ...], *sizes: str) -> UsualSteel:
    depth, leg, strut, angle = map(parse_length, sizes)
    return UsualSteel(depth, leg, strut, angle, tuple(map(parse_length, stock)))


USUAL: dict[Units, UsualSteel] = {
    "ft-in": _usual_steel(("20 ft", "24 ft", "40 ft"), "6 in", "2 in", "0.059 in", "0.075 in"),
    "mm": _usual_steel(("6 m", "12 m"), "150 mm", "50 mm", "1.5 mm", "2 mm"),
}


def runs_on(draft: Draft) -> bool:
    """Whether purlins and eave struts run on over the gables."""
    return bool(draft.tables["roof"]["gable_overhang"] > 0)


def framing_of(values: Values, pitch: float, usual: UsualSteel, over_columns: bool, along: float) -> Framing:
    """Girts, purlins and the like. over_columns: whether the eave strut lies over the columns as the purlins
    do over the rafters. along: how long the lines of purlins are."""
    values = Values(values)
    values["girt_heights"] = tuple(sorted(values["girt_heights"] or ()))
    values["stock"] = tuple(sorted(values["stock"] or usual.stock))
    own = {kind.replace("_", " "): values.pop(f"{kind}_stock") for kind in MEMBER_KINDS}
    values["stocks"] = tuple((role, tuple(sorted(set(sticks)))) for role, sticks in own.items() if sticks)
    longest = max(dict(values["stocks"]).get("purlin", values["stock"]))
    nested = values.pop("purlin_splices") == "nested" and over(along, longest)
    arm, purlin = values.pop("purlin_lap"), values["purlin"]
    values |= {"nested": nested, "arm": (arm or LAP_DEPTHS * purlin.depth) if nested else 0.0}
    deep = purlin.depth + (purlin.thickness if nested else 0.0)
    if values["eave_strut"] is None:
        # With flush girts it passes over the columns, and so over the rafters that rise behind it; where it
        # runs on over a gable, over its sheets.
        rise = tan(radians(pitch))
        passing = deep * hypot(1, rise) - STRUT_CLEAR * rise
        over_columns = over_columns or values["girts"] != "by-pass"
        depth = passing if over_columns and passing >= LEAST_OVER else usual.depth
        values["eave_strut"] = _usual("cee", depth, usual.leg, usual.strut)
    across = min(usual.leg, values["girt"].depth)
    if values["base_rail"] is None:
        values["base_rail"] = _usual("angle", usual.leg, across, usual.angle)
    if values["rake_angle"] is None:
        leg = deep + usual.angle
        # Its lying leg turns in under the purlins, before the end rafter that stands in by the girts.
        values["rake_angle"] = _usual("angle", leg, across, usual.angle)
    return Framing(**values)


def _usual(shape: str, *sizes: float) -> SectionShape:
    """A section that nobody typed, its sizes (mm) written finer than anything is compared."""
    return parse_section(f"{shape} {'x'.join(f'{size:.9f}' for size in sizes)} mm")


USUAL_BRACE: dict[Units, str] = {"ft-in": "rod 5/8", "mm": "rod 16 mm"}


def bracing_of(draft: Draft, building: Building) -> Bracing | None:
    """The bracing, where any key of it asks for one; which bays, where no numbers say it, follows from the
    openings."""
    values = draft.tables["bracing"]
    bays, brace = values["bays"], values["brace"]
    if bays == () or not draft.given.get("bracing"):
        return None
    chosen = at_ends(building) if bays is None or bays == "ends" else bays
    return Bracing(chosen, brace or parse_section(USUAL_BRACE[draft.units]), values["strut"])
