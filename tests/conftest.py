"""What several test files share."""

from __future__ import annotations

import os
import re
from collections.abc import Callable

import pytest
from hypothesis import settings
from ribwright.intake import starters
from xdist.remote import Producer
from xdist.scheduler import LoadScopeScheduling, Scheduling

settings.register_profile("plain", derandomize=True)
settings.register_profile("long", max_examples=300)
settings.load_profile("long" if os.environ.get("LONG") else "plain")


SAMPLE = "workshop"
"""The starter that a run of every day raises."""
BROAD = {"shapes", "live", "book"}
"""Folders of tests that it leaves out: other buildings, and what runs in processes of its own."""


def starter_of(nodeid: str) -> str:
    """The starter that a test is about, by its case; "" for all others."""
    return "".join(set(re.split(r"[\[\]]", nodeid.partition("::")[2])[1:]) & set(starters()))


class ByBuilding(LoadScopeScheduling):
    """Tests of a starter go to one process, that raises it once; so do those of a file, that share a building
    or a browser. Random buildings go to whoever is free."""

    def _split_scope(self, nodeid: str) -> str:
        file = nodeid.partition("::")[0]
        return nodeid if file.endswith("test_random_buildings.py") else starter_of(nodeid) or file


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--all", action="store_true", help="every shape, mix and starter, not the sample alone")


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """A run of every day judges the sample. What is named is run whole."""
    if config.getoption("--all") or config.args_source is pytest.Config.ArgsSource.ARGS:
        return
    config.hook.pytest_deselected(items=[item for item in items if broad(item)])
    items[:] = [item for item in items if not broad(item)]


def broad(item: pytest.Item) -> bool:
    """Whether a test is about other buildings than the sample, or marked to take as long."""
    others = bool(BROAD & set(item.path.parts)) or starter_of(item.nodeid) not in ("", SAMPLE)
    return others or item.get_closest_marker("broad") is not None


def pytest_xdist_make_scheduler(config: pytest.Config, log: Producer) -> Scheduling:
    return ByBuilding(config, log)


def _missing(what: str) -> None:
    if os.environ.get("CI"):
        pytest.fail(f"CI must have {what}: .ci/run installs it")
    pytest.skip(f"needs {what}")


@pytest.fixture(scope="session")
def missing() -> Callable[[str], None]:
    """Call it with what this machine lacks and pip cannot bring: skips here, fails where CI is set."""
    return _missing
