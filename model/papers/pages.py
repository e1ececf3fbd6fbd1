"""All papers of a building, in the order they are read."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from ..drawing.values import Page, Paper
from ..pieces import Model
from .cards import card_pages
from .cut_sheets import sheet_deck
from .delivery import delivery
from .details import details
from .elevations import elevations
from .frame import Content, framed
from .framing import framing
from .index import index
from .job import Job, Pictured, job_of
from .member_sheets import member_deck, member_lists
from .punch_list import punch_list
from .slab import slab_plan
from .step_pages import step_pages
from .trim_sheets import trim_deck


def cut_sheets(one: Job) -> Iterator[Content]:
    """The cards of all that is cut: sheets, trims, members."""
    return card_pages(one, (deck(one) for deck in (sheet_deck, trim_deck, member_deck)))


Progress = Callable[[str, int, int], None]
"""Called with what is being drawn, how many are done, how many there are."""
PARTS: dict[str, Callable[[Job], Iterator[Content]]] = {
    "delivery": delivery,
    "slab plan": slab_plan,
    "framing": framing,
    "elevations": elevations,
    "details": details,
    "steps": step_pages,
    "members": member_lists,
    "cut sheets": cut_sheets,
    "punch list": punch_list,
}
"""What is drawn, in order. A new part is a line here and the function that draws its pages."""


def papers(
    model: Model,
    paper: Paper | None = None,
    progress: Progress | None = None,
    pictured: Pictured | None = None,
) -> tuple[Page, ...]:
    """The pages of a model's papers, the index first. paper: Letter or A4 as the model's units are, unless
    given. pictured: makes the pictures of steps, which stand without unless given."""
    one = job_of(model, paper, pictured)
    contents: list[Content] = []
    for number, (what, part) in enumerate(PARTS.items()):
        if progress:
            progress(f"drawing: {what}", number, len(PARTS))
        contents += part(one)
    titles = [content.title for content in contents]
    first = list(index(one, titles))
    if len(first) > 1:
        first = list(index(one, titles, len(first)))
    return framed(one, [*first, *contents])
