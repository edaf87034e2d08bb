"""Handles: which number of a figure each turns, where it sits, and which way it pulls.

Which keys have a handle says the table of words. Where it sits is found by drawing the figure
twice, with the number as it is and a little greater: on what this moves most.
"""

import math
from collections.abc import Callable, Iterator

import numpy as np
import shapely

from scorecraft import regions
from scorecraft.arrays import Floats, Line
from scorecraft.editing import telling as say
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
from scorecraft.expand.walk import Walk
from scorecraft.frozen import dataclass, replace
from scorecraft.language.keys import Key, Word
from scorecraft.language.tree import Argument, Figure, Join, Measure, Points, Region
from scorecraft.language.words import WORDS
from scorecraft.units import ANGLE, UNITS

SMALL = 1e-4
"""A figure is drawn so much larger (mm, rad) to see what moves."""
MOST = 0.98
"""Points that move at least this share of the most may have the handle."""
ASIDE = 1e-3
"""Of these the foremost has it, and of the foremost ones that to the right."""
LEAST_PULL, LEAST_OUT = 0.02, 0.4
"""What moves less, mm a mm, has no handle; a side has none that moves out less."""
SIDES = np.array([[0.0, 1.0], [1.0, 0.0], [-1.0, 0.0], [0.0, -1.0]])
"""Ahead, right, left and back, in the frame of a figure."""

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


def handles(scene: Scene, step: Step, name: str = "") -> list[Handle]:
    """Find the handles of a run, or the one of a name: those of what it draws or fills."""
    if step not in scene.handles:
        found = found_handles(scene, step, name)
        if name:
            return found
        scene.handles[step] = found
    return [each for each in scene.handles[step] if name in ("", each.name)]


def found_handles(scene: Scene, step: Step, name: str) -> list[Handle]:
    """Find the handles of a run, or the one of a name."""
    statement = step.statement
    word = WORDS.get(statement.word)
    if statement.word == "fill":
        found = list(region_handles(scene, step, name))
    elif statement.word == "around":
        found = [around_handle(scene, step)]
    elif statement.word == "trace":
        found = trace_handle(scene, step)
    elif statement.word in scene.rules:
        found = list(call_handles(scene, step, name))
    elif word is not None and word.group == "motif":
        found = list(motif_handles(scene, step, word, name))
    else:
        found = []
    return [each for each in found if name in ("", each.name)]


def motif_handles(scene: Scene, step: Step, word: Word, name: str) -> Iterator[Handle]:
    """Give the handles of a motif, or the one of a name."""
    values = read(word, step.statement.arguments, step.scope, step.statement.place)
    drawings = Drawings(None)

    def drawn(changed: Values) -> list[Line]:
        return [stroke.line for stroke in draw(word, changed, drawings, step.drawn)]

    for key in word.handles:
        number = slot(scene, step, key.name) if name in ("", key.name) else None
        if number and (made := pulled(key, number, step.drawn.frame, values, drawn)):
            yield made
    argument = step.statement.get("points")
    if argument is not None and isinstance(argument.value, Points):
        yield from way_points(scene, step, argument.value)


def call_handles(scene: Scene, step: Step, name: str) -> Iterator[Handle]:
    """Give the handles of the call of a rule, or the one of a name: its lengths and angles.

    What a number moves is seen by running the rule with it as it is and a little greater.
    """
    frame = step.scope.frame
    keys = (each.key for each in scene.rules[step.statement.word].arguments[1:])
    found = {key: slot(scene, step, key) for key in keys if name in ("", key)}

    def drawn(changed: Values) -> list[Line]:
        kept = tuple(each for each in step.statement.arguments if each.key not in changed)
        new = (Argument(k, Measure(v / per[k], units[k])) for k, v in changed.items())
        walk = Walk(scene.rules, Drawings(None))
        call = replace(step.statement, arguments=(*kept, *new))
        walk.block((call,), replace(step.scope, region=None))
        if walk.problems:
            raise say.NOT_SO_LARGE.error(step.statement.place)
        return [frame.local(cut.line) for cut in walk.cuts]

    sized = {key: each for key, each in found.items() if each and each.unit}
    per, units = ({k: getattr(s, of) for k, s in sized.items()} for of in ("per", "unit"))
    for key, number in sized.items():
        turns = UNITS[number.unit].dimension == ANGLE
        known = Key(key, "angle" if turns else "length")
        made = pulled(known, number, frame, {key: number.value}, drawn)
        if made:
            yield made


