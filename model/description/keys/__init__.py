"""The keys of a description: one line each, and what a value may be."""
