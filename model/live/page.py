"""The live page as it is given out: the customer's page without a building, which comes over its line."""

from __future__ import annotations

from functools import cache

from ..show.page.frame import filled
from ..show.page.joined import policy, script, style

HEADERS = {
    "Cache-Control": "no-store",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Referrer-Policy": "no-referrer",
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
}
DESK = (
    '<section id="desk" aria-label="The description"><p id="desk-said" role="status">'
    'Waiting for the building.</p><ol id="problems" class="plain" hidden></ol>'
    '<button type="button" id="export" disabled>Export</button> <small id="export-where"></small>'
    '<pre id="exported" tabindex="0" aria-label="What was exported" role="status" hidden></pre></section>'
)
CARD = '<h3>In the description</h3><div id="offered"></div><p id="offered-said" role="alert"></p>'
EMPTY = ("head", "glance", "found", "findings", "lists", "steps", "elevations")


@cache
def allowed(host: str) -> str:
    """The page's policy: its line leads to the server that it comes from, and nothing else leads anywhere."""
    return policy(script("live"), "img-src data:", f"connect-src ws://{host}")


@cache
def page(host: str) -> str:
    """The page's text, with nothing in it that is not known to everybody."""
    return filled(
        {
            **dict.fromkeys(EMPTY, ""),
            "policy": allowed(host),
            "title": "ribwright",
            "style": style(),
            "live": DESK,
            "card": CARD,
            "data": "null",
            "script": script("live"),
        }
    )


def headers(host: str) -> dict[str, str]:
    """What a browser is told with the page."""
    return {**HEADERS, "Content-Security-Policy": f"{allowed(host)}; frame-ancestors 'none'"}
