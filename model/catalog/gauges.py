"""Sheet steel by gauge number: the Manufacturers' Standard Gauge, bare and galvanised."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from ..units import INCH
from .rows import rows


@dataclass(frozen=True, slots=True)
class Gauge:
    """One gauge number.

    bare, galvanised: thickness in mm. bare_lb_ft2, galvanised_lb_ft2: the table's own weights, in
    lb/ft2; a convention (41.82 lb/ft2 per inch of bare steel), 2.5 % above what the thickness times the
    density of steel gives.
    """

    number: int
    bare: float
    bare_lb_ft2: float
    galvanised: float
    galvanised_lb_ft2: float
    source: str


@cache
def gauges() -> dict[int, Gauge]:
    """Every gauge of the catalogue by its number, thickest first."""
    return {gauge.number: gauge for gauge in map(_gauge, rows("gauges.csv"))}


def _gauge(row: dict[str, str]) -> Gauge:
    return Gauge(
        number=int(row["gauge"]),
        bare=float(row["bare_in"]) * INCH,
        bare_lb_ft2=float(row["bare_lb_ft2"]),
        galvanised=float(row["galvanised_in"]) * INCH,
        galvanised_lb_ft2=float(row["galvanised_lb_ft2"]),
        source=row["source"],
    )
