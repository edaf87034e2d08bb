"""What is practised in one row: the strokes at full size, how the blade is held, why."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from scorecraft.arrays import Line
from scorecraft.bench.blade import upright
from scorecraft.curves import length
from scorecraft.drawing.practise.words import dough_words


@dataclass(frozen=True, slots=True)
class Held:
    """How a stroke is cut in dough: depths (mm) where it begins, in its middle and where it ends.

    `blade_rad` is the angle of the blade to the dough; the handle leans to the `right` or to the
    left of who pulls the stroke toward themselves, unless it is upright.
    """

    depths_mm: tuple[float, float, float]
    blade_rad: float
    right: bool = True

    @property
    def words(self) -> str:
        """Say how deep, and how the blade is held."""
        side = "" if upright(self.blade_rad) else "right" if self.right else "left"
        return dough_words(self.depths_mm, math.degrees(self.blade_rad), side)


@dataclass(frozen=True, slots=True, eq=False)
class Exercise:
    """A row of a practice sheet: strokes in their order, in mm, y away from the baker.

    `numbers` are what stands at the start of each stroke, "" for nothing; `beside` are lines that
    are there already. `told` are the paragraphs below the name.
    """

    name: str
    told: tuple[str, ...]
    held: Held
    strokes: tuple[Line, ...]
    numbers: tuple[str, ...]
    beside: tuple[Line, ...] = ()


def turned(line: Line, angle_rad: float) -> Line:
    """Turn a line (N, 2) about the origin, counter-clockwise."""
    c, s = math.cos(angle_rad), math.sin(angle_rad)
    made: Line = line @ np.array([[c, s], [-s, c]])
    return made


def toward_you(line: Line) -> float:
    """Give the angle by which a stroke is turned so that it runs straight toward the baker."""
    x, y = line[-1] - line[0]
    return -math.pi / 2 - math.atan2(y, x)


def part_that_fits(line: Line, at: float, width: float, height: float) -> Line:
    """Take the longest piece of a line about a share of its length that fits in a box (mm)."""
    whole = length(line)
    low, high = 0.0, whole
    if _fits(line, width, height):
        return line
    while high - low > 0.1:
        wide = (low + high) / 2
        low, high = (wide, high) if _fits(_piece(line, at, wide), width, height) else (low, wide)
    return _piece(line, at, low)


def _fits(line: Line, width: float, height: float) -> bool:
    across, along = np.ptp(line, axis=0)
    return bool(across <= width and along <= height)


def _piece(line: Line, at: float, wide: float) -> Line:
    """Cut a piece so long (mm) out of a line, about a share of its length if its ends allow it."""
    ways = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(line, axis=0).T))])
    start = min(max(at * ways[-1] - wide / 2, 0.0), ways[-1] - wide)
    inside = (ways > start) & (ways < start + wide)
    places = np.concatenate([[start], ways[inside], [start + wide]])
    return np.column_stack([np.interp(places, ways, line[:, axis]) for axis in (0, 1)])


def bounds(lines: Sequence[Line]) -> tuple[float, float, float, float]:
    """Measure the box around lines: left, low, right, high (mm)."""
    points = np.concatenate(lines)
    (left, low), (right, high) = points.min(axis=0), points.max(axis=0)
    return float(left), float(low), float(right), float(high)
