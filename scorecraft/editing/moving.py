"""Moving what a hand has taken: the nearest place around it is edited, or it gets one of its own.

The finger takes hold of a point of a figure and lets go elsewhere; both are carried to the sheet,
and back through the frame of the block that the place stands in, whatever turned, mirrored or
scaled it.
"""

import math
from collections.abc import Sequence

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.editing import telling as say
from scorecraft.editing.blocks import wrapped
from scorecraft.editing.numbers import FINER, rounded
from scorecraft.editing.scene import Scene
from scorecraft.editing.slots import Slot, Way, slot
from scorecraft.editing.written import Edit
from scorecraft.errors import Slip
from scorecraft.expand.draw import ON_SHEET
from scorecraft.expand.frame import Frame
from scorecraft.expand.placing import PLACERS, angle_of
from scorecraft.expand.read import Values, read
from scorecraft.expand.scope import Scope
from scorecraft.expand.traced import Step
from scorecraft.frozen import dataclass
from scorecraft.language.tree import Argument, Measure, Statement
from scorecraft.language.words import WORDS
from scorecraft.units import UNITS

NEAR_MM, SKIPPED_MM = 0.45, 0.02
"""So near a figure has to land, a little less than the half millimetre that is promised; a number
that would move it by less than the second is left as it is."""
PASSED = ("vary", "when")
"""Blocks that neither place nor copy what stands in them."""
STILL_MM = 1e-6


@dataclass(frozen=True)
class Grip:
    """A run that a finger holds: where it took hold, and where it lets go (sheet mm, (2,))."""

    step: Step
    taken: Floats
    let_go: Floats


def held_fast(scene: Scene, step: Step, *, moving: bool) -> Slip | None:
    """Say why a run cannot be moved, or else changed, by itself; None if it can.

    What the loaf draws is not moved; what a rule draws within itself is left alone: each use would
    change the next.
    """
    if moving and step.statement.word in ON_SHEET:
        return say.STAYS(word=step.statement.word)
    words = [each.statement.word for each in step.chain[:-1] if each.statement.word in scene.rules]
    return next((say.IN_ITSELF(name=word) for word in words if words.count(word) > 1), None)


def placed_by(scene: Scene, step: Step) -> Step | None:
    """Find the step whose place moves a run, and nothing else in the text: None if it has none."""
    child = step
    while (around := child.around) is not None and len(around.statement.body) == 1:
        if around.statement.word in ("at", "around"):
            return around
        if around.statement.word not in PASSED:
            return None
        child = around
    return None


def moved(scene: Scene, grip: Grip, way: Way = "") -> list[Edit]:
    """Give the edits that move a run; raises LockedError where a place is worked out."""
    if np.abs(grip.let_go - grip.taken).max() < STILL_MM:
        return []
    place = placed_by(scene, grip.step)
    if place is None:
        return given_place(scene, grip)
    if place.statement.word == "around" or polar(place):
        found = swung(scene, place, grip, way)
        if found is not None:
            return found
        if place.statement.word == "around":
            return given_place(scene, grip)
    return shoved(scene, place, grip, way)


def polar(place: Step) -> bool:
    """Tell whether an `at` says how far out it is, or in which direction."""
    return any(place.statement.get(key) for key in ("radius", "angle"))


def given_place(scene: Scene, grip: Grip) -> list[Edit]:
    """Put a statement into an `at` of its own."""
    frame = grip.step.scope.frame
    keys = at_place(frame, *back(frame, grip.let_go - grip.taken))
    return wrapped(scene.written, grip.step.statement, [str(Statement("at", keys))]) if keys else []


def at_place(frame: Frame, x: float, y: float) -> tuple[Argument, ...]:
    """Write a place (mm of a frame) as an `at` takes it, as round as is near enough."""
    near = NEAR_MM / max(size_of(frame), 1e-12)
    for level in range(len(FINER)):
        there = rounded(x, "mm", level), rounded(y, "mm", level)
        if math.hypot(there[0] - x, there[1] - y) <= near:
            break
    pairs = zip("xy", there, strict=True)
    return tuple(Argument(key, Measure(value, "mm")) for key, value in pairs if value)


def shoved(scene: Scene, place: Step, grip: Grip, way: Way) -> list[Edit]:
    """Change x and y of an `at`."""
    values = values_of(place)
    frame = place.scope.frame
    step = back(frame, grip.let_go - grip.taken)
    slots = [needed(slot(scene, place, key)) for key in ("x", "y")]
    targets = [each.value + by for each, by in zip(slots, step, strict=True)]
    turning = [
        (each.freed(way), target)
        for each, target in zip(slots, targets, strict=True)
        if abs(target - each.value) * size_of(frame) > SKIPPED_MM
    ]

    return landed(turning, Landing(place, grip, 0, values))


