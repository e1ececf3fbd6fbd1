"""A live page that is watched in a real browser, with all that its line says."""

from __future__ import annotations

import json
from typing import Any

from ribwright.intake import sample_text
from support.browser import Watched
from support.live import Live

TEXT = sample_text()
QUIET = "() => !document.body.classList.contains('waiting')"


class Address(str):
    """Where a page is, for a browser that is told by a path elsewhere."""

    __slots__ = ()

    def as_uri(self) -> str:
        return str(self)


class Shown:
    """A live page that is watched, and every message of its line."""

    def __init__(self, chromium: Any, served: Live) -> None:
        self.served = served
        self.messages: list[dict[str, Any]] = []
        self.watched = Watched(chromium, Address("about:blank"), reduced_motion="reduce")
        self.page = self.watched.page
        self.page.on("websocket", lambda line: line.on("framereceived", self._heard))
        self.watched.asked.clear()
        self.page.goto(served.address)
        self.does = self.watched.does

    def _heard(self, frame: Any) -> None:
        self.messages.append(json.loads(frame))

    def has(self, name: str, value: Any) -> None:
        """Waits until the page's building is the wanted one, with all that was found in it."""
        self.page.wait_for_function(
            f"([name, value]) => globalThis.ribwright?.all.{name} === value && ({QUIET})()",
            arg=[name, value],
        )

    def last(self, kind: str) -> dict[str, Any]:
        return next(message[kind] for message in reversed(self.messages) if kind in message)


def named(name: str, text: str = TEXT) -> str:
    """Another text for another building, known by its name."""
    return text.replace('name = "workshop"', f"name = {json.dumps(name)}")


def glance(shown: Shown) -> str:
    return str(shown.page.locator("#glanced").inner_text())
