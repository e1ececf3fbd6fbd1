"""The price book: many buildings, each a row of keys over a base description, each a row of figures.

Text goes to whoever raises a building, plain values come back, so that processes of this machine and workers
of a cluster serve alike.
"""
