"""Rows made by processes forked from this one, which is warm: what it has loaded and worked out they share.

A process that is lost is followed by another, and the row that it was at is begun again; so is one that has
grown past its share of memory, once its row is done.
"""

from __future__ import annotations

import gc
import os
import resource
import signal
import sys
from collections.abc import Callable, Iterable, Iterator
from contextlib import suppress
from dataclasses import dataclass
from multiprocessing.connection import Connection, Pipe, wait

from ..meanwhile import end_with, forked
from .task import FAILED, Entry, Task

TRIES = 3
"""How often a row is begun whose process is lost each time."""
LOST = Entry(FAILED, f"the process that was to make it was lost {TRIES} times")
UNIT = 1 if sys.platform == "darwin" else 1024
"""Bytes that the system counts a process's memory in."""

Work = Callable[[Task], Entry]


@dataclass(slots=True)
class _Hand:
    """A forked process and the way to it; what it is at, for the how-manieth time."""

    process: int
    way: Connection
    task: Task | None = None
    tries: int = 0

    def end(self) -> None:
        """Ends the process, if it has not ended."""
        self.way.close()
        os.kill(self.process, signal.SIGKILL)  # it stays to be killed until it is waited for
        os.waitpid(self.process, 0)


def farmed(work: Work, tasks: Iterable[Task], count: int, memory: float) -> Iterator[tuple[Task, Entry]]:
    """Each task with its entry, in the order in which they are done.

    count: of processes. memory: bytes after which one is followed by a fresh one, what it shares counted.
    """
    waiting = iter(tasks)
    gc.collect()
    gc.freeze()  # what is here now is not gone through in search of rubbish, and so stays shared
    hands: list[_Hand] = []
    try:
        while True:
            while len(hands) < count and (task := next(waiting, None)):
                hands.append(_given(_hand(work, memory), task))
            if not hands:
                return
            for way in wait([hand.way for hand in hands]):
                (hand,) = (hand for hand in hands if hand.way is way)
                entry, goes_on = _answer(hand)
                assert hand.task
                if not goes_on:
                    hands.remove(hand)
                    hand.end()
                if entry is None and hand.tries < TRIES:
                    hands.append(_given(_hand(work, memory), hand.task, hand.tries + 1))
                    continue
                yield hand.task, entry or LOST
                if goes_on and (task := next(waiting, None)):
                    _given(hand, task)
                elif goes_on:
                    hands.remove(hand)
                    hand.end()
    finally:
        for hand in hands:
            hand.end()
        gc.unfreeze()


def _given(hand: _Hand, task: Task, tries: int = 1) -> _Hand:
    """A hand set to work."""
    hand.task, hand.tries = task, tries
    with suppress(BrokenPipeError):  # one that was lost while it was idle: its way says so when it is asked
        hand.way.send(task)
    return hand


def _answer(hand: _Hand) -> tuple[Entry | None, bool]:
    """What a hand has made, None if it was lost, and whether it goes on."""
    try:
        entry, goes_on = hand.way.recv()
    except (EOFError, ConnectionResetError):
        return None, False
    return entry, goes_on


def _hand(work: Work, memory: float) -> _Hand:
    """A new process."""
    parent = os.getpid()
    ours, its = Pipe()
    process = forked()
    if process:
        its.close()
        return _Hand(process, ours)
    try:
        end_with(parent)
        ours.close()
        goes_on = True
        while goes_on:
            entry = work(its.recv())
            goes_on = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss * UNIT < memory
            its.send((entry, goes_on))
    finally:
        os._exit(0)
