"""From text to a draft, and from a draft without problems to a Building."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import count
from typing import Any

from ..catalog.gauges import gauges
from ..units import Units, format_exact, parse_length
from .blanket import insulation_of, pressed
from .building import Building, DoorRoom, Limits, Roof, Screws, Slab, Trim
from .key_checks import check
from .keys.sheet_tables import WAINSCOT_WALLS
from .keys.steel_tables import TRIM_KINDS
from .keys.value_kinds import Name
from .opening import SLIDING, WALLS, Opening, Wall
from .opening_checks import sill
from .own_walls import face_of, name_of, seen_by
from .reading.draft import Draft, Values, read_values
from .reading.source import load
from .said_runs import beside_gable, runs_of
from .said_steel import USUAL, bracing_of, frame_of, framing_of, runs_on
from .skin import HalfWall, LightSheets, RidgeVents, Sheets, Skin, Skirt, Wainscot
from .steel import Frame
from .walls_around import around, is_gable, opposite, sheets_beside

USUAL_GAUGE, USUAL_MM = 29, 0.5
"""Of sheets, where neither gauge nor thickness is given: the second, in mm, in metric descriptions."""
USUAL_STICKS: dict[Units, tuple[float, ...]] = {
    "ft-in": (parse_length("10 ft"), parse_length("12 ft")),
    "mm": (parse_length("3 m"), parse_length("3600 mm")),
}
"""Lengths that trim comes in where nobody said; longer ones only where listed. Common practice, no source."""
SAME = 1e-6  # mm
LEDGE_ROOM = parse_length("3/4 in")
"""Of a ledge past the sheets and the corner trim: ours."""
OVERHANG: dict[Units, tuple[float, float]] = {
    "ft-in": (parse_length("2 in"), parse_length("2-1/2 in")),
    "mm": (parse_length("50 mm"), parse_length("65 mm")),
}
"""Of a roof past its eave, and past one with a gutter, unless it is said."""
POCKET = parse_length("1/8 in")
"""The sheet's edge sits this far short of the inside of the trim's pocket: common practice, no source."""


def draft_of(text: str, source_name: str) -> Draft:
    """A description read key by key, with all that is wrong in any key or between keys."""
    source = load(text, source_name)
    draft = read_values(source.values, source.positions, source.problems)
    check(draft)
    return draft


def building_of(draft: Draft, name: str) -> Building:
    """The building of a draft without problems. name: the building's, where no key gives it one."""
    top, frame, sheets, wainscot = draft.tables[""], frame_of(draft), _sheets(draft), _wainscot(draft)
    at_eaves = draft.tables["roof"]["lower_pitch"] or top["pitch"]
    building = Building(
        name=top["name"] or Name().cleaned(name),
        units=top["units"],
        width=top["width"],
        length=top["length"],
        eave_height=top["eave_height"],
        pitch=top["pitch"],
        roof=Roof(**draft.tables["roof"]),
        open_walls=frozenset(wall for wall in WALLS if _open(draft, wall, frame)),
        open_bays=tuple(_open_bays(draft, frame)),
        sheets=sheets,
        trim=_trim(draft),
        screws=Screws(**draft.tables["screws"]),
        slab=_slab(draft, sheets, wainscot),
        frame=frame,
        framing=framing_of(
            draft.tables["framing"],
            at_eaves,
            USUAL[draft.units],
            runs_on(draft),
            top["length"] + 2 * draft.tables["roof"]["gable_overhang"],
        ),
        door_room=DoorRoom(**draft.tables["door_room"]),
        limits=Limits(**draft.tables["limits"]),
        runs=runs_of(draft.tables["runs"]),
        address=top["address"] or "",
        date=top["date"] or "",
        openings=tuple(
            Opening(
                **{
                    **opening,
                    "wall": face_of(draft, opening["wall"]),
                    "sill": sill(opening),
                    "swing": opening["swing"] or "",
                    "slides": (opening["slides"] or "right") * (opening["kind"] == SLIDING),
                }
            )
            for opening in draft.openings
        ),
        wainscot=wainscot,
        light_sheets=tuple(
            LightSheets(face_of(draft, one["face"]), one["sheets"] or (), one["every"] or 0, one["colour"])
            for one in draft.light_sheets
        ),
        infill=frozenset(wall for wall in WALLS if draft.tables["walls"][wall] == "infill"),
        skirt=_skirt(draft),
        insulation=insulation_of(draft),
        half_wall=_half_wall(draft),
        ridge_vents=_ridge_vents(draft),
    )
    building = replace(building, bracing=bracing_of(draft, building))
    return replace(building, lean_tos=tuple(_lean_to(draft, building, one) for one in draft.lean_tos))


