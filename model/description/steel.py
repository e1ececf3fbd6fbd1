"""The steel and the slab as a description states them: sections, spacings, places (mm)."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from ..catalog.sections import SectionShape

STRUT_CLEAR = 60.325
"""mm; eave steel line to rafters and sheets that a usual eave strut passes over (2-3/8 in). Ours."""

LAP_DEPTHS = 1.5
"""Depths of a nested zee that its lap reaches past a frame's centre at the least (AISI S100, from memory)."""

GirtStyle = Literal["by-pass", "flush"]


@dataclass(frozen=True, slots=True)
class Frame:
    """The frames that stand across the building. Sizes are placeholders for an engineer's.

    stations: y of the interior frames' centre planes, front to back; the two end frames stand
    inside the gables' steel lines. knee: None leaves knee braces out; knee_reach: how far from the
    inner corner a knee meets column and rafter. front_posts, back_posts: u of gable posts from that
    wall's left corner seen from outside; None: where girts need them, and at the back one in the centre
    where there is room. plate_*: base plates and the holes for their anchor rods.
    """

    stations: tuple[float, ...]
    column: SectionShape
    rafter: SectionShape
    knee: SectionShape | None
    knee_reach: float
    post: SectionShape
    front_posts: tuple[float, ...] | None
    back_posts: tuple[float, ...] | None
    plate_thickness: float
    plate_reach: float
    anchor_hole: float


@dataclass(frozen=True, slots=True)
class Bracing:
    """Braces in X in the roof and both side walls: placeholders for an engineer's.

    bays: numbers of those that have them, counted from the front; none where none was found that could.
    strut: of the lines between them, where the roof's braces end; None: eave struts and purlins are those.
    """

    bays: tuple[int, ...]
    brace: SectionShape
    strut: SectionShape | None


@dataclass(frozen=True, slots=True)
class Framing:
    """What lies between frames and sheets.

    girts: "by-pass" in front of the columns, or "flush" between them. girt_heights: of girt centres
    above the slab, empty: evenly spaced no further apart than girt_spacing. purlin_spacing: likewise,
    along the slope. nested: whether they are zees that lap where they are spliced; arm: how far past a
    frame's centre. rake_angle: vertical leg first. stock: the lengths that members come in;
    stocks: of the roles that have their own; kerf: lost at every cut.
    """

    girts: GirtStyle
    girt: SectionShape
    girt_spacing: float
    girt_heights: tuple[float, ...]
    purlin: SectionShape
    purlin_spacing: float
    nested: bool
    arm: float
    eave_strut: SectionShape
    base_rail: SectionShape
    rake_angle: SectionShape
    jamb: SectionShape
    header: SectionShape
    sill: SectionShape
    stock: tuple[float, ...]
    stocks: tuple[tuple[str, tuple[float, ...]], ...]
    kerf: float

    @property
    def roof_depth(self) -> float:
        """From the roof's steel plane to what carries the purlins (mm): their depth, and where they nest a
        thickness more."""
        return self.purlin.depth + (self.purlin.thickness if self.nested else 0.0)

    @property
    def rake_leg(self) -> float:
        """How far what closes the purlins' ends along a rake reaches down from the roof's steel plane (mm):
        the rake angle's upright leg; with flush girts, where the end rafter lies in place of its other leg, a
        strip as deep as the purlins lie."""
        return self.rake_angle.depth if self.girts == "by-pass" else self.roof_depth

    def sticks(self, role: str) -> tuple[float, ...]:
        """The lengths that members of a role come in, shortest first."""
        return dict(self.stocks).get(role, self.stock)
