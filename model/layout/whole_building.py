"""The whole building laid out."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from ..description.building import Building
from ..envelope.beside import beside
from ..envelope.bracing import brace_lines
from ..envelope.face import Face
from ..envelope.opening_lines import OpeningLines
from ..envelope.shell import Shell
from ..findings import Code, Finding, in_order
from ..place import Place
from ..recipe import Part
from ..roles import Role
from .asked import asked
from .laid import Laid, at_place, standing, together
from .screws.fastening import Fastening, Missed
from .screws.lap_screws import stitch_screws
from .screws.room import room
from .screws.screw_lines import screw_lines
from .screws.sheet_screws import sheet_screws
from .screws.steel_contact import walls
from .screws.trim_screws import trim_screws
from .screws.trimmed import Trimmed
from .screws.uprights import edge_walls, level_ends
from .skin.blankets import blankets
from .skin.cladding import Tile, covered, sheet_of, tiles
from .skin.inside_closures import eave_closures, foot_closures
from .skin.outside_closures import (
    cap_closures,
    half_closures,
    head_closures,
    rail_closures,
    seam_closures,
)
from .skin.shared_cuts import shared_cuts
from .steel.braces import braces
from .steel.door_room import in_the_doors_way
from .steel.frames import framed
from .steel.framing import wall_framing
from .steel.opening_frames import opening_parts
from .steel.purlins import roof_framing
from .steel.rake_angles import rake_angles
from .steel.slab import slab
from .trim.break_trims import break_runs
from .trim.cap_trims import cap_runs
from .trim.corner_trims import corner_runs, gap_runs
from .trim.edge_trims import base_runs, eave_runs
from .trim.gutters import downspouts
from .trim.headwall_trims import flashing_runs
from .trim.hung_trims import hung_runs
from .trim.in_line_trims import in_line_runs
from .trim.inside_corners import inside_corner_runs
from .trim.opening_trims import opening_runs
from .trim.rail_covers import cover_runs
from .trim.rake_trims import head_runs, rake_runs
from .trim.ridge_trims import ridge_runs
from .trim.ridge_vents import ridge_vents
from .trim.tier_trims import tier_runs
from .trim.trim_lines import TrimLines
from .trim.trim_run import TrimRun, pieces


def lay_out(building: Building, measured: Shell | None = None) -> Laid:
    """Every part: concrete, steel, trims of openings, sheets, closures, trims of edges, screws; then those of
    its lean-tos, likewise.

    measured: a shell as it stands on its site, instead of the one that the description's sizes make.
    """
    trim = TrimLines(building, measured)
    lean_tos = [(TrimLines(one, main=building), beside(building, one)) for one in building.lean_tos]
    walls = [[at_place(wall, place) for wall in lines.steel.walls] for lines, place in lean_tos]
    concrete = slab(building, trim.steel.walls, walls)
    others = [standing(_above_slab(lines), lines.building.name, place) for lines, place in lean_tos]
    flashings = [part for laid in others for part in laid.parts if part.role is Role.FLASHING]
    main = _above_slab(trim, flashings, [run for lines, place in lean_tos for run in _in_line(lines, place)])
    laid = together(Laid((concrete, *main.parts), main.findings, main.terms), others)
    lapped = [face.name for face in _lapped(trim)]
    for lines, _ in lean_tos:
        lapped += [f"{lines.building.name} {face.name}" for face in _lapped(lines)]
    return replace(laid, parts=shared_cuts(laid.parts, building.sheets.tolerance, lapped))


def _lapped(lines: TrimLines) -> list[Face]:
    """The faces up which sheets lap."""
    steel = lines.steel
    return [face for face in steel.faces if any(steel.laps_of(face, region) for region in face.regions)]


def _in_line(lines: TrimLines, place: Place) -> Iterator[TrimRun]:
    """The trims of a lean-to that lie over the main building's sheets too, where they stand."""
    for run in (*in_line_runs(lines), *inside_corner_runs(lines)):
        yield replace(run, name=f"{lines.building.name} {run.name}", frame=place @ run.frame)


def _above_slab(trim: TrimLines, pressed: Sequence[Part] = (), shared: Sequence[TrimRun] = ()) -> Laid:
    """All of one building but its concrete. pressed: trims of others that its sheets press on. shared: runs
    of others that its screws hold too."""
    building = trim.building
    lines = trim.steel
    around = lines.faces
    steel = [*framed(lines), *_framing(lines)]
    bracing = list(braces(brace_lines(lines)))
    laid = {face.name: [(tile, sheet_of(trim, face, tile)) for tile in tiles(trim, face)] for face in around}
    sheets = [part for of_face in laid.values() for _, part in of_face]
    around_openings, edges = list(_opening_runs(trim)), list(_edge_runs(trim))
    opening_trims, edge_trims = _trims(trim, around_openings), _trims(trim, edges)
    trims, runs = opening_trims + edge_trims, [*around_openings, *edges, *shared]
    screws, missed = _screws(trim, laid, steel, ([*trims, *pressed], runs))
    parts = (
        *steel,
        *bracing,
        *opening_trims,
        *(strip for face in around for strip in blankets(trim, face)),
        *sheets,
        *_closures(trim),
        *(foot for wall in lines.walls for foot in foot_closures(trim, wall, laid[wall.name])),
        *edge_trims,
        *ridge_vents(trim),
        *downspouts(trim),
        *screws,
    )
    findings = list(_left_out_screws(missed))
    for face in around:
        findings += in_the_doors_way(building, face, [*steel, *bracing])
        findings += _left_out(lines, face)
        if lines.run_on and face.raked and not face.open:
            gap = lines.rafter_top
            findings.append(Finding(Code.OPEN_OVER_GABLE, (face.name,), measured=gap, quantity="length"))
    return Laid(parts, in_order(findings), asked(trim))


