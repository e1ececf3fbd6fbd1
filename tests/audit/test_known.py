"""What is remembered between audits: bounded, and without a say in what is found."""

from __future__ import annotations

import numpy as np
import pytest
from ribwright.audit import audit, clash, driven
from ribwright.audit.clash import apart, shared_space
from ribwright.audit.known import SHIFT, TURN, Known, rounded, vectors
from ribwright.audit.rays import spans
from ribwright.recipe import Prism, Section
from ribwright.solids import realise
from ribwright.solids.properties import triangles
from support.planted import shed
from support.plants import move

STEP = 100.0


def test_the_least_lately_asked_is_given_up_first() -> None:
    known: Known[str] = Known(2)
    known.put("a", "one")
    known.put("b", "two")
    assert known.get("a") == "one"
    known.put("c", "three")
    assert known.get("b") is None
    assert (known.get("a"), known.get("c")) == ("one", "three")


def test_arrays_worked_out_two_ways_are_known_again() -> None:
    values = np.array([[0.1 + 0.2, -0.0, 1e-15]])
    same = np.array([[0.3, 0.0, 0.0]])
    assert rounded(values, TURN).tobytes() == rounded(same, TURN).tobytes()
    assert (vectors(rounded(values, SHIFT).tobytes()) == same).all()


def test_what_was_audited_before_decides_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    sound = shed()
    name = next(piece.name for piece in sound.pieces if piece.role == "wall sheet")
    faulty = move(name, (0.1, 3.0, -1.0))(sound)
    audit(sound)
    after = audit(faulty)
    assert after.findings != audit(sound).findings
    monkeypatch.setattr(driven, "_KNOWN", Known(1))
    clash._shared_at.cache_clear()
    assert audit(faulty) == after


@pytest.mark.parametrize("along", [0, 1, 2])
def test_boxes_share_what_their_overlap_holds_wherever_they_stand(along: int) -> None:
    sizes = np.array([30.0, 40.0, 50.0])
    ring = ((0.0, 0.0, 0.0), (30.0, 0.0, 0.0), (30.0, 40.0, 0.0), (0.0, 40.0, 0.0))
    solid = realise(Prism(Section(ring), (0.0, 0.0, 0.0), (0.0, 0.0, 50.0)))
    shifts = np.zeros((3, 3))
    shifts[:, along] = sizes[along] * np.array([0.5, 1.0, 2.0])
    half, touching, far = shared_space(solid, solid, np.eye(3), shifts)
    assert half.volume == pytest.approx(sizes.prod() / 2)
    assert not touching.counts
    assert far.volume == 0.0
    assert apart(solid, solid, np.eye(3), shifts, 0.1).tolist() == [False, False, True]


def test_a_side_of_either_body_parts_them() -> None:
    ring = ((0.0, 0.0, 0.0), (30.0, 0.0, 0.0), (30.0, 40.0, 0.0), (0.0, 40.0, 0.0))
    solid = realise(Prism(Section(ring), (0.0, 0.0, 0.0), (0.0, 0.0, 50.0)))
    half = np.sqrt(0.5)
    askew = np.array([[half, -half, 0.0], [half, half, 0.0], [0.0, 0.0, 1.0]])
    before_a_corner = np.array([[36.0, 35.5, 0.0]])  # only the turned body's side lies between them
    air = (36.0 + 35.5 - 30.0 - 40.0) * half
    assert apart(solid, solid, askew, before_a_corner, air - 0.01).tolist() == [True]
    assert apart(solid, solid, askew, before_a_corner, air + 0.01).tolist() == [False]
    assert apart(solid, solid, askew.T, -before_a_corner @ askew, air - 0.01).tolist() == [True]


def test_rays_asked_together_meet_what_each_meets_alone() -> None:
    solid = next(piece.solid for piece in shed().pieces if piece.role == "wall sheet")
    points, corners = triangles(solid)
    mesh, way = points[corners], np.array([0.0, 0.0, 1.0])
    low, high = points.min(axis=0), points.max(axis=0)
    across = np.arange(low[0] + 7.0, high[0], STEP)
    grid = np.array([[u, v, low[2] - 5.0] for u in across for v in (low[1] + 50.0, high[1] - 50.0)])
    bundle = np.array([[0.0, 0.0], [3.0, 1.0]])
    together = spans(mesh, grid, way, bundle)
    alone = [spans(mesh, one[None], way, bundle) for one in grid]
    assert len(together[0]) > len(grid)
    assert together[0].tolist() == [k * 2 + line for k, one in enumerate(alone) for line in one[0].tolist()]
    for both in (1, 2):
        assert together[both] == pytest.approx(np.concatenate([one[both] for one in alone]), abs=1e-9)
