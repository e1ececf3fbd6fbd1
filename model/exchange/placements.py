"""Placements in a STEP file written out in full.

The kernel writes 13 digits, which at the far end of a long building is 1e-8 mm. So the point and the
two directions that place each occurrence are written again, to the last digit of the model's.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from ..place import Place

USE, SHAPE = "CONTEXT_DEPENDENT_SHAPE_REPRESENTATION", "PRODUCT_DEFINITION_SHAPE"
RELATION, TRANSFORMATION = "REPRESENTATION_RELATIONSHIP", "ITEM_DEFINED_TRANSFORMATION"
KINDS = (USE, SHAPE, RELATION, TRANSFORMATION)
BETWEEN = b";\n#"  # entities; no string holds it
REFERENCE = re.compile(rb"#(\d+)")

References = Mapping[str, Mapping[int, list[int]]]


def placed_in_full(text: bytes, found: References, places: Mapping[int, Place]) -> bytes:
    """The data section with the places of occurrences (NEXT_ASSEMBLY_USAGE_OCCURRENCE) in full.

    found: the references of all KINDS.
    """
    entities = text.split(BETWEEN)
    numbers = {entity.partition(b" ")[0]: k for k, entity in enumerate(entities)}
    for relation, shape in found[USE].values():
        place = places[found[SHAPE][shape][0]]
        transformation = found[RELATION][relation][2]  # after the two representations it relates
        axes = b"%d" % found[TRANSFORMATION][transformation][1]
        triples = REFERENCE.findall(entities[numbers[axes]])
        for triple, value in zip(triples, (place.origin, place.z, place.x), strict=True):
            kind, _, _ = entities[numbers[triple]].partition(b"(")
            entities[numbers[triple]] = b"%s('',(%s))" % (kind, ",".join(map(number, value)).encode())
    return BETWEEN.join(entities)


def number(value: float) -> str:
    """A number as Part 21 has it: a point always, E for the exponent, no digit lost."""
    mantissa, _, exponent = repr(value + 0.0).partition("e")
    if "." not in mantissa:
        mantissa += "."
    return f"{mantissa}E{exponent}" if exponent else mantissa
