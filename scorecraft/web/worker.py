"""A worker: a process that does one piece of work at a time and ends with its server."""

import multiprocessing
import os
import signal
import sys
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from multiprocessing import resource_tracker
from multiprocessing.connection import Connection
from multiprocessing.context import SpawnContext
from multiprocessing.process import BaseProcess

from scorecraft.errors import ScorecraftError
from scorecraft.web import telling as say
from scorecraft.web.answer import Answer

START_S = 30.0
"""So long a new worker may take to come up."""

Task = Callable[[str, dict[str, object]], Answer]


class TooBusyError(ScorecraftError):
    """No worker became free in time."""


@dataclass(slots=True, eq=False)
class Worker:
    """A process and the line to it."""

    process: BaseProcess
    line: Connection
    last: object = None
    """What it worked on last: it may still know much about it."""
    started: bool = False

    def start(self) -> None:
        """Wait until it has come up, which does not count as time of its work.

        Raises TooBusyError where it does not come up.
        """
        if not self.started:
            if not self.line.poll(START_S):
                raise say.NOT_STARTED.as_error(TooBusyError)
            self.line.recv()
            self.started = True

    def stop(self) -> None:
        """End the process, whatever it does."""
        self.process.kill()
        self.process.join()


def hired(context: SpawnContext, work: Task) -> Worker:
    """Start a worker."""
    ours, theirs = context.Pipe()
    process = context.Process(target=attend, args=(theirs, work), daemon=True)
    with interrupts_held():
        process.start()
    theirs.close()
    return Worker(process, ours)


@contextmanager
def interrupts_held() -> Iterator[None]:
    """Keep Ctrl-C from what is started meanwhile: a terminal sends it to all of its processes."""
    if sys.platform == "win32":
        yield
        return
    resource_tracker.ensure_running()  # its own start would let Ctrl-C through again
    before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)


def attend(line: Connection, work: Task) -> None:
    """Work until the line is closed: what a worker process does."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    threading.Thread(target=end_with_server, daemon=True).start()
    line.send("started")
    while True:
        try:
            task, request = line.recv()
        except (EOFError, OSError):
            return
        line.send(work(task, request))


def end_with_server() -> None:
    """End this process once its server has gone, however that came about."""
    server = multiprocessing.parent_process()
    assert server is not None
    server.join()
    os._exit(1)
