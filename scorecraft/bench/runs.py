"""Steps alike, one after the other, are told once: "8 times, turn 45 degrees each"."""

import math
from collections.abc import Sequence

from scorecraft.bench.steps import Run, Step
from scorecraft.cuts import Layout

ALIKE_TURN_RAD = math.radians(12.0)
"""Turns that differ by less than this are told as one angle."""


def runs(layout: Layout, steps: Sequence[Step]) -> tuple[Run, ...]:
    """Group the steps into runs, in order."""
    groups: list[list[Step]] = []
    for step in steps:
        if groups and _goes_on(layout, groups[-1], step):
            groups[-1].append(step)
        else:
            groups.append([step])
    return tuple(
        Run(number, tuple(group), _turn_each(group)) for number, group in enumerate(groups, start=1)
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
    if _what(layout, first) != _what(layout, step) or abs(step.turn_rad) < 1e-6:
        return False
    return len(group) == 1 or abs(step.turn_rad - _turn_each(group)) < ALIKE_TURN_RAD


def _what(layout: Layout, step: Step) -> frozenset[tuple[int, str, float]]:
    """List what a step cuts: which parts of which statements, how deep."""
    cuts = (layout.cuts[pull.cut] for pull in step.pulls)
    return frozenset((cut.family, cut.part, round(cut.depth_mm, 1)) for cut in cuts)
