"""STEP AP242: the model as nested assemblies with names, colours, shared solids and labels, in mm.

What geometry cannot hold travels as user-defined attributes: role, mark and labels of a piece with
its product where all pieces of the product agree, else with its occurrence; units with the root.
The kernel reads such attributes but writes none, so they are added to the text it wrote. By what the
file says of itself (see guards) a reader knows whether it is as it was written.
"""

from __future__ import annotations

import io
import re
from dataclasses import dataclass, replace
from itertools import chain
from pathlib import Path

from OCP.IFSelect import IFSelect_RetDone
from OCP.STEPCAFControl import STEPCAFControl_Reader, STEPCAFControl_Writer
from OCP.STEPControl import STEPControl_AsIs
from OCP.TDocStd import TDocStd_Document

from ..catalog.colours import rgb
from ..errors import FileError, TooManyPieces
from ..files import read_whole
from ..order.lists.schedule import schedule
from ..pieces import Model
from ..printable import printable
from .apart import apart
from .atomic_files import Target, whole_file
from .document import Documented, model_of, root_property
from .guards import (
    COUNTS,
    broken_reference,
    digest,
    not_as_stated,
    not_whole,
    stated_and_found,
    stating,
)
from .kernel import new_document, set_up_step, silence
from .names import with_printable_names
from .packing import packed, unpacked
from .part21 import END, Additions, attach, header, paint, quoted, references
from .placements import KINDS as PLACEMENT_KINDS
from .placements import SHAPE, References, placed_in_full

LARGEST = 100_000_000  # bytes; some twenty times a 400 ft building

HEAD = re.compile(rb"\s*ISO-10303-21\s*;")
TAIL = re.compile(rb"END-ISO-10303-21\s*;\s*$")
SCHEMA = re.compile(rb"FILE_SCHEMA\s*\(\((.*?)\)\)", re.DOTALL)
TOKEN = re.compile(rb"'~(\d+)~'")
PRODUCT = re.compile(rb"#(\d+) = PRODUCT\(\s*'~(\d+)~'")
OCCURRENCE = re.compile(
    rb"#(\d+) = NEXT_ASSEMBLY_USAGE_OCCURRENCE\(\s*'(\d+)'\s*,\s*'[^']*'\s*,\s*'[^']*'"
    rb"\s*,\s*#(\d+)\s*,\s*#(\d+)\s*,\s*\$\s*\)"
)
FORMATION, DEFINITION = "PRODUCT_DEFINITION_FORMATION", "PRODUCT_DEFINITION"
REPRESENTED, BODY = "SHAPE_DEFINITION_REPRESENTATION", "ADVANCED_BREP_SHAPE_REPRESENTATION"
KINDS = (FORMATION, DEFINITION, REPRESENTED, BODY, *PLACEMENT_KINDS)


CHANGED = "was changed since ribwright wrote it"


@dataclass(frozen=True, slots=True)
class Reading:
    """A model read from a file. note: what a person must be told of the file, in a line; "" for nothing."""

    model: Model
    note: str = ""


def write_step(model: Model, target: Target) -> None:
    """Writes a model as STEP AP242 in mm. Equal models give equal bytes, on every machine.

    target: a path, or a binary stream. Raises FileError when it cannot be written whole.
    """
    text = _text(with_printable_names(model))
    with whole_file(target) as stream:
        stream.write(text)


def read_step(path: str | Path) -> Model:
    """Reads a STEP file as a model, whatever its unit of length, in mm.

    A file of ours gives the model that was written. Any other gives its solids as pieces without
    role, mark and labels, named by their products. Raises FileError, in one line, for a file that
    is no STEP file, is cut short, is damaged, is larger than 100 MB, or has no solids.
    """
    return reading(path).model


def reading(path: str | Path) -> Reading:
    """Reads as `read_step` does, with a note where a file of ours was changed since it was written."""
    data = read_whole(path, LARGEST)
    if not HEAD.match(data):
        raise FileError(f"{path}: is not a STEP file")
    if not TAIL.search(data[-1000:]):
        raise FileError(f"{path}: is a STEP file cut short")
    read = apart(lambda: packed(_judged(path, data)))
    if read is None:
        raise FileError(f"{path}: is a damaged STEP file, or more than can be read")
    found: Reading = unpacked(read)
    return found


def _judged(path: str | Path, data: bytes) -> Reading:
    """What is read, held against what the file says of itself. Whatever breaks on the way, it is the file."""
    try:
        read = _read(path, data)
        return replace(read, model=with_printable_names(read.model))
    except FileError:
        raise
    except TooManyPieces as error:
        raise FileError(f"{path}: {error}") from error
    except Exception as error:
        raise FileError(f"{path}: is a damaged STEP file") from error


