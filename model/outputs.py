"""The one list of what `raise` writes: used by the command, its help and the README.

A new output is one more line in OUTPUTS and its writer. Writers are loaded when they write.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from .meanwhile import meanwhile

if TYPE_CHECKING:
    from .order.schedule import Schedule
    from .pieces import Model


def _step(model: Model, schedule: Schedule, path: Path) -> None:
    from .exchange.step import write_step

    write_step(model, path)


def _stl(model: Model, schedule: Schedule, path: Path) -> None:
    from .exchange.stl import write_stl

    write_stl(model, path)


def _glb(model: Model, schedule: Schedule, path: Path) -> None:
    from .exchange.glb import write_glb

    write_glb(model, path)


def _csv(model: Model, schedule: Schedule, path: Path) -> None:
    from .order.csv import csv_text

    path.write_text(csv_text(schedule), encoding="utf-8", newline="")


def _json(model: Model, schedule: Schedule, path: Path) -> None:
    from .order.json import json_text

    path.write_text(json_text(schedule), encoding="utf-8", newline="")


@dataclass(frozen=True, slots=True)
class Output:
    """One file: its name, what it is, what opens it, and what writes it."""

    name: str
    what: str
    opens: str
    write: Callable[[Model, Schedule, Path], None]


SLOWEST = Output(
    "model.step",
    "every piece as an exact solid, with names, groups and colours",
    "FreeCAD and other CAD",
    _step,
)
OUTPUTS = (
    SLOWEST,
    Output("model.stl", "the whole building as triangles", "slicers and mesh viewers", _stl),
    Output("model.glb", "the building to turn and look at", "web browsers' 3D viewers, Blender", _glb),
    Output("schedule.csv", "the schedule, one row a mark", "spreadsheets", _csv),
    Output("schedule.json", "the same for other programs", "any program that reads JSON", _json),
)


def write_outputs(model: Model, schedule: Schedule, folder: Path) -> None:
    """Writes every output into a folder, all of them or none. Raises FileError."""
    from .exchange.whole import whole_folder

    with whole_folder(folder) as room, meanwhile(lambda: SLOWEST.write(model, schedule, room / SLOWEST.name)):
        for output in OUTPUTS:
            if output is not SLOWEST:
                output.write(model, schedule, room / output.name)
