"""Price files spoilt at random: prices, or one line that says what is wrong."""

from __future__ import annotations

import random
import sys
from pathlib import Path
from tempfile import TemporaryDirectory

from ribwright.errors import FileError
from ribwright.order.buying.prices import read_prices

GOOD = 'item,unit,price\nwall sheet,each,12.50\n"trim, 10\'",each,8\nconcrete,yd3,150.25\n'
STRAY = [
    "\0",
    '"',
    ",",
    "\n",
    "\r",
    ";",
    "\t",
    "_",
    "e9",
    "-",
    "inf",
    "\uff11",
    "\x1b[2J",
    "\ufeff",
    "9" * 400,
]


def spoilt(seed: int) -> bytes:
    """The good file with one to three things put in, left out or doubled."""
    chance, text = random.Random(seed), GOOD
    for _ in range(chance.randint(1, 3)):
        start = chance.randrange(len(text))
        end = min(len(text), start + chance.choice([0, 0, 1, 5]))
        text = text[:start] + chance.choice([*STRAY, text[start:end] * 2]) + text[end:]
    data = text.encode()
    return data if chance.random() > 0.1 else data.replace(b"e", bytes([chance.randrange(128, 256)]), 1)


def came_to(path: Path, data: bytes) -> str:
    path.write_bytes(data)
    try:
        prices = read_prices(path)
    except FileError as error:
        assert str(error).startswith(f"{path}: ")
        assert str(error).isprintable()
        return "refused"
    assert all(0 <= row.price < 1e9 for row in prices)
    return "read"


def test_a_hundred_spoilt_price_files(tmp_path: Path) -> None:
    found = [came_to(tmp_path / "prices.csv", spoilt(seed)) for seed in range(100)]
    assert set(found) == {"read", "refused"}


def main(count: int) -> int:
    """Reads so many of them and counts what came of it."""
    with TemporaryDirectory() as folder:
        found = [came_to(Path(folder) / "prices.csv", spoilt(seed)) for seed in range(count)]
    print(*(f"{found.count(end):4} {end}" for end in sorted(set(found))), sep="\n")
    return 0


if __name__ == "__main__":
    sys.exit(main(int(sys.argv[1])))
