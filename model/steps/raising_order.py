"""The order in which a building goes up, from what is in its model.

The order is the trade's; what belongs to which step is told by roles and by where pieces are, never by
their names, so that a STEP file gives the same steps.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import atan2, degrees, hypot

from ..measure.clad_planes import CladPlane
from ..measure.placing import FacePlan
from ..pieces import Model, Piece
from ..roles import Role, list_of
from .cautions import (
    BEGIN,
    BEGIN_BRACED,
    BLANKET,
    CAUTIONS,
    FOLDED,
    LIGHTS,
    NO_BRACING,
    PLACEHOLDER,
    STEEP,
    UNTIED,
    lifted,
)
from .folding import folded
from .frame_checks import frame_checks, lap_checks, opening_checks, slab_checks
from .laying import laid
from .sheet_checks import foot_check, frames_ahead, roof_checks, run_checks
from .sorting import FIRST_FRAMES, LOWER, Key, is_seam, sorted_pieces
from .stages import NAMES, Stage
from .step import Caution, Dimension, Step
from .survey import Survey, survey

ALWAYS = (Stage.DELIVERY, Stage.PUNCH)
"""Steps without pieces that every building has."""
NAMED_BY_PIECES = (Stage.TIES, Stage.GABLES)
"""What such a step is called follows from what is in it."""
OVERHEAD = (Role.EAVE_STRUT, Role.STRUT, Role.LEDGER, Role.PURLIN)
"""What ties the heads of frames."""
ON_ROOF = (
    Stage.LOWER_ROOF,
    Stage.LOWER_RAKES,
    Stage.BREAKS,
    Stage.ROOF,
    Stage.RAKES,
    Stage.RIDGE,
)
"""When people stand on the roof's sheets."""
OF_STEEL = (Stage.FIRST_BAY, Stage.FRAMES, Stage.TIES)
"""Those with what may lap."""
OF_SHEETS = (Stage.SIDE_SHEETS, Stage.BACK_SHEETS, Stage.FRONT_SHEETS, Stage.LOWER_ROOF, Stage.ROOF)
"""Those with sheets."""
STEEP_FROM = degrees(atan2(4, 12)) + 1e-6


def steps(model: Model) -> tuple[Step, ...]:
    """The steps in which a building goes up: only those that it has something for.

    Every piece stands in exactly one; the pieces carry their marks. Dimensions are measured off the
    solids (mm).
    """
    site = survey(model)
    pieces = sorted_pieces(site)
    keys: set[Key] = {*pieces, *((stage, 0, 0) for stage in ALWAYS)}
    if site.stations:
        keys.add((Stage.PLUMB, 0, 0))
    order = sorted(keys, key=lambda key: (key[0], _side(site, key), *key[1:]))
    bent = folded(order, pieces)
    return tuple(
        Step(
            _name(site, key, pieces.get(key, [])),
            tuple(pieces.get(key, ())),
            tuple(_dimensions(site, key, pieces.get(key, []))),
            (*_cautions(site, key, pieces.get(key, [])), *_folded(bent.get(key, ()))),
            laid(_laid(site, key, pieces[key])) if _has_sheets(key) else (),
            bent.get(key, ()),
        )
        for key in order
    )


def _side(site: Survey, key: Key) -> float:
    """Left before right: the normal's X of a plane of sheets."""
    return site.planes[key[1]].frame.z[0] if _has_sheets(key) else 0.0


def _has_sheets(key: Key) -> bool:
    return key[0] in OF_SHEETS


CLOSED = {
    Stage.BASE: (Role.INSIDE_CLOSURE, "closures at the feet, "),
    Stage.EAVES: (Role.OUTSIDE_CLOSURE, "closures at the heads, "),
}
"""Closures that go up in a stage, and how it is called then."""
FILLED: dict[str, str] = {Role.LOUVRE: "vents"}
"""What goes up with the windows and is none."""


def _name(site: Survey, key: Key, pieces: list[Piece]) -> str:
    count = len(site.stations)
    if _has_sheets(key):
        return _of_plane(site, key, pieces)
    if key[0] == Stage.FIRST_BAY:
        return _numbered(range(site.first + 1, min(site.first + FIRST_FRAMES, count) + 1))
    if key[0] == Stage.FRAMES:
        behind, before = range(site.first + FIRST_FRAMES + 1, count + 1), range(site.first, 0, -1)
        return ", then ".join(_numbered(span) for span in (behind, before) if span)
    if key[0] in NAMED_BY_PIECES:
        return ", ".join(f"{role}s" for role in dict.fromkeys(piece.role for piece in pieces))
    if key[0] == Stage.WINDOWS:
        return " and ".join(dict.fromkeys(FILLED.get(piece.role, NAMES[key[0]]) for piece in pieces))
    role, closed = CLOSED.get(key[0], ("", ""))
    roles = {piece.role for piece in pieces}
    caps = "caps of half walls, " if Role.CAP_TRIM in roles else ""
    return f"{closed if role in roles else ''}{caps}{NAMES[key[0]]}"


