"""The ends of trims that would stand open, and the tabs that close them: a rake's foot, a ridge cap's ends,
the ends of a drip. Each hangs on half the thickness of its leg, so that no two bodies of a piece have faces
that nearly lie in one plane."""

from __future__ import annotations

from ...envelope.face import Face, Rake
from ...envelope.headwall import PAST_TRIM
from ...envelope.skin_lines import SHELF_FALL
from ...place import Point2, unit
from ..skin.rib_lines import crest, past_first_rib
from .break_lines import tab_over_break
from .end_tabs import CLEAR, Tab, tab
from .gutters import ends_under, foot_under
from .shelves import Shelf
from .trim_lines import TrimLines

SLIT = 3.175
"""mm; between a tab and the leg or tab beside it, so that snips can part them (1/8 in). Ours."""

Tabs = tuple[Tab, ...]


def rake_end(lines: TrimLines, gable: Face, rake: Rake, foot: bool) -> Tabs:
    """At a rake's foot, or where it runs out over a high eave: of its drop, across the end of the roof from
    the building's edge to the far foot of the rib there, so that the next pan drains; down to the drop's
    edge, or as far as it stands clear of the eave trim.

    In a rake run's x, into the building on the left, and y, off the roof.
    """
    t, out, slope = lines.thickness, lines.head(gable), lines.steel.named[rake.slope]
    hand = "left" if slope.beside("left").other == gable.name else "right"
    rib, leg = past_first_rib(lines, slope, hand), lines.profile("rake").in_plane
    inner = min(rib, leg) if rib is not None and rib - slope.skin.profile.base < leg else CLEAR
    low = -lines.rake_drop(gable)
    on_break = tab_over_break(lines, rake) if foot else None
    if on_break is not None:
        low = on_break
    elif foot:
        low_eaves = (eave for eave in lines.steel.eaves.values() if eave.rise > 0.0)
        eave = next(eave for eave in low_eaves if eave.slope == rake.slope)
        wall = lines.steel.named[eave.wall]
        clear = lines.building.sheets.overhang - lines.head(wall) - lines.lap_room - t
        low = max(low, -clear / rake.sin)
        if lines.guttered(wall):
            room = ends_under(lines, eave) - foot_under(lines, eave) - CLEAR
            low = max(low, -room / rake.cos)
    high, side, hang = lines.roof_crown - CLEAR, rake.side, -out - t / 2
    corners = ((hang, low), (inner, low), (inner, high), (hang, high))
    return tab([(side * x, y) for x, y in corners], inner + out + t, t)


def wall_end(lines: TrimLines, gable: Face, rake: Rake) -> Tabs:
    """At the head of a rake that ends before a wall's sheets: of its drop, turned out along them as far as
    the flashing over it runs, before the edge that is cut round the roof."""
    hang, t = -lines.head(gable) - lines.thickness / 2, lines.thickness
    low, high, far = -lines.rake_drop(gable), lines.roof_crown - CLEAR, hang - PAST_TRIM
    corners = ((hang, low), (hang, high), (far, high), (far, low))
    return tab([(rake.side * x, y) for x, y in corners], PAST_TRIM + t, t)


def cap_end(lines: TrimLines, line: tuple[Point2, ...], rises: Point2) -> Tabs:
    """At an end of a ridge cap: of both legs, down before the rake trims as far as the roof's steel plane,
    cut apart plumb under the bend.

    line: of the cap's inner faces, the bend in the middle, in its run's level x and upright y. rises: in one
    of level way, of the leg at the line's beginning and of that at its end.
    """
    apex, deep = line[1][0], (lines.ridge, lines.thickness)
    return tuple(
        one
        for edge, rise in zip((line[0], line[2]), rises, strict=True)
        for one in leg_tab(edge, apex + (SLIT / 2 if edge[0] > apex else -SLIT / 2), rise, deep)
    )


def leg_tab(edge: Point2, near: float, rise: float, deep: Point2) -> Tabs:
    """Of one leg of a cap, down from it at the end of its run.

    edge: of the leg's inner face. near: x of where the tab begins. rise: of the leg from its edge on, in one
    of level way. deep: how far down it hangs, square to the leg, and how thick that is.
    """
    reach, thickness = deep
    way, half = (1.0 if edge[0] > near else -1.0), thickness / 2
    off_x, off_y, _ = unit((way * rise, 1.0, 0.0))  # square off the leg
    far = edge[0] - way * CLEAR
    bend, end = (edge[1] + (edge[0] - x) * way * rise for x in (near, far))
    corners = (
        (near, bend + half / off_y),
        (near, bend - reach / off_y),
        (far - reach * off_x, end - reach * off_y),
        (far + half * off_x, end + half * off_y),
    )
    return tab(corners, reach + thickness, thickness)


def drip_end(lines: TrimLines, face: Face, u: float, shelf: Shelf, ends: Point2) -> Tabs:
    """Of a drip's shelf, down before the sheet beside the opening; it is folded from what would be cut away
    there, where leg and lip run on.

    u: where on the face it stands. ends: along the run, where the shelf ends, and where leg and lip do.
    """
    t, (at, edge) = lines.thickness, ends
    around = 2 * t + CLEAR
    inner = max(crest(lines, face, (u - around, u + around)) + CLEAR, t + SLIT)
    outer = shelf.deep - SLIT
    if outer - inner < SLIT:
        return ()
    fall, reach = SHELF_FALL / shelf.deep, abs(edge - at)
    low = t - reach - fall * inner
    corners = ((shelf.nest / 2 - fall * y, y) for y in (inner, outer))
    return tab([*corners, (low, outer), (low, inner)], reach, t, at)
