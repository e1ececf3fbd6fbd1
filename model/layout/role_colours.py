"""Colours by role (CSS names), so that a frame, its framing and its skin read apart in a picture."""

from __future__ import annotations

FRAME = (("colour", "brown"), ("material", "steel"))
FRAMING = (("colour", "lightsteelblue"), ("material", "steel"))
BRACE = (("colour", "goldenrod"), ("material", "steel"))
SLAB = (("colour", "darkgray"), ("material", "concrete"))
LEAF = (("colour", "whitesmoke"), ("material", "leaf"))
RAIL = (("colour", "silver"), ("material", "rail"))
SASH = (("colour", "white"), ("material", "sash"))
LOUVRE = (("colour", "white"), ("material", "louvre"))
PANE = (("colour", "lightcyan"), ("material", "glass"))
