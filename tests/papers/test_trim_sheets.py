"""Trims and members read back from their cards: against volumes and angles, which no card is drawn from."""

from __future__ import annotations

import re
from math import atan, degrees

import numpy as np
import pytest
import shapely
from ribwright.drawing.pdf import pdf
from ribwright.intake import starters
from ribwright.measure.faces import Vectors
from ribwright.measure.member import measure_member
from ribwright.papers.cards import card_pages
from ribwright.papers.frame import framed
from ribwright.papers.job import Job, job_of
from ribwright.papers.member_sheets import member_deck
from ribwright.papers.trim_sheets import pieces_by_mark, trim_deck
from support.read_pdf import Read, read_pdf
from support.rebuilt import card, outline, parse
from support.starter_buildings import starter_model

STEP = {"ft-in": 25.4 / 16, "mm": 1.0}
LEAN = 1.2
"""mm; corners of sticks that lap differ by twice their thickness at the most."""


def read(name: str) -> tuple[Job, list[Read]]:
    one = job_of(starter_model(name))
    pages = framed(one, [*card_pages(one, [trim_deck(one), member_deck(one)])])
    return one, read_pdf(pdf(pages, name))


def card_of(reads: list[Read], mark: str) -> Read | None:
    """The card with a mark as its title; None for a mark that only stands in the list."""
    for page in reads:
        if any(text.text == mark for text in page.texts) and not any(t.text == "ends" for t in page.texts):
            return card(page, mark)
    return None


def alike(found: Read) -> dict[str, tuple[int, float]]:
    """The marks that a card says are cut alike: how many of each, and how long (mm)."""
    said = " ".join(text.text for text in found.texts)
    told = re.findall(r"(\d+) ([A-Z]+\d+) ((?:\d+' )?[\d/-]+(?:\"|'| mm))", said.partition("cut alike")[2])
    return {mark: (int(count), parse(long.removesuffix(" mm"))) for count, mark, long in told}


def card_with(reads: list[Read], mark: str) -> tuple[Read, tuple[int, float] | None]:
    """The card of a mark, or of the one that is drawn for it with what is said of the mark itself."""
    own = card_of(reads, mark)
    if own is not None:
        return own, None
    for page in reads:
        for text in page.texts:
            if re.fullmatch(r"T[A-Z]\d+", text.text):
                found = card(page, text.text)
                if mark in alike(found):
                    return found, alike(found)[mark]
    raise AssertionError(mark)


@pytest.mark.parametrize("name", starters())
def test_opened_out_a_trim_holds_as_much_steel_as_its_solid(name: str) -> None:
    """To half a step all round, and to the thickness that a bend takes; where it is told to be cut like
    another, with that one's ends and its own length."""
    one, reads = read(name)
    for item in one.listed.listed("trims"):
        found, other = card_with(reads, item.mark)
        rings, _ = outline(found)
        area = sum(shapely.Polygon(ring).area for ring in rings)
        if other:
            count, length = other
            assert (count, abs(length - item.length) <= STEP[one.units] / 2 + 1e-6) == (item.count, True)
            wide, drawn = (max(point[i] for ring in rings for point in ring) for i in (0, 1))
            area += (length - drawn) * wide
        folds, girth = (len(item.bends.angles), item.bends.girth) if item.bends else (0, item.depth)
        true = item.volume / (item.thickness or min(item.width, item.depth))
        slack = item.length * (2 * item.thickness * folds) + (2 if other else 1) * STEP[one.units] * (
            item.length + girth
        )
        assert abs(area - true) < slack, item.mark


def test_what_is_cut_with_the_other_hand_has_a_card_of_its_own() -> None:
    """The rake angles of the sample's two slopes are as long as each other and mirror images; its girts of 40
    and 30 ft are mitred alike, and are drawn once."""
    _, reads = read("workshop")
    assert card_of(reads, "RK1") and card_of(reads, "RK2") and card_of(reads, "G1")
    assert card_of(reads, "G2") is None
    found = card_of(reads, "G1")
    assert found is not None and "G2" in " ".join(text.text for text in found.texts)


@pytest.mark.parametrize("name", starters())
def test_what_is_told_to_be_cut_alike_has_the_same_hand(name: str) -> None:
    """By all corners of both solids: turned, never mirrored, one's ends lie on the other's, but for a lapped
    stick's lean."""
    one, reads = read(name)
    first = pieces_by_mark(one)
    for item in one.listed.listed("trims"):
        found = card_of(reads, item.mark)
        for other in alike(found) if found else ():
            ways = [measure_member(first[mark].solid).ways for mark in (item.mark, other)]
            off = min(ends_apart(here.points, there.points) for here in ways[0] for there in ways[1])
            assert off < LEAN, (item.mark, other)


def ends_apart(one: Vectors, other: Vectors) -> float:
    """mm: how far a corner at an end of one is from the nearest of the other at that end."""
    parts = [ends(points) for points in (one, other)]
    apart = [np.abs(a[:, None] - b[None]).max(axis=2) for a, b in zip(*parts, strict=True)]
    return max(float(far.min(axis=axis).max()) for far in apart for axis in (0, 1))


def ends(points: Vectors) -> tuple[Vectors, Vectors]:
    """Corners at the near end and at the far one, each from its own."""
    found = points - points.min(axis=0)
    far = found[:, 1] > found[:, 1].max() / 2
    return found[~far], found[far] - (0.0, found[:, 1].max(), 0.0)


@pytest.mark.parametrize("name", starters())
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
    assert "2 pieces: ridge cap on ridge" in " ".join(texts)
    knee = card_of(reads, "K1")
    assert knee is not None
    assert "tube 2 x 2 x 0.083" in " ".join(text.text for text in knee.texts)
