"""The steps on paper: all of them in order, every word of them, a picture where something is put up."""

from __future__ import annotations

import io
import re
from dataclasses import replace
from itertools import takewhile

import pdfplumber
import pytest
from PIL import Image as Bitmap
from ribwright.drawing.pdf import pdf
from ribwright.drawing.pens import STYLES
from ribwright.drawing.values import Image
from ribwright.errors import FileError
from ribwright.papers.frame import framed, room_of
from ribwright.papers.job import job_of
from ribwright.papers.step_pages import APART, HIGH, step_pages
from ribwright.pieces import Model
from ribwright.show.step_pictures import step_pictures
from ribwright.steps import Step, steps
from ribwright.steps.step_text import said
from support.drawn import starter_pages, starter_read
from support.read_pdf import Read, read_pdf
from support.starter_buildings import starter_model
from support.store import store


@pytest.mark.parametrize("name", ["carport", "wainscot"])
def test_every_step_is_told_in_its_order(name: str) -> None:
    """Word by word, as the lists of steps tell it."""
    pages = [
        read
        for page, read in zip(starter_pages(name), starter_read(name), strict=True)
        if page.title.startswith("step")
    ]
    told = " ".join(text.text for page in pages for text in page.texts).split()
    at = 0
    for number, step in enumerate(steps(job_of(starter_model(name)).model), 1):
        words = [f"{number}.", *step.name.split()]
        words += [word for _, text in said(step, job_of(starter_model(name)).units) for word in text.split()]
        for word in words:
            assert word in told[at:], (number, word)
            at = told.index(word, at) + 1


def test_pictures_stand_by_the_steps_that_put_something_up(missing: object) -> None:
    """As many in the PDF as there are such steps, inside the frame and beside their text."""
    one = job_of(store(), pictured=step_pictures)
    try:
        pages = framed(one, list(step_pages(one)))
    except FileError as error:
        missing(str(error))  # type: ignore[operator] # a function; fixtures carry no types
        raise
    with pdfplumber.open(io.BytesIO(pdf(pages, "steps"))) as read:
        images = [(page, image) for page in read.pages for image in page.images]
        assert len(images) == sum(any(not piece.row for piece in step.pieces) for step in steps(one.model))
        for page, image in images:
            margin = one.paper.margin * 72 / 25.4
            assert margin < image["x0"] < image["x1"] < page.width - margin
            assert margin < image["top"] < image["bottom"] < page.height - margin
            assert not any(
                word["x0"] < image["x1"] and image["top"] < word["bottom"] and word["top"] < image["bottom"]
                for word in page.extract_words()
            )


def blank_pictures(model: Model, raising: tuple[Step, ...]) -> list[bytes]:
    """A small grey picture for each step that has one."""
    file = io.BytesIO()
    Bitmap.new("L", (8, 6), 128).save(file, "JPEG")
    return [file.getvalue() if any(not piece.row for piece in step.pieces) else b"" for step in raising]


def rows_under(image: Image, read: Read) -> int:
    """Rows of text that go on below a picture, from its left edge, down to the next step."""
    (left, low), row = image.at, STYLES["ft-in"].row
    bases = {round(one.start[1], 2): one for one in read.texts if left - 1 < one.start[0] < left + 30}
    below = [(base, bases[base]) for base in sorted(bases, reverse=True) if base < low]
    places = [low - row * (n + 1.5) for n in range(len(below))]
    rows = takewhile(
        lambda one: abs(one[0][0] - one[1]) < row / 2 and not re.match(r"\d+\. ", one[0][1].text),
        zip(below, places, strict=True),
    )
    return len(list(rows))


@pytest.mark.parametrize("name", ["carport", "wainscot"])
def test_no_last_line_stands_alone_under_a_picture(name: str) -> None:
    """What goes on under a picture has three rows or more; less than that stands beside it."""
    one = job_of(starter_model(name), pictured=blank_pictures)
    pages = framed(one, list(step_pages(one)))
    found = [
        rows_under(image, read)
        for page, read in zip(pages, read_pdf(pdf(pages, name)), strict=True)
        for image in page.shapes
        if isinstance(image, Image)
    ]
    assert {1, 2}.isdisjoint(found)
    assert max(found) > 2


def test_three_pictures_go_on_a_page() -> None:
    """Room that is kept between steps is not asked for under the last."""
    one = job_of(starter_model("workshop"), pictured=blank_pictures)
    room = 3 * HIGH + 2 * APART
    paper = replace(one.paper, height=one.paper.height - room_of(one).height + room)
    pages = list(step_pages(replace(one, paper=paper)))
    assert max(sum(isinstance(shape, Image) for shape in page.shapes) for page in pages) == 3
