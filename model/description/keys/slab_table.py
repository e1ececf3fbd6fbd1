"""The keys of the slab."""

from __future__ import annotations

from .key import Key, Table
from .value_kinds import Length, Text

SLAB = Table(
    "slab",
    "The concrete.",
    (
        Key("thickness", Length("2 in", "24 in"), "of the slab", "4 in", metric="100 mm"),
        Key("ledge_depth", Length("0 in", "12 in"), "of the ledge the wall sheets stand in; 0: none", "0 in"),
        Key(
            "hang",
            Length("0 in", "6 in"),
            "of the sheets past the top of a slab that ends on the steel line; 0: none",
            "0 in",
        ),
        Key(
            "ledge_width",
            Length("1-1/16 in", "12 in"),
            "from the steel line out to the slab's edge",
            unless="room for sheets and corner trim",
            example=("2 in", "50 mm"),
        ),
        Key(
            "edge_depth",
            Length("3 in", "48 in"),
            "of a slab thicker at its edge, from its top",
            unless="as thick as the slab",
            example=("12 in", "300 mm"),
        ),
        Key("edge_width", Length("6 in", "48 in"), "of that edge", "12 in", metric="300 mm"),
        Key("mesh", Text(), "in the slab, as you order it", unless="none", example=("6x6 W1.4",) * 2),
    ),
)
