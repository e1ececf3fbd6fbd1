"""What to order, off a Model alone: `schedule` makes it, `table`, `csv`, `json`, `markdown` write it."""
