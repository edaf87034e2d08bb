"""A few workers, so shared out that runaway requests cannot stop the quick ones."""

import multiprocessing
import os
import threading
import time
from collections.abc import Callable
from dataclasses import dataclass

from scorecraft.errors import ScorecraftError
from scorecraft.web import telling as say
from scorecraft.web.answer import Answer
from scorecraft.web.worker import Task, TooBusyError, Worker, hired

WAIT_S = 20.0
"""So long a request waits for a worker to be free."""
QUICK_S = 1.5
"""Work that takes longer is long work: it makes room for quick work, and ends when unwanted."""
KEPT_FREE = 2
"""So many workers are kept from long work: one for quick work, and one while that is replaced."""
LOOK_S = 0.05
"""So often a request that waits looks whether it is still wanted."""
MOST_WAITING = 8
"""So many requests may wait for their turn at long work."""
MOST_LASTING = 64
"""So many tasks are remembered that took long."""
ONE_THREAD = ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS")
"""What keeps a worker's linear algebra to one thread, unless the environment says otherwise."""


class TooLongError(ScorecraftError):
    """Work that took longer than it may."""


class UnwantedError(ScorecraftError):
    """Nobody waits for the answer any more."""


@dataclass(slots=True)
class Job:
    """A piece of work: what it is about, how long it may take, and whether it is still wanted.

    While it is `long` it counts among the long ones.
    """

    task: str
    request: dict[str, object]
    about: object
    seconds: float
    wanted: Callable[[], bool]
    long: bool


def always() -> bool:
    """Want an answer in any case."""
    return True


class Crew:
    """A few workers; `do` gives a piece of work to a free one and waits for its answer.

    Long work never takes the last workers, so that a quick edit always finds one.
    """

    def __init__(self, work: Task, count: int, *, quick_s: float = QUICK_S) -> None:
        for name in ONE_THREAD:  # threads that wait busily would take the other workers' turns
            os.environ.setdefault(name, "1")
        self.context = multiprocessing.get_context("spawn")
        self.work = work
        self.quick_s = quick_s
        self.changed = threading.Condition()
        self.open = True
        self.longs, self.most_longs = 0, max(1, count - KEPT_FREE)
        self.waiting = 0
        self.lasting: dict[object, None] = {}
        self.hands = [hired(self.context, work) for _ in range(count)]
        self.free = list(self.hands)

    def do(
        self, task: str, request: dict[str, object], *, about: object, seconds: float,
        quick: bool = True, wanted: Callable[[], bool] = always,
    ) -> Answer:  # fmt: skip
        """Have a task done; `about` is what it is about: who did the same before is preferred.

        Raises TooBusyError where nobody is free in time, TooLongError where the work takes
        longer than `seconds`, UnwantedError once `wanted` says no; a worker that is stopped is
        replaced. What is not `quick`, or has shown not to be, waits for its turn at long work.
        """
        known = (task, about) in self.lasting
        job = Job(task, request, about, seconds, wanted, long=not quick or known)
        answer = self.attempt(job)
        if answer is None:
            job.long = True
            answer = self.attempt(job)
            assert answer is not None
        return answer

    def attempt(self, job: Job) -> Answer | None:
        """Have a worker do a job; None if it has to make room for quick ones.

        Raises TooLongError where the worker dies or takes too long, UnwantedError where nobody
        waits.
        """
        worker = self.taken(job)
        answer = None
        try:
            worker.start()
            worker.line.send((job.task, job.request))
            if self.has_come(worker, job):
                answer = worker.line.recv()
            return answer
        except (EOFError, OSError) as error:
            raise say.ENDED.as_error(TooLongError) from error
        finally:
            self.give_back(worker, job, done=answer is not None)

    def has_come(self, worker: Worker, job: Job) -> bool:
        """Wait for an answer; False if the job has to make room for quick ones.

        Raises TooLongError after its time, UnwantedError where nobody waits.
        """
        begun = time.monotonic()
        while not worker.line.poll(LOOK_S):
            taken = time.monotonic() - begun
            if taken > job.seconds:
                self.remember(job)
                raise say.TOO_LONG(seconds=job.seconds).as_error(TooLongError)
            if taken > self.quick_s:  # what is quick is finished: a new worker would cost more
                if not job.wanted():
                    raise say.UNWANTED.as_error(UnwantedError)
                if not job.long and not self.lets_it_last(job):
                    self.remember(job)
                    return False
        return True

    def lets_it_last(self, job: Job) -> bool:
        """Count a job among the long ones if there is room; else let it last if one is free yet."""
        with self.changed:
            job.long = self.longs < self.most_longs
            self.longs += job.long
            return job.long or bool(self.free)

    def remember(self, job: Job) -> None:
        """Remember a job as one that takes long."""
        with self.changed:
            self.lasting[job.task, job.about] = None
            if len(self.lasting) > MOST_LASTING:
                del self.lasting[next(iter(self.lasting))]

    def taken(self, job: Job) -> Worker:
        """Take a free worker, if there is one the one that knows the subject.

        Raises TooBusyError where too many wait.
        """
        with self.changed:
            if job.long and self.waiting >= MOST_WAITING:
                raise say.BUSY.as_error(TooBusyError)
            self.waiting += job.long
            try:
                self.wait_for_turn(job)
            finally:
                self.waiting -= job.long
            self.longs += job.long
            knowing = [worker for worker in self.free if worker.last == job.about]
            worker = (knowing or self.free)[-1]
            self.free.remove(worker)
        worker.last = job.about
        return worker

    def wait_for_turn(self, job: Job) -> None:
        """Wait until a worker may be taken for a job.

        Raises TooBusyError after its time, UnwantedError where nobody waits.
        """
        until = time.monotonic() + WAIT_S
        while self.open and not (self.free and (not job.long or self.longs < self.most_longs)):
            if not job.wanted():
                raise say.UNWANTED.as_error(UnwantedError)
            if time.monotonic() > until:
                raise say.BUSY.as_error(TooBusyError)
            self.changed.wait(LOOK_S)
        if not self.open:
            raise say.CLOSING.as_error(TooBusyError)

    def give_back(self, worker: Worker, job: Job, *, done: bool) -> None:
        """Put a worker back, or a new one where it has not come to the end of its work."""
        if not done:
            worker.stop()
            worker.line.close()
        with self.changed:
            self.longs -= job.long
            if self.open and done:
                self.free.append(worker)
            elif self.open:
                self.hands.remove(worker)
                new = hired(self.context, self.work)
                self.hands.append(new)
                self.free.insert(0, new)  # it comes last
            self.changed.notify_all()

    def close(self) -> None:
        """End all workers, also those at work."""
        with self.changed:
            self.open = False
            self.free.clear()
            self.changed.notify_all()
        for worker in self.hands:
            worker.stop()
