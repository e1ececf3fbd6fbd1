"""The page and its line, on the loopback: the first to anyone who asks, all that is known of a building to
who says the token."""

from __future__ import annotations

import asyncio
import json
from collections.abc import Awaitable, Callable
from contextlib import suppress
from typing import Any

from aiohttp import ClientConnectionResetError, WSCloseCode, WSMessage, WSMsgType, web

from .desk import Desk
from .guard import Guard
from .page import headers, page
from .sent import Sent

LARGEST = 64 * 1024
"""Bytes of a message from a page; a token has 43."""
PATIENCE = 5.0  # s, for the token
BEAT = 30.0  # s

Handler = Callable[[web.Request], Awaitable[web.StreamResponse]]


def served(desk: Desk, guard: Guard) -> web.Application:
    """What answers at the port."""

    @web.middleware
    async def watched(request: web.Request, handler: Handler) -> web.StreamResponse:
        if not guard.admits(request.headers, page=request.path == "/line"):
            return web.Response(status=403, text="This is for the page of this address alone.\n")
        return await handler(request)

    async def shown(request: web.Request) -> web.Response:
        text = page(guard.host)
        return web.Response(text=text, content_type="text/html", headers=headers(guard.host))

    async def line(request: web.Request) -> web.WebSocketResponse:
        socket = web.WebSocketResponse(max_msg_size=LARGEST, heartbeat=BEAT, compress=False)
        await socket.prepare(request)
        if await _known(socket, guard):
            await _talk(socket, desk)
        else:
            await socket.close(code=WSCloseCode.POLICY_VIOLATION, message=b"that is not the token")
        return socket

    app = web.Application(middlewares=[watched], client_max_size=LARGEST)
    app.router.add_get("/", shown, allow_head=False)
    app.router.add_get("/line", line, allow_head=False)
    return app


async def _known(socket: web.WebSocketResponse, guard: Guard) -> bool:
    """Whether the first message is the token."""
    with suppress(TimeoutError):
        first = await asyncio.wait_for(socket.receive(), PATIENCE)
        return first.type == WSMsgType.TEXT and guard.knows(first.data)
    return False


async def _talk(socket: web.WebSocketResponse, desk: Desk) -> None:
    """Sends what is new until the page is left."""
    wake = asyncio.Event()
    desk.pages.add(wake)
    telling = asyncio.create_task(_tell(socket, desk, wake))
    try:
        async for message in socket:
            if (answer := answered(desk, message)) is None:
                await socket.close(code=WSCloseCode.POLICY_VIOLATION, message=b"that is nothing to ask for")
                break
            if answer:
                await socket.send_str(as_json(answer))
    finally:
        desk.pages.discard(wake)
        telling.cancel()
        with suppress(asyncio.CancelledError, ClientConnectionResetError):
            await telling


def answered(desk: Desk, message: WSMessage) -> dict[str, Any] | None:
    """Does what a page asks for, and answers; None for anything that it may not ask for.

    It names keys by their numbers in what it was sent, and gives a value: no path and no name of a key comes
    from it.
    """
    match asked(message):
        case {"change": {"digest": str(digest), "field": int(field), "typed": str(typed), **rest}} if (
            not rest
        ):
            return {"changed": {"field": field, "why": desk.change(digest, field, typed)}}
        case {"export": True}:
            desk.export.begin()
            return {}
    return None


def asked(message: WSMessage) -> Any:
    """The one thing that a message asks for; None where it is none."""
    if message.type != WSMsgType.TEXT:
        return None
    try:
        value = json.loads(message.data)
    except (ValueError, RecursionError):
        return None
    return value if isinstance(value, dict) and len(value) == 1 else None


def as_json(value: Any) -> str:
    """JSON in as few letters as it takes."""
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))


async def _tell(socket: web.WebSocketResponse, desk: Desk, wake: asyncio.Event) -> None:
    sent = Sent()
    while True:
        wake.clear()
        for message in sent.news(desk):
            await socket.send_str(as_json(message))
        await wake.wait()
