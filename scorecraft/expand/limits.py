"""What one run may use up, and how far it may stray: every limit of expansion is kept here."""

from collections.abc import Sequence

import numpy as np
import shapely

from scorecraft.arrays import Floats, Line
from scorecraft.errors import ScorecraftError
from scorecraft.expand import telling as say
from scorecraft.expand.frame import Frame

MOST_CUTS = 20_000
"""The most cuts a pattern may expand to."""
MOST_LEVELS = 150
"""The deepest nesting of blocks, counted through rules."""
MOST_STEPS = 100_000
"""The most statements one run may execute."""
MOST_POINTS = 500_000
"""The most points one run may draw."""
MOST_CUT_MM = 1e6
"""The greatest length of all cuts together: a kilometre."""
FARTHEST_MM = 10_000
"""How far from the crown a cut may reach."""
SCALE_LIMITS = (1e-9, 1e6)
"""The least and the greatest scale of a frame within frames."""
SHORTEST_STROKE_MM = 0.1
"""No blade makes a shorter stroke: it is dropped."""


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
        spent(self.steps, MOST_STEPS, "statements")

    def enter(self) -> None:
        """Go into a block."""
        self.levels += 1
        spent(self.levels, MOST_LEVELS, "levels of blocks")

    def leave(self) -> None:
        """Come out of a block."""
        self.levels -= 1

    def draw(self, points: int) -> None:
        """Draw so many points, kept or not."""
        self.points += points
        spent(self.points, MOST_POINTS, "points")

    def keep(self, cuts: int, length_mm: float) -> None:
        """Keep so many cuts."""
        self.cuts += cuts
        self.length_mm += length_mm
        spent(self.cuts, MOST_CUTS, "cuts")
        spent(self.length_mm, MOST_CUT_MM, "mm of cuts")


def spent(used: float, limit: float, what: str) -> None:
    """Raise SpentError where more is used than a limit allows."""
    if used > limit:
        raise say.MORE_THAN(limit=limit, what=what).as_error(SpentError)


def check_frame(frame: Frame) -> None:
    """Raise SpentError for a frame too far from the loaf, or drawn too large or small."""
    if not np.abs(frame.origin).max() <= FARTHEST_MM:
        raise say.COPY_TOO_FAR(most_mm=FARTHEST_MM).as_error(SpentError)
    scale = float(np.hypot(*frame.axes[:, 1]))
    least, most = SCALE_LIMITS
    if not least <= scale <= most:
        says = "large" if scale > least else "small"
        raise say.COPY_SCALED(says=says, least=least, most=most).as_error(SpentError)


def check_near(lines: Sequence[Line]) -> None:
    """Raise SpentError for lines that reach too far from the crown."""
    if lines and not np.abs(np.concatenate(lines)).max() <= FARTHEST_MM:
        raise say.CUT_TOO_FAR(most_mm=FARTHEST_MM).as_error(SpentError)


def lengths_mm(lines: Sequence[Line]) -> Floats:
    """Measure lines (N, 2) along the sheet, all in one pass; shape (len(lines),)."""
    owner = np.repeat(np.arange(len(lines)), [len(line) for line in lines])
    return np.asarray(shapely.length(shapely.linestrings(np.concatenate(lines), indices=owner)))
