"""What the page says in words and tables: whole without script, sorted and searched with it.

Every text of the building's own is escaped and printable before it goes between tags.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from html import escape

from ...audit import Audit, Figure
from ...findings import Finding, amount, sentence
from ...heading import job, note, units_said
from ...order.lists import item_cells, sheet_cells
from ...order.lists.schedule import Row, Schedule
from ...roles import FACES, LIGHTS, LISTS
from ...units import Units, area_unit, format_area, format_weight, weight_unit
from .marked_up import capital, coloured, length, shown

USUAL = ("mark", "count", "length", "weight")
"""Columns of a list that stand in a narrow panel; the others are in the piece's card, and on paper."""


def head(listed: Schedule, box: Sequence[float]) -> str:
    """The building's name, its sizes and what this is not. box: across, along, and to the top, mm."""
    across, along, top = (length(size, listed) for size in box)
    first, rest = note(braced=listed.braced).split(": ", maxsplit=1)
    return (
        f"<h1>{shown(job(listed.name, listed.terms))}</h1>"
        f'<p class="size">Steel {across} wide, {along} long; {top} from the slab to the top.</p>'
        f'<p class="caution"><strong>{first}.</strong> {capital(rest)}</p>'
    )


def glance(listed: Schedule, audited: Audit, found: Sequence[Finding], openings: str) -> str:
    """Whether anything is wrong; face by face how many sheets, how long, which colour, how wide the laps; the
    openings, as they are said."""
    rows = "".join(_face_row(face, listed, audited) for face in _faces(listed))
    table = (
        '<table class="faces"><caption>Sheets, face by face</caption><thead><tr>'
        '<th scope="col">Face</th><th scope="col">Sheets</th><th scope="col">Longest</th>'
        '<th scope="col">Colour</th><th scope="col">Side laps</th></tr></thead>'
        f"<tbody>{rows}</tbody></table>"
    )
    weight = f"{format_weight(listed.steel, listed.units)} {weight_unit(listed.units)}"
    area = f"{format_area(listed.area, listed.units)} {area_unit(listed.units)}"
    return (
        f'<p class="verdict {"bad" if _faults(found) else "good"}">{_verdict(found)}</p>'
        f"{table if rows else ''}{_roof(audited, listed)}{openings}"
        f"<p>{listed.count} sheets of {area} in all, laps counted twice; {weight} of steel. "
        f"{units_said(listed.units)}</p>"
    )


def _faults(found: Iterable[Finding]) -> int:
    return sum(finding.fault for finding in found)


def _verdict(found: Sequence[Finding]) -> str:
    faults = _faults(found)
    if not faults:
        return "Nothing is wrong: the audit of the solids found no fault."
    return f"{faults} {'fault was' if faults == 1 else 'faults were'} found; they are listed under Findings."


def _faces(listed: Schedule) -> list[str]:
    return sorted(dict.fromkeys(placed.face for placed in listed.placed), key=in_order)


def in_order(face: str) -> int:
    """For sorting faces as people are shown them, those of lean-tos last."""
    return FACES.index(face) if face in FACES else len(FACES)


def _face_row(face: str, listed: Schedule, audited: Audit) -> str:
    rows = {row.mark: row for row in listed.rows}
    own = [rows[placed.mark] for placed in listed.placed if placed.face == face]
    longest = max(own, key=lambda row: row.length)
    name, long = shown(capital(face or "not said")), length(longest.length, listed)
    return (
        f'<tr><th scope="row">{name}</th><td>{len(own)}</td><td class="figure">{long}</td>'
        f"<td>{_colours(own)}</td><td>{_laps(face, listed, audited)}</td></tr>"
    )


def _colours(rows: Sequence[Row]) -> str:
    """The colours of sheets; apart, how many of them let light through."""
    steel = dict.fromkeys(row.colour for row in rows if row.colour and row.role not in LIGHTS)
    lights = Counter(row.colour for row in rows if row.role in LIGHTS)
    said = [coloured(colour) for colour in steel]
    said += [
        f"<small>{count} light sheet{'s' if count > 1 else ''}</small> {coloured(colour)}"
        for colour, count in lights.items()
    ]
    return ", ".join(said)


