"""`ribwright many`: a price book, a row for each of many buildings."""

from __future__ import annotations

import os
import sys
from collections import Counter
from collections.abc import Iterator
from functools import partial
from importlib.util import find_spec
from itertools import chain, islice
from pathlib import Path
from time import monotonic
from typing import TYPE_CHECKING

import click

from ..errors import RibwrightError
from ..printable import printable
from .loading import PATH, PIECES
from .progress import progress_bar
from .raising import WORDS
from .status import DONE, FINDINGS
from .types import Words

if TYPE_CHECKING:
    from ..book.making import Engine, Wanted
    from ..book.task import Entry, Task

MIB = 2**20


@click.command(short_help="Raise and price many buildings, a row each: a price book.")
@click.argument("table", type=PATH)
@click.option("--base", type=PATH, required=True, help="The description that every row begins with.")
@click.option("--out", type=PATH, required=True, help="Folder for the book.")
@click.option("--prices", type=PATH, help="Your prices, as for `order`.")
@click.option("--files", is_flag=True, help="Also write each building's files, as `raise` does.")
@click.option("--formats", type=Words(WORDS), default=(), help="With --files, also these formats.")
@click.option("--workers", type=click.IntRange(1, 1024), help="Processes; one a core unless given.")
@click.option(
    "--memory",
    type=click.IntRange(100),
    default=1000,
    show_default=True,
    help="MiB after which a process is followed by a fresh one.",
)
@click.option("--scheduler", help="Have a cluster do it: the address of its scheduler, tcp://HOST:PORT.")
@PIECES
def many(
    *,
    table: Path,
    base: Path,
    out: Path,
    prices: Path | None,
    files: bool,
    formats: tuple[str, ...],
    workers: int | None,
    memory: int,
    scheduler: str | None,
    pieces: int,
) -> int:
    """Raise, audit, order and price a building for each row of TABLE, and write one table of figures.

    TABLE is a .csv file whose first line names keys (width, sheets.profile, opening[1].width), or a .toml
    file with a [[row]] for each building, or a [grid] with lists of values of which each is tried with each.
    A row sets keys over the base; an empty cell leaves the base's.

    A run that was stopped goes on where it was when it is given again. A row that cannot be built says why.
    """
    from ..book.making import Wanted, spell
    from ..book.table import read_table
    from ..description.reading.source import load, read_text
    from ..intake import read
    from ..order.buying.prices import read_prices
    from ..outputs import asked_for

    if formats and not files:
        raise click.UsageError("--formats needs --files")
    asked_for(formats)
    name = read(base).name
    values = load(read_text(base), str(base)).values
    own = read_prices(prices) if prices else None
    wanted = Wanted(read_table(table), values, name, out, own, pieces, formats if files else None)
    begun = monotonic()
    ends = _made(wanted, _engine(scheduler, workers, memory))
    click.echo(_said(ends, wanted.table.count))
    click.echo(f"Written to {printable(str(out))}: book.csv, times.csv, in {spell(monotonic() - begun)}.")
    return DONE if ends["built"] == wanted.table.count and not ends["with faults"] else FINDINGS


def _engine(scheduler: str | None, workers: int | None, memory: int) -> Engine:
    """Processes of this machine, forked once it is warm; or the workers of a cluster."""
    if scheduler:
        if not find_spec("distributed"):
            raise RibwrightError(
                "--scheduler: what speaks to one is not here; "
                'python3 -m pip install "ribwright[cluster]" brings it'
            )
        from ..book.cluster import clustered

        return partial(clustered, scheduler)
    from ..book.entry import entry
    from ..book.farm import farmed
    from ..book.warm import warm

    count = workers or len(os.sched_getaffinity(0))

    def engine(tasks: Iterator[Task]) -> Iterator[tuple[Task, Entry]]:
        if sys.platform != "linux":  # processes that have loaded so much cannot safely be forked there
            return ((task, entry(task)) for task in tasks)
        first = list(islice(tasks, 1))
        if first:
            warm()
        return farmed(entry, chain(first, tasks), count, memory * MIB)

    return engine


def _made(wanted: Wanted, engine: Engine) -> Counter[str]:
    from ..book.making import make_book

    try:
        with progress_bar() as progress:
            return make_book(wanted, engine, progress)
    except KeyboardInterrupt:
        click.echo("\nWhat is done is kept; the same command goes on.", err=True)
        raise


def _said(ends: Counter[str], count: int) -> str:
    others = [f"{ends[state]} {state}" for state in ("refused", "failed") if ends[state]]
    faults = f" ({ends['with faults']} with faults)" if ends["with faults"] else ""
    return ", ".join([f"{count} rows: {ends['built']} built{faults}", *others])
