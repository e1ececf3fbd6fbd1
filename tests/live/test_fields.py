"""What can be changed on the page, said in words."""

from __future__ import annotations

import pytest
from ribwright.intake import parse, starter_text, starters
from ribwright.live.fields import fields


@pytest.mark.parametrize("name", starters())
def test_every_field_has_words_of_its_own(name: str) -> None:
    """None spelled as a key of a table is, none twice."""
    text = starter_text(name, name)
    said = [field.words for field in fields(text, parse(text, name))]
    assert len(set(said)) == len(said)
    assert not any(letter in words for words in said for letter in "_[].")


def test_words_of_the_sample_by_hand() -> None:
    text = starter_text("workshop", "workshop")
    said = {field.content()["name"]: field.words for field in fields(text, parse(text, "workshop"))}
    assert said["eave_height"] == "eave height"
    assert said["sheets.wall_colour"] == "wall colour"
    assert said["runs.left_slope"] == "left slope: run starts"
    assert said["opening[1].from_left"] == "front overhead door 1: from left"
