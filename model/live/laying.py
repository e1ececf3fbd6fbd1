"""Layouts remembered: a building that differs from the last one in its colours alone is not laid out again.

Layout asks nothing of a colour and hands it on as a label. So buildings are laid out with the names of the
places that have a colour instead, and what a place has is put in afterwards.
"""

from __future__ import annotations

from dataclasses import replace

from ..description.building import Building, Trim
from ..description.skin import Sheets, Skin
from ..layout import Laid, lay_out
from ..recipe import Part


class Layouts:
    """Lays out buildings, and keeps the last layout."""

    def __init__(self) -> None:
        self.known: tuple[Building, Laid] | None = None

    def lay(self, building: Building) -> Laid:
        """As `lay_out`."""
        plain = uncoloured(building)
        if self.known is None or self.known[0] != plain:
            self.known = (plain, lay_out(plain))
        laid = self.known[1]
        chosen = colours(building)
        return replace(laid, parts=tuple(_coloured(part, chosen) for part in laid.parts))


def colours(building: Building) -> dict[str, str]:
    """The colour of each place that has one."""
    sheets, trim, wainscot = building.sheets, building.trim, building.wainscot
    return {
        _place("sides"): sheets.sides.colour,
        _place("gables"): sheets.gables.colour,
        _place("roof"): sheets.roof.colour,
        _place("trim"): trim.colour,
        **{_place(f"{kind} trim"): colour for kind, colour in trim.colours},
        **({_place("wainscot"): wainscot.skin.colour} if wainscot else {}),
        **{_place(f"opening {k}"): one.colour for k, one in enumerate(building.openings) if one.colour},
    }


def uncoloured(building: Building) -> Building:
    """The building with the names of places as colours."""
    return replace(
        building,
        sheets=_sheets(building.sheets),
        trim=_trim(building.trim),
        wainscot=building.wainscot
        and replace(building.wainscot, skin=_skin(building.wainscot.skin, "wainscot")),
        openings=tuple(
            replace(one, colour=one.colour and _place(f"opening {k}"))
            for k, one in enumerate(building.openings)
        ),
        lean_tos=tuple(map(uncoloured, building.lean_tos)),
    )


def _sheets(sheets: Sheets) -> Sheets:
    return replace(
        sheets,
        sides=_skin(sheets.sides, "sides"),
        gables=_skin(sheets.gables, "gables"),
        roof=_skin(sheets.roof, "roof"),
    )


def _trim(trim: Trim) -> Trim:
    own = tuple((kind, _place(f"{kind} trim")) for kind, _ in trim.colours)
    return replace(trim, colour=_place("trim"), colours=own)


def _skin(skin: Skin, place: str) -> Skin:
    return replace(skin, colour=_place(place))


def _place(name: str) -> str:
    """No colour that can be typed."""
    return f"\0{name}"


def _coloured(part: Part, chosen: dict[str, str]) -> Part:
    labels = tuple((key, chosen.get(text, text) if key == "colour" else text) for key, text in part.labels)
    return replace(part, labels=labels)
