"""Worker processes that do the heavy work, so that one runaway request cannot stop the others."""

import multiprocessing
import os
import signal
import threading
from collections.abc import Callable
from dataclasses import dataclass
from multiprocessing.connection import Connection
from multiprocessing.process import BaseProcess
from typing import Any

from scorecraft.errors import ScorecraftError
from scorecraft.web.answer import Answer

WAIT_S = 20.0
"""So long a request waits for a worker to be free."""
START_S = 30.0
"""So long a new worker may take to come up."""
ONE_THREAD = ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS")
"""What keeps a worker's linear algebra to one thread, unless the environment says otherwise."""


class TooLongError(ScorecraftError):
    """Work that took longer than it may."""


class TooBusyError(ScorecraftError):
    """No worker became free in time."""


Work = Callable[[str, dict[str, Any]], Answer]


@dataclass(slots=True)
class Worker:
    """A process that does one piece of work at a time, and the line to it."""

    process: BaseProcess
    line: Connection
    last: object = None
    """What it worked on last: it may still know much about it."""
    started: bool = False

    def start(self) -> None:
        """Wait until it has come up, which does not count as time of its work."""
        if not self.started:
            if not self.line.poll(START_S):
                raise TooBusyError("a worker did not start", None, "wait a little and try again")
            self.line.recv()
            self.started = True

    def stop(self) -> None:
        """End the process."""
        self.line.close()
        self.process.kill()
        self.process.join()


class Crew:
    """A few workers; `do` gives a piece of work to a free one and waits for its answer."""

    def __init__(self, work: Work, count: int) -> None:
        for name in ONE_THREAD:  # threads that wait busily would take the other workers' turns
            os.environ.setdefault(name, "1")
        self.context = multiprocessing.get_context("spawn")
        self.work = work
        self.free: list[Worker] = []
        self.changed = threading.Condition()
        self.open = True
        for _ in range(count):
            self.free.append(self.hired())

    def hired(self) -> Worker:
        """Start a worker."""
        ours, theirs = self.context.Pipe()
        process = self.context.Process(target=attend, args=(theirs, self.work), daemon=True)
        process.start()
        theirs.close()
        return Worker(process, ours)

    def do(self, task: str, request: dict[str, Any], *, about: object, seconds: float) -> Answer:
        """Have a task done; `about` is what it is about: who did the same before is preferred.

        Raises TooBusyError where nobody is free in time, TooLongError where the work takes
        longer than `seconds`; the worker is then replaced.
        """
        worker = self.taken(about)
        done = False
        try:
            worker.start()
            worker.line.send((task, request))
            if not worker.line.poll(seconds):
                message = f"this took longer than {seconds:g} s and was stopped"
                hint = "make the pattern simpler: fewer copies, fewer or larger fills"
                raise TooLongError(message, None, hint)
            answer: Answer = worker.line.recv()
            done = True
            return answer
        except (EOFError, OSError) as error:
            raise TooLongError("the work came to a sudden end", None, "try once more") from error
        finally:
            self.give_back(worker, done)

    def taken(self, about: object) -> Worker:
        """Take a free worker, if there is one the one that knows the subject."""
        with self.changed:
            if not self.changed.wait_for(lambda: self.free or not self.open, WAIT_S):
                raise TooBusyError("the server is busy", None, "wait a little and try again")
            if not self.open:
                raise TooBusyError("the server is closing")
            knowing = [worker for worker in self.free if worker.last == about]
            worker = (knowing or self.free)[-1]
            self.free.remove(worker)
        worker.last = about
        return worker

    def give_back(self, worker: Worker, done: bool) -> None:
        """Put a worker back, or a new one where it has not come to the end of its work."""
        if not done:
            worker.stop()
            worker = self.hired()
        with self.changed:
            self.free.insert(len(self.free) if done else 0, worker)  # a new one comes last
            self.changed.notify()

    def close(self) -> None:
        """End all free workers; the others end with the server, whose line they hold."""
        with self.changed:
            self.open = False
            for worker in self.free:
                worker.stop()
            self.free.clear()
            self.changed.notify_all()


def attend(line: Connection, work: Work) -> None:
    """Work until the line is closed: what a worker process does."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    line.send("started")
    while True:
        try:
            task, request = line.recv()
        except (EOFError, OSError):
            return
        line.send(work(task, request))
