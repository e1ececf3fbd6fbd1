"""The one list of what `raise` writes: for the command, its help, the README, and the loop that writes it.

A new output is a line here and the function that writes it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from contextlib import ExitStack
from dataclasses import dataclass, replace
from functools import partial
from importlib.util import find_spec
from pathlib import Path
from typing import TYPE_CHECKING

from .errors import RibwrightError
from .making import Making
from .meanwhile import meanwhile
from .roles import list_of

if TYPE_CHECKING:
    from .audit import Audit
    from .findings import Finding
    from .order.lists.schedule import Schedule
    from .pieces import Model


def _step(making: Making, path: Path) -> None:
    from .exchange.step import write_step

    write_step(making.shown, path)


def _stl(making: Making, path: Path) -> None:
    from .exchange.stl import write_stl

    write_stl(_listed_as_screws(making.shown, False), path)


def _screws(making: Making, path: Path) -> None:
    from .exchange.stl import write_stl

    write_stl(_listed_as_screws(making.shown, True), path)


def _listed_as_screws(model: Model, screws: bool) -> Model:
    """The screws of a model, or all the rest of it."""
    kept = (piece for piece in model.pieces if (list_of(piece.role) == "screws") == screws)
    return replace(model, pieces=tuple(kept))


def _marks(making: Making, path: Path) -> None:
    from .exchange.stl import write_marks

    write_marks(making.shown, path)


def _glb(making: Making, path: Path) -> None:
    from .exchange.glb import write_glb
    from .order.lists.figures import figures_by_mark

    write_glb(making.shown, path, figures_by_mark(making.listed))


def _page(making: Making, path: Path) -> None:
    from .show.page.page import page

    text = page(making.model, making.listed, making.audited, making.notes)
    path.write_text(text, encoding="utf-8", newline="")


def _schedule_csv(making: Making, path: Path) -> None:
    from .order.written.csv import csv_text

    path.write_text(csv_text(making.listed), encoding="utf-8", newline="")


def _schedule_json(making: Making, path: Path) -> None:
    from .order.written.json import json_text

    path.write_text(json_text(making.listed), encoding="utf-8", newline="")


def _order_csv(making: Making, path: Path) -> None:
    from .order.written.order_csv import order_csv

    path.write_text(order_csv(making.wanted), encoding="utf-8", newline="")


def _workbook(making: Making, path: Path) -> None:
    from .order.written.workbook import workbook

    path.write_bytes(workbook(making.wanted, making.listed))


def _ifc(making: Making, path: Path) -> None:
    from .exchange.ifc import write_ifc

    write_ifc(making.shown, path, making.listed)


def _3mf(making: Making, path: Path) -> None:
    from .exchange.threemf import write_3mf

    write_3mf(making.shown, path)


def _dxf(making: Making, path: Path) -> None:
    from .exchange.dxf import write_dxf

    write_dxf(making.shown, path)


def _usdz(making: Making, path: Path) -> None:
    from .exchange.usdz import write_usdz

    write_usdz(making.shown, path)


def _papers(making: Making, path: Path) -> None:
    from .papers.written import papers_pdf

    path.write_bytes(papers_pdf(making.model))


@dataclass(frozen=True, slots=True)
class Output:
    """One file: its name, what it is, what opens it, what writes it, what that needs.

    word: what asks for it; "" for what is always written. needs: a module that comes with the extra of
    the same word; "" for nothing. slow: written in a process of its own, beside the others. tells: of what
    the audit found, so begun when that is done.
    """

    name: str
    what: str
    opens: str
    write: Callable[[Making, Path], None]
    word: str = ""
    needs: str = ""
    slow: bool = False
    tells: bool = False


OUTPUTS = (
    Output(
        "model.step",
        "every piece as an exact solid, with names, groups, colours",
        "FreeCAD and other CAD",
        _step,
        slow=True,
    ),
    Output("model.stl", "the building as triangles, without its screws", "slicers and mesh viewers", _stl),
    Output("model.glb", "the building to turn and look at", "Blender, 3D viewers, web pages", _glb),
    Output(
        "show.html", "the building to turn, cut and ask, with its lists", "any browser, also offline", _page
    ),
    Output("schedule.csv", "the lists: one row a mark", "spreadsheets", _schedule_csv),
    Output("schedule.json", "the lists, every figure also in mm, mm2 and kg", "programs", _schedule_json),
    Output("order.csv", "what to buy: sheets, trims, screws, steel, concrete", "spreadsheets", _order_csv),
    Output("order.xlsx", "the same, a sheet a list, sums as formulas", "spreadsheets", _workbook),
    Output(
        "model.ifc",
        "IFC4: every piece as what it is in a building, with its mark and quantities",
        "building modellers, coordination viewers",
        _ifc,
        word="ifc",
        needs="ifcopenshell",
        slow=True,
    ),
    Output(
        "model.3mf",
        "every piece as a closed body, named and coloured, equal ones stored once",
        "slicers, 3D printing services",
        _3mf,
        word="3mf",
        needs="lib3mf",
        slow=True,
    ),
    Output(
        "model.dxf",
        "every piece as a block in space, a layer a role, names and marks as attributes",
        "CAD programs",
        _dxf,
        word="dxf",
        needs="ezdxf",
        slow=True,
    ),
    Output(
        "model.usdz",
        "the building to turn, look at and stand in the yard",
        "the viewers that phones and tablets have built in",
        _usdz,
        word="usdz",
        needs="pxr",
        slow=True,
    ),
    Output(
        "screws.stl",
        "the screws as triangles, which fall into place over `model.stl`",
        "slicers and mesh viewers",
        _screws,
        word="screws",
    ),
    Output(
        "marks.zip",
        "a file of triangles for each mark, as it lies on the bench",
        "slicers",
        _marks,
        word="marks",
    ),
    Output(
        "papers.pdf",
        "plans, framing, elevations and details on paper, for the crew",
        "PDF readers, printers",
        _papers,
        word="papers",
        slow=True,
    ),
)
USUAL = tuple(output for output in OUTPUTS if not output.word)
ON_REQUEST = tuple(output for output in OUTPUTS if output.word)


def asked_for(words: Iterable[str]) -> tuple[Output, ...]:
    """The usual outputs and those that the words ask for. Raises RibwrightError for what is not installed."""
    words = set(words)
    found = tuple(output for output in OUTPUTS if not output.word or output.word in words)
    absent = [output for output in found if output.needs and not find_spec(output.needs)]
    if absent:
        files = ", ".join(output.name for output in absent)
        extras = ",".join(output.word for output in absent)
        raise RibwrightError(
            f'{files}: what writes it is not here; python3 -m pip install "ribwright[{extras}]" brings it'
        )
    return found


@dataclass(frozen=True, slots=True)
class Written:
    """What was learned of a model while its files were written."""

    schedule: Schedule
    audit: Audit


def write_outputs(
    model: Model,
    folder: Path,
    outputs: Sequence[Output] = USUAL,
    shown: Model | None = None,
    notes: Sequence[Finding] = (),
) -> Written:
    """Writes outputs into a folder, all of them or none. Raises FileError.

    shown: what of the model stands in the files that show it; all of it unless given. notes: what the layout
    found. The slow ones are written in processes of their own, and the model is audited meanwhile.
    """
    from .exchange.atomic_files import whole_folder

    making = Making(model, shown or model, notes)
    with whole_folder(folder) as room, ExitStack() as beside:
        for output in (output for output in outputs if output.slow and not output.tells):
            beside.enter_context(meanwhile(partial(output.write, making, room / output.name)))
        found = Written(making.listed, making.audited)
        for output in (output for output in outputs if output.slow and output.tells):
            beside.enter_context(meanwhile(partial(output.write, making, room / output.name)))
        for output in (output for output in outputs if not output.slow):
            output.write(making, room / output.name)
    return found
