"""Pictures of real buildings, as a customer looks at them: size, colours, light, what is around."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

import numpy as np
import pytest
from ribwright.audit import audit
from ribwright.catalog.colours import colour_names, rgb
from ribwright.errors import FileError
from ribwright.intake import parse, starter_text
from ribwright.pieces import Model
from ribwright.place import Point3, add
from ribwright.raising import raise_building
from ribwright.show.hidden import hidden
from ribwright.show.offscreen import Pixels
from ribwright.show.paint import drawn_colour
from ribwright.show.picture import Wish, composed, pixels_of
from ribwright.show.rendering import CLOTHES, GROUND
from ribwright.show.rings import BEHIND, LISTED, RING, spans, told
from ribwright.show.sunlight import SUN
from ribwright.show.surroundings import bounds_of_pieces, ground_level
from ribwright.show.views import Camera
from ribwright.solids.placed import placed_triangles
from support.colour_difference import difference, lab
from support.pages import faulty
from support.sample_building import sample_model
from support.store import store

SIZE = (800, 500)
TRUE = 6.0
"""CIEDE2000: how far off a colour may look."""


@pytest.fixture(scope="module", autouse=True)
def graphics(missing: object) -> None:
    try:
        pixels_of([store()], Wish(size=(16, 16)))
    except FileError as error:
        missing(str(error))  # type: ignore[operator] # a function; fixtures carry no types


def seen(model: Model, wish: Wish) -> tuple[Pixels, Camera]:
    """A picture, and the camera it was taken with."""
    return pixels_of([model], wish), composed([model], wish)[1]


def pixel(camera: Camera, point: Point3, size: tuple[int, int] = SIZE) -> tuple[int, int]:
    """Row and column of a point."""
    x, y = camera.seen(point, size[0] / size[1])
    return math.floor(0.5 * (1.0 - y) * size[1]), math.floor(0.5 * (x + 1.0) * size[0])


# True colours


def colour_card(names: Sequence[str]) -> Model:
    """A real sheet of the sample's front and one of its left wall for each colour, in rows."""
    sheets = {}
    for face in ("front", "left"):
        own = [p for p in sample_model().pieces if p.role == "wall sheet" and p.label("face") == face]
        sheets[face] = own[2]
    pieces = []
    for face, along in (("front", (914.4, 0.0, 0.0)), ("left", (0.0, 914.4, 0.0))):
        for number, name in enumerate(names):
            row, column = divmod(number, 37)
            place = sheets[face].place
            at = add(add(place.origin, along, float(column)), (0.0, 0.0, 4000.0), float(row))
            labels = (("colour", name), ("face", face))
            pieces.append(
                replace(sheets[face], name=f"{face} {name}", place=replace(place, origin=at), labels=labels)
            )
    return Model("colours", "mm", tuple(pieces))


def test_every_colour_is_seen_as_it_was_chosen() -> None:
    """The median of what is seen of a sheet in the sun, ribs and all, on both walls of the opening view."""
    model, size = colour_card(colour_names()), (2400, 1200)
    pixels, camera = seen(model, Wish(size=size))
    off = {}
    for piece in model.pieces:
        low, high = bounds_of_pieces([piece])
        inner = [tuple(low[k] + share * (high[k] - low[k]) for k in range(3)) for share in (0.2, 0.8)]
        rows, columns = zip(*(pixel(camera, point, size) for point in inner), strict=True)
        patch = pixels[min(rows) : max(rows), min(columns) : max(columns), :3].reshape(-1, 3)
        assert len(patch) > 100
        median = tuple(float(part) for part in np.median(patch, axis=0))
        off[piece.name] = difference(lab(median), lab(rgb(piece.label("colour"))))  # type: ignore[arg-type]
    assert len(off) == 2 * len(colour_names())
    assert max(off.values()) < TRUE, sorted(off.items(), key=lambda item: -item[1])[:5]


def test_a_frame_is_a_neutral_grey() -> None:
    pixels = pixels_of([sample_model()], Wish(only=["frame"], clear=True, plain=True, size=SIZE)).astype(int)
    steel = pixels[pixels[..., 3] == 255][:, :3]
    assert len(steel) > 2000
    assert (steel.max(axis=1) - steel.min(axis=1)).max() <= 12


# Elevations


