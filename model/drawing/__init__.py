"""Drawings as plain values: lines, texts, dimensions, views to scale on pages. No file format."""
