"""Sheets that no mill makes, and roofs whose feet do not drip clear."""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Code, Finding
from ..skin.cladding import name_of, tiles
from ..trim.trim_lines import TrimLines


def sizes(lines: TrimLines) -> Iterator[Finding]:
    """Notes on sheets too short or too long to be made, and on short overhangs."""
    lengths = {
        name_of(face, tile): max(v for _, v in tile.ring) - min(v for _, v in tile.ring)
        for face in lines.steel.faces
        for tile in tiles(lines, face)
    }
    limits = lines.building.limits
    least, most = limits.shortest_sheet, limits.longest_sheet
    short = {name: length for name, length in lengths.items() if length < least}
    long = {name: length for name, length in lengths.items() if length > most}
    if short:
        yield Finding(Code.SHEET_SHORT, tuple(short), (), None, min(short.values()), least, "length")
    if long:
        yield Finding(Code.SHEET_LONG, tuple(long), (), None, max(long.values()), most, "length")
    for eave in lines.steel.eaves.values():
        past = lines.building.sheets.overhang - lines.head(lines.steel.named[eave.wall]) - lines.thickness
        if past < limits.eave_drip:
            yield Finding(Code.DRIP_SHORT, (eave.wall,), (), None, past, limits.eave_drip, "length")
