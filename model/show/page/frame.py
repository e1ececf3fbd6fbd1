"""What stands on every page, around what is said of the building."""

from __future__ import annotations

import re
from collections.abc import Mapping

VIEWS = (
    ("corner", "Corner"),
    ("front", "Front"),
    ("left", "Left"),
    ("back", "Back"),
    ("right", "Right"),
    ("top", "Top"),
    ("inside", "Inside"),
)


def _section(name: str, title: str, body: str, *, live: bool = True, opened: bool = False) -> str:
    """A part of the panel. live: only there with a picture."""
    return (
        f'<details class="part{" live" if live else ""}" id="{name}"{" open" if opened else ""}>'
        f"<summary><h2>{title}</h2></summary><div>{body}</div></details>"
    )


_STAGE = (
    '<section id="stage" class="live" aria-label="The building in space">'
    '<div id="scene"><canvas id="canvas" tabindex="0" role="application" aria-describedby="how" '
    'aria-label="The building, to turn with the arrow keys"></canvas>'
    '<div id="overlay"><svg aria-hidden="true"></svg></div></div>'
    '<div id="views" role="group" aria-label="Where you stand">'
    + "".join(f'<button type="button" data-view="{word}">{title}</button>' for word, title in VIEWS)
    + '<button type="button" id="parallel" aria-pressed="false">Parallel</button></div>'
    '<p id="how">Drag to turn, with Shift or two fingers to move, wheel or pinch to come nearer. '
    "Keys: arrows, Shift and arrows, + and -, 1 to 7 for views, Esc to let go.</p></section>"
)

_SHOW = (
    '<fieldset id="groups"><legend>What stands there</legend></fieldset>'
    '<label><input type="checkbox" id="clear"> See through sheets and trims</label>'
    '<label><input type="checkbox" id="lines" checked> Lines at ribs and edges</label>'
    '<label><input type="checkbox" id="person" checked> A person of 1.75 m</label>'
)
_CUT = (
    '<label for="cut-way">Cut</label><select id="cut-way"><option value="">not at all</option>'
    '<option value="0">across the width</option><option value="1">along the length</option>'
    '<option value="2">level</option></select>'
    '<label for="cut-at">Where</label>'
    '<input type="range" id="cut-at" min="0" max="1000" value="500" disabled>'
    '<output id="cut-said" for="cut-at"></output>'
    '<label><input type="checkbox" id="cut-other" disabled> Keep the other side</label>'
)
_STEPS = (
    '<div class="live"><label for="step">Standing</label>'
    '<input type="range" id="step" min="1" max="1" value="1">'
    '<output id="step-said" for="step">all of it</output></div><div id="ordered">{{steps}}</div>'
)
_COLOURS = (
    '<div id="paints"></div><p>Lines for the description:</p>'
    '<pre id="toml" tabindex="0" aria-label="Lines for the description"></pre>'
    '<button type="button" id="as-built">As it was</button>'
)
_TAPE = (
    '<button type="button" id="tape" aria-pressed="false">Tape between two corners</button>'
    '<p id="tape-said" role="status">Press, then pick a corner and another one.</p>'
)
_LAPS = (
    '<label><input type="checkbox" id="laps-on"> Show every lap, its width, overhang and cover</label>'
    '<p class="key"><span><i class="left"></i> left sheet on top</span> '
    '<span><i class="right"></i> right sheet on top</span> '
    '<span><i class="higher"></i> higher sheet on top</span></p>'
    "<p>Left and right are as seen from outside.</p>"
)
_NOT_IN_IT = "".join(
    (
        "<ul><li>No load is checked: not wind, snow, earthquake, nor what stands or hangs in it. Sizes of ",
        "members, their spacing, base plates, screws and bracing are placeholders until a licensed ",
        "engineer's drawings replace them.</li>",
        "<li>Of the foundation only the slab is drawn, as a plain body. What carries it, its steel, its ",
        "joints and its anchor rods are the engineer's.</li>",
        "<li>The permit is yours to get; local code governs. Ask before anything is ordered.</li>",
        "<li>Bolts, welds and anchors are not drawn. Doors, windows and vents are stand-ins: ask for the ",
        "rough opening of those that you buy.</li>",
        "<li>What no list names is not in it: no wiring, plumbing, heating, nor finish inside, nor the ",
        "work of putting it up.</li></ul>",
    )
)

FRAME = (
    '<!doctype html>\n<html lang="en"><head><meta charset="utf-8">'
    '<meta http-equiv="Content-Security-Policy" content="{{policy}}">'
    '<meta name="viewport" content="width=device-width, initial-scale=1">'
    '<meta name="referrer" content="no-referrer"><title>{{title}}</title>\n<style>{{style}}</style></head>\n'
    '<body class="still"><header><div id="head">{{head}}</div>'
    '<button type="button" id="theme" class="live" aria-pressed="false">Dark</button></header>\n'
    f'<main>{_STAGE}<img id="paper" alt="The building as it was last seen"><div id="panel">{{{{live}}}}'
    '<p id="no-picture" role="status">'
    "No picture can be drawn here; sizes, lists and findings are below.</p>"
    '<div id="elevations">{{elevations}}</div>'
    '<section id="card" class="live" aria-live="polite" hidden><h2 id="card-title"></h2>'
    '<dl id="card-said"></dl>{{card}}<button type="button" id="card-away">Let go</button></section>\n'
    + _section("glance", "At a glance", '<div id="glanced">{{glance}}</div>', live=False, opened=True)
    + "\n"
    + _section(
        "found",
        'Findings <small id="found-count">{{found}}</small>',
        '<div id="findings">{{findings}}</div>',
        live=False,
    )
    + "\n"
    + _section("not-in-it", "What is not in it", _NOT_IN_IT, live=False)
    + "\n"
    + _section("show", "Show and hide", _SHOW)
    + _section("cut", "Cut", _CUT)
    + _section("steps", "Step by step", _STEPS, live=False)
    + _section("colours", "Try colours", _COLOURS)
    + _section("taped", "Tape", _TAPE)
    + _section("laps", "Laps and overhang", _LAPS)
    + "\n"
    + _section(
        "lists",
        "Lists",
        '<label class="live" for="search">Search the lists</label>'
        '<input class="live" type="search" id="search">'
        '<div id="tables">{{lists}}</div>',
        live=False,
    )
    + "</div></main>\n"
    '<script type="application/json" id="data">{{data}}</script>\n'
    '<script type="module">{{script}}</script></body></html>\n'
)
"""{{policy}} and so on are the places that are filled."""


def filled(parts: Mapping[str, str]) -> str:
    """The page with something in each of its places."""
    return re.sub(r"\{\{(\w+)\}\}", lambda place: parts[place[1]], FRAME)
