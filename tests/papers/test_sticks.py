"""Members by the stick they are cut from: every piece once, no stick longer than it is, told as listed."""

from __future__ import annotations

import re
from collections import Counter

import pytest
from ribwright.drawing.pdf import pdf
from ribwright.intake import starters
from ribwright.order.buying.order_list import buying_on
from ribwright.papers.frame import framed
from ribwright.papers.job import job_of
from ribwright.papers.member_sheets import member_lists
from ribwright.papers.sticks import cut_from_sticks
from support.read_pdf import read_pdf
from support.rebuilt import parse
from support.starter_buildings import starter_model

CUT = re.compile(r"(\d+) ([A-Z]+\d+) ([^ ]+(?: [\d/-]+\")?(?: mm)?)(?: \(([^)]*)\))?$")
HALF = {"ft-in": 25.4 / 32, "mm": 0.5}


def length(text: str) -> float:
    return parse(text.removesuffix(" mm"))


@pytest.mark.parametrize("name", starters())
def test_every_member_is_cut_from_one_stick(name: str) -> None:
    """As many of each mark as are listed, with its length and its ends; each stick comes to its length."""
    one = job_of(starter_model(name))
    items = {item.mark: item for item in one.listed.listed("members")}
    kerf, slack = buying_on(one.model.terms).steel_kerf, HALF[one.units]
    cut: Counter[str] = Counter()
    sticks = 0
    for _, kind, numbers, cuts, left in cut_from_sticks(one).rows:
        first, _, last = numbers.partition(" to ")
        count = int(last or first) - int(first) + 1
        sticks += count
        used = length(left) if left else 0.0
        pieces = 0
        for text in cuts.split(" + "):
            found = CUT.match(text)
            assert found, text
            number, mark, long, told = int(found[1]), found[2], length(found[3]), found[4] or ""
            cut[mark] += count * number
            item = items[mark]
            assert abs(long - item.length) <= slack + 1e-6
            assert ("deg" in told) == any(end >= 0.05 for end in item.ends), text
            assert ("holes" in told) == bool(item.holes), text
            used += number * item.length
            pieces += number
        stock = length(kind.rsplit(", ", 1)[1])
        assert stock - kerf * pieces - 2 * slack <= used <= stock + 2 * slack, (kind, numbers)
    bought = [item for line in one.ordered.members for item in line.items]
    assert cut == Counter({item.mark: item.count for item in bought})
    assert sticks == sum(len(line.plan.sticks) for line in one.ordered.members)


@pytest.mark.parametrize("name", ["garage", "machine-shed"])
def test_all_of_it_stands_on_the_pages(name: str) -> None:
    one = job_of(starter_model(name))
    pages = read_pdf(pdf(framed(one, list(member_lists(one))), name))
    said = Counter(word for page in pages for text in page.texts for word in text.text.split())
    rows = cut_from_sticks(one).rows
    assert not Counter(word for row in rows for cell in row[1:] for word in cell.split()) - said
