"""A gesture as the page tells it, read from JSON with care."""

from collections.abc import Callable, Mapping
from math import isfinite, radians
from typing import get_args

from scorecraft.checks.cure import Change, ChangeKind, End
from scorecraft.editing import gestures as g
from scorecraft.editing.slots import Way
from scorecraft.errors import UsageError
from scorecraft.web.asked import Data, choice_of, number_of, text_of, words_of

FARTHEST_MM = 2_000.0
"""No finger is further from the crown."""
MOST_POINTS = 5_000
MOST_CHANGES = 20
NO_FIX = '"changes" must be those of a fix'
MOST_COPIES = 360
MOST_LINES = 1_000_000
MOST_TURN_DEG = 3_600.0


def gesture_of(data: Data) -> g.Gesture:
    """Read the gesture of a request; raises UsageError for what is none."""
    told = data.get("gesture")
    if not isinstance(told, Mapping):
        raise UsageError('"gesture" must be an object')
    kind = choice_of(told, "kind", tuple(READERS))
    return READERS[kind](told)


def on(told: Data) -> tuple[int, int, Way]:
    """Read which statement and which copy of it a gesture is about, and its way."""
    line = whole_of(told, "statement", 0, 0, MOST_LINES)
    copy = whole_of(told, "copy", 0, 0, MOST_LINES)
    way = choice_of(told, "way", ("", "multiply", "own"))
    return line, copy, way  # type: ignore[return-value]


def within(told: Data) -> tuple[int, int]:
    """Read in which block a new statement stands; (0, 0) for none."""
    data = {"inside": told.get("inside") or 0, "copy": told.get("copy") or 0}
    return whole_of(data, "inside", 0, 0, MOST_LINES), whole_of(data, "copy", 0, 0, MOST_LINES)


def whole_of(told: Data, key: str, default: int, least: int, most: int) -> int:
    """Read a whole number within its limits; raises UsageError for anything else."""
    value = number_of(told, key, default, least, most)
    if value != int(value):
        raise UsageError(f'"{key}" must be a whole number')
    return int(value)


def point_of(told: Data, key: str) -> g.Point:
    """Read a point [x, y] in mm; raises UsageError for anything else."""
    return pair(told.get(key), key)


def pair(value: object, key: str) -> g.Point:
    """Take two numbers as a point (mm); raises UsageError for anything else."""
    if not isinstance(value, list) or len(value) != 2:
        raise UsageError(f'"{key}" must be a point [x, y]')
    x, y = value
    for each in (x, y):
        if isinstance(each, bool) or not isinstance(each, int | float) or not isfinite(each):
            raise UsageError(f'"{key}" must be a point [x, y]')
        if abs(each) > FARTHEST_MM:
            raise UsageError(f'"{key}" is too far from the loaf')
    return float(x), float(y)


def points_of(told: Data) -> tuple[g.Point, ...]:
    """Read the points of a stroke; raises UsageError for none or too many."""
    value = told.get("points")
    if not isinstance(value, list) or not 1 < len(value) <= MOST_POINTS:
        raise UsageError('"points" must be some points [x, y]')
    return tuple(pair(each, "points") for each in value)


def pressure_of(told: Data) -> tuple[float, ...]:
    """Read the pressures of a pen along a stroke; raises UsageError for anything else."""
    value = told.get("pressure") or []
    if not isinstance(value, list) or len(value) > MOST_POINTS:
        raise UsageError('"pressure" must be a few numbers from 0 to 1')
    return tuple(number_of({"pressure": each}, "pressure", 0.0, 0.0, 1.0) for each in value)


def moving(told: Data) -> g.Gesture:
    """Read a move: from one point to another, or by so much."""
    if "by" in told:
        return g.Shift(*on(told), by=point_of(told, "by"))
    taken = point_of(told, "from") if told.get("from") is not None else None
    return g.Move(*on(told), to=point_of(told, "to"), taken=taken)


