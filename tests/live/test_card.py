"""The card of a piece on the live page, in a real browser: what is typed there goes into the file."""

from __future__ import annotations

import json
from collections.abc import Callable

from support.browser import axe, serious
from support.live_page import QUIET, TEXT, Shown, glance, named


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
