"""What meets at an edge of the shell, in the trade's words, told from the two faces alone."""

from __future__ import annotations

from enum import StrEnum
from math import atan2, degrees, sqrt

from ..place import Point3, add, cross, dot, unit
from .shell import Loop, Shell

UPRIGHT = 0.1
"""Upward part of a unit normal below which a face is a wall; the flattest roof's is far above."""


class Edge(StrEnum):
    """The kinds of edges."""

    BASE = "base"
    CORNER = "corner"
    INSIDE_CORNER = "inside corner"
    IN_LINE = "in line"
    EAVE = "eave"
    HIGH_EAVE = "high eave"
    HEADWALL = "headwall"
    RAKE = "rake"
    RIDGE = "ridge"
    BREAK = "pitch break"
    HOLLOW = "hollow pitch break"
    VALLEY = "valley"
    FREE = "free"


AT_ANOTHER = (Edge.IN_LINE, Edge.INSIDE_CORNER)
"""The kinds of edges at which a wall ends at another building's: in line with its gable, or square to one of
its walls."""


def is_wall(normal: Point3) -> bool:
    """Whether a face of that outward normal is a wall; else it is a slope of the roof."""
    return abs(normal[2]) < UPRIGHT


def kind_of(shell: Shell, loop: Loop, edge: tuple[int, int]) -> Edge:
    """The kind of one edge of a face."""
    start, end = (shell.vertices[number] for number in edge)
    along, here = unit(add(end, start, -1.0)), shell.frame(loop).z
    other = shell.beyond(edge)
    if other is None:
        return Edge.BASE if is_wall(here) and edge == loop.corners[:2] else Edge.FREE
    there = shell.frame(other).z
    convex = dot(cross(here, there), along) > 0
    if is_wall(here) and is_wall(there):
        return Edge.CORNER if convex else Edge.INSIDE_CORNER
    # How steeply each slope rises away from the edge, as the sine of the angle; a wall does not.
    back = (-along[0], -along[1], -along[2])
    both = ((here, along), (there, back))
    away = [_rise(normal, cross(normal, way)) for normal, way in both if not is_wall(normal)]
    if len(away) == 1:
        return Edge.RAKE if abs(away[0]) < sqrt(0.5) else Edge.EAVE if away[0] > 0 else Edge.HIGH_EAVE
    if all(rise > 0 for rise in away):
        return Edge.VALLEY
    if all(rise < 0 for rise in away):
        return Edge.RIDGE
    return Edge.BREAK if convex else Edge.HOLLOW


def angle_between(shell: Shell, loop: Loop, other: Loop, edge: tuple[int, int]) -> float:
    """Between two faces at their edge, degrees, on the inside."""
    here, there = shell.frame(loop).z, shell.frame(other).z
    start, end = (shell.vertices[number] for number in edge)
    turn = degrees(atan2(dot(cross(here, there), unit(add(end, start, -1.0))), dot(here, there)))
    return round(180.0 - turn, 9)


def _rise(normal: Point3, inward: Point3) -> float:
    """The cosine between a slope's way up and the way into it from an edge."""
    uphill = unit((-normal[0] * normal[2], -normal[1] * normal[2], 1 - normal[2] ** 2))
    return dot(uphill, inward)
