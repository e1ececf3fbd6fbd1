"""Placements in a STEP file written out in full.

The kernel writes 13 digits, which at the far end of a long building is 1e-8 mm. So the point and the
two directions that place each occurrence are written again, to the last digit of the model's.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from ..place import Place, Point3

USE, SHAPE = "CONTEXT_DEPENDENT_SHAPE_REPRESENTATION", "PRODUCT_DEFINITION_SHAPE"
RELATION, TRANSFORMATION = "REPRESENTATION_RELATIONSHIP", "ITEM_DEFINED_TRANSFORMATION"
AXES = "AXIS2_PLACEMENT_3D"
KINDS = (USE, SHAPE, RELATION, TRANSFORMATION, AXES)
TRIPLE = re.compile(rb"#(\d+) = (CARTESIAN_POINT|DIRECTION)\(\s*'',\s*\([^()]*\)\s*\)")

References = Mapping[str, Mapping[int, list[int]]]


def placed_in_full(text: bytes, found: References, places: Mapping[int, Place]) -> bytes:
    """The data section with the places of occurrences (NEXT_ASSEMBLY_USAGE_OCCURRENCE) in full.

    found: the references of all KINDS.
    """
    values: dict[int, Point3] = {}
    for relation, shape in found[USE].values():
        place = places[found[SHAPE][shape][0]]
        transformation = found[RELATION][relation][2]  # after the two representations it relates
        point, z, x = found[AXES][found[TRANSFORMATION][transformation][1]]
        values |= {point: place.origin, z: place.z, x: place.x}

    def in_full(triple: re.Match[bytes]) -> bytes:
        value = values.get(int(triple[1]))
        if value is None:
            return triple[0]
        return b"#%s = %s('',(%s))" % (triple[1], triple[2], ",".join(map(number, value)).encode())

    return TRIPLE.sub(in_full, text)


def number(value: float) -> str:
    """A number as Part 21 has it: a point always, E for the exponent, no digit lost."""
    mantissa, _, exponent = repr(value + 0.0).partition("e")
    if "." not in mantissa:
        mantissa += "."
    return f"{mantissa}E{exponent}" if exponent else mantissa
