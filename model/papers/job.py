"""What all papers of a building are drawn from, measured once."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from ..drawing.pens import STYLES, Style
from ..drawing.values import A4, LETTER, Paper
from ..measure.clad_planes import CladPlane, clad_planes
from ..measure.faces import Vectors
from ..measure.placing import FacePlan
from ..measure.standing import standing_box
from ..measure.told_by_shape import told_by_shape
from ..order.buying.order_list import Order, order
from ..order.lists.schedule import Schedule, schedule
from ..pieces import Model
from ..steps import Step, steps
from ..units import Units, format_length

Pictured = Callable[[Model, Sequence[Step]], Sequence[bytes]]
"""A picture (JPEG or PNG) for each step; none, empty, where there is nothing to be seen."""


@dataclass(frozen=True, eq=False)
class Job:
    """A model, what is measured off it, the paper it is drawn on, and what makes pictures of steps."""

    model: Model
    listed: Schedule
    paper: Paper
    pictured: Pictured | None = None

    @property
    def units(self) -> Units:
        """Of every length said."""
        return self.listed.units

    @property
    def style(self) -> Style:
        """Of lines and texts."""
        return STYLES[self.units]

    def length(self, mm: float) -> str:
        """A length as papers say it."""
        return format_length(mm, self.units)

    @cached_property
    def faces(self) -> tuple[tuple[CladPlane, FacePlan], ...]:
        """Every plane of sheets with the plan of its sheets."""
        return tuple(zip(clad_planes(self.model), self.listed.plans, strict=True))

    @cached_property
    def raising(self) -> tuple[Step, ...]:
        """The steps in which it goes up."""
        return steps(self.model)

    @cached_property
    def ordered(self) -> Order:
        """What is bought for it, as its terms ask."""
        return order(self.listed)

    @cached_property
    def boxes(self) -> Vectors:
        """(n, 2, 3) the least and the greatest corner of every piece, as it stands."""
        return np.array([standing_box(piece) for piece in self.model.pieces]).reshape(-1, 2, 3)

    @cached_property
    def marks(self) -> dict[str, str]:
        """The mark of each sheet by its piece's name."""
        return {one.name: one.mark for one in self.listed.placed}


def job_of(model: Model, paper: Paper | None = None, pictured: Pictured | None = None) -> Job:
    """The job of a model; on Letter for feet and inches, A4 for mm, unless a paper is given."""
    told = told_by_shape(model)
    listed = schedule(told)
    return Job(told, listed, paper or (A4 if listed.units == "mm" else LETTER), pictured)