@pytest.mark.parametrize(("view", "across", "up"), [("front", 0, 2), ("right", 1, 2), ("above", 0, 1)])
def test_an_elevation_is_to_scale(view: str, across: int, up: int) -> None:
    """As wide and high as the solids, to a pixel and the width of a line, at one scale both ways."""
    model = sample_model()
    pixels, camera = seen(model, Wish(view=view, clear=True, plain=True, size=(1000, 800)))
    scale = 2.0 * camera.half / 800
    low, high = bounds_of_pieces(model.pieces)
    tall = (high[2] - max(low[2], ground_level(model.pieces))) if up == 2 else high[up] - low[up]
    rows, columns = np.nonzero(pixels[..., 3] == 255)
    assert (columns.max() - columns.min() + 1) * scale == pytest.approx(
        high[across] - low[across], abs=1.5 * scale
    )
    if view != "above":  # where its shadow lies beyond it
        assert (rows.max() - rows.min() + 1) * scale == pytest.approx(tall, abs=1.5 * scale)


def test_a_door_in_an_elevation_is_as_large_as_its_leaf_is_seen() -> None:
    model = sample_model()
    pixels, camera = seen(model, Wish(view="front", clear=True, plain=True, size=(1000, 800)))
    leaf = max((p for p in model.pieces if p.role == "leaf"), key=lambda p: bounds_of_pieces([p])[1][2])
    low, high = bounds_of_pieces([p for p in model.pieces if p.role == "leaf" and p.group == leaf.group])
    top, left = pixel(camera, (low[0], low[1], high[2]), (1000, 800))
    bottom, right = pixel(camera, (high[0], low[1], low[2]), (1000, 800))
    inside = pixels[top + 40 : bottom - 4, left + 20 : right - 4, :3].astype(int)
    assert (np.abs(inside - np.array(drawn_colour(leaf))).max(axis=2) <= 8).mean() > 0.9  # but for its seams
    row = pixels[bottom - 25, : right + 30, :3].astype(int)
    white = np.flatnonzero(np.abs(row - np.array(drawn_colour(leaf))).max(axis=1) <= 8)
    assert left - 1 <= white.min() and white.max() <= right + 1
    assert white.max() - white.min() > 0.93 * (right - left)


# What stands around


def test_someone_of_a_metre_seventy_five_looks_and_stands_by() -> None:
    """The eye is as high as a person's; the one beside the building is as high as at that place is right."""
    model = store()
    pixels, camera = seen(model, Wish(size=SIZE, plain=True))
    ground = ground_level(model.pieces)
    assert camera.eye[2] - ground == pytest.approx(1650.0)
    assert camera.eye[2] == camera.target[2]
    worn = np.abs(pixels[..., :3].astype(int) - np.array(CLOTHES)).max(axis=2) <= 12
    rows, columns = np.nonzero(worn)
    _, _, setting = composed([model], Wish(size=SIZE))
    assert setting.person
    head, foot = pixel(camera, add(setting.person, (0.0, 0.0, 1750.0))), pixel(camera, setting.person)
    own = rows[np.abs(columns - head[1]) < 15]
    assert len(own) > 300
    assert abs(own.min() - head[0]) <= 2
    assert abs(own.max() - foot[0]) <= 4


def test_one_sun_throws_one_shadow() -> None:
    """On the ground where the ridge's end falls along the sun's rays, and nowhere before the building."""
    model = store()
    size = (900, 300)
    pixels, camera = seen(model, Wish(view="above", plain=True, size=size))
    ground = ground_level(model.pieces)
    low, high = bounds_of_pieces(model.pieces)
    eave = (high[0], 0.5 * (low[1] + high[1]), 0.5 * (low[2] + high[2]))
    fallen = add(eave, SUN, -(eave[2] - ground) / SUN[2])
    open_ground = (low[0] - 500.0, eave[1], ground)
    dark, light = (pixels[pixel(camera, point, size)][:3].astype(int) for point in (fallen, open_ground))
    assert np.abs(light - np.array(GROUND)).max() <= 3
    assert dark == pytest.approx(0.72 * light, abs=4)


