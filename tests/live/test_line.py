"""The live page's port, by real sockets: who is let in, and that nobody else learns or does anything."""

from __future__ import annotations

import json
import re
import socket
from http.client import HTTPConnection
from pathlib import Path
from typing import Any

import aiohttp
import pytest
from support.line import LARGEST, NAME, TEXT, close_code, talked
from support.live import Live, live
from support.pages import Reader


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
