"""The customer's page in a browser, for anyone: by keys, in words, on a phone or paper, without graphics."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from support.browser import Watched, axe, serious
from support.pages import front_sheet, middle
from support.planted import shed
from support.sample_building import sample_schedule

pytestmark = [pytest.mark.broad, pytest.mark.usefixtures("nothing_wrong")]


def test_the_five_answers_are_read_out(opened: Watched) -> None:
    """As someone hears them who does not see the picture."""
    said = opened.page.locator("#glance").aria_snapshot()
    assert re.search(r'row "Front 10 14\' 8-13/16\\?" gainsboro 9 of 2.000 in, right sheet on top"', said)
    assert "Nothing is wrong" in said
    assert "Geometry, not engineering" in opened.page.locator("header").aria_snapshot()


def test_the_keyboard_is_enough(opened: Watched) -> None:
    """From the picture's own keys to a row of the lists, without a mouse."""
    page = opened.page
    page.locator("#canvas").focus()
    eye = opened.does("return app.eye")
    for key, what in (("ArrowLeft", "turn"), ("ArrowUp", "rise"), ("+", "away")):
        page.keyboard.press(key)
        turned = opened.does("return app.eye")
        assert turned[what] != eye[what]
        eye = turned
    page.keyboard.press("Shift+ArrowRight")
    assert opened.does("return app.eye.target") != eye["target"]
    for number in "1234567":
        page.keyboard.press(number)
    assert opened.does("return app.eye.wide") is True
    page.keyboard.press("1")
    page.keyboard.press("Enter")
    assert opened.does("return app.lit.size") > 0
    page.keyboard.press("Escape")
    assert opened.does("return app.lit.size") == 0
    opened.does("for (const one of document.querySelectorAll('#lists, .list')) one.open = true;")
    page.get_by_role("searchbox").focus()
    page.keyboard.type("R1")
    reached = ""
    for _ in range(40):
        page.keyboard.press("Tab")
        reached = page.evaluate("document.activeElement.textContent")
        if reached == "R1":
            break
    assert reached == "R1"
    page.keyboard.press("Enter")
    assert opened.does("return app.lit.size") == 26
    page.get_by_role("searchbox").fill("")


def test_nobody_is_left_out(opened: Watched, missing: Callable[[str], None]) -> None:
    """No serious violation that axe-core knows, in either light, with everything open."""
    text = axe()
    if not text:
        missing("axe-core of npm on NODE_PATH")
    opened.does("for (const one of document.querySelectorAll('details')) one.open = true; app.light('W1');")
    assert serious(opened, text) == []
    opened.page.get_by_role("button", name="Dark").click()
    assert serious(opened, text) == []
    opened.page.get_by_role("button", name="Dark").click()


def test_on_a_phone(chromium: Any, path: Path) -> None:
    """Nothing is wider than the screen, and a finger picks."""
    phone = Watched(
        chromium,
        path,
        viewport={"width": 390, "height": 844},
        has_touch=True,
        is_mobile=True,
        device_scale_factor=2,
    ).drawn()
    assert phone.does("return document.scrollingElement.scrollWidth") <= 390
    box = phone.page.locator("#canvas").bounding_box()
    assert box["width"] == 390
    assert 300 < box["height"] < 700
    heights = [one.bounding_box()["height"] for one in phone.page.locator(".part > summary").all()]
    assert min(heights) > 38  # a finger's breadth
    ways = [one.bounding_box() for one in phone.page.locator("#views button").all()]
    assert all(way["x"] >= 0 and way["x"] + way["width"] <= 390 for way in ways)
    phone.does("document.getElementById('steps').open = true; document.getElementById('step').focus()")
    slider, stage = (phone.page.locator(one).bounding_box() for one in ("#step", "#stage"))
    assert stage["y"] >= 0  # what it does is seen
    assert stage["y"] + stage["height"] <= slider["y"] < 844 - slider["height"]
    assert slider["height"] > 38
    phone.page.evaluate("scrollTo(0, 0)")
    phone.page.touchscreen.tap(*phone.spot(middle(front_sheet())))
    assert phone.page.locator("#card h2").inner_text().startswith("W")
    assert phone.said == []
    phone.context.close()


