"""The customer's page in a real browser, off a file: it draws, answers, keeps to itself."""

from __future__ import annotations

import json
import os
import re
from collections.abc import Callable, Iterator
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from ribwright.catalog.colours import colour_names, rgb
from ribwright.intake import parse
from ribwright.measure.sheet import measure_sheet
from ribwright.pieces import Piece
from ribwright.raising import raise_building
from ribwright.roles import list_of
from ribwright.show.page.paints import paints
from ribwright.show.page.text import capital
from ribwright.solids.placed import placed_triangles
from ribwright.steps import steps
from ribwright.units import format_length
from support.browser import Watched, axe, browser, serious
from support.colour_difference import difference, lab
from support.pages import ATTACKS, attacked, faulty, page_of, sample_page
from support.planted import shed
from support.sample_building import sample_model, sample_schedule

MOST_CALLS, TRUE = 60, 6.0


@pytest.fixture(scope="module")
def chromium(missing: Callable[[str], None]) -> Iterator[Any]:
    with browser(missing) as started:
        yield started


@pytest.fixture(scope="module")
def path(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("page") / "show.html"
    path.write_text(sample_page(), encoding="utf-8")
    return path


@pytest.fixture(scope="module")
def opened(chromium: Any, path: Path) -> Iterator[Watched]:
    watched = Watched(chromium, path, reduced_motion="reduce")
    yield watched.drawn()
    watched.context.close()


@pytest.fixture(autouse=True)
def nothing_wrong(opened: Watched) -> Iterator[None]:
    """Begins as the page opens; at the end nothing was complained of, and nothing but the file asked for."""
    opened.does("app.hidden.clear(); app.clear = app.laps = app.taping = false; app.light(''); app.view(0);")
    yield
    assert opened.said == []
    assert len(opened.asked) == 1


def front_sheet() -> Piece:
    """A sheet of the front without a cut for a door: the last to the right."""
    sheets = [
        piece
        for piece in sample_model().pieces
        if piece.role == "wall sheet" and piece.label("face") == "front"
    ]
    return max(sheets, key=lambda piece: middle(piece)[0])


def middle(piece: Piece) -> tuple[float, float, float]:
    points = next(placed_triangles([piece]))[0]
    x, y, z = ((points.min(axis=0) + points.max(axis=0)) / 2).tolist()
    return x, y, z


def test_the_five_answers_are_read_out(opened: Watched) -> None:
    """As someone hears them who does not see the picture."""
    said = opened.page.locator("#glance").aria_snapshot()
    assert re.search(r'row "Front 10 14\' 8-13/16\\?" gainsboro 9 of 2.000 in, right sheet on top"', said)
    assert "Nothing is wrong" in said
    assert "Geometry, not engineering" in opened.page.locator("header").aria_snapshot()


def test_it_draws_in_few_calls(opened: Watched) -> None:
    opened.does("app.clear = true; app.laps = true; app.dress(); app.drawn();")
    assert 5 < opened.does("return app.scene.calls") <= MOST_CALLS
    opened.does("app.clear = false; app.laps = false; app.dress();")


def test_a_click_on_a_sheet_shows_its_row(opened: Watched) -> None:
    """Its mark, with the figures of the list; all of its mark are lit, and no other piece."""
    piece = front_sheet()
    opened.page.get_by_role("button", name="Front", exact=True).click()
    opened.page.mouse.click(*opened.spot(middle(piece)))
    card = opened.page.locator("#card")
    row = next(row for row in sample_schedule().rows if row.mark == piece.mark)
    assert card.locator("h2").inner_text() == f"{piece.mark}: {piece.name}"
    said = card.locator("dl").inner_text()
    assert format_length(measure_sheet(piece.solid).length, "ft-in") in said
    assert "gainsboro" in said
    assert opened.page.locator("tr.lit").get_attribute("data-mark") == piece.mark
    lit = opened.does("return [...app.lit].map((k) => app.all.pieces[k].name)")
    assert lit == [one.name for one in sample_model().pieces if one.mark == piece.mark]
    assert len(lit) == row.count
    opened.page.get_by_role("button", name="Let go").click()
    assert not card.is_visible()
    assert opened.does("return app.lit.size") == 0


def test_a_row_lights_its_pieces(opened: Watched) -> None:
    before = opened.picture()
    opened.page.locator("#lists > summary").click()
    members = opened.page.locator("details.list", has_text="Members")
    members.locator("summary").click()
    members.get_by_role("button", name="C1", exact=True).click()
    columns = [piece.name for piece in sample_model().pieces if piece.mark == "C1"]
    assert opened.does("return [...app.lit].map((k) => app.all.pieces[k].name)") == columns
    assert members.get_by_role("button", name="C1", exact=True).get_attribute("aria-pressed") == "true"
    opened.page.keyboard.press("Escape")
    opened.does("app.light('')")
    assert opened.picture() == before


def test_lists_sort_and_search(opened: Watched) -> None:
    opened.does("for (const one of document.querySelectorAll('#lists, .list')) one.open = true;")
    sheets = opened.page.locator("details.list").first
    lengths = {row.mark: row.length for row in sample_schedule().rows}
    for _, turn in (("once", 1), ("again", -1)):
        sheets.get_by_role("button", name="Length", exact=True).click()
        marks = sheets.locator("tbody th").all_inner_texts()
        sizes = [turn * lengths[mark] for mark in marks]
        assert all(one <= other + 0.8 for one, other in pairwise(sizes))  # 1/32 in
    search = opened.page.get_by_role("searchbox")
    search.fill("ridge cap")
    shown = opened.page.locator("#lists tbody tr:not([hidden])")
    wanted = [item.mark for item in sample_schedule().items if item.role == "ridge cap"]
    assert sorted(shown.locator("th").all_inner_texts()) == sorted(wanted)
    search.fill("")
    assert shown.count() == len(sample_schedule().rows) + len(sample_schedule().items)


def test_groups_are_counted_and_taken_away(opened: Watched) -> None:
    opened.does("document.getElementById('show').open = true")
    boxes = opened.page.locator("#groups label")
    said = dict(re.fullmatch(r"\s*(.*?)\s*([\d,]+)\s*", text).groups() for text in boxes.all_inner_texts())  # type: ignore[union-attr, misc]
    screws = sum(piece.count for piece in sample_model().pieces if list_of(piece.role) == "screws")
    assert said["Screws"] == f"{screws:,}"
    assert sum(int(count.replace(",", "")) for count in said.values()) == sum(
        piece.count for piece in sample_model().pieces
    )
    seen = opened.picture()
    for name in ("Roof sheets", "Wall sheets", "Trims"):
        opened.page.get_by_role("checkbox", name=re.compile(f"^ ?{name}")).uncheck()
        fewer = opened.picture()
        assert fewer != seen
        seen = fewer
    hidden = opened.does(
        "return app.all.pieces.filter((one) => !app.stands(one.number)).map((one) => one.role)"
    )
    assert set(hidden) >= {"wall sheet", "roof sheet", "ridge cap"}
    for name in ("Roof sheets", "Wall sheets", "Trims"):
        opened.page.get_by_role("checkbox", name=re.compile(f"^ ?{name}")).check()


@pytest.mark.parametrize(
    "name", ["See through sheets and trims", "Lines at ribs and edges", "A person of 1.75 m"]
)
def test_each_tick_changes_the_picture_and_back(name: str, opened: Watched) -> None:
    opened.does("document.getElementById('show').open = true")
    box, before = opened.page.get_by_role("checkbox", name=name), opened.picture()
    box.click()
    assert opened.picture() != before
    box.click()
    assert opened.picture() == before


def test_the_tape_measures_between_corners(opened: Watched) -> None:
    """Across the slab's front edge, in the building's units."""
    slab = next(piece for piece in sample_model().pieces if piece.role == "slab")
    points = next(placed_triangles([slab]))[0]
    (x0, y0, _), (x1, *_) = points.min(axis=0).tolist(), points.max(axis=0).tolist()
    opened.does("app.hidden = new Set(app.all.groups.keys()); app.hidden.delete(0); app.dress();")
    opened.page.get_by_role("button", name="Top").click()
    opened.does("document.getElementById('taped').open = true")
    opened.page.get_by_role("button", name="Tape between two corners").click()
    for x in (x0 + 150, x1 - 150):
        opened.page.mouse.click(*opened.spot((x, y0 + 150, 0)))
    assert opened.page.locator("#tape-said").inner_text() == format_length(x1 - x0, "ft-in")
    assert opened.page.locator(".label.tape").inner_text() == format_length(x1 - x0, "ft-in")
    opened.page.get_by_role("button", name="Tape between two corners").click()
    opened.does("app.hidden.clear(); app.dress();")


def test_what_is_cut_away_is_neither_seen_nor_picked(opened: Watched) -> None:
    opened.does("document.getElementById('cut').open = true")
    opened.page.get_by_role("button", name="Front", exact=True).click()
    spot, before = opened.spot(middle(front_sheet())), opened.picture()
    opened.page.get_by_label("Cut", exact=True).select_option("along the length")
    assert opened.picture() != before
    half = opened.page.locator("#cut-said").inner_text()
    assert half.startswith("20'")
    opened.page.mouse.click(*spot)
    picked = opened.does("return [...app.lit].map((k) => app.all.pieces[k])")
    assert not any(piece["role"] == "wall sheet" and "front" in piece["name"] for piece in picked)
    opened.page.get_by_label("Cut", exact=True).select_option("not at all")
    opened.does("app.light('')")
    assert opened.picture() == before


def test_it_goes_up_step_by_step(opened: Watched) -> None:
    """What stands at a step is what came until then; what came in it is lit, and what to mind is said."""
    opened.does("document.getElementById('steps').open = true")
    whole, order = opened.picture(), steps(sample_model())
    slider, said = opened.page.locator("#step"), opened.page.locator("#step-said")
    assert said.inner_text() == "all of it"
    slider.focus()
    opened.page.keyboard.press("Home")
    for number, step in enumerate(order[:4], 1):
        assert said.inner_text() == f"{number} of {len(order)}: {capital(step.name)}"
        come = {piece.name for one in order[:number] for piece in one.pieces}
        names = opened.does(
            "return app.all.pieces.filter((one) => app.stands(one.number)).map((one) => one.name)"
        )
        assert set(names) == come
        lit = opened.does("return [...app.lit].map((k) => app.all.pieces[k].name)")
        assert set(lit) == {piece.name for piece in step.pieces}
        text = opened.page.locator("#steps li.now").inner_text()
        assert all(caution.text in text for caution in step.cautions)
        opened.page.keyboard.press("ArrowRight")
    assert opened.picture() != whole
    opened.page.keyboard.press("End")
    assert opened.picture() == whole


def test_laps_stand_with_their_measured_widths(opened: Watched) -> None:
    opened.does("document.getElementById('laps').open = true")
    before = opened.picture()
    opened.page.get_by_role("checkbox", name="Show every lap").check()
    assert opened.picture() != before
    words = opened.page.locator(".label.size").all_text_contents()
    assert set(words) == {"2.000 in", "overhang 2.000 in", "head under trim 4.495 in"}
    opened.page.get_by_role("checkbox", name="Show every lap").uncheck()
    assert opened.page.locator(".label.size").count() == 0


def test_tried_colours_are_lines_for_the_description(opened: Watched) -> None:
    opened.does("document.getElementById('colours').open = true")
    before = opened.picture()
    opened.page.get_by_label("Roof, slategray").fill("#7a2e2a")
    assert opened.picture() != before
    small = 'width = "10 ft"\nlength = "12 ft"\neave_height = "8 ft"\npitch = "4/12"\n'
    text = small + opened.page.locator("#toml").inner_text()
    built = paints(raise_building(parse(text, "tried")).model.pieces)
    assert [(one.part, one.colour) for one in built] == [
        ("walls", "gainsboro"),
        ("roof", "#7a2e2a"),
        ("trims", "slategray"),
    ]
    opened.page.get_by_role("button", name="As it was").click()
    assert opened.picture() == before


def test_colours_are_true(opened: Watched) -> None:
    """The median of a sunlit wall is the colour it has: for every sixth colour, for all when asked long."""
    names = colour_names() if os.environ.get("LONG") else (*colour_names()[::6], "black", "white", "navy")
    low, high = opened.spot((-20.0, 3000.0, 300.0)), opened.spot((-20.0, 500.0, 2300.0))
    box = opened.page.locator("#canvas").bounding_box()
    left, top = low[0] - box["x"], high[1] - box["y"]
    size = [high[0] - low[0], low[1] - high[1]]
    assert min(size) > 40
    hexes = ["#{:02x}{:02x}{:02x}".format(*rgb(name)) for name in names]
    found = opened.does(
        f"const gl = app.scene.gl, all = {json.dumps(hexes)}, [w, h] = {size}.map(Math.floor);"
        f"const x = {left:.0f}, y = app.canvas.height - {top:.0f} - h; const px = new Uint8Array(4 * w * h);"
        "const usual = app.tried; const found = all.map((hex) => {"
        "app.tried = usual.map(() => hex); app.dress(); app.drawn();"
        "gl.readPixels(x, y, w, h, gl.RGBA, gl.UNSIGNED_BYTE, px);"
        "return [0, 1, 2].map((c) => px.filter((_, k) => k % 4 === c).sort()[w * h >> 1]); });"
        "app.tried = usual; app.dress(); return found;"
    )
    off = {
        name: difference(lab(tuple(seen)), lab(rgb(name))) for name, seen in zip(names, found, strict=True)
    }
    assert max(off.values()) < TRUE, max(off, key=lambda name: off[name])


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
    phone.page.touchscreen.tap(*phone.spot(middle(front_sheet())))
    assert phone.page.locator("#card h2").inner_text().startswith("W")
    assert phone.said == []
    phone.context.close()


def test_a_named_view_stays_whole_when_the_window_changes(chromium: Any, path: Path) -> None:
    shown = Watched(chromium, path).drawn()
    for width, height in ((1400, 500), (820, 900)):
        shown.page.set_viewport_size({"width": width, "height": height})
        shown.page.wait_for_function(
            "() => document.getElementById('canvas').width === document.getElementById('canvas').clientWidth"
        )
        box = shown.page.locator("#canvas").bounding_box()
        for x in (0.0, 9144.0):
            seen, _ = shown.spot((x, 0.0, 0.0))
            assert box["x"] < seen < box["x"] + box["width"]
    shown.context.close()


def test_a_building_whose_every_name_is_an_attack(chromium: Any, tmp_path: Path) -> None:
    path = tmp_path / "show.html"
    path.write_text(page_of(attacked(shed())), encoding="utf-8")
    hostile = Watched(chromium, path).drawn()
    hostile.does(
        "for (const one of app.all.marks) app.light(one); for (const one of app.all.findings) one.at;"
    )
    hostile.does("app.laps = true; app.relabel();")
    hostile.does("for (const one of document.querySelectorAll('details')) one.open = true;")
    for button in hostile.page.locator("#found button").all()[:5]:
        button.click()
    hostile.page.locator("#lists tbody button").first.click()
    assert ATTACKS[0] in hostile.page.locator("h1").inner_text()
    assert hostile.page.evaluate("document.body.dataset.owned") is None
    assert hostile.page.locator("script").count() == 2
    assert hostile.page.locator("img").count() == 1
    assert (hostile.said, len(hostile.asked)) == ([], 1)
    hostile.context.close()


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


def test_a_finding_is_gone_to_and_its_pin_says_it(chromium: Any, tmp_path: Path) -> None:
    path = tmp_path / "show.html"
    path.write_text(page_of(faulty()), encoding="utf-8")
    shown = Watched(chromium, path, reduced_motion="reduce").drawn()
    shown.does("document.getElementById('found').open = true")
    first = shown.page.locator("#found button").first
    assert "[clash]" in first.inner_text()
    first.click()
    finding = shown.does("return app.all.findings[0]")
    assert shown.does("return app.eye.target") == finding["at"]
    assert shown.does("return [...app.lit]") == finding["pieces"]
    height = "app.eye.target[2] + app.eye.away * Math.sin(app.eye.rise) - app.level"
    assert shown.does(f"return {height}") > 0
    shown.page.locator(".label.pin:visible").first.click(force=True)
    assert "[" in shown.page.evaluate("document.activeElement.textContent")
    assert shown.said == []
    shown.context.close()


def readable(watched: Watched) -> None:
    """What stands without a picture: caution, sizes, lists with every column, findings."""
    assert watched.page.locator("#no-picture").is_visible()
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
