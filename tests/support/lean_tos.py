"""A shed of 18 x 20 ft that lean-tos are set beside."""

SHED = """
width = "18 ft"
length = "20 ft"
eave_height = "12 ft"
pitch = "4/12"
[[lean_to]]
wall = "left"
width = "9 ft"
pitch = "2/12"
eave_height = "8 ft"
"""
"""With an open one along its left wall."""
