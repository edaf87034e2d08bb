"""Elliptical arcs given by their ends, as SVG writes them.

W3C SVG 1.1, appendix F.6.5 and F.6.6. All is reckoned from the start of the arc and in radii, so
that neither tiny nor huge numbers lose their digits.
"""

from math import pi, radians, sqrt

import numpy as np

from scorecraft.arrays import Floats, Line
from scorecraft.curves import arc_steps
from scorecraft.frozen import dataclass
from scorecraft.trace.matrix import rotation

NOTHING = 1e-9
"""Radii flatter than this, and ends nearer than this share of the radii, are as good as 0."""


@dataclass(frozen=True, slots=True)
class Arc:
    """An arc in mm: the points `start + along @ (unit circle at angles - its first point)`.

    `along` (2, 2) carries the unit circle to the ellipse; angles run from `first` by `swept`;
    `radius_mm` is the longest radius.
    """

    start: Line
    end: Line
    along: Line
    first: float
    swept: float
    radius_mm: float

    @property
    def steps(self) -> int:
        """How many chords the arc needs."""
        return arc_steps(self.radius_mm, self.swept)

    def points(self) -> Line:
        """Sample the arc: (steps + 1, 2) points from its start to its end; in mm."""
        angles = self.first + np.linspace(0, self.swept, self.steps + 1)
        around = np.column_stack([np.cos(angles), np.sin(angles)])
        points = (around - around[0]) @ self.along.T + self.start
        points[-1] = self.end
        return np.asarray(points)


def elliptic_arc(
    start: Line,
    end: Line,
    radii: tuple[float, float],
    turn: float,
    *,
    large: bool,
    sweep: bool,
    frame: Floats,
) -> Arc | None:
    """Find the arc of an ellipse turned by `turn` degrees, through an affine map (2, 3) to mm.

    Radii too small to reach are scaled up; None where a radius is 0, which draws a straight line.
    """
    chord = rotation(radians(-turn)) @ (end - start)
    span, most = float(np.hypot(*chord)), float(np.abs(radii).max())
    if not span or not min(np.abs(radii)) > NOTHING * most:
        return None
    sizes = np.abs(radii) / most * max(most, span / 2)  # of radii too small only the shape counts
    unit = chord / sizes
    reach = float(np.hypot(*unit))
    if reach < NOTHING:
        return None
    grown = max(1.0, reach / 2)
    first, swept = _angles(unit / grown, large, sweep)
    along = frame[:, :2] @ rotation(radians(turn)) @ np.diag(sizes * grown)
    ends = np.array([start, end]) @ frame[:, :2].T + frame[:, 2]
    return Arc(ends[0], ends[1], along, first, swept, float(np.linalg.norm(along, 2)))


def _angles(chord: Line, large: bool, sweep: bool) -> tuple[float, float]:
    """First angle and sweep of the arc of a unit circle over a chord of at most 2."""
    half = chord / 2
    across = sqrt(max(0.0, 1 / float(half @ half) - 1)) * np.array([-half[1], half[0]])
    centre = half + (across if large != sweep else -across)
    first, last = (float(np.arctan2(*(point - centre)[::-1])) for point in (0 * half, chord))
    swept = (last - first) % (2 * pi)
    return first, swept if sweep else swept - 2 * pi
