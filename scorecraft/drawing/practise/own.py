"""The exercises of the pattern's own hardest strokes."""

import math
from collections.abc import Sequence

import numpy as np
import shapely

from scorecraft.arrays import Line
from scorecraft.bench.blade import upright
from scorecraft.bench.steps import Pull, Step, Work
from scorecraft.bench.strokes import STRAIGHT_FROM
from scorecraft.curves import length, turned
from scorecraft.cuts import Layout
from scorecraft.drawing.practise.exercise import Exercise, Held, part_that_fits
from scorecraft.drawing.practise.hardest import Hard, hardest
from scorecraft.drawing.practise.words import KEEP_CLEAR, PART, TURN_SHEET, own_name
from scorecraft.groups import Group

BEYOND_MM = 5.0
"""Of a neighbour is drawn what is no more than this farther away than its nearest point."""


def own(
    layout: Layout, made: Work, numbered: Sequence[Group], width: float, height: float
) -> tuple[Exercise, ...]:
    """List the hardest strokes of a pattern, each as large as fits in a box (mm)."""
    groups = {cut: group for group in numbered for cut in group.cuts}
    return tuple(
        _exercise(layout, made, hard, groups[hard.cut], width, height)
        for hard in hardest(layout, made.order)
    )


def _exercise(
    layout: Layout, made: Work, hard: Hard, group: Group, width: float, height: float
) -> Exercise:
    line, *beside = lying(layout, made, [hard.cut, *hard.beside], hard.cut)
    stroke, others = shapely.LineString(line), [shapely.LineString(each) for each in beside]
    room = max((stroke.distance(each) + BEYOND_MM for each in others), default=0.0)
    at = 1 - hard.at if pull_of(made, hard.cut).backward else hard.at
    part = part_that_fits(line, at, width - 2 * room, height)
    held = held_of(layout, made, hard.cut)
    told = [" ".join(hard.why), held.words]
    if length(part) < length(line) - 0.2:
        told.insert(1, PART.format(part_mm=length(part), whole_mm=length(line)))
    if beside:
        told.insert(1, KEEP_CLEAR)
    if step_of(made, hard.cut).spin_rad:
        told.append(TURN_SHEET)
    near = tuple(piece for each in beside for piece in _near(each, part, room))
    name = own_name(group.number, group.key.replace("_", " "), group.count)
    return Exercise(name, tuple(told), held, (part,), ("",), near)


def _near(line: Line, part: Line, room: float) -> list[Line]:
    """Keep of a neighbour what lies within so much of the drawn part of a stroke (mm)."""
    around = shapely.buffer(shapely.LineString(part), room)
    kept = shapely.get_parts(shapely.intersection(shapely.LineString(line), around))
    return [shapely.get_coordinates(each) for each in kept if each.length > 0]


def pull_of(made: Work, cut: int) -> Pull:
    """Find how a cut is pulled at the bench."""
    return next(pull for step in made.steps for pull in step.pulls if pull.cut == cut)


def step_of(made: Work, cut: int) -> Step:
    """Find the step of the bench at which a cut is made."""
    return next(step for step in made.steps if any(pull.cut == cut for pull in step.pulls))


def lying(layout: Layout, made: Work, cuts: Sequence[int], aimed: int) -> tuple[Line, ...]:
    """Lay cuts out as they lie before the baker when one of them is `aimed` at.

    They are in the direction of the pull, at true length over the dough (mm), that one straight
    toward the baker if it has a direction.
    """
    scale = layout.lengths_mm[aimed] / length(layout.cuts[aimed].line)
    angle = _aim(layout, made, aimed)
    middle = layout.cuts[aimed].line.mean(axis=0)
    lines = (_pulled(layout, made, index) for index in cuts)
    return tuple(turned(line - middle, -angle) * scale for line in lines)


def _pulled(layout: Layout, made: Work, cut: int) -> Line:
    """Give the line of a cut in the direction of its pull."""
    return layout.cuts[cut].line[:: -1 if pull_of(made, cut).backward else 1]


def _aim(layout: Layout, made: Work, cut: int) -> float:
    """Give the angle by which the dough is turned so that a cut runs toward the baker."""
    line = _pulled(layout, made, cut)
    if np.hypot(*(line[-1] - line[0])) < STRAIGHT_FROM * length(line):
        return -step_of(made, cut).table_rad
    x, y = line[-1] - line[0]
    return -math.pi / 2 - math.atan2(y, x)


def held_of(layout: Layout, made: Work, cut: int) -> Held:
    """Tell how a cut is held, and to which side of the pull the handle leans."""
    pull = pull_of(made, cut)
    back = _aim(layout, made, cut) + step_of(made, cut).table_rad
    blade_rad = layout.cuts[cut].blade_rad
    right = upright(blade_rad) or math.cos(pull.lean_rad + back) >= 0
    return Held(pull.depths_mm, blade_rad, right)
