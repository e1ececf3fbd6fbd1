"""Trims along the building's level edges: base and eaves, each as a run in its own frame."""

from __future__ import annotations

from collections.abc import Iterator

from ...envelope.face import Face
from ...envelope.stretches import remaining
from ...place import Place, Point3, dot
from ...roles import Role
from ..steel.straight_member import Plane
from .gutters import gutter
from .trim_lines import TrimLines
from .trim_run import Box, TrimRun, mirrored

UP: Point3 = (0.0, 0.0, 1.0)
FRONT: Point3 = (0.0, -1.0, 0.0)
ALONG: Point3 = (0.0, 0.0, 1.0)

SQUARE = 1e-6
"""Cosine of what is no nearer to one way than to the other."""

NOTCH = 1.0
"""mm that a leg is cut away past what it makes room for: pieces that lap lean. Ours."""


def base_runs(lines: TrimLines, face: Face) -> Iterator[TrimRun]:
    """Along a clad wall's foot, less its doors: one leg on the base rail, one under the sheets' feet."""
    t, up, low = lines.thickness, lines.base_leg, lines.bottom
    flange = max(lines.profile("j").in_plane, lines.profile("jamb angle").in_plane)
    # Where sheets hang, the lying leg closes their ribs up to the door, its upright leg cut away beside the
    # flanges; else concrete does.
    beside = 0.0 if lines.building.slab.hang else flange
    edges = [(o.from_left, o.from_left + o.width) for o in face.openings if o.sill == 0]
    doors = [(a - beside, b + beside) for a, b in edges]
    upright = (-t - 1, low + t, 1.0, low + up + 2 * t + 1)
    cut = [(u - flange - NOTCH, u + flange + NOTCH, upright) for door in edges for u in door if not beside]
    full: list[float] = []
    planes: list[Plane] = []
    for hand, side in (("left", -1.0), ("right", 1.0)):
        corner = lines.steel.steel_end(face, hand)
        across, out = face.beside(hand).mitre
        over, is_open = _over_beside(lines, face, hand), _ends_open(face, hand)
        end = corner if is_open or over < -NOTCH else corner + side * lines.crown(face) * out / across
        mitre = Plane((0.0, 0.0, corner), (side * out, 0.0, across))
        full.append(end)
        planes.append(Plane((0.0, 0.0, end), ALONG) if is_open or abs(over) > NOTCH else mitre)
        if over > NOTCH:
            past = end + side * NOTCH
            cut.append((min(corner, past), max(corner, past), upright))
    # x inward, y up, z to the right: the face's frame turned.
    frame = face.frame @ Place((0.0, 0.0, 0.0), (0.0, 0.0, -1.0), (0.0, 1.0, 0.0))
    line = ((0.0, low + up), (0.0, low), (1.0 - lines.crown(face), low))
    for number, (a, b) in enumerate(remaining((full[0], full[1]), [*doors, *face.gaps]), 1):
        yield TrimRun(
            name=f"{face.name} base trim {number}",
            role=Role.BASE_TRIM,
            group=("trims", face.name),
            labels=lines.labels(face.name, "base"),
            frame=frame,
            line=line,
            thickness=t,
            start=planes[0] if a <= full[0] else Plane((0.0, 0.0, a), ALONG),
            end=planes[1] if b >= full[1] else Plane((0.0, 0.0, b), ALONG),
            nest=(0.0, t),
            snips=(upright,),
            notches=tuple(cut),
        )


def _over_beside(lines: TrimLines, face: Face, hand: str) -> float:
    """How much deeper a wall's base trim is than the one round the corner, where nothing but they close the
    ribs' feet: there they butt, the deeper one running past the other's end, for a mitre leaves a hole."""
    if not lines.building.slab.hang or _ends_open(face, hand):
        return 0.0
    return lines.crown(face) - lines.crown(lines.steel.named[face.beside(hand).other])


def _ends_open(face: Face, hand: str) -> bool:
    """Whether a wall's foot ends square: at an open wall, or where it is open itself."""
    return face.open_at(hand) or face.beside(hand).open


def _top_leg(e: float, leg: float, rise: float, t: float) -> tuple[Box, ...]:
    """What takes the top leg off an eave trim; at a high eave, where it falls along the drop, in two."""
    out, up = -e - 3 * t - 1, 5.0
    if rise >= 0:
        return ((out, -(e + 3 * t) * rise, leg + 1, leg * rise + up),)
    corner, top = -e * rise, -(e + 3 * t) * rise + up
    return (out, corner, -e, top), (-e, leg * rise, leg + 1, top)


def eave_runs(lines: TrimLines) -> Iterator[TrimRun]:
    """Along the eaves from the rear, the front piece on top; ends flush with the corner trims.

    The top leg lies on the roof's steel plane under the roof sheets, the drop over the wall's closure.
    """
    t, leg = lines.thickness, lines.profile("eave").in_plane
    for eave in lines.steel.eaves.values():
        wall, rise = lines.steel.named[eave.wall], eave.rise
        if wall.name == lines.building.joined:
            continue
        e = lines.head(wall)
        inner = ((leg, leg * rise), (-e, -e * rise), (-e, -e * rise - lines.eave_drop(eave)))
        across, up = eave.along
        left, right = (lines.head_beside(wall, hand) for hand in ("left", "right"))
        left, right = left + lines.steel.run_on, right + lines.steel.run_on
        run = left + wall.width / across + right
        # x level, across the wall; z the way of laying. On a wall that faces right both are turned about.
        rightward = dot(wall.frame.x, FRONT) > -SQUARE
        x, (u, v), past = (-1.0, eave.left, left) if rightward else (1.0, eave.right, right)
        start = (u + x * past * across, v + x * past * up, 0.0)
        trim = TrimRun(
            name=f"{wall.name} eave trim",
            role=Role.EAVE_TRIM,
            group=("trims", wall.name),
            labels=lines.labels(wall.name, "eave"),
            frame=wall.frame @ Place(start, (0.0, 0.0, x), (-up, across, 0.0)),
            line=inner if rightward else mirrored(inner),
            thickness=t,
            start=Plane((0.0, 0.0, 0.0), ALONG),
            end=Plane((0.0, 0.0, run), ALONG),
            nest=(x * t, -t * rise),
            snips=tuple(
                cut if rightward else (-cut[2], cut[1], -cut[0], cut[3]) for cut in _top_leg(e, leg, rise, t)
            ),
        )
        yield gutter(lines, eave, trim, rightward) if lines.guttered(wall) else trim