def trace_handle(scene: Scene, step: Step) -> list[Handle]:
    """Give the handle of how wide a drawing is, on its right."""
    number, frame = slot(scene, step, "width"), step.drawn.frame
    lines = [scene.traced.layout.cuts[index].line for index in scene.cuts[step]]
    if number is None or not lines:
        return []
    points = frame.local(np.concatenate(lines))
    wide = float(np.ptp(points[:, 0]))
    at = points[np.argmax(points[:, 0])]
    if wide < LEAST_PULL or abs(at[0]) < LEAST_PULL:
        return []
    number = replace(number, value=number.value or wide)
    return [Handle("width", frame, (number,), at, at / number.value)]


def pulled(
    key: Key, number: Slot, frame: Frame, values: Values, drawn: Drawer, name: str = ""
) -> Handle | None:
    """Find where the handle of a number sits, None where it moves nothing.

    It sits on the side of the figure that moves out most, else on the point that moves most.
    """
    lines = drawn(values)
    name = name or key.name
    for by in (SMALL, -SMALL):
        try:
            grown = drawn(values | {key.name: values[key.name] + by})
        except ScorecraftError:  # so large a size does not go: a handle would say so later
            continue
        before, after = np.concatenate(lines), np.concatenate(grown)
        if key.kind != "angle" and (side := outermost(before, after, by)) is not None:
            return Handle(name, frame, (number,), *side)
        if [len(line) for line in lines] == [len(line) for line in grown]:
            most = foremost(before, (after - before) / by)
            return sitting(Handle(name, frame, (number,), *most), key)
    return None


def outermost(before: Line, after: Line, by: float) -> tuple[Floats, Floats] | None:
    """Find the side of a figure that moves out most: its outermost point, and how far it moves.

    None where no side does so. Ahead comes first, then the right.
    """
    moved = [float((after @ way).max() - (before @ way).max()) / by for way in SIDES]
    best = max(range(len(SIDES)), key=lambda index: round(moved[index], 2))
    if moved[best] < LEAST_OUT:
        return None
    return before[np.argmax(before @ SIDES[best])], moved[best] * SIDES[best]


def foremost(points: Line, moves: Line) -> tuple[Floats, Floats]:
    """Find the point that moves most, the foremost of several, and how far it moves."""
    far = np.hypot(*moves.T)
    rank = points[:, 1] + ASIDE * points[:, 0]
    best = int(np.argmax(np.where(far >= MOST * far.max(), rank, -np.inf)))
    return points[best], moves[best]


def sitting(handle: Handle, key: Key) -> Handle | None:
    """Let the handle of an angle go round; one that moves nothing is none."""
    if handle.pull is None or np.hypot(*handle.pull) < LEAST_PULL:
        return None
    return replace(handle, pull=None, round=True) if key.kind == "angle" else handle


def way_points(scene: Scene, step: Step, points: Points) -> Iterator[Handle]:
    """Give a handle for every point that a stroke goes through."""
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


def region_handles(scene: Scene, step: Step, name: str) -> Iterator[Handle]:
    """Give the handles of what a fill fills, or the one of a name; later figures' are numbered."""
    argument = step.statement.get("region")
    assert argument is not None and isinstance(argument.value, Figure | Join)
    for number, figure in enumerate(figures_of(argument.value), start=1):
        if figure.word != "whole":
            ending = f" {number}" if number > 1 else ""
            yield from figure_handles(scene, step, figure, ending, name)


def figure_handles(
    scene: Scene, step: Step, figure: Figure, ending: str, name: str
) -> Iterator[Handle]:
    """Give the handles of one figure of a region, their names with an ending, or one of them."""
    word = WORDS[figure.word]
    values = read(word, figure.arguments, step.scope, figure.place)

    def drawn(changed: Values) -> list[Line]:
        sizes = {k: v for k, v in own(word, changed).items() if k not in ("x", "y")}
        made = getattr(regions, word.name)(**sizes)
        corner = np.array([changed.get("x", 0.0), changed.get("y", 0.0)])
        return [shapely.get_coordinates(made) + corner]

    for key in word.handles:
        own_name = key.name + ending
        if key.name in ("x", "y") or name not in ("", own_name):
            continue
        found = slot(scene, step, key.name, figure=figure)
        if found and (made := pulled(key, found, step.scope.frame, values, drawn, own_name)):
            yield made


def around_handle(scene: Scene, step: Step) -> Handle:
    """Give the handle of how far out the copies stand, on the first of them."""
    number = slot(scene, step, "radius")
    start = slot(scene, step, "from")
    assert number is not None and start is not None
    out = np.array([math.sin(start.value), math.cos(start.value)])
    return Handle("radius", step.scope.frame, (number,), number.value * out, out)
