"""Cards fill pages: what has no room lets the next before it, and the title tells what is where."""

from __future__ import annotations

from ribwright.papers.cards import Card, Deck, card_pages
from ribwright.papers.frame import room_of
from ribwright.papers.job import job_of
from support.starter_buildings import starter_model


def titles(*shares: float) -> list[str]:
    """The pages of cards A, B and so on, each so much of a page high."""
    one = job_of(starter_model("carport"))
    high = room_of(one).height - one.style.row
    cards = [
        Card(name, False, high * share, lambda _: ((), ()))
        for name, share in zip("ABCDE", shares, strict=False)
    ]
    return [page.title for page in card_pages(one, [Deck("cards", "Notes.", cards)])]


def test_a_card_with_no_room_lets_the_next_before_it() -> None:
    """Then it stands first on the next page; the title of each tells exactly what it has."""
    assert titles(0.5, 0.6, 0.4, 0.3) == ["cards: A, C", "cards: B, D"]
    assert titles(0.4, 0.4, 0.6, 0.3) == ["cards: A to B", "cards: C to D"]


def test_only_the_next_goes_before_it() -> None:
    """Marks stay where they are looked for."""
    assert titles(0.5, 0.6, 0.7, 0.4) == ["cards: A", "cards: B", "cards: C", "cards: D"]
