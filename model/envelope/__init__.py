"""The shell that steel and sheets follow: corners, faces, the edges between them. Pure numbers, no kernel.

`footprint` makes a shell of a description's sizes; from there on nobody knows which roof it is. A new roof
shape is a new list of corners and loops in `footprint`, and nothing else.
"""
