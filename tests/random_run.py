"""The long run over random buildings, by hand: `python tests/random_run.py [COUNT [FIRST]]`; 300 unless said.

So many that can be built are raised and judged, on all cores; then it prints what was drawn and what came of
it, and the smallest description that still shows each kind of fault.
"""

from __future__ import annotations

import multiprocessing
import re
import sys
import tomllib
from collections import Counter
from itertools import islice

from ribwright.description.building import Building
from support.judged import Judged, judged
from support.random_buildings import KEYS, Drawn, built, described, hand, parsed
from support.random_values import has_ends

Case = tuple[Drawn, Building]
MOST_DRAWN = 3
"""Drawn for each that can be built, at the most."""


def off_default(text: str) -> set[tuple[str, str]]:
    """The keys that a description sets to something else than their default."""
    read = tomllib.loads(text)
    tables = [("", {k: v for k, v in read.items() if not isinstance(v, dict | list)})]
    tables += [(name, table) for name, table in read.items() if isinstance(table, dict)]
    tables += [(name, one) for name, array in read.items() if isinstance(array, list) for one in array]
    return {(t, k) for t, table in tables for k, value in table.items() if str(value) != KEYS[t, k].default}


def drawn_table(first: int, cases: list[Case]) -> str:
    """A line for each key: buildings that have it off its default, and of those drawn with it at its lowest
    and its highest how many can be built."""
    last = cases[-1][0].number
    every = Counter(card for number in range(first, last + 1) for card in hand(number).items())
    built = Counter(card for drawn, _ in cases for card in drawn.dealt.items())
    off = Counter(key for drawn, _ in cases for key in off_default(drawn.text))
    lines = [f"{'key':28} {'off':>4} {'lowest':>8} {'highest':>8}"]
    for card in KEYS:
        ends = [f"{built[card, end]}/{every[card, end]}" * has_ends(KEYS[card]) for end in ("low", "high")]
        lines.append(f"{'.'.join(filter(None, card)):28} {off[card]:4} {ends[0]:>8} {ends[1]:>8}")
    kinds = Counter(opening.kind for _, building in cases for opening in building.openings)
    pairs = sum(len([end for end in drawn.dealt.values() if end]) == 2 for drawn, _ in cases)
    number = last + 1 - first
    lines.append(", ".join(f"{count} {kind}s" for kind, count in sorted(kinds.items())))
    share = f"{len(cases)} of {number} drawn can be built: {len(cases) / number:.0%}"
    lines.append(f"{pairs} with two keys at an end; {share}")
    return "\n".join(lines)


def smallest(text: str, kind: str) -> str:
    """A description without all the tables, then all the lines, that this kind of fault does not need."""
    for parts in (re.split(r"(?m)^(?=\[)", text)[1:], text.splitlines(keepends=True)):
        for part in parts[::-1]:
            less = text.replace(part, "", 1)
            if (building := parsed(less)) is not None and kind in judged(building).faults:
                text = less
    return text


def _cases(count: int, first: int) -> list[Case]:
    """So many that can be built, from a number on, drawn on all cores."""
    with multiprocessing.get_context("fork").Pool() as pool:
        drawings = pool.imap(described, range(first, first + MOST_DRAWN * count))
        return list(islice(built(drawings), count))


def judged_case(case: Case) -> tuple[Case, Judged]:
    """A case and what is wrong with it."""
    return case, judged(case[1])


def main(count: int = 300, first: int = 0) -> int:
    """Prints what was drawn, what is wrong as it is found, and the counts; the status is 1 for any fault.

    All cores judge, in processes that do not outlive ten buildings.
    """
    cases = _cases(count, first)
    print(drawn_table(first, cases), flush=True)
    said, kinds, least = Counter[str](), Counter[str](), dict[str, Case]()
    with multiprocessing.get_context("fork").Pool(maxtasksperchild=10) as pool:
        for done, (case, found) in enumerate(pool.imap_unordered(judged_case, cases), 1):
            print(f"{done} judged", end="\r", file=sys.stderr)
            said += found.said
            kinds.update(found.faults.keys())
            for kind, lines in found.faults.items():
                print(f"{case[0].number} {kind}: {len(lines)}, as {lines[0].strip()}", flush=True)
                least[kind] = min(least.get(kind, case), case, key=lambda one: one[1].width * one[1].length)
    print(*(f"said by the layout: {kind} {number}" for kind, number in said.most_common()), sep="\n")
    print(*(f"{kind}: in {number} buildings" for kind, number in kinds.most_common()), sep="\n", flush=True)
    for kind, (drawn, _) in least.items():
        print(f"\n{kind}, number {drawn.number}:\n{smallest(drawn.text, kind)}", flush=True)
    return int(bool(kinds))


if __name__ == "__main__":
    sys.exit(main(*map(int, sys.argv[1:])))
