"""The process that raises: what it remembers is right, what it is at it leaves for a newer text."""

from __future__ import annotations

import asyncio
import signal
import subprocess
import sys
import time
from asyncio.subprocess import PIPE
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from ribwright.intake import parse, sample_text, starter_text, starters
from ribwright.layout import lay_out
from ribwright.live.laying import Layouts, colours, uncoloured
from ribwright.live.raiser import COMMAND, Raiser
from ribwright.live.told import Found, Job, Ready, Seen, Wrong, packet, received
from ribwright.raising import raise_building
from ribwright.show.page.content import seen

TEXT = sample_text()
OTHERS = """
[gable_sheets]
colour = "tan"
[wainscot]
height = "3 ft"
colour = "brown"
[trim]
colour = "navy"
corner_colour = "black"
eave_colour = "tan"
[[opening]]
kind = "walk door"
wall = "front"
width = "3 ft"
height = "6 ft 8 in"
from_left = "3 ft"
colour = "maroon"
"""


class Raising:
    """A process that raises, and what it answers."""

    def __init__(self) -> None:
        self.process = subprocess.Popen(COMMAND, stdin=subprocess.PIPE, stdout=subprocess.PIPE)
        self.number = 0
        assert isinstance(self.next(), Ready)

    def next(self) -> Any:
        assert self.process.stdout
        return received(self.process.stdout)

    def give(self, text: str, pieces: int = 100_000) -> int:
        assert self.process.stdin
        self.number += 1
        self.process.stdin.write(packet(Job(self.number, f"digest {self.number}", text, "named", pieces)))
        self.process.stdin.flush()
        self.process.send_signal(signal.SIGUSR1)
        return self.number


@pytest.fixture(scope="module")
def raising() -> Iterator[Raising]:
    """One that is warm."""
    started = Raising()
    started.give(TEXT)
    assert [type(started.next()), type(started.next())] == [Seen, Found]
    yield started
    started.process.kill()
    started.process.wait()


@pytest.mark.parametrize("name", starters())
def test_a_remembered_layout_is_the_layout(name: str) -> None:
    """Part by part, of the building itself and of one in other colours."""
    layouts = Layouts()
    first = parse(starter_text("first", name), "first")
    other = parse(
        starter_text("first", name).replace('"gainsboro"', '"tan"').replace('"slategray"', '"navy"'), "x"
    )
    for building in (first, other, first):
        assert layouts.lay(building) == lay_out(building)
    assert layouts.known and layouts.known[0] == uncoloured(first)


def test_every_place_with_a_colour_of_its_own_keeps_it() -> None:
    text = 'width = "20 ft"\nlength = "24 ft"\neave_height = "9 ft"\npitch = "3/12"\n'
    text += '[sheets]\nwall_colour = "white"\n'
    building = parse(text + OTHERS, "many")
    assert set(colours(building).values()) == {
        "white",
        "slategray",
        "tan",
        "brown",
        "navy",
        "black",
        "maroon",
    }
    layouts = Layouts()
    for colour in ("white", "black", "tan"):
        other = (text + OTHERS).replace('"white"', f'"{colour}"').replace('"maroon"', f'"{colour}"')
        again = parse(other, "many")
        assert layouts.lay(again) == lay_out(again)
        assert layouts.known and layouts.known[0] == uncoloured(building)


def test_what_is_seen_is_what_was_raised(raising: Raising) -> None:
    number = raising.give(TEXT.replace("gainsboro", "tan"))
    answer = raising.next()
    model = raise_building(parse(TEXT.replace("gainsboro", "tan"), "named")).model
    assert (answer.number, answer.digest) == (number, f"digest {number}")
    assert answer.content.items() >= seen(model, "ft-in").items()
    assert len(answer.geometry.mesh) == len(model.pieces)
    assert isinstance(raising.next(), Found)


@pytest.mark.parametrize("after", [0.02, 0.4, 1.5])
def test_a_newer_text_overtakes_the_one_at_work(after: float, raising: Raising) -> None:
    """What is said last is of the newest; nothing comes of the older one but what was seen of it before."""
    older = raising.give(TEXT.replace('"40 ft"', f'"{300 + after} ft"'))
    time.sleep(after)
    newer = raising.give(TEXT.replace('"11 ft"', '"12 ft"'))
    answers = [raising.next()]
    while not (isinstance(answers[-1], Found) and answers[-1].number == newer):
        answers.append(raising.next())
    assert [type(one) for one in answers if one.number == newer] == [Seen, Found]
    assert not any(isinstance(one, Found) and one.number == older for one in answers)
    assert after > 1 or not any(one.number == older for one in answers)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("width = ", "line 1"),
        ('width = "30 ft"\n', "length"),
        (TEXT.replace('"40 ft"', '"900 ft"'), "pieces"),
    ],
)
def test_what_cannot_be_raised_is_said(text: str, said: str, raising: Raising) -> None:
    number = raising.give(text, pieces=5000)
    answer = raising.next()
    assert isinstance(answer, Wrong)
    assert answer.number == number
    words = " ".join(
        f"line {one['line']} {one['key']} {one['read']} {one['remedy']}" for one in answer.problems
    )
    assert said in words


def test_it_ends_where_it_holds_too_much() -> None:
    """Once all is said of a building: another takes the next."""
    code = "import ribwright.live.worker as own; own.SENSIBLE = own.MUCH = 0.001; own.main()"
    process = subprocess.Popen(
        [sys.executable, "-P", "-c", code], stdin=subprocess.PIPE, stdout=subprocess.PIPE
    )
    assert process.stdin
    assert process.stdout
    assert isinstance(received(process.stdout), Ready)
    process.stdin.write(packet(Job(1, "digest", TEXT, "named", 100_000)))
    process.stdin.flush()
    assert [type(received(process.stdout)) for _ in range(2)] == [Seen, Found]
    assert process.wait(30) == 0


def test_a_module_in_the_folder_is_none_of_its(tmp_path: Path) -> None:
    (tmp_path / "numpy.py").write_text("raise SystemExit('run')", encoding="utf-8")
    process = subprocess.Popen(COMMAND, stdin=subprocess.PIPE, stdout=subprocess.PIPE, cwd=tmp_path)
    assert process.stdout
    assert isinstance(received(process.stdout), Ready)
    process.communicate(timeout=30)
    assert process.returncode == 0


GONE = Job(1, "", "", "gone", 1)


def test_a_text_for_a_process_that_is_gone_unheard_waits_for_the_next() -> None:
    """It ended, and was taken away, before its end was heard of."""

    async def gone() -> Raiser:
        raiser = Raiser(lambda answer: None)
        command = (sys.executable, "-c", "")
        raiser.process = await asyncio.create_subprocess_exec(*command, stdin=PIPE, stdout=PIPE)
        await raiser.process.wait()
        raiser.listens = True
        raiser.take(GONE)
        return raiser

    raiser = asyncio.run(gone())
    assert raiser.job == GONE
