"""Papers: what a crew puts this very building up by, drawn from the solids of its model."""
