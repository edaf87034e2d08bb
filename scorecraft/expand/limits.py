"""What one run may use up, and how far it may stray: every limit of expansion is kept here."""

from collections.abc import Sequence

import numpy as np

from scorecraft.arrays import Flags, Floats, Line
from scorecraft.errors import ScorecraftError
from scorecraft.expand.frame import Frame
from scorecraft.practice import (
    FARTHEST_MM,
    MOST_CUT_MM,
    MOST_CUTS,
    MOST_LEVELS,
    MOST_POINTS,
    MOST_STEPS,
    SCALE_LIMITS,
    SHORTEST_STROKE_MM,
    Rule,
)

FEWER = "fewer copies, or a shallower recursion"


class SpentError(ScorecraftError):
    """A run has used up what it may: it ends here."""


class Budget:
    """What a run has used up so far."""

    def __init__(self) -> None:
        self.steps = 0
        self.levels = 0
        self.points = 0
        self.cuts = 0
        self.length_mm = 0.0

    def step(self) -> None:
        """Run one more statement."""
        self.steps += 1
        spent(self.steps, MOST_STEPS)

    def enter(self) -> None:
        """Go into a block."""
        self.levels += 1
        spent(self.levels, MOST_LEVELS)

    def leave(self) -> None:
        """Come out of a block."""
        self.levels -= 1

    def draw(self, points: int) -> None:
        """Draw so many points, kept or not."""
        self.points += points
        spent(self.points, MOST_POINTS)

    def keep(self, cuts: int, length_mm: float) -> None:
        """Keep so many cuts."""
        self.cuts += cuts
        self.length_mm += length_mm
        spent(self.cuts, MOST_CUTS)
        spent(self.length_mm, MOST_CUT_MM)


def spent(used: float, limit: Rule) -> None:
    """Raise SpentError where more is used than a limit allows."""
    if used > limit.value:
        what = "mm of cuts" if limit is MOST_CUT_MM else limit.unit
        what = "levels of blocks in one another" if limit is MOST_LEVELS else what
        raise SpentError(f"more than {limit.value:,.0f} {what}", None, FEWER)


def check_frame(frame: Frame) -> None:
    """Raise SpentError for a frame too far from the loaf, or drawn too large or small."""
    if not np.abs(frame.origin).max() <= FARTHEST_MM.value:
        limit = f"at most {FARTHEST_MM.value:,.0f} mm"
        raise SpentError("a copy stands too far from the crown", None, limit)
    scale = float(np.hypot(*frame.axes[:, 1]))
    least, most = SCALE_LIMITS
    if not least.value <= scale <= most.value:
        says = "small" if scale < least.value else "large"
        limit = f"scales multiply: at least {least.value:g}, at most {most.value:,.0f}"
        raise SpentError(f"a copy is drawn too {says}", None, limit)


def check_near(lines: Sequence[Line]) -> None:
    """Raise SpentError for lines that reach too far from the crown."""
    if lines and not np.abs(np.concatenate(lines)).max() <= FARTHEST_MM.value:
        limit = f"at most {FARTHEST_MM.value:,.0f} mm"
        raise SpentError("this reaches too far from the crown", None, limit)


def lengths_mm(lines: Sequence[Line]) -> Floats:
    """Measure lines (N, 2) along the sheet, all in one pass; shape (len(lines),)."""
    points = np.concatenate(lines)
    starts = np.cumsum([0, *(len(line) for line in lines[:-1])])
    steps = np.hypot(*np.diff(points, axis=0, append=points[-1:]).T)
    steps[starts[1:] - 1] = 0.0
    return np.asarray(np.add.reduceat(steps, starts))


def long_enough(lengths: Floats) -> Flags:
    """Tell which strokes a blade can make; lengths (N,) in mm."""
    return lengths >= SHORTEST_STROKE_MM.value
