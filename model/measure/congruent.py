"""Which pieces are the same piece: congruent off the bench, and alike in what geometry cannot hold."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import cmp_to_key, lru_cache

from OCP.TopoDS import TopoDS_Solid

from ..pieces import Model, Piece
from ..place import Place
from ..roles import KINDS
from .role_measures import Measured, Way, measured

AGREE = ("colour", "material", "profile", "gauge", "swing")
"""Labels that pieces of one mark have in common."""
EQUAL = 0.0103
"""mm, mm2; sizes nearer than this are equal when marks are numbered: above the tolerance of marks,
and no difference that people lay out."""
SETS = 1024
"""Sets of solids that are remembered; a building has some fifty."""


@dataclass(frozen=True, slots=True)
class Member:
    """A piece of a group. benches: where the group's bench frame stands in the piece's solid.

    More than one when the piece fits the drawn one more than one way round.
    """

    piece: Piece
    benches: tuple[Place, ...]

    @property
    def head_up(self) -> bool:
        """Whether the head (the end of high v on the bench) stands higher in the building than the foot.

        On a roof that is the end at the ridge. A piece that fits both ways round counts as head up.
        """
        return max(self.piece.place.vector(bench.y)[2] for bench in self.benches) > 0


@dataclass(frozen=True, slots=True)
class Group:
    """All pieces of one mark. measured: of the first one in the tree, which stands for all."""

    mark: str
    role: str
    measured: Measured
    members: tuple[Member, ...]


def groups(model: Model) -> tuple[Group, ...]:
    """The pieces of every kind that is measured, by mark.

    Two pieces share a mark when their role and the labels in AGREE are the same and their solids are
    congruent to 0.01 mm, set corner to corner on the bench; mirror images are not. Marks count from
    the largest down, equal sizes from the first place in the tree. Marks that the pieces carry are
    not looked at.
    """
    pieces = in_tree_order(model.pieces)
    found = [group for alike in _alike(pieces) for group in _congruent(alike)]
    place = {id(piece): i for i, piece in enumerate(pieces)}
    found.sort(key=lambda group: place[id(group.members[0].piece)])
    found.sort(key=cmp_to_key(_larger))
    numbers: dict[str, int] = defaultdict(int)
    numbered = []
    for group in (group for role in KINDS for group in found if group.role == role):
        prefix = KINDS[group.role].prefix
        numbers[prefix] += 1
        numbered.append(replace(group, mark=f"{prefix}{numbers[prefix]}"))
    return tuple(numbered)


def marked(model: Model) -> Model:
    """The model with a mark on every piece that is measured, and on no other."""
    marks = {id(member.piece): group.mark for group in groups(model) for member in group.members}
    return replace(model, pieces=tuple(replace(p, mark=marks.get(id(p), "")) for p in model.pieces))


def in_tree_order(pieces: Iterable[Piece]) -> list[Piece]:
    """Pieces as the tree lists them, group by group; the same however the groups were interleaved."""
    pieces = list(pieces)
    ranks: dict[tuple[str, ...], int] = {}
    for piece in pieces:
        for depth in range(len(piece.group)):
            ranks.setdefault(piece.group[: depth + 1], len(ranks))

    def rank(piece: Piece) -> tuple[int, ...]:
        return tuple(ranks[piece.group[: depth + 1]] for depth in range(len(piece.group)))

    return sorted(pieces, key=rank)


def _larger(one: Group, other: Group) -> int:
    """Negative when one is the larger; 0 when no figure of their sizes tells them apart."""
    for a, b in zip(one.measured.size, other.measured.size, strict=True):
        if abs(a - b) > EQUAL:
            return -1 if a > b else 1
    return 0


def _alike(pieces: Iterable[Piece]) -> Iterable[list[Piece]]:
    """Pieces of measured roles, apart by role and labels."""
    alike: dict[tuple[str, ...], list[Piece]] = defaultdict(list)
    for piece in pieces:
        if piece.role in KINDS:
            alike[piece.role, *(piece.label(name) for name in AGREE)].append(piece)
    return alike.values()


def _congruent(pieces: list[Piece]) -> Iterable[Group]:
    """Groups, without marks yet, of pieces that agree in role and labels."""
    role = pieces[0].role
    for benches in _lying(role, tuple(dict.fromkeys(piece.solid for piece in pieces))):
        members = (Member(piece, benches[piece.solid]) for piece in pieces if piece.solid in benches)
        yield Group("", role, measured(role, next(iter(benches))), tuple(members))


@lru_cache(maxsize=SETS)
def _lying(role: str, solids: tuple[TopoDS_Solid, ...]) -> tuple[dict[TopoDS_Solid, tuple[Place, ...]], ...]:
    """Congruent solids of a role, each with its benches, the first one drawn.

    Remembered: a model is marked and then listed, and buildings have sets of solids in common.
    """
    bodies = {solid: measured(role, solid) for solid in solids}
    left, found = list(bodies), []
    while left:
        lying = _reached(left.pop(0), bodies, left)
        found.append(
            {
                solid: tuple(way.bench for way in bodies[solid].ways if drawn.fits(way))
                for solid, drawn in lying.items()
            }
        )
    return tuple(found)


def _reached(
    first: TopoDS_Solid, bodies: dict[TopoDS_Solid, Measured], left: list[TopoDS_Solid]
) -> dict[TopoDS_Solid, Way]:
    """The first solid and all that fit it, taken out of left, each with the way round it fits.

    Each one found looks for others in turn, so that the order of the pieces cannot matter.
    """
    lying = {first: bodies[first].ways[0]}
    asking = [first]
    while asking:
        way = lying[asking.pop()]
        for solid in [*left]:
            fitting = [choice for choice in bodies[solid].ways if way.fits(choice)]
            if fitting:
                lying[solid] = fitting[0]
                left.remove(solid)
                asking.append(solid)
    return lying
