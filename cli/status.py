"""The exit statuses of the command."""

DONE = 0
FINDINGS = 1  # the building was raised, or can be, but something about it wants mending
WRONG_INPUT = 2  # nothing was written
STOPPED = 130  # by the person; the number shells give for it
