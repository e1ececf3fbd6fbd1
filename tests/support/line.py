"""Talks over the line of a live page, by real sockets."""

from __future__ import annotations

import asyncio
import json
from collections.abc import Awaitable, Callable
from typing import Any

import aiohttp
from ribwright.intake import sample_text
from support.live import Live

LARGEST = 64 * 1024
NAME = "a-name-that-is-in-no-script"
TEXT = sample_text().replace('name = "workshop"', f'name = "{NAME}"')


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


def building(line: Any) -> Awaitable[dict[str, Any]]:
    """The next building that the line tells of."""

    async def heard() -> dict[str, Any]:
        while "seen" not in (message := json.loads((await line.receive()).data)):
            pass
        return dict(message["seen"])

    return heard()
