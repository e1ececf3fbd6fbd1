"""Ribbed sheets and the closures cut to their ribs."""
