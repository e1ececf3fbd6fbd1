"""STEP files changed or damaged since they were written: an error, or a note; nothing is believed in silence.

By hand, off a whole building, any number: `python tests/exchange/test_damaged_steps.py 150 [SEED]`.
"""

from __future__ import annotations

import io
import random
import re
import sys
import time
from collections import Counter
from collections.abc import Callable
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from ribwright.errors import FileError
from ribwright.exchange.step import CHANGED, reading, write_step
from ribwright.intake import parse
from ribwright.order.lists.schedule import schedule
from ribwright.order.written.csv import csv_text
from ribwright.pieces import Model, Piece
from ribwright.place import Place
from ribwright.raising import raise_building
from ribwright.recipe import Prism, Section, Turned
from ribwright.solids import realise

pytestmark = pytest.mark.broad

Chance = random.Random

DAMAGED = 120
STORE = 'name = "store"\nwidth = "10 ft"\nlength = "12 ft"\neave_height = "8 ft"\npitch = "4/12"\n'


def written(model: Model) -> bytes:
    stream = io.BytesIO()
    write_step(model, stream)
    return stream.getvalue()


def flipped(data: bytes, chance: Chance) -> bytes:
    """One to three bytes, a bit each."""
    damaged = bytearray(data)
    for _ in range(chance.randint(1, 3)):
        damaged[chance.randrange(len(data))] ^= 1 << chance.randrange(8)
    return bytes(damaged)


def dropped(data: bytes, chance: Chance) -> bytes:
    """One to twenty statements in a row."""
    lines = data.split(b";\n")
    at = chance.randrange(len(lines) - 20)
    del lines[at : at + chance.choice([1, 1, 3, 20])]
    return b";\n".join(lines)


def number(data: bytes, chance: Chance) -> bytes:
    """Another number in the place of one."""
    found = chance.choice(list(re.finditer(rb"-?\d+\.\d*(?:E-?\d+)?", data)))
    return put(data, found, chance.choice([b"0.", b"-1.", b"1.E18", b"12.7", b"25.4", b"1.E-7", b"400."]))


def redirected(data: bytes, chance: Chance) -> bytes:
    """A reference to another entity."""
    others = re.findall(rb"\n(#\d+) =", data)
    return put(data, chance.choice(list(re.finditer(rb"(?<=[,(])#\d+", data))), chance.choice(others))


def swapped(data: bytes, chance: Chance) -> bytes:
    """A reference to another entity of the same kind."""
    kinds: dict[bytes, list[bytes]] = {}
    for entity, kind in re.findall(rb"\n(#\d+) = ([A-Z0-9_]+)", data):
        kinds.setdefault(kind, []).append(entity)
    alike = [entities for entities in kinds.values() if len(entities) > 1]
    one, other = chance.sample(chance.choice(alike), 2)
    uses = list(re.finditer(rb"(?<=[,(])" + one + rb"\b", data))
    return put(data, chance.choice(uses), other) if uses else data.replace(one + b" =", b"#999999999 =")


def reworded(data: bytes, chance: Chance) -> bytes:
    """Another word or unit."""
    words = [
        (b".MILLI.", b".EXA."),
        (b".MILLI.", b"$"),
        (b"'sheet screw'", b"'wall sheet'"),
        (b".T.", b".F."),
    ]
    words += [(b"'wall sheet'", b"'roof sheet'"), (b"CARTESIAN_POINT", b"DIRECTION"), (b"'mark'", b"'role'")]
    words += [(b"'sheet screw'", b"'wall sheet'"), (b"'column'", b"'girt'"), (b"'C1'", b"'C2'")]
    words += [
        (b"'colour'", b"'profile'"),
        (b"'counts'", b"'bounds'"),
        (b"'row'", b"'raw'"),
        (b"'W1'", b"'W2'"),
    ]
    old, new = chance.choice([pair for pair in words if pair[0] in data])
    return put(data, chance.choice(list(re.finditer(re.escape(old), data))), new)


def cut_out(data: bytes, chance: Chance) -> bytes:
    """Some of it missing, from any byte to any other, or the rest of it."""
    start = chance.randrange(len(data))
    return data[:start] + data[start + chance.choice([1, 40, 3000, len(data)]) :]


def put(data: bytes, found: re.Match[bytes], new: bytes) -> bytes:
    return data[: found.start()] + new + data[found.end() :]


DAMAGES: tuple[Callable[[bytes, Chance], bytes], ...] = (
    flipped,
    dropped,
    number,
    redirected,
    swapped,
    reworded,
    cut_out,
)


def damage(data: bytes, seed: int) -> bytes:
    return DAMAGES[seed % len(DAMAGES)](data, Chance(seed))


def listed(model: Model) -> str:
    return csv_text(schedule(model))


