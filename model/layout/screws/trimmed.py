"""What the screws of a face's trims share: its runs of trim, the ribs of its sheets, rows."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import ceil

import shapely

from ...envelope.end_laps import EndLap
from ...envelope.face import Face, Region
from ...envelope.skin_lines import HELD
from ...place import Place, Point2, Point3
from ...recipe import Part, Sheet, Turned, grid
from ...roles import Role
from ..skin.cladding import Tile
from ..trim.trim_lines import TrimLines
from ..trim.trim_run import TrimRun, joints, lift
from .fastening import Fastening

ROW = 25.0
"""mm; how far a screw may leave its row, up or down. Ours."""

Spots = list[tuple[Point2, shapely.Geometry]]
Wanted = tuple[str, TrimRun, float, Spots]
"""A row's name, the run it holds, where its heads sit, and each screw's place with the region it may take."""


@dataclass(frozen=True)
class Trimmed:
    """A face with its sheets fastened, and the runs of trim that are to be."""

    lines: TrimLines
    plan: Fastening
    steel: Sequence[Part]
    laid: Sequence[tuple[Tile, Part]]
    runs: Sequence[TrimRun]

    @property
    def sheets(self) -> list[Part]:
        """The face's sheets."""
        return [sheet for _, sheet in self.laid]

    @property
    def end_laps(self) -> list[EndLap]:
        """Where sheets lap up the face, on each of its tiers."""
        face = self.plan.face
        return [lap for region in face.regions for lap in self.lines.steel.laps_of(face, region)]

    def run(self, name: str) -> TrimRun:
        """The run of a name."""
        return next(run for run in self.runs if run.name == name)

    def lift(self, run: TrimRun, z: float) -> float:
        """How far, in thicknesses, a run's outermost piece at z rides on the ones before."""
        return lift(run, self.lines.stock(run.role), self.lines.building.trim.lap, z)

    def bars(self, run: TrimRun) -> list[Point2]:
        """Where along a run no screw stands: beside the ends of its pieces."""
        found = joints(run, self.lines.stock(run.role), self.lines.building.trim.lap)
        return [bar for a, b in found for bar in ((a - HELD, a + HELD), (b - HELD, b + HELD))]

    def laps(self, run: TrimRun) -> list[Point2]:
        """The laps of a run whole, where a screw stands only for want of a better place."""
        ends = iter(self.bars(run))
        return [(low, high) for (low, _), (_, high) in zip(ends, ends, strict=True)]

    def level_rows(self, u: float, below: float) -> list[float]:
        """Heights of the framing lines that pass u level, under a height."""
        rows = (line for line in self.plan.lines if not line.rise and line.left <= u <= line.right)
        return [line.at for line in rows if line.at < below]

    def ribs(self, region: Region) -> list[float]:
        """u of every major rib of a region's sheets, each once, from the left."""
        profile, frame = region.skin.profile, self.plan.face.frame
        found = set()
        for sheet in (sheet for tile, sheet in self.laid if tile.region == region):
            assert isinstance(sheet.recipe, Sheet)
            right = max(u for u, _ in sheet.recipe.outline)
            for k in range(round(profile.cover / profile.pitch) + 1):
                if k * profile.pitch < right:
                    found.add(round(frame.seen(sheet.place.point((k * profile.pitch, 0.0, 0.0)))[0], 3))
        return sorted(found)


def spread(length: float, margin: float, apart: float) -> list[float]:
    """Evenly along a length, no further apart than told, the first and last at a margin from its ends."""
    count = max(1, ceil((length - 2 * margin) / apart))
    return [margin + (length - 2 * margin) * k / count for k in range(count + 1)]


def up_a_leg(u: float, strip: Sequence[float], heights: Iterable[float]) -> Spots:
    """The spots of screws up a leg at u, each free to stand in a strip (u to u) about its height."""
    return [((u, v), shapely.box(strip[0], v - ROW, strip[1], v + ROW)) for v in heights]


def row_of(run: TrimRun, name: str, face: Face, screw: Turned, frame: Place, row: Sequence[Point3]) -> Part:
    """A row of equal screws of a trim, at points of a frame, in the run's colour."""
    labels = (("face", face.name), ("colour", dict(run.labels)["colour"]), ("material", "screw"))
    first = row[0]
    moved = tuple((grid(p[0] - first[0]), grid(p[1] - first[1]), grid(p[2] - first[2])) for p in row)
    return Part(
        f"{name} screws", Role.TRIM_SCREW, ("screws", face.name), screw, frame @ Place(first), labels, moved
    )
