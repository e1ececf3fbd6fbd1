"""ribwright: small steel-framed buildings clad in ribbed sheets, as real solids.

One way through: description -> building -> layout -> solids -> model -> measure, order, audit,
exchange, drawings, show. What most people call is here by name and loaded when it is first asked
for; the rest is in the floors.
"""

from __future__ import annotations

import sys
from importlib import import_module
from types import ModuleType
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from .audit import audit
    from .exchange.step import read_step, write_step
    from .intake import parse, read
    from .order.buying.order_list import order
    from .order.lists.schedule import schedule
    from .raising import raise_building

__version__ = "0.1.0"

__all__ = ["parse", "read", "raise_building", "audit", "schedule", "order", "read_step", "write_step"]

_HOMES = {
    "parse": "intake",
    "read": "intake",
    "raise_building": "raising",
    "audit": "audit",
    "schedule": "order.lists.schedule",
    "order": "order.buying.order_list",
    "read_step": "exchange.step",
    "write_step": "exchange.step",
}


class _Door(ModuleType):
    """This package as a module. Importing a floor would put it over the function of its name here."""

    def __setattr__(self, name: str, value: object) -> None:
        if not (name in _HOMES and isinstance(value, ModuleType)):
            super().__setattr__(name, value)


sys.modules[__name__].__class__ = _Door


def __getattr__(name: str) -> object:
    if name not in _HOMES:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    found: object = getattr(import_module(f".{_HOMES[name]}", __name__), name)
    setattr(sys.modules[__name__], name, found)
    return found


def __dir__() -> list[str]:
    return sorted({*globals(), *__all__})
