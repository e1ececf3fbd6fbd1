"""A building four times as long takes at most four times the processor time: nothing asks all of all."""

from __future__ import annotations

import re
import time

import pytest
from ribwright.audit import audit
from ribwright.intake import parse, starter_text
from ribwright.raising import raise_building


@pytest.mark.parametrize("name", ["lean-to", "wainscot"])
def test_a_long_building_takes_its_share(name: str) -> None:
    """The short one is raised first, and with it all that is made once."""
    took: list[float] = []
    for length in (100, 400):
        text = re.sub(r"(?m)^length = .*$", f'length = "{length} ft"', starter_text(name, name))
        start = time.process_time()
        audit(raise_building(parse(text, name)).model)
        took.append(time.process_time() - start)
    assert took[1] < 4 * took[0]
