"""A model as the kernel's document of nested assemblies, and back."""

from __future__ import annotations

import io
from collections import Counter
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field, fields, replace

from OCP.BRep import BRep_Builder
from OCP.BRepTools import BRepTools
from OCP.TDF import TDF_Label
from OCP.TDocStd import TDocStd_Document
from OCP.TopLoc import TopLoc_Location
from OCP.TopoDS import TopoDS, TopoDS_Iterator, TopoDS_Solid
from OCP.TopTools import TopTools_FormatVersion, TopTools_IndexedMapOfShape
from OCP.XCAFDoc import XCAFDoc_DocumentTool, XCAFDoc_ShapeTool

from ..catalog.colours import is_colour
from ..errors import TooManyPieces
from ..pieces import Model, Piece
from ..place import Place, Point3
from ..recipe import grid
from ..solids.booleans import solids_in
from ..solids.placing import location, place_of
from ..terms import Terms, read_terms, spelled
from .guards import COUNTS, counted
from .kernel import components, listed, name_of, new_document, property_of, referred, set_name
from .label_texts import (
    MARK,
    NAMES,
    ORDER,
    ROLE,
    ROW,
    TERMS,
    UNITS,
    Property,
    labels_from,
    order_in_tree,
    properties_of,
)
from .names import title

MOST = 500_000  # pieces and assemblies that are read

ProductKey = tuple[TopoDS_Solid, str, tuple[Point3, ...]]


@dataclass(slots=True)
class _Node:
    """A product in the document. below: tokens of the occurrences in it."""

    label: TDF_Label
    token: int
    below: list[int] = field(default_factory=list)


class Documented:
    """A model put into a document: groups as nested assemblies, a product for each solid and mark.

    Products go into the document under tokens, `~0~`, `~1~` ..., so that they can be found in the
    file, and no letter of a name depends on how the kernel spells it. Occurrences go unnamed, since
    the kernel mixes up their names; they are found by their order.
    names: the name behind each token, of a product or an occurrence. below: for the token of each
    assembly those of its occurrences, in order. places: for the token of each occurrence its place.
    colours: for the token of a product its colour; the kernel would write them in no fixed order.
    """

    def __init__(self, model: Model) -> None:
        self.document: TDocStd_Document = new_document()
        self.names: list[str] = []
        self._model = model
        self._shapes = XCAFDoc_DocumentTool.ShapeTool_s(self.document.Main())
        self.places: dict[int, Place] = {}
        self.colours: dict[int, str] = {}
        self._groups: dict[tuple[str, ...], _Node] = {(): self._node(self._shapes.NewShape(), model.name)}
        self._products: dict[ProductKey, _Node] = {}
        self._bodies: set[TopoDS_Solid] = set()
        self._rows: list[_Node] = []
        self._occurrences = [self._add(piece) for piece in model.pieces]
        self._shapes.UpdateAssemblies()
        self.below = {node.token: node.below for node in (*self._groups.values(), *self._rows)}

    def attributes(self) -> Iterator[tuple[int, list[Property]]]:
        """Tokens of products and occurrences, each with the attributes it is to bear."""
        pieces = self._model.pieces
        asked = [(TERMS + name, text) for name, text in spelled(self._model.terms)]
        yield self._groups[()].token, [(UNITS, self._model.units), *counted(self._model), *asked]
        of_piece = [properties_of(piece) for piece in pieces]
        of_product: dict[ProductKey, list[list[Property]]] = {}
        for piece, properties in zip(pieces, of_piece, strict=True):
            of_product.setdefault(_key(piece), []).append(properties)
        common = {key: found[0] for key, found in of_product.items() if found.count(found[0]) == len(found)}
        for key, properties in common.items():
            yield self._products[key].token, properties
        in_order = order_in_tree(pieces) == list(range(len(pieces)))
        for number, piece in enumerate(pieces):
            own = [] if _key(piece) in common else list(of_piece[number])
            if not in_order:
                own.append((ORDER, str(number)))
            if own:
                yield self._occurrences[number], own

    def _add(self, piece: Piece) -> int:
        return self._occurrence(self._group(piece.group), self._product(piece), piece.place, piece.name)

    def _group(self, path: tuple[str, ...]) -> _Node:
        if path not in self._groups:
            outer, group = self._group(path[:-1]), self._node(self._shapes.NewShape(), path[-1])
            self._occurrence(outer, group, Place(), path[-1])
            self._groups[path] = group
        return self._groups[path]

    def _product(self, piece: Piece) -> _Node:
        key = _key(piece)
        if piece.row and key not in self._products:
            self._products[key] = self._row(piece)
        elif key not in self._products:
            body = _twin(piece.solid) if piece.solid in self._bodies else piece.solid
            self._bodies.add(piece.solid)
            product = self._node(self._shapes.AddShape(body, False), title(piece))
            if is_colour(piece.label("colour")):
                self.colours[product.token] = piece.label("colour")
            self._products[key] = product
        return self._products[key]

    def _row(self, piece: Piece) -> _Node:
        """An assembly of one body standing at every point of a row, shared by all rows that are equal."""
        body = self._product(replace(piece, row=()))
        row = self._node(self._shapes.NewShape(), f"{title(piece)} row")
        for number, point in enumerate(piece.row, 1):
            self._occurrence(row, body, Place(point), str(number))
        self._rows.append(row)
        return row

    def _node(self, label: TDF_Label, name: str) -> _Node:
        set_name(label, f"~{len(self.names)}~")
        self.names.append(name)
        return _Node(label, len(self.names) - 1)

    def _occurrence(self, outer: _Node, product: _Node, place: Place, name: str) -> int:
        self._shapes.AddComponent(outer.label, product.label, location(place))
        token = len(self.names)
        self.names.append(name)
        self.places[token] = place
        outer.below.append(token)
        return token


