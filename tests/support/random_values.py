"""Random values for the keys of a description: both ends of a range, or something between; and what else a
building must have for an end to suit it."""

from __future__ import annotations

from random import Random

from ribwright.catalog.gauges import gauges
from ribwright.catalog.profiles import profiles
from ribwright.description.keys.catalogued import Colour, GaugeNumber, Posts, Profile, Steel
from ribwright.description.keys.key import Key
from ribwright.description.keys.value_kinds import (
    BayNumbers,
    Bays,
    Choice,
    Length,
    Lengths,
    Name,
    Pitch,
    Text,
)
from ribwright.description.keys.word_kinds import Words
from ribwright.units import INCH, parse_length

End = str
"""What kind of value a key has: "low", "high", or "" for one between."""

FT = 12
PITCHES = ["1/12", "2/12", "4/12", "6/12", "9/12", "12/12", "10 deg", "22.5 deg"]
THICKNESS = {"tube": "0.120", "angle": "0.075", "hat": "0.0346"}
SIZES = {
    "column": ["4x4", "4x3", "3.5x3.5", "4x2", "6x4", "6x2.5", "8x2.5"],
    "knee": ["2x2", "2x1.5", "3x2", "4x2", "4x4"],
    "girt": ["3x2", "3.5x2", "4x2", "4x3", "6x2", "6x2.5", "8x2.5"],
    "eave_strut": ["4x2", "5x3", "6x2", "6x2.5", "8x2.5"],
    "base_rail": ["1.5x1.5", "2x1.5", "2x2", "3x2", "3x3"],
    "rake_angle": ["4.1x1.5", "4.5x2", "5x3", "6.1x2", "8.1x2"],
    "jamb": ["2x1.5", "3x2", "3.5x2", "4x2", "4x3", "6x2"],
}
ALIKE = {"rafter": "column", "post": "column", "purlin": "girt", "header": "jamb", "sill": "jamb"}