def swung(scene: Scene, place: Step, grip: Grip, way: Way) -> list[Edit] | None:
    """Change radius and direction of a copy about a middle; None where it cannot get there so."""
    values = values_of(place)
    number = run_in(place, grip.step).copy
    around = place.statement.word == "around"
    angle = angle_of(values, number) if around else values["angle"]
    middle = place.scope.frame
    if not around:
        middle = middle.moved(values["x"], values["y"])
    here = middle.turned(angle)
    held, wanted = (back(here, point - here.origin) for point in (grip.taken, grip.let_go))
    across = float(np.dot(wanted, wanted)) - held[0] ** 2
    if across < 0:
        return None
    by = math.atan2(wanted[0], wanted[1]) - math.atan2(held[0], math.sqrt(across))
    by = math.remainder(by, math.tau)
    scopes = [
        place.scope.at(middle.turned(a)) if around else place.scope for a in (angle, angle + by)
    ]
    was, radius = (needed(slot(scene, place, "radius", each)) for each in scopes)
    out = was.value + math.sqrt(across) - held[1]
    if out < 0:
        return None
    keys = round_keys(place.statement) if around else ("angle",)
    turned = [(each, each.value + by) for key in keys for each in [needed(slot(scene, place, key))]]
    shared = around and UNITS[radius.unit].share
    landing = Landing(
        place,
        grip,
        number,
        values | {"radius": radius.value},
        scopes[1].reach_mm if shared else 0.0,
    )
    return settled(landing, (radius, out), turned, way)


Turning = tuple[Slot, float]
"""A number, and the value (mm, rad) it is to have."""


def settled(
    landing: "Landing", outward: Turning, turned: Sequence[Turning], way: Way
) -> list[Edit]:
    """Change no more of radius and direction than it takes to land."""
    both = [outward, *turned]
    for chosen in ([outward], turned, both):
        if chosen is both or landing.missed(chosen) <= SKIPPED_MM:
            break
    return landed([(each.freed(way), to) for each, to in chosen], landing)


def round_keys(around: Statement) -> tuple[str, ...]:
    """Give the keys that turn all copies of an `around`: its end goes with its start."""
    return ("from", "to") if around.get("to") else ("from",)


@dataclass(frozen=True)
class Landing:
    """How one copy of a placing lands: what the placing says now, and who holds the copy.

    With a `reach` (mm) the radius is a share, told as it is in the direction of that reach.
    """

    place: Step
    grip: Grip
    number: int
    values: Values
    reach: float = 0.0

    def missed(self, turning: Sequence[Turning]) -> float:
        """Measure how far from where it was let go the held point lands with new values (mm)."""
        new = self.values | {each.key: value for each, value in turning}

        def read_there(there: Scope) -> Values:
            size = there.reach_mm / self.reach if self.reach else 1.0
            return new if size == 1.0 else new | {"radius": new["radius"] * size}

        scopes = PLACERS[self.place.statement.word](read_there, self.place.scope)
        after = next(scope for index, scope in enumerate(scopes) if index == self.number).frame
        before = run_in(self.place, self.grip.step).scope.frame
        lands = after.place(back(before, self.grip.taken - before.origin)[None])[0]
        return float(np.hypot(*(lands - self.grip.let_go)))


def landed(turning: Sequence[Turning], landing: Landing) -> list[Edit]:
    """Write numbers as round as they may be to land near enough."""

    def made(level: int) -> tuple[list[Edit], float]:
        found = [(each, *each.turned(to, level)) for each, to in turning]
        edits = [edit for _, each, _ in found for edit in each]
        return edits, landing.missed([(each, value) for each, _, value in found])

    edits, far = made(0)
    if far <= NEAR_MM:
        return edits
    near = max(NEAR_MM, made(len(FINER) - 1)[1] + SKIPPED_MM)  # a knob may end before it is there
    return next(edits for edits, far in map(made, range(len(FINER))) if far <= near)


def run_in(place: Step, step: Step) -> Step:
    """Find the step directly in a place that a run belongs to."""
    return next(each for each in step.chain if each.around is place)


def values_of(place: Step) -> Values:
    """Read what a placing says."""
    return read(
        WORDS[place.statement.word], place.statement.arguments, place.scope, place.statement.place
    )


def back(frame: Frame, vector: Floats) -> Floats:
    """Carry a vector (2,) of the sheet into a frame.

    Raises ScorecraftError where the frame is so small that there is no way back.
    """
    if abs(np.linalg.det(frame.axes)) < 1e-12:
        raise say.NO_WAY_BACK.error()
    return np.asarray(np.linalg.solve(frame.axes, vector))


def size_of(frame: Frame) -> float:
    """Tell how many mm of the sheet one mm of a frame makes."""
    return float(np.sqrt(abs(np.linalg.det(frame.axes))))


def needed(found: Slot | None) -> Slot:
    """Take a number that every such statement has."""
    assert found is not None
    return found
