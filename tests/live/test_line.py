"""The live page's port, by real sockets: who is let in, and that nobody else learns or does anything."""

from __future__ import annotations

import asyncio
import json
import os
import re
import signal
import socket
import sys
import time
from collections.abc import Awaitable, Callable, Iterator
from http.client import HTTPConnection
from pathlib import Path
from typing import Any

import aiohttp
import pytest
from ribwright.intake import sample_text
from ribwright.live.desk import digest_of
from support.live import Live, live
from support.pages import Reader

LARGEST = 64 * 1024
NAME = "a-name-that-is-in-no-script"
TEXT = sample_text().replace('name = "workshop"', f'name = "{NAME}"')


@pytest.fixture(scope="module")
def served(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Live]:
    file = tmp_path_factory.mktemp("live") / "my-shop.toml"
    file.write_text(TEXT, encoding="utf-8")
    with live(file) as started:
        yield started


def asked(served: Live, path: str, method: str = "GET", **headers: str) -> tuple[int, str, Any]:
    """Status, text and headers of one answer. Host is sent as given, or as it should be."""
    port = int(served.host.split(":")[1])
    line = HTTPConnection("127.0.0.1", port, timeout=30)
    line.putrequest(method, path, skip_host=True)
    for name, value in {"Host": served.host, **headers}.items():
        line.putheader(name, value)
    line.endheaders()
    answer = line.getresponse()
    return answer.status, answer.read().decode(), answer.headers


def talked(served: Live, talk: Callable[[Any], Awaitable[Any]], **headers: str) -> Any:
    """What comes of a talk over the line, opened as the page does unless headers say otherwise."""

    async def run() -> Any:
        async with (
            aiohttp.ClientSession() as session,
            session.ws_connect(
                f"ws://{served.host}/line",
                headers={"Origin": f"http://{served.host}", **headers},
                max_msg_size=0,
            ) as line,
        ):
            return await talk(line)

    return asyncio.run(asyncio.wait_for(run(), 60))


def close_code(*messages: str | bytes) -> Callable[[Any], Awaitable[Any]]:
    """Says these and tells by which code the line was closed, and what was said before."""

    async def talk(line: Any) -> Any:
        for message in messages:
            await (line.send_str(message) if isinstance(message, str) else line.send_bytes(message))
        heard = []
        while (message := await line.receive()).type == aiohttp.WSMsgType.TEXT:
            heard.append(message.data)
        return line.close_code, heard

    return talk


def test_the_page_holds_nothing_of_the_building(served: Live) -> None:
    status, text, headers = asked(served, "/")
    assert status == 200
    assert NAME not in text
    assert served.token not in text
    assert headers["Cache-Control"] == "no-store"
    assert headers["X-Content-Type-Options"] == "nosniff"
    policy = headers["Content-Security-Policy"]
    assert "default-src 'none'" in policy
    assert "frame-ancestors 'none'" in policy
    assert re.findall(r"connect-src ([^;]+)", policy) == [f"ws://{served.host}"]
    assert "unsafe" not in policy
    read = Reader(text)
    assert len(read.blocks["script"]) == 2
    assert not re.search(
        r"innerHTML|outerHTML|insertAdjacent|\beval\b|document\.write", read.blocks["script"][1]
    )


@pytest.mark.parametrize(
    "host",
    [
        "localhost:PORT",
        "127.0.0.1",
        "127.0.0.1:1",
        "attacker.example:PORT",
        "127.0.0.1.attacker.example:PORT",
        "",
    ],
)
def test_another_host_is_refused(host: str, served: Live) -> None:
    """As of a name that someone else has bound to this address."""
    named = host.replace("PORT", served.host.split(":")[1])
    for path in ("/", "/line", "/nothing"):
        status, text, _ = asked(served, path, Host=named)
        assert (status, len(text) < 80) == (403, True)


@pytest.mark.parametrize(
    "origin",
    [
        "http://attacker.example",
        "https://127.0.0.1:PORT",
        "http://127.0.0.1",
        "http://localhost:PORT",
        "null",
        "",
    ],
)
def test_a_page_from_elsewhere_opens_no_line(origin: str, served: Live) -> None:
    """Even with the token."""
    given = origin.replace("PORT", served.host.split(":")[1])
    with pytest.raises(aiohttp.WSServerHandshakeError) as caught:
        talked(served, close_code(served.token), Origin=given)
    assert caught.value.status == 403
    assert asked(served, "/", Origin=given)[0] == 403


