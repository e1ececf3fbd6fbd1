"""What a page has been sent, so that it is sent what is new and no more."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import asdict, dataclass, field
from typing import Any

from ..show.page.carried import Geometry, packed
from .desk import Desk, State
from .export import Said
from .told import Found, Seen


@dataclass
class Sent:
    """The last of each kind that one page was sent."""

    state: State | None = None
    said: Said = field(default_factory=Said)
    seen: Seen | None = None
    found: Found | None = None

    def news(self, desk: Desk) -> Iterator[dict[str, Any]]:
        """What it has to be sent now: a picture first, what was found in it after."""
        if desk.seen and desk.seen is not self.seen:
            before, self.seen, self.found = self.seen, desk.seen, None
            stands = geometry(desk.seen.geometry, before.geometry if before else None)
            yield {"seen": {**desk.seen.content, "geometry": stands}}
        found = desk.found
        if found and self.seen and found is not self.found and found.number == self.seen.number:
            self.found = found
            yield {"found": found.content, "words": found.words}
        if desk.state != self.state:
            self.state = desk.state
            yield {"state": asdict(desk.state)}
        if desk.export.news != self.said:
            self.said = desk.export.news
            yield {"exported": asdict(desk.export.news)}


def geometry(now: Geometry, before: Geometry | None) -> dict[str, Any] | None:
    """Where everything stands, with those bodies alone that were not there; None where all stayed.

    keys: of all bodies; fresh: the numbers of those that come.
    """
    if before == now:
        return None
    known = {body.key for body in before.bodies} if before else set()
    fresh = [number for number, body in enumerate(now.bodies) if body.key not in known]
    keys = [body.key for body in now.bodies]
    return {**packed(now, [now.bodies[number] for number in fresh]), "keys": keys, "fresh": fresh}
