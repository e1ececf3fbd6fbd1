"""A building, a file and a folder whose every name is an attack: none reaches a terminal or a spreadsheet."""

from __future__ import annotations

import csv
import io
import json
import re
from dataclasses import replace
from pathlib import Path

import openpyxl
import pytest
from ribwright.cli.main import run
from ribwright.exchange.glb import write_glb
from ribwright.exchange.step import read_step, write_step
from ribwright.exchange.stl import write_stl
from ribwright.pieces import Model, Piece
from ribwright.printable import cell
from support.sample_building import sample_model

pytestmark = pytest.mark.broad

ATTACKS = [
    "\x1b]0;owned\x07",
    "=cmd|'/C calc'!A0",
    "@SUM(1)",
    "+1+1",
    "-2+3",
    "\t=1",
    "\r\n=1",
    "\u202egnp.exe",
]
ATTACKS += ["\x9b31m", "\x00", "\udc80", "a\nNote: all is well", "\uff1d1+1", "x" * 9_000]
ROLES = ("column", "girt", "wall sheet", "base trim")
RUNS = "=+-@\t\r"


def attacked(model: Model) -> Model:
    """Every text that is not needed to know what a piece is, in turn one of the attacks."""
    pieces = [_attacked(piece, number) for number, piece in enumerate(model.pieces)]
    return replace(model, name=ATTACKS[0] + ATTACKS[1], pieces=tuple(pieces))


def _attacked(piece: Piece, number: int) -> Piece:
    attack = ATTACKS[number % len(ATTACKS)]
    labels = tuple((key, value if key == "material" else attack) for key, value in piece.labels)
    group = (attack, *piece.group[1:])
    return replace(piece, name=f"{attack}{number}", group=group, labels=labels, mark=f"{attack}{piece.mark}")


@pytest.fixture(scope="module")
def hostile(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A STEP file of the attacked sample, as it would come from someone unkind."""
    few = [piece for role in ROLES for piece in [p for p in sample_model().pieces if p.role == role][:14]]
    path = tmp_path_factory.mktemp("hostile") / "model.step"
    write_step(attacked(replace(sample_model(), pieces=tuple(few))), path)
    raw = path.read_bytes().replace(b"\\\\x1b]0;owned\\\\x07", b"\\X2\\001B\\X0\\]0;owned\\X2\\0007\\X0\\")
    assert raw != path.read_bytes()
    path.write_bytes(raw)  # as another writer spells it
    return path


def unprintable(text: str) -> str:
    return "".join(sorted({letter for letter in text if letter != "\n" and not letter.isprintable()}))


@pytest.mark.parametrize(
    "command",
    [
        "schedule",
        "schedule --format md",
        "schedule --format json",
        "order",
        "order --format json",
        "picture --only x",
    ],
)
def test_what_is_printed_can_be_printed(
    command: str, hostile: Path, capfdbinary: pytest.CaptureFixture[bytes]
) -> None:
    name, *options = command.split()
    run([name, str(hostile), *options])
    said = b"".join(capfdbinary.readouterr()).decode("utf-8")
    assert "owned" in said
    assert unprintable(said) == ""


@pytest.mark.parametrize("name", ["schedule", "order"])
def test_no_cell_is_run(name: str, hostile: Path, capfdbinary: pytest.CaptureFixture[bytes]) -> None:
    assert run([name, str(hostile), "--format", "csv"]) == 0
    text = capfdbinary.readouterr()[0].decode("utf-8")
    cells = [one for row in csv.reader(io.StringIO(text, newline="")) for one in row]
    assert [one for one in cells if one.lstrip()[:1] in {*RUNS} and one.strip()] == []
    assert any(one.startswith("'=cmd") for one in cells)  # both say whose building it is
    assert unprintable(text.replace("\r\n", "")) == ""


OURS = (
    r"SUM\([A-Z]+\d+:[A-Z]+\d+\)",
    r'IF\(ISNUMBER\([A-Z]+\d+\),ROUND\([A-Z]+\d+\*[A-Z]+\d+,2\),""\)',
    r'IF\(COUNT\((?P<sums>[A-Z]\d+:[A-Z]\d+)\)=0,"",SUM\((?P=sums)\)\)',
    r"'[a-z ]+'![A-Z]+\d+",
)
"""The formulas of our workbook: sums, a price times a quantity where there is one, a sum of sums."""


def test_no_cell_of_the_workbook_is_a_formula_but_ours(hostile: Path, tmp_path: Path) -> None:
    assert run(["order", str(hostile), "--format", "xlsx", "--out", str(tmp_path / "o.xlsx")]) == 0
    for sheet in openpyxl.load_workbook(tmp_path / "o.xlsx"):
        for one in (one for row in sheet.iter_rows() for one in row if one.data_type == "f"):
            assert any(re.fullmatch(f"={formula}", one.value) for formula in OURS), one.value


def test_names_in_files_can_be_printed(tmp_path: Path) -> None:
    model = attacked(replace(sample_model(), pieces=sample_model().pieces[:40]))
    for write in (write_glb, write_stl, write_step):
        write(model, tmp_path / write.__name__)
    data = (tmp_path / "write_glb").read_bytes()
    content = json.loads(data[20 : 20 + int.from_bytes(data[12:16], "little")])
    texts = [node["name"] for node in content["nodes"]] + [m["name"] for m in content["materials"]]
    texts += [str(value) for node in content["nodes"] for value in node.get("extras", {}).values()]
    read = read_step(tmp_path / "write_step")
    texts += [read.name, *(piece.name for piece in read.pieces), *(piece.mark for piece in read.pieces)]
    assert [text for text in texts if not text.isprintable()] == []
    assert (tmp_path / "write_stl").read_bytes()[:80].isascii()


@pytest.mark.parametrize("attack", [attack for attack in ATTACKS if "\0" not in attack and len(attack) < 99])
@pytest.mark.parametrize("command", ["check", "raise", "schedule", "order --prices", "picture --out", "new"])
def test_a_file_of_such_a_name(
    command: str, attack: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    name = attack.replace("/", "")
    (tmp_path / f"{name}.toml").mkdir()
    assert run([*command.split(), str(tmp_path / f"{name}.toml")]) == 2
    said = "".join(capsys.readouterr())
    assert said
    assert unprintable(said) == ""


@pytest.mark.parametrize(
    ("given", "text"),
    [("=1", "'=1"), ("-1.5", "-1.5"), ("-x", "'-x"), (" =1", "' =1"), (-1.5, -1.5), ("13' 0\"", "13' 0\"")],
)
def test_a_figure_stays_a_number_and_a_formula_becomes_text(given: object, text: object) -> None:
    assert cell(given) == text
