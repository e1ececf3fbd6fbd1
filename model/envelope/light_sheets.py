"""Sheets that let light through: which of a face's they are, and whether there are such."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from ..description.skin import LightSheets
from ..roles import LEAN_TO
from .face import Face, Region
from .sheet_runs import laid
from .steel_checks import Objection
from .steel_lines import SteelLines


def light_columns(lines: SteelLines, face: Face, region: Region) -> Mapping[int, LightSheets]:
    """Those that were asked for among the sheets of a region, by their number in the order of laying. On the
    foot of a wall that has other sheets over it there are none."""
    asked = [one for one in lines.building.light_sheets if one.face == face.name]
    if not asked or region is not face.upper:
        return {}
    count = _count(lines, face)
    return {number: one for one in asked[::-1] for number in one.chosen(count)}


def light_misfits(lines: SteelLines) -> Iterator[Objection]:
    """Each of a building's own is of a face that is clad, and one of its sheets."""
    clad = {face.name: face for face in lines.faces if face.regions}
    named = f"{lines.building.name} " if lines.building.joined else ""
    for number, one in enumerate(lines.building.light_sheets):
        if LEAN_TO in one.face or one.face.startswith("other "):
            continue  # another building's
        if one.face not in clad:
            yield ("light_sheet", number, "face"), f"a face with sheets: {', '.join(clad)}"
            continue
        if clad[one.face].upper.skin.off:
            which = "roof" if clad[one.face].sloped else "walls"
            remedy = (
                f"a face without a blanket, which lets no light through; or leave out [insulation] {which}"
            )
            yield ("light_sheet", number, "face"), remedy
            continue
        count = _count(lines, clad[one.face])
        if max(one.numbers, default=0) > count:
            what = f"numbers from 1 to {count}: the {named}{one.face} has no more sheets"
            yield ("light_sheet", number, "sheets"), what
        elif one.every >= count:
            few = f"the {named}{one.face} has {count} sheet{'s' * (count > 1)}, and its last stays steel"
            what = f"at most {count - 1}: {few}" if count > 2 else f"a face with more sheets: {few}"
            yield ("light_sheet", number, "every"), what


def _count(lines: SteelLines, face: Face) -> int:
    return max((lay.number for lay, _ in laid(lines, face, face.upper)), default=0)
