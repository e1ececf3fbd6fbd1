"""Zip archives that are the same whenever the same is written."""

from __future__ import annotations

from zipfile import ZipInfo

FIRST_DAY = (1980, 1, 1, 0, 0, 0)  # of a zip file's calendar


def undated(name: str) -> ZipInfo:
    """An entry of an archive, without the time of day."""
    return ZipInfo(name, FIRST_DAY)
