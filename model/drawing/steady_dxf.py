"""ezdxf without the time of day and the random identifiers it gives a file: equal drawings, equal bytes."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from ezdxf._options import options  # its own module: the package says nothing of its type


@contextmanager
def same_every_time() -> Iterator[None]:
    """While the body writes."""
    before = options.write_fixed_meta_data_for_testing
    options.write_fixed_meta_data_for_testing = True
    try:
        yield
    finally:
        options.write_fixed_meta_data_for_testing = before
