"""Gestures of a hand, and the text that each makes: one gesture, one new text."""

from collections.abc import Callable, Sequence
from typing import Any

import numpy as np

from scorecraft.checks import cure
from scorecraft.editing import telling as say
from scorecraft.editing.blocks import removed
from scorecraft.editing.copying import duplicate_of, duplicated, mirrored, repeated
from scorecraft.editing.curing import cured
from scorecraft.editing.freeing import freed
from scorecraft.editing.handles import Handle, handles
from scorecraft.editing.line import BREAK
from scorecraft.editing.making import placed_new, stroked
from scorecraft.editing.moving import Grip, held_fast, moved
from scorecraft.editing.scene import Scene, draws
from scorecraft.editing.setting import set_key
from scorecraft.editing.slots import Way
from scorecraft.editing.turning import between, turned
from scorecraft.editing.written import Edit, edited, walked
from scorecraft.expand.traced import Step
from scorecraft.frozen import dataclass

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Gesture:
    """What a hand does to one copy of a statement, known by its line; points in the plan."""

    line: int = 0
    copy: int = 0
    way: Way = ""


@dataclass(frozen=True, slots=True)
class Move(Gesture):
    """Take hold at a point and let go at another; without one, at the place it stands."""

    to: Point = (0.0, 0.0)
    taken: Point | None = None


@dataclass(frozen=True, slots=True)
class Shift(Gesture):
    """Move by so much."""

    by: Point = (0.0, 0.0)


@dataclass(frozen=True, slots=True)
class Turn(Gesture):
    """Turn by an angle, clockwise (radians)."""

    by_rad: float = 0.0


@dataclass(frozen=True, slots=True)
class Drag(Gesture):
    """Drag a handle, known by its name, from a point to another."""

    name: str = ""
    taken: Point = (0.0, 0.0)
    to: Point = (0.0, 0.0)


@dataclass(frozen=True, slots=True)
class Set(Gesture):
    """Give a key a value as typed, or none."""

    key: str = ""
    value: str = ""


@dataclass(frozen=True, slots=True)
class Repeat(Gesture):
    """Have so many copies about the middle."""

    count: int = 1


@dataclass(frozen=True, slots=True)
class Mirror(Gesture):
    """Mirror it, or take its mirror away."""


@dataclass(frozen=True, slots=True)
class Duplicate(Gesture):
    """Have it once more, a little aside."""


@dataclass(frozen=True, slots=True)
class Delete(Gesture):
    """Remove it."""


@dataclass(frozen=True, slots=True)
class Free(Gesture):
    """Make its copies statements of their own."""


@dataclass(frozen=True, slots=True)
class New(Gesture):
    """Lay a figure of the tray at a point: in the block of a line, or by itself (line 0)."""

    word: str = ""
    at: Point = (0.0, 0.0)


@dataclass(frozen=True, slots=True)
class Stroke(Gesture):
    """Draw a stroke, with copies about the middle; in the block of a line, or by itself."""

    points: tuple[Point, ...] = ()
    repeat: int = 0
    pressure: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Cure(Gesture):
    """Do what a check advises: changes of some cuts of the layout as it is."""

    changes: tuple[cure.Change, ...] = ()


@dataclass(frozen=True, slots=True)
class Change:
    """The edits of a gesture, and what they leave selected: a line of the new text, and a copy."""

    edits: Sequence[Edit]
    line: int | None
    copy: int = 0


def change(scene: Scene, gesture: Gesture) -> Change:
    """Tell how a gesture changes the text; nothing is read or laid out again.

    Raises LockedError where a number is worked out, ScorecraftError for what cannot be done.
    """
    if isinstance(gesture, New | Stroke):
        return making(scene, gesture)
    if isinstance(gesture, Cure):
        return curing(scene, gesture)
    step = scene.run(gesture.line, gesture.copy)
    moving = isinstance(gesture, Move | Shift | Turn)
    if moving or isinstance(gesture, Drag):
        told = held_fast(scene, step, moving=moving)
        if told is not None:
            raise told.error(step.statement.place)
    edits = CHANGES[type(gesture)](scene, step, gesture)
    line: int | None = line_after(scene, gesture.line, edits)
    if isinstance(gesture, Delete):
        line = None
    elif isinstance(gesture, Duplicate):
        line = last_line(scene, edits) - lines_below(scene, step)
    return Change(edits, line, gesture.copy)


