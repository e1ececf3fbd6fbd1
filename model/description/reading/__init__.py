"""Text to values: where each key stands, what was wrong."""
