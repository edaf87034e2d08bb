"""From a layout to the work at the bench: passes, settings, their order, the strokes of each."""

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import cast

import numpy as np

from scorecraft.arrays import Ints
from scorecraft.bench.blade import depths, handle
from scorecraft.bench.clock import (
    aim_seconds,
    allowed_seconds,
    mark_seconds,
    spin_seconds,
    turn_seconds,
)
from scorecraft.bench.copies import Copies
from scorecraft.bench.evening import evened
from scorecraft.bench.order import Route, best_route, given_route
from scorecraft.bench.pace import paced
from scorecraft.bench.runs import runs
from scorecraft.bench.settings import Setting, by_depth, settings, units_of
from scorecraft.bench.steering import changes, turned
from scorecraft.bench.steps import Effort, Pull, Stage, Step, Work
from scorecraft.bench.strings import strings_of
from scorecraft.bench.strokes import Strokes, backward, strokes, table_angles
from scorecraft.cuts import Bench, Cut, Hand, Layout
from scorecraft.errors import UsageError
from scorecraft.frozen import dataclass, replace
from scorecraft.opening.lip import rising_side
from scorecraft.practice import CHANGE_DEPTH_S, LEAST_TURN_DEG, NEXT_FIGURE_S

Stop = tuple[Stage, Setting, int]
"""A stage, a setting, and the choice taken of its angles."""


def work_of(layout: Layout, hand: str | None = None) -> Work:
    """Plan the work at the bench: light cuts before deep ones, unless the pattern says otherwise.

    The file's own order is kept where it is the quicker one by the clock.
    `hand` (right or left) stands in for the pattern's own. Raises UsageError for another hand.
    """
    bench = _bench(layout.bench, hand)
    return paced(_planned(layout, bench) if layout.cuts else _empty(layout, bench))


def _bench(own: Bench, hand: str | None) -> Bench:
    """Give the bench of the pattern, or that of another hand; raises UsageError for none."""
    if hand is None:
        return own
    if hand not in ("right", "left"):
        raise UsageError(f'the hand is right or left, not "{hand}"')
    return replace(own, hand=cast(Hand, hand))


def _planned(layout: Layout, bench: Bench) -> Work:
    """Plan the cuts of a layout for a steady hand."""
    marks = strings_of(layout.marks.lines).count
    job = _Job(layout, strokes(layout), Copies(layout), bench, marks)
    passes = _stages(layout)
    stages = [stage for stage, _ in passes]
    units = [units_of(layout, job.strokes, cuts, bench.way) for _, cuts in passes]
    filed = [settings(layout, own, bench.way, shared=False) for own in units]
    listed = _tried(job, stages, filed, given_route(filed, bench.way))
    best = listed
    if bench.order == "planned":
        shared = [settings(layout, own, bench.way) for own in units]
        found = _tried(job, stages, shared, best_route(shared, bench.way))
        if found.effort.seconds <= listed.effort.seconds + 1e-6:
            best = found
    return Work(
        bench=bench,
        dough=layout.dough,
        marks=marks,
        runs=runs(layout, job.copies, best.steps),
        effort=best.effort,
        in_file_order=listed.effort,
        allowed_s=allowed_seconds(layout.dough),
        route=best.route,
    )


@dataclass(frozen=True, slots=True)
class _Job:
    """What is to be cut, and at which bench."""

    layout: Layout
    strokes: Strokes
    copies: Copies
    bench: Bench
    marks: int


@dataclass(frozen=True, slots=True)
class _Tried:
    """A route, its steps, and what they take."""

    route: Route
    steps: list[Step]
    effort: Effort


def _tried(
    job: _Job, stages: Sequence[Stage], offered: Sequence[Sequence[Setting]], route: Route
) -> _Tried:
    steps = _steps(job, _stops(stages, offered, route))
    return _Tried(route, steps, _effort(job, steps))


def _empty(layout: Layout, bench: Bench) -> Work:
    marks, allowed = strings_of(layout.marks.lines).count, allowed_seconds(layout.dough)
    effort = Effort(mark_seconds(marks), 0.0)
    return Work(bench, layout.dough, marks, (), effort, effort, allowed, Route((), 0.0, float))


def _stages(layout: Layout) -> list[tuple[Stage, list[int]]]:
    """Part the cuts into passes: all in one where the pattern keeps its own order."""
    everything = list(range(len(layout.cuts)))
    if layout.bench.order == "file":
        return [("all", everything)]
    light = [index for index in everything if layout.cuts[index].kind == "decorative"]
    deep = [index for index in everything if layout.cuts[index].kind == "expansion"]
    passes: list[tuple[Stage, list[int]]] = [("light", light), ("deep", deep)]
    return [(stage, cuts) for stage, cuts in passes if cuts]


def _stops(
    stages: Sequence[Stage], kept: Sequence[Sequence[Setting]], route: Route
) -> list[list[Stop]]:
    """List the stops of a route; neighbours of one statement at one angle become one stop."""
    out: list[list[Stop]] = []
    for stage, offered, states in zip(stages, kept, route.passes, strict=True):
        for index, choice in states:
            stop = (stage, offered[index], choice)
            if out and _together(out[-1][-1], stop):
                out[-1].append(stop)
            else:
                out.append([stop])
    return out


def _together(a: Stop, b: Stop) -> bool:
    same_angle = abs(a[1].choices[a[2]] - b[1].choices[b[2]]) < 1e-9
    still = not a[1].spin_rad and not b[1].spin_rad
    return a[0] == b[0] and same_angle and still and a[1].families == b[1].families


