"""Catalogues: CSV rows with their source, read when first asked for. Adding a row is all it takes."""
