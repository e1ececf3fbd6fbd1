"""The schedule as JSON text."""

from __future__ import annotations

import json
from collections.abc import Sequence
from typing import Any

from ...heading import note
from ...measure.blank import Cutout, End
from ...measure.snap import snapped, snapped_area, snapped_volume, snapped_weight
from ...roles import LIGHTS, LISTS
from ...units import area_unit, format_area, format_length, format_weight, weight_unit
from ..lists import sheet_cells
from ..lists.items import THICKNESS, Item, format_thickness
from ..lists.parts import REST, SHEETS, chosen
from ..lists.schedule import Placed, Row, Schedule, Units
from ..lists.standing_row import standing


def json_text(schedule: Schedule, parts: Sequence[str] = ()) -> str:
    """The schedule: every figure in mm (to 0.01, a thickness to 0.001), mm2 or kg (to 0.001, less than 1 kg
    to four figures), and as shown.

    parts: the lists wanted, all when empty.
    """
    content = _content(schedule)
    for name in LISTS:
        if name not in chosen(parts):
            for key in [name, *(("totals", "placed") if name == SHEETS else ())]:
                content.pop(key, None)
    return json.dumps(content, indent=2, ensure_ascii=False) + "\n"


def _content(schedule: Schedule) -> dict[str, Any]:
    units, terms = schedule.units, schedule.terms
    return {
        "name": schedule.name,
        **{key: text for key, text in (("address", terms.address), ("date", terms.date)) if text},
        "units": units,
        "note": note(braced=schedule.braced),
        SHEETS: [_row(row, units) for row in schedule.rows],
        "totals": {
            "count": schedule.count,
            "area": _sized_area(schedule.area, units),
            "weight": _sized_weight(schedule.weight, units),
        },
        "placed": [_placed(piece) for piece in schedule.placed],
        **{name: [_item(item, units) for item in schedule.listed(name)] for name in REST},
    }


def _item(item: Item, units: Units) -> dict[str, Any]:
    return {
        "mark": item.mark,
        "role": item.role,
        "count": item.count,
        "section": item.section,
        "length": _sized(item.length, units),
        "depth": _sized(item.depth, units),
        "width": _sized(item.width, units),
        **({"thickness": _sized_thickness(item.thickness, units)} if item.thickness else {}),
        "ends": [snapped(angle, 0.01) for angle in item.ends],
        "holes": [_sized(hole, units) for hole in item.holes],
        "volume": {"mm3": snapped_volume(item.volume)},
        **({"weight": _sized_weight(item.weight, units)} if item.weight else {}),
        **({"differs": item.differs} if item.differs else {}),
        "colour": item.colour,
        "faces": list(item.faces),
    }


def _row(row: Row, units: Units) -> dict[str, Any]:
    """Its sheets as they stand; what is no steel has neither weight nor a thickness of steel."""
    stands = standing(row)
    return {
        "mark": row.mark,
        "role": row.role,
        "count": row.count,
        "turned": row.turned,
        "faces": list(row.faces),
        "width": _sized(row.width, units),
        "cover": _sized(row.cover, units),
        "length": _sized(row.length, units),
        "thickness": None if row.role in LIGHTS else _sized_thickness(row.thickness, units),
        "bottom": _end(stands.foot, units),
        "top": _end(stands.head, units),
        "overlap rib": row.overlap,
        "ribs": [_sized(rib, units) for rib in stands.ribs],
        "cutouts": [_cutout(cut, units) for cut in stands.cutouts],
        "area": _sized_area(row.area, units),
        "weight": _sized_weight(row.weight, units) if row.weight else None,
        "colour": row.colour,
        "profile": row.profile,
        "gauge": row.gauge,
    }


def _end(cut: End, units: Units) -> dict[str, Any]:
    sizes = {"left": cut.left, "right": cut.right, "at": cut.at}
    sizes |= {"bend": cut.bend} if cut.kind == "bent" else {}
    return {
        "kind": cut.kind,
        "shown": sheet_cells.end(cut, units),
        **({name: _sized(size, units) for name, size in sizes.items()} if cut.kind != "square" else {}),
    }


def _cutout(cut: Cutout, units: Units) -> dict[str, Any]:
    sizes = {"x": cut.x, "y": cut.y, "width": cut.width, "height": cut.height}
    return {
        "kind": "notch" if cut.sides else "hole",
        "sides": list(sheet_cells.sides(cut)),
        **{name: _sized(size, units) for name, size in sizes.items()},
        "corners": [[snapped(u, 0.01), snapped(v, 0.01)] for u, v in cut.corners],
    }


def _placed(piece: Placed) -> dict[str, Any]:
    return {
        "name": piece.name,
        "mark": piece.mark,
        "face": piece.face,
        "end up": "head" if piece.head_up else "foot",
    }


def _sized(mm: float, units: Units) -> dict[str, Any]:
    return {"mm": snapped(mm, 0.01), "shown": format_length(mm, units)}


def _sized_thickness(mm: float, units: Units) -> dict[str, Any]:
    return {"mm": snapped(mm, THICKNESS), "shown": format_thickness(mm, units)}


def _sized_area(mm2: float, units: Units) -> dict[str, Any]:
    return {"mm2": snapped_area(mm2), "shown": f"{format_area(mm2, units)} {area_unit(units)}"}


def _sized_weight(kg: float, units: Units) -> dict[str, Any]:
    return {"kg": snapped_weight(kg), "shown": f"{format_weight(kg, units)} {weight_unit(units)}"}
