"""The whole building laid out."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from ..description.building import Building, FaceName
from ..description.steel_lines import SteelLines
from ..findings import Code, Finding, in_order
from ..recipe import Part
from ..terms import Terms
from .asked import asked
from .backing import backing
from .cladding import clad
from .closures import eave_closures, head_closures, ridge_closures
from .door_room import in_the_doors_way
from .faces import Face, faces
from .frames import framed
from .framing import roof_framing, wall_framing
from .opening_trims import opening_runs
from .openings import opening_parts
from .screw_lines import screw_lines
from .screws import Fastening, Missed, sheet_screws, stitch_screws
from .slab import slab
from .trim_lines import TrimLines
from .trim_run import TrimRun, pieces
from .trim_screws import corner_screws, door_screws, rake_screws, slope_screws
from .trims import base_runs, corner_runs, eave_runs, rake_runs, ridge_run


@dataclass(frozen=True, slots=True)
class Laid:
    """parts: everything the building is made of. findings: what could not be done as the rules ask. terms:
    what was asked and no part can show."""

    parts: tuple[Part, ...]
    findings: tuple[Finding, ...]
    terms: Terms


def lay_out(building: Building) -> Laid:
    """Every part: concrete, steel, trims of openings, sheets, closures, trims of edges, screws."""
    around = faces(building)
    named = {face.name: face for face in around}
    lines, trim = SteelLines(building), TrimLines(building)
    steel = [*framed(building, named), *_framing(lines, around)]
    sheets = [part for face in around for part in clad(building, face)]
    screws, missed = _sheet_screws(trim, around, steel, sheets)
    parts = (
        slab(building, named),
        *steel,
        *_trims(building, _opening_runs(trim, around)),
        *sheets,
        *_closures(trim, named),
        *_trims(building, _edge_runs(trim, named)),
        *screws,
        *_trim_screws(trim, around),
    )
    findings = list(_left_out_screws(missed))
    for face in around:
        findings += in_the_doors_way(building, face, steel)
        findings += _left_out(lines, face)
    return Laid(parts, in_order(findings), asked(building, around))


def _framing(lines: SteelLines, around: Sequence[Face]) -> Iterator[Part]:
    for face in around:
        yield from roof_framing(lines, face) if face.sloped else wall_framing(lines, face)
    for face in around:
        yield from opening_parts(lines, face)


def _opening_runs(lines: TrimLines, around: Sequence[Face]) -> Iterator[TrimRun]:
    for face in around:
        if not face.sloped:
            yield from opening_runs(lines, face)
            yield from base_runs(lines, face)


def _edge_runs(lines: TrimLines, named: dict[FaceName, Face]) -> Iterator[TrimRun]:
    yield from corner_runs(lines)
    yield from eave_runs(lines)
    yield from rake_runs(lines, named["back"])
    yield from rake_runs(lines, named["front"])
    yield ridge_run(lines)


def _trims(building: Building, runs: Iterator[TrimRun]) -> Iterator[Part]:
    for run in runs:
        yield from pieces(run, building.trim.stock, building.trim.lap)


def _closures(lines: TrimLines, named: dict[FaceName, Face]) -> Iterator[Part]:
    for wall in (named["left"], named["right"]):
        yield from head_closures(lines, wall)
    for slope in (named["left slope"], named["right slope"]):
        yield from eave_closures(lines, slope)
        yield from ridge_closures(lines, slope)


def _sheet_screws(
    lines: TrimLines, around: Sequence[Face], steel: Sequence[Part], sheets: Sequence[Part]
) -> tuple[list[Part], list[Missed]]:
    rows: list[Part] = []
    missed: list[Missed] = []
    for face in around:
        plan = Fastening(lines.building.screws, face, screw_lines(lines, face), backing(face, steel))
        for sheet in sheets:
            if sheet.label("face") == face.name:
                row, misses = sheet_screws(lines.building.sheets.profile, plan, sheet)
                stitched = stitch_screws(lines.building.sheets.profile, plan, sheet)
                rows += [one for one in (row, stitched) if one]
                missed += misses
    return rows, missed


def _trim_screws(lines: TrimLines, around: Sequence[Face]) -> Iterator[Part]:
    for face in around:
        if face.sloped:
            yield from slope_screws(lines, face)
            continue
        yield from corner_screws(lines, face)
        yield from door_screws(lines, face)
        if face.name in ("front", "back"):
            yield from rake_screws(lines, face)


def _left_out_screws(missed: Sequence[Missed]) -> Iterator[Finding]:
    """One finding a sheet for the screws that its pattern asks for and that would find no steel."""
    for sheet, count in Counter(one.sheet for one in missed).items():
        yield Finding(Code.SCREW_LEFT_OUT, (sheet,), measured=count, quantity="count")


def _left_out(lines: SteelLines, face: Face) -> Iterator[Finding]:
    """Gable posts that had to give way to an opening."""
    frame = lines.building.frame
    wanted = {"front": frame.front_posts, "back": frame.back_posts}.get(face.name, ())
    standing = dict(lines.standing_posts(face.name))
    for u in wanted:
        if u not in standing:
            yield Finding(Code.POST_LEFT_OUT, (face.name,), measured=u, quantity="length")
        elif standing[u] is not None:
            yield Finding(Code.POST_ON_HEADER, (face.name,), measured=u, quantity="length")
