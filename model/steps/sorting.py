"""Which step each piece is put up in."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from math import inf

from ..measure.clad_planes import CladPlane
from ..measure.standing import standing_box
from ..pieces import Piece
from ..roles import Role, list_of
from .frames import bay_of, nearest, on_post, under
from .hosts import plane_of, plane_over, roof_of, roof_under, trim_of, wall_of
from .stages import BY_ROLE, WITHIN, Stage
from .survey import BETWEEN, Survey, height

Key = tuple[Stage, int, int]
"""A step: its stage; for sheets the number of their plane, else 0; for walls with seams from the foot up
LOWER, the seam, the sheets over it and so on, else 0."""
LOWER = 1
FIRST_FRAMES = 2
"""How many frames are stood and tied together before any other."""
NEAR_SEAM = 150.0
"""mm; what lies so near to the height of a seam closes it. Ours."""
OF_FRAMES = (Role.COLUMN, Role.RAFTER, Role.KNEE, Role.BASE_PLATE)
TIES = (Role.GIRT, Role.EAVE_STRUT, Role.STRUT, Role.LEDGER, Role.PURLIN)


def sorted_pieces(site: Survey) -> Mapping[Key, list[Piece]]:
    """The pieces of each step in the order in which they are placed, screws last. Each piece is in one."""
    found: dict[Key, list[Piece]] = defaultdict(list)
    sheets = {id(one.piece) for plan in site.plans for one in plan.sheets}
    rest = [piece for piece in site.pieces if id(piece) not in sheets]
    trims: list[tuple[Key, Piece]] = []
    for piece in rest:
        if list_of(piece.role) != "screws":
            key = _key(site, piece)
            found[key].append(piece)
            trims += [(key, piece)] if list_of(piece.role) == "trims" else []
    for key, pieces in found.items():
        pieces.sort(key=lambda piece: _place(site, key, piece))
    for number, plan in enumerate(site.plans):
        for one in plan.sheets:
            found[_laid(site, number, one.piece)].append(one.piece)
    trims.sort(key=lambda one: one[0])
    for piece in rest:
        if list_of(piece.role) == "screws":
            found[_screw_key(site, trims, piece)].append(piece)
    return found


def _key(site: Survey, piece: Piece) -> Key:
    """The step of what is neither sheet nor screw."""
    if list_of(piece.role) == "closures":
        return _foam(site, piece)
    if list_of(piece.role) == "insulation":
        number = plane_over(site.planes, piece)
        return (Stage.UNKNOWN, 0, 0) if number is None else _on_plane(site, number, piece)
    if piece.role in BETWEEN:
        return _at_seam(site, piece) or (Stage.UNKNOWN, 0, 0)
    return _stage(site, piece), 0, 0


def _laid(site: Survey, number: int, piece: Piece) -> Key:
    """The step of a sheet, or of a row of screws through it. One that reaches past a seam, cut round what
    ends there, goes up with those over it."""
    return _on_plane(site, number, piece, float(standing_box(piece)[1, 2]) - NEAR_SEAM)


def _on_plane(site: Survey, number: int, piece: Piece, up: float | None = None) -> Key:
    """The step of what lies on a plane, by how high that is: its middle, unless told."""
    seams, up = site.seams.get(number, ()), height(piece) if up is None else up
    tier = LOWER + 2 * sum(seam < up for seam in seams) if seams else 0
    stage = wall_or_roof(site.planes[number])
    return (Stage.LOWER_ROOF if number in site.lower else stage), number, tier


def _at_seam(site: Survey, piece: Piece) -> Key | None:
    """The step of what closes the seam between two tiers; None for what is at none."""
    number = wall_of(site.planes, piece) if site.seams else None
    seams = () if number is None else site.seams.get(number, ())
    off, which = min(((abs(height(piece) - seam), k) for k, seam in enumerate(seams)), default=(inf, 0))
    if number is None or off > NEAR_SEAM:
        return None
    return wall_or_roof(site.planes[number]), number, LOWER + 1 + 2 * which


def is_seam(tier: int) -> bool:
    """Whether that part of a key is a seam's."""
    return tier > 0 and tier % 2 == 0


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
    if piece.role == Role.RAKE_TRIM and roof_under(site.planes, piece) in site.lower:
        return Stage.LOWER_RAKES
    if piece.role in OF_FRAMES and site.stations:
        return Stage.FIRST_BAY if _turn(site, piece) < FIRST_FRAMES else Stage.FRAMES
    if piece.role in (*TIES, Role.BRACE) and site.stations:
        return _tied(site, piece)
    return BY_ROLE.get(piece.role, Stage.UNKNOWN)


def _tied(site: Survey, piece: Piece) -> Stage:
    """What hangs on frames goes up as soon as they stand; what reaches over all of them after the last."""
    frames, count = _hangs_on(site, piece), len(site.stations)
    if frames is None:
        return BY_ROLE.get(piece.role, Stage.GABLES)
    if _turn(site, piece) < FIRST_FRAMES:
        return Stage.FIRST_BAY
    return Stage.TIES if frames == (0, count - 1) else Stage.FRAMES


def _hangs_on(site: Survey, piece: Piece) -> tuple[int, int] | None:
    """The numbers of the first and the last frame that a tie or a brace is fixed to."""
    if piece.role == Role.BRACE:
        return next(iter(bay_of(site.stations, piece)), None)
    return under(site.stations, piece) if piece.role in TIES else None


def _turn(site: Survey, piece: Piece) -> int:
    """When the frame that a piece is of is stood, or the last of those that it hangs on."""
    frames = _hangs_on(site, piece)
    if frames is None:
        return site.turns[nearest(site.stations, piece)]
    return max(site.turns[frames[0] : frames[1] + 1])


def _foam(site: Survey, piece: Piece) -> Key:
    """Foam at a seam with its trim, at the feet of walls with the base trim, at their heads with the eave
    trim, under roof sheets with them, under a cap or the trim at a break with it."""
    number = roof_of(site.planes, piece)
    if number is None:
        at_foot = piece.role == Role.INSIDE_CLOSURE
        return _at_seam(site, piece) or ((Stage.BASE if at_foot else Stage.EAVES), 0, 0)
    if piece.role == Role.INSIDE_CLOSURE:
        return _on_plane(site, number, piece)
    return (Stage.BREAKS if number in site.lower else Stage.RIDGE), 0, 0


def _place(site: Survey, key: Key, piece: Piece) -> tuple[int, ...]:
    """What pieces of a step are put in order by: their frame, then what they are; else the model's order."""
    rank = WITHIN.index(piece.role) if piece.role in WITHIN else len(WITHIN)
    if key[0] not in (Stage.FIRST_BAY, Stage.FRAMES) or not site.stations:
        return (rank,)
    return (_turn(site, piece), rank)


def _screw_key(site: Survey, trims: list[tuple[Key, Piece]], screw: Piece) -> Key:
    """The step of a row of screws: that of the trim it goes through, else that of the sheets."""
    if screw.role == Role.TRIM_SCREW:
        trim = trim_of([one for _, one in trims], screw)
        if trim is not None and trim.role == Role.FLASHING:
            return Stage.RIDGE, 0, 0  # with its closures, when the roof sheets are under it
        if trim is not None:
            return next(key for key, one in trims if one is trim)
    number = plane_of(site.planes, screw)
    return (Stage.UNKNOWN, 0, 0) if number is None else _laid(site, number, screw)