def _numbered(span: range) -> str:
    """ "frame 3", "frames 3 and 4", "frames 3 to 7": as they are stood."""
    if len(span) == 1:
        return f"frame {span[0]}"
    return f"frames {span[0]} {'and' if len(span) == FIRST_FRAMES else 'to'} {span[-1]}"


def _of_plane(site: Survey, key: Key, pieces: list[Piece]) -> str:
    """What a step of a plane of sheets is called: of a wall that has seams, by its place between them."""
    _, number, tier = key
    name, last = site.planes[number].name, LOWER + 2 * len(site.seams.get(number, ()))
    if any(piece.role == Role.FLASHING for piece in pieces):
        return f"{Role.FLASHING} at the {name}, its screws later"
    if any(piece.role == Role.RAIL_COVER for piece in pieces):
        return f"covers over the rails of the {name}"
    if is_seam(tier):
        return f"trim between the tiers of the {name}"
    which = {0: "", LOWER: "lower ", last: "upper "}.get(tier, "middle ")
    return f"{which}{'blanket and ' if _blanket(pieces) else ''}sheets of the {name}"


def _blanket(pieces: list[Piece]) -> bool:
    return any(list_of(piece.role) == "insulation" for piece in pieces)


def _dimensions(site: Survey, key: Key, pieces: list[Piece]) -> Iterator[Dimension]:
    count, first = len(site.stations), site.first
    if key[0] in OF_STEEL:
        yield from lap_checks(site.laps, pieces)
    if key[0] == Stage.SLAB:
        yield from slab_checks(pieces)
    elif key[0] == Stage.FIRST_BAY:
        until = min(first + FIRST_FRAMES, count)
        yield from frame_checks(site.stations, range(first, until), range(first, until - 1), first)
    elif key[0] == Stage.FRAMES:
        behind = range(first + FIRST_FRAMES, count)
        yield from frame_checks(site.stations, behind, range(behind.start - 1, count - 1), first)
        yield from frame_checks(site.stations, range(first), range(first), first)
    elif key[0] == Stage.PLUMB:
        yield from frame_checks(site.stations, range(count), range(count - 1), 0)
    elif key[0] == Stage.OPENINGS:
        yield from opening_checks(pieces)
    elif _has_sheets(key):
        plane, plan = site.planes[key[1]], _laid(site, key, pieces)
        yield from run_checks(plan, plane.sloped)
        if plane.sloped:
            yield from frames_ahead(plane, plan, site.stations)
            yield from roof_checks(plane, site.pieces, site.planes, over_eave=not _on_another(site, key))
        elif key[2] in (0, LOWER):
            yield from foot_check(plane)


def _on_another(site: Survey, key: Key) -> bool:
    """Whether a slope's feet lie over the heads of one below it."""
    return bool(site.lower) and key[0] == Stage.ROOF


def _cautions(site: Survey, key: Key, pieces: list[Piece]) -> Iterator[Caution]:
    """Temporary stability first."""
    if key[0] in (Stage.FIRST_BAY, Stage.PLUMB):
        yield PLACEHOLDER if site.braced else NO_BRACING
    if key[0] == Stage.FIRST_BAY:
        yield BEGIN_BRACED if site.braced else BEGIN
    if key[0] == Stage.FIRST_BAY and not any(piece.role in OVERHEAD for piece in pieces):
        yield UNTIED
    if key[0] in ON_ROOF and site.of(Role.ROOF_LIGHT):
        yield LIGHTS
    yield from CAUTIONS.get(key[0], ())
    yield from [BLANKET] if _blanket(pieces) else []
    if _has_sheets(key):
        plan, plane = _laid(site, key, pieces), site.planes[key[1]]
        numbers = list(dict.fromkeys(one.number for one in plan.sheets if one.lift))
        yield from [lifted(numbers)] if numbers else []
        yield from [STEEP] if plane.sloped and _pitch(plane) > STEEP_FROM else []


def _folded(bent: Sequence[Piece]) -> Iterator[Caution]:
    """What holds the ends that close a roof: a drip's are turned down and close nothing."""
    yield from [FOLDED] if any(piece.role != Role.DRIP for piece in bent) else []


def _laid(site: Survey, key: Key, pieces: list[Piece]) -> FacePlan:
    """The plan of the sheets that are laid in a step."""
    laid = {id(piece) for piece in pieces}
    plan = site.plans[key[1]]
    return replace(plan, sheets=tuple(one for one in plan.sheets if id(one.piece) in laid))


def _pitch(plane: CladPlane) -> float:
    """Degrees."""
    x, y, z = plane.frame.z
    return degrees(atan2(hypot(x, y), z))