def _key(piece: Piece) -> ProductKey:
    return piece.solid, piece.mark, piece.row


def _twin(solid: TopoDS_Solid) -> TopoDS_Solid:
    """Another body of the same shell, so that it can bear another mark and colour."""
    builder, twin, shells = BRep_Builder(), TopoDS_Solid(), TopoDS_Iterator(solid)
    builder.MakeSolid(twin)
    while shells.More():
        builder.Add(twin, shells.Value())
        shells.Next()
    return twin


def root_property(document: TDocStd_Document) -> Callable[[str], str | None]:
    """What looks up an attribute of the one root of a document, None for one that it has not."""
    roots = listed(XCAFDoc_DocumentTool.ShapeTool_s(document.Main()).GetFreeShapes)
    return lambda key: property_of(roots[0], key) if len(roots) == 1 else None


def model_of(document: TDocStd_Document) -> Model:
    """The model in a document: every solid of every occurrence is a piece.

    A document that is none of ours has no roles, marks and labels; its pieces are named by their
    products, numbered where a name comes again, and its lengths are shown in mm. What a document says
    of itself is not judged here.
    """
    roots = listed(XCAFDoc_DocumentTool.ShapeTool_s(document.Main()).GetFreeShapes)
    name = name_of(roots[0]) if len(roots) == 1 else ""
    told = root_property(document)
    units = told(UNITS)
    if units is None or told(COUNTS) is None:
        walk = _Walk()
        return Model(name, "mm", tuple(_numbered(piece for root in roots for piece, _ in walk.below(root))))
    found = list(_Walk(ours=True).below(roots[0]))
    if all(order is not None for _, order in found):
        found.sort(key=lambda each: int(each[1] or 0))
    return Model(name, units, tuple(piece for piece, _ in found), _terms(roots[0]))


def _terms(root: TDF_Label) -> Terms:
    names = (field.name for field in fields(Terms))
    found = {name: text for name in names if (text := property_of(root, TERMS + name)) is not None}
    return read_terms(found)


def _numbered(pieces: Iterable[Piece]) -> Iterator[Piece]:
    """The pieces with a number added to names that came before."""
    seen: Counter[str] = Counter()
    for piece in pieces:
        seen[piece.name] += 1
        count = seen[piece.name]
        yield piece if count == 1 else replace(piece, name=f"{piece.name} {count}")


