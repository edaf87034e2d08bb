"""What a statement tells once it is selected: its handles, what can be done to it, exact values."""

from collections.abc import Sequence

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.editing import telling as say
from scorecraft.editing.copying import COUNTED, copier
from scorecraft.editing.freeing import check_free, copying
from scorecraft.editing.handles import Handle, handles
from scorecraft.editing.moving import held_fast, needed, placed_by, polar, round_keys
from scorecraft.editing.scene import Scene
from scorecraft.editing.slots import LockedError, Slot, slot
from scorecraft.editing.turning import turning
from scorecraft.errors import ScorecraftError
from scorecraft.expand.frame import Frame
from scorecraft.expand.traced import Step
from scorecraft.frozen import dataclass
from scorecraft.language.keys import Key
from scorecraft.language.tree import Argument, outside
from scorecraft.language.words import ATTRIBUTES, WORDS, keys_of

NEAR_MM = 0.01
BEYOND_MM = 12.0
"""The knob that turns a figure sits so far beyond its tip."""


@dataclass(frozen=True, slots=True)
class Lock:
    """Why a number does not turn, if it does not; ways to ask for it; what else turns with it."""

    why: str = ""
    ways: tuple[str, ...] = ()
    also: str = ""
    knob: str = ""


@dataclass(frozen=True, slots=True)
class Knob:
    """A handle as it is shown, in the plan (mm).

    It pulls along a unit vector, or goes `round` a point, or both are None: a free point.
    """

    name: str
    kind: str
    at: Floats
    along: Floats | None
    round: Floats | None
    value: str
    said: str
    lock: Lock


@dataclass(frozen=True, slots=True)
class Chip:
    """Something to be done at a tap: its name, and how it stands now."""

    name: str
    value: str | int | bool = ""
    locked: str = ""


@dataclass(frozen=True, slots=True)
class Field:
    """A key of the selected statement, as it stands in the text or by default."""

    key: Key
    value: str
    written: bool


def lock_of(slots: Sequence[Slot]) -> Lock:
    """Tell whether some numbers turn together."""
    also = say.also({at.place.line: at.word for s in slots if s.form == "knob" for at in s.also})
    knob = next((each.name for each in slots if each.form == "knob"), "")
    for each in slots:
        try:
            each.freed("")
        except LockedError as error:
            ways = [way for way in error.ways if all(way in s.ways or not s.held for s in slots)]
            return Lock(error.message, tuple(ways), also, knob)
    return Lock("", (), also, knob)


def move_lock(scene: Scene, step: Step) -> tuple[Lock, Step | None]:
    """Tell whether a run can be moved, and the place about whose middle it goes, if it does so."""
    if told := held_fast(scene, step, moving=True):
        return Lock(told.message), None
    place = placed_by(scene, step)
    if place is None:
        return Lock(), None
    around = place.statement.word == "around"
    round_ = around or polar(place)
    turned = round_keys(place.statement) if around else ("angle",)
    keys = ("radius", *turned) if round_ else ("x", "y")
    lock = lock_of([needed(slot(scene, place, key)) for key in keys])
    return lock, place if round_ else None


def shown(scene: Scene, handle: Handle) -> Knob:
    """Show a handle where the picture has it."""
    number = handle.slots[0]
    at = scene.plan(handle.place)
    along = about = None
    if handle.round:
        about = scene.plan(handle.frame.origin)
    elif handle.pull is not None:
        further = handle.frame.place((handle.at + NEAR_MM * handle.pull)[None])[0]
        way = scene.plan(further) - at
        along = way / max(float(np.hypot(*way)), 1e-12)
    value = number.words if handle.pull is not None or handle.round else ""
    kind = "angle" if handle.round else "point" if handle.pull is None else "size"
    said = f"{handle.name} {value}".strip().replace("_", " ")
    return Knob(handle.name, kind, at, along, about, value, said, lock_of(handle.slots))


def turn_knob(scene: Scene, step: Step) -> Knob | None:
    """Show the knob that turns a run: beyond its foremost point, or None where nothing is drawn."""
    cuts = scene.cuts[step]
    if not cuts:
        return None
    frame = step.drawn.frame
    points = np.concatenate([scene.traced.layout.cuts[index].line for index in cuts])
    up = frame.axes[:, 1]
    ahead = float(((points - frame.origin) @ up / (up @ up)).max())
    size = float(np.hypot(*up))
    at = frame.place(np.array([[0.0, max(ahead, 0.0) + BEYOND_MM / size]]))[0]
    slots = turning(scene, step)
    value = slots[0].words if slots else ""
    return Knob(
        "turn", "angle", scene.plan(at), None, scene.plan(frame.origin), value,
        f"turn {value}".strip(), lock_of(slots),
    )  # fmt: skip


def knobs_of(scene: Scene, step: Step) -> list[Knob]:
    """Give every handle of a run, the one that turns it last."""
    if held_fast(scene, step, moving=False):
        return []
    found = [shown(scene, each) for each in handles(scene, step)]
    turn = None if held_fast(scene, step, moving=True) else turn_knob(scene, step)
    return [*found, turn] if turn else found


def axes_in_plan(scene: Scene, frame: Frame) -> tuple[Floats, Floats]:
    """Give a frame's origin in the plan, and its axes (2, 2: x then y) as they look there."""
    ends = frame.place(np.array([[0.0, 0.0], [NEAR_MM, 0.0], [0.0, NEAR_MM]]))
    at, x, y = scene.loaf.sheet_to_plan(ends)
    return at, np.array([x - at, y - at]) / NEAR_MM


def chips_of(scene: Scene, step: Step) -> list[Chip]:
    """Give what can be done to a run at a tap."""
    if step.statement.word == "define":
        return [Chip("show")]
    counted = copier(step, COUNTED)
    count = counted.blocks if counted else 1
    locked = lock_of([needed(slot(scene, counted, "count"))]).why if counted else ""
    chips = [
        Chip("repeat", count, locked),
        Chip("mirror", copier(step, ("mirror",)) is not None),
        *(Chip(key.name, worn(scene, step, key.name)) for key in ATTRIBUTES[:3]),
        Chip("duplicate"),
        Chip("delete"),
    ]
    if (copied := copying(step)) is not None:
        chips.append(Chip("free_copy", locked=not_free(scene, copied)))
    return [*chips, Chip("show")]


def not_free(scene: Scene, copied: Step) -> str:
    """Say why copies cannot be freed, or nothing."""
    try:
        check_free(scene, copied)
    except ScorecraftError as error:
        return f"{error.message}; {error.hint}"
    return ""


def worn(scene: Scene, step: Step, key: str) -> str:
    """Give a cut attribute as it acts on a run, written by it or by what it stands in."""
    for each in reversed(step.chain):
        argument = each.statement.get(key)
        if argument is not None and each.statement.word != "define":
            found = slot(scene, each, key)
            return found.words if found else ""
    return ""


def fields_of(scene: Scene, step: Step) -> list[Field]:
    """List the keys of a run's statement with their values, for a form."""
    statement = step.statement
    if statement.word in WORDS:
        keys = list(keys_of(WORDS[statement.word]).values())
    else:
        given = scene.rules[statement.word].arguments[1:]
        keys = [Key(each.key, "any", outside(each.value)) for each in given]
    found = []
    for key in keys:
        argument: Argument | None = statement.get(key.name)
        value = scene.written.slice(argument.span) if argument else key.default
        found.append(Field(key, value, argument is not None))
    return found
