"""The kernel's document for assemblies, its names and properties, and its silence."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from OCP.Interface import Interface_Static
from OCP.Message import Message, Message_Printer
from OCP.STEPCAFControl import STEPCAFControl_Controller
from OCP.TCollection import TCollection_ExtendedString
from OCP.TDataStd import TDataStd_Name, TDataStd_NamedData
from OCP.TDF import TDF_Label, TDF_LabelSequence
from OCP.TDocStd import TDocStd_Document
from OCP.XCAFDoc import XCAFDoc_DocumentTool, XCAFDoc_ShapeTool

MILLIMETRE = 0.001  # in metres, as a document states its unit

SETTINGS = {
    "write.step.schema": "AP242DIS",
    "write.step.unit": "MM",
    "xstep.cascade.unit": "MM",
}


def new_document() -> TDocStd_Document:
    """An empty document in millimetres."""
    document = TDocStd_Document(TCollection_ExtendedString("BinXCAF"))
    XCAFDoc_DocumentTool.SetLengthUnit_s(document, MILLIMETRE)
    return document


def set_up_step() -> None:
    """States how STEP is read and written: AP242, millimetres, lines and circles without flat twins."""
    STEPCAFControl_Controller.Init_s()  # before this the kernel ignores settings
    for key, value in SETTINGS.items():
        Interface_Static.SetCVal_s(key, value)
    Interface_Static.SetIVal_s("write.surfacecurve.mode", 0)


@contextmanager
def silence() -> Iterator[None]:
    """Keeps the kernel from printing; what it finds is asked for, not read off its chatter."""
    messenger = Message.DefaultMessenger_s()
    printers = list(messenger.Printers())
    messenger.RemovePrinters(Message_Printer.get_type_descriptor_s())
    try:
        yield
    finally:
        for printer in printers:
            messenger.AddPrinter(printer)


def set_name(label: TDF_Label, name: str) -> None:
    """Names a shape or an occurrence."""
    TDataStd_Name.Set_s(label, TCollection_ExtendedString(name, True))  # from UTF-8


def name_of(label: TDF_Label) -> str:
    """The name of a shape or an occurrence, empty when it has none."""
    name = TDataStd_Name()
    return str(name.Get().ToExtString()) if label.FindAttribute(TDataStd_Name.GetID_s(), name) else ""


def property_of(label: TDF_Label, key: str) -> str | None:
    """The text of a user-defined attribute, None when the label has none of that name."""
    data = TDataStd_NamedData()
    if not label.FindAttribute(TDataStd_NamedData.GetID_s(), data):
        return None
    data.LoadDeferredData()
    name = TCollection_ExtendedString(key, True)  # from UTF-8
    return _letters(str(data.GetString(name).ToExtString())) if data.HasString(name) else None


def _letters(text: str) -> str:
    """An attribute's text, which the kernel (7.9) reads with a letter for every byte of its UTF-8."""
    try:
        return text.encode("latin-1").decode("utf-8")
    except UnicodeError:
        return text


def referred(label: TDF_Label) -> TDF_Label:
    """The product of an occurrence; the label itself when it is a product."""
    product = TDF_Label()
    return product if XCAFDoc_ShapeTool.GetReferredShape_s(label, product) else label


def components(label: TDF_Label) -> list[TDF_Label]:
    """The occurrences directly in an assembly, in order."""
    return listed(lambda sequence: XCAFDoc_ShapeTool.GetComponents_s(label, sequence))


def listed(fill: Any) -> list[TDF_Label]:  # fill: a function of the kernel that fills a sequence
    """The labels that a function puts into a sequence."""
    sequence = TDF_LabelSequence()
    fill(sequence)
    return [sequence.Value(i) for i in range(1, sequence.Length() + 1)]
