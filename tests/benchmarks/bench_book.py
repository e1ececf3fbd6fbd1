"""By hand: `PYTHONPATH=tests python tests/benchmarks/bench_book.py [ROWS]`. Rows of a price book, in one
process, warm, without files: a grid of garages that differ in width, length and eave.

Processor time of a row and by how much the process grows, in the first half of the rows and in the second.
"""

from __future__ import annotations

import resource
import statistics
import sys
import time
from itertools import islice, product

from ribwright.book.entry import entry
from ribwright.book.task import BUILT, Task
from ribwright.book.warm import MOST, warm

WANTED = 0.24
"""Seconds: 250 buildings a minute."""
GARAGE = """
pitch = "3/12"

[[opening]]
kind = "overhead door"
wall = "front"
from_left = "3 ft"
width = "9 ft"
height = "7 ft"
"""
SIZES = (range(24, 34, 2), range(24, 44, 4), range(8, 12))
"""Widths, lengths, eaves, in feet."""


def row(width: int, length: int, eave: int) -> float:
    """Seconds of processor time that a row takes."""
    keys = {"width": width, "length": length, "eave_height": eave}
    text = "".join(f'{key} = "{feet} ft"\n' for key, feet in keys.items()) + GARAGE
    start = time.process_time()
    made = entry(Task(text, "garage", MOST, prices=()))
    assert made.state == BUILT, made.said
    return time.process_time() - start


def main() -> None:
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 100
    warm()
    sizes = list(islice(product(*SIZES), count))
    for half in (sizes[: count // 2], sizes[count // 2 :]):
        before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
        times = [row(*size) for size in half]
        grown = (resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before) / 1024 / len(half)
        middle, mean = statistics.median(times), statistics.mean(times)
        print(f"{len(half)} rows: {middle:.2f} s in the middle, {mean:.2f} s on average, wanted {WANTED} s;")
        print(f"  the process grew by {grown:.1f} MiB a row")


if __name__ == "__main__":
    main()
