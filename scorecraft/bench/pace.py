"""A hand's pace: what its skill makes of the times of a plan, and how far they may be off."""

from dataclasses import replace

from scorecraft.bench.clock import told_between
from scorecraft.bench.steps import Effort, Step, Work
from scorecraft.cuts import Skill
from scorecraft.practice import PACE_LEAST, PACE_MOST


def pace(skill: Skill) -> float:
    """Give a hand's usual time over that of a steady one."""
    return (PACE_LEAST[skill].value + PACE_MOST[skill].value) / 2


def between(seconds: float, skill: Skill) -> tuple[float, float]:
    """Give the least and the most of a time (s) that stands for a hand's usual one."""
    steady = seconds / pace(skill)
    return steady * PACE_LEAST[skill].value, steady * PACE_MOST[skill].value


def time_words(seconds: float, skill: Skill) -> str:
    """Write a hand's usual time (s) as the range it lies in: 10–12 min."""
    return told_between(*between(seconds, skill))


def paced(work: Work) -> Work:
    """Give a plan made for a steady hand the times of the hand at its bench."""
    times = pace(work.bench.skill)
    if times == 1:
        return work
    runs = tuple(
        replace(run, steps=tuple(_step(step, times) for step in run.steps)) for run in work.runs
    )
    return replace(
        work,
        runs=runs,
        effort=_effort(work.effort, times),
        in_file_order=_effort(work.in_file_order, times),
        times=times,
    )


def _step(step: Step, times: float) -> Step:
    pulls = tuple(replace(pull, seconds=times * pull.seconds) for pull in step.pulls)
    return replace(step, pulls=pulls, seconds=times * step.seconds)


def _effort(effort: Effort, times: float) -> Effort:
    return replace(effort, seconds=times * effort.seconds)
