"""What several test files share."""

from __future__ import annotations

import os
from collections.abc import Callable

import pytest
from hypothesis import settings

settings.register_profile("plain", derandomize=True)
settings.register_profile("long", max_examples=300)
settings.load_profile("long" if os.environ.get("LONG") else "plain")


def _missing(what: str) -> None:
    if os.environ.get("CI"):
        pytest.fail(f"CI must have {what}: .ci/run installs it")
    pytest.skip(f"needs {what}")


@pytest.fixture(scope="session")
def missing() -> Callable[[str], None]:
    """Call it with what this machine lacks and pip cannot bring: skips here, fails where CI is set."""
    return _missing
