"""All papers of a building, in the order they are read."""

from __future__ import annotations

from collections.abc import Callable

from ..drawing.values import Page, Paper
from ..pieces import Model
from .elevations import elevations
from .frame import Content, framed
from .job import job_of

Progress = Callable[[str, int, int], None]
"""Called with what is being drawn, how many are done, how many there are."""


def papers(model: Model, paper: Paper | None = None, progress: Progress | None = None) -> tuple[Page, ...]:
    """The pages of a model's papers."""
    one = job_of(model, paper)
    contents: list[Content] = []
    parts = {"elevations": elevations}
    for number, (what, part) in enumerate(parts.items()):
        if progress:
            progress(f"papers: {what}", number, len(parts))
        contents += part(one)
    return framed(one, contents)
