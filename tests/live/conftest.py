"""The sample on a live page, started once for the tests of a file."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from support import line
from support.browser import browser
from support.live import Live, live
from support.live_page import TEXT, Shown


@pytest.fixture(scope="module")
def served(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Live]:
    file = tmp_path_factory.mktemp("live") / "my-shop.toml"
    file.write_text(line.TEXT, encoding="utf-8")
    with live(file) as started:
        yield started


@pytest.fixture
def own(tmp_path: Path) -> Iterator[Live]:
    file = tmp_path / "my-shop.toml"
    file.write_text(line.TEXT, encoding="utf-8")
    with live(file) as started:
        yield started


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
