"""What a live page may ask for, by real sockets, and the process that raises it."""

from __future__ import annotations

import asyncio
import json
import os
import signal
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from ribwright.live.desk import digest_of
from support.line import NAME, TEXT, building, close_code, talked
from support.live import Live


def asking(
    served: Live, name: str, typed: str, before: Callable[[], None] = lambda: None, digest: str = ""
) -> str:
    """What is answered to a page that asks for another value of a key of what it shows."""

    async def talk(line: Any) -> str:
        await line.send_str(served.token)
        while (shown := await building(line))["digest"] != digest_of(served.file.read_text(encoding="utf-8")):
            pass
        (field,) = (k for k, one in enumerate(shown["fields"]) if one["name"] == name)
        before()
        asked = {"digest": digest or shown["digest"], "field": field, "typed": typed}
        await line.send_str(json.dumps({"change": asked}))
        while "changed" not in (message := json.loads((await line.receive()).data)):
            pass
        assert message["changed"]["field"] == field
        return str(message["changed"]["why"])

    return str(talked(served, talk))


def test_a_change_is_written_where_it_stands_and_refused_once_the_file_is_another(own: Live) -> None:
    """What was saved meanwhile is not lost, seen or not; what cannot be built is not written."""
    assert asking(own, "opening[3].sill", "4 ft 2 in") == ""
    once = TEXT.replace('sill = "4 ft"', 'sill = "4 ft 2 in"', 1)
    assert own.file.read_text(encoding="utf-8") == once
    refused = asking(own, "width", "30 parsecs")
    assert refused.startswith('Not written. width: read "30 parsecs"; a length such as')
    assert asking(own, "opening[1].width", "29 ft").startswith("Not written. opening[1]")
    assert asking(own, "width", "x" * 300).startswith("That is no value")
    assert asking(own, "width", "31 ft\n[slab]").startswith("That is no value")
    assert own.file.read_text(encoding="utf-8") == once
    assert asking(own, "width", "32 ft", digest="0" * 64).startswith(
        "Not written: the file was changed meanwhile"
    )
    other = once.replace("# for the truck", "# for the tractor")
    refused = asking(own, "width", "32 ft", before=lambda: own.replace(other))
    assert refused.startswith("Not written: the file was changed meanwhile")
    assert own.file.read_text(encoding="utf-8") == other


@pytest.mark.parametrize(
    "asked",
    [
        {"change": {"digest": "x", "field": "../../etc/passwd", "typed": "x"}},
        {"change": {"digest": "x", "field": 1, "typed": "x", "path": "/etc/passwd"}},
        {"change": {"field": 1, "typed": "x"}},
        {"change": {"digest": "x", "field": 1.5, "typed": "x"}},
        {"change": ["width"]},
        {"change": {"digest": "x", "field": 1, "typed": "x"}, "export": True},
        {"export": "/tmp"},
        {"export": True, "folder": "/tmp"},
    ],
)
def test_nothing_but_a_number_and_a_value_is_taken(asked: dict[str, Any], served: Live) -> None:
    code, _ = talked(served, close_code(served.token, json.dumps(asked)))
    assert code == 1008


@pytest.mark.parametrize("field", [-1, 10**6, 2**70])
def test_a_number_that_no_key_has_changes_nothing(field: int, served: Live) -> None:
    async def talk(line: Any) -> str:
        await line.send_str(served.token)
        digest = (await building(line))["digest"]
        await line.send_str(json.dumps({"change": {"digest": digest, "field": field, "typed": "1 ft"}}))
        while "changed" not in (message := json.loads((await line.receive()).data)):
            pass
        return str(message["changed"]["why"])

    assert talked(served, talk).startswith("Not written")
    assert served.file.read_text(encoding="utf-8") == TEXT


@pytest.mark.skipif(sys.platform != "linux", reason="reads /proc")
def test_the_process_that_raises_ends_with_the_one_that_serves(own: Live) -> None:
    """Even if that is killed, and while a long building is at work."""

    async def talk(line: Any) -> None:
        await line.send_str(own.token)
        await building(line)

    talked(own, talk)
    started = children(own)
    own.write(TEXT.replace('"40 ft"', '"900 ft"'))
    time.sleep(2)
    own.process.kill()
    time.sleep(1)
    assert started
    assert not any(map(_alive, started))


@pytest.mark.skipif(sys.platform != "linux", reason="reads /proc")
def test_a_process_that_was_lost_is_followed_by_another(own: Live) -> None:
    """While it was idle, and in the middle of a text: that text is raised."""

    async def talk(line: Any) -> list[str]:
        await line.send_str(own.token)
        names = [(await building(line))["name"]]
        for wait in (0.0, 0.5):
            lost = children(own)
            own.write(TEXT.replace(NAME, f"after {wait} s").replace('"11 ft"', f'"{12 + wait} ft"'))
            await asyncio.sleep(wait)
            for one in lost:
                os.kill(int(one), signal.SIGKILL)
            names.append((await building(line))["name"])
            while children(own) in (lost, []):  # it may have been done before it was lost
                await asyncio.sleep(0.05)
        return names

    assert talked(own, talk) == [NAME, "after 0.0 s", "after 0.5 s"]


def children(served: Live) -> list[str]:
    """The processes that it started and that live: one that was lost may still be told of."""
    number = served.process.pid
    started = Path(f"/proc/{number}/task/{number}/children").read_text(encoding="ascii").split()
    return [process for process in started if _alive(process)]


def _alive(process: str) -> bool:
    try:
        state = Path(f"/proc/{process}/stat").read_text(encoding="ascii").rsplit(")", 1)[1].split()[0]
    except FileNotFoundError:
        return False
    return state != "Z"
