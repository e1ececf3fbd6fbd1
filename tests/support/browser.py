"""A real browser for the tests of the page, or why there is none."""

from __future__ import annotations

import os
import shutil
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

FLAGS = ("--no-sandbox", "--use-angle=swiftshader", "--enable-unsafe-swiftshader")
"""Drawn in software, the same everywhere; as root no browser starts in its sandbox."""
PATIENCE = 60_000  # ms; machines that test are busy


@contextmanager
def browser(missing: Callable[[str], None]) -> Iterator[Any]:
    """Debian's chromium under Playwright."""
    program = shutil.which("chromium") or shutil.which("chromium-browser")
    if not program:
        missing("chromium")
    from playwright.sync_api import sync_playwright  # noqa: PLC0415 (only where there is a browser)

    with sync_playwright() as play:
        started = play.chromium.launch(executable_path=program, args=list(FLAGS))
        yield started
        started.close()


class Watched:
    """A page of the browser, and all that it said and asked for."""

    def __init__(self, browser: Any, path: Path, **options: Any) -> None:
        self.context = browser.new_context(**{"viewport": {"width": 1000, "height": 640}, **options})
        self.context.set_default_timeout(PATIENCE)
        self.page = self.context.new_page()
        self.said: list[str] = []
        self.asked: list[str] = []
        self.page.on("pageerror", lambda error: self.said.append(str(error)))
        self.page.on("console", lambda line: self.said.append(line.text) if line.type == "error" else None)
        self.page.on("dialog", lambda dialog: self.said.append(dialog.message))
        self.page.on("request", lambda request: self.asked.append(request.url))
        self.page.goto(path.as_uri())

    def drawn(self) -> Watched:
        """When the picture is there and at rest."""
        self.page.wait_for_function("() => Number(document.body.dataset.drawn) > 1")
        return self

    def does(self, code: str) -> Any:
        """What a piece of script gives; `app` is the building on the screen."""
        return self.page.evaluate(f"(() => {{ const app = globalThis.ribwright; {code} }})()")

    def spot(self, point: tuple[float, float, float]) -> tuple[float, float]:
        """Where on the page a point of the building is seen."""
        x, y = self.does(
            "app.drawn(); const m = app.matrix, p = "
            f"{[*point, 1]}; const at = (k) => p.reduce((sum, v, i) => sum + m[4 * i + k] * v, 0);"
            "const box = app.canvas.getBoundingClientRect();"
            "const share = (k) => (at(k) / at(3) + 1) / 2;"
            "return [box.left + share(0) * box.width, box.bottom - share(1) * box.height];"
        )
        return (float(x), float(y))

    def picture(self) -> list[int]:
        """The pixels of the picture, coarsely: red, green and blue of every eighth one each way."""
        return list(
            self.does(
                "app.moving = false; app.drawn(); const gl = app.scene.gl, w = gl.drawingBufferWidth, "
                "h = gl.drawingBufferHeight; const px = new Uint8Array(4 * w * h);"
                "gl.readPixels(0, 0, w, h, gl.RGBA, gl.UNSIGNED_BYTE, px); const found = [];"
                "for (let y = 0; y < h; y += 8) for (let x = 0; x < w; x += 8)"
                " found.push(...px.subarray(4 * (y * w + x), 4 * (y * w + x) + 3)); return found;"
            )
        )


def axe() -> str:
    """The text of axe-core, "" where it is not."""
    for folder in os.environ.get("NODE_PATH", "").split(os.pathsep):
        path = Path(folder) / "axe-core" / "axe.min.js"
        if folder and path.is_file():
            return path.read_text(encoding="utf-8")
    return ""


def serious(watched: Watched, text: str) -> list[str]:
    """What axe-core, given as its text, calls serious or worse."""
    watched.page.evaluate(text)
    found = watched.page.evaluate("axe.run({ resultTypes: ['violations'] })")
    return [
        f"{one['id']}: {node['html']}"
        for one in found["violations"]
        if one["impact"] in ("serious", "critical")
        for node in one["nodes"]
    ]
