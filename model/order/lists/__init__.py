"""The schedule: one row a mark."""