class _Walk:
    """A walk through a document's assemblies, which may be used more than once."""

    def __init__(self, *, ours: bool = False) -> None:
        self._ours = ours
        self._met = 0
        self._bodies: dict[bytes, TopoDS_Solid] = {}
        self._rows: dict[int, tuple[TopoDS_Solid, tuple[Point3, ...]]] = {}
        self._shapes = TopTools_IndexedMapOfShape()  # of shapes: Python's == tells apart what is the same
        self._canonical: dict[int, TopoDS_Solid] = {}

    def below(self, root: TDF_Label) -> Iterator[tuple[Piece, str | None]]:
        """The pieces below a root, each with its number in the model if it bears one."""
        if not XCAFDoc_ShapeTool.IsAssembly_s(root):
            yield from self._pieces(root, TopLoc_Location(), ())
        for component in components(root):
            yield from self._pieces(component, TopLoc_Location(), ())

    def _pieces(
        self, label: TDF_Label, outer: TopLoc_Location, group: tuple[str, ...]
    ) -> Iterator[tuple[Piece, str | None]]:
        self._met += 1
        if self._met > MOST:  # assemblies of assemblies: a short file may hold millions
            raise TooManyPieces(f"more than {MOST:,} pieces are in it")
        product = referred(label)
        here = outer.Multiplied(XCAFDoc_ShapeTool.GetLocation_s(label))
        name = (self._ours and name_of(label)) or name_of(product) or "part"
        bearer = label if property_of(label, NAMES) is not None else product
        if XCAFDoc_ShapeTool.IsAssembly_s(product) and property_of(bearer, ROW) is None:
            for component in components(product):
                yield from self._pieces(component, here, (*group, name))
            return

        def told(key: str) -> str | None:
            return property_of(bearer, key) if self._ours else None

        role, mark, labels = told(ROLE) or "", told(MARK) or "", labels_from(told)
        if XCAFDoc_ShapeTool.IsAssembly_s(product):
            solid, row = self._row(product)
            piece = Piece(name, role, group, solid, place_of(here), labels, mark, row)
            yield piece, property_of(label, ORDER)
            return
        for shape in solids_in(XCAFDoc_ShapeTool.GetShape_s(product)):
            solid, place = self._body(shape, here)
            yield Piece(name, role, group, solid, place, labels, mark), property_of(label, ORDER)

    def _row(self, product: TDF_Label) -> tuple[TopoDS_Solid, tuple[Point3, ...]]:
        """The body of a row and the points it stands at; read once for all pieces that share it."""
        key = product.Tag()
        if key not in self._rows:
            found = components(product)
            (shape,) = solids_in(XCAFDoc_ShapeTool.GetShape_s(referred(found[0])))
            solid, _ = self._body(shape, TopLoc_Location())
            places = (place_of(XCAFDoc_ShapeTool.GetLocation_s(component)) for component in found)
            row = tuple((grid(p.origin[0]), grid(p.origin[1]), grid(p.origin[2])) for p in places)
            self._rows[key] = (solid, row)
        return self._rows[key]

    def _body(self, shape: TopoDS_Solid, outer: TopLoc_Location) -> tuple[TopoDS_Solid, Place]:
        """A solid in its own frame, one object for all that are the same shells, and where it stands."""
        standing = outer.Multiplied(shape.Location())
        solid = TopoDS.Solid_s(shape.Located(TopLoc_Location()))
        number = self._shapes.Add(solid)
        if number not in self._canonical:
            self._canonical[number] = self._bodies.setdefault(_spelled(solid), solid)
        return self._canonical[number], place_of(standing)


def _spelled(solid: TopoDS_Solid) -> bytes:
    """The body in full, the same for bodies that are equal to the last digit."""
    stream = io.BytesIO()
    BRepTools.Write_s(solid, stream, False, False, TopTools_FormatVersion.TopTools_FormatVersion_VERSION_1)
    return stream.getvalue()