def turning(told: Data) -> g.Gesture:
    """Read a turn."""
    return g.Turn(
        *on(told), by_rad=radians(number_of(told, "by", 0, -MOST_TURN_DEG, MOST_TURN_DEG))
    )


def dragging(told: Data) -> g.Gesture:
    """Read the drag of a handle."""
    taken, to = point_of(told, "from"), point_of(told, "to")
    return g.Drag(*on(told), name=text_of(told, "name"), taken=taken, to=to)


def setting(told: Data) -> g.Gesture:
    """Read an exact value; raises UsageError for one of several lines."""
    return g.Set(*on(told), key=text_of(told, "key"), value=words_of(told, "value") or "")


def making(told: Data) -> g.Gesture:
    """Read which figure is laid on the loaf, and where."""
    return g.New(*within(told), word=text_of(told, "word"), at=point_of(told, "at"))


def drawing(told: Data) -> g.Gesture:
    """Read a stroke."""
    repeat = whole_of(told, "repeat", 0, 0, MOST_COPIES)
    points, pressure = points_of(told), pressure_of(told)
    return g.Stroke(*within(told), points=points, repeat=repeat, pressure=pressure)


def curing(told: Data) -> g.Gesture:
    """Read a cure as `finding.cures` tells it; raises UsageError for what is none."""
    value = told.get("changes")
    if not isinstance(value, list) or not 0 < len(value) <= MOST_CHANGES:
        raise UsageError(NO_FIX)
    return g.Cure(changes=tuple(change_of(each) for each in value))


def change_of(told: object) -> Change:
    """Read one change of a cure; raises UsageError for what is none."""
    if not isinstance(told, Mapping):
        raise UsageError(NO_FIX)
    kind: ChangeKind = choice_of(told, "kind", get_args(ChangeKind))  # type: ignore[assignment]
    cuts = tuple(whole_of({"cuts": i}, "cuts", 0, 0, MOST_LINES) for i in list_of(told, "cuts"))
    ends: tuple[End, ...] = tuple(
        choice_of({"ends": each}, "ends", get_args(End))  # type: ignore[misc]
        for each in list_of(told, "ends")
    )
    points = tuple(pair(each, "points") for each in list_of(told, "points"))
    lines = tuple(
        tuple(pair(each, "lines") for each in list_of({"line": line}, "line"))
        for line in list_of(told, "lines")
    )
    wanted = {"move": len(cuts), "turn": 1}.get(kind, 0)
    even = len(ends) == (len(cuts) if kind in ("longer", "shorter") else 0)
    if not even or len(points) < wanted or any(len(line) < 2 for line in lines):
        raise UsageError(NO_FIX)
    rad = radians(number_of(told, "deg", 0.0, -MOST_TURN_DEG, MOST_TURN_DEG))
    mm = number_of(told, "mm", 0.0, 0.0, FARTHEST_MM)
    return Change(kind, cuts, mm, rad, ends, points, lines)


def list_of(told: Data, key: str) -> list[object]:
    """Read a list that may be left out; raises UsageError for anything else."""
    value = told.get(key) or []
    if not isinstance(value, list) or len(value) > MOST_POINTS:
        raise UsageError(f'"{key}" must be a list')
    return value


READERS: dict[str, Callable[[Data], g.Gesture]] = {
    "move": moving,
    "turn": turning,
    "handle": dragging,
    "set": setting,
    "repeat": lambda told: g.Repeat(*on(told), whole_of(told, "count", 1, 1, MOST_COPIES)),
    "mirror": lambda told: g.Mirror(*on(told)),
    "duplicate": lambda told: g.Duplicate(*on(told)),
    "delete": lambda told: g.Delete(*on(told)),
    "free_copy": lambda told: g.Free(*on(told)),
    "new": making,
    "stroke": drawing,
    "cure": curing,
}
"""What reads each kind of gesture."""
