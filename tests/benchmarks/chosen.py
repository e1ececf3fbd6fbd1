"""The sheets and members of the sample, as the layout hands them on, for all who make them."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

from ribwright.intake import sample
from ribwright.layout import lay_out
from ribwright.recipe import Part
from timing import seconds

ROLES = {
    "wall sheet", "roof sheet", "column", "rafter", "knee", "base plate", "base rail", "girt", "purlin",
    "eave strut", "rake angle", "jamb", "header", "sill",
}  # fmt: skip


def chosen() -> list[Part]:
    """78 sheets and 87 members."""
    return [part for part in lay_out(sample()).parts if part.role in ROLES]


def say(
    folder: Path, build: Callable[[], object], save: Callable[[], object], mm3: Callable[[], float]
) -> None:
    """Builds and saves, and prints as JSON what that took, the sizes of the files (MB), and the volume."""
    done = {"build": seconds(build), "save": seconds(save), "mm3": mm3()}
    sizes = {kind: (folder / f"model.{kind}").stat().st_size / 1e6 for kind in ("step", "glb")}
    print(json.dumps(done | sizes))
