"""The source distribution holds all that is tracked, so that its own tests pass."""

from __future__ import annotations

import shutil
import subprocess
import sys
import tarfile
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
BUILD = "from setuptools.build_meta import build_sdist; import sys; build_sdist(sys.argv[1])"


def test_everything_tracked_is_in_it(tmp_path: Path) -> None:
    if not (ROOT / ".git").exists():
        pytest.skip("not a clone: nothing tells what is tracked")
    listing = subprocess.run(["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=True).stdout
    tracked = {name for name in listing.splitlines() if (ROOT / name).is_file()}
    for name in tracked:
        (tmp_path / "source" / name).parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(ROOT / name, tmp_path / "source" / name)
    git = ["git", "-c", "user.name=x", "-c", "user.email=x@example.com"]
    commands = (["git", "init"], ["git", "add", "--all", "--force"], [*git, "commit", "--message", "x"])
    for command in (*commands, [sys.executable, "-c", BUILD, str(tmp_path)]):
        subprocess.run(command, cwd=tmp_path / "source", check=True, capture_output=True)
    (archive,) = tmp_path.glob("*.tar.gz")
    with tarfile.open(archive) as tar:
        held = {name.partition("/")[2] for name in tar.getnames()}
    assert tracked - held == set()
