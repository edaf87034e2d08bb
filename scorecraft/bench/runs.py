"""Steps that repeat exactly are told once, and steps alike together: rows of the bench card."""

import math
from collections.abc import Callable, Sequence
from dataclasses import replace
from itertools import pairwise

from scorecraft.bench.copies import Copies
from scorecraft.bench.steps import EVEN_RAD, LEVEL_TILT_DEG, Run, Step
from scorecraft.cuts import Layout
from scorecraft.practice import SAME_LEAN_DEG

STILL_RAD = 1e-6
MOST_KINDS = 3
"""Different figures cut at one setting are told in one step, up to so many kinds of cuts."""
FEW = 2
"""So few exact repeats are told together with other steps of the same sorts of cuts."""
MOST_TOGETHER = 6
"""Steps of the same sorts of cuts are told in one row, each with its picture, up to so many."""

Steps = list[Step]


def runs(layout: Layout, copies: Copies, steps: Sequence[Step]) -> tuple[Run, ...]:
    """Group the steps into runs, in order; numbers of steps and runs count from 1."""

    def repeats(before: Steps, after: Steps) -> bool:
        return _repeats(copies, before[0], after[0])

    groups = _grouped([[step] for step in steps], repeats)
    groups = _grouped(_joined(layout, groups), repeats)
    out: list[Run] = []
    count = 0
    for group, copied in _together(layout, groups):
        numbered = tuple(replace(step, number=count + k) for k, step in enumerate(group, start=1))
        out.append(Run(len(out) + 1, numbered, copied))
        count += len(group)
    return tuple(out)


def _grouped(groups: Sequence[Steps], goes_on: Callable[[Steps, Steps], bool]) -> list[Steps]:
    """Put groups that go on as the one before them into one with it."""
    out: list[Steps] = []
    for group in groups:
        if out and goes_on(out[-1], group):
            out[-1] = [*out[-1], *group]
        else:
            out.append(group)
    return out


def _repeats(copies: Copies, first: Step, step: Step) -> bool:
    """Whether a step is exactly another one after a turn of the table: cuts, depths and hold."""
    if step.stage != first.stage or step.spin_rad or first.spin_rad:
        return False
    if abs(step.turn_rad) < STILL_RAD or len(first.pulls) != len(step.pulls):
        return False
    one, other = ([(pull.cut, pull.backward) for pull in each.pulls] for each in (first, step))
    turn = step.table_rad - first.table_rad
    return copies.turn(one, other, turn, EVEN_RAD) is not None and _held_alike(first, step)


def _held_alike(first: Step, step: Step) -> bool:
    """Whether the handle leans alike, cut by cut."""
    most = math.radians(SAME_LEAN_DEG.value)
    for one, other in zip(first.pulls, step.pulls, strict=True):
        tilted = math.degrees(one.tilt_rad) >= LEVEL_TILT_DEG
        leans = tilted and math.cos(one.lean_rad - other.lean_rad) < math.cos(most)
        if leans or abs(one.tilt_rad - other.tilt_rad) > most:
            return False
    return True


def kinds(layout: Layout, step: Step) -> frozenset[tuple[int, str, float]]:
    """List the kinds of cuts a step makes: statement, part, depth."""
    cuts = (layout.cuts[pull.cut] for pull in step.pulls)
    return frozenset((cut.family, cut.part, round(cut.depth_mm, 1)) for cut in cuts)


def _joined(layout: Layout, groups: Sequence[Steps]) -> list[Steps]:
    """Join single steps between which the table stays as it is."""
    out: list[Steps] = []
    for group in groups:
        if out and _one_step(layout, out[-1], group):
            out[-1] = [_sum(out[-1][0], group[0])]
        else:
            out.append(group)
    return out


def _one_step(layout: Layout, before: Steps, after: Steps) -> bool:
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


def _together(layout: Layout, groups: Sequence[Steps]) -> list[tuple[Steps, bool]]:
    """Tell steps of the same sorts of cuts in one row, or in a few even ones where there are many.

    A row of exact repeats stays one (True), unless it is so short that it is part of a longer one.
    """
    out: list[list[Steps]] = []
    for group in groups:
        if out and _alike(layout, out[-1], group):
            out[-1].append(group)
        else:
            out.append([group])
    told: list[tuple[Steps, bool]] = []
    for same in out:
        if len(same) == 1:
            told.append((same[0], True))
            continue
        steps = [step for group in same for step in group]
        count = math.ceil(len(steps) / MOST_TOGETHER)
        ends = [round(k * len(steps) / count) for k in range(count + 1)]
        told += [(steps[a:b], b - a == 1) for a, b in pairwise(ends)]
    return told


def _alike(layout: Layout, before: Sequence[Steps], group: Steps) -> bool:
    """Whether a row is so short as those before it, of the same pass and sorts of cuts."""
    first, step = before[0][0], group[0]
    if any(len(each) > FEW for each in [*before, group]) or first.spin_rad or step.spin_rad:
        return False
    return first.stage == step.stage and _sorts(layout, first) == _sorts(layout, step)


def _sorts(layout: Layout, step: Step) -> frozenset[tuple[str, float, int]]:
    """List the sorts of cuts a step makes as they are told: name, depth, blade."""
    cuts = (layout.cuts[pull.cut] for pull in step.pulls)
    return frozenset(
        (cut.name, round(cut.depth_mm, 1), round(math.degrees(cut.blade_rad))) for cut in cuts
    )
