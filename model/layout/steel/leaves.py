"""Leaves that go up behind their opening, and louvres, drawn so that they look like what they are.

In their own frame x runs up and y outward; leaves are as long as the opening is wide. Sizes are common
practice, no source: stand-ins for the door that is bought.
"""

from __future__ import annotations

from math import ceil

from ...description.opening import Opening
from ...envelope.opening_lines import LEAF_THICKNESS
from ...envelope.skin_lines import SHELF_FALL
from ...place import Place, Point2
from ...recipe import Cut, Joined, Prism, Recipe, Section, grid
from .blocks import block

SECTION = 609.6
"""mm; the greatest height of a section of an overhead door (24 in)."""
GROOVE = 4.0
"""mm; how deep, and half how high, the groove between two sections is drawn."""
RIM, BLADE = 25.4, 8.0
"""mm; of a louvre: of its frame (1 in), and how thick, measured up, a blade is drawn."""
SLAT, SLAT_METAL = 76.2, 6.0
"""mm; of a roll-up door's curtain: from one slat to the next (3 in), and how thick it is drawn."""
NOSE = 12.7
"""mm; how far out of the steel line, and how high at its root, the nose at a window's or a vent's foot is
drawn (1/2 in)."""
OVER_SILL = 4.0
"""mm; that it stands over the high edge of the sill's trim, clear of where that laps. Ours."""


def sections(opening: Opening) -> Prism:
    """Level sections of one height, a groove between each two."""
    high, thick = opening.height, LEAF_THICKNESS[opening.kind]
    count = ceil(high / SECTION - 1e-9)
    joints = [high * k / count for k in range(count - 1, 0, -1)]
    face = [
        point for v in joints for point in ((v + GROOVE, thick), (v, thick - GROOVE), (v - GROOVE, thick))
    ]
    return _across(opening, ((0.0, 0.0), (high, 0.0), (high, thick), *face, (0.0, thick)))


def curtain(opening: Opening) -> Prism:
    """Slats that stand out and in by turns."""
    high, thick = opening.height, LEAF_THICKNESS[opening.kind]
    count = 2 * max(1, round(high / SLAT))
    inner = [(high * k / count, 0.0 if k % 2 else thick - SLAT_METAL) for k in range(count + 1)]
    return _across(opening, (*inner, *((v, w + SLAT_METAL) for v, w in reversed(inner))))


def louvre(size: Point2, thick: float) -> Cut:
    """Blades that fall outward at 45 degrees, so near to each other that nobody sees through, in a rim.
    In its frame x runs across, y up and z outward. size: (width, height), mm."""
    (width, height), gap = size, thick - BLADE
    count = max(1, int((height - 2 * RIM + BLADE - thick) / thick))
    first = (height - (count - 1) * thick - gap - thick) / 2
    slot = ((-1.0, thick + 1), (gap - 1, thick + 1), (thick + gap + 1, -1.0), (thick + 1, -1.0))
    outline = Section(tuple((grid(x), grid(y), 0.0) for x, y in reversed(slot)))
    through = Prism(outline, (0.0, 0.0, 0.0), (0.0, 0.0, grid(width - 2 * RIM)))
    places = (Place((RIM, first + k * thick, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)) for k in range(count))
    return Cut(block(width, height, thick), tuple((through, place) for place in places))


def nosed(body: Recipe, size: Point2, inset: float, lift: float) -> Joined:
    """A sash or a louvre with a nose along its foot that comes out over the sill's trim, so that what runs
    down it falls on that shelf and not on the steel behind. In the body's frame x runs across, y up and z
    outward. size: how wide and thick it is. inset: of its outer face from the steel line. lift: of its foot
    over the opening's sill (mm)."""
    width, thick = size
    foot, out = SHELF_FALL + OVER_SILL - lift, inset + NOSE
    profile = ((0.0, -1.0), (NOSE, -1.0), (NOSE - SHELF_FALL, out), (0.0, out))
    outline = Section(tuple((grid(x), grid(y), 0.0) for x, y in profile))
    nose = Prism(outline, (0.0, 0.0, 0.0), (0.0, 0.0, grid(width)))
    return Joined(
        ((body, Place()), (nose, Place((0.0, grid(foot), thick), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))))
    )


def _across(opening: Opening, outline: tuple[Point2, ...]) -> Prism:
    points = Section(tuple((grid(x), grid(y), 0.0) for x, y in outline))
    return Prism(points, (0.0, 0.0, 0.0), (0.0, 0.0, grid(opening.width)))
