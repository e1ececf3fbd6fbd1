"""Where every screw stands."""
