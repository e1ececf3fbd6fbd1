"""The order in which a building goes up, read off its model: what is put up when, checked and minded."""

from __future__ import annotations

from .raising_order import steps
from .step import Caution, Dimension, Step

__all__ = ["steps", "Step", "Dimension", "Caution"]
