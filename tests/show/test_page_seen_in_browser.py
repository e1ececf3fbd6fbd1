"""What is seen of the customer's page in a real browser, off a file."""

from __future__ import annotations

import json
import os
from pathlib import Path
from typing import Any

import pytest
from ribwright.catalog.colours import colour_names, rgb
from ribwright.intake import parse
from ribwright.raising import raise_building
from support.browser import Watched
from support.colour_difference import difference, lab
from support.pages import ATTACKS, attacked, page_of
from support.planted import shed
from support.starter_buildings import starter_model

MOST_CALLS, TRUE = 60, 6.0

pytestmark = [pytest.mark.broad, pytest.mark.usefixtures("nothing_wrong")]


def test_it_draws_in_few_calls(opened: Watched) -> None:
    opened.does("app.clear = true; app.laps = true; app.dress(); app.drawn();")
    assert 5 < opened.does("return app.scene.calls") <= MOST_CALLS
    opened.does("app.clear = false; app.laps = false; app.dress();")


def test_screws_are_drawn_where_they_can_be_seen_or_are_lit(opened: Watched) -> None:
    """Two thirds of the triangles are screws'. With a lens of 34 degrees and 800 pixels a pixel is 12 mm wide
    15.7 m off: a farther building is drawn without them, but for those that someone asked for."""
    drawn = "app.moving = false; app.eye = {{ ...app.eye, away: {0} }}; app.drawn(); return {1}"
    count = "app.scene.triangles"
    near, far = (opened.does(drawn.format(away, count)) for away in (9000, 200_000))
    assert far < near / 2
    opened.does("app.light(app.all.marks[app.all.pieces.find(({ role }) => role === 'sheet screw').mark])")
    assert opened.does(drawn.format(200_000, count)) > far


def test_shadows_are_drawn_again_only_where_what_stands_is_another(opened: Watched) -> None:
    """To light a piece is then answered sooner; the first picture that is at rest has them."""
    opened.does("app.moving = false; app.drawn()")
    passes = (
        "const gl = app.scene.gl, bind = gl.bindFramebuffer.bind(gl); let count = 0;"
        "gl.bindFramebuffer = (to, frame) => { count += frame === app.scene.shade.frame; bind(to, frame); };"
        "{0}; app.drawn(); delete gl.bindFramebuffer; return count;"
    )
    for does, count in (
        ("app.light('W1')", 0),
        ("app.hidden.add(4); app.dress()", 1),
        ("app.hidden.clear(); app.dress()", 1),
        ("app.light('')", 0),
        ("document.getElementById('person').click()", 1),
        ("document.getElementById('person').click()", 1),
    ):
        assert opened.does(passes.replace("{0}", does)) == count, does


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


def test_corners_and_the_ground_at_a_wall_are_darker_and_colours_stay(opened: Watched) -> None:
    """The sky that is shut out is missed beside a wall, not on a sunlit pan nor farther off."""
    level = opened.does("return app.level")
    spots = {"by": (600.0, -400.0, level), "off": (600.0, -4000.0, level), "pan": (-20.0, 1500.0, 1200.0)}
    tones = {}
    opened.does("globalThis.quality = app.pace.quality.bind(app.pace)")
    for corners in ("false", "true"):
        opened.does(f"app.pace.quality = () => ({{ ...quality(false), shadows: 4, corners: {corners} }});")
        for name, spot in spots.items():
            tones[name, corners] = tone(opened, spot)
    opened.does("delete app.pace.quality; app.drawn();")
    assert tones["by", "true"] < 0.98 * tones["by", "false"]
    assert tones["off", "true"] == tones["off", "false"]
    assert tones["pan", "true"] == tones["pan", "false"]


def tone(watched: Watched, spot: tuple[float, float, float]) -> int:
    """The median green of some pixels where a point of the building is seen, after drawing."""
    x, y = watched.spot(spot)
    found: int = watched.does(
        "app.drawn(); const gl = app.scene.gl, box = app.canvas.getBoundingClientRect();"
        "const k = app.canvas.width / box.width; const px = new Uint8Array(4 * 81);"
        f"gl.readPixels(({x} - box.left) * k - 4, (box.bottom - {y}) * k - 4, 9, 9, "
        "gl.RGBA, gl.UNSIGNED_BYTE, px);"
        "return px.filter((_, i) => i % 4 === 1).sort()[40];"
    )
    return found


BLANKET = """
width = "24 ft"
length = "30 ft"
eave_height = "10 ft"
pitch = "4/12"
[sheets]
roof_colour = "dimgray"
[insulation]
roof = "3 in"
"""


def test_what_lies_under_sheets_is_not_seen_through_them(chromium: Any, tmp_path: Path) -> None:
    """From the foot of a roof, aslant and far, with and without the white blanket that its sheets touch."""
    path = tmp_path / "show.html"
    path.write_text(page_of(raise_building(parse(BLANKET, "warm")).model), encoding="utf-8")
    shown = Watched(chromium, path, viewport={"width": 1000, "height": 600}, reduced_motion="reduce").drawn()
    shown.does("app.lines = false")
    for view in ("Left", "Right"):
        shown.page.get_by_role("button", name=view, exact=True).click()
        seen = []
        for does in ("add", "delete"):
            shown.does(f"app.hidden.{does}(app.all.groups.indexOf('Insulation')); app.dress();")
            seen.append(shown.picture())
        other = sum(abs(a - b) > 12 for a, b in zip(*seen, strict=True))
        assert 0 < other < 0.012 * len(seen[0]), (view, other)
    shown.context.close()


@pytest.mark.parametrize("name", ["garage", "day-barn", "machine-shed", "barn"])
def test_the_column_beside_the_picture_is_as_wide_as_its_tables(
    name: str, chromium: Any, tmp_path: Path
) -> None:
    """Of buildings whose colours or faces have long names; on a phone too, where no figure is broken."""
    page = tmp_path / "show.html"
    page.write_text(page_of(starter_model(name)), encoding="utf-8")
    for size in ({"width": 1200, "height": 800}, {"width": 390, "height": 844}):
        watched = Watched(chromium, page, viewport=size).drawn()
        column = "const p = document.querySelector('#panel');"
        assert watched.does(f"{column} return p.scrollWidth <= p.clientWidth")
        tables = "[...document.querySelectorAll('#panel table')]"
        assert watched.does(f"return {tables}.every((t) => t.scrollWidth <= t.parentElement.clientWidth)")
        lines = watched.does(
            "return [...document.querySelectorAll('#glance .figure')].map((one) => {"
            "const range = document.createRange(); range.selectNodeContents(one);"
            "return new Set([...range.getClientRects()].map(({ y }) => y)).size; })"
        )
        assert set(lines) == {1}
        watched.context.close()


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
