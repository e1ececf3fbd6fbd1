"""What people ask for by words that are no keys and no values here, and what would do."""

from __future__ import annotations

NOT_YET = {
    "porch": "a lean-to along a wall: [[lean_to]]",
    "inset": "a lean-to along some of the building's bays: bays",
    "hip": "a gable",
    "valley": "two buildings, each with a roof of its own",
    "dormer": "a gable without",
    "cupola": "a roof without",
    "upper_pitch": "pitch above, [roof] lower_pitch below, the same on both sides",
}
"""What people ask for and cannot be described yet, and what comes nearest."""

BROKEN = "'gable', with break_at and lower_pitch"
OTHER_SHAPES = (
    ("double pitch", BROKEN),
    ("gambrel", BROKEN),
    ("shed", "'single slope'"),
    ("lean-to", "'single slope'; against a building a lean-to is a [[lean_to]]"),
    ("hip", "not yet possible; what comes nearest: 'gable'"),
    ("flat", "'single slope', at 0.5/12 or more"),
)
"""What people call roofs, and what would do."""
