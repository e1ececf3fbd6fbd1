"""Folded trims along edges and around openings."""
