"""Steps alike, one after the other, are told once: "8 times, turn 45 degrees each"."""

import math
from collections.abc import Sequence
from dataclasses import replace

from scorecraft.bench.steps import Run, Step
from scorecraft.cuts import Layout

ALIKE_TURN_RAD = math.radians(12.0)
"""Turns that differ by less than this are told as one angle."""
STILL_RAD = 1e-6
MOST_KINDS = 3
"""Different figures cut at one setting are told in one step, up to so many kinds of cuts."""

Kinds = frozenset[tuple[int, str, float]]
"""Which parts of which statements, and how deep."""


def runs(layout: Layout, steps: Sequence[Step]) -> tuple[Run, ...]:
    """Group the steps into runs, in order; numbers of steps and runs count from 1."""
    groups: list[list[Step]] = []
    for step in steps:
        if groups and _goes_on(layout, groups[-1], step):
            groups[-1].append(step)
        else:
            groups.append([step])
    numbered: list[list[Step]] = []
    count = 0
    for group in _joined(layout, groups):
        numbered.append([replace(step, number=count + k) for k, step in enumerate(group, start=1)])
        count += len(group)
    return tuple(
        Run(number, tuple(group), _turn_each(group))
        for number, group in enumerate(numbered, start=1)
    )


def _turn_each(group: Sequence[Step]) -> float:
    """Mean turn between the steps of a run; 0 for a single one."""
    turns = [step.turn_rad for step in group[1:]]
    return sum(turns) / len(turns) if turns else 0.0


def _goes_on(layout: Layout, group: Sequence[Step], step: Step) -> bool:
    """Whether a step does the same again at the same turn as those before."""
    first = group[0]
    if step.stage != first.stage or step.spin_rad or first.spin_rad:
        return False
    if kinds(layout, first) != kinds(layout, step) or abs(step.turn_rad) < STILL_RAD:
        return False
    return len(group) == 1 or abs(step.turn_rad - _turn_each(group)) < ALIKE_TURN_RAD


def kinds(layout: Layout, step: Step) -> Kinds:
    """List the kinds of cuts a step makes."""
    cuts = (layout.cuts[pull.cut] for pull in step.pulls)
    return frozenset((cut.family, cut.part, round(cut.depth_mm, 1)) for cut in cuts)


def _joined(layout: Layout, groups: Sequence[list[Step]]) -> list[list[Step]]:
    """Join single steps between which the table stays as it is."""
    out: list[list[Step]] = []
    for group in groups:
        if out and _one_step(layout, out[-1], group):
            out[-1] = [_sum(out[-1][0], group[0])]
        else:
            out.append(group)
    return out


def _one_step(layout: Layout, before: Sequence[Step], after: Sequence[Step]) -> bool:
    first, second = before[0], after[0]
    single = len(before) == len(after) == 1 and first.stage == second.stage
    still = not (first.spin_rad or second.spin_rad) and abs(second.turn_rad) < STILL_RAD
    few = len(kinds(layout, first) | kinds(layout, second)) <= MOST_KINDS
    return single and still and few


def _sum(first: Step, second: Step) -> Step:
    """Do two steps in one."""
    return replace(
        first,
        pulls=first.pulls + second.pulls,
        families=first.families | second.families,
        figures=tuple(dict.fromkeys(first.figures + second.figures)),
        seconds=first.seconds + second.seconds,
    )
