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


class ByBuilding(LoadScopeScheduling):
    """Tests of a starter go to one process, that raises it once; so do those of a file, that share a building
    or a browser. Random buildings go to whoever is free."""

    def _split_scope(self, nodeid: str) -> str:
        file, _, case = nodeid.partition("::")
        named = set(re.split(r"[\[\]]", case)[1:]) & set(starters())
        return nodeid if file.endswith("test_random_buildings.py") else "".join(named) or file


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
