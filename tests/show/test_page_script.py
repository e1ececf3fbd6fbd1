"""The page's script by itself, in node: its own tests, and its lengths held against those of the lists."""

from __future__ import annotations

import json
import random
import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
from ribwright.units import INCH, format_length

ROOT = Path(__file__).parents[2]
LENGTHS = """
import { length } from "./model/show/page/script/figures.mjs";
const given = JSON.parse(process.argv[1]);
console.log(JSON.stringify(given.map((mm) => length(mm, "ft-in"))));
"""


@pytest.fixture(scope="module")
def node(missing: Callable[[str], None]) -> str:
    program = shutil.which("node")
    if not program:
        missing("node")
    return program or ""


def test_its_own_tests_pass(node: str) -> None:
    done = subprocess.run(
        [node, "--test", str(ROOT / "tests/show/script/page.test.mjs")],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout


def test_lengths_are_said_as_the_lists_say_them(node: str) -> None:
    """To the nearest sixteenth, halves up: random ones, and those half between two sixteenths."""
    chosen = random.Random(1)
    given = [chosen.uniform(0, 40_000) for _ in range(400)]
    given += [round(k * INCH / 32, 5) for k in range(768)]
    done = subprocess.run(
        [node, "--input-type=module", "-e", LENGTHS, json.dumps(given)],
        cwd=ROOT, capture_output=True, text=True, check=True,
    )  # fmt: skip
    assert json.loads(done.stdout) == [format_length(mm, "ft-in") for mm in given]