def _steps(job: _Job, stops: Sequence[Sequence[Stop]]) -> list[Step]:
    out: list[Step] = []
    at = 0.0
    cuts = [_cuts(job.layout, group) for group in stops]
    tables = _tables(job, stops, cuts)
    for number, (group, own, table) in enumerate(zip(stops, cuts, tables, strict=True), start=1):
        stage, setting, _ = group[0]
        turn = float(turned(np.array(at), np.array(table), job.bench.way))
        pulls = _pulls(job, own, table)
        out.append(_step(job.layout, number, stage, pulls, setting, table, turn))
        at = table + setting.spin_rad
    return out


def _cuts(layout: Layout, group: Sequence[Stop]) -> tuple[int, ...]:
    """List the cuts of settings that are made as one."""
    return by_depth(layout, [index for _, setting, _ in group for index in setting.cuts])


def _tables(
    job: _Job, stops: Sequence[Sequence[Stop]], cuts: Sequence[Sequence[int]]
) -> list[float]:
    """Find how the table stands at each stop: copies exactly, and small turns are not made."""
    settings = [group[0][1] for group in stops]
    chosen = [float(group[0][1].choices[group[0][2]]) for group in stops]
    spins = [each.spin_rad for each in settings]
    step = math.tau / len(table_angles(len(job.copies.kinds), job.bench.way))
    at, out = 0.0, []
    for table, spin in zip(evened(job.copies, cuts, chosen, spins, step), spins, strict=True):
        turn = float(turned(np.array(at), np.array(table), job.bench.way))
        out.append(at if abs(turn) < math.radians(LEAST_TURN_DEG.value) else table)
        at = out[-1] + spin
    return out


def _step(
    layout: Layout,
    number: int,
    stage: Stage,
    pulls: tuple[Pull, ...],
    setting: Setting,
    table: float,
    turn: float,
) -> Step:
    cuts = [layout.cuts[pull.cut] for pull in pulls]
    seconds = sum(pull.seconds for pull in pulls) + float(turn_seconds(np.array(turn)))
    seconds += aim_seconds(len(pulls)) + spin_seconds(setting.spin_rad)
    seconds += CHANGE_DEPTH_S.value * changes([(cut.depth_mm, cut.blade_rad) for cut in cuts])
    figures = tuple(dict.fromkeys(cut.figure for cut in cuts))
    families = setting.families
    spin = setting.spin_rad
    return Step(number, stage, pulls, families, figures, table, turn, spin, seconds)


def _pulls(job: _Job, cuts: Sequence[int], table: float) -> tuple[Pull, ...]:
    """Turn the cuts of a setting into pulls, like cuts from the far hand's side to the hand's."""
    layout, made, bench = job.layout, job.strokes, job.bench
    rows = np.asarray(cuts, dtype=np.intp)
    against = backward(made, rows, bench, table)
    if made.spun[rows].any():
        # the dough must come to the blade: against the way the table turns
        against = np.asarray(made.winding[rows] * bench.way < 0)
    tangent = np.where(against[:, None], -1.0, 1.0) * made.tangent[rows]
    blade = np.array([layout.cuts[index].blade_rad for index in cuts])
    lifts = np.array([rising_side(layout.cuts[index], bench.way) for index in cuts])
    side = np.where(against, lifts, -lifts)
    tilt, lean = handle(made.normal[rows], tangent, blade, side, table)
    order = _across(job, rows, table)
    return tuple(
        Pull(
            cut=int(rows[k]),
            backward=bool(against[k]),
            depths_mm=depths(layout.cuts[rows[k]]),
            tilt_rad=float(tilt[k]),
            lean_rad=float(lean[k]),
            seconds=float(made.seconds[rows[k]]),
        )
        for k in order
    )


def _across(job: _Job, rows: Ints, table: float) -> list[int]:
    """Order like cuts so that the hand does not pass over what is cut, the far ones first."""
    middle = job.strokes.middle[rows]
    theta = np.arctan2(middle[:, 1], middle[:, 0]) - table
    away = np.hypot(*middle.T)
    x, y = job.bench.way * away * np.cos(theta), away * np.sin(theta)
    alike = [_alike(job.layout.cuts[index]) for index in rows]
    rank = {each: k for k, each in enumerate(dict.fromkeys(alike))}
    keys = [(rank[each], round(float(x[k]), 1), -float(y[k]), k) for k, each in enumerate(alike)]
    return [key[-1] for key in sorted(keys)]


def _alike(cut: Cut) -> tuple[int, str, float]:
    """Say which cuts are made one after the other; what parts the dough has no depth to set."""
    return cut.family, cut.part, 0.0 if cut.severs else cut.depth_mm


def _effort(job: _Job, steps: Sequence[Step]) -> Effort:
    """Sum up what steps take, with the changes and looks at the card between them."""
    layout, seconds = job.layout, mark_seconds(job.marks) + sum(step.seconds for step in steps)
    for before, after in pairwise(steps):
        ends = [layout.cuts[step.pulls[end].cut] for step, end in ((before, -1), (after, 0))]
        seconds += CHANGE_DEPTH_S.value * changes([(cut.depth_mm, cut.blade_rad) for cut in ends])
        seconds += NEXT_FIGURE_S.value * (not before.families & after.families)
    return Effort(seconds, float(sum(abs(step.turn_rad) for step in steps)))
