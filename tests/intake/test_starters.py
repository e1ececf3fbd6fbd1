"""The starters, the blank description, and the schema: all from one list of keys, all readable."""

from __future__ import annotations

import json
import re
import subprocess
import sys
import tomllib
from math import radians, tan
from typing import Any

import pytest
from ribwright.description import schema
from ribwright.description.building import Building
from ribwright.description.keys.sheet_tables import HALF_WALL, SKIRT
from ribwright.description.keys.tables import TABLES
from ribwright.description.keys.value_kinds import Lengths
from ribwright.envelope.roof_lines import RoofLines
from ribwright.errors import DescriptionError
from ribwright.intake import parse, sample, sample_text, starter_text, starters
from ribwright.units import FOOT, Units


def built(name: str) -> Building:
    return parse(starter_text(name, name), name)


def test_starters_are_of_people_and_of_shapes() -> None:
    people = {"garage", "long-store", "machine-shed", "studio", "workshop"}
    shapes = {"single-slope", "offset-ridge", "lean-to", "porch", "carport", "pavilion", "run-in"}
    shapes |= {"hay-barn", "barn", "day-barn", "lambing-shed", "wainscot", "double-pitch"}
    assert starters() == tuple(sorted(people | shapes))


def test_the_garage_has_a_wide_door_a_ledge_and_gables_of_whole_sheets() -> None:
    garage = built("garage")
    assert [o.width for o in garage.openings if o.kind == "overhead door"] == [16 * FOOT]
    assert garage.slab.ledge_depth > 0
    assert garage.width % garage.sheets.sides.profile.cover == pytest.approx(0, abs=1e-9)
    assert garage.runs["front"].start == "left" and garage.runs["back"].start == "right"


def test_the_workshop_is_thirty_feet_wide_with_three_kinds_of_opening_and_is_the_sample() -> None:
    workshop = built("workshop")
    assert workshop.width == 30 * FOOT
    assert len({o.kind for o in workshop.openings}) == 3
    assert workshop.runs["front"].start == workshop.runs["back"].start == "centre"
    assert sample() == workshop
    assert parse(sample_text(), "x") == workshop


def test_the_machine_shed_is_metric() -> None:
    shed = built("machine-shed")
    assert (shed.units, shed.width, shed.length) == ("mm", 9000, 15000)
    assert shed.pitch == pytest.approx(10, abs=1e-12)
    assert shed.sheets.sides.gauge == "0.63 mm"
    assert '"' not in re.sub(r'"[^"]*"', "", starter_text("x", "machine-shed"))


def test_the_day_barn_is_braced_and_has_light_sheets_and_a_vent_over_its_door() -> None:
    """Five bays of 10 ft, the two at the ends free of openings; of 17 sheets each fourth: 4, 8, 12, 16."""
    barn = built("day-barn")
    assert barn.bracing is not None and barn.bracing.bays == (1, 5)
    assert {one.face: one.chosen(17) for one in barn.light_sheets} == dict.fromkeys(
        ("left slope", "right slope"), (4, 8, 12, 16)
    )
    door, vent = barn.openings
    assert (door.kind, vent.kind, vent.wall) == ("overhead door", "vent", door.wall)
    assert vent.sill > door.height and door.from_left < vent.from_left < door.from_left + door.width


def test_the_studio_is_small_tall_and_steep() -> None:
    studio = built("studio")
    assert tan(radians(studio.pitch)) == pytest.approx(9 / 12, abs=1e-12)
    assert studio.eave_height > 0.9 * studio.width


def test_the_long_store_is_long_and_low_with_a_door_in_its_side() -> None:
    store = built("long-store")
    assert tan(radians(store.pitch)) == pytest.approx(1 / 12, abs=1e-12)
    assert store.length > 4 * store.width
    assert store.openings and {o.wall for o in store.openings} == {"left"}
    assert store.width % store.sheets.sides.profile.cover > 1


