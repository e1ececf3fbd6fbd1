"""`ribwright order`: what to buy, counted off the solids."""

from __future__ import annotations

import shutil
import sys
from pathlib import Path

import click

from ..printable import printable
from .loading import PATH, PIECES, listed, model_of
from .progress import progress_bar
from .types import Length, Weight

FORMATS = ("table", "csv", "json", "xlsx")


@click.command()
@click.argument("file", required=False, type=PATH)
@click.option("--prices", type=PATH, help="CSV of your own with the columns item, unit, price.")
@click.option("--format", "form", type=click.Choice(FORMATS), default=FORMATS[0], show_default=True)
@click.option("--out", type=PATH, help="Write to this file; needed for xlsx.")
@click.option(
    "--stock",
    type=Length(100, 13000),
    help="Length that trim comes in; as described, or 10 ft, unless given.",
)
@click.option("--kerf", type=Length(0, 25), help="Lost at every cut; as described, or 0, unless given.")
@click.option(
    "--step",
    type=Length(1, 3000),
    default="1 in",
    show_default=True,
    help="To which sheet lengths are rounded up.",
)
@click.option("--one-carries", type=Weight(), default="50 lb", show_default=True, help="A person's load.")
@click.option("--two-carry", type=Weight(), default="100 lb", show_default=True, help="Two people's.")
@click.option(
    "--spare", type=click.FloatRange(0, 100), default=5.0, show_default=True, help="Spare screws, %."
)
@PIECES
def order(
    *,
    file: Path | None,
    prices: Path | None,
    form: str,
    out: Path | None,
    stock: float | None,
    kerf: float | None,
    step: float,
    one_carries: float,
    two_carry: float,
    spare: float,
    pieces: int,
) -> None:
    """Print what to order for FILE: a description, or a STEP file made by `raise`.

    Without FILE: the built-in sample. Prices come only from your own file.
    """
    if form == "xlsx" and out is None:
        raise click.UsageError("a spreadsheet goes to a file: give it with --out order.xlsx")

    from ..order.buying.order_list import buying_on
    from ..order.buying.order_list import order as ordered
    from ..order.buying.prices import priced, read_prices
    from ..order.lists.handling import Carried
    from ..order.written.order_text import order_csv, order_json, order_table

    own = read_prices(prices) if prices else None
    with progress_bar() as progress:
        model = model_of(file, progress, pieces)
    found = listed(model, file)
    buying = buying_on(model.terms, stock=stock, kerf=kerf, step=step, spare=spare / 100)
    wanted = ordered(found, buying)
    if own is not None:
        wanted = priced(wanted, own)
    if form == "xlsx":
        from ..order.written.workbook import workbook

        content = workbook(wanted)
    else:
        carried = Carried(one_carries, two_carry)
        width = max(80, shutil.get_terminal_size().columns)
        texts = {"csv": lambda: order_csv(wanted), "json": lambda: order_json(wanted, found, carried)}
        text = texts.get(form, lambda: order_table(wanted, found, carried, width))()
        content = text.encode("utf-8")
    _deliver(content, out)


def _deliver(content: bytes, out: Path | None) -> None:
    if out is None:
        sys.stdout.buffer.write(content)
        return
    from ..exchange.atomic_files import whole_file

    with whole_file(out) as stream:
        stream.write(content)
    click.echo(f"Wrote {printable(str(out))}")
