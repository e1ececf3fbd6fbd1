"""Trims of openings and closures at eaves, looked at along straight lines through the finished solids."""

from __future__ import annotations

from collections import Counter

import numpy as np
import pytest
from ribwright.intake import parse, starter_text, starters
from ribwright.measure.clad_planes import clad_planes
from ribwright.measure.sheet import measure_sheet
from ribwright.pieces import Piece
from ribwright.raising import raise_building
from support.clashes import manifold
from support.rays import Solids
from support.starter_buildings import starter_model

ROLES = ("j trim", "jamb angle")
TRIMS = (*ROLES, "head angle", "sill trim", "drip")


def box(piece: Piece) -> np.ndarray:
    """Lowest and highest corner, (2, 3)."""
    return np.array(manifold(piece).bounding_box()).reshape(2, 3)


@pytest.mark.parametrize("name", ["workshop", "machine-shed"])
def test_an_upper_jamb_trim_lies_outside_the_lower_one(name: str) -> None:
    """From the middle of the opening towards the jamb, at half the lap: first the upper piece, then the
    lower, on both sides."""
    text, short = starter_text(name, name), 'opening_stock = ["6 ft"]\n'
    text = text.replace("[trim]\n", f"[trim]\n{short}") if "[trim]\n" in text else f"{text}[trim]\n{short}"
    model = raise_building(parse(text, name)).model
    jambs = [p for p in model.pieces if p.role in ROLES and (" left" in p.name or " right" in p.name)]
    seen = 0
    for upper in jambs:
        lower = next((p for p in jambs if upper.name[-2:] == " 2" and p.name == upper.name[:-1] + "1"), None)
        if lower is None:
            continue
        lap = (box(upper)[0, 2] + box(lower)[1, 2]) / 2
        both = Solids([upper, lower])
        name_of = upper.name.split(" j trim")[0].split(" jamb angle")[0]
        middle = np.mean([box(p).mean(axis=0) for p in jambs if p.name.startswith(name_of)], axis=0)
        across = 0 if upper.label("face") in ("front", "back") else 1
        start, way = box(upper).mean(axis=0), np.zeros(3)
        way[across] = np.sign(start[across] - middle[across])
        start[across], start[2] = middle[across], lap
        spans = both.along(tuple(start), tuple(way), 10_000.0)
        assert [span.piece.name for span in spans[:2]] == [upper.name, lower.name]
        seen += 1
    assert seen >= 2


@pytest.mark.parametrize("name", starters())
def test_no_steel_shows_beside_the_foot_of_a_door(name: str) -> None:
    """Seen from outside, 3 mm over the concrete and 12 mm beside the opening, there is trim or sheet."""
    model = starter_model(name)
    solids = Solids(model.pieces)
    floor = min((box(p)[0, 2] for p in model.pieces if p.role == "base trim"), default=0.0)
    jambs = [p for p in model.pieces if p.role == "jamb" and p.group[0] == "openings"]
    for jamb in (p for p in jambs if box(p)[0, 2] < 1.0):
        outward = {"front": (0, -1), "back": (0, 1), "left": (-1, 0), "right": (1, 0)}[jamb.label("face")]
        around = box(jamb)
        header = next(p for p in model.pieces if p.group == jamb.group and p.role == "header")
        across = 0 if outward[0] == 0 else 1
        nearer = around[:, across][np.abs(around[:, across] - box(header)[:, across].mean()).argmin()]
        start = around.mean(axis=0)
        start[across] = nearer + np.copysign(12.0, start[across] - nearer)
        start += 300.0 * np.array([*outward, 0.0])
        start[2] = floor + 3.0
        (first, *_) = solids.along(tuple(start), (-outward[0], -outward[1], 0.0), 300.0)
        assert first.piece.role in (*ROLES, "wall sheet"), (jamb.name, first.piece.name)


@pytest.mark.parametrize("name", starters())
def test_every_rib_of_the_roof_is_stopped_at_the_eave(name: str) -> None:
    """Looking up the slope under the middle of every crown, 8 mm below it, from the eave: foam."""
    model = starter_model(name)
    foam = Solids(p for p in model.pieces if p.role == "inside closure")
    seen, on_others = 0, {lap.upper.piece.name for plane in clad_planes(model) for lap in plane.end_laps}
    for piece in (p for p in model.pieces if p.role == "roof sheet" and p.name not in on_others):
        sheet = measure_sheet(piece.solid)
        bench = piece.place @ sheet.bench
        uphill = bench.y if bench.y[2] > 0 else tuple(-c for c in bench.y)
        eave = 0.0 if bench.y[2] > 0 else sheet.length
        for rib in sheet.majors:
            under = bench.point((rib.centre, eave, rib.height - 8.0))
            assert foam.along(under, uphill, 700.0), (piece.name, rib.centre)
            seen += 1
    assert seen > 10


