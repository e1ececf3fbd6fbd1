"""When the ends of trims are folded over: as soon as all that their tabs lie over or beside stands."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence

import numpy as np

from ..measure.bends import measure_bends
from ..measure.faces import Vectors
from ..measure.standing import standing_box
from ..measure.tab_boxes import tab_box
from ..pieces import Piece
from ..roles import list_of
from .sorting import Key

BESIDE = 12.0
"""mm; a tab lies over, or beside, what is as near as this to it. Ours."""
UNDER = ("sheets", "trims", "closures")
"""Lists of what ends of trims are folded over."""


def folded(order: Sequence[Key], pieces: Mapping[Key, Sequence[Piece]]) -> Mapping[Key, tuple[Piece, ...]]:
    """The trims whose ends are folded over in each step, once its pieces stand.

    order: the steps as they come. A trim is folded in its own step, or in a later one in which the last of
    the sheets, trims and closures beside its tabs goes up: a tab that is folded before would keep it out.
    """
    turns = [(turn, piece) for turn, key in enumerate(order) for piece in pieces.get(key, ())]
    beside = [(turn, piece) for turn, piece in turns if list_of(piece.role) in UNDER]
    boxes = np.array([standing_box(piece) for _, piece in beside]).reshape(-1, 2, 3)
    when = np.array([turn for turn, _ in beside])
    found: dict[Key, list[Piece]] = defaultdict(list)
    for turn, piece in beside:
        tabs = _tabs(piece)
        if tabs:
            met = [(boxes[:, 0] < high).all(axis=1) & (boxes[:, 1] > low).all(axis=1) for low, high in tabs]
            last = max(int(when[near].max(initial=turn)) for near in met)
            found[order[last]].append(piece)
    return {key: tuple(trims) for key, trims in found.items()}


def _tabs(piece: Piece) -> list[tuple[Vectors, Vectors]]:
    """(low, high) mm: of a box about each tab of a trim as it stands, grown by what is beside it."""
    bends = measure_bends(piece.solid) if list_of(piece.role) == "trims" else None
    if bends is None:
        return []
    place = piece.place
    turn, origin = np.array([place.x, place.y, place.z]), np.array(place.origin)
    found = [tab_box(bends, fold, 0.0, 0.0) @ turn + origin for fold in bends.folds]
    return [(box.min(axis=0) - BESIDE, box.max(axis=0) + BESIDE) for box in found]
