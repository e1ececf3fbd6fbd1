"""The customer's page: one file that shows a building to someone who has nothing but a browser."""

from __future__ import annotations

from .page import page

__all__ = ["page"]
