"""What the outputs of one run are made of, each made once and only when it is asked for."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cached_property
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from .audit import Audit
    from .findings import Finding
    from .order.buying.order_list import Order
    from .order.lists.schedule import Schedule
    from .pieces import Model


class Making:
    """A building on its way into files; lists and audit are made when one first asks.

    model: the building, of which the lists tell. shown: what of it stands in the files that show it.
    notes: what the layout found.
    """

    def __init__(self, model: Model, shown: Model, notes: Sequence[Finding] = ()) -> None:
        self.model, self.shown, self.notes = model, shown, notes

    @cached_property
    def listed(self) -> Schedule:
        """The schedule of the building."""
        from .order.lists.schedule import schedule

        return schedule(self.model)

    @cached_property
    def wanted(self) -> Order:
        """What is to be bought."""
        from .order.buying.order_list import buying_on, order

        return order(self.listed, buying_on(self.model.terms))

    @cached_property
    def audited(self) -> Audit:
        """What its solids show."""
        from .audit import audit

        return audit(self.model)
