"""What is done with the customer's page in a real browser, off a file: every control does what it says."""

from __future__ import annotations

import re
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from ribwright.intake import parse
from ribwright.measure.sheet import measure_sheet
from ribwright.raising import raise_building
from ribwright.roles import list_of
from ribwright.show.page.marked_up import capital
from ribwright.show.page.paints import paints
from ribwright.solids.placed import placed_triangles
from ribwright.steps import steps
from ribwright.units import format_length
from support.browser import Watched
from support.pages import faulty, front_sheet, middle, page_of
from support.sample_building import sample_model, sample_schedule

pytestmark = [pytest.mark.broad, pytest.mark.usefixtures("nothing_wrong")]


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


def test_from_the_opening_view_one_looks_into_what_is_cut_open(opened: Watched) -> None:
    """Of an upright cut the eye's side is taken away, of a level one what is over it; else the other."""
    for axis, side in ((0, 1), (1, 1), (2, -1)):
        for other, sign in (("false", side), ("true", -side)):
            eye = opened.does(
                f"app.slice({axis}, 0.5, {other}); const {{target: t, away, turn, rise}} = app.eye;"
                "const eye = [t[0] + away * Math.sin(turn) * Math.cos(rise),"
                "t[1] - away * Math.cos(turn) * Math.cos(rise), t[2] + away * Math.sin(rise)];"
                "return eye.reduce((sum, value, k) => sum + value * app.cut[k], app.cut[3]);"
            )
            assert eye * sign > 0, (axis, other)
    opened.does("app.slice(null, 0, false)")


def test_in_parallel_nothing_is_seen_from_under_the_ground(opened: Watched) -> None:
    """From no named view, nor from any other; the first shows the roof."""
    level = opened.page.get_by_role("button", name="Parallel")
    for name in ("Corner", "Front", "Left", "Back", "Right"):
        opened.page.get_by_role("button", name=name, exact=True).click()
        assert opened.does("return app.eye.parallel") is False
        level.click()
        assert level.get_attribute("aria-pressed") == "true"
        assert opened.does("return app.eye.parallel && app.eye.rise") >= (0.5 if name == "Corner" else 0)
        level.click()
    opened.page.get_by_role("button", name="Front", exact=True).click()
    opened.does("app.steer('turn', 0.3, 0)")
    assert opened.does("return app.eye.rise") < 0  # from the height of an eye one looks up at it
    level.click()
    assert opened.does("return app.eye.parallel && app.eye.rise") == 0
    level.click()


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


def test_sizes_of_what_is_hidden_are_not_said_over_what_is_seen(opened: Watched) -> None:
    """The ridge is behind the front gable: how far heads reach under its cap is said from above alone."""
    opened.does("app.laps = true; app.relabel(); app.view(1)")
    opened.picture()
    shown = opened.page.locator(".label.size:visible")
    assert set(shown.all_inner_texts()) == {"2.000 in"}
    opened.does("app.view(5)")
    opened.picture()
    assert any("head under trim" in text for text in shown.all_inner_texts())
    opened.does("app.laps = false; app.relabel()")


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


def test_a_finding_is_gone_to_and_its_pin_says_it(chromium: Any, tmp_path: Path) -> None:
    path = tmp_path / "show.html"
    path.write_text(page_of(faulty()), encoding="utf-8")
    shown = Watched(chromium, path, reduced_motion="reduce").drawn()
    shown.does("document.getElementById('found').open = true")
    first = shown.page.locator("#found button").first
    assert " share " in first.inner_text()
    first.click()
    finding = shown.does("return app.all.findings[0]")
    assert shown.does("return app.eye.target") == finding["at"]
    assert shown.does("return [...app.lit]") == finding["pieces"]
    height = "app.eye.target[2] + app.eye.away * Math.sin(app.eye.rise) - app.level"
    assert shown.does(f"return {height}") > 0
    shown.does("app.view(3)")  # a pin is dashed where something stands before its place
    shown.does("app.moving = false; app.drawn()")
    pins = shown.page.locator(".label.pin").evaluate_all(
        "(all) => all.map((one) => one.className.includes('behind'))"
    )
    shown.does("app.view(1)")
    shown.does("app.drawn()")
    others = shown.page.locator(".label.pin").evaluate_all(
        "(all) => all.map((one) => one.className.includes('behind'))"
    )
    assert pins != others
    shown.page.locator(".label.pin:visible").first.click(force=True)
    words = shown.does("return app.all.findings.map((one) => one.text.toLowerCase())")
    assert shown.page.evaluate("document.activeElement.textContent.trim().toLowerCase()") in words
    assert shown.said == []
    shown.context.close()