def test_a_line_without_an_origin_is_refused(served: Live) -> None:
    status, _, _ = asked(served, "/line", Connection="Upgrade", Upgrade="websocket")
    assert status == 403


@pytest.mark.parametrize(
    "first",
    [
        "",
        "wrong",
        "TOKEN ",
        "token",
        json.dumps({"token": "TOKEN"}),
        b"TOKEN",
        "\ud7ff" * 43,
        "x" * (LARGEST - 64),
    ],
)
def test_whoever_does_not_say_the_token_first_learns_nothing(first: str | bytes, served: Live) -> None:
    token = served.token
    said = (
        first.replace(b"TOKEN", token.encode()) if isinstance(first, bytes) else first.replace("TOKEN", token)
    )
    assert talked(served, close_code(said, token)) == (1008, [])


def test_a_message_too_large_ends_the_line(served: Live) -> None:
    assert talked(served, close_code("x" * (LARGEST + 1))) == (1009, [])
    code, _ = talked(served, close_code(served.token, "x" * (LARGEST + 1)))
    assert code == 1009


@pytest.mark.parametrize(
    "said", ["../../etc/passwd", '{"path": "/etc/passwd"}', '{"file": "../other.toml"}', "[]"]
)
def test_a_page_that_asks_for_what_it_may_not_is_cut_off(said: str, served: Live) -> None:
    """With the token: nothing it says is a path, and nothing beside the one file is read or written."""
    other = served.file.with_name("other.toml")
    other.write_text("secret", encoding="utf-8")
    before = {path: path.read_bytes() for path in served.file.parent.iterdir()}
    code, heard = talked(served, close_code(served.token, said))
    assert code == 1008
    assert not any("secret" in message or "root:" in message for message in heard)
    assert {path: path.read_bytes() for path in served.file.parent.iterdir()} == before


@pytest.mark.parametrize(
    "path",
    [
        "/my-shop.toml",
        "/../../etc/passwd",
        "/..%2f..%2fetc/passwd",
        "//etc/passwd",
        "/line/../my-shop.toml",
        "/index.html",
    ],
)
def test_no_file_is_served(path: str, served: Live) -> None:
    status, text, _ = asked(served, path)
    assert status in (400, 404)
    assert NAME not in text


@pytest.mark.parametrize("method", ["POST", "PUT", "DELETE", "HEAD", "OPTIONS"])
def test_nothing_can_be_sent_to_it(method: str, served: Live) -> None:
    assert asked(served, "/", method)[0] == 405


def test_it_listens_on_the_loopback_alone(served: Live) -> None:
    port = int(served.host.split(":")[1])
    open_at = {
        line.split()[1]
        for line in Path("/proc/net/tcp").read_text(encoding="ascii").splitlines()[1:]
        if line.split()[3] == "0A" and line.split()[1].endswith(f":{port:04X}")
    }
    assert open_at == {f"0100007F:{port:04X}"}
    with socket.socket(socket.AF_INET6) as other, pytest.raises(OSError):
        other.connect(("::1", port))


def test_who_says_the_token_is_told_of_the_building(served: Live) -> None:
    """First what is seen, then what was found; a second page as the first."""

    async def talk(line: Any) -> list[str]:
        await line.send_str(served.token)
        kinds: list[str] = []
        while "found" not in kinds:
            message = json.loads((await line.receive()).data)
            kinds.append(next(iter(message)))
            if "seen" in message:
                assert message["seen"]["name"] == NAME
        return kinds

    for _ in range(2):
        assert [kind for kind in talked(served, talk) if kind != "state"] == ["seen", "found"]


def test_each_run_has_a_token_of_its_own(served: Live, tmp_path: Path) -> None:
    file = tmp_path / "other.toml"
    file.write_text(TEXT, encoding="utf-8")
    with live(file) as other:
        assert len(other.token) == len(served.token) == 43
        assert other.token != served.token
        assert talked(other, close_code(served.token)) == (1008, [])


def building(line: Any) -> Awaitable[dict[str, Any]]:
    """The next building that the line tells of."""

    async def heard() -> dict[str, Any]:
        while "seen" not in (message := json.loads((await line.receive()).data)):
            pass
        return dict(message["seen"])

    return heard()


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


@pytest.fixture
def own(tmp_path: Path) -> Iterator[Live]:
    file = tmp_path / "my-shop.toml"
    file.write_text(TEXT, encoding="utf-8")
    with live(file) as started:
        yield started


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
