"""Handles: which number of a figure each turns, where it sits, and which way it pulls.

Which keys have a handle says the table of words. Where it sits is found by drawing the figure
twice, with the number as it is and a little greater: on the point that this moves most.
"""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

import numpy as np
import shapely

from scorecraft import regions
from scorecraft.arrays import Floats, Line
from scorecraft.editing.moving import back
from scorecraft.editing.scene import Scene
from scorecraft.editing.slots import Slot, Way, read_slot, slot
from scorecraft.editing.turning import swept
from scorecraft.editing.written import Edit
from scorecraft.errors import ScorecraftError
from scorecraft.expand.draw import draw
from scorecraft.expand.drawings import Drawings
from scorecraft.expand.frame import Frame
from scorecraft.expand.read import Values, own, read
from scorecraft.expand.traced import Step
from scorecraft.language.keys import Key
from scorecraft.language.tree import Figure, Join, Points, Region
from scorecraft.language.words import WORDS

SMALL = 1e-4
"""A figure is drawn so much larger (mm, rad) to see what moves."""
MOST = 0.98
"""Points that move at least this share of the most may have the handle."""
ASIDE = 1e-3
"""Of these the foremost has it, and of the foremost ones that to the right."""
LEAST_PULL = 0.02

Drawer = Callable[[Values], list[Line]]


@dataclass(frozen=True)
class Handle:
    """A handle of a run: its number, and in the frame of the figure (mm) where it sits.

    `pull` is how it moves as the number grows, (2,) mm a mm; for an angle it goes round the
    frame's origin instead. A point of a path has two numbers, and no pull.
    """

    name: str
    frame: Frame
    slots: tuple[Slot, ...]
    at: Floats
    pull: Floats | None
    round: bool = False

    @property
    def place(self) -> Floats:
        """Where it sits on the sheet (mm)."""
        return np.asarray(self.frame.place(self.at[None])[0])

    def dragged(self, taken: Floats, let_go: Floats, way: Way = "") -> list[Edit]:
        """Give the edits for a drag between two points of the sheet; raises LockedError."""
        return [
            edit
            for each, to in self.targets(taken, let_go)
            for edit in each.freed(way).turned(to)[0]
        ]

    def targets(self, taken: Floats, let_go: Floats) -> Iterator[tuple[Slot, float]]:
        """Give every number with the value that a drag asks for."""
        if self.round:
            yield self.slots[0], self.slots[0].value + swept(self.frame, taken, let_go)
            return
        by = back(self.frame, let_go - taken)
        if self.pull is not None:
            grown = float(by @ self.pull / (self.pull @ self.pull))
            yield self.slots[0], self.slots[0].value + grown
            return
        for each, change in zip(self.slots, by, strict=True):
            if abs(change) > 1e-9:
                yield each, each.value + float(change)


def handles(scene: Scene, step: Step) -> list[Handle]:
    """Find the handles of a run: those of a motif, of a path's points, or of what a fill fills."""
    statement = step.statement
    if statement.word == "path":
        return list(path_points(scene, step))
    if statement.word == "fill":
        return list(region_handles(scene, step))
    if statement.word == "around":
        return around_handle(scene, step)
    word = WORDS.get(statement.word)
    if word is None or word.group != "motif":
        return []
    values = read(word, statement.arguments, step.scope, statement.place)
    drawings = Drawings(None)
    frame = step.drawn.frame

    def drawn(changed: Values) -> list[Line]:
        return [stroke.line for stroke in draw(word, changed, drawings, step.drawn)]

    if word.name == "trace":
        return []
    found = []
    for key in word.handles:
        number = slot(scene, step, key.name)
        if number is not None and (made := pulled(key, number, frame, values, drawn)):
            found.append(made)
    return found


def pulled(
    key: Key, number: Slot, frame: Frame, values: Values, drawn: Drawer, name: str = ""
) -> Handle | None:
    """Find where the handle of a number sits, None where it moves nothing."""
    for by in (SMALL, -SMALL):
        try:
            lines = drawn(values), drawn(values | {key.name: values[key.name] + by})
        except ScorecraftError:  # so large a size does not go: a handle would say so later
            continue
        if [len(line) for line in lines[0]] == [len(line) for line in lines[1]]:
            before, after = (np.concatenate(each) for each in lines)
            return sitting(key, number, frame, before, (after - before) / by, name)
    return None


def sitting(
    key: Key, number: Slot, frame: Frame, points: Line, moves: Line, name: str
) -> Handle | None:
    """Put a handle on the point that moves most, the foremost of several."""
    far = np.hypot(*moves.T)
    if far.max() < LEAST_PULL:
        return None
    rank = points[:, 1] + ASIDE * points[:, 0]
    best = int(np.argmax(np.where(far >= MOST * far.max(), rank, -np.inf)))
    angle = key.kind == "angle"
    return Handle(
        name or key.name, frame, (number,), points[best], None if angle else moves[best], angle
    )


def path_points(scene: Scene, step: Step) -> Iterator[Handle]:
    """Give a handle for every point of a path."""
    argument = step.statement.get("points")
    assert argument is not None and isinstance(argument.value, Points)
    points = argument.value
    for number, (pair, spans) in enumerate(zip(points.pairs, points.spans, strict=True), start=1):
        x, y = (
            read_slot(scene, step, step.scope, None, value, place)
            for value, place in zip(pair, spans, strict=True)
        )
        name = f"point {number}"
        slots = (replace(x, key="x"), replace(y, key="y"))
        yield Handle(name, step.drawn.frame, slots, np.array([x.value, y.value]), None)


def figures_of(region: Region) -> Iterator[Figure]:
    """List the figures that a region is joined from."""
    if isinstance(region, Join):
        yield from figures_of(region.left)
        yield region.right
    else:
        yield region


def region_handles(scene: Scene, step: Step) -> Iterator[Handle]:
    """Give the handles of what a fill fills, its first figure."""
    argument = step.statement.get("region")
    assert argument is not None and isinstance(argument.value, Figure | Join)
    for number, figure in enumerate(figures_of(argument.value), start=1):
        if figure.word != "whole":
            yield from figure_handles(scene, step, figure, f" {number}" if number > 1 else "")


def figure_handles(scene: Scene, step: Step, figure: Figure, number: str) -> Iterator[Handle]:
    """Give the handles of one figure of a region; those of a second one are numbered."""
    word = WORDS[figure.word]
    values = read(word, figure.arguments, step.scope, figure.place)

    def drawn(changed: Values) -> list[Line]:
        sizes = {k: v for k, v in own(word, changed).items() if k not in ("x", "y")}
        made = getattr(regions, word.name)(**sizes)
        corner = np.array([changed.get("x", 0.0), changed.get("y", 0.0)])
        return [shapely.get_coordinates(made) + corner]

    for key in word.handles:
        found = None if key.name in ("x", "y") else slot(scene, step, key.name, figure=figure)
        name = key.name + number
        if found and (made := pulled(key, found, step.scope.frame, values, drawn, name)):
            yield made


def around_handle(scene: Scene, step: Step) -> list[Handle]:
    """Give the handle of how far out the copies stand, on the first of them."""
    number = slot(scene, step, "radius")
    start = slot(scene, step, "from")
    assert number is not None and start is not None
    out = np.array([math.sin(start.value), math.cos(start.value)])
    return [Handle("radius", step.scope.frame, (number,), number.value * out, out)]
