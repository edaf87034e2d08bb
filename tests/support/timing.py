"""Costs as ratios within one run, so that another program's work only makes a test try again.

Processor time leaves out the waiting, but not what shared caches cost: ways take turns, the least
of each counts, and while a claim does not hold the least of more turns is taken.
"""

import time
import timeit
from math import inf

TRIES = 8
TURNS = 2


def spent(job):
    """Give the processor time of one run of a job in seconds, garbage left lying."""
    return timeit.timeit(job, timer=time.process_time, number=1)


def settled(measure, holds):
    """Give the least of each cost `measure()` lists, measured anew while `holds(*least)` fails."""
    least = measure()
    for _ in range(TRIES - 1):
        if holds(*least):
            break
        least = [min(pair) for pair in zip(least, measure(), strict=True)]
    return least


def by_turns(*jobs, turns=TURNS, cost=spent):
    """Give the least cost of each job, done by turns."""
    least = [inf] * len(jobs)
    for _ in range(turns):
        least = [min(before, cost(job)) for before, job in zip(least, jobs, strict=True)]
    return least


def ratio(ours, theirs, most, *, tick=0.0, cost=spent):
    """Compare the cost of our job with theirs; `tick` s more for jobs that take next to none."""
    one, other = settled(
        lambda: by_turns(ours, theirs, cost=cost),
        lambda one, other: one + tick <= most * (other + tick),
    )
    return (one + tick) / (other + tick)
