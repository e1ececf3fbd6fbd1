"""The run of a live page: the file watched, its texts raised, the page served, until it is told to end."""

from __future__ import annotations

import asyncio
import signal
import socket
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

from aiohttp import web
from watchfiles import awatch

from .desk import Desk
from .guard import LOOPBACK, Guard
from .serving import served

STEP, LONGEST = 15, 200  # ms: a save is over when nothing more comes for the first; the second at most
LOOK = 1000  # ms after which the file is looked at whether or not its folder said anything


def run_live(desk: Desk, opened: Callable[[str], None]) -> None:
    """Serves the page of a description until SIGINT or SIGTERM.

    opened: told the page's address once it is there.
    """
    asyncio.run(_run(desk, opened))


async def _run(desk: Desk, opened: Callable[[str], None]) -> None:
    ended = asyncio.Event()
    loop = asyncio.get_running_loop()
    for number in (signal.SIGINT, signal.SIGTERM):
        with suppress(NotImplementedError):  # Windows: there both raise KeyboardInterrupt
            loop.add_signal_handler(number, ended.set)
    with socket.create_server((LOOPBACK, 0)) as port:
        guard = Guard(port.getsockname()[1])
        runner = web.AppRunner(served(desk, guard), access_log=None, shutdown_timeout=1.0)
        await runner.setup()
        await web.SockSite(runner, port).start()
        tasks = [asyncio.create_task(desk.raiser.run()), asyncio.create_task(_watch(desk, ended))]
        try:
            desk.look()
            opened(guard.address)
            done, _ = await asyncio.wait(
                [*tasks, asyncio.create_task(ended.wait())], return_when=asyncio.FIRST_COMPLETED
            )
            for task in done:
                task.result()
        finally:
            ended.set()
            for task in tasks:
                task.cancel()
            await asyncio.gather(*tasks, desk.export.end(), return_exceptions=True)
            await runner.cleanup()


async def _watch(desk: Desk, ended: asyncio.Event) -> None:
    """Looks at the file whenever its folder says that it changed: editors put another file in its place.

    A link is looked at where it stands and where it leads.
    """
    places = {desk.path.absolute(), desk.path.resolve()}
    names = {place.name for place in places}
    folders = {place.parent for place in places}
    async for _ in awatch(
        *folders,
        watch_filter=lambda _, name: Path(name).name in names,
        debounce=LONGEST,
        step=STEP,
        stop_event=ended,
        rust_timeout=LOOK,
        yield_on_timeout=True,
        recursive=False,
    ):
        desk.look()
