"""How things are bought, as said by the buyer or asked by the building."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil

from ...measure.snap import snapped
from ...roles import list_of
from ...terms import Sticks, Terms
from ...units import INCH

STOCK = (
    3048.0,
    3657.6,
)  # mm; the lengths that trim mostly comes in, 10 and 12 ft. Common practice, no source

STEEL = (6096.0, 7315.2, 12192.0)  # mm; lengths that members mostly come in, 20, 24 and 40 ft. No source
STEEL_KERF = INCH / 8  # mm; of a saw for members. Common practice, no source
SHORTEST = 48 * INCH  # mm; the shortest sheet that a mill makes. Common practice, no source
STEP = INCH / 2  # mm; of the lengths that sheets mostly come in. Common practice, no source


@dataclass(frozen=True, slots=True)
class Buying:
    """How things are bought.

    step: of the lengths that sheets come in, to which those cut on site are rounded up; 0: any (mm).
    spare: share of screws added. spare_sheets: sheets added of the longest of each kind. stock: the lengths
    that trim comes in; stocks: of roles that have their own; kerf: lost at a cut of it (mm). bag: screws in
    a bag; 0: by the piece. waste: share of concrete added. steel, steel_kerf: the lengths that members come
    in, and what is lost at a cut (mm). pairs: whether two sheets may come as one blank. shortest: sheet that
    a mill makes (mm); shorter ones are cut from longer ones.
    """

    step: float = STEP
    spare: float = 0.05
    stock: tuple[float, ...] = STOCK
    kerf: float = 0.0
    spare_sheets: int = 0
    bag: int = 0
    waste: float = 0.05
    steel: tuple[float, ...] = STEEL
    steel_kerf: float = STEEL_KERF
    stocks: Sticks = ()
    pairs: bool = False
    shortest: float = SHORTEST

    def sticks(self, role: str) -> tuple[float, ...]:
        """The lengths that trim or members of a role come in (mm), shortest first."""
        return dict(self.stocks).get(role, self.steel if list_of(role) == "members" else self.stock)

    def to_step(self, length: float) -> float:
        """How long a sheet is ordered that must be so long (mm)."""
        exact = snapped(length, 0.01)
        return ceil(exact / self.step - 1e-6) * self.step if self.step else exact


def buying_on(
    terms: Terms,
    *,
    stock: tuple[float, ...] = (),
    kerf: float | None = None,
    step: float | None = None,
    spare: float = 0.05,
    spare_sheets: int = 0,
    bag: int = 0,
    waste: float = 0.05,
    pairs: bool = False,
) -> Buying:
    """How things are bought for a building: as said, else as its terms ask."""
    kerf = terms.kerf if kerf is None else kerf
    step = terms.step if step is None else step
    return Buying(
        STEP if step is None else step,
        spare,
        tuple(sorted(stock)) or STOCK,
        kerf or 0.0,
        spare_sheets,
        bag,
        waste,
        terms.steel or STEEL,
        STEEL_KERF if terms.steel_kerf is None else terms.steel_kerf,
        tuple(own for own in terms.stock if not stock or list_of(own[0]) == "members"),
        pairs or bool(terms.pairs),
        SHORTEST if terms.shortest is None else terms.shortest,
    )
