"""A building judged in every way there is: by what its layout says of it, the audit, the second witness,
and its STEP file, that must give the same lists."""

from __future__ import annotations

import traceback
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from tempfile import TemporaryDirectory

from ribwright.audit import audit
from ribwright.description.building import Building
from ribwright.exchange.step import read_step, write_step
from ribwright.findings import Code, words
from ribwright.order.buying.order_list import buying_on, order
from ribwright.order.lists.schedule import schedule
from ribwright.order.written.json import json_text
from ribwright.order.written.order_csv import order_csv
from ribwright.pieces import Model
from ribwright.raising import Raised, raise_building
from ribwright.solids.properties import is_valid
from support.second_witness import faults

SAID = (Code.SCREW_LEFT_OUT, Code.DOOR_ROOM)
"""Faults of the description that the layout says itself, and raises nevertheless."""

LOOSE = (Code.EDGE_LOOSE, Code.TRIM_LOOSE)
"""What the audit says where the layout left screws out, and said so."""


@dataclass
class Judged:
    """faults: by their kind (a code of the audit's, "witness", "step", "traceback"), each as a line. said:
    how often the layout gave each of its findings, and how many of the audit's are no more than those."""

    faults: dict[str, list[str]] = field(default_factory=dict)
    said: Counter[str] = field(default_factory=Counter)

    def add(self, kind: str, line: str) -> None:
        self.faults.setdefault(kind, []).append(line)


def judged(building: Building) -> Judged:
    """Everything that is wrong with a building."""
    found = Judged()
    try:
        raised = raise_building(building)
        for finding in raised.findings:
            if finding.fault and finding.code not in SAID:
                found.add(finding.code.text, words(finding, building.units))
            found.said[finding.code.text] += 1
        _audited(raised, building, found)
        for kind, line in _otherwise(raised.model):
            found.add(kind, line)
    except Exception:
        found.add("traceback", traceback.format_exc())
    return found


def _audited(raised: Raised, building: Building, found: Judged) -> None:
    """The audit's faults; a piece loose whose screws the layout left out is told apart."""
    bare = {f.pieces[0] for f in raised.findings if f.code is Code.SCREW_LEFT_OUT}
    for finding in audit(raised.model, thorough=True).findings:
        if finding.code in LOOSE and bare & set(finding.pieces):
            found.said[f"{finding.code.text} where the layout left screws out"] += 1
        elif finding.fault:
            found.add(finding.code.text, words(finding, building.units))


def _otherwise(model: Model) -> Iterator[tuple[str, str]]:
    """What the kernel, the second witness and the STEP file say."""
    yield from (("invalid solid", piece.name) for piece in model.pieces if not is_valid(piece.solid))
    yield from (("witness", line) for line in faults(model))
    with TemporaryDirectory() as folder:
        path = Path(folder) / "model.step"
        write_step(model, path)
        again = read_step(path)
    lists, from_step = schedule(model), schedule(again)
    if json_text(lists) != json_text(from_step):
        yield "step", "the schedule is another one"
    if order_csv(order(lists, buying_on(model.terms))) != order_csv(order(from_step, buying_on(again.terms))):
        yield "step", "the order is another one"
