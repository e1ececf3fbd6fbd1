"""A text raised: first what is seen of it, then what is found in it."""

from __future__ import annotations

from collections.abc import Iterator

from ..audit import audit
from ..errors import RibwrightError
from ..findings import in_order
from ..intake import parse
from ..order.lists.schedule import schedule
from ..raising import Raised, raise_building
from ..show.page.content import found, seen
from ..show.page.geometry import geometry
from ..show.page.page import said
from ..steps import steps
from ..units import Units
from .fields import fields, offered
from .laying import Layouts
from .problems import problems
from .told import Answer, Found, Job, Seen, Wrong


def answers(job: Job, layouts: Layouts) -> Iterator[Answer]:
    """What is seen, then what is found; or what is wrong with the text."""
    try:
        building = parse(job.text, job.name)
        raised = raise_building(building, most=job.pieces, lay=layouts.lay)
    except RibwrightError as error:
        yield Wrong(job.number, problems(error, job.text))
    else:
        pieces = raised.model.pieces
        own = fields(job.text, building)
        lists, numbers = offered(own, building, pieces)
        content = {
            **seen(raised.model, building.units),
            "digest": job.digest,
            "fields": [field.content() for field in own],
            "offers": lists,
            "offer": numbers,
        }
        paths = tuple(field.path for field in own)
        yield Seen(job.number, job.digest, content, geometry(pieces), paths)
        yield _found(job.number, raised, building.units)


def _found(number: int, raised: Raised, units: Units) -> Found:
    model = raised.model
    listed, raising, audited = schedule(model), steps(model), audit(model)
    findings = in_order((*raised.findings, *audited.findings))
    content = found(model, units, audited, findings, raising)
    return Found(number, content, said(model, listed, audited, findings, raising))