def _lean_to(draft: Draft, main: Building, values: Values) -> Building:
    """A lean-to as a building: of one slope, with the main one's sheets, steel and bays, without posts. At a
    gable its bays follow from what stands there, which is the envelope's."""
    wall: Wall = values["wall"]
    name, joined = name_of(draft, values), opposite(wall)
    first, _, last, _ = around(joined)
    clad: set[Wall] = {wall if one == "outer" else one for one in values["walls"]}
    length = main.width if is_gable(wall) else main.length
    framing = framing_of(draft.tables["framing"], values["pitch"], USUAL[draft.units], False, length)
    return replace(
        main,
        name=name,
        width=values["width"],
        length=length,
        eave_height=values["eave_height"],
        pitch=values["pitch"],
        roof=Roof("single slope", "right" if wall == "right" else "left", None, None),
        open_walls=frozenset(set(WALLS) - clad),
        open_bays=(),
        sheets=sheets_beside(main.sheets, wall),
        frame=replace(
            main.frame,
            stations=() if is_gable(wall) else main.frame.stations,
            front_posts=None if first in clad else (),
            back_posts=None if last in clad else (),
        ),
        framing=replace(framing, girt_heights=()),
        openings=tuple(replace(one, wall=seen_by(name, one.wall)) for one in main.openings),
        wainscot=None,
        runs={**main.runs, **beside_gable(main.runs, wall), first: None, last: None},
        light_sheets=tuple(replace(one, face=seen_by(name, one.face)) for one in main.light_sheets),
        infill=frozenset(),
        skirt=None,
        half_wall=None,
        ridge_vents=None,
        joined=joined,
        between=values["between"],
        bays=values["bays"],
    )


def _ridge_vents(draft: Draft) -> RidgeVents | None:
    """What is asked of vents; None where there are none."""
    values = draft.tables["ridge_vent"]
    return RidgeVents(values["places"], values["length"]) if values["places"] else None


def _open(draft: Draft, wall: Wall, frame: Frame) -> bool:
    """Whether a wall is open as a whole, be it bay by bay."""
    said = draft.tables["walls"][wall]
    return bool(said == "open" or (not isinstance(said, str) and len(said) > len(frame.stations)))


def _open_bays(draft: Draft, frame: Frame) -> Iterator[tuple[Wall, float, float]]:
    """Stretches of open bays side by side."""
    planes = (0.0, *frame.stations, draft.tables[""]["length"])
    for wall in WALLS:
        said = draft.tables["walls"][wall]
        for bay in () if isinstance(said, str) or _open(draft, wall, frame) else said:
            if bay - 1 not in said:
                last = next(number for number in count(bay) if number + 1 not in said)
                yield wall, planes[bay - 1], planes[last]


def _sheets(draft: Draft) -> Sheets:
    values = dict(draft.tables["sheets"])
    common = {key: values.pop(key) for key in ("profile", "gauge", "thickness")}
    wall, roof = values.pop("wall_colour"), values.pop("roof_colour")
    values["foot_closures"] = values["foot_closures"] == "inside"
    values["pairs"] = values["pairs"] == "cut"
    if values["cut_clearance"] is None:
        values["cut_clearance"] = POCKET + values["flange"]
    if values["overhang"] is None:
        into = draft.tables["trim"]["gutters"] != "none"
        values["overhang"] = OVERHANG[draft.tables[""]["units"]][into]
    on_walls, on_roof = pressed(draft, "walls"), pressed(draft, "roof")
    gables = draft.tables["gable_sheets"]["colour"] or wall
    return Sheets(
        sides=replace(_skin(draft, "sheets", common, wall), off=on_walls),
        gables=replace(_skin(draft, "gable_sheets", common, gables), off=on_walls),
        roof=replace(_skin(draft, "roof_sheets", common, roof), off=on_roof),
        **values,
    )