@pytest.mark.parametrize("like", ["", *starters()])
def test_texts_are_commented_and_point_to_the_schema(like: str) -> None:
    text = starter_text("my shop", like)
    assert text.startswith("#:schema ribwright.schema.json\n# ")
    assert parse(text, "x").name == "my shop"
    assert max(map(len, text.splitlines())) <= 130


@pytest.mark.parametrize("units", ["ft-in", "mm"])
def test_every_key_of_the_blank_may_be_uncommented(units: Units) -> None:
    """All but the gauge, which the thickness stands for; and what was shown as usual changes nothing."""
    blank = starter_text("shop", units=units)
    lines = [re.sub(r"^# (?=\w+ = |\[\[)", "", line) for line in blank.splitlines()]
    full = "\n".join(line for line in lines if not line.startswith("gauge"))
    # Over or under these no wall is left for the door and the lean-to.
    full = re.sub(r"(?s)\[(skirt|half_wall)\]\n.*?\n\n", "", full)
    values = tomllib.loads(full)
    for table in (table for table in TABLES if table not in (SKIRT, HALF_WALL)):
        inside: Any = values if not table.name else values[table.name]
        inside = inside[0] if table.shape == "array" else inside
        assert {key.name for key in table.keys} - {"gauge"} <= set(inside)
    full = re.sub(r"(?m)^slides = .*$", "", full)  # which a walk door does not
    full = re.sub(r"(?m)^roof = .*\n", "", full)  # a blanket, which has no light sheets before it
    full = re.sub(r"(?m)^(break_at|lower_pitch) = .*\n", "", full)  # not with a ridge off the middle
    full = re.sub(r'(?m)^bays = "1, 2".*\n', "", full)  # of a lean-to, not over a wainscot
    usual, typed = parse(blank, "x"), parse(full, "x")
    assert (typed.width, typed.openings[1:]) == (usual.width, usual.openings)
    both = [RoofLines(one) for one in (typed, usual)]
    laid = [[lines.run(face) for face in lines.faces] for lines in both]
    assert laid[0] == laid[1]
    for skin in ("sides", "gables", "roof"):
        one, other = getattr(usual.sheets, skin), getattr(typed.sheets, skin)
        assert (one.profile, one.colour) == (other.profile, other.colour)
    for name in ("overhang", "ridge_gap", "foot_gap", "flange"):
        same = getattr(usual.sheets, name)
        assert getattr(typed.sheets, name) == (
            pytest.approx(same, abs=1e-4) if isinstance(same, float) else same
        )


@pytest.mark.parametrize("like", ["", *starters()])
def test_answers_stand_in_the_text(like: str) -> None:
    answers = {"width": "32' 6\"", "length": "15 m", "eave_height": "12 ft", "pitch": "4:12", "units": "mm"}
    building = parse(starter_text("Ada & 1", like, walk_doors=0, **answers), "x")
    assert (building.name, building.units, building.openings) == ("Ada & 1", "mm", ())
    assert (building.width, building.length, building.eave_height) == (9906, 15000, 3657.6)


@pytest.mark.parametrize(
    "like",
    ["", *(name for name in starters() if name not in ("carport", "pavilion", "hay-barn", "lambing-shed"))],
)
@pytest.mark.parametrize(("walk", "overhead"), [(1, 0), (0, 1), (3, 2)])
def test_doors_that_were_asked_for(like: str, walk: int, overhead: int) -> None:
    building = parse(starter_text("x", like, walk_doors=walk, overhead_doors=overhead), "x")
    kinds = [opening.kind for opening in building.openings]
    assert (kinds.count("walk door"), kinds.count("overhead door")) == (walk, overhead)
    assert len(kinds) == walk + overhead


