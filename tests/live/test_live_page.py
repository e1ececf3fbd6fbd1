"""The live page in a real browser: what an editor saves is seen, and nothing that a person set is lost."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest
from ribwright.audit import audit
from ribwright.intake import parse
from ribwright.order.lists.schedule import schedule
from ribwright.order.written.csv import csv_text
from ribwright.outputs import USUAL
from ribwright.raising import raise_building
from ribwright.units import format_length
from support.browser import Watched
from support.live import live
from support.live_page import TEXT, Address, Shown, glance, named
from support.pages import ATTACKS


@pytest.mark.parametrize("how", ["write", "replace"])
def test_a_save_turns_the_page_and_leaves_what_was_set(how: str, shown: Shown) -> None:
    """Eye, groups, see-through, the piece that was picked: as they were; all that is read is new."""
    shown.does(
        "const piece = app.all.pieces.find(({name}) => name === 'front 2');"
        "app.hidden.add(4); app.clear = true; app.light(app.all.marks[piece.mark], piece.number);"
        "app.steer('turn', 0.4, 0.1);"
    )
    eye = shown.does("return app.eye")
    text = named(how, TEXT.replace('"11 ft"', '"12 ft 4 in"'))
    getattr(shown.served, how)(text)
    shown.has("name", how)
    model = raise_building(parse(text, how)).model
    assert shown.does("return app.all.pieces.map(({name}) => name)") == [one.name for one in model.pieces]
    assert shown.does("return [app.eye, [...app.hidden], app.clear]") == [eye, [4], True]
    (picked,) = (piece for piece in model.pieces if piece.name == "front 2")
    assert shown.page.locator("#card h2").inner_text() == f"{picked.mark}: front 2"
    (row,) = (row for row in schedule(model).rows if row.mark == picked.mark)
    assert format_length(row.length, "ft-in") in shown.page.locator("#card dl").inner_text()
    lit = shown.does("return [...app.lit].map((k) => app.all.pieces[k].name)")
    assert lit == [one.name for one in model.pieces if one.mark == picked.mark]
    assert shown.page.title() == shown.page.locator("h1").inner_text() == how
    assert "my-shop.toml, as it was saved last." in shown.page.locator("#desk").inner_text()


def test_what_it_draws_is_the_new_building(shown: Shown) -> None:
    """The pixels of a page that turned are those of one that was opened at the same text."""
    text = named("wide", TEXT.replace('"30 ft"', '"36 ft"'))
    shown.served.write(text)
    shown.has("name", "wide")
    shown.does("app.view(0)")
    turned = shown.watched.picture()
    shown.page.reload()
    shown.watched.asked.pop()
    shown.page.wait_for_selector("#glanced .verdict")
    shown.has("name", "wide")
    assert shown.watched.drawn().picture() == turned


def test_only_bodies_that_changed_are_sent(shown: Shown) -> None:
    """Of another colour none, of another size those that are of another size."""
    shown.served.write(named("tan", TEXT.replace("gainsboro", "tan")))
    shown.has("name", "tan")
    assert shown.last("seen")["geometry"] is None
    assert shown.does("return app.all.paints[0].name") == "tan"
    shown.served.write(named("tall", TEXT.replace('"11 ft"', '"12 ft"').replace("gainsboro", "tan")))
    shown.has("name", "tall")
    made = shown.last("seen")["geometry"]
    assert 0 < len(made["fresh"]) == len(made["meshes"]) < len(made["keys"])


def test_what_is_wrong_stands_beside_its_line_over_the_last_that_could_be_built(shown: Shown) -> None:
    shown.served.write(named("good"))
    shown.has("name", "good")
    before = shown.watched.picture()
    shown.served.write(named("bad", TEXT.replace('"30 ft"', '"30 parsecs"').replace("gainsboro", "gainsbro")))
    shown.page.wait_for_selector("#problems li")
    first, second = shown.page.locator("#problems li").all_inner_texts()
    assert first.split("\n")[:2] == ["Line 6, width", 'width = "30 parsecs"']
    assert 'Read "30 parsecs"; a length such as 30\'' in first
    assert second.startswith("Line 14, sheets.wall_colour")
    assert "did you mean" in second.lower() or "gainsboro" in second.split("\n")[-1]
    assert "cannot be built as it stands" in shown.page.locator("#desk-said").inner_text()
    assert shown.watched.picture() == before
    assert shown.does("return app.all.name") == "good"
    shown.served.replace(named("mended"))
    shown.has("name", "mended")
    shown.page.wait_for_selector("#problems", state="hidden")


def test_a_file_that_went_is_said_and_comes_back(shown: Shown) -> None:
    shown.served.file.unlink()
    shown.page.wait_for_selector("#problems li")
    assert "no such file" in shown.page.locator("#problems").inner_text()
    shown.served.write(named("again"))
    shown.has("name", "again")
    shown.page.wait_for_selector("#problems", state="hidden")


def test_the_newest_of_many_saves_is_shown(shown: Shown) -> None:
    for eave in ("12 ft", "12 ft 6 in", "13 ft", "13 ft 6 in"):
        shown.served.write(named(eave, TEXT.replace('"11 ft"', f'"{eave}"')))
        shown.page.wait_for_timeout(120)
    shown.has("name", "13 ft 6 in")
    names = [message["seen"]["name"] for message in shown.messages if "seen" in message]
    assert names[-1] == "13 ft 6 in"
    assert len([name for name in names if name.startswith("1")]) < 4


def test_faults_are_pinned_and_listed_after_the_picture(shown: Shown) -> None:
    text = named("shallow", TEXT.replace('"3/12"', '"2/12"'))
    shown.served.write(text)
    shown.has("name", "shallow")
    raised = raise_building(parse(text, "shallow"))
    found = [*raised.findings, *audit(raised.model).findings]
    assert found
    assert shown.page.locator("#findings li").count() == len(found)
    assert shown.page.locator("#found-count").inner_text() == str(len(found))
    kinds = [next(iter(message)) for message in shown.messages if "state" not in message]
    assert kinds[-2:] == ["seen", "found"]


def test_a_description_whose_every_name_is_an_attack(shown: Shown) -> None:
    """Whatever may be typed there is shown as text, what may not is quoted as text."""
    address = "".join(ATTACKS[:2])[:100]
    text = f"address = {json.dumps(address)}\ndate = {json.dumps(ATTACKS[1])}\n{named('__proto__')}"
    text += f"[colours]\n{json.dumps('<img src=x onerror=alert`1`>')} = '#7a2e2a'\n"
    text = text.replace('"gainsboro"', json.dumps("<img src=x onerror=alert`1`>"))
    shown.served.write(text)
    shown.has("name", "__proto__")
    assert address in shown.page.locator("h1").inner_text()
    assert "<img src=x onerror=alert`1`>" in glance(shown)
    for attack in ATTACKS:
        shown.served.write(text.replace('width = "30 ft"', f"width = {json.dumps(attack)}", 1))
        shown.page.wait_for_function("() => document.querySelector('#problems li')")
        shown.page.wait_for_timeout(300)
    assert shown.page.locator("#problems li").count() == 1
    shown.served.write(f"{json.dumps(ATTACKS[1])} = {json.dumps(ATTACKS[0])}\n{text}")
    shown.page.wait_for_function("() => /onerror/.test(document.getElementById('problems').textContent)")
    assert shown.page.evaluate("document.body.dataset.owned") is None
    assert shown.page.locator("script").count() == 2
    assert shown.page.locator("img").count() == 1


def test_it_says_that_it_has_ended(chromium: Any, tmp_path: Path) -> None:
    file = tmp_path / "shop.toml"
    file.write_text(TEXT, encoding="utf-8")
    with live(file) as served:
        shown = Shown(chromium, served)
        shown.page.wait_for_selector("#glanced .verdict")
        served.process.terminate()
        assert served.process.wait(30) == 0
        shown.page.wait_for_function(
            "() => /has ended/.test(document.getElementById('desk-said').textContent)"
        )
        assert glance(shown).startswith("Nothing is wrong")
        shown.watched.context.close()


def test_an_address_without_its_token_shows_nothing(chromium: Any, opened: Shown) -> None:
    watched = Watched(chromium, Address(opened.served.address.split("#")[0]))
    watched.page.wait_for_function(
        "() => /lacks its end/.test(document.getElementById('desk-said').textContent)"
    )
    assert "workshop" not in watched.page.content()
    assert not re.search("Sheets, face", watched.page.content())
    watched.context.close()


def test_one_button_writes_what_raise_writes(chromium: Any, tmp_path: Path) -> None:
    """Into the folder that was fixed at the start, and only what can be built."""
    file = tmp_path / "my-shop.toml"
    file.write_text(named("exported"), encoding="utf-8")
    with live(file, "--out", "made") as served:
        shown = Shown(chromium, served)
        shown.has("name", "exported")
        button = shown.page.get_by_role("button", name="Export")
        assert str(tmp_path / "made") in shown.page.locator("#export-where").inner_text()
        button.click()
        shown.page.wait_for_function(
            "() => /Written to/.test(document.getElementById('exported').textContent)"
        )
        assert {path.name for path in (tmp_path / "made").iterdir()} == {output.name for output in USUAL}
        model = raise_building(parse(named("exported"), "exported")).model
        text = (tmp_path / "made" / "schedule.csv").read_text(encoding="utf-8")
        assert text == csv_text(schedule(model)).replace("\r\n", "\n")
        served.write(named("bad", TEXT.replace('"30 ft"', '"30 parsecs"')))
        shown.page.wait_for_selector("#problems li")
        assert button.is_disabled()
        assert sorted(path.name for path in tmp_path.iterdir()) == ["made", "my-shop.toml"]
        shown.watched.context.close()


def test_without_graphics_its_words_follow(chromium: Any, opened: Shown) -> None:
    """Sizes, lists and elevations of what was saved, where no picture can be drawn."""
    watched = Watched(chromium, Address("about:blank"))
    watched.context.add_init_script("HTMLCanvasElement.prototype.getContext = () => null;")
    watched.page.goto(opened.served.address)
    watched.page.wait_for_selector("#no-picture:visible")
    watched.page.wait_for_selector("#glanced .verdict")
    opened.served.write(named("unseen", TEXT.replace('"30 ft"', '"32 ft"')))
    watched.page.wait_for_function("() => document.querySelector('h1')?.textContent === 'unseen'")
    assert "Steel 32' wide" in watched.page.locator("#head").inner_text()
    shapes = watched.page.locator("#elevations svg")
    assert shapes.count() == 6
    assert shapes.first.bounding_box()["height"] > 20
    assert shapes.first.locator("path").count() > 3
    assert watched.said == []
    watched.context.close()
    opened.served.write(TEXT)
    opened.has("name", "workshop")