def _skin(draft: Draft, table: str, common: dict[str, Any], colour: str) -> Skin:
    """What one table says of its sheets; where it says nothing, they are as the others."""
    own = {key: draft.tables[table][key] for key in common}
    profile = own["profile"] or common["profile"]
    if own["gauge"] is None and own["thickness"] is None and table != "sheets":
        own, table = common, "sheets"
    if own["thickness"] is not None:
        typed = " ".join(str(draft.given[table]["thickness"]).split())
        return Skin(profile, own["thickness"], typed, colour)
    if own["gauge"] is None and draft.units == "mm":
        return Skin(profile, USUAL_MM, f"{USUAL_MM} mm", colour)
    number = own["gauge"] or USUAL_GAUGE
    return Skin(profile, gauges()[number].galvanised, f"{number} ga", colour)


def _wainscot(draft: Draft) -> Wainscot | None:
    values, sheets = draft.tables["wainscot"], draft.tables["sheets"]
    if values["height"] is None:
        return None
    common = {key: sheets[key] for key in ("profile", "gauge", "thickness")}
    colour = values["colour"] or draft.tables["trim"]["colour"] or sheets["roof_colour"]
    skin = replace(_skin(draft, "wainscot", common, colour), off=pressed(draft, "walls"))
    return Wainscot(values["height"], WAINSCOT_WALLS[values["walls"]], skin)


def _half_wall(draft: Draft) -> HalfWall | None:
    values = draft.tables["half_wall"]
    return None if values["height"] is None else HalfWall(values["height"], WAINSCOT_WALLS[values["walls"]])


def _skirt(draft: Draft) -> Skirt | None:
    values = draft.tables["skirt"]
    return None if values["foot"] is None else Skirt(values["foot"], WAINSCOT_WALLS[values["walls"]])


def _trim(draft: Draft) -> Trim:
    values = draft.tables["trim"]
    return Trim(
        colour=values["colour"] or draft.tables["sheets"]["roof_colour"],
        colours=tuple((kind, c) for kind in TRIM_KINDS if (c := values[f"{kind}_colour"]) is not None),
        gauge=_trim_gauge(draft.tables["sheets"]["flange"], draft.units),
        stock=tuple(sorted(set(values["stock"] or USUAL_STICKS[draft.units]))),
        stocks=tuple(
            (kind, tuple(sorted(set(own)))) for kind in TRIM_KINDS if (own := values[f"{kind}_stock"])
        ),
        lap=values["lap"],
        kerf=values["kerf"],
        wind=values["wind"],
        gutters=values["gutters"] == "low eaves",
        downspout_apart=values["downspouts"],
    )


def _trim_gauge(thickness: float, units: Units) -> str:
    """What trim of a thickness (mm) is called: its gauge, or the thickness itself where no gauge has it."""
    named = (number for number, gauge in gauges().items() if abs(gauge.galvanised - thickness) < SAME)
    return next((f"{number} ga" for number in named), format_exact(thickness, units))


def _slab(draft: Draft, sheets: Sheets, wainscot: Wainscot | None) -> Slab:
    values = draft.tables["slab"]
    skins = (sheets.sides, sheets.gables, *([wainscot.skin] if wainscot else []))
    room = max(max(one.profile.height, one.profile.leg) + one.off for one in skins)
    width = values["ledge_width"] or room + LEDGE_ROOM
    return Slab(
        values["thickness"],
        values["ledge_depth"],
        width,
        values["hang"],
        values["edge_depth"] or values["thickness"],
        values["edge_width"],
        values["mesh"] or "",
    )
