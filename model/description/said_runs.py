"""From which end the sheets of each face are laid, as a draft says it."""

from __future__ import annotations

from .opening import Wall
from .reading.draft import Values
from .skin import Hand, Run, Start
from .walls_around import is_gable


def runs_of(values: Values) -> dict[str, Run | None]:
    """The runs of all faces, in each face's own left and right as seen from outside."""
    return {
        "front": _gable_run(values["front"]),
        "back": _gable_run(values["back"]),
        "left": _corner_run(values["left"], back="left"),
        "right": _corner_run(values["right"], back="right"),
        **dict.fromkeys(("left slope", "left upper slope"), _corner_run(values["left_slope"], back="left")),
        **dict.fromkeys(
            ("right slope", "right upper slope"), _corner_run(values["right_slope"], back="right")
        ),
    }


def beside_gable(runs: dict[str, Run | None], wall: Wall) -> dict[str, Run | None]:
    """That of a roof that falls away from a gable: from the corner that the gable's half laid first is at, or
    the right one; nothing more at a side wall."""
    if not is_gable(wall):
        return {}
    hand: Hand = "right" if (own := runs[wall]) is None else own.first
    return {f"{wall} slope": Run(hand, hand)}


def _gable_run(words: str | None) -> Run | None:
    """`left`, `right`, or `centre, left first` and its like; None where nothing is said."""
    if words is None:
        return None
    hand: Hand = "left" if "left" in words else "right"
    start: Start = "centre" if "centre" in words else hand
    return Run(start, hand)


def _corner_run(corner: str, back: Hand) -> Run:
    """From the building's back or front corner. back: the hand on which this face has its back corner."""
    front: Hand = "right" if back == "left" else "left"
    hand = back if corner == "back" else front
    return Run(hand, hand)
