"""Which step each piece is put up in."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping

from ..measure.laps import CladPlane
from ..pieces import Piece
from ..roles import Role, list_of
from .frames import last_under, nearest, on_post
from .hosts import plane_of, roof_of, trim_of
from .stages import BY_ROLE, WITHIN, Stage
from .survey import Survey

Key = tuple[Stage, int]
"""A step: its stage, and for sheets the number of their plane, else 0."""
FIRST_FRAMES = 2
"""How many frames are stood and tied together before any other."""
OF_FRAMES = (Role.COLUMN, Role.RAFTER, Role.KNEE, Role.BASE_PLATE)
TIES = (Role.GIRT, Role.EAVE_STRUT, Role.PURLIN)


def sorted_pieces(site: Survey) -> Mapping[Key, list[Piece]]:
    """The pieces of each step in the order in which they are placed, screws last. Each piece is in one."""
    found: dict[Key, list[Piece]] = defaultdict(list)
    sheets = {id(one.piece): k for k, plan in enumerate(site.plans) for one in plan.sheets}
    trims: list[tuple[Stage, Piece]] = []
    screws: list[Piece] = []
    for piece in site.pieces:
        kind = list_of(piece.role)
        if kind == "screws":
            screws.append(piece)
            continue
        if id(piece) in sheets:
            continue
        key = (_stage(site, piece), 0) if kind != "closures" else _foam(site, piece)
        found[key].append(piece)
        if kind == "trims":
            trims.append((key[0], piece))
    for key, pieces in found.items():
        pieces.sort(key=lambda piece: _place(site, key, piece))
    for number, plan in enumerate(site.plans):
        found[wall_or_roof(site.planes[number]), number] += [one.piece for one in plan.sheets]
    _screws(site, found, trims, screws)
    return found


def wall_or_roof(plane: CladPlane) -> Stage:
    """The stage of a plane's sheets: side walls, the back gable, the front gable, the roof."""
    x, y, _ = plane.frame.z
    if plane.sloped:
        return Stage.ROOF
    if abs(x) > abs(y):
        return Stage.SIDE_SHEETS
    return Stage.BACK_SHEETS if y > 0 else Stage.FRONT_SHEETS


def _stage(site: Survey, piece: Piece) -> Stage:
    if piece.role == Role.BASE_PLATE and on_post(site.of(Role.POST), site.of(Role.COLUMN), piece):
        return Stage.GABLES
    if piece.role in OF_FRAMES and site.stations:
        return Stage.FIRST_BAY if nearest(site.stations, piece) < FIRST_FRAMES else Stage.FRAMES
    if piece.role in TIES:
        last = last_under(site.stations, piece)
        return Stage.GABLES if last is None else Stage.FIRST_BAY if last < FIRST_FRAMES else Stage.TIES
    return BY_ROLE.get(piece.role, Stage.UNKNOWN)


def _foam(site: Survey, piece: Piece) -> Key:
    """Foam at the heads of walls with the eave trim, under roof sheets with them, under a cap with it."""
    number = roof_of(site.planes, piece)
    if number is None:
        return Stage.EAVES, 0
    return (Stage.ROOF, number) if piece.role == Role.INSIDE_CLOSURE else (Stage.RIDGE, 0)


def _place(site: Survey, key: Key, piece: Piece) -> tuple[int, ...]:
    """What pieces of a step are put in order by: their frame, then what they are; else the model's order."""
    rank = WITHIN.index(piece.role) if piece.role in WITHIN else len(WITHIN)
    if key[0] not in (Stage.FIRST_BAY, Stage.FRAMES) or not site.stations:
        return (rank,)
    last = last_under(site.stations, piece) if piece.role in TIES else None
    return (nearest(site.stations, piece) if last is None else last, rank)


def _screws(
    site: Survey, found: dict[Key, list[Piece]], trims: list[tuple[Stage, Piece]], screws: list[Piece]
) -> None:
    """Puts each row of screws behind what it holds: the trim it goes through, else the sheets."""
    trims.sort(key=lambda one: one[0])
    stages = {id(trim): stage for stage, trim in trims}
    for screw in screws:
        trim = trim_of([one for _, one in trims], screw) if screw.role == Role.TRIM_SCREW else None
        if trim is not None:
            found[stages[id(trim)], 0].append(screw)
            continue
        number = plane_of(site.planes, screw)
        key = (Stage.UNKNOWN, 0) if number is None else (wall_or_roof(site.planes[number]), number)
        found[key].append(screw)
