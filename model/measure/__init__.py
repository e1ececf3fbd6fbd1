"""Measuring: every figure comes off a solid. Takes a Model, knows no recipe and no layout."""

from __future__ import annotations

from .congruent import Group, Member, groups, marked
from .sheet import MeasuredSheet, measure_sheet

__all__ = ["marked", "groups", "Group", "Member", "measure_sheet", "MeasuredSheet"]
