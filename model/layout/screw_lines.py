"""Along which framing lines the sheets of a face are screwed."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from .faces import Face, head_angle
from .framing import remaining
from .trim_lines import TrimLines

FROM_EDGE = 10.5
"""mm; from a cut edge to the screws along it: over 1.5 diameters of a #12 (8.2 mm, AISI S100)."""

HEAD_LINE = 63.5
"""mm; the head screws of a side wall, below the eave (2 1/2 in): under the eave trim's drop, clear of the
closure. Common practice, no source."""


@dataclass(frozen=True, slots=True)
class ScrewLine:
    """A straight line in (u, v) on a face: v = at + rise * (u - left) from left to right."""

    at: float
    left: float
    right: float
    rise: float = 0.0

    def height(self, u: float) -> float | None:
        """v of the line over u; None beside it."""
        if not self.left <= u <= self.right:
            return None
        return self.at + self.rise * (u - self.left)


def screw_lines(lines: TrimLines, face: Face) -> list[ScrewLine]:
    """Every framing line of a face that its sheets are fastened to."""
    steel, framing = lines.steel, lines.building.framing
    whole = (min(u for u, _ in face.outline), max(u for u, _ in face.outline))
    if face.sloped:
        strut = framing.eave_strut.width * 0.6
        return [ScrewLine(v, *whole) for v in (strut, *steel.purlins)]
    found = [ScrewLine(framing.base_rail.depth / 2, *whole)]
    if face.name in ("left", "right"):
        found += [line for v in steel.side_girts for line in _girt_lines(lines, face, v, whole)]
        found.append(ScrewLine(lines.building.eave_height - HEAD_LINE, *whole))
    else:
        found += [
            line for v in steel.gable_girts for line in _girt_lines(lines, face, v, _under_rakes(lines, v))
        ]
        deep, half = steel.rake_leg / 2, face.width / 2
        peak = steel.roof(half, deep)
        found.append(ScrewLine(steel.roof(whole[0], deep), whole[0], half, steel.rise))
        found.append(ScrewLine(peak, half, whole[1], -steel.rise))
    for opening in face.openings:
        left, right = opening.from_left, opening.from_left + opening.width
        clear = lines.building.sheets.cut_clearance + FROM_EDGE
        over = opening.sill + opening.height + head_angle(lines.building, opening) + clear
        found.append(ScrewLine(over, left, right))
        if opening.sill > 0:
            found.append(ScrewLine(opening.sill - clear, left, right))
    return found


def _girt_lines(lines: TrimLines, face: Face, v: float, whole: tuple[float, float]) -> Iterator[ScrewLine]:
    """A girt's line, less the stretches where an opening takes its place from jamb to jamb."""
    cut = [cuts[0] for o in face.openings if len(cuts := lines.steel.interruption(o, v)) == 1]
    for span in remaining(whole, cut):
        yield ScrewLine(v, *span)


def _under_rakes(lines: TrimLines, v: float) -> tuple[float, float]:
    """Where a gable's line at v runs clear of the rakes' own screws."""
    if lines.steel.across_gable(v):
        return (-lines.building.sheets.profile.leg, lines.building.width + lines.building.sheets.profile.leg)
    limit = lines.steel.rake_limit(lines.building.framing.girt.depth)
    reach = max(0.0, (v - lines.steel.roof(0.0, limit)) / lines.steel.rise)
    return (reach, lines.building.width - reach)
