"""Descriptions of random buildings, told by a number: over every key there is.

The keys are dealt like cards from shuffled decks, so that each comes equally often; of a hand the first two
stand at an end of their range, where they have one. A building is small, unless an end asks for a large one.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import count, product
from random import Random

from ribwright.description.building import Building
from ribwright.description.keys.sheet_tables import HALF_WALL, RIDGE_VENT
from ribwright.description.keys.tables import (
    BRACING,
    INSULATION,
    LEAN_TO,
    LIGHT_SHEETS,
    OPENING,
    SLIDES,
    TABLES,
)
from ribwright.description.opening import SLIDING
from ribwright.errors import DescriptionError
from ribwright.intake import parse
from support.random_openings import WALLS, Values, in_inches, openings_of
from support.random_values import PITCHES, SUITS, End, at_end, between, has_ends

HAND = 18
"""Keys that a building is dealt."""
FEWEST = 5
"""Of them that it keeps at least, where some do not suit each other and are put back."""
AT_ENDS = 2
"""Of them stand at an end of their range."""
TRIES = 3
"""Sets of sizes and other values that a hand is tried with: ends that stand next to each other suit few."""
RARE = (
    *(("roof", name) for name in ("right_eave_height", "ridge", "gable_overhang")),
    ("walls", "left"),
    ("skirt", "walls"),
    ("slab", "ledge_depth"),
    ("slab", "hang"),
    *[(LEAN_TO.name, "walls")] * 3,
)
"""Keys dealt more often: fewer buildings with them can be built."""
UNDEALT = (BRACING.name, HALF_WALL.name, LIGHT_SHEETS.name, INSULATION.name, RIDGE_VENT.name)
"""Tables whose keys are not dealt: they are added to some buildings."""
ADDED = (
    ("framing", "purlin_stock"),
    ("framing", "purlin_splices"),
    ("framing", "purlin_lap"),
    *((OPENING.name, name) for name in ("colour", "swing", "slides")),
    (LEAN_TO.name, "between"),
    (LEAN_TO.name, "bays"),
)
"""Nor are these, which go with others."""
BRACED = 3
"""Every third building is braced, where it can be."""
LIT = 4
"""Every fourth has light sheets in one of its faces, where it can have them."""
BLANKETED = 5
"""Every fifth is insulated, in walls, roof or both."""
PASSED = 2
"""Every second lean-to is open to its building, every other one bay long, where it can be."""
AIRED = 5
"""Every fifth has a vent on its ridge, where it can have one."""
NESTED = 3
"""Every third has zee purlins that nest where they are longer than a stock that is short, where it can."""
HALVED = 2
"""Every second has half walls where it is not open, and no openings, where it can have them."""
VENTED = 2
"""Every second has vents for windows."""
SLID = (1, 4)
"""Of every five these have a door that slides, where they can have one."""
ENDS_OF: dict[tuple[str, str], tuple[End, ...]] = {("", "length"): ("low", "low", "low", "low", "high")}
"""A building of 1000 ft takes as long as twenty others: it is drawn less often."""
Dealt = dict[tuple[str, str], End]
"""Table and name of a key, and what kind of value it has."""
KEYS = {(table.name, key.name): key for table in TABLES for key in table.keys}


@dataclass(frozen=True)
class Drawn:
    """A description: its number, what it was dealt and kept, its text."""

    number: int
    dealt: Dealt
    text: str


def described(number: int) -> Drawn:
    """The description of a number, the same at every run: of those tried with the keys that it was dealt, the
    first that can be built, or the last."""
    chance = Random(f"values {number}")
    for kept in _kept(hand(number)):
        text = _text(number, kept, chance)
        if parsed(text) is not None:
            break
    return Drawn(number, kept, text)


def _kept(dealt: Dealt) -> Iterator[Dealt]:
    """A hand as often as it is tried, then with a key less each time, those at an end kept longest."""
    cards = sorted(dealt.items(), key=lambda card: not card[1])
    for keys in (*[HAND] * TRIES, *range(HAND - 1, FEWEST - 1, -1)):
        yield dict(cards[:keys])


def _text(number: int, dealt: Dealt, chance: Random) -> str:
    """A description with the keys that were dealt, of other sizes and values at each call."""
    values: Values = {"": {}}
    for card, end in dealt.items():
        for table, more in SUITS.get((*card, end), {}).items():
            values.setdefault(table, {}).update(more)
    for card, end in dealt.items():
        if end:
            values.setdefault(card[0], {})[card[1]] = at_end(KEYS[card], end)
    values[""] = {**_whole(chance), **values[""]}
    size = [in_inches(values[""][name]) for name in ("width", "length", "eave_height")]
    for (table, name), end in dealt.items():
        if not end and table != OPENING.name and (table == "" or name not in values.get(table, {})):
            values.setdefault(table, {}).setdefault(name, between(chance, KEYS[table, name], *size))
    for table in values.values():
        if "thickness" in table:
            table.pop("gauge", None)
    wanted = values.pop(OPENING.name, None)
    openings = openings_of(chance, wanted, values, *size)
    top = _lines(values.pop(""))
    tables = "".join(f"{_header(name)}\n{_lines(table)}" for name, table in values.items())
    if number % VENTED:
        openings = [one | {"kind": "vent"} if one["kind"] == "window" else one for one in openings]
    text = top + tables + _holes(openings)
    if number % 5 in SLID:
        sliding = (top + tables + _holes(some) for some in _slid(number, openings))
        text = next((one for one in sliding if parsed(one) is not None), text)
    if number % HALVED == 0:
        text = _where_it_can(top + tables, _half_walls(number, values), otherwise=text)
    if number % BRACED == 0:  # not dealt, so that no bay without an opening is no building less
        keys = {key.name: between(chance, key, *size) for key in BRACING.keys}
        text = _where_it_can(text, f"[{BRACING.name}]\n{_lines(keys)}")
    return _clothed(number, _passed(number, text))


def _half_walls(number: int, values: Values) -> str:
    """A table of half walls, around or at the sides of a building with open gables."""
    half = f'[{HALF_WALL.name}]\nheight = "{Random(f"half walls {number}").randint(30, 60)} in"\n'
    if "walls" not in values and number % 5:
        half += 'walls = "sides"\n[walls]\nfront = "open"\nback = "open"\n'
    return half


def _passed(number: int, text: str) -> str:
    """A description whose lean-to, if it has one, is open to its building, or ends within its wall."""
    header = _header(LEAN_TO.name)
    more = 'between = "open"' if number % PASSED else "bays = 1"
    passed = text.replace(header, f"{header}\n{more}")
    return passed if parsed(passed) is not None else text


def _holes(openings: list[dict[str, object]]) -> str:
    return "".join(f"[[{OPENING.name}]]\n{_lines(opening)}" for opening in openings)


def _slid(number: int, openings: list[dict[str, object]]) -> Iterator[list[dict[str, object]]]:
    """Openings one of which, on the slab, has a leaf that slides: each way, as wide and narrower."""
    own = Random(f"sliding doors {number}")
    for share, slides in product((1.0, 0.5, 0.25), own.sample(SLIDES, len(SLIDES))):
        for at, one in enumerate(openings):
            if one["kind"] not in ("window", "vent") and "sill" not in one:
                wide = round(in_inches(one["width"]) * share, 2)
                leaf = {"kind": SLIDING, "slides": slides, "width": f"{wide} in"}
                other = {key: value for key, value in one.items() if key != "swing"} | leaf
                yield [*openings[:at], other, *openings[at + 1 :]]


def _clothed(number: int, text: str) -> str:
    """A description with light sheets, blankets and vents, which stay clear of the other keys."""
    if number % LIT == 1:
        own = Random(f"light sheets {number}")
        face = own.choice([*WALLS, "left slope", "right slope"])
        which = own.choice(["sheets = [2]", f"every = {own.randint(2, 4)}"])
        colour = own.choice(["", 'colour = "lightsteelblue"\n'])
        lights = f'[[{LIGHT_SHEETS.name}]]\nface = "{face}"\n{which}\n{colour}'
        text = _where_it_can(text, lights)
        if f"[[{LEAN_TO.name}]]" in text:
            own_slope = f'[[{LIGHT_SHEETS.name}]]\nface = "lean-to slope"\nevery = {own.randint(2, 4)}\n'
            text = _where_it_can(text, own_slope)
    if number % BLANKETED == 2:
        own = Random(f"blankets {number}")
        where = own.choice([["walls"], ["roof"], ["walls", "roof"]])
        thick = "".join(f'{face} = "{own.randint(2, 6)} in"\n' for face in where)
        blankets = f'[{INSULATION.name}]\n{thick}roll = "{own.choice([36, 48, 60, 72])} in"\n'
        blankets += f'longer = "{own.choice([0, 6, 12])} in"\n'
        text = _where_it_can(text, blankets)
    if number % AIRED == 4:
        own = Random(f"ridge vents {number}")
        vents = f'places = ["{own.randint(24, 48)} in"]\nlength = "{own.randint(24, 96)} in"\n'
        text = _where_it_can(text, f"[{RIDGE_VENT.name}]\n{vents}")
    if number % NESTED == 1:
        text = _nested(text, Random(f"nested purlins {number}"))
    return text


def _nested(text: str, own: Random) -> str:
    """A description with purlins that nest, where it names none itself and can be built so."""
    depth, thick = own.choice([4, 6, 8]), own.choice(["0.05", "0.059", "0.075", "0.105"])
    keys = f'purlin = "zee {depth}x2.25x{thick} wider 0.1875"\npurlin_splices = "nested"\n'
    keys += f'purlin_stock = ["{own.choice([12, 16, 20, 24])} ft"]\n'
    keys += f'purlin_lap = "{own.randint(12, 36)} in"\n' * own.randint(0, 1)
    head, table, rest = text.partition("[framing]\n")
    return _where_it_can(head, f"[framing]\n{keys}{rest}", otherwise=head + table + rest)


def _where_it_can(text: str, more: str, otherwise: str = "") -> str:
    """A description with a table more where that can be built; else as it was, or another one."""
    return text + more if parsed(text + more) is not None else otherwise or text


def buildings(first: int = 0) -> Iterator[tuple[Drawn, Building]]:
    """Those that can be built, from a number on."""
    return built(map(described, count(first)))


def built(drawings: Iterable[Drawn]) -> Iterator[tuple[Drawn, Building]]:
    """Those of some descriptions that can be built."""
    for drawn in drawings:
        if (building := parsed(drawn.text)) is not None:
            yield drawn, building


def parsed(text: str) -> Building | None:
    """The building of a description; None where it is refused."""
    try:
        return parse(text, "random")
    except DescriptionError:
        return None


def hand(number: int) -> Dealt:
    """What the building of a number is dealt."""
    chance = Random(f"building {number}")
    cards = [card for card in KEYS if card[0] not in UNDEALT and card not in ADDED] + [*RARE]
    places = range(number * HAND, (number + 1) * HAND)
    hand = dict.fromkeys(Random(n // len(cards)).sample(cards, len(cards))[n % len(cards)] for n in places)
    ranged = [card for card in hand if has_ends(KEYS[card])][:AT_ENDS]
    return {
        card: chance.choice(ENDS_OF.get(card, ("low", "high"))) if card in ranged else "" for card in hand
    }


def _whole(chance: Random) -> dict[str, object]:
    width, length, eave = chance.randint(9, 24), chance.randint(8, 30), chance.randint(84, 144)
    pitch = chance.choice(["3/12", *PITCHES])
    return {"width": f"{width} ft", "length": f"{length} ft", "eave_height": f"{eave} in", "pitch": pitch}


def _header(name: str) -> str:
    return f"[[{name}]]" if name == LEAN_TO.name else f"[{name}]"


def _lines(table: dict[str, object]) -> str:
    return "".join(f"{key} = {json.dumps(value)}\n" for key, value in table.items())
