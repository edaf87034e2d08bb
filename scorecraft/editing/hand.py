"""The hand: a gesture on the loaf gives a new text, read and laid out before it is handed back."""

from collections.abc import Iterator
from pathlib import Path

import numpy as np

from scorecraft.editing import telling as say
from scorecraft.editing.described import said_of
from scorecraft.editing.freeing import copying
from scorecraft.editing.gestures import Change, Free, Gesture, change
from scorecraft.editing.scene import Scene, scene
from scorecraft.editing.slots import users
from scorecraft.editing.written import edited
from scorecraft.errors import PatternError, ScorecraftError
from scorecraft.frozen import dataclass


@dataclass(frozen=True)
class Done:
    """What a gesture has made: the new scene, and what is selected now (None: nothing).

    `said` tells it for somebody who cannot see it.
    """

    scene: Scene
    change: Change
    line: int | None
    copy: int
    said: str

    @property
    def text(self) -> str:
        """The new text."""
        return self.scene.written.text


def done(before: Scene, gesture: Gesture, *, folder: Path | None = None) -> Done:
    r"""Do a gesture. A text that could not be read or laid out is never given back.

    Raises LockedError where a number is worked out, ScorecraftError for what cannot be done.

    >>> from scorecraft.editing.gestures import Move
    >>> loaf = scene("loaf round width 220mm height 95mm\nslash 80mm  # the ear\n")
    >>> print(done(loaf, Move(2, to=(20.0, 0.0))).text)
    loaf round width 220mm height 95mm
    at x 20mm:
        slash 80mm  # the ear
    <BLANKLINE>
    """
    made = change(before, gesture)
    text = edited(before.written.text, made.edits)
    try:
        after = scene(text, folder=folder)
    except PatternError as error:
        first = error.problems[0]
        spoilt = say.SPOILT(message=first.message).message
        raise ScorecraftError(spoilt, None, first.hint) from error
    line, copy = made.line, made.copy
    if isinstance(gesture, Free):
        line, copy = nearest(before, after, gesture)
    if line is not None and not after.runs.get(line):
        line = None
    said = say.DELETED if line is None else said_of(after, after.run(line, copy))
    told = say.NOTHING if text == before.written.text else said
    return Done(after, made, line, copy, "; ".join([told, *turned_knobs(before, after, line)]))


def turned_knobs(before: Scene, after: Scene, line: int | None) -> Iterator[str]:
    """Say which knobs a gesture has turned, and what else that changes."""
    for name, knob in after.knobs.items():
        if name in before.knobs and before.knobs[name].value != knob.value:
            ends = knob.value in (knob.low, knob.high)
            yield say.knob_is(name, knob.value, knob.unit, ends)
            uses = {each.place.line: each.word for each in users(after, name)}
            yield from filter(None, [say.also({k: v for k, v in uses.items() if k != line})])


def nearest(before: Scene, after: Scene, gesture: Gesture) -> tuple[int, int]:
    """Find the run that stands where another one stood before."""
    old = before.run(gesture.line, gesture.copy)
    there = [s for s in after.traced.steps if s.statement.word == old.statement.word]
    if copying(old) is old:  # the placing itself: its first copy stands in its line
        return gesture.line, 0
    apart = [float(np.hypot(*(s.drawn.frame.origin - old.drawn.frame.origin))) for s in there]
    turned = [float(np.abs(s.drawn.frame.axes - old.drawn.frame.axes).sum()) for s in there]
    found = there[int(np.argmin(np.add(apart, turned)))]
    return found.statement.place.line, after.copy_of(found)
