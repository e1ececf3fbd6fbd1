"""The papers of every starter, drawn once for all tests that look at them."""

from __future__ import annotations

from functools import lru_cache

from ribwright.drawing.pdf import pdf
from ribwright.drawing.values import Page
from ribwright.papers.pages import papers
from support.read_pdf import Read, read_pdf
from support.starter_buildings import KEPT, starter_model


@lru_cache(maxsize=KEPT)
def starter_pages(name: str) -> tuple[Page, ...]:
    return papers(starter_model(name))


@lru_cache(maxsize=KEPT)
def starter_pdf(name: str) -> bytes:
    return pdf(starter_pages(name), name)


@lru_cache(maxsize=KEPT)
def starter_read(name: str) -> tuple[Read, ...]:
    return tuple(read_pdf(starter_pdf(name)))


def page_called(name: str, title: str) -> tuple[Page, Read]:
    """A page of a starter as drawn, and as read back from the PDF."""
    number = next(i for i, page in enumerate(starter_pages(name)) if page.title == title)
    return starter_pages(name)[number], starter_read(name)[number]
