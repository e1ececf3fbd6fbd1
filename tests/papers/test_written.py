"""The files of papers: whole, the same from the model's STEP file, and what the command says."""

from __future__ import annotations

from pathlib import Path

import pytest
import shapely
from ribwright import read_step, write_step
from ribwright.cli.main import run
from ribwright.drawing.dxf import dxf
from ribwright.drawing.ink import words_on
from ribwright.drawing.pdf import pdf
from ribwright.drawing.svg import svg
from ribwright.heading import is_braced, short
from ribwright.intake import starters
from ribwright.papers.frame import framed
from ribwright.papers.index import index
from ribwright.papers.job import job_of
from ribwright.papers.pages import papers
from support.drawn import starter_pages, starter_read
from support.read_pdf import read_pdf
from support.starter_buildings import starter_model


@pytest.mark.parametrize("name", ["garage", "machine-shed"])
def test_papers_of_the_step_file_are_those_of_the_description(name: str, tmp_path: Path) -> None:
    """Byte for byte; of details, whose cuts through bends follow the mesh of each body, every word."""
    write_step(starter_model(name), tmp_path / "model.step")
    pages, own = papers(read_step(tmp_path / "model.step")), starter_pages(name)
    assert [page.title for page in pages] == [page.title for page in own]
    cuts = [page.title.startswith("detail") for page in own]
    assert cuts.count(True) > 1
    for read, one, cut in zip(pages, own, cuts, strict=True):
        if cut:
            assert list(words_on(read)) == list(words_on(one))
        else:
            assert svg(read) == svg(one)
    whole, other = ([page for page, cut in zip(all_, cuts, strict=True) if not cut] for all_ in (pages, own))
    assert pdf(whole, name) == pdf(other, name)
    assert dxf(whole[-1]) == dxf(other[-1])


@pytest.mark.parametrize("name", starters())
def test_every_page_says_what_it_is_and_is_not(name: str) -> None:
    pages = starter_read(name)
    braced = is_braced({piece.role for piece in starter_model(name).pieces})
    for number, page in enumerate(pages, 1):
        assert len(page.found(short(braced=braced))) == 1
        assert len(page.found(f"page {number} of {len(pages)}")) == 1
        assert page.found(starter_model(name).name)
    titles = [page.title for page in starter_pages(name)]
    first = sum(title.startswith("index") for title in titles)
    index = " ".join(one.text for page in pages[:first] for one in page.texts)
    assert all(title in index for title in titles[first:])


def test_the_command_writes_a_pdf_and_drawings(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    assert run(["new", "shed", "--like", "carport"]) == 0
    assert run(["papers", "shed.toml", "--paper", "a4"]) == 0
    said = capsys.readouterr()
    folder = tmp_path / "out" / "shed" / "papers"
    names = {path.name for path in folder.iterdir()}
    drawings = {name for name in names if name.endswith(".svg")}
    assert names == {"papers.pdf"} | drawings | {name.replace(".svg", ".dxf") for name in drawings}
    assert f"{len(drawings)} drawings to" in said.out
    assert said.err == ""
    assert b"/MediaBox [ 0 0 841.88" in (folder / "papers.pdf").read_bytes()


def test_a_letter_that_the_font_lacks_is_said(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    assert run(["new", "shed", "--like", "carport"]) == 0
    path = tmp_path / "shed.toml"
    text = path.read_text(encoding="utf-8").replace('name = "shed"', 'name = "shed \u4e2d"')
    path.write_text(text, encoding="utf-8")
    assert run(["papers", "shed.toml", "--out", "papers"]) == 0
    assert "the papers' font has no \u4e2d" in capsys.readouterr().err


def test_nothing_is_left_where_papers_cannot_be_written(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    target = tmp_path / "papers"
    target.write_text("in the way", encoding="utf-8")
    assert run(["papers", "--out", str(target)]) == 2
    assert target.read_text(encoding="utf-8") == "in the way"
    assert [path.name for path in tmp_path.iterdir()] == ["papers"]
    assert "papers" in capsys.readouterr().err


def test_an_index_of_many_pages_goes_on_on_the_next() -> None:
    one = job_of(starter_model("carport"))
    titles = [f"page about number {number}" for number in range(250)]
    pages = framed(one, list(index(one, titles)))
    read = read_pdf(pdf(pages, "index"))
    assert [page.title for page in pages] == ["index", "index, more", "index, more"]
    said = [text.text for page in read for text in page.texts]
    assert [text for text in said if text.startswith("page about")] == titles
    for page in read:
        frame = shapely.box(10.0, 10.0, page.size[0] - 10.0, page.size[1] - 10.0)
        assert all(frame.contains(text.ink) for text in page.texts)