LEAN_TO: dict[str, object] = {"wall": "left", "width": "8 ft", "pitch": "2/12", "eave_height": "7 ft"}
HIGH_LEAN_TO: dict[str, tuple[str, dict[str, object]]] = {
    "width": ("20 ft", {"pitch": "0.5/12"}),
    "pitch": ("16 ft", {"width": "5 ft"}),
    "eave_height": ("56 ft", {"width": "4 ft"}),
}
"""The main eave over a lean-to, and what else it has, for a key at its high end."""
LONG_STOCK: dict[str, object] = {"stock": ["200 ft"]}
"""For members that may not be spliced."""
DOOR_ROOM = ("headroom", "side_room", "depth_back")
ENDS: tuple[End, ...] = ("low", "high", "")
SUITS: dict[tuple[str, str, End], dict[str, dict[str, object]]] = {
    ("", "width", "high"): {
        "": {"length": "10 ft", "pitch": "1/12"},
        "framing": LONG_STOCK,
        "frame": {"front_posts": "none", "back_posts": "none"},
    },
    ("", "length", "high"): {"": {"width": "8 ft"}, "frame": {"spacing": "20 ft"}},
    ("", "eave_height", "high"): {"": {"width": "20 ft", "length": "20 ft"}, "framing": LONG_STOCK},
    ("roof", "right_eave_height", "low"): {"": {"width": "16 ft", "eave_height": "66 in", "pitch": "4/12"}},
    ("roof", "right_eave_height", ""): {"": {"width": "30 ft", "eave_height": "11 ft", "pitch": "9/12"}},
    ("roof", "right_eave_height", "high"): {
        "": {"width": "22 ft", "length": "22 ft", "eave_height": "58 ft"},
        "framing": LONG_STOCK,
    },
    ("roof", "ridge", "low"): {"": {"width": "10 ft", "pitch": "12/12"}},
    ("roof", "ridge", ""): {"": {"width": "45 ft", "pitch": "3/12"}, "framing": LONG_STOCK},
    ("roof", "ridge", "high"): {
        "": {"width": "200 ft", "length": "10 ft", "eave_height": "10 ft", "pitch": "0.5/12"},
        "roof": {"right_eave_height": "16 ft"},
        "frame": {"front_posts": "none", "back_posts": "none"},
        "framing": LONG_STOCK,
    },
    ("slab", "hang", ""): {"slab": {"hang": "2 in"}},
    ("sheets", "ridge_gap", "high"): {"": {"width": "24 ft"}},
    ("slab", "ledge_depth", "high"): {"slab": {"thickness": "15 in"}},
    ("slab", "edge_depth", "low"): {"slab": {"thickness": "2 in"}},
    ("slab", "edge_depth", ""): {"slab": {"edge_depth": "13 in"}},
    **{("slab", "edge_width", end): {"slab": {"edge_depth": "26 in"}} for end in ENDS},
    ("frame", "spacing", "high"): {"": {"length": "41 ft"}},
    ("frame", "knee_reach", "high"): {"": {"width": "24 ft", "eave_height": "14 ft"}},
    ("frame", "anchor_hole", "high"): {"frame": {"column": "tube 6x6x0.120", "post": "tube 6x6x0.120"}},
    **{
        ("door_room", name, end): {"opening": {"kind": "overhead door"}} for name in DOOR_ROOM for end in ENDS
    },
    **{
        ("wainscot", name, end): {"wainscot": {"height": "42 in"}}
        for name in ("walls", "profile", "gauge", "thickness", "colour")
        for end in ENDS
    },
    **{
        ("lean_to", name, end): {
            "": {"width": "16 ft", "length": "20 ft", "eave_height": eave},
            "lean_to": {key: value for key, value in LEAN_TO.items() if key != name} | more,
        }
        for name in (*LEAN_TO, "walls")
        for end, eave, more in (
            ("low", "12 ft", {"eave_height": "7 ft"} if name == "pitch" else {}),
            ("", "13 ft", {}),
            ("high", *HIGH_LEAN_TO.get(name, ("12 ft", {}))),
        )
    },
    ("roof", "gable_overhang", ""): {"roof": {"gable_overhang": "9 in"}},
    **{
        ("roof", "break_at", end): {"": {"width": width, "pitch": "4/12"}, "roof": {"lower_pitch": "8/12"}}
        for end, width in (("low", "26 ft"), ("", "44 ft"))
    },
    ("roof", "break_at", "high"): {
        "": {"width": "104 ft", "length": "12 ft", "pitch": "1/12"},
        "roof": {"lower_pitch": "4/12"},
        "sheets": {"longest": "60 ft"},
        "framing": LONG_STOCK,
    },
    **{
        ("roof", "lower_pitch", end): {"": {"width": "26 ft", "pitch": "7/12"}, "roof": {"break_at": "6 ft"}}
        for end in ENDS
    },
    ("skirt", "foot", ""): {"": {"width": "14 ft", "length": "14 ft", "eave_height": "18 ft"}},
    ("skirt", "foot", "high"): {
        "": {"width": "20 ft", "length": "20 ft", "eave_height": "52 ft"},
        "framing": LONG_STOCK,
    },
    **{("skirt", "walls", end): {"skirt": {"foot": "4 ft"}} for end in ENDS},
    ("frame", "bays", "low"): {"": {"length": "8 ft"}},
    ("frame", "bays", "high"): {"": {"length": "80 ft"}},
    ("framing", "girt_heights", "high"): {
        "": {"width": "24 ft", "length": "20 ft", "eave_height": "50 ft", "pitch": "18/12"},
        "framing": LONG_STOCK,
    },
    ("opening", "width", "high"): {
        "": {"width": "70 ft", "length": "10 ft", "pitch": "1/12"},
        "opening": {"kind": "framed opening", "wall": "front", "from_left": "60 in"},
    },
    ("opening", "height", "high"): {
        "": {"width": "20 ft", "length": "20 ft", "eave_height": "44 ft"},
        "framing": LONG_STOCK,
        "opening": {"kind": "overhead door"},
    },
    ("opening", "sill", "low"): {"opening": {"kind": "window"}},
    ("opening", "width", "low"): {"opening": {"kind": "window"}},
    ("opening", "sill", "high"): {
        "": {"width": "20 ft", "length": "20 ft", "eave_height": "46 ft"},
        "framing": LONG_STOCK,
        "opening": {"kind": "window", "height": "24 in"},
    },
}
"""Tables of keys that a building needs for a key to stand at an end of its range."""


