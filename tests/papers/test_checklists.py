"""The delivery checklist and the punch list, read back from the PDF: all of the building stands on them."""

from __future__ import annotations

import re
from collections import Counter

import pytest
from ribwright.drawing.pdf import pdf
from ribwright.intake import starters
from ribwright.order.buying.bundles import bundles
from ribwright.order.written.line_cells import number
from ribwright.papers.checklists import BOX
from ribwright.papers.delivery import delivery
from ribwright.papers.frame import framed
from ribwright.papers.job import Job, job_of
from ribwright.papers.punch_list import punch_list
from ribwright.roles import list_of
from support.read_pdf import Read, read_pdf
from support.rebuilt import parse
from support.starter_buildings import starter_model

HALF = {"ft-in": 25.4 / 32, "mm": 0.5}


def read(name: str) -> tuple[Job, list[Read], list[Read]]:
    one = job_of(starter_model(name))
    lists = [list(part(one)) for part in (delivery, punch_list)]
    pages = read_pdf(pdf(framed(one, [*lists[0], *lists[1]]), name))
    return one, pages[: len(lists[0])], pages[len(lists[0]) :]


def rows(pages: list[Read]) -> list[str]:
    """The texts of pages line by line, from the top."""
    found = []
    for page in pages:
        lines: dict[int, list[tuple[float, str]]] = {}
        for text in page.texts:
            lines.setdefault(round(text.start[1] * 2), []).append((text.start[0], text.text))
        found += [" ".join(text for _, text in sorted(lines[y])) for y in sorted(lines, reverse=True)]
    return found


def boxes(pages: list[Read]) -> int:
    """How many boxes there are to tick."""
    return sum(line.is_ring and abs(line.length - 4 * BOX) < 0.1 for page in pages for line, _ in page.lines)


@pytest.mark.parametrize("name", starters())
def test_all_that_is_bought_has_a_box_and_its_count(name: str) -> None:
    one, pages, _ = read(name)
    said = rows(pages)
    lines = [line for line in one.ordered.lines if line.list != "slab"]
    for line in lines:
        heads = [row for row in said if row.startswith(f"{number(line.quantity)} ") and line.kind[:20] in row]
        assert heads, line.item
    alike: list[tuple[int, int]] = []
    told = list(bundles(lines))
    for count, bundle in enumerate(told, 1):
        if count > 1 and told[count - 2] == bundle:
            alike[-1] = (alike[-1][0], count)
        else:
            alike.append((count, count))
    for first, last in alike:
        bundle = told[first - 1]
        numbers = str(first) if first == last else f"{first} to {last}"
        sheets = f"{bundle.sheets[0][1]} of {bundle.sheets[0][0]}"
        assert any(row.startswith(f"{numbers} {bundle.what} {sheets}") for row in said), bundle
    lists = sum(name in ("sheets", "members", "trims", "closures", "openings") for name in listed(one))
    assert boxes(pages) == len(lines) + len(alike) + lists


def listed(one: Job) -> set[str | None]:
    return {list_of(piece.role) for piece in one.model.pieces}


@pytest.mark.parametrize("name", starters())
def test_every_mark_stands_there_with_its_count_and_length(name: str) -> None:
    """Sheets, members, trims, closures and what fills openings: nothing else, and all of them."""
    one, pages, _ = read(name)
    text = " ".join(rows(pages))
    text = text[text.index("Every mark") : text.index("Lifting")]
    found = re.findall(r"(\d+) ([A-Z]{1,2}\d+) ((?:\d+' )?[\d/-]+(?:\"|'| mm))", text)
    pieces = [
        *one.listed.rows,
        *(item for item in one.listed.items if list_of(item.role) not in ("screws", "slab")),
    ]
    assert Counter((mark, int(count)) for count, mark, _ in found) == Counter(
        (piece.mark, piece.count) for piece in pieces
    )
    lengths = {mark: parse(length.removesuffix(" mm")) for _, mark, length in found}
    for piece in pieces:
        assert abs(lengths[piece.mark] - piece.length) <= HALF[one.units] + 1e-6, piece.mark


@pytest.mark.parametrize("name", starters())
def test_the_punch_list_goes_over_every_piece(name: str) -> None:
    """The counts of its lines come to those of the model, list by list; each line has its box."""
    one, _, pages = read(name)
    text = " ".join(rows(pages))
    counted: Counter[str] = Counter()
    for count, what in re.findall(r"(\d+) (sheet|member|trim|closure|screw|opening|slab)s?\b", text):
        counted[what] += int(count)
    true: Counter[str] = Counter()
    for piece in one.model.pieces:
        true[(list_of(piece.role) or "unknown").removesuffix("s")] += piece.count
    assert counted == true
    told = sum(bool(re.match(r"\d+\. ", row)) for row in rows(pages))
    assert told == sum(bool(step.pieces) for step in one.raising)
    assert boxes(pages) == told + 4