def _framing(lines: OpeningLines) -> Iterator[Part]:
    for face in lines.faces:
        yield from roof_framing(lines, face) if face.sloped else wall_framing(lines, face)
        yield from rake_angles(lines, face)
    for face in lines.faces:
        yield from opening_parts(lines, face)


def _opening_runs(lines: TrimLines) -> Iterator[TrimRun]:
    for wall in lines.steel.walls:
        if not wall.open:
            yield from opening_runs(lines, wall)
            yield from cover_runs(lines, wall)
            yield from hung_runs(lines, wall) if wall.hung else base_runs(lines, wall)
            yield from tier_runs(lines, wall)
            yield from head_runs(lines, wall)


def _edge_runs(lines: TrimLines) -> Iterator[TrimRun]:
    yield from corner_runs(lines)
    yield from in_line_runs(lines)
    yield from inside_corner_runs(lines)
    for wall in lines.steel.walls:
        yield from gap_runs(lines, wall)
        yield from cap_runs(lines, wall)
    yield from eave_runs(lines)
    for wall in lines.steel.walls:
        yield from rake_runs(lines, lines.steel.verge(wall))
    yield from break_runs(lines)
    yield from ridge_runs(lines)
    yield from flashing_runs(lines)


def _trims(lines: TrimLines, runs: Sequence[TrimRun]) -> list[Part]:
    lap = lines.building.trim.lap
    return [part for run in runs for part in pieces(run, lines.stock(run.role), lap)]


def _closures(lines: TrimLines) -> Iterator[Part]:
    for wall in lines.steel.walls:
        yield from seam_closures(lines, wall)
        yield from half_closures(lines, wall)
        yield from rail_closures(lines, wall)
    for eave in lines.steel.eaves.values():
        if not (wall := lines.steel.named[eave.wall]).open_above:
            yield from head_closures(lines, wall, eave)
    for slope in lines.steel.slopes:
        yield from eave_closures(lines, slope)
        if lines.steel.closing_at_head(slope).caps:
            yield from cap_closures(lines, slope)


def _screws(
    lines: TrimLines,
    laid: Mapping[str, Sequence[tuple[Tile, Part]]],
    steel: Sequence[Part],
    trims: tuple[Sequence[Part], Sequence[TrimRun]],
) -> tuple[list[Part], list[Missed]]:
    """The screws of all sheets, then those of all trims, which find the sheets' in their way."""
    through_sheets: list[Part] = []
    through_trims: list[Part] = []
    missed: list[Missed] = []
    building = lines.building
    for face in (*lines.steel.faces, *lines.steel.verges):
        of_face = laid[face.name] if not face.verge else ()
        behind = walls(face, steel, lines.steel.under(face))
        plan = Fastening(
            building.screws,
            face,
            screw_lines(lines, face, behind),
            list(edge_walls(face, behind, lines.steel.sheet_ends(face))),
            level_ends(building, face),
            room(lines, face, steel, trims[0], behind),
            covered(building, face),
        )
        rows, misses = sheet_screws(plan, of_face)
        stitched = (stitch_screws(plan, tile, part) for tile, part in of_face)
        through_sheets += [*rows, *(one for one in stitched if one)]
        more, others = trim_screws(Trimmed(lines, plan, steel, of_face, trims[1]))
        through_trims += more
        missed += [*misses, *others]
    return through_sheets + through_trims, missed


def _left_out_screws(missed: Sequence[Missed]) -> Iterator[Finding]:
    """One finding a sheet for the screws that its pattern asks for and that would find no steel."""
    for sheet, count in Counter(one.sheet for one in missed).items():
        yield Finding(Code.SCREW_LEFT_OUT, (sheet,), measured=count, quantity="count")


def _left_out(lines: OpeningLines, face: Face) -> Iterator[Finding]:
    """Gable posts that had to give way to an opening."""
    standing = dict(lines.standing_posts(face))
    for u in lines.wanted_posts(face):
        if u not in standing:
            yield Finding(Code.POST_LEFT_OUT, (face.name,), measured=u, quantity="length")
        elif standing[u] is not None:
            yield Finding(Code.POST_ON_HEADER, (face.name,), measured=u, quantity="length")