def curing(scene: Scene, gesture: Cure) -> Change:
    """Tell how a cure changes the text; what it changes or adds is selected then.

    Raises ScorecraftError for cuts that are not there.
    """
    cuts = [cut for each in gesture.changes for cut in each.cuts]
    if any(not 0 <= cut < len(scene.traced.origins) for cut in cuts):
        raise say.NO_CURE.error()
    edits = cured(scene, gesture.changes)
    if gesture.changes[-1].kind == "add":
        return Change(edits, last_line(scene, edits))
    kept = [cut for each in gesture.changes if each.kind != "remove" for cut in each.cuts]
    line = scene.chosen(kept[0]).statement.place.line if kept else None
    return Change(edits, line and line_after(scene, line, edits))


def making(scene: Scene, gesture: New | Stroke) -> Change:
    """Tell how a new figure or stroke changes the text."""
    block = scene.run(gesture.line, gesture.copy) if gesture.line else None
    if isinstance(gesture, New):
        edits = placed_new(scene, gesture.word, scene.sheet(np.array(gesture.at)), block)
    else:
        points = scene.loaf.plan_to_sheet(np.array(gesture.points).reshape(-1, 2))
        edits = stroked(scene, points, gesture.repeat, gesture.pressure, block)
    return Change(edits, last_line(scene, edits))


def line_after(scene: Scene, line: int, edits: Sequence[Edit]) -> int:
    """Tell where the statement of a line stands after some edits."""
    text = scene.written
    start, _ = text.span(text.statements[line].place)
    before = [edit for edit in edits if edit.start <= start]
    gone = sum(len(BREAK.findall(text.text[edit.start : min(edit.end, start)])) for edit in before)
    return line + sum(len(BREAK.findall(edit.new)) for edit in before) - gone


def last_line(scene: Scene, edits: Sequence[Edit]) -> int:
    """Tell in which line the last statement of the last new block stands."""
    at, text = edits[-1].start, scene.written
    new = edited(text.text[:at], [edit for edit in edits if edit.end <= at])
    return len(BREAK.findall(new.removesuffix(text.ending))) + 1


def lines_below(scene: Scene, step: Step) -> int:
    """Count the statements after a run's own in the block that a duplicate of it is made of."""
    block = [each.place.line for each, _ in walked((duplicate_of(scene, step).statement,), None)]
    return len(block) - 1 - block.index(step.statement.place.line)


def carrying(scene: Scene, step: Step, gesture: Move) -> list[Edit]:
    """Move a run from one point to another."""
    to = scene.sheet(np.array(gesture.to))
    own = step.drawn.frame.origin
    taken = own if gesture.taken is None else scene.sheet(np.array(gesture.taken))
    return moved(scene, Grip(step, taken, to), gesture.way)


def shifting(scene: Scene, step: Step, gesture: Shift) -> list[Edit]:
    """Move a run by so much, in the plan where it stands."""
    here = scene.middle(step)
    to = scene.sheet(scene.plan(here) + np.array(gesture.by))
    return moved(scene, Grip(step, here, to), gesture.way)


def dragging(scene: Scene, step: Step, gesture: Drag) -> list[Edit]:
    """Drag a handle."""
    taken, to = (scene.sheet(np.array(point)) for point in (gesture.taken, gesture.to))
    if gesture.name == "turn":
        by = between(step.drawn.frame.origin, taken, to)
        return turned(scene, step, by, gesture.way)
    handle = handle_of(scene, step, gesture.name)
    return handle.dragged(taken, to, gesture.way)


def handle_of(scene: Scene, step: Step, name: str) -> Handle:
    """Find a handle by its name; raises ScorecraftError where there is none."""
    found = handles(scene, step, name) if name else []
    if not found:
        raise say.NO_HANDLE(name=name, word=step.statement.word).error(step.statement.place)
    return found[0]


def deleting(scene: Scene, step: Step, gesture: Delete) -> list[Edit]:
    """Remove a statement; raises ScorecraftError for what is nothing on the loaf."""
    if not (draws(step.statement) or step.statement.body):
        raise say.NOT_DELETED(word=step.statement.word).error(step.statement.place)
    return removed(scene.written, [step.statement])


CHANGES: dict[type[Gesture], Callable[[Scene, Step, Any], list[Edit]]] = {
    Move: carrying,
    Shift: shifting,
    Turn: lambda scene, step, gesture: turned(scene, step, gesture.by_rad, gesture.way),
    Drag: dragging,
    Set: lambda scene, step, new: set_key(scene, step, new.key, new.value, new.way),
    Delete: deleting,
    Repeat: lambda scene, step, gesture: repeated(scene, step, gesture.count, gesture.way),
    Mirror: lambda scene, step, _: mirrored(scene, step),
    Duplicate: lambda scene, step, _: duplicated(scene, step),
    Free: lambda scene, step, _: freed(scene, step),
}
"""What makes each gesture."""
