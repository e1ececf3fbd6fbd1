"""One key, one table of a description."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from ...units import Units
from .value_kinds import Kind


@dataclass(frozen=True, slots=True)
class Key:
    """One key of a description.

    help: one line for the starter and the schema. default: as typed; None when there is none, and
    then `unless` says what stands in for it; a key with neither is required. example: of a key
    without a default, as typed by people with ft-in and with mm. metric: the default
    of descriptions in mm, where it is another. also: other spellings of its name. not_yet: what values people
    would expect and cannot give yet, said of any that is refused.
    """

    name: str
    kind: Kind
    help: str
    default: str | None = None
    unless: str = ""
    example: tuple[str, str] = ("", "")
    also: tuple[str, ...] = ()
    metric: str | None = None
    not_yet: str = ""

    def usual(self, units: Units) -> str | None:
        """The default of descriptions in these units."""
        return self.metric if units == "mm" and self.metric is not None else self.default

    @property
    def required(self) -> bool:
        """Whether the description must have it."""
        return self.default is None and not self.unless


@dataclass(frozen=True, slots=True)
class Table:
    """A table of keys.

    name: "" for the keys at the top. shape: "array" when it may stand many times, "named" when its keys are
    names that people choose. each: the kind of every value of such a one. example: a line of it.
    """

    name: str
    help: str
    keys: tuple[Key, ...]
    shape: Literal["top", "table", "array", "named"] = "table"
    also: tuple[str, ...] = ()
    each: Kind | None = None
    example: str = ""