@pytest.mark.parametrize(
    ("answers", "key", "remedy"),
    [
        ({"width": "30"}, "width", "a unit after the number"),
        ({"widht": "30 ft"}, "widht", "the nearest is 'width'"),
        ({"like": "workshopp"}, "like", "the nearest is 'workshop'"),
        ({"name": "a/b"}, "name", "a name that a folder can have"),
        ({"name": 'a"\n\x7f\\'}, "name", "a name that a folder can have"),
        ({"walk_doors": -1}, "doors", "at most 500"),
        ({"like": "carport", "walk_doors": 1}, "doors", "0: all walls are open"),
    ],
)
def test_answers_that_make_no_building(answers: dict[str, Any], key: str, remedy: str) -> None:
    with pytest.raises(DescriptionError) as caught:
        starter_text(**{"name": "x", **answers})
    (problem,) = caught.value.problems
    assert (problem.key, problem.line) == (key, 0)
    assert remedy in problem.remedy


def fits(rule: dict[str, Any], value: Any) -> bool:
    """Whether a value fits a schema, for the few words of JSON Schema that ours has."""
    kinds = {"object": dict, "array": list, "string": str, "integer": int}
    known = {"type", "properties", "required", "additionalProperties", "items", "maxItems", "pattern", "enum"}
    known |= {"anyOf", "const", "minimum", "maximum", "minLength", "maxLength"}
    assert set(rule) <= known | {"$schema", "title", "description", "default", "examples"}
    return (
        ("anyOf" not in rule or any(fits(one, value) for one in rule["anyOf"]))
        and value in rule.get("enum", [value])
        and value == rule.get("const", value)
        and isinstance(value, kinds.get(rule.get("type", ""), object))
        and (not isinstance(value, str) or bool(re.search(rule.get("pattern", ""), value)))
        and (not isinstance(value, list) or all(fits(rule.get("items", {}), item) for item in value))
        and ("properties" not in rule or fields_fit(rule, value))
    )


def fields_fit(rule: dict[str, Any], value: dict[str, Any]) -> bool:
    keys = rule["properties"]
    named = set(rule["required"]) <= set(value) <= set(keys)
    return named and all(fits(keys[key], inner) for key, inner in value.items())


@pytest.mark.parametrize("like", ["", *starters()])
def test_the_schema_takes_every_starter(like: str) -> None:
    rules = json.loads(json.dumps(schema()))
    assert fits(rules, tomllib.loads(starter_text("x", like)))


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ('"30 ft"', "30"),
        ('"30 ft"', '"30"'),
        ('"3/12"', '"3"'),
        ("width = ", "widht = "),
        ('"window"', '"hatch"'),
        ("[runs]", "[run]"),
        ('wall = "front"', ""),
    ],
)
def test_the_schema_refuses_what_reading_refuses(old: str, new: str) -> None:
    text = sample_text()
    assert old in text
    spoilt = text.replace(old, new, 1)
    assert not fits(schema(), tomllib.loads(spoilt))
    with pytest.raises(DescriptionError):
        parse(spoilt, "x")


def test_the_schema_speaks_of_every_key() -> None:
    rules = schema()["properties"]
    for table in TABLES:
        for key in table.keys:
            inside = (
                rules if not table.name else rules[table.name].get("items", rules[table.name])["properties"]
            )
            assert inside[key.name]["description"] == key.help
            assert inside[key.name].get("default") == key.default


def test_defaults_and_examples_are_readable() -> None:
    for table in TABLES:
        for key in table.keys:
            for text in filter(None, (key.default, *key.example)):
                listed = isinstance(key.kind, Lengths)
                key.kind.read(text.split(",") if listed else text, "ft-in")
            assert key.default is not None or all(key.example) or key.name == "name"


def test_reading_a_description_loads_neither_kernel_nor_geometry() -> None:
    heavy = "{'OCP', 'shapely', 'numpy', 'cadquery', 'click', 'json', 'importlib.resources', 'hypothesis'}"
    code = f"import sys, ribwright.intake as d; d.sample(); print(sorted({heavy} & set(sys.modules)))"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout == "[]\n"
