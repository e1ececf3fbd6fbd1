"""Descriptions of random buildings, for hypothesis: all keys that change shapes, lengths on 1/16 in or mm."""

from __future__ import annotations

from hypothesis import assume
from hypothesis import strategies as st
from ribwright.description import parse
from ribwright.description.building import Building
from ribwright.errors import DescriptionError

PITCHES = [f"{rise}/12" for rise in range(1, 13)] + ["10 deg", "22.5 deg"]
PROFILES = ["36 x 9 x 3/4", "36 x 12 x 1-1/4", "1000 x 250 x 35"]
GABLE_RUNS = ["left", "right", "centre, left first", "centre, right first"]
KINDS = ["walk door", "overhead door", "window", "framed opening"]
SECTIONS = ["cee 4x2x0.059", "zee 4x2x0.059", "tube 4x2x0.083", "hat 1.5x1.25x0.0346", "cee 6x2.5x0.059"]


@st.composite
def inches(draw: st.DrawFn, low: int, high: int) -> str:
    """A length between whole inches, on sixteenths."""
    return f"{draw(st.integers(low * 16, high * 16)) / 16} in"


@st.composite
def openings(draw: st.DrawFn, width: int, length: int, eave: int) -> list[str]:
    """Up to six openings that may or may not fit."""
    found = []
    for _ in range(draw(st.integers(0, 6))):
        wall = draw(st.sampled_from(["front", "back", "left", "right"]))
        along = width if wall in ("front", "back") else length
        kind = draw(st.sampled_from(KINDS))
        size = draw(inches(24, 96))
        sill = f'sill = "{draw(inches(20, 48))}"' if kind == "window" else ""
        found.append(
            f'[[opening]]\nkind = "{kind}"\nwall = "{wall}"\nwidth = "{size}"\n'
            f'height = "{draw(inches(24, max(25, eave - 40)))}"\n'
            f'from_left = "{draw(inches(10, max(11, along - 60)))}"\n{sill}\n'
        )
    return found


@st.composite
def buildings(draw: st.DrawFn) -> Building:
    """A building that can be built, with as many of its openings as fit."""
    width, length = draw(st.integers(10, 40)) * 12, draw(st.integers(10, 50)) * 12
    eave = draw(st.integers(96, 168))
    edge = draw(st.sampled_from(["front", "back"]))
    girt = draw(st.sampled_from(SECTIONS))
    text = "\n".join(
        [
            f'width = "{(width * 16 + draw(st.integers(0, 191))) / 16} in"',
            f'length = "{(length * 16 + draw(st.integers(0, 191))) / 16} in"',
            f'eave_height = "{(eave * 16 + draw(st.integers(0, 15))) / 16} in"',
            f'pitch = "{draw(st.sampled_from(PITCHES))}"',
            "[sheets]",
            f'profile = "{draw(st.sampled_from(PROFILES))}"',
            f'overhang = "{draw(inches(0, 6))}"',
            f'ridge_gap = "{draw(inches(0, 3))}"',
            "[slab]",
            f'ledge_depth = "{draw(st.sampled_from(["0 in", "1-1/2 in"]))}"',
            "[runs]",
            *(f'{gable} = "{draw(st.sampled_from(GABLE_RUNS))}"' for gable in ("front", "back")),
            *(f'{side} = "{edge}"' for side in ("left", "right", "left_slope")),
            "[frame]",
            f'front_posts = "{draw(st.sampled_from(["none", "centre"]))}"',
            f'spacing = "{draw(st.integers(8, 14))} ft"',
            "[framing]",
            f'girts = "{draw(st.sampled_from(["by-pass", "flush"]))}"',
            f'girt = "{girt}"',
            f'purlin = "{draw(st.sampled_from(SECTIONS))}"',
            f'girt_spacing = "{draw(st.integers(3, 7))} ft"',
            "",
        ]
    )
    built = _parsed(text)
    assume(built is not None)
    for opening in draw(openings(width, length, eave)):
        if (more := _parsed(text + opening)) is not None:
            built, text = more, text + opening
    assert built is not None
    return built


def _parsed(text: str) -> Building | None:
    try:
        return parse(text, "random")
    except DescriptionError:
        return None
