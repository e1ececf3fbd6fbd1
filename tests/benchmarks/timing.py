"""Two ways of doing a thing, timed in turn, so that what else the machine does falls on both."""

from __future__ import annotations

import os
import statistics
import subprocess
import time
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import NamedTuple, TypeVar

One = TypeVar("One")
Other = TypeVar("Other")


class Ran(NamedTuple):
    """A process that has run: wall time, processor time, and the most memory it or a child of it held."""

    seconds: float
    processor: float
    mebibytes: float


def ran(command: Sequence[str], folder: Path) -> Ran:
    """Runs a command in a folder; it must succeed.

    The peak is the kernel's for that process alone. A process starts with its parent's peak, so a
    benchmark that asks for it must itself be small.
    """
    start = time.perf_counter()
    process = subprocess.Popen(command, cwd=folder, stdout=subprocess.DEVNULL)
    _, status, usage = os.wait4(process.pid, 0)
    seconds = time.perf_counter() - start
    process.returncode = os.waitstatus_to_exitcode(status)
    if process.returncode:
        raise SystemExit(f"{' '.join(command)} ended with {process.returncode}")
    return Ran(seconds, usage.ru_utime + usage.ru_stime, usage.ru_maxrss / 1024)


def seconds(work: Callable[[], object]) -> float:
    """Wall time of a call."""
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def in_turn(count: int, ours: Callable[[], One], other: Callable[[], Other]) -> list[tuple[One, Other]]:
    """What both give, `count` pairs, each pair in the other order than the one before."""
    pairs = []
    for number in range(count):
        if number % 2:
            theirs = other()
            pairs.append((ours(), theirs))
        else:
            pairs.append((ours(), other()))
    return pairs


def told(what: str, ratios: Sequence[float], wanted: str, *means: str) -> None:
    """Prints the median of ratios with their range, what is wanted of it, and what lies behind it."""
    low, high = min(ratios), max(ratios)
    print(f"{what}: {statistics.median(ratios):.2f} ({low:.2f} to {high:.2f}), wanted {wanted}; ", end="")
    print(f"{len(ratios)} pairs", *means, sep="; ", flush=True)


def medians(pairs: Sequence[tuple[float, float]]) -> str:
    """The median times of both, as text."""
    ours, other = (statistics.median(times) for times in zip(*pairs, strict=True))
    return f"{ours:.3g} s and {other:.3g} s"
