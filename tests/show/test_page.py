"""The customer's page as text: what it says, and what cannot be put into it."""

from __future__ import annotations

import base64
import hashlib
import json
import re
from functools import cache

import pytest
import shapely
from ribwright.audit import audit
from ribwright.findings import sentence
from ribwright.intake import parse
from ribwright.measure.clad_planes import clad_planes
from ribwright.order.written.json import json_text
from ribwright.raising import raise_building
from ribwright.roles import LISTS
from ribwright.show.page.joined import script
from ribwright.show.page.marked_up import capital
from support.pages import (
    ATTACKS,
    Reader,
    attacked,
    faulty,
    page_of,
    sample_page,
    sample_read,
)
from support.planted import shed
from support.sample_building import sample_model, sample_schedule


def test_it_answers_what_a_customer_asks_first() -> None:
    """How many sheets on the front, how long the longest, how wide the laps, which colour, what is wrong."""
    (front,) = (row for table in sample_read().tables for row in table if row and row[0] == "Front")
    rows = {row.mark: row for row in sample_schedule().rows}
    own = [rows[placed.mark] for placed in sample_schedule().placed if placed.face == "front"]
    assert front == [
        "Front",
        str(len(own)),
        "14' 8-13/16\"",
        " gainsboro",
        "9 of 2.000 in, right sheet on top",
    ]
    assert "Nothing is wrong" in sample_read().said
    assert "Geometry, not engineering" in sample_read().said


OPENINGS = """
width = "36 ft"
length = "24 ft"
eave_height = "12 ft"
pitch = "4/12"
[sheets]
wall_colour = "firebrick"
[ridge_vent]
places = ["7 ft"]
[[light_sheet]]
face = "right"
every = 3
[[opening]]
kind = "sliding door"
wall = "left"
width = "6 ft"
height = "8 ft"
from_left = "LEFT"
slides = "SLIDES"
colour = "white"
[[opening]]
kind = "sliding door"
wall = "front"
width = "10 ft"
height = "8 ft"
from_left = "13 ft"
slides = "apart"
[[opening]]
kind = "walk door"
wall = "back"
width = "3 ft"
height = "7 ft"
from_left = "12 ft"
swing = "left out"
[[opening]]
kind = "framed opening"
wall = "back"
width = "4 ft"
height = "4 ft"
from_left = "20 ft"
sill = "3 ft"
"""


@cache
def opened(left: str, slides: str) -> Reader:
    text = OPENINGS.replace("LEFT", left).replace("SLIDES", slides)
    return Reader(page_of(raise_building(parse(text, "opened")).model))


@pytest.mark.parametrize(("left", "slides"), [("9 ft 6 in", "left"), ("1 ft 6 in", "right")])
def test_it_says_which_is_the_door_how_large_and_how_it_opens(left: str, slides: str) -> None:
    """As framed, by the solids: what was asked for; slides as the rail reaches, from outside."""
    (table,) = (table for table in opened(left, slides).tables if table[0][:1] == ["Opening"])
    assert sorted(table[1:]) == [
        ["Back framed opening 2", "4'", "4'", "nothing"],
        ["Back walk door 1", "3'", "7'", " whitesmoke hinged left, opens out"],
        ["Front sliding door 1", "10'", "8'", " whitesmoke slide apart"],
        ["Left sliding door 1", "6'", "8'", f" white slides {slides}, seen from outside"],
    ]
    assert "1 ridge vent, 10' long,  slategray." in opened(left, slides).said


def test_light_sheets_are_told_from_those_of_steel() -> None:
    """Nobody chose white walls."""
    (right,) = (row for table in opened("9 ft 6 in", "left").tables for row in table if row[:1] == ["Right"])
    assert right[3] == " firebrick, 2 light sheets  white"


def test_it_says_what_is_not_in_it() -> None:
    assert all(
        words in sample_read().said
        for words in ("The permit is yours to get", "Of the foundation only the slab", "No load is checked")
    )


def test_every_figure_is_the_schedules() -> None:
    """Every mark has one row, in the order of the lists, with the figures of the list for programs."""
    tables = [table for table in sample_read().tables if table[0] and table[0][0] == "Mark"]
    listed = json.loads(json_text(sample_schedule()))
    wanted = [entry for name in LISTS for entry in listed[name]]
    rows = [dict(zip(table[0], row, strict=True)) for table in tables for row in table[1:] if row]
    rows = [row for row in rows if row["Mark"] != "total"]
    assert [row["Mark"] for row in rows] == [entry["mark"] for entry in wanted]
    for row, entry in zip(rows, wanted, strict=True):
        assert row["Count"] == str(entry["count"])
        assert row["Length"] == entry["length"]["shown"]
        assert row.get("Weight, lb", "") == entry.get("weight", {"shown": ""})["shown"].removesuffix(" lb")
        assert len(entry.get("cutouts", ())) == len(
            [one for one in row.get("Cutouts", "").split("; ") if one]
        )


