"""Reach: an order in which something cannot be put on is found, at three places; the trade's order is not."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import cache

import pytest
from ribwright.audit.reach import reach
from ribwright.findings import CHECKS, Code, words
from ribwright.pieces import Piece
from ribwright.roles import Role
from ribwright.steps import steps
from support.planted import shed
from support.sample_building import sample_model


@cache
def order() -> tuple[Piece, ...]:
    return tuple(piece for step in steps(shed()) for piece in step.pieces)


def names(pieces: Sequence[Piece]) -> list[str]:
    return [piece.name for piece in pieces]


def held_back(chosen: Callable[[Piece], bool]) -> list[str]:
    """The order with some pieces put up last."""
    return names(sorted(order(), key=chosen))


def before(chosen: Callable[[Piece], bool]) -> list[str]:
    """The order with some pieces put up first."""
    return names(sorted(order(), key=lambda piece: not chosen(piece)))


def found(sequence: list[str]) -> list[tuple[str, set[str]]]:
    """The role of each piece that is out of reach, and the roles of what is in its way."""
    roles = {piece.name: piece.role for piece in shed().pieces}
    findings = reach(shed(), sequence)
    assert {one.code for one in findings} <= {Code.OUT_OF_REACH}
    return [(roles[one.pieces[0]], {roles[name] for name in one.pieces[1:]}) for one in findings]


def test_the_trades_order_traps_nothing() -> None:
    """Nor do the ends of trims, folded over where the steps say so."""
    assert reach(shed(), names(order())) == ()
    assert (
        reach(shed(), [piece.name for step in steps(shed()) for piece in (*step.pieces, *step.folded)]) == ()
    )


def test_ends_that_are_folded_too_early_are_in_the_way() -> None:
    """A drip that comes with its ends folded over keeps out the sheets beside its opening."""
    drips = {piece.name for step in steps(shed()) for piece in step.folded if piece.role == Role.DRIP}
    sequence = [name for name in names(order()) for _ in range(1 + (name in drips))]
    findings = reach(shed(), sequence)
    roles = {piece.name: piece.role for piece in shed().pieces}
    assert {roles[one.pieces[0]] for one in findings} == {Role.WALL_SHEET}
    assert len(findings) == 2 * len(drips)
    assert all(drips & set(one.pieces[1:]) for one in findings)


@pytest.mark.parametrize(
    ("late", "by"),
    [
        (Role.BASE_TRIM, Role.WALL_SHEET),
        (Role.J_TRIM, Role.WALL_SHEET),
        (Role.CORNER_TRIM, Role.EAVE_TRIM),
    ],
)
def test_what_is_put_up_too_late_is_found(late: Role, by: Role) -> None:
    """Base trim and opening trim behind finished walls, corner trim under a finished eave."""
    out = found(held_back(lambda piece: piece.role == late))
    assert {role for role, _ in out} == {late}
    assert any(by in way for _, way in out)


@pytest.mark.parametrize(
    ("early", "trapped"),
    [
        (Role.EAVE_TRIM, Role.WALL_SHEET),
        (Role.ROOF_SHEET, Role.WALL_SHEET),
        (Role.CORNER_TRIM, Role.RAKE_ANGLE),
    ],
)
def test_what_is_put_up_too_early_is_in_the_way(early: Role, trapped: Role) -> None:
    """Walls under a finished eave or roof, rake steel behind a corner trim."""
    out = found(before(lambda piece: piece.role == early))
    assert trapped in {role for role, _ in out}
    assert all(early in way for role, way in out if role == trapped)


def test_a_sheet_between_the_pockets_of_a_window_is_said() -> None:
    """In the sample a window takes parts of three sheets: the first must be sprung into its trim."""
    raised = sample_model()
    sequence = [piece.name for step in steps(raised) for piece in step.pieces]
    findings = reach(raised, sequence)
    roles = {piece.name: piece.role for piece in raised.pieces}
    assert {roles[one.pieces[0]] for one in findings} == {Role.WALL_SHEET}
    assert all("window" in one.pieces[1] and "trim" in one.pieces[1] for one in findings)
    assert "is in the way [out-of-reach]" in words(replace(findings[0], at=None), "ft-in")


def test_what_the_order_does_not_name_is_left_aside() -> None:
    only = [piece.name for piece in order() if piece.role in (Role.PURLIN, Role.CORNER_TRIM)]
    assert reach(shed(), only) == ()
    assert "reach" not in CHECKS
