"""What is practised in one row: the strokes at full size, how the blade is held, why."""

import math
from collections.abc import Sequence

import numpy as np
import shapely
from shapely.ops import substring

from scorecraft.arrays import Line
from scorecraft.bench.blade import upright
from scorecraft.curves import length
from scorecraft.drawing.practise.words import dough_words
from scorecraft.frozen import dataclass


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
    whole = length(line)
    start = min(max(at * whole - wide / 2, 0.0), whole - wide)
    piece: Line = shapely.get_coordinates(substring(shapely.LineString(line), start, start + wide))
    return piece


def bounds(lines: Sequence[Line]) -> tuple[float, float, float, float]:
    """Measure the box around lines: left, low, right, high (mm)."""
    left, low, right, high = shapely.MultiLineString(list(lines)).bounds
    return left, low, right, high
