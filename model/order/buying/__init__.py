"""What to buy: items, cutting plans, prices."""
