"""A metric building has metric sizes where nobody said another: no 3048, no 101.6."""

from __future__ import annotations

from dataclasses import asdict

from ribwright.audit import audit
from ribwright.description.building import Building
from ribwright.description.keys.catalogued import Steel
from ribwright.description.keys.tables import TABLES
from ribwright.description.keys.value_kinds import Length
from ribwright.intake import parse
from ribwright.order.buying.order_list import order
from ribwright.order.lists.schedule import schedule
from ribwright.raising import raise_building

SIZES = 'width = "6 m"\nlength = "6 m"\neave_height = "2700 mm"\npitch = "10 deg"\n'


def built(units: str) -> Building:
    return parse(f'units = "{units}"\n{SIZES}', "hut")


def test_every_default_length_and_section_is_a_metric_one() -> None:
    """To half a millimetre, a sheet's to 0.05; 0 is the same in both."""
    for table in TABLES:
        for key in table.keys:
            usual = key.usual("mm")
            if usual is None or usual == "0 in":
                continue
            if isinstance(key.kind, Length):
                size = key.kind.read(usual, "mm")
                assert abs(size * 20 - round(size * 20)) < 1e-9, (table.name, key.name, size)
            if isinstance(key.kind, Steel):
                assert usual.endswith(" mm"), (table.name, key.name)


def test_what_nobody_may_say_is_metric_too() -> None:
    metric, imperial = built("mm"), built("ft-in")
    skins = (metric.sheets.sides, metric.sheets.gables, metric.sheets.roof)
    assert {(skin.thickness, skin.gauge) for skin in skins} == {(0.5, "0.5 mm")}
    assert imperial.sheets.sides.gauge == "29 ga"
    assert (metric.trim.gauge, metric.trim.stock) == ("0.55 mm", (3000.0, 3600.0))
    assert imperial.trim.stock == (3048.0, 3657.6)
    strut, rail = metric.framing.eave_strut, metric.framing.base_rail
    assert (strut.depth, strut.breadth, strut.thickness) == (150.0, 50.0, 1.5)
    assert (rail.depth, rail.breadth, rail.thickness) == (50.0, 50.0, 2.0)
    assert asdict(built("ft-in")) == asdict(imperial)


def test_it_stands_and_its_order_is_metric() -> None:
    model = raise_building(built("mm")).model
    assert [finding for finding in audit(model).findings if finding.fault] == []
    items = [line.item for line in order(schedule(model)).lines]
    assert [item for item in items if "3048" in item or "101.6" in item] == []
    assert "base trim, 0.55 mm, slategray, 3600 mm" in items
    assert any(item.startswith("tube 100 x 100 x 3 mm,") for item in items)