def inches(chance: Random, low: float, high: float) -> float:
    """A length between two numbers of inches, on sixteenths."""
    return chance.randint(round(low * 16), max(round(low * 16), round(high * 16))) / 16


def has_ends(key: Key) -> bool:
    """Whether a key's values have a lowest and a highest."""
    return isinstance(key.kind, Length | Lengths | Pitch)


def at_end(key: Key, end: End) -> object:
    """The lowest or highest value of a key that has them."""
    assert isinstance(key.kind, Length | Lengths | Pitch)
    value = key.kind.low if end == "low" else key.kind.high
    if key.name == "bays":
        return [value] * (4 if end == "low" else 2)
    return [value] if isinstance(key.kind, Lengths) else value


def between(chance: Random, key: Key, width: float, length: float, eave: float) -> object:  # noqa: PLR0911, PLR0912  # one a kind
    """A value for a key of a building of that many inches, another one than its default."""
    match key.kind:
        case Steel() if key.name == "brace":
            return chance.choice(["rod 1/2", "cable 3/8", "rod 16 mm", "strap 2x1/8"])
        case Steel() if key.name == "strut":
            return chance.choice(["none", "tube 2x2x0.120", "tube 3x1.5x0.083"])
        case BayNumbers():
            return chance.choice(["ends", [1], "1, 2"])
        case Steel(shapes=shapes, none=none):
            shape, sizes = chance.choice(shapes), SIZES[ALIKE.get(key.name, key.name)]
            made = f"{shape} {chance.choice(sizes)}x{THICKNESS.get(shape, '0.059')}"
            return "none" if none and chance.random() < 0.4 else made
        case Posts():
            third = [f"{width / 3:.4f} in", f"{2 * width / 3:.4f} in"]
            words = ["none", "none"] if key.name == "back_posts" else ["centre", "centre"]
            return chance.choice([third, *words] if width > 18 * FT else words)
        case Lengths() if key.name == "bays":
            first = inches(chance, length / 3, length / 2)
            return [f"{first} in", f"{length - first:.4f} in"]
        case Lengths(low=low, high=high) if key.name.endswith("stock"):
            ends = [parse_length(end) / INCH for end in (low, high)]
            return [f"{inches(chance, *ends)} in" for _ in range(chance.randint(1, 3))]
        case Lengths():
            first = inches(chance, 8, eave / 2)
            return [f"{first} in", f"{inches(chance, first + 9, max(first + 9, eave - 14))} in"]
        case Length():
            return _length(chance, key, key.kind)
        case Words():
            walls = [["front", "back", "outer"], ["left", "right", "outer"], "front", ["back"]]
            return chance.choice([["outer"], *walls])
        case Choice(words=words):
            return chance.choice([word for word in words if word != key.default])
        case Bays():
            return chance.choice(["open", "open in bay 1", "open in bays 1-2"])
        case Pitch():
            return chance.choice(PITCHES)
        case Colour():
            return chance.choice(["firebrick", "#102030", "lightsteelblue"])
        case Profile():
            return chance.choice([name for name in profiles() if name != key.default])
        case GaugeNumber():
            return chance.choice([number for number in gauges() if number != 29])
        case Text():
            return chance.choice(["12 Mill Lane", "1 March 2026", "x" * 100])
        case Name():
            return chance.choice(["a name", "n", "N" * 60, "Scheune mit Tür, 3/4".replace("/", " ")])
    raise AssertionError(f"no random values for {key.name}")


def _length(chance: Random, key: Key, kind: Length) -> str:
    """Half to twice the default; low in the range where there is none."""
    low, high = parse_length(kind.low) / INCH, parse_length(kind.high) / INCH
    about = parse_length(key.default) / INCH if key.default else 0.0
    about = about or low + (high - low) / 10
    return f"{chance.uniform(max(low, about / 2), min(high, about * 2)):.3f} in"
