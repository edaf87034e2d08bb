"""Copies: repeat about the middle, mirror, and duplicate."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace

import numpy as np

from scorecraft.editing import telling as say
from scorecraft.editing.blocks import added, unwrapped, wrapped
from scorecraft.editing.moving import at_place, back, needed, placed_by, values_of
from scorecraft.editing.numbers import rounded
from scorecraft.editing.scene import Scene
from scorecraft.editing.slots import LockedError, Way, slot
from scorecraft.editing.written import Edit
from scorecraft.expand.placing import angle_of
from scorecraft.expand.traced import Step
from scorecraft.language.tree import Argument, Measure, Statement
from scorecraft.language.words import ATTRIBUTES
from scorecraft.units import plain

ASIDE_MM = 10.0
"""A duplicate lies so far to the right of what it was made from, and so far toward the baker."""
COUNTED = ("around", "row", "repeat", "wedges")


def copier(step: Step, words: Sequence[str]) -> Step | None:
    """Find the nearest placing of some words that copies a run, and nothing beside it."""
    if step.statement.word in words:
        return step
    around = outermost_at(step).around
    alone = around is not None and len(around.statement.body) == 1
    return around if alone and around is not None and around.statement.word in words else None


def outermost_at(step: Step) -> Step:
    """Find the outermost of the places that hold nothing but a run."""
    while (around := step.around) is not None and around.statement.word == "at":
        if len(around.statement.body) != 1:
            break
        step = around
    return step


def repeated(scene: Scene, step: Step, count: int, way: Way = "") -> list[Edit]:
    """Have a run so many times about the middle; with one copy left its block is taken away.

    Raises LockedError where the count is worked out, or its knob ends before.
    """
    found = copier(step, COUNTED)
    if found is None:
        if count == 1:
            return []
        return wrapped(scene.written, outermost_at(step).statement, [f"around {count}"])
    number = needed(slot(scene, found, "count"))
    if count == 1 and found.statement.word == "around":
        return single(scene, found)
    edits, made = number.freed(way).turned(float(count))
    if round(made) != count:
        raise LockedError(number, say.KNOB_ENDS(name=number.name, value=plain(made)), ("own",))
    return edits


def single(scene: Scene, found: Step) -> list[Edit]:
    """Leave the first copy of an `around` where it stands."""
    angle = angle_of(values_of(found), 0)
    names = {"radius": "radius", "facing": "facing"}
    if abs(math.remainder(angle, math.tau)) > 1e-9:
        names["from"] = "angle"
    return turned_into_at(scene, found.statement, names)


def mirrored(scene: Scene, step: Step) -> list[Edit]:
    """Mirror a run, or take its mirror away."""
    found = copier(step, ("mirror",))
    if found is None:
        return wrapped(scene.written, outermost_at(step).statement, ["mirror"])
    return turned_into_at(scene, found.statement, {})


def turned_into_at(scene: Scene, statement: Statement, names: Mapping[str, str]) -> list[Edit]:
    """Make a placing an `at` with some of its values, under their names there.

    What it says of its cuts stays; where nothing is left to say its block is unwrapped.
    """
    names = {**names, **{key.name: key.name for key in ATTRIBUTES}}
    keys = [
        f"{names[each.key]} {scene.written.slice(each.span)}"
        for each in statement.arguments
        if each.key in names
    ]
    if not keys:
        return unwrapped(scene.written, statement)
    start, _ = scene.written.span(statement.place)
    return [Edit(start, scene.written.code_end(statement), " ".join(["at", *keys]))]


def duplicate_of(scene: Scene, step: Step) -> Step:
    """Find what a duplicate is made of: a run with its place, if it has one of its own."""
    place = placed_by(scene, step)
    return place if place is not None and place.statement.word == "at" else step


def duplicated(scene: Scene, step: Step) -> list[Edit]:
    """Write a statement once more, a little aside, at the end of its block."""
    own = duplicate_of(scene, step)
    frame = own.scope.frame
    x, y = back(frame, np.array([ASIDE_MM, -ASIDE_MM]))
    new = shifted_at(scene, own, x, y) if own is not step else None
    new = new or Statement("at", at_place(frame, x, y), (own.statement,))
    return [added(scene.written, scene.written.parents[own.statement.place.line], new)]


def shifted_at(scene: Scene, place: Step, x: float, y: float) -> Statement | None:
    """Write an `at` a little aside (mm of its frame), None where its place is worked out."""
    new: list[Argument] = [each for each in place.statement.arguments if each.key not in ("x", "y")]
    if any(each.key in ("radius", "angle") for each in new):
        return None
    for key, by in (("x", x), ("y", y)):
        found = needed(slot(scene, place, key))
        if found.form not in ("plain", "absent"):
            return None
        value = rounded((found.value + by) / found.per, found.unit)
        new.append(Argument(key, Measure(value, found.unit)))
    return replace(place.statement, arguments=tuple(new))
