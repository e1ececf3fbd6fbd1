"""The sample's page, opened once in a real browser for the tests of a file."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from support.browser import Watched, browser
from support.pages import sample_page


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


@pytest.fixture
def nothing_wrong(opened: Watched) -> Iterator[None]:
    """Begins as the page opens; at the end nothing was complained of, and nothing but the file asked for."""
    opened.does("app.hidden.clear(); app.clear = app.laps = app.taping = false; app.light(''); app.view(0);")
    yield
    assert opened.said == []
    assert len(opened.asked) == 1
