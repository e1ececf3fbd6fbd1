"""`ribwright order`: what to buy, counted off the solids."""

from __future__ import annotations

import shutil
import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from ..printable import printable
from .loading import PATH, PIECES, listed, model_of
from .progress import progress_bar
from .types import Length, Weight

if TYPE_CHECKING:
    from ..order.buying.order_list import Order
    from ..order.lists.handling import Carried
    from ..order.lists.schedule import Schedule

FORMATS = {
    "order": ("table", "csv", "json", "xlsx"),
    "cuts": ("csv", "table"),
    "placing": ("table", "csv"),
    "bends": ("table", "svg"),
}
"""What there is of an order, and how each may be written; the first unless asked."""


@click.command()
@click.argument("file", required=False, type=PATH)
@click.option(
    "--list",
    "part",
    type=click.Choice(tuple(FORMATS)),
    default="order",
    show_default=True,
    help="The order; the cuts of each stick; where each sheet goes; how trims are bent.",
)
@click.option("--prices", type=PATH, help="CSV of your own: item, unit, price, and gauge, colour if wanted.")
@click.option(
    "--format",
    "form",
    type=click.Choice(tuple(dict.fromkeys(form for forms in FORMATS.values() for form in forms))),
    help="How it is written.",
)
@click.option("--out", type=PATH, help="Write to this file; needed for xlsx.")
@click.option(
    "--stock",
    type=Length(100, 13000),
    multiple=True,
    help="A length that trim comes in, once or more; as described, or 10 and 12 ft, unless given.",
)
@click.option("--kerf", type=Length(0, 25), help="Lost at every cut; as described, or 0, unless given.")
@click.option(
    "--step",
    type=Length(0, 3000),
    help="To which the lengths of sheets cut on site are rounded up; as described, or 1/2 in, unless given.",
)
@click.option("--one-carries", type=Weight(), default="50 lb", show_default=True, help="A person's load.")
@click.option("--two-carry", type=Weight(), default="100 lb", show_default=True, help="Two people's.")
@click.option(
    "--spare", type=click.FloatRange(0, 100), default=5.0, show_default=True, help="Spare screws, %."
)
@click.option(
    "--bag", type=click.IntRange(0, 100_000), default=0, help="Screws in a bag; by the piece unless given."
)
@click.option(
    "--spare-sheets", type=click.IntRange(0, 1000), default=0, help="More of the longest of each kind."
)
@click.option(
    "--pairs", is_flag=True, help="Two sheets as one blank where one cut makes both; else as described."
)
@click.option(
    "--waste", type=click.FloatRange(0, 100), default=5.0, show_default=True, help="Of concrete, %."
)
@PIECES
def order(
    *,
    file: Path | None,
    part: str,
    prices: Path | None,
    form: str | None,
    out: Path | None,
    stock: tuple[float, ...],
    kerf: float | None,
    step: float | None,
    one_carries: float,
    two_carry: float,
    spare: float,
    bag: int,
    spare_sheets: int,
    waste: float,
    pairs: bool,
    pieces: int,
) -> None:
    """Print what to order for FILE: a description, or a STEP file made by `raise`.

    Without FILE: the built-in sample. Prices come only from your own file, by the piece, hundred, ft, m,
    ft2, m2, square, lb, kg, cwt, yd3 or m3; an item may be a whole line's or a kind's ("base trim").
    """
    form = form or FORMATS[part][0]
    if form not in FORMATS[part]:
        raise click.UsageError(f"--list {part} is written as {' or '.join(FORMATS[part])}")
    if form == "xlsx" and out is None:
        raise click.UsageError("a spreadsheet goes to a file: give it with --out order.xlsx")

    from ..order.buying.order_list import buying_on
    from ..order.buying.order_list import order as ordered
    from ..order.buying.prices import priced, read_prices, unaccounted
    from ..order.lists.handling import Carried

    own = read_prices(prices) if prices else None
    with progress_bar() as progress:
        model = model_of(file, progress, pieces)
    found = listed(model, file)
    buying = buying_on(
        model.terms,
        stock=stock,
        kerf=kerf,
        step=step,
        spare=spare / 100,
        spare_sheets=spare_sheets,
        bag=bag,
        waste=waste / 100,
        pairs=pairs,
    )
    wanted = ordered(found, buying)
    if own is not None:
        wanted = priced(wanted, own)
        for said in unaccounted(wanted) if (part, form) == ("order", "csv") else ():
            click.secho(printable(said), err=True)  # no cell of a table is for it; the other forms have it
    _deliver(_content(part, form, wanted, found, Carried(one_carries, two_carry)), out)


def _content(part: str, form: str, wanted: Order, found: Schedule, carried: Carried) -> bytes:
    from ..order.written.bend_drawing import bends_svg
    from ..order.written.bend_text import bends_page
    from ..order.written.cut_cells import cuts_text
    from ..order.written.order_csv import cuts_csv, order_csv, placing_csv
    from ..order.written.order_json import order_json
    from ..order.written.order_text import order_table
    from ..order.written.place_cells import placing_text

    if form == "xlsx":
        from ..order.written.workbook import workbook

        return workbook(wanted, found)
    width = max(80, shutil.get_terminal_size().columns)
    text = {
        ("order", "table"): lambda: order_table(wanted, found, carried, width),
        ("order", "csv"): lambda: order_csv(wanted),
        ("order", "json"): lambda: order_json(wanted, found, carried),
        ("cuts", "csv"): lambda: cuts_csv(wanted),
        ("cuts", "table"): lambda: cuts_text(wanted, width),
        ("placing", "table"): lambda: placing_text(found),
        ("placing", "csv"): lambda: placing_csv(found),
        ("bends", "table"): lambda: bends_page(wanted, found, width),
        ("bends", "svg"): lambda: bends_svg(wanted, found.pitch),
    }[part, form]()
    return text.encode("utf-8")


def _deliver(content: bytes, out: Path | None) -> None:
    if out is None:
        sys.stdout.buffer.write(content)
        return
    from ..exchange.atomic_files import whole_file

    with whole_file(out) as stream:
        stream.write(content)
    click.echo(f"Wrote {printable(str(out))}")
