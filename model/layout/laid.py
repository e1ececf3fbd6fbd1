"""What a layout comes to, and how that of a lean-to is set beside its main building's."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from ..envelope.face import Face
from ..findings import Finding, in_order
from ..place import Place
from ..recipe import Part
from ..terms import Asked, Terms


@dataclass(frozen=True, slots=True)
class Laid:
    """parts: everything the building is made of. findings: what could not be done as the rules ask. terms:
    what was asked and no part can show."""

    parts: tuple[Part, ...]
    findings: tuple[Finding, ...]
    terms: Terms


def at_place(face: Face, place: Place) -> Face:
    """A face of a building that stands at a place."""
    return replace(face, frame=place @ face.frame)


def standing(laid: Laid, name: str, place: Place) -> Laid:
    """A building's layout where it stands, its name before those of its pieces and faces."""

    def named(part: Part) -> Part:
        first, *rest = part.group
        labels = tuple((key, f"{name} {text}" if key == "face" else text) for key, text in part.labels)
        group = (first, *(f"{name} {word}" for word in rest))
        return replace(part, name=f"{name} {part.name}", group=group, place=place @ part.place, labels=labels)

    findings = tuple(
        replace(one, pieces=tuple(f"{name} {piece}" for piece in one.pieces)) for one in laid.findings
    )
    return Laid(tuple(map(named, laid.parts)), findings, _facing(laid.terms, place))


def _facing(terms: Terms, place: Place) -> Terms:
    """What was asked of faces, by the way they face where the building stands."""
    if place.x == Place().x:
        return terms
    return replace(
        terms,
        overlap=tuple((place.vector(normal), side) for normal, side in terms.overlap),
        start=tuple((place.vector(normal), side) for normal, side in terms.start),
        bare=tuple(map(place.vector, terms.bare)),
    )


def _each(asked: Iterable[Asked]) -> Asked:
    """What was asked of all faces; of two that look one way, where it differs, both, the main one's last."""
    return tuple(dict.fromkeys(pair for of_one in reversed(list(asked)) for pair in of_one))


def together(main: Laid, others: Sequence[Laid]) -> Laid:
    """One layout of several: what was asked of the main building holds for all."""
    if not others:
        return main
    every, terms = (main, *others), main.terms
    terms = replace(
        terms,
        overlap=_each(laid.terms.overlap for laid in every),
        start=_each(laid.terms.start for laid in every),
        bare=tuple(dict.fromkeys(normal for laid in every for normal in laid.terms.bare)),
    )
    findings = in_order(finding for laid in every for finding in laid.findings)
    return Laid(tuple(part for laid in every for part in laid.parts), findings, terms)
