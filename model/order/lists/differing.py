"""What tells marks apart that all else in a list says the same of."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import replace

from ...measure.member import MeasuredMember
from ...measure.unlike import mirrored, unlike
from ...units import Units, format_length
from .item_cells import COLUMNS, cells
from .items import Item

OWN = ("mark", "count", "faces", "people", "differs")
"""What may be otherwise of two marks without saying what they are."""
END = 1.0  # mm; what differs so near both ends differs all through

Told = tuple[Item, MeasuredMember]


def differing(items: Sequence[Told], units: Units) -> Iterator[Item]:
    """The items, of those alike each with what it differs by: whose mirror image it is, or where it is
    otherwise than the first of them."""
    alike: dict[tuple[str, ...], list[Told]] = defaultdict(list)
    for item, measured in items:
        said = cells(item, units)
        alike[tuple(said[name] for name in COLUMNS if name not in OWN)].append((item, measured))
    found = {mark: text for same in alike.values() for mark, text in _within(same, units)}
    return (replace(item, differs=found[item.mark]) for item, _ in items)


def _within(same: Sequence[Told], units: Units) -> Iterator[tuple[str, str]]:
    (first, shape), *_ = same
    for number, (item, measured) in enumerate(same):
        others = (k for k, (_, other) in enumerate(same) if k != number and mirrored(other, measured))
        twin = next(others, None)
        said = [] if twin is None else [f"mirror of {same[twin][0].mark}"]
        if number and (twin is None or twin > number):
            said.append(f"unlike {first.mark}{_where(shape, measured, units)}")
        yield item.mark, "; ".join(said)


def _where(shape: MeasuredMember, measured: MeasuredMember, units: Units) -> str:
    """` 1-1/2" to 3" from an end, 0" to 1" from a side`; nothing where no corner tells it."""
    found = unlike(shape, measured)
    if found is None:
        return ""
    *along, sizes = found
    spans = [_span(*span, size, units) for span, size in zip(along, sizes, strict=True)]
    said = [f"{span} from {edge}" for span, edge in zip(spans, ("an end", "a side"), strict=True) if span]
    return f" {', '.join(said)}" if said else " all over"


def _span(low: float, high: float, size: float, units: Units) -> str:
    """From the nearer end; nothing where it goes all through."""
    if low < END and high > size - END:
        return ""
    if high > size - low:
        low, high = size - high, size - low
    return " to ".join(dict.fromkeys(format_length(at, units) for at in (low, high)))
