"""Trims and members read back from their cards: against volumes and angles, which no card is drawn from."""

from __future__ import annotations

from math import atan, degrees

import pytest
import shapely
from ribwright.drawing.pdf import pdf
from ribwright.papers.frame import framed
from ribwright.papers.job import Job, job_of
from ribwright.papers.member_sheets import member_sheets
from ribwright.papers.trim_sheets import trim_sheets
from support.drawn import STARTERS, starter_model
from support.read_pdf import Read, read_pdf
from support.rebuilt import card, outline

STEP = {"ft-in": 25.4 / 16, "mm": 1.0}


def read(name: str) -> tuple[Job, list[Read]]:
    one = job_of(starter_model(name))
    pages = framed(one, [*trim_sheets(one), *member_sheets(one)])
    return one, read_pdf(pdf(pages, name))


def card_of(reads: list[Read], mark: str) -> Read | None:
    """The card with a mark as its title; None for a mark that only stands in the list."""
    for page in reads:
        if any(text.text == mark for text in page.texts) and not any(t.text == "ends" for t in page.texts):
            return card(page, mark)
    return None


@pytest.mark.parametrize("name", STARTERS)
def test_opened_out_a_trim_holds_as_much_steel_as_its_solid(name: str) -> None:
    """To half a step all round, and to the thickness that a bend takes."""
    one, reads = read(name)
    for item in one.listed.listed("trims"):
        found = card_of(reads, item.mark)
        assert found and item.bends, item.mark
        rings, _ = outline(found)
        area = sum(shapely.Polygon(ring).area for ring in rings)
        true = item.volume / item.thickness
        slack = item.length * (2 * item.thickness * len(item.bends.angles)) + STEP[one.units] * (
            item.length + item.bends.girth
        )
        assert abs(area - true) < slack, item.mark


@pytest.mark.parametrize("name", STARTERS)
def test_cuts_of_members_have_the_angles_measured_off_their_faces(name: str) -> None:
    """Every end that is off square shows its angle on one of the member's two sides."""
    one, reads = read(name)
    seen = 0
    for item in one.listed.listed("members"):
        cards = [card_of(reads, mark) for mark in (item.mark, f"{item.mark} turned")]
        angles = [angle for found in cards if found for angle in angles_of(one, found, item.length)]
        slack = degrees(atan(2 * STEP[one.units] / item.width))
        for true in (end for end in item.ends if end > 0.1 and angles):
            assert min(abs(angle - true) for angle in angles) < slack, (item.mark, angles, item.ends)
            seen += 1
    assert seen


def angles_of(one: Job, found: Read, true: float) -> list[float]:
    """Degrees off square of both ends, from the numbers on a card."""
    (ring,), _ = outline(found)
    length, deep = max(v for _, v in ring), max(u for u, _ in ring)
    assert abs(length - true) <= STEP[one.units] / 2 + 1e-6
    edges = [sorted(v for u, v in ring if u == edge) for edge in (0.0, deep)]
    return [degrees(atan(abs(edges[0][end] - edges[1][end]) / deep)) for end in (0, -1)]


def test_a_ridge_cap_and_a_knee_of_the_sample_by_hand() -> None:
    """3/12 on both sides: the cap opens to 180 - 2 x 14.04 deg. A knee at 38 and 52 deg."""
    _, reads = read("workshop")
    cap = card_of(reads, "TP1")
    assert cap is not None
    texts = [text.text for text in cap.texts]
    assert "151.9°" in texts
    assert "3 pieces: ridge cap on ridge" in texts
    knee = card_of(reads, "K1")
    assert knee is not None
    assert "tube 2 x 2 x 0.083" in [text.text for text in knee.texts]
