"""Frames, framing lines, openings' frames and the slab."""
