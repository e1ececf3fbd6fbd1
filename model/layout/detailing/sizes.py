"""Sheets that no mill makes, and roofs whose feet do not drip clear."""

from __future__ import annotations

from collections.abc import Iterator

from ...envelope.lengths import LONGEST, SHORTEST
from ...findings import Code, Finding
from ..skin.cladding import name_of, tiles
from ..trim.trim_lines import TrimLines

DRIP = 22.225
"""mm; from the eave trim's face, where its pieces lap, to the roof's foot (7/8 in: an inch elsewhere)."""


def sizes(lines: TrimLines) -> Iterator[Finding]:
    """Notes on sheets too short or too long to be made, and on short overhangs."""
    lengths = {
        name_of(face, tile): max(v for _, v in tile.ring) - min(v for _, v in tile.ring)
        for face in lines.steel.faces
        for tile in tiles(lines, face)
    }
    short = {name: length for name, length in lengths.items() if length < SHORTEST}
    long = {name: length for name, length in lengths.items() if length > LONGEST}
    if short:
        yield Finding(Code.SHEET_SHORT, tuple(short), (), None, min(short.values()), SHORTEST, "length")
    if long:
        yield Finding(Code.SHEET_LONG, tuple(long), (), None, max(long.values()), LONGEST, "length")
    for eave in lines.steel.eaves.values():
        past = lines.building.sheets.overhang - lines.head(lines.steel.named[eave.wall]) - lines.thickness
        if past < DRIP:
            yield Finding(Code.DRIP_SHORT, (eave.wall,), (), None, past, DRIP, "length")