def _laps(face: str, listed: Schedule, audited: Audit) -> str:
    for figure in audited.measured:
        if (figure.what, figure.where) == ("side laps", face):
            sizes = f'<span class="figure">{figure.count} of {_range(figure, listed)}</span>'
            return f"{sizes}, <small>{shown(figure.said)}</small>"
    return "none"


def _range(figure: Figure, listed: Schedule) -> str:
    sizes = (amount(size, figure.quantity, listed.units) for size in (figure.least, figure.greatest))
    return escape(" to ".join(dict.fromkeys(filter(None, sizes))))


def _roof(audited: Audit, listed: Schedule) -> str:
    lines = [
        f"<li>{shown(capital(figure.where))}: {shown(figure.what)} {_range(figure, listed)}</li>"
        for figure in audited.measured
        if figure.what in ("overhang", "head under trim", "end laps")
    ]
    return f'<ul class="plain">{"".join(lines)}</ul>' if lines else ""


def findings(found: Sequence[Finding], listed: Schedule) -> str:
    """Each finding in words, faults first; a note is said to be one."""
    if not found:
        return "<p>None.</p>"
    lines = (
        f'<li class="{"fault" if finding.fault else "note"}" data-finding="{number}">'
        f"<b>{'Fault' if finding.fault else 'Note'}</b> "
        f"<span>{shown(capital(sentence(finding, listed.units)))}</span></li>"
        for number, finding in enumerate(found)
    )
    return f'<ol class="plain">{"".join(lines)}</ol>'


def lists(listed: Schedule) -> str:
    """The schedule's lists, a table each: a row a mark, every cell the schedule's own."""
    return "".join(_list(*table, listed.units) for table in _tables(listed))


Cells = dict[str, str]


def _tables(listed: Schedule) -> Iterator[tuple[str, Sequence[str], list[Cells], Cells]]:
    """(list, columns, rows, total) of each list that has any."""
    units = listed.units
    for name in LISTS:
        if name == "sheets":
            rows = [
                {
                    **sheet_cells.figures(row, units),
                    "what": row.role,
                    **sheet_cells.texts(row, units),
                    "cutouts": sheet_cells.cuts_text(row, units),
                }
                for row in listed.rows
            ]
            columns: Sequence[str] = (*sheet_cells.FIGURES, "what", *sheet_cells.TEXTS, "cutouts")
            total = sheet_cells.totals(listed)
        else:
            items = listed.listed(name)
            rows = [item_cells.cells(item, units) for item in items]
            columns, total = item_cells.COLUMNS, item_cells.total(items, units)
        if rows:
            yield name, [column for column in columns if any(row[column] for row in rows)], rows, total


def _list(name: str, columns: Sequence[str], rows: Sequence[Cells], total: Cells, units: Units) -> str:
    heads = "".join(f'<th scope="col"{_wide(column)}>{_head(column, units)}</th>' for column in columns)
    lines = "".join(
        f'<tr data-mark="{shown(row["mark"])}">{"".join(_cell(row, column) for column in columns)}</tr>'
        for row in rows
    )
    last = "".join(f"<td{_wide(column)}>{shown(total.get(column, ''))}</td>" for column in columns)
    return (
        f'<details class="list"><summary>{capital(name)} <small>{shown(total["count"])}</small></summary>'
        f'<div class="scroll"><table><thead><tr>{heads}</tr></thead><tbody>{lines}</tbody>'
        f"<tfoot><tr>{last}</tr></tfoot></table></div></details>"
    )


def _head(column: str, units: Units) -> str:
    """A column's name, with its unit where the cells have none."""
    unit = {"area": area_unit(units), "weight": weight_unit(units)}
    if units == "mm":
        unit |= dict.fromkeys(("width", "cover", "length", "thickness"), "mm")
    return capital(column) + (f", {unit[column]}" if column in unit else "")


def _wide(column: str) -> str:
    return "" if column in USUAL else ' class="more"'


def _cell(row: Cells, column: str) -> str:
    tag, scope = ("th", ' scope="row"') if column == "mark" else ("td", "")
    return f"<{tag}{scope}{_wide(column)}>{shown(row[column])}</{tag}>"
