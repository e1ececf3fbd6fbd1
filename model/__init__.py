"""ribwright: small steel-framed buildings clad in ribbed sheets, as real solids.

One way through: description -> building -> layout -> solids -> model -> measure, order, audit,
exchange, drawings, show. This package imports nothing by itself: take what you need from its floors.
"""

from __future__ import annotations

__version__ = "0.1.0"
