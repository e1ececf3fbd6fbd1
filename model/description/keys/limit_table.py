"""The limits of a detailer's notes. All are common practice, no source, or ours."""

from __future__ import annotations

from .key import Key, Table
from .value_kinds import Length

LIMITS = Table(
    "limits",
    "From where on a detailer notes what could be laid better. Nothing is laid otherwise for it.",
    (
        Key(
            "strip",
            Length("0 in", "12 in"),
            "beside an opening: a narrower leg of a sheet flaps",
            "3 in",
            metric="75 mm",
        ),
        Key(
            "last_sheet",
            Length("0 in", "24 in"),
            "a run's last sheet ripped narrower is bought for little",
            "4 in",
            metric="100 mm",
        ),
        Key(
            "beside_rib",
            Length("0 in", "2 in"),
            "from a rip to the foot of a major rib",
            "1/2 in",
            metric="12 mm",
        ),
        Key(
            "eave_drip",
            Length("0 in", "3 in"),
            "of the roof's foot past the eave trim's face",
            "7/8 in",
            metric="22 mm",
        ),
        Key("shortest_sheet", Length("0 in", "10 ft"), "that a mill makes", "4 ft", metric="1200 mm"),
        Key("longest_sheet", Length("8 ft", "60 ft"), "that a mill makes", "40 ft", metric="12 m"),
        Key(
            "span_of_4_in",
            Length("1 ft", "60 ft"),
            "free span of a girt or purlin so deep, from which on to ask the engineer",
            "12 ft",
            metric="3600 mm",
        ),
        Key(
            "span_of_8_in",
            Length("1 ft", "60 ft"),
            "the same of one twice as deep; others in proportion",
            "25 ft",
            metric="7600 mm",
        ),
    ),
)