@pytest.mark.parametrize("name", ["workshop", "studio"])
def test_a_window_sheds_from_head_to_sheet(name: str) -> None:
    """A drop that falls inside a jamb's pocket, a hair behind its web, lands on the sill's shelf; there the
    shelf falls outward; looked at from outside, a jamb's lip stands before the sill's, that before sheet."""
    model = starter_model(name)
    for sill in (p for p in model.pieces if p.role == "sill trim"):
        around = [p for p in model.pieces if p.name.startswith(sill.name.removesuffix("sill trim"))]
        (jamb,) = [p for p in around if p.name.endswith("trim left")]
        frame, low = sill.place, box(sill)
        along = np.array(frame.z)
        out = np.array(frame.y)
        across = int(np.abs(along).argmax())
        ends = sorted(low[:, across], key=lambda at: abs(at - box(jamb)[:, across].mean()))
        inward = np.sign(ends[1] - ends[0])
        web = ends[0] + inward * 25.4  # the opening's edge: the sill runs 1 in past it
        solids = Solids([sill, jamb])

        def at(u: float, w: float, v: float, frame=frame, out=out, across=across) -> tuple[float, ...]:  # type: ignore[no-untyped-def]
            spot = np.array(frame.origin) + w * out
            spot[across], spot[2] = u, v
            return tuple(spot)

        drops = [
            solids.along(at(web - inward * 1.5, w, box(jamb)[1, 2] - 1.0), (0.0, 0.0, -1.0), 1e4)[0]
            for w in (4.0, 10.0, 16.0)
        ]
        assert [drop.piece.name for drop in drops] == [sill.name] * 3
        steps = np.diff([drop.enter for drop in drops])
        assert (steps > 0.5).all(), steps  # it falls an eighth over some 20 mm
        lip = box(jamb)[0, 2] + 25.4 - 6.0
        hit = Solids(model.pieces).along(at(web - inward * 6.0, 300.0, lip), tuple(-out), 400.0)
        assert [span.piece.name for span in hit[:2]] == [jamb.name, sill.name]
        assert hit[2].piece.role == "wall sheet"


VENT = (
    '[[opening]]\nkind = "vent"\nwall = "right"\nwidth = "2 ft"\nheight = "2 ft"\n'
    'from_left = "3 ft"\nsill = "5 ft"\n'
)


@pytest.mark.parametrize("name", ["studio", "workshop", "vent"])
def test_what_runs_down_a_window_falls_on_its_sills_trim(name: str) -> None:
    """Straight down before the face of every sash and louvre, as far as the steel line, one meets its nose
    before the steel of the sill; a hair before the nose's edge the sill's trim."""
    if name == "vent":
        model = raise_building(parse(starter_text("workshop", "workshop") + VENT, name)).model
    else:
        model = starter_model(name)
    solids = Solids(model.pieces)
    fillings = [p for p in model.pieces if p.role in ("sash", "louvre")]
    assert any(p.role == ("louvre" if name == "vent" else "sash") for p in fillings)
    for filling in fillings:
        sill = next(p for p in model.pieces if p.role == "sill" and p.group == filling.group)
        out = np.array(filling.place.z)
        across = int(np.abs(filling.place.x).argmax())
        steel = float(box(sill)[int(out.sum() > 0)] @ np.abs(out)) * float(out.sum())
        ends = box(filling)[:, across]
        for u in np.linspace(ends[0] + 1.0, ends[1] - 1.0, 9):
            for w, role in (
                (-24.0, filling.role),
                (-1.0, filling.role),
                (12.0, filling.role),
                (13.2, "sill trim"),
            ):
                spot = (steel + w) * out
                spot[across], spot[2] = u, box(filling)[0, 2] + 200.0
                hit = solids.along(tuple(spot), (0.0, 0.0, -1.0), 400.0)
                assert hit[0].piece.role == role, (filling.name, u, w, hit[0].piece.name)


@pytest.mark.parametrize("name", ["workshop", "garage", "long-store"])
def test_an_overhead_doors_leaf_stands_clear_behind_the_jambs(name: str) -> None:
    """Common practice: the leaf is behind the jambs, so the screws in the reveals have their heads free."""
    model = starter_model(name)
    (leaf,) = [p for p in model.pieces if p.role == "leaf" and "overhead" in p.name]
    body = manifold(leaf)
    for row in (p for p in model.pieces if p.role == "trim screw"):
        for point in row.row:
            screw = Piece(row.name, row.role, row.group, row.solid, row.place)
            shift = np.array(row.place.vector(point))
            assert (manifold(screw).translate(shift) ^ body).volume() == 0.0, row.name
    jamb = next(p for p in model.pieces if p.group == leaf.group and p.role == "jamb")
    assert (box(leaf)[0] >= box(jamb)[1]).any() or (box(leaf)[1] <= box(jamb)[0]).any()


@pytest.mark.parametrize(
    ("kind", "sill"), [("framed opening", "3 ft"), ("framed opening", ""), ("window", "3 ft")]
)
def test_an_opening_without_a_leaf_is_trimmed_as_one_with(kind: str, sill: str) -> None:
    """Both jambs, a drip over them, and a sill's trim where it has a sill."""
    text = 'width = "20 ft"\nlength = "20 ft"\neave_height = "9 ft"\npitch = "3/12"\n[[opening]]\n'
    text += f'kind = "{kind}"\nwall = "left"\nwidth = "3 ft"\nheight = "4 ft"\nfrom_left = "4 ft 2 in"\n'
    model = raise_building(parse(text + (f'sill = "{sill}"\n' if sill else ""), "x")).model
    around = Counter(p.role for p in model.pieces if kind in p.name and p.role in TRIMS)
    assert around == {"j trim": 2, "drip": 1, **({"sill trim": 1} if sill else {})}
