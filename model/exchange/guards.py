"""What a STEP file of ours says of itself, so that a changed or damaged one is known.

Its head holds the SHA-256 (FIPS 180-4) of its data section without line ends, in FILE_DESCRIPTION, which
ISO 10303-21 leaves to free text; its root holds counts of bodies, rows and marks, and each mark's volume.
"""

from __future__ import annotations

import hashlib
import re
from collections import Counter, defaultdict
from collections.abc import Callable, Iterator

from ..measure.faces import body
from ..pieces import Model
from ..solids.properties import is_valid
from .label_texts import UNITS, Property

COUNTS, VOLUME = "counts", "volume"
OFF = 1e-3  # share by which a mark's volume may differ from the one stated

HEAD = re.compile(rb"(?:[^']|'[^']*')*?\bENDSEC\s*;\s*DATA\s*;")
STATED = re.compile(rb"\(\s*'(?:[^']|'')*'\s*,\s*'SHA-256 of the data: ([0-9a-f]{64})'\s*\)")
TEXTS = re.compile(rb"'[^']*'|/\*.*?\*/", re.DOTALL)
REFERENCE, DEFINED = re.compile(rb"#(\d+)"), re.compile(rb"[;\s]#(\d+)\s*=")


def stating(digest: str) -> str:
    """How the head states a digest."""
    return f"SHA-256 of the data: {digest}"


def digest(section: bytes) -> str:
    """Of a data section, from its `DATA;` to before its `ENDSEC;`."""
    return hashlib.sha256(section.translate(None, b"\r\n")).hexdigest()


def stated_and_found(data: bytes) -> tuple[str, str]:
    """The digest that a file's head states, "" for none, and the one that its data section has."""
    head = HEAD.match(data)
    if not head:
        return "", ""
    stated = STATED.search(data, 0, head.end())
    start, end = data.rindex(b"DATA", 0, head.end()), data.rfind(b"ENDSEC")
    return stated[1].decode() if stated else "", digest(data[start:end])


def broken_reference(data: bytes) -> str:
    """An entity that is referred to and not there, or stands there twice, as `#12`; "" when all is well."""
    plain = TEXTS.sub(b"", data)
    defined = Counter(int(found[1]) for found in DEFINED.finditer(plain))
    lost = {int(found[1]) for found in REFERENCE.finditer(plain)} - defined.keys()
    bad = lost or {number for number, count in defined.items() if count > 1}
    return f"#{min(bad)}" if bad else ""


def counted(model: Model) -> list[Property]:
    """What the root says of a model: its counts, and the volume of all bodies of each mark (mm3)."""
    volumes = _volumes(model).items()
    return [(COUNTS, _counts(model)), *((f"{VOLUME} {mark}", f"{size:.6g}") for mark, size in volumes)]


def not_whole(model: Model) -> Iterator[str]:
    """What has a body that the kernel's own checks find wrong."""
    for piece in model.pieces:
        if not is_valid(piece.solid):
            yield f"the body of {piece.name} is not whole"


def not_as_stated(model: Model, told: Callable[[str], str | None]) -> Iterator[str]:
    """What of a model is not as the root of its file says. told: looks up an attribute of the root."""
    counts = told(COUNTS)
    if counts is None or told(UNITS) is None:
        yield "what it said of itself is lost"
        return
    if counts != _counts(model):
        yield f"{counts} were written, {_counts(model)} are there"
    for mark, size in _volumes(model).items():
        stated = float(told(f"{VOLUME} {mark}") or 0.0)
        if not abs(size - stated) <= OFF * abs(stated):  # nor where one of them is no number
            yield f"{mark or 'what has no mark'} had {stated:.6g} mm3, has {size:.6g}"


def _counts(model: Model) -> str:
    bodies = sum(piece.count for piece in model.pieces)
    rows = sum(bool(piece.row) for piece in model.pieces)
    return f"{bodies} bodies, {rows} rows, {len(_volumes(model))} marks"


def _volumes(model: Model) -> dict[str, float]:
    """The volume of all bodies of each mark, in the order of the marks; what has none is the mark ""."""
    found: dict[str, float] = defaultdict(float)
    for piece in model.pieces:
        found[piece.mark] += body(piece.solid).volume * piece.count
    return dict(sorted(found.items()))
