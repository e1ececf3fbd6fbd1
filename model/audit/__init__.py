"""The audit: a finished model judged by someone who has never seen how it was laid out.

Every check reads solids and where they stand, and the terms that were asked; none asks a layout, a
description, a mark or a name. What is measured on the way is a result as the findings are.
"""

from __future__ import annotations

from ..findings import CHECKS
from .witness import Audit, Figure, audit

__all__ = ["CHECKS", "Audit", "Figure", "audit"]
