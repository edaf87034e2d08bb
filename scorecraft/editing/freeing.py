"""Copies made free of each other: a placing is written out as one statement a copy."""

import math
import re
from dataclasses import fields, is_dataclass, replace
from typing import Any

import numpy as np

from scorecraft.editing import telling as say
from scorecraft.editing.moving import values_of
from scorecraft.editing.numbers import on_step
from scorecraft.editing.scene import Scene
from scorecraft.editing.written import Edit, indent_of, walked
from scorecraft.expand.frame import Frame
from scorecraft.expand.placing import PLACERS, angle_of
from scorecraft.expand.traced import Step
from scorecraft.language.tree import Argument, Measure, Name, Statement
from scorecraft.language.words import ATTRIBUTES

MOST_FREED = 24
"""So many copies at most are written out."""
FREED = ("around", "row", "grid", "along", "repeat")
"""Placings whose copies are turned, moved or scaled, and no more: an `at` says that too."""
FINE_MM, FINE_DEG, FINE_SCALE = 0.01, 0.001, 1e-5
K = re.compile(r"\bk\b")


def copying(step: Step) -> Step | None:
    """Find the nearest placing that copies a run."""
    words = [word for word in PLACERS if word not in ("at", "vary")]
    return next((each for each in reversed(step.chain) if each.statement.word in words), None)


def freed(scene: Scene, step: Step) -> list[Edit]:
    """Write the copies of the nearest placing out in its stead.

    Raises ScorecraftError where there are none, too many, or where an `at` cannot say them.
    """
    found = copying(step)
    if found is None:
        raise say.NO_COPIES.error(step.statement.place)
    check_free(scene, found)
    statement, text = found.statement, scene.written
    first, *others = (head(scene, found, copy) for copy in range(found.blocks))
    start, _ = text.span(statement.place)
    edits = [Edit(start, text.code_end(statement), str(Statement("at", first)))]
    for inner, _ in walked(counting(statement.body, 0), None):
        old = text.statements[inner.place.line]
        for before, after in zip(old.arguments, inner.arguments, strict=True):
            if str(before.value) != str(after.value):
                new = K.sub("0", text.slice(before.span))
                edits.append(text.replaced(before.span, new))
    at, own = text.after(statement), indent_of(statement)
    lines = [
        own + line + text.ending
        for copy, keys in enumerate(others, start=1)
        for line in str(Statement("at", keys, counting(statement.body, copy))).split("\n")
    ]
    gap = "" if text.text[:at].endswith(("\n", "\r")) else text.ending
    return [*edits, Edit(at, at, gap + "".join(lines))]


def check_free(scene: Scene, found: Step) -> None:
    """Raise ScorecraftError for a placing whose copies cannot be written out."""
    word, place = found.statement.word, found.statement.place
    if word not in FREED:
        raise say.NOT_FREED(word=word).error(place)
    if found.blocks > MOST_FREED:
        raise say.TOO_MANY_TO_FREE(count=found.blocks, most=MOST_FREED).error(place)
    for inner, _ in walked(found.statement.body, None):
        rule = scene.rules.get(inner.word)
        if rule is not None and any(K.search(str(each)) for each, _ in walked(rule.body, None)):
            raise say.RULE_COUNTS(name=inner.word).error(place)


def head(scene: Scene, found: Step, copy: int) -> tuple[Argument, ...]:
    """Write where one copy stands, as an `at` says it, and what the placing says of its cuts."""
    frames = (s.scope.frame for s in scene.traced.steps if s.around is found and s.copy == copy)
    frame = next(frames)
    names = {key.name for key in ATTRIBUTES}
    more = tuple(each for each in found.statement.arguments if each.key in names)
    if found.statement.word == "around":
        return (*around_place(scene, found, copy, frame), *more)
    return (*place_between(found.scope.frame, frame), *more)


def around_place(scene: Scene, found: Step, copy: int, frame: Frame) -> tuple[Argument, ...]:
    """Write the place of one copy of an `around`: how far out, and in which direction."""
    radius, facing = found.statement.get("radius"), found.statement.get("facing")
    values = values_of(found)
    apart = frame.origin - found.scope.frame.origin
    out = float(np.hypot(*np.linalg.solve(found.scope.frame.axes, apart)))
    keys = []
    near = abs(out - values["radius"]) < FINE_MM
    if radius is not None and near and not K.search(str(radius.value)):
        keys.append(radius)
    elif out > FINE_MM:
        keys.append(Argument("radius", Measure(on_step(out, FINE_MM), "mm")))
    degrees = on_step(math.degrees(angle_of(values, copy)), FINE_DEG)
    keys.append(Argument("angle", Measure(degrees, "deg")))
    return (*keys, *([facing] if facing else []))


def place_between(outer: Frame, inner: Frame) -> tuple[Argument, ...]:
    """Write a frame as an `at` in another one: x, y, turn and scale."""
    x, y = np.linalg.solve(outer.axes, inner.origin - outer.origin)
    axes = np.linalg.solve(outer.axes, inner.axes)
    turn = math.degrees(math.atan2(axes[0, 1], axes[1, 1]))
    scale = math.sqrt(abs(float(np.linalg.det(axes))))
    parts = (
        ("x", on_step(float(x), FINE_MM), "mm", 0.0), ("y", on_step(float(y), FINE_MM), "mm", 0.0),
        ("turn", on_step(turn, FINE_DEG), "deg", 0.0),
        ("scale", on_step(scale, FINE_SCALE), "", 1.0),
    )  # fmt: skip
    return tuple(Argument(k, Measure(v, unit)) for k, v, unit, usual in parts if v != usual)


def counting(block: tuple[Statement, ...], copy: int) -> tuple[Statement, ...]:
    """Write the number of a copy for `k`, but where an inner placing counts anew."""
    return tuple(_counting_in(statement, copy) for statement in block)


def _counting_in(statement: Statement, copy: int) -> Statement:
    anew = statement.word in PLACERS and statement.word not in ("at", "vary")
    arguments = tuple(
        each
        if anew and statement.word == "around" and each.key in ("radius", "facing")
        else replace(each, value=counted(each.value, copy))
        for each in statement.arguments
    )
    body = statement.body if anew else counting(statement.body, copy)
    return replace(statement, arguments=arguments, body=body)


def counted(part: Any, copy: int) -> Any:  # a value, or any part of one: each stays of its kind
    """Write a number for `k` wherever it stands in a value."""
    if part == Name("k"):
        return Measure(float(copy), "", part.place)
    if isinstance(part, tuple):
        return tuple(counted(each, copy) for each in part)
    if not is_dataclass(part) or isinstance(part, type):
        return part
    said = [field.name for field in fields(part) if field.compare]
    return replace(part, **{name: counted(getattr(part, name), copy) for name in said})