def test_in_a_notebook(chromium: Any, tmp_path: Path) -> None:
    """It draws in its frame, and what is around it stays out of its reach."""
    path = tmp_path / "notebook.html"
    path.write_text(f"<!doctype html><title>x</title>{shed()._repr_html_()}", encoding="utf-8")
    notebook = Watched(chromium, path)
    frame = notebook.page.frame_locator("iframe")
    frame.locator("body.lively[data-drawn]").wait_for()
    assert frame.locator("h1").inner_text() == "shed"
    inner = notebook.page.frames[1]
    assert (
        inner.evaluate(
            "(() => { try { return parent.document.title } catch (error) { return error.name } })()"
        )
        == "SecurityError"
    )
    assert notebook.said == []
    notebook.context.close()


def readable(watched: Watched) -> None:
    """What stands without a picture: caution, sizes, lists with every column, findings."""
    assert watched.page.locator("#no-picture").is_visible()
    assert watched.page.get_by_role("button", name="Corner").count() == 0  # nothing that does nothing
    assert not watched.page.locator("#canvas").is_visible()
    said = watched.page.locator("body").inner_text()
    assert all(
        words in said
        for words in ("Geometry, not engineering", "Steel 30' wide, 40' long", "Nothing is wrong")
    )
    shapes = watched.page.locator("#elevations svg")
    assert shapes.count() == 6
    marks = [one.mark for one in sample_schedule().placed if one.face == "front"]
    assert sorted(
        shapes.and_(watched.page.get_by_label("Front, from outside")).locator("text").all_text_contents()
    ) == sorted(marks)
    watched.page.locator("#lists > summary").click()
    watched.page.locator("details.list > summary").first.click()
    assert watched.page.get_by_role("cell", name="13 head up, 13 turned").is_visible()


def test_while_a_picture_is_coming_nobody_is_told_that_there_is_none(chromium: Any, path: Path) -> None:
    never = "class { constructor() { return new TransformStream({ flush: () => new Promise(() => {}) }); } }"
    coming = Watched(chromium, path)
    coming.page.add_init_script(f"globalThis.DecompressionStream = {never};")
    coming.page.reload()
    coming.page.wait_for_selector("body.lively")
    assert coming.page.locator("#glance .verdict").is_visible()
    assert not coming.page.locator("#no-picture").is_visible()
    assert coming.page.evaluate("document.body.dataset.drawn") is None
    coming.context.close()


def test_without_script(chromium: Any, path: Path) -> None:
    plain = Watched(chromium, path, java_script_enabled=False)
    readable(plain)
    plain.context.close()


def test_without_graphics_and_when_they_are_lost(chromium: Any, path: Path) -> None:
    lost = Watched(chromium, path).drawn()
    lost.does("app.scene.gl.getExtension('WEBGL_lose_context').loseContext()")
    lost.page.wait_for_selector("#no-picture:visible")
    readable(lost)
    assert "lost" in lost.page.locator("#no-picture").inner_text()
    lost.page.add_init_script("HTMLCanvasElement.prototype.getContext = () => null;")
    lost.page.reload()
    lost.page.wait_for_selector("#no-picture:visible")
    readable(lost)
    assert lost.said == []
    lost.context.close()


def test_it_prints_one_page_with_its_picture(opened: Watched, tmp_path: Path) -> None:
    opened.does("globalThis.dispatchEvent(new Event('beforeprint'))")
    opened.page.wait_for_function("() => document.getElementById('paper').complete")
    data = opened.page.pdf(path=str(tmp_path / "page.pdf"), format="Letter")
    assert len(re.findall(rb"/Type\s*/Page\b", data)) == 1
    assert b"/Subtype /Image" in data or b"/Subtype/Image" in data
