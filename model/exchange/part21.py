"""The text of STEP files (ISO 10303-21): strings, and user-defined attributes added to what the kernel
wrote, as the CAx-IF recommended practice for user defined attributes has them.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from .labels import Property

END = b"ENDSEC;\nEND-ISO-10303-21;"


def quoted(text: str) -> str:
    """Text as a string of Part 21, all ASCII: quotes doubled, other letters as \\X2\\ and \\X4\\ codes."""
    return "'" + re.sub(r"[^ -~]+|'|\\", _escaped, text) + "'"


def _escaped(match: re.Match[str]) -> str:
    text = match.group()
    if text in "'\\":
        return text * 2
    runs = re.findall("[^\U00010000-\U0010ffff]+|[\U00010000-\U0010ffff]+", text)
    return "".join(_coded(run, 4 if run[0] < "\U00010000" else 8) for run in runs)


def _coded(run: str, digits: int) -> str:
    return f"\\X{digits // 2}\\{''.join(f'{ord(letter):0{digits}X}' for letter in run)}\\X0\\"


def header(name: str, schema: str) -> str:
    """The head of a STEP file, the same on every machine and at every time."""
    return (
        "ISO-10303-21;\nHEADER;\n"
        f"FILE_DESCRIPTION(({quoted(name)}),'2;1');\n"
        f"FILE_NAME({quoted(name)},'1970-01-01T00:00:00',(''),(''),'ribwright','ribwright','');\n"
        f"FILE_SCHEMA(({schema}));\nENDSEC;\n"
    )


class Attributes:
    """User-defined attributes to be added to the entities of a file; equal ones are written once."""

    def __init__(self, first_free: int) -> None:
        self._next = first_free
        self._lines: list[str] = []
        self._once: dict[str, int] = {}
        self._context = self._add("REPRESENTATION_CONTEXT('','user defined attributes')")

    def attach(self, entity: int, properties: Sequence[Property]) -> None:
        """Gives an entity (a PRODUCT_DEFINITION or a NEXT_ASSEMBLY_USAGE_OCCURRENCE) its properties.

        Each is a property of its own with one item, since of several items the kernel reads the last.
        """
        for key, value in properties:
            general = self._shared(f"GENERAL_PROPERTY('',{quoted(key)},'user defined attribute')")
            definition = self._add(f"PROPERTY_DEFINITION({quoted(key)},'user defined attribute',#{entity})")
            self._add(f"GENERAL_PROPERTY_ASSOCIATION('user defined attribute','',#{general},#{definition})")
            item = self._shared(f"DESCRIPTIVE_REPRESENTATION_ITEM({quoted(key)},{quoted(value)})")
            said = self._shared(f"REPRESENTATION({quoted(key)},(#{item}),#{self._context})")
            self._add(f"PROPERTY_DEFINITION_REPRESENTATION(#{definition},#{said})")

    def text(self) -> str:
        """All that was attached, as lines of the data section."""
        return "\n".join(self._lines) + "\n"

    def _shared(self, entity: str) -> int:
        """An entity that is written once however often it is used."""
        if entity not in self._once:
            self._once[entity] = self._add(entity)
        return self._once[entity]

    def _add(self, entity: str) -> int:
        self._lines.append(f"#{self._next} = {entity};")
        self._next += 1
        return self._next - 1
