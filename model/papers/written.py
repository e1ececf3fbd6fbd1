"""The papers of a building as files: one PDF, and each page that is a drawing as DXF and SVG."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from ..drawing.dxf import dxf
from ..drawing.font import lacking
from ..drawing.ink import words_on
from ..drawing.pdf import pdf
from ..drawing.svg import svg
from ..drawing.values import Page, Paper
from ..exchange.atomic_files import whole_folder
from ..pieces import Model
from .job import Pictured
from .pages import Progress, papers

PDF = "papers.pdf"
LONGEST = 60
"""Characters of a file's name that a page's title gives."""


@dataclass(frozen=True, slots=True)
class Papers:
    """What was written. lacking: the characters that the font does not have."""

    pages: int
    drawings: int
    lacking: str


def papers_pdf(model: Model, paper: Paper | None = None) -> bytes:
    """The papers of a model as one PDF. Equal models give equal bytes."""
    return pdf(papers(model, paper), model.name)


def write_papers(
    model: Model,
    folder: str | Path,
    paper: Paper | None = None,
    progress: Progress | None = None,
    pictured: Pictured | None = None,
) -> Papers:
    """Writes the papers of a model into a folder, all of them or none. Raises FileError.

    Equal models give equal bytes, but for pictures, which are as the graphics of a machine draw them.
    """
    pages = papers(model, paper, progress, pictured)
    drawings = list(_drawings(pages))
    with whole_folder(folder) as room:
        (room / PDF).write_bytes(pdf(pages, model.name))
        for number, (name, page) in enumerate(drawings):
            if progress:
                progress("drawings", number, len(drawings))
            (room / f"{name}.svg").write_text(svg(page), encoding="utf-8", newline="")
            (room / f"{name}.dxf").write_bytes(dxf(page))
    texts = "".join(word.text for page in pages for word in words_on(page))
    return Papers(len(pages), len(drawings), lacking(texts))


def _drawings(pages: Sequence[Page]) -> Iterator[tuple[str, Page]]:
    """The pages with views, by names that tell them apart."""
    for number, page in enumerate(pages, 1):
        if page.views:
            plain = re.sub(r"[^0-9A-Za-z]+", "-", page.title).strip("-").lower()
            yield f"{number:02d}-{plain[:LONGEST]}".rstrip("-"), page
