"""The one list of what `raise` writes: for the command, its help and the README.

A new output is a line here and its writing in `write_outputs`.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from .meanwhile import meanwhile

if TYPE_CHECKING:
    from .audit import Audit
    from .order.lists.schedule import Schedule
    from .pieces import Model


@dataclass(frozen=True, slots=True)
class Output:
    """One file: its name, what it is, what opens it."""

    name: str
    what: str
    opens: str


STEP = Output(
    "model.step", "every piece as an exact solid, with names, groups, colours", "FreeCAD and other CAD"
)
STL = Output("model.stl", "the whole building as triangles", "slicers and mesh viewers")
GLB = Output("model.glb", "the building to turn and look at", "Blender, 3D viewers, web pages")
CSV = Output("schedule.csv", "the lists: one row a mark", "spreadsheets")
JSON = Output("schedule.json", "the lists, every figure also in mm, mm2 and kg", "programs")
ORDER = Output("order.csv", "what to buy: sheets, trims, screws, steel, concrete", "spreadsheets")
WORKBOOK = Output("order.xlsx", "the same, a sheet a list, sums as formulas", "spreadsheets")
OUTPUTS = (STEP, STL, GLB, CSV, JSON, ORDER, WORKBOOK)


@dataclass(frozen=True, slots=True)
class Written:
    """What was learned of a model while its files were written."""

    schedule: Schedule
    audit: Audit


def write_outputs(model: Model, folder: Path) -> Written:
    """Writes every output into a folder, all of them or none. Raises FileError.

    The model is audited meanwhile: the longest writer runs in a process of its own.
    """
    from .audit import audit
    from .exchange.atomic_files import whole_folder
    from .exchange.glb import write_glb
    from .exchange.step import write_step
    from .exchange.stl import write_stl
    from .order.buying.order_list import buying_on, order
    from .order.lists.figures import figures_by_mark
    from .order.lists.schedule import schedule
    from .order.written.csv import csv_text
    from .order.written.json import json_text
    from .order.written.order_text import order_csv
    from .order.written.workbook import workbook

    with whole_folder(folder) as room, meanwhile(lambda: write_step(model, room / STEP.name)):
        listed = schedule(model)
        write_stl(model, room / STL.name)
        write_glb(model, room / GLB.name, figures_by_mark(listed))
        for output, text in ((CSV, csv_text), (JSON, json_text)):
            (room / output.name).write_text(text(listed), encoding="utf-8", newline="")
        wanted = order(listed, buying_on(model.terms))
        (room / ORDER.name).write_text(order_csv(wanted), encoding="utf-8", newline="")
        (room / WORKBOOK.name).write_bytes(workbook(wanted))
        audited = audit(model)
    return Written(listed, audited)
