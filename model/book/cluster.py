"""Rows made by the workers of a cluster: text goes out, plain values come back.

Where a worker is lost, the cluster gives its rows to others; a worker that comes later is warmed as it comes.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import islice

from distributed import Client, Future, WorkerPlugin, as_completed

from ..errors import FileError
from .entry import entry
from .task import FAILED, Entry, Task
from .warm import warm

RETRIES = 3
AHEAD = 4
"""Rows that wait at the cluster for each of its threads: enough to keep it busy, few enough to be held."""
WAIT = 20
"""Seconds for a scheduler to answer."""


class Warm(WorkerPlugin):
    """Loads, in every worker, all that rows need, before the first one comes."""

    def setup(self, worker: object) -> None:
        """Called by a worker when it begins, or when it is told of this."""
        warm()


def clustered(scheduler: str, tasks: Iterable[Task]) -> Iterator[tuple[Task, Entry]]:
    """Each task with its entry, in the order in which they are done.

    scheduler: its address. Raises FileError where none answers there, or it has no workers.
    """
    try:
        client = Client(scheduler, timeout=WAIT, set_as_default=False)
    except (OSError, ValueError, TimeoutError) as error:
        raise FileError(f"{scheduler}: no scheduler answers: {error}") from None
    with client:
        client.register_plugin(Warm())
        threads = sum(client.nthreads().values())
        if not threads:
            raise FileError(f"{scheduler}: has no workers")
        waiting = iter(tasks)
        begun = {_submitted(client, task): task for task in islice(waiting, AHEAD * threads)}
        done = as_completed(list(begun), loop=client.loop)
        while begun:
            future = next(done)
            task = begun.pop(future)
            try:
                made = future.result()
            except Exception as error:  # what rows raise is in their entries: this is the cluster's
                made = Entry(FAILED, f"the cluster gave it up: {type(error).__name__}")
            yield task, made
            for more in islice(waiting, 1):
                begun[future := _submitted(client, more)] = more
                done.add(future)


def _submitted(client: Client, task: Task) -> Future[Entry]:
    """A row given to the cluster; equal ones are not taken for one, and a lost one is begun again."""
    return client.submit(entry, task, pure=False, retries=RETRIES)
