"""Every piece of trim of every starter is held by a screw, as the audit's own rays see it."""

from __future__ import annotations

import pytest
from ribwright.audit.driven import driven
from ribwright.audit.site import site
from ribwright.intake import starters
from ribwright.pieces import Model
from ribwright.roles import Role, list_of
from support.plants import drop
from support.starter_buildings import starter_model


def loose(model: Model) -> list[str]:
    """The pieces of trim that no screw holds to anything; a downspout's straps are not drawn."""
    there = site(model)
    held = {layer.body for screw in driven(there) if len(screw.held) > 1 for layer in screw.held}
    trims = ((number, piece) for number, piece in enumerate(there.bodies) if list_of(piece.role) == "trims")
    return [piece.name for number, piece in trims if piece.role != Role.DOWNSPOUT and number not in held]


@pytest.mark.parametrize("name", starters())
def test_a_screw_holds_every_piece_of_trim(name: str) -> None:
    """Also the base trim that lies in a ledge, and the uppermost piece of a corner's."""
    assert loose(starter_model(name)) == []


def test_a_ridge_cap_without_its_screws_is_loose() -> None:
    garage = starter_model("garage")
    for slope in ("left", "right"):
        garage = drop(f"{slope} slope ridge cap screws")(garage)
    assert loose(garage) and all("ridge cap" in name for name in loose(garage))
