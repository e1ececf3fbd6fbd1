"""The stages of a raising, in the order of the trade, and what belongs to each by its role."""

from __future__ import annotations

from enum import IntEnum

from ..roles import Role


class Stage(IntEnum):
    """When. Within a stage each wall, and each slope, has a step of its own."""

    DELIVERY = 0
    SLAB = 1
    FIRST_BAY = 2
    FRAMES = 3
    TIES = 4
    GABLES = 5
    PLUMB = 6
    OPENINGS = 7
    BASE = 8
    WINDOWS = 9
    OPENING_TRIM = 10
    SIDE_SHEETS = 11
    BACK_SHEETS = 12
    FRONT_SHEETS = 13
    CORNERS = 14
    EAVES = 15
    LOWER_ROOF = 16
    LOWER_RAKES = 17
    BREAKS = 18
    ROOF = 19
    RAKES = 20
    RIDGE = 21
    DOORS = 22
    DOWNSPOUTS = 23
    UNKNOWN = 24
    PUNCH = 25


NAMES: dict[Stage, str] = {
    Stage.DELIVERY: "delivery",
    Stage.SLAB: "slab",
    Stage.PLUMB: "plumb, square, tighten",
    Stage.OPENINGS: "framing of openings",
    Stage.BASE: "base trim",
    Stage.WINDOWS: "windows",
    Stage.OPENING_TRIM: "trim of openings",
    Stage.CORNERS: "corner trim",
    Stage.EAVES: "eave trim",
    Stage.LOWER_RAKES: "rake trim of the lower slopes",
    Stage.BREAKS: "closures and trim at the pitch breaks",
    Stage.RAKES: "rake trim",
    Stage.RIDGE: "closures and ridge cap",
    Stage.DOORS: "doors",
    Stage.DOWNSPOUTS: "downspouts",
    Stage.UNKNOWN: "not told what it is",
    Stage.PUNCH: "punch list",
}
"""What each is called; sheets are called after their wall or slope, steel after what it is."""

BY_ROLE: dict[str, Stage] = {
    Role.SLAB: Stage.SLAB,
    **dict.fromkeys((Role.COLUMN, Role.RAFTER, Role.KNEE, Role.BASE_PLATE), Stage.TIES),
    Role.POST: Stage.GABLES,
    Role.BASE_RAIL: Stage.GABLES,
    Role.RAKE_ANGLE: Stage.GABLES,
    Role.BRACE: Stage.TIES,
    Role.STRUT: Stage.TIES,
    Role.MEMBER: Stage.TIES,
    Role.JAMB: Stage.OPENINGS,
    Role.HEADER: Stage.OPENINGS,
    Role.SILL: Stage.OPENINGS,
    Role.BASE_TRIM: Stage.BASE,
    Role.SASH: Stage.WINDOWS,
    Role.PANE: Stage.WINDOWS,
    Role.LOUVRE: Stage.WINDOWS,
    Role.J_TRIM: Stage.OPENING_TRIM,
    Role.SILL_TRIM: Stage.OPENING_TRIM,
    Role.JAMB_ANGLE: Stage.OPENING_TRIM,
    Role.HEAD_ANGLE: Stage.OPENING_TRIM,
    Role.DRIP: Stage.OPENING_TRIM,
    **dict.fromkeys((Role.CORNER_TRIM, Role.INSIDE_CORNER_TRIM), Stage.CORNERS),
    Role.CAP_TRIM: Stage.EAVES,
    Role.EAVE_TRIM: Stage.EAVES,
    Role.GUTTER: Stage.EAVES,
    Role.DOWNSPOUT: Stage.DOWNSPOUTS,
    Role.RAKE_TRIM: Stage.RAKES,
    Role.BREAK_TRIM: Stage.BREAKS,
    Role.RIDGE_CAP: Stage.RIDGE,
    Role.RIDGE_VENT: Stage.RIDGE,
    **dict.fromkeys((Role.RAIL, Role.LEAF, Role.GUIDE), Stage.DOORS),
}
"""Where the role alone says it; steel of frames where no columns tell them."""

WITHIN: tuple[str, ...] = (
    *(Role.COLUMN, Role.POST, Role.BASE_PLATE, Role.RAFTER, Role.KNEE),
    *(
        Role.EAVE_STRUT,
        Role.STRUT,
        Role.LEDGER,
        Role.PURLIN,
        Role.BASE_RAIL,
        Role.GIRT,
        Role.BRACE,
        Role.RAKE_ANGLE,
    ),
    *(Role.JAMB, Role.HEADER, Role.SILL, Role.SASH, Role.PANE, Role.LOUVRE),
    *(Role.SILL_TRIM, Role.J_TRIM, Role.JAMB_ANGLE, Role.HEAD_ANGLE, Role.DRIP),
    *(Role.OUTSIDE_CLOSURE, Role.INSIDE_CLOSURE, Role.CAP_TRIM, Role.EAVE_TRIM, Role.GUTTER),
)
"""The order of roles within a step; what is not named comes behind, in the model's order."""
