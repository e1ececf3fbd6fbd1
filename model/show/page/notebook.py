"""The page of a model inside a notebook's cell."""

from __future__ import annotations

from html import escape

from ...audit import audit
from ...order.lists.schedule import schedule
from ...pieces import Model
from .page import page

HEIGHT = 640  # pixels


def framed(model: Model) -> str:
    """A frame that holds the page: its script runs, and reaches nothing of the notebook's."""
    text = escape(page(model, schedule(model), audit(model)), quote=True)
    return (
        f'<iframe sandbox="allow-scripts" title="The building" width="100%" height="{HEIGHT}" '
        f'style="border:0" srcdoc="{text}"></iframe>'
    )
