"""What several test files share."""

from __future__ import annotations

import os
from collections.abc import Callable

import pytest


def _missing(what: str) -> None:
    if os.environ.get("CI"):
        pytest.fail(f"CI must have {what}: .ci/run installs it")
    pytest.skip(f"needs {what}")


@pytest.fixture(scope="session")
def missing() -> Callable[[str], None]:
    """Call it with what this machine lacks and pip cannot bring: skips here, fails where CI is set."""
    return _missing
