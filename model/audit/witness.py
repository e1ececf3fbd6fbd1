"""All checks of a model, what each looked at, and what was measured on the way."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

from ..findings import CHECKS, Check, Code, Finding, Quantity, in_order
from ..measure.clad_planes import clad_planes
from ..measure.laps import SideLap
from ..pieces import Model
from ..roles import LISTS, List, list_of
from .bite import bites, least_bite
from .bodies import bodies, floating
from .brace_ends import brace_ends
from .breaks import Break, breaks, feet_at
from .clad import Clad, clad
from .clash import clashes
from .cover import covers
from .driven import Driven, driven
from .end_laps import end_laps
from .headwalls import feet_over, headwalls
from .held import held, trims_held
from .labels import labels
from .limits import settled
from .member_laps import member_laps_past, short_laps
from .overhang import edges, overhangs
from .rib_ends import rib_ends
from .screw_clash import screw_clashes
from .seams import hangs
from .sheet_laps import sheet_laps
from .site import Site, site
from .trim_laps import TrimLap, trim_lap_faults, trim_laps


@dataclass(frozen=True, slots=True)
class Figure:
    """One thing measured.

    check: that looked. what: a few words. where: the face, or "". count: of what was looked at. least,
    greatest: of `quantity`; None for what is only counted. said: what no figure says ("left over right").
    """

    check: Check
    what: str
    where: str
    count: int
    least: float | None = None
    greatest: float | None = None
    quantity: Quantity = ""
    said: str = ""


@dataclass(frozen=True, slots=True)
class Audit:
    """What was measured, check by check, and what was found."""

    measured: tuple[Figure, ...]
    findings: tuple[Finding, ...]


@dataclass(frozen=True)
class _Witness:
    """What the checks of one model share, each made when first asked for."""

    model: Model
    thorough: bool

    @cached_property
    def site(self) -> Site:
        return site(self.model)

    @cached_property
    def faces(self) -> tuple[Clad, ...]:
        return clad(self.site, clad_planes(self.model))

    @cached_property
    def breaks(self) -> tuple[Break, ...]:
        return breaks(self.faces)

    @cached_property
    def laps(self) -> tuple[tuple[SideLap, ...], ...]:
        return tuple(face.plane.side_laps for face in self.faces)

    @cached_property
    def trim_laps(self) -> Sequence[TrimLap]:
        return trim_laps(self.site)

    @cached_property
    def screws(self) -> list[Driven]:
        return list(driven(self.site))


def audit(model: Model, only: Iterable[Check] = CHECKS, thorough: bool = False) -> Audit:
    """The findings and figures of some checks, or all. thorough: the kernel's own slow checks as well."""
    witness = _Witness(model, thorough)
    findings: list[Finding] = []
    measured: list[Figure] = []
    asked = set(only)
    for check in (check for check in CHECKS if check in asked):
        findings += _FINDERS[check](witness)
        figures = tuple(_FIGURES[check](witness))
        measured += figures
        findings += _unseen(model, check, figures)
    return Audit(tuple(measured), in_order(findings))


def _unseen(model: Model, check: Check, figures: Sequence[Figure]) -> Iterator[Finding]:
    """A check that looked at nothing though the model has what it is about."""
    there = {list_of(piece.role) for piece in model.pieces}
    looked = bool(figures) and all(figure.count for figure in figures)
    if there & set(_ABOUT[check]) and not looked:
        yield Finding(Code.NOT_LOOKED_AT, (check,))


_ABOUT: dict[Check, tuple[List, ...]] = {
    "clash": LISTS,
    "cover": ("sheets",),
    "laps": ("sheets",),
    "overhang": ("sheets",),
    "bite": ("screws",),
    "bodies": LISTS,
    "labels": ("sheets", "trims"),
}
"""The lists whose pieces a check is about."""


def _clash(w: _Witness) -> Iterator[Finding]:
    yield from clashes(w.site)
    yield from screw_clashes(w.site, w.screws)


def _cover(w: _Witness) -> Iterator[Finding]:
    yield from covers(w.site, w.faces, w.laps, w.breaks, w.model.terms)


def _laps(w: _Witness) -> Iterator[Finding]:
    for face, laps in zip(w.faces, w.laps, strict=True):
        yield from sheet_laps(face, laps, w.model.terms)
        yield from rib_ends(w.site, face)
    if lapped := [face for face in w.faces if face.plane.end_laps]:
        yield from end_laps(w.site, lapped, w.screws, w.model.terms)
    yield from short_laps(w.site)
    yield from trim_lap_faults(w.site, w.trim_laps, w.faces, w.breaks, w.model.terms)


