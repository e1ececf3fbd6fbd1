"""A shell that asks what may come next is told, by the command as it is installed."""

from __future__ import annotations

import os
import subprocess
import sys

COMMAND = [sys.executable, "-c", "from ribwright.cli.start import main; main()"]


def asked(instruction: str, words: str = "", number: int = 1) -> str:
    env = {**os.environ, "_RIBWRIGHT_COMPLETE": instruction, "COMP_WORDS": words, "COMP_CWORD": str(number)}
    return subprocess.run(COMMAND, env=env, capture_output=True, text=True, check=False).stdout


def test_commands_options_and_choices_are_offered() -> None:
    assert asked("bash_complete", "ribwright pi").splitlines() == ["plain,picture"]
    assert "plain,--stock" in asked("bash_complete", "ribwright order --st", 2).splitlines()
    offered = asked("bash_complete", "ribwright schedule --format ", 3).splitlines()
    assert offered == ["plain,table", "plain,csv", "plain,json", "plain,md"]
    assert asked("bash_complete", "ribwright check ", 2).splitlines() == ["file,"]


def test_the_line_of_the_readme_gives_a_script() -> None:
    for shell in ("bash", "zsh", "fish"):
        assert "_RIBWRIGHT_COMPLETE" in asked(f"{shell}_source")