def came_to(path: Path, data: bytes, right: str) -> str:
    """What reading these bytes comes to. Fails where a wrong list is given with nothing said."""
    path.write_bytes(data)
    try:
        read = reading(path)
        found = listed(read.model)
    except FileError as error:
        assert re.fullmatch(rf"{re.escape(str(path))}: [^\n]+", str(error))
        return "refused"
    assert read.note in ("", f"{path}: {CHANGED}")
    assert read.note or found == right
    return "noted" if read.note else "as it was"


def tiny_model() -> Model:
    """Two bars, and a row of screws: as few entities as show all that is guarded."""
    bar = realise(Prism(Section(((0, 0, 0), (50, 0, 0), (50, 5, 0), (0, 5, 0))), (0, 0, 0), (0, 0, 900)))
    screw = realise(Turned(((0, -20), (2.4, -20), (2.4, 0), (6, 0), (6, 5), (0, 5)), 6))
    red, places = (("colour", "crimson"), ("material", "steel")), (Place(), Place((914.4, 0.0, 0.0)))
    bars = [Piece(f"bar {k}", "column", ("frame",), bar, place, red, "C1") for k, place in enumerate(places)]
    screws = Piece("screws", "sheet screw", ("frame",), screw, Place(), red, "SS1", ((0, 0, 0), (9, 0, 0)))
    return Model("tiny", "ft-in", (*bars, screws))


@pytest.fixture(scope="module")
def tiny() -> tuple[bytes, str]:
    model = tiny_model()
    return written(model), listed(model)


def test_what_was_not_changed_gets_no_note(tiny: tuple[bytes, str], tmp_path: Path) -> None:
    data, right = tiny
    assert came_to(tmp_path / "model.step", data, right) == "as it was"
    assert came_to(tmp_path / "model.step", data.replace(b"\n", b"\r\n"), right) == "as it was"


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        (b"'4 bodies, ", b"'5 bodies, ", "5 bodies, 1 rows, 2 marks were written, 4 bodies, 1 rows, 2 marks"),
        (b"'450000'", b"'450900'", "C1 had 450900 mm3, has 450000"),
        (b"'counts'", b"'tally'", "what it said of itself is lost"),
        (b"'bar 1'", b"'bar 1',#999999999", "#999999999 is not there, or stands there twice"),
    ],
)
def test_what_is_not_as_stated_is_named(
    old: bytes, new: bytes, said: str, tiny: tuple[bytes, str], tmp_path: Path
) -> None:
    data = tiny[0].replace(old, new)
    assert data != tiny[0]
    (tmp_path / "model.step").write_bytes(data)
    with pytest.raises(FileError, match=rf"model\.step: is a damaged STEP file: {said}"):
        reading(tmp_path / "model.step")


def test_a_volume_off_by_less_than_a_thousandth_is_a_change(tiny: tuple[bytes, str], tmp_path: Path) -> None:
    data = tiny[0].replace(b"900.", b"900.5")
    assert came_to(tmp_path / "model.step", data, "") == "noted"


def test_what_says_nothing_of_itself_is_of_another_program(tiny: tuple[bytes, str], tmp_path: Path) -> None:
    data = re.sub(rb",'SHA-256 of the data: \w+'", b"", tiny[0])
    assert came_to(tmp_path / "model.step", data, "") == "noted"
    (tmp_path / "model.step").write_bytes(data.replace(b"'counts'", b"'tally'"))
    read = reading(tmp_path / "model.step")
    assert read.note == ""
    assert {(piece.role, piece.mark, piece.labels) for piece in read.model.pieces} == {("", "", ())}


@pytest.mark.parametrize("kind", range(len(DAMAGES)), ids=[kind.__name__ for kind in DAMAGES])
def test_damage_is_refused_or_noted(kind: int, tiny: tuple[bytes, str], tmp_path: Path) -> None:
    data, right = tiny
    seeds = range(kind, DAMAGED, len(DAMAGES))
    found = Counter(came_to(tmp_path / "model.step", damage(data, seed), right) for seed in seeds)
    assert found["as it was"] <= 1, found  # damage to the head's own words


def main(count: int, first: int = 0) -> int:
    """Reads `count` damaged files of a whole building and counts what came of them, kind by kind."""
    model = raise_building(parse(STORE, "store")).model
    data, right = written(model), listed(model)
    found: Counter[tuple[str, str]] = Counter()
    slowest = 0.0
    with TemporaryDirectory() as folder:
        for seed in range(first, first + count):
            start = time.perf_counter()
            try:
                end = came_to(Path(folder) / "model.step", damage(data, seed), right)
            except Exception as error:
                end = f"{type(error).__name__} (seed {seed})"
            slowest = max(slowest, time.perf_counter() - start)
            found[DAMAGES[seed % len(DAMAGES)].__name__, end] += 1
    print(*(f"{n:4} {kind}: {end}" for (kind, end), n in sorted(found.items())), sep="\n")
    print(f"slowest {slowest:.1f} s")
    return int(not {end for _, end in found} <= {"refused", "noted", "as it was"})


if __name__ == "__main__":
    sys.path.insert(0, str(Path(__file__).parents[1]))
    sys.exit(main(*map(int, sys.argv[1:])))
