"""Descriptions spoilt at random: whatever is typed, the answer is a building or a list of problems.

By hand, with any number of mutations: `python tests/description/test_mutations.py 10000 [SEED]`.
"""

from __future__ import annotations

import random
import re
import sys
import time
from collections.abc import Callable
from pathlib import Path
from tempfile import TemporaryDirectory

from ribwright.errors import DescriptionError, FileError
from ribwright.intake import read, starter_text, starters

Chance = random.Random

VALUES = [
    *"""0 -1 1 30 3.5 nan -inf 1e400 0x7fffffffffffffffffff true [] {} [[]] {a=1} 1979-05-27 07:32:00 bare
    30' 9'2" "9'2"" "" "0" "3/12" "12/3" "nan" "none" "centre" "front" "tube" "\\u0000" "\\ud800" '''x'''
    """.split(),  # noqa: SIM905  # as a list these would be three times as long and full of backslashes
    *('"-3 ft"', '"1e9 ft"', '"999999999 ft"', '"0.000001 mm"', '"90 deg"', '"\u00bd in"', '[1, "2 ft"]'),
    *(
        '"tube 0x0x0"',
        '"tube 4x4x9"',
        '"angle 4x4x1/0"',
        '["-1 ft", "3 ft"]',
        '"""y\n"""',
        '"centre, left first"',
    ),
    *("1" * 5000, '"' + "9" * 3000 + ' ft"', "[" * 30 + "]" * 30, "0." + "3" * 400, "1979-05-27 07:32:00"),
]
STRAY = [
    "\x00",
    "\ufeff",
    "\u202e",
    "\U0001f3e0",
    "\udc80",
    "\r",
    "\x1b[31m",
    "[",
    "]]",
    "{",
    "}",
    '"',
    "'",
    '"""',
    "#",
    "=",
    ",",
    ".",
]
STRAY += [
    "\n[",
    "\n[[opening]]\n",
    "\n[opening]\n",
    "\n[sheets]\n",
    "\nwidth = '9 m'\n",
    "a.b.c = 1\n",
    "\\",
    "\u2028",
    "e\u0301",
]


def value(text: str, chance: Chance) -> str:
    """Another value for one key."""
    lines = text.split("\n")
    at = chance.choice([n for n, line in enumerate(lines) if "=" in line] or [0])
    lines[at] = f"{lines[at].partition('=')[0]}= {chance.choice(VALUES)}"
    return "\n".join(lines)


def number(text: str, chance: Chance) -> str:
    """Another digit, sign or exponent somewhere."""
    at = chance.choice([n for n, c in enumerate(text) if c.isdigit()] or [0])
    return text[:at] + chance.choice(["-", "0", "999", ".", "e", "/", "1/", " ", "\u0663"]) + text[at + 1 :]


def unit(text: str, chance: Chance) -> str:
    """Another unit for all lengths that have it."""
    old = chance.choice([" ft", " in", " mm", " m", " deg", "/12"])
    return text.replace(
        old, chance.choice(["", " km", "'", '"', " mm", " m", ":12", "\u00b0", " ft"]), chance.randint(1, 5)
    )


def stray(text: str, chance: Chance) -> str:
    """Something that does not belong there."""
    at = chance.randrange(len(text) + 1)
    return text[:at] + chance.choice(STRAY) + text[at:]


def letter(text: str, chance: Chance) -> str:
    """One character less, or another one."""
    at = chance.randrange(max(1, len(text)))
    return text[:at] + chance.choice(["", chr(chance.randrange(1, 0x3000))]) + text[at + 1 :]


def cut_short(text: str, chance: Chance) -> str:
    return text[: chance.randrange(len(text) + 1)]


def twice(text: str, chance: Chance) -> str:
    """A line, or everything, stands twice."""
    lines = text.split("\n")
    at = chance.randrange(len(lines))
    return chance.choice(["\n".join([*lines[: at + 1], *lines[at:]]), text + text])


def moved(text: str, chance: Chance) -> str:
    """A line stands where another stood."""
    lines = text.split("\n")
    line = lines.pop(chance.randrange(len(lines)))
    lines.insert(chance.randrange(len(lines) + 1), line)
    return "\n".join(lines)


MUTATIONS: tuple[Callable[[str, Chance], str], ...] = (
    value,
    value,
    number,
    unit,
    stray,
    letter,
    cut_short,
    twice,
    moved,
)


def mutant(chance: Chance) -> bytes:
    """A starter, or the blank description with its keys uncommented, spoilt one to four times."""
    text = starter_text("x", chance.choice(["", *starters()]))
    if chance.random() < 0.3:
        text = re.sub(r"(?m)^# (?=\w+ = |\[\[)", "", text)
    for _ in range(chance.randint(1, 4)):
        text = chance.choice(MUTATIONS)(text, chance)
    content = text.encode("utf-8", "surrogatepass")
    if chance.random() < 0.05:
        at = chance.randrange(len(content) + 1)
        content = content[:at] + bytes([chance.randrange(256)]) + content[at:]
    return content


def outcome(path: Path, content: bytes) -> str:
    """What reading a file of these bytes comes to. Fails where a problem lacks its key and its line."""
    path.write_bytes(content)
    try:
        return "built" if read(path) else ""
    except FileError as error:
        assert "\n" not in str(error)
        return "refused"
    except DescriptionError as error:
        assert error.problems
        for problem in error.problems:
            assert problem.key or problem.line, problem
            assert problem.remedy, problem
            assert str(problem).isprintable(), problem
        return "described"


def test_five_hundred_mutants(tmp_path: Path) -> None:
    outcomes = [outcome(tmp_path / "mutant.toml", mutant(Chance(seed))) for seed in range(500)]
    assert set(outcomes) >= {"built", "described"}
    assert outcomes.count("described") > 250


def main(count: int, first: int = 0) -> None:
    """Reads `count` mutants, counts what came of them, and shows the slowest."""
    outcomes: dict[str, int] = {}
    slowest = (0.0, 0)
    with TemporaryDirectory() as folder:
        for seed in range(first, first + count):
            content, start = mutant(Chance(seed)), time.perf_counter()
            try:
                came_to = outcome(Path(folder) / "mutant.toml", content)
            except Exception:
                print(f"seed {seed}:\n{content.decode('utf-8', 'backslashreplace')}")
                raise
            slowest = max(slowest, (time.perf_counter() - start, seed))
            outcomes[came_to] = outcomes.get(came_to, 0) + 1
    print(outcomes, f"slowest {slowest[0] * 1000:.0f} ms, seed {slowest[1]}")


if __name__ == "__main__":
    main(*map(int, sys.argv[1:]))