def test_cut_out_there_is_nothing_around_but_a_shadow() -> None:
    pixels = pixels_of([store()], Wish(view="back right", clear=True, plain=True, size=SIZE))
    alpha = pixels[..., 3]
    assert not alpha[0].any() and not alpha[-1].any() and not alpha[:, 0].any()
    assert (alpha == 255).mean() > 0.15
    shadow = pixels[(alpha > 60) & (alpha < 120)]
    assert len(shadow) > 300
    assert (shadow[:, :3].max(axis=1) == 0).mean() > 0.9  # the rest are pixels that an edge runs through


def test_inside_light_falls_through_windows_alone() -> None:
    """Of the sample's floor most is in shadow, and some is lit."""
    pixels, camera = seen(sample_model(), Wish(view="inside", plain=True, size=SIZE))
    floor = pixels[350:480, 150:600, :3].astype(int).max(axis=2)
    lit = floor > floor.max() * 0.93
    assert 0.0 < lit.mean() < 0.1
    assert np.median(floor) < 0.9 * floor.max()
    assert not camera.half


# Findings


def test_findings_are_ringed_numbered_and_told() -> None:
    model = faulty()
    found = audit(model).findings
    assert found
    wish = Wish(view="front", size=SIZE, findings=found)
    plain, (marked, camera) = pixels_of([model], replace(wish, findings=None)), seen(model, wish)
    assert marked.shape[0] > plain.shape[0] == SIZE[1]
    off = np.abs(marked[: SIZE[1]].astype(int) - plain.astype(int)).max(axis=2) > 30
    rings = off & (np.abs(marked[: SIZE[1], :, :3].astype(int) - np.array(RING)).max(axis=2) < 40)
    for place in {one.at for one in found if one.at}:
        row, column = pixel(camera, place)
        around = rings[max(row - 30, 0) : row + 30, max(column - 30, 0) : column + 30]
        assert around.sum() > 12
    assert (marked[SIZE[1] :, :, :3].max(axis=2) < 120).sum() > 200 * min(len(found), LISTED)


def test_what_is_behind_is_ringed_by_dashes_and_said_to_be() -> None:
    """A place on the front wall is seen from the front; from the back the building stands before it."""
    model = faulty()
    wall = [piece for piece in model.pieces if piece.label("face") == "front" and not piece.row]
    corners = np.concatenate([points for points, _ in placed_triangles(wall)])
    x, _, z = corners.mean(axis=0).tolist()
    found = [replace(audit(model).findings[0], at=(x, float(corners[:, 1].min()), z))]
    ink = {}
    for view, covered in (("front", False), ("back", True)):
        marked, camera = seen(model, Wish(view=view, size=SIZE, findings=found))
        assert hidden([found[0].at, None], camera, model.pieces) == [covered, False]
        rings = np.abs(marked[: SIZE[1], :, :3].astype(int) - np.array(RING)).max(axis=2) < 40
        row, column = pixel(camera, found[0].at)
        ink[view] = int(rings[max(row - 30, 0) : row + 30, max(column - 20, 0) : column + 20].sum())
        assert (told(found, [covered], "ft-in")[-1] == BEHIND) == covered
    assert 0 < ink["back"] < 0.85 * ink["front"]


def test_what_is_told_below_is_what_was_found() -> None:
    found = audit(faulty()).findings
    lines = told(found, [False] * len(found), "ft-in")
    assert len(lines) == min(len(found), LISTED) + (len(found) > LISTED)
    assert all(f"[{one.code.text}]" in line for one, line in zip(found, lines, strict=False))
    assert [line.split()[0] for line in lines[:3]] == [str(n) for n in range(1, len(lines[:3]) + 1)]
    assert spans([2, 5, 6, 7, 9, 10]) == "2, 5-7, 9, 10"
    assert told((), (), "mm") == ["The audit of the solids found nothing."]


def test_inside_is_in_the_hall_not_under_a_lean_to() -> None:
    """Of a building with a porch before its front gable: between the hall's own columns."""
    model = raise_building(parse(starter_text("porch", "porch"), "porch")).model
    own = [piece for piece in model.pieces if piece.role == "column" and "lean-to" not in piece.name]
    points = np.vstack([points for points, _ in placed_triangles(own)])
    _, camera, _ = composed([model], Wish(view="inside"))
    assert (points.min(axis=0)[:2] < camera.eye[:2]).all()
    assert (camera.eye[:2] < points.max(axis=0)[:2]).all()
