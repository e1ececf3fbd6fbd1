"""How a run is told to stop, by a person or by the system. It clears up, and says so in a word."""

from __future__ import annotations

import signal
from types import FrameType

from .status import DONE, STOPPED

_told: list[int] = []


def listen() -> None:
    """From now on the first SIGINT or SIGTERM raises KeyboardInterrupt; any after it lets that clear up."""
    for number in (signal.SIGINT, signal.SIGTERM):
        signal.signal(number, _stop)


def listen_no_more() -> None:
    """All is done: there is nothing left to stop."""
    for number in (signal.SIGINT, signal.SIGTERM):
        signal.signal(number, signal.SIG_IGN)


def was_stopped() -> int:
    """The exit status of a run that was told to stop, as shells give it; DONE for one that was not."""
    return STOPPED - signal.SIGINT + _told[0] if _told else DONE


def _stop(number: int, frame: FrameType | None) -> None:
    if not _told:
        _told.append(number)
        raise KeyboardInterrupt
