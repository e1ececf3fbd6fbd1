"""The text of STEP files (ISO 10303-21): strings, the head, and entities added to what the kernel wrote:
colours, and user-defined attributes as the CAx-IF recommended practice of that name has them.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from .label_texts import Property

REFERENCE = re.compile(rb"#(\d+)")
END = b"ENDSEC;\nEND-ISO-10303-21;"


def quoted(text: str) -> str:
    """Text as a string of Part 21, all ASCII: quotes doubled, other letters as \\X2\\ and \\X4\\ codes.

    A quote before a comma or a bracket is a code too: the kernel's reader takes it for the string's end.
    """
    return "'" + re.sub(r"[^ -~]+|'(?=[,)])|'|\\", _escaped, text) + "'"


def _escaped(match: re.Match[str]) -> str:
    text = match.group()
    if text == "'" and match.string[match.end() :][:1] in (",", ")"):
        return _coded(text, 4)
    if text in "'\\":
        return text * 2
    runs = re.findall("[^\U00010000-\U0010ffff]+|[\U00010000-\U0010ffff]+", text)
    return "".join(_coded(run, 4 if run[0] < "\U00010000" else 8) for run in runs)


def _coded(run: str, digits: int) -> str:
    return f"\\X{digits // 2}\\{''.join(f'{ord(letter):0{digits}X}' for letter in run)}\\X0\\"


def header(name: str, said: str, schema: str) -> str:
    """The head of a STEP file, the same on every machine and at every time. said: of its data section."""
    return (
        "ISO-10303-21;\nHEADER;\n"
        f"FILE_DESCRIPTION(({quoted(name)},{quoted(said)}),'2;1');\n"
        f"FILE_NAME({quoted(name)},'1970-01-01T00:00:00',(''),(''),'ribwright','ribwright','');\n"
        f"FILE_SCHEMA(({schema}));\nENDSEC;\n"
    )


def references(text: bytes, kinds: Iterable[str]) -> dict[str, dict[int, list[int]]]:
    """For each kind of entity the numbers of its entities, each with those it refers to, in order.

    text: a data section without `#` and `;` in its strings. A complex entity counts as its first part.
    """
    found: dict[str, dict[int, list[int]]] = {kind: {} for kind in kinds}
    entity = re.compile(rf"\n#(\d+) = \(?\s*({'|'.join(found)})\(([^;]*);".encode())
    for number, kind, arguments in entity.findall(text):
        found[kind.decode()][int(number)] = [int(other) for other in REFERENCE.findall(arguments)]
    return found


class Additions:
    """Entities to be added to a file; those that may be shared are written once however often used."""

    def __init__(self, first_free: int) -> None:
        self._next = first_free
        self._lines: list[str] = []
        self._once: dict[str, int] = {}

    def text(self) -> str:
        """All that was added, as lines of the data section."""
        return "".join(f"{line}\n" for line in self._lines)

    def add(self, entity: str) -> int:
        """A new entity, such as `REPRESENTATION('',(#4),#5)`; returns its number."""
        self._lines.append(f"#{self._next} = {entity};")
        self._next += 1
        return self._next - 1

    def shared(self, entity: str) -> int:
        """The entity, added only if it was not before."""
        if entity not in self._once:
            self._once[entity] = self.add(entity)
        return self._once[entity]


def attach(additions: Additions, entity: int, properties: Sequence[Property]) -> None:
    """Gives an entity (a PRODUCT_DEFINITION or a NEXT_ASSEMBLY_USAGE_OCCURRENCE) user-defined attributes.

    Each is a property of its own with one item, since of several items the kernel reads the last.
    """
    context = additions.shared("REPRESENTATION_CONTEXT('','user defined attributes')")
    for name, value in properties:
        key, text = quoted(name), quoted(value)
        general = additions.shared(f"GENERAL_PROPERTY('',{key},'user defined attribute')")
        definition = additions.add(f"PROPERTY_DEFINITION({key},'user defined attribute',#{entity})")
        additions.add(f"GENERAL_PROPERTY_ASSOCIATION('user defined attribute','',#{general},#{definition})")
        item = additions.shared(f"DESCRIPTIVE_REPRESENTATION_ITEM({key},{text})")
        said = additions.shared(f"REPRESENTATION({key},(#{item}),#{context})")
        additions.add(f"PROPERTY_DEFINITION_REPRESENTATION(#{definition},#{said})")


def paint(additions: Additions, body: int, context: int, colour: tuple[int, int, int]) -> None:
    """Gives a body, in its representation's context, a colour: red, green, blue of sRGB, 0 to 255."""
    red, green, blue = (value / 255 for value in colour)
    style = additions.shared(f"COLOUR_RGB('',{red},{green},{blue})")
    for wrapping in (
        "FILL_AREA_STYLE_COLOUR('',#{})",
        "FILL_AREA_STYLE('',(#{}))",
        "SURFACE_STYLE_FILL_AREA(#{})",
        "SURFACE_SIDE_STYLE('',(#{}))",
        "SURFACE_STYLE_USAGE(.BOTH.,#{})",
        "PRESENTATION_STYLE_ASSIGNMENT((#{}))",
    ):
        style = additions.shared(wrapping.format(style))
    item = additions.add(f"STYLED_ITEM('colour',(#{style}),#{body})")
    additions.add(f"MECHANICAL_DESIGN_GEOMETRIC_PRESENTATION_REPRESENTATION('',(#{item}),#{context})")
