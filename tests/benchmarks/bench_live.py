"""By hand: `PYTHONPATH=tests python tests/benchmarks/bench_live.py [SAVES]`. The live page in a browser.

From a save of the file to the picture, and from there to the findings, for sizes and for a colour; beside
each a bare raise of the same text in this process, warm, in turn with it. Then the first picture of the
page that `raise` writes, opened from a file at 1200 x 800 and drawn in software.
"""

from __future__ import annotations

import statistics
import sys
import tempfile
import time
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any, NoReturn

from ribwright.cli.main import run
from ribwright.intake import parse, sample_text
from ribwright.raising import raise_building
from support.browser import Watched, browser
from support.live import Live, live
from timing import seconds, told

WATCH = """
globalThis.seen = [];
globalThis.found = [];
const turn = app.turn.bind(app);
app.turn = (all) => { turn(all); app.drawn(); seen.push(Date.now()); };
new MutationObserver(() => { if (!document.body.classList.contains('waiting')) found.push(Date.now()); })
  .observe(document.body, { attributes: true, attributeFilter: ['class'] });
"""
QUIET = "() => !document.body.classList.contains('waiting')"


class At:
    """An address, as a page takes it."""

    def __init__(self, address: str) -> None:
        self.address = address

    def as_uri(self) -> str:
        return self.address


def missing(what: str) -> NoReturn:
    raise SystemExit(f"needs {what}")


def saved(page: Watched, served: Live, text: str) -> tuple[float, float]:
    """Seconds from a save to its picture, and from that to its findings."""
    seen, found = page.does("return [seen.length, found.length]")
    start = time.time() * 1000
    served.write(text)
    page.page.wait_for_function(f"() => seen.length > {seen}")
    page.page.wait_for_function(f"() => found.length > {found} && ({QUIET})()")
    picture, findings = page.does("return [seen.at(-1), found.at(-1)]")
    return (picture - start) / 1000, (findings - picture) / 1000


def told_of(what: str, wanted: str, saves: Sequence[tuple[float, float, float]]) -> None:
    """One kind of change: saves to pictures, findings, bare raises."""
    picture, findings, bare = (statistics.median(times) for times in zip(*saves, strict=True))
    means = (f"picture {picture:.2f} s, {wanted}", f"findings {findings:.2f} s later, wanted 1.5 s at most")
    told(f"{what} on the live page over a bare raise", [one[0] / one[2] for one in saves], "little", *means)
    print(f"  bare raise {bare:.2f} s")


def first_picture(make: Callable[[], Watched]) -> float:
    """Seconds from opening a page to its first picture."""
    return seconds(lambda: make().page.wait_for_function("() => Number(document.body.dataset.drawn) > 0"))


def main() -> None:
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 5
    text = sample_text()
    changes: dict[str, tuple[str, list[str]]] = {
        "another eave height": (
            "wanted 1.2 s",
            [text.replace('"11 ft"', f'"11 ft {k} in"') for k in range(1, 12)],
        ),
        "another pitch": (
            "wanted 1.2 s",
            [text.replace('"3/12"', f'"{3 + k / 4}/12"') for k in range(1, 12)],
        ),
        "another colour": (
            "wanted 0.3 s",
            [text.replace("gainsboro", k) for k in ("tan", "wheat", "navy", "red", "linen")],
        ),
    }
    with tempfile.TemporaryDirectory() as folder, browser(missing) as started:
        file = Path(folder) / "my-shop.toml"
        file.write_text(text, encoding="utf-8")
        raise_building(parse(text, "warm"))
        with live(file) as served:
            page: Any = Watched(started, At(served.address), reduced_motion="reduce")  # type: ignore[arg-type]
            page.page.wait_for_selector("#glanced .verdict")
            page.page.wait_for_function(QUIET)
            page.does(WATCH)
            for what, (wanted, texts) in changes.items():
                saves = [
                    (*saved(page, served, one), seconds(lambda one=one: raise_building(parse(one, "bare"))))
                    for one in texts[:count]
                ]
                told_of(what, wanted, saves)
        shown = Path(folder) / "show.html"
        run(["show", str(file), "--no-open", "--out", str(shown)])
        size = {"width": 1200, "height": 800}
        opened = [first_picture(lambda: Watched(started, shown, viewport=size)) for _ in range(count)]
        print(
            f"first picture at 1200 x 800 in software: {statistics.median(opened):.2f} s, wanted 2 s at most"
        )


if __name__ == "__main__":
    main()