def _read(path: str | Path, data: bytes) -> Reading:
    stated, found = stated_and_found(data)
    unchanged = stated == found != ""
    if not unchanged and (lost := broken_reference(data)):
        raise FileError(f"{path}: is a damaged STEP file: {lost} is not there, or stands there twice")
    document = _document(data)
    model = model_of(document) if document else Model("", "mm")
    if not document or not model.pieces:
        raise FileError(f"{path}: has no solids in it")
    told = root_property(document)
    if not stated and told(COUNTS) is None:
        return Reading(model)
    for off in chain(not_as_stated(model, told), () if unchanged else not_whole(model)):
        raise FileError(f"{path}: is a damaged STEP file: {off}")
    if unchanged:
        return Reading(model)
    schedule(model)  # what cannot be measured is refused here, where it can do no harm
    return Reading(model, printable(f"{path}: {CHANGED}"))


def _document(data: bytes) -> TDocStd_Document | None:
    """The kernel's document of the bytes of a STEP file, None where it finds nothing in them."""
    set_up_step()
    reader, document = STEPCAFControl_Reader(), new_document()
    reader.SetNameMode(True)
    reader.SetMetaMode(True)
    reader.SetColorMode(False)
    with silence():
        done = reader.ReadStream("model.step", io.BytesIO(data)) == IFSelect_RetDone
        return document if done and reader.Transfer(document) else None


def _text(model: Model) -> bytes:
    """The bytes of a model's STEP file."""
    documented = Documented(model)
    text = _written(documented)
    schema = SCHEMA.search(text)
    assert schema is not None  # the kernel always states one
    body = text[text.index(b"DATA;") : text.rindex(END)]
    found = references(body, KINDS)
    products = _products(body, found)
    occurrences = _occurrences(body, products, documented)
    places = {entity: documented.places[token] for entity, token in occurrences.items()}
    body = placed_in_full(body, found, places)
    additions = Additions(1 + int(body[body.rindex(b"\n#") + 2 :].split(b" ")[0]))
    _paint(additions, found, products, documented)
    bearers = {token: entity for entity, token in (products | occurrences).items()}
    for token, properties in documented.attributes():
        attach(additions, bearers[token], properties)
    names = [quoted(name).encode() for name in documented.names]
    body = OCCURRENCE.sub(lambda found: _named(found, names, occurrences), body)
    body = TOKEN.sub(lambda found: names[int(found[1])], body)
    body += additions.text().encode()
    return header(model.name, stating(digest(body)), schema[1].decode()).encode() + body + END + b"\n"


def _written(documented: Documented) -> bytes:
    """The document as the kernel writes it, names as tokens."""
    set_up_step()
    writer, stream = STEPCAFControl_Writer(), io.BytesIO()
    writer.SetColorMode(False)
    writer.SetNameMode(True)
    with silence():
        writer.Transfer(documented.document, STEPControl_AsIs)
        writer.WriteStream(stream)
    return stream.getvalue()


def _products(text: bytes, found: References) -> dict[int, int]:
    """For each PRODUCT_DEFINITION the token of its product."""
    tokens = {int(product): int(token) for product, token in PRODUCT.findall(text)}
    formations = {formation: tokens[product] for formation, (product,) in found[FORMATION].items()}
    return {definition: formations[formation] for definition, (formation, _) in found[DEFINITION].items()}


def _paint(additions: Additions, found: References, products: dict[int, int], documented: Documented) -> None:
    """The colours of products, on their bodies."""
    for shape, representation in found[REPRESENTED].values():
        colour = documented.colours.get(products[found[SHAPE][shape][0]])
        if colour:
            *_, body, context = found[BODY][representation]
            paint(additions, body, context, rgb(colour))


def _occurrences(text: bytes, products: dict[int, int], documented: Documented) -> dict[int, int]:
    """For each NEXT_ASSEMBLY_USAGE_OCCURRENCE its token: the kernel numbers them in their order."""
    below: dict[int, list[int]] = {}
    for entity, _, assembly, _ in sorted(OCCURRENCE.findall(text), key=lambda found: int(found[1])):
        below.setdefault(products[int(assembly)], []).append(int(entity))
    return {
        entity: token
        for assembly, entities in below.items()
        for entity, token in zip(entities, documented.below[assembly], strict=True)
    }


def _named(found: re.Match[bytes], names: list[bytes], occurrences: dict[int, int]) -> bytes:
    """An occurrence with its name, also as its id: the kernel counts ids on from file to file, and
    reads the id where a name has no ASCII letter."""
    entity, _, assembly, product = found.groups()
    name = names[occurrences[int(entity)]]
    return b"#%s = NEXT_ASSEMBLY_USAGE_OCCURRENCE(%s,%s,'',#%s,#%s,$)" % (
        entity,
        name,
        name,
        assembly,
        product,
    )
