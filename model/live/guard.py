"""Who may come in: a page that this very server gave out, opened by whoever was told the address."""

from __future__ import annotations

import hmac
import secrets
from dataclasses import dataclass, field

from multidict import CIMultiDictProxy

LOOPBACK = "127.0.0.1"
BYTES = 32  # of chance in a token


@dataclass(frozen=True, slots=True)
class Guard:
    """Judges what comes to a port. token: in the address's fragment, which no browser sends."""

    port: int
    token: str = field(default_factory=lambda: secrets.token_urlsafe(BYTES))

    @property
    def host(self) -> str:
        """The only name that this server answers to, so that no other name can be bound to it."""
        return f"{LOOPBACK}:{self.port}"

    @property
    def address(self) -> str:
        """Where the page is."""
        return f"http://{self.host}/#{self.token}"

    def admits(self, headers: CIMultiDictProxy[str], *, page: bool) -> bool:
        """Whether a request was meant for this server and, where a page sent it, comes from its own.

        page: whether it must be a page's; a browser says of a page that it is the origin.
        """
        origins = headers.getall("Origin", [])
        own = [f"http://{self.host}"]
        return headers.getall("Host", []) == [self.host] and origins in ([own] if page else [own, []])

    def knows(self, said: str) -> bool:
        """Whether it is the token; takes as long for any other of its length."""
        return hmac.compare_digest(said.encode("utf-8", "replace"), self.token.encode())
