"""Schedule and order as tables, CSV, JSON, Markdown, spreadsheet."""
