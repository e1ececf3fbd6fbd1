"""The live page in a real browser: what an editor saves is seen, and nothing that a person set is lost."""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from ribwright.audit import audit
from ribwright.intake import parse, sample_text
from ribwright.order.lists.schedule import schedule
from ribwright.order.written.csv import csv_text
from ribwright.outputs import USUAL
from ribwright.raising import raise_building
from ribwright.units import format_length
from support.browser import Watched, axe, browser, serious
from support.live import Live, live
from support.pages import ATTACKS

TEXT = sample_text()
QUIET = "() => !document.body.classList.contains('waiting')"


class Address(str):
    """Where a page is, for a browser that is told by a path elsewhere."""

    __slots__ = ()

    def as_uri(self) -> str:
        return str(self)


class Shown:
    """A live page that is watched, and every message of its line."""

    def __init__(self, chromium: Any, served: Live) -> None:
        self.served = served
        self.messages: list[dict[str, Any]] = []
        self.watched = Watched(chromium, Address("about:blank"), reduced_motion="reduce")
        self.page = self.watched.page
        self.page.on("websocket", lambda line: line.on("framereceived", self._heard))
        self.watched.asked.clear()
        self.page.goto(served.address)
        self.does = self.watched.does

    def _heard(self, frame: Any) -> None:
        self.messages.append(json.loads(frame))

    def has(self, name: str, value: Any) -> None:
        """Waits until the page's building is the wanted one, with all that was found in it."""
        self.page.wait_for_function(
            f"([name, value]) => globalThis.ribwright?.all.{name} === value && ({QUIET})()",
            arg=[name, value],
        )

    def last(self, kind: str) -> dict[str, Any]:
        return next(message[kind] for message in reversed(self.messages) if kind in message)


@pytest.fixture(scope="module")
def chromium(missing: Callable[[str], None]) -> Iterator[Any]:
    with browser(missing) as started:
        yield started


@pytest.fixture(scope="module")
def opened(chromium: Any, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Shown]:
    file = tmp_path_factory.mktemp("live") / "my-shop.toml"
    file.write_text(TEXT, encoding="utf-8")
    with live(file) as served:
        shown = Shown(chromium, served)
        shown.page.wait_for_selector("#glanced .verdict")
        shown.has("name", "workshop")
        yield shown
        shown.watched.context.close()


@pytest.fixture
def shown(opened: Shown) -> Iterator[Shown]:
    """Begins and ends as the sample stands; nothing was complained of, and nothing else asked for."""
    yield opened
    opened.served.write(TEXT)
    opened.has("name", "workshop")
    opened.does("app.hidden.clear(); app.clear = false; app.light(''); app.view(0);")
    assert opened.watched.said == []
    assert opened.watched.asked == [opened.served.address.split("#")[0]]


def named(name: str, text: str = TEXT) -> str:
    """Another text for another building, known by its name."""
    return text.replace('name = "workshop"', f"name = {json.dumps(name)}")


def glance(shown: Shown) -> str:
    return str(shown.page.locator("#glanced").inner_text())


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


def card(shown: Shown, name: str) -> None:
    """Picks a piece."""
    shown.does(
        f"const piece = app.all.pieces.find(({{name}}) => name === {json.dumps(name)});"
        "app.light(app.all.marks[piece.mark], piece.number);"
    )


def test_a_key_is_changed_in_the_card_of_what_was_picked(shown: Shown) -> None:
    """With the keyboard alone: a line of the file is another, its comment stays, and the page turns to it."""
    card(shown, "left window 1 sash")
    field = shown.page.get_by_label("left window 1: sill")
    assert field.input_value() == "4 ft"
    assert shown.page.get_by_label("left window 1: kind").input_value() == "window"
    field.fill("4 ft 6 in")
    field.press("Enter")
    text = TEXT.replace('sill = "4 ft"', 'sill = "4 ft 6 in"', 1)
    shown.page.wait_for_function(
        "() => globalThis.ribwright.all.fields.some("
        "({name, typed}) => name === 'opening[3].sill' && typed === '4 ft 6 in')"
    )
    shown.page.wait_for_function(QUIET)
    assert shown.served.file.read_text(encoding="utf-8") == text
    assert shown.page.get_by_label("left window 1: sill").input_value() == "4 ft 6 in"
    assert shown.page.evaluate("document.activeElement.name") == "opening[3].sill"
    shown.page.get_by_label("left window 1: kind").select_option("framed opening")
    shown.page.wait_for_function(
        "() => globalThis.ribwright.all.pieces.every(({name}) => name !== 'left window 1 sash')"
    )
    assert 'kind = "framed opening"            # light on the bench' in shown.served.file.read_text(
        encoding="utf-8"
    )


SLIDING = """
[[opening]]
kind = "sliding door"
wall = "back"
width = "6 ft"
height = "8 ft"
from_left = "9 ft"
"""


def test_a_sliding_door_goes_the_other_way_from_the_card_of_its_leaf(shown: Shown) -> None:
    shown.served.write(named("sliding", TEXT + SLIDING))
    shown.has("name", "sliding")
    card(shown, "back sliding door 1 leaf")
    ends = (
        "return app.all.pieces.find(({name}) => name === 'back sliding door 1 rail').place.origin[0] - "
        "app.all.pieces.find(({name}) => name === 'back sliding door 1 leaf').place.origin[0]"
    )
    before = shown.does(ends)
    assert "slides right, seen from outside" in glance(shown)
    shown.page.get_by_label("back sliding door 1: slides").select_option("left")
    shown.page.wait_for_function(
        "() => document.getElementById('glanced').textContent.includes('slides left, seen from outside')"
    )
    assert "slides" in shown.page.locator("#offered").inner_text()
    assert 'slides = "left"' in shown.served.file.read_text(encoding="utf-8")
    assert abs(shown.does(ends) - before) > 1500  # the rail is on the other side


def test_what_may_not_be_is_said_in_the_card_and_leaves_the_file(shown: Shown) -> None:
    card(shown, "front 2")
    field = shown.page.get_by_label("width", exact=True)
    field.fill("30 parsecs")
    field.press("Enter")
    shown.page.wait_for_function("() => document.getElementById('offered-said').textContent")
    assert 'width: read "30 parsecs"' in shown.page.locator("#offered-said").inner_text()
    assert field.input_value() == "30 parsecs"
    assert shown.served.file.read_text(encoding="utf-8") == TEXT
    field.fill("30 ft")
    field.press("Enter")
    shown.page.wait_for_function("() => !document.getElementById('offered-said').textContent")


def test_what_is_being_typed_stays_when_the_page_turns(shown: Shown) -> None:
    card(shown, "front 2")
    field = shown.page.get_by_label("eave height", exact=True)
    field.focus()
    field.fill("12")
    shown.served.write(named("turned", TEXT.replace("gainsboro", "tan")))
    shown.has("name", "turned")
    field = shown.page.get_by_label("eave height", exact=True)
    assert field.input_value() == "12"
    assert shown.page.evaluate("document.activeElement.name") == "eave_height"
    field.press("Escape")
    assert shown.page.get_by_label("wall colour").input_value() == "tan"


def test_nobody_is_left_out(shown: Shown, missing: Callable[[str], None]) -> None:
    """With the card open and something wrong: no serious violation that axe-core knows."""
    text = axe()
    if not text:
        missing("axe-core of npm on NODE_PATH")
    card(shown, "left window 1 sash")
    shown.served.write(TEXT.replace('"30 ft"', '"30 parsecs"'))
    shown.page.wait_for_selector("#problems li")
    assert serious(shown.watched, text) == []


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
