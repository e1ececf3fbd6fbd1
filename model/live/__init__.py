"""A description on the page while it is being written: saved in any editor, the building turns to it.

Two processes: one watches the file and speaks to the page, without the kernel; the other raises, and is kept
warm. Loaded by `ribwright show --live` alone.
"""
