"""Ribbed sheet profiles: one CSV row each, named by geometry (cover x rib pitch x rib height)."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class RibProfile:
    """The shape of a ribbed sheet's underside, all in mm.

    cover: first to last major rib centre; a whole number of pitches. pitch: between major ribs.
    height: of a major rib, pan to crown (same face of the sheet). crown: flat width on top of a
    major rib. base: its width at the pan. leg: sheet past each lap rib's centre, at most base / 2.
    minors: low ribs in each pan, evenly spaced, with their own height, crown and base (all 0: none).
    source: where the figures are from.
    """

    name: str
    cover: float
    pitch: float
    height: float
    crown: float
    base: float
    leg: float
    minors: int
    minor_height: float
    minor_crown: float
    minor_base: float
    source: str
