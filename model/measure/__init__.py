"""Measuring: every figure comes off a solid. Takes a Model, knows no recipe and no layout."""

from __future__ import annotations

from .congruent import Group, Member, groups, in_tree_order, marked
from .sheet import MeasuredSheet, measure_sheet

__all__ = ["marked", "in_tree_order", "groups", "Group", "Member", "measure_sheet", "MeasuredSheet"]
