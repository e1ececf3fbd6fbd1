"""What a picture of the customer's page costs in a real browser: triangles, time where they are slow."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from support.browser import Watched
from support.pages import front_sheet, long_page, middle

MOST_TRIANGLES = 1_500_000

pytestmark = pytest.mark.broad

EYES = """
const gl = app.scene.gl, shown = { cut: app.cut, lines: true, person: true, shadows: 0, corners: false,
  small: true, accent: [1, 0.5, 0], strips: false, clear: false, smooth: false, scale: SCALE };
gl.drawElements = gl.drawElementsInstanced = gl.drawArrays = () => {};
const [low, high] = app.room.box, found = [];
for (const lit of ["", app.all.marks[app.all.pieces.find(({ role }) => role === "sheet screw").mark]]) {
  app.light(lit);
  for (const u of [0, 0.25, 0.5]) for (const v of [0, 0.1, 0.3, 0.5, 0.9])
    for (const away of [1500, 4000, 9000, 25000]) for (let turn = 0; turn < 6.2; turn += 0.39)
    for (const rise of [0.02, 0.3]) for (const parallel of [false, true]) {
      const target = [low[0] + u * (high[0] - low[0]), low[1] + v * (high[1] - low[1]), 2000];
      app.scene.draw({ ...shown, eye: { target, turn, rise, away, parallel, wide: false } });
      found.push(app.scene.triangles);
    }
}
return [Math.max(...found), Math.min(...found)];
"""


@pytest.mark.parametrize("scale", [1, 3])
def test_400_ft_are_never_drawn_in_more_triangles_than_graphics_bear(
    scale: int, chromium: Any, tmp_path: Path
) -> None:
    """From anywhere, in either way of seeing, screws lit or not, however fine the screen: counted."""
    path = tmp_path / "show.html"
    path.write_text(long_page(), encoding="utf-8")
    long = Watched(chromium, path, viewport={"width": 1200, "height": 800}).drawn()
    all_of_it = long.does(
        "const { rows, whole } = app.scene.own;"
        "return rows.reduce((sum, { size, owners }) => sum + size * owners.length, whole.faces.count) / 3"
    )
    assert all_of_it > MOST_TRIANGLES
    most, least = long.does(EYES.replace("SCALE", str(scale)))
    assert most < MOST_TRIANGLES
    assert least < 0.25 * all_of_it
    long.context.close()


SLOWLY = """
globalThis.drawn = []; app.pace.times = [300, 300];
const { scene } = app, { gl } = scene, draw = scene.draw.bind(scene);
const wait = () => gl.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, new Uint8Array(4));
scene.draw = (shown) => {
  wait();
  const start = performance.now(), found = draw(shown);
  wait();
  drawn.push([shown.scale, shown.smooth, performance.now() - start, scene.shaded && scene.stale]);
  return found;
};
"""


def test_where_pictures_come_slowly_one_comes_at_once_and_the_fine_one_when_no_more_is_asked(
    chromium: Any, path: Path
) -> None:
    """A sheet that is clicked on, and a turn by keys; in a fifth of the time, here in a half to be sure."""
    slow = Watched(chromium, path, reduced_motion="reduce").drawn()
    x, y = slow.spot(middle(front_sheet()))
    slow.does(SLOWLY)
    slow.page.mouse.click(x, y)
    slow.page.wait_for_function("() => drawn.length === 2")
    (coarse, stepped, soon, _), (fine, smooth, late, _) = slow.does("return drawn")
    assert slow.does("return app.lit.size") > 0
    assert (coarse, stepped, fine, smooth) == (0.5, False, 1, True)
    assert soon < late / 2
    slow.does("drawn.length = 0; for (let k = 0; k < 5; k++) app.steer('turn', 0.1, 0)")
    slow.page.wait_for_function("() => drawn.length === 2")
    slow.does("drawn.length = 0; app.hidden.add(app.all.groups.indexOf('Roof sheets')); app.dress()")
    slow.page.wait_for_function("() => drawn.length === 2")
    assert [old for *_, old in slow.does("return drawn")] == [True, False]  # shadows of the roof for now
    slow.does("drawn.length = 0; app.moving = true; app.draw()")
    slow.page.wait_for_timeout(600)
    assert [scale for scale, *_ in slow.does("return drawn")] == [0.5]  # the fine one waits for an end
    slow.context.close()
