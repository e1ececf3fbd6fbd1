"""Recipes made into solids, by the kernel.

`realise` turns a recipe into a solid once; `ribwright.solids.properties` reads volume, validity and
triangles off any solid, whether it was realised here or read from a file.
"""

from __future__ import annotations

from .realising import realise

__all__ = ["realise"]