def test_what_is_wrong_is_said_first() -> None:
    model = faulty()
    said = Reader(page_of(model)).said
    faults = [finding for finding in audit(model).findings if finding.fault]
    assert faults
    assert f"{len(faults)} faults were found" in said
    assert "Nothing is wrong" not in said
    assert all(capital(sentence(finding, "ft-in")) in said for finding in faults)
    assert not any(f"[{finding.code.text}]" in said for finding in faults)


def policy(reader: Reader) -> str:
    (content,) = (
        attrs["content"] for tag, attrs in reader.tags if attrs.get("http-equiv") == "Content-Security-Policy"
    )
    return content or ""


def test_nothing_but_its_own_script_and_style_may_run() -> None:
    """By their hashes, as they stand in the page; nothing is loaded from anywhere."""
    data, own = sample_read().blocks["script"]
    (style,) = sample_read().blocks["style"]
    assert json.loads(data)
    parts = dict(part.strip().split(" ", 1) for part in policy(sample_read()).split(";"))
    for kind, text in (("script-src", own), ("style-src", style)):
        digest = base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()
        assert parts[kind] == f"'sha256-{digest}'"
    assert parts["default-src"] == "'none'"
    assert parts["img-src"] == "data:"
    assert not re.search(
        r"https?:|//cdn|@import|url\(|\beval\b|innerHTML|outerHTML|insertAdjacent", own + style
    )
    held = [
        name
        for _, attrs in sample_read().tags
        for name in attrs
        if name in ("src", "href", "style", "action")
    ]
    assert held == []
    assert not any(name.startswith("on") for _, attrs in sample_read().tags for name in attrs)


def test_no_name_becomes_anything_but_text() -> None:
    """The page of a building whose every name is an attack has the tags and the script of any other."""
    text = page_of(attacked(shed()))
    hostile, plain = Reader(text), Reader(page_of(shed()))
    known = {(tag, *sorted(attrs)) for tag, attrs in plain.tags}
    assert {(tag, *sorted(attrs)) for tag, attrs in hostile.tags} <= known
    assert len(hostile.blocks["script"]) == 2
    assert hostile.blocks["script"][1] == plain.blocks["script"][1] == script()
    assert policy(hostile) == policy(plain)
    assert "<" not in hostile.blocks["script"][0]
    assert ATTACKS[0] in hostile.said
    assert not re.search("[\u202a-\u202e\u2066-\u2069\u2028\x1b\x07]", text)


def test_the_modules_are_joined_each_after_what_it_needs() -> None:
    names = re.findall(r"^const (module_[a-z_]+) = \(\(\) =>", script(), re.MULTILINE)
    assert names[-1] == "module_main"
    assert len(set(names)) == len(names) > 12
    made: set[str] = set()
    for name, part in zip(
        names, re.split(r"^const module_[a-z_]+ = ", script(), flags=re.MULTILINE)[1:], strict=True
    ):
        assert set(re.findall(r"\bmodule_[a-z_]+", part)) <= made
        made.add(name)
    assert not re.search(r"^(import|export) ", script(), re.MULTILINE)


def test_an_elevation_is_the_sheets_as_measured() -> None:
    """The area of its outlines, holes taken out, is that of the sheets of the face."""
    figures = re.findall("<figure>(.*?)</figure>", sample_page(), re.DOTALL)
    faces = [re.findall('aria-label="([^"]*), from outside"', figure)[0] for figure in figures]
    assert faces == ["Front", "Back", "Left", "Right", "Left slope", "Right slope"]
    for plane in clad_planes(sample_model()):
        figure, area = figures[faces.index(plane.name.capitalize())], 0.0
        for path in re.findall(r'<path d="([^"]*)"', figure):
            rings = [
                shapely.Polygon([point.split(",") for point in ring.split()])
                for ring in re.findall("M([^Z]*)Z", path)
            ]
            area += rings[0].area - sum(hole.area for hole in rings[1:])
        assert area == pytest.approx(sum(sheet.outline.area for sheet in plane.sheets), rel=2e-3)


def test_a_notebook_shows_the_same_page_in_a_frame_that_holds_it() -> None:
    """Without the notebook's origin: its script can reach nothing but the page."""
    (tag, attrs) = Reader(shed()._repr_html_()).tags[0]
    assert (tag, attrs["sandbox"]) == ("iframe", "allow-scripts")
    assert attrs["srcdoc"] == page_of(shed())
