"""Pages for tests: of the sample, of a shed with faults in it, of one whose every name is an attack."""

from __future__ import annotations

import json
import re
from dataclasses import replace
from functools import cache
from html.parser import HTMLParser
from typing import Any

from ribwright.audit import Audit, audit
from ribwright.intake import parse, sample_text
from ribwright.order.lists.schedule import schedule
from ribwright.pieces import Model, Piece
from ribwright.raising import raise_building
from ribwright.show.page.page import page
from ribwright.solids.placed import placed_triangles
from support.planted import shed
from support.sample_building import sample_model, sample_schedule

ATTACKS = (
    "</script><script>document.body.dataset.owned = 1</script>",
    '<img src=x onerror="document.body.dataset.owned = 1">',
    '" onfocus=document.body.dataset.owned=1 autofocus x="',
    "]]><!--<script>-->&lt;script&gt;",
    "{{data}}{{script}}",
    "\u202egnp.exe\x1b]0;owned\x07\u2028",
    "</style><style>*{display:none}</style>",
    "javascript:document.body.dataset.owned=1",
    "__proto__",
)


@cache
def sample_page() -> str:
    return page(sample_model(), sample_schedule(), audit(sample_model()))


@cache
def long_model() -> Model:
    """The sample ten times as long: 400 ft."""
    return raise_building(
        parse(re.sub(r"(?m)^length = .*$", 'length = "400 ft"', sample_text()), "long")
    ).model


@cache
def long_page() -> str:
    """Its page, without an audit."""
    return page(long_model(), schedule(long_model()), Audit((), ()))


def front_sheet() -> Piece:
    """A sheet of the front without a cut for a door: the last to the right."""
    sheets = [
        piece
        for piece in sample_model().pieces
        if piece.role == "wall sheet" and piece.label("face") == "front"
    ]
    return max(sheets, key=lambda piece: middle(piece)[0])


def middle(piece: Piece) -> tuple[float, float, float]:
    points = next(placed_triangles([piece]))[0]
    x, y, z = ((points.min(axis=0) + points.max(axis=0)) / 2).tolist()
    return x, y, z


def page_of(model: Model) -> str:
    return page(model, schedule(model), audit(model))


def faulty() -> Model:
    """The shed with a sheet pulled a hand's breadth off its place."""
    model = shed()
    first = next(piece for piece in model.pieces if piece.role == "wall sheet")
    x, y, z = first.place.origin
    moved = replace(first, place=replace(first.place, origin=(x, y, z - 100.0)))
    return replace(model, pieces=tuple(moved if piece is first else piece for piece in model.pieces))


def attacked(model: Model) -> Model:
    """Every text of a model that is not needed to know what a piece is, in turn one of the attacks."""
    pieces = tuple(_attacked(piece, ATTACKS[k % len(ATTACKS)], k) for k, piece in enumerate(model.pieces))
    terms = replace(model.terms, address="".join(ATTACKS), date=ATTACKS[0])
    return replace(model, name="".join(ATTACKS), pieces=pieces, terms=terms)


def _attacked(piece: Piece, attack: str, number: int) -> Piece:
    kept = ("material", "gauge")
    labels = tuple((key, value if key in kept else attack) for key, value in piece.labels)
    group = (attack, attack)
    return replace(piece, name=f"{attack}{number}", group=group, labels=labels, mark=f"{attack}{piece.mark}")


class Reader(HTMLParser):
    """A page taken apart: tags with their attributes, texts, tables, blocks of script and style."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.tables: list[list[list[str]]] = []
        self.blocks: dict[str, list[str]] = {"script": [], "style": []}
        self.said = ""
        self._open = ""
        self._in_cell = False
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))
        self._open = tag
        if tag in self.blocks:
            self.blocks[tag].append("")
        elif tag == "table":
            self.tables.append([])
        elif tag == "tr":
            self.tables[-1].append([])
        elif tag in ("td", "th"):
            self.tables[-1][-1].append("")
            self._in_cell = True

    def handle_data(self, data: str) -> None:
        if self._open in self.blocks:
            self.blocks[self._open][-1] += data
            return
        self.said += data
        if self._in_cell:
            self.tables[-1][-1][-1] += data

    def handle_endtag(self, tag: str) -> None:
        if tag in self.blocks:
            self._open = ""
        elif tag in ("td", "th"):
            self._in_cell = False


@cache
def sample_read() -> Reader:
    """The sample's, read once."""
    return Reader(sample_page())


def carried(text: str) -> dict[str, Any]:
    """What the page's block holds."""
    (block,) = (block for block in Reader(text).blocks["script"] if block.startswith("{"))
    return dict(json.loads(block))
