"""Turning what is selected: by its own `turn`, or by that of a place around it."""

import math

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.editing.blocks import wrapped
from scorecraft.editing.moving import back, needed, placed_by, round_keys
from scorecraft.editing.numbers import rounded, written
from scorecraft.editing.scene import Scene, draws
from scorecraft.editing.slots import Slot, Way, slot
from scorecraft.editing.written import Edit
from scorecraft.expand.frame import Frame
from scorecraft.expand.traced import Step
from scorecraft.language.words import WORDS

TURNS = {"at": "turn", "row": "angle", "grid": "turn", "wedges": "turn", "mirror": "angle"}
"""The keys that turn a placing."""


def turning(scene: Scene, step: Step) -> tuple[Slot, ...]:
    """Find the numbers that turn a run; none where it has to be given a place to turn in."""
    statement = step.statement
    if (word := WORDS.get(statement.word)) is not None and word.group == "motif":
        return (needed(slot(scene, step, "turn")),)
    if statement.word == "around":
        return tuple(needed(slot(scene, step, key)) for key in round_keys(statement))
    if key := TURNS.get(statement.word):
        return (needed(slot(scene, step, key)),)
    place = placed_by(scene, step) if draws(statement) else None
    if place is not None and place.statement.word == "at":
        return (needed(slot(scene, place, "turn")),)
    return ()


def turned(scene: Scene, step: Step, clockwise_rad: float, way: Way = "") -> list[Edit]:
    """Turn a run clockwise as it is seen on the sheet (radians).

    Raises LockedError where its direction is worked out.
    """
    by = -clockwise_rad if np.linalg.det(step.scope.frame.axes) < 0 else clockwise_rad
    slots = turning(scene, step)
    if not slots:
        said = written(rounded(math.degrees(by), "deg"), "deg")
        return wrapped(scene.written, step.statement, [f"at turn {said}"])
    free = [each.freed(way) for each in slots]
    return [edit for each in free for edit in each.turned(each.value + by)[0]]


def between(about: Floats, taken: Floats, let_go: Floats) -> float:
    """Measure the clockwise angle (radians) from one sheet point to another about a third."""
    first, second = (math.atan2(*(point - about)[::-1]) for point in (taken, let_go))
    return math.remainder(first - second, math.tau)


def swept(frame: Frame, taken: Floats, let_go: Floats) -> float:
    """Measure the clockwise angle between two sheet points about a frame, as the frame sees it."""
    first, second = (back(frame, point - frame.origin) for point in (taken, let_go))
    return math.remainder(math.atan2(*second) - math.atan2(*first), math.tau)