def _overhang(w: _Witness) -> Iterator[Finding]:
    upper = [one.upper for one in w.breaks]
    for face in w.faces:
        yield from overhangs(face, w.model.terms, on_roof=face in upper)
        yield from hangs(face)
    for one in w.breaks:
        yield from feet_at(one)
    for headwall in headwalls(w.faces):
        yield from feet_over(headwall)


def _bite(w: _Witness) -> Iterator[Finding]:
    laps = (lap for face in w.faces for lap in face.plane.end_laps)
    yield from bites(w.site, w.screws, {lap.upper.piece.name: lap.upper.off for lap in laps})
    yield from held(w.site, w.faces, w.screws)
    yield from trims_held(w.site, w.screws)


def _bodies(w: _Witness) -> Iterator[Finding]:
    yield from bodies(w.site, w.thorough)
    yield from floating(w.site, w.screws)
    yield from brace_ends(w.site)


def _labels(w: _Witness) -> Iterator[Finding]:
    yield from labels(w.site)


def _counted(check: Check, what: str) -> Callable[[_Witness], Iterator[Figure]]:
    def figures(w: _Witness) -> Iterator[Figure]:
        yield Figure(check, what, "", len(w.site.bodies) + sum(piece.count for piece in w.site.screws))

    return figures


def _cover_figures(w: _Witness) -> Iterator[Figure]:
    for face in w.faces:
        area = settled(float(face.plane.outline.area))
        yield Figure("cover", "sheets", face.plane.name, len(face.plane.sheets), area, area, "area")


def _lap_figures(w: _Witness) -> Iterator[Figure]:
    for face, laps in zip(w.faces, w.laps, strict=True):
        widths = [settled(lap.width) for lap in laps]
        air = [settled(abs(value)) for lap in laps for value in lap.air]
        ways = {lap.leftward for lap in laps}
        way = "both ways" if len(ways) > 1 else "left sheet on top" if True in ways else "right sheet on top"
        name, count = face.plane.name, len(laps)
        if laps:
            yield Figure("laps", "side laps", name, count, min(widths), max(widths), "length", way)
            yield Figure("laps", "air in side laps", name, count, min(air), max(air), "length")
        if ends := [settled(lap.length) for lap in face.plane.end_laps]:
            yield Figure("laps", "end laps", name, len(ends), min(ends), max(ends), "length")
    lengths = [settled(lap.length) for lap in w.trim_laps]
    if lengths:
        yield Figure("laps", "trim laps", "", len(lengths), min(lengths), max(lengths), "length")
    if past := [settled(one) for _, one in member_laps_past(w.site)]:
        yield Figure("laps", "members past frames", "", len(past), min(past), max(past), "length")
    if not any(w.laps):
        yield Figure("laps", "sheets without laps", "", sum(len(face.plane.sheets) for face in w.faces))


def _overhang_figures(w: _Witness) -> Iterator[Figure]:
    upper = [one.upper for one in w.breaks]
    for face in w.faces:
        measured, count, name = edges(face), len(face.plane.sheets), face.plane.name
        if measured is None:
            yield Figure("overhang", "feet", name, count)
            continue
        along = (("overhang", measured.overhang), ("head under trim", measured.cover))
        for what, (least, greatest) in along[1:] if face in upper else along:
            yield Figure("overhang", what, name, count, settled(least), settled(greatest), "length")


def _bite_figures(w: _Witness) -> Iterator[Figure]:
    found = [settled(bite) for screw in w.screws if (bite := least_bite(w.site, screw)) is not None]
    yield Figure("bite", "screws", "", len(w.screws))
    if found:
        yield Figure("bite", "bite past the steel's face", "", len(found), min(found), max(found), "length")


def _label_figures(w: _Witness) -> Iterator[Figure]:
    yield Figure("labels", "labelled sheets and trims", "", len(w.site.listed("sheets", "trims")))


_FINDERS: dict[Check, Callable[[_Witness], Iterator[Finding]]] = {
    "clash": _clash,
    "cover": _cover,
    "laps": _laps,
    "overhang": _overhang,
    "bite": _bite,
    "bodies": _bodies,
    "labels": _labels,
}
_FIGURES: dict[Check, Callable[[_Witness], Iterator[Figure]]] = {
    "clash": _counted("clash", "bodies held against each other"),
    "cover": _cover_figures,
    "laps": _lap_figures,
    "overhang": _overhang_figures,
    "bite": _bite_figures,
    "bodies": _counted("bodies", "bodies"),
    "labels": _label_figures,
}
