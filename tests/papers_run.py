"""The long run over the papers of random buildings, by hand: `python tests/papers_run.py [COUNT [FIRST]]`; 50
unless said.

Of so many that can be built all papers are drawn, written and read back, on all cores. What meets on a page,
or leaves it, is printed as it is found, by the building's number; then the description of the smallest in
which anything does.
"""

from __future__ import annotations

import multiprocessing
import sys
import traceback
from itertools import islice

from ribwright.description.building import Building
from ribwright.drawing.pdf import pdf
from ribwright.papers.pages import papers
from ribwright.raising import raise_building
from support.random_buildings import Drawn, buildings
from support.read_pdf import read_pdf
from support.room import crowded

Case = tuple[Drawn, Building]


def looked_at(case: Case) -> tuple[Case, int, dict[str, list[str]]]:
    """A case, how many pages it has, and what meets on them; or how far it came."""
    try:
        pages = papers(raise_building(case[1]).model)
        return case, len(pages), crowded(pages, read_pdf(pdf(pages, "papers")))
    except Exception:
        return case, 0, {"traceback": traceback.format_exc().splitlines()[-3:]}


def main(count: int = 50, first: int = 0) -> int:
    """Prints what meets, and counts; the status is 1 for anything. Processes do not outlive ten buildings."""
    cases = list(islice(buildings(first), count))
    whole, bad = 0, list[Case]()
    with multiprocessing.get_context("fork").Pool(maxtasksperchild=10) as pool:
        for done, (case, pages, found) in enumerate(pool.imap_unordered(looked_at, cases), 1):
            print(f"{done} looked at", end="\r", file=sys.stderr)
            whole += pages
            bad += [case] if found else []
            for title, hits in found.items():
                print(f"{case[0].number} {title}: {len(hits)}, as {' | '.join(hits[:3])}", flush=True)
    print(f"{whole} pages of {count} buildings; something meets in {len(bad)} of these")
    if bad:
        least = min(bad, key=lambda case: case[1].width * case[1].length)[0]
        print(f"\nnumber {least.number}:\n{least.text}")
    return int(bool(bad))


if __name__ == "__main__":
    sys.exit(main(*map(int, sys.argv[1:])))
