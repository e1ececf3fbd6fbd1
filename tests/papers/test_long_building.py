"""A long building on few pages: parts that repeat are told, not drawn, and every sheet is on paper once."""

from __future__ import annotations

import re
from collections import Counter
from functools import cache

import pytest
from ribwright.drawing.pdf import pdf
from ribwright.intake import parse as building
from ribwright.intake import starter_text
from ribwright.papers.elevations import elevations
from ribwright.papers.frame import Content, framed
from ribwright.papers.framing import framing
from ribwright.papers.job import Job, job_of
from ribwright.raising import raise_building
from support.read_pdf import Read, read_pdf
from support.rebuilt import parse

HALF = 25.4 / 32
LONG = "260 ft"
PAGES = 14
"""Of its steel and its sheets."""


@cache
def drawn() -> tuple[Job, list[Content], list[Read]]:
    text = starter_text("long", "long-store").replace('"90 ft"', f'"{LONG}"')
    one = job_of(raise_building(building(text, "long")).model)
    contents = [*framing(one), *elevations(one)]
    return one, contents, read_pdf(pdf(framed(one, contents), "long"))


@pytest.mark.parametrize("face", ["left", "right", "left slope", "right slope"])
def test_what_is_not_drawn_is_told_where_it_goes(face: str) -> None:
    """The first, every fifth and the last of the sheets not drawn, each where its solid is; with those that
    are drawn, or listed for want of room, they are all, mark by mark."""
    one, contents, reads = drawn()
    (plan,) = [plan for plan in one.listed.plans if plan.face == face]
    sheets = {sheet.number: sheet for sheet in plan.sheets}
    seen: Counter[str] = Counter()
    told: list[int] = []
    for content, read in zip(contents, reads, strict=True):
        if not content.title.startswith(f"{face}: sheets"):
            continue
        for text in read.texts:
            if place := re.fullmatch(r"#(\d+) (.+) / (.+)", text.text):
                sheet = sheets[int(place[1])]
                assert sheet.rib is not None
                assert abs(parse(place[2]) - sheet.rib) <= HALF + 1e-6
                assert abs(parse(place[3]) - sheet.edge) <= HALF + 1e-6
                told.append(sheet.number)
            elif mark := re.fullmatch(r"([WR]\d+)↓?( #\d+)?", text.text):
                seen[mark[1]] += 1
            elif text.text.startswith("No room"):
                seen.update(re.findall(r"[WR]\d+", text.text.partition("Not drawn")[0]))
    assert told == sorted(told) and len(told) > 2
    assert all(number in told for number in range(told[0], told[-1]) if not number % 5)
    hidden = Counter(sheets[number].mark for number in range(told[0], told[-1] + 1))
    assert len(hidden) == 1
    assert seen + hidden == Counter(sheet.mark for sheet in plan.sheets)


def test_bays_that_repeat_are_drawn_once() -> None:
    """260 ft of sheets on one page: the first part and the last beside each other."""
    _, contents, _ = drawn()
    for face in ("right", "left slope", "right slope"):
        (views,) = [content.views for content in contents if content.title.startswith(f"{face}: sheets")]
        first, last = (view.name for view in views)
        assert first.startswith(f"{face}, part 1 of ")
        assert last == first.replace("part 1", f"part {first.split()[-1]}")
        assert views[0].at[1] == views[1].at[1]


def test_a_long_building_has_few_pages() -> None:
    """For all its 260 ft."""
    _, contents, _ = drawn()
    assert len(contents) <= PAGES, [content.title for content in contents]


def test_drawings_share_a_page_and_what_holds_for_all_is_said_once() -> None:
    """Two parts of a wall's steel under each other, the notes over the first alone."""
    _, contents, reads = drawn()
    shared = [read for content, read in zip(contents, reads, strict=True) if len(content.views) > 1]
    assert shared
    for read in shared:
        assert sum(text.text.startswith("Seen from outside.") for text in read.texts) <= 1
