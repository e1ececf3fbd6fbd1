"""Walls and roofs of lean-tos, as descriptions name them and as their faces are called."""

from __future__ import annotations

import re

from ..roles import LEAN_TO
from .keys.word_kinds import OWN_SLOPE, OWN_WALL
from .reading.draft import Draft, Unread, Values


def own_wall(draft: Draft, name: str) -> tuple[Values, str] | None:
    """The lean-to that a face's name speaks of, and which of its walls, or "slope"; None for one of the main
    building.

    Raises Unread where no lean-to, or either of two, is meant.
    """
    if not (told := re.fullmatch(OWN_WALL, name) or re.fullmatch(OWN_SLOPE, name)):
        return None
    hand, which = told.groups()
    meant = [one for one in draft.lean_tos if hand in (None, one["wall"])]
    if len(meant) != 1:
        raise Unread(name)
    return meant[0], which


def own_walls(draft: Draft) -> list[str]:
    """The names of all clad walls of lean-tos."""
    return [f"{name_of(draft, one)} {which}" for one in draft.lean_tos for which in one["walls"]]


def name_of(draft: Draft, lean_to: Values) -> str:
    """What a lean-to is called."""
    return LEAN_TO if len(draft.lean_tos) == 1 else f"{lean_to['wall']} {LEAN_TO}"


def face_of(draft: Draft, name: str) -> str:
    """What the face of a wall or a slope is called that a description names."""
    if (own := own_wall(draft, name)) is None:
        return name
    lean_to, which = own
    if which == "slope":
        return f"{name_of(draft, lean_to)} {lean_to['wall']} slope"
    return f"{name_of(draft, lean_to)} {lean_to['wall'] if which == 'outer' else which}"


def seen_by(lean_to: str, face: str) -> str:
    """What a lean-to calls a face: its own without its name, so that no other has such a name."""
    own = face.startswith(f"{lean_to} ")
    return face.removeprefix(f"{lean_to} ") if own else f"other {face}"
