"""What textures are built of: families of parallel lines, and copies of a figure on a lattice."""

from math import ceil, cos, degrees, floor, hypot, pi, sin

import numpy as np

from scorecraft.arrays import Line
from scorecraft.errors import UsageError
from scorecraft.practice import FLATTEST_DEG

Bounds = tuple[float, float, float, float]
"""xmin, ymin, xmax, ymax of a box in mm."""


SIX = (pi / 6, pi / 2, -pi / 6)
"""The three ways along the sides of equilateral triangles."""


def families(bounds: Bounds, *angles: float, spacing: float, offset: float = 0.0) -> list[Line]:
    """Straight lines across a box, a family of them at each turntable angle (radians).

    They lie `spacing` (mm) apart; one passes at `offset` (mm) to the right of the origin.
    """
    return [line for turn in angles for line in parallels(bounds, turn, spacing, offset)]


def parallels(bounds: Bounds, angle: float, spacing: float, offset: float) -> list[Line]:
    """Give one family of lines."""
    left, low, right, high = bounds
    middle = np.array([left + right, low + high]) / 2
    radius = hypot(right - left, high - low) / 2 + spacing
    along, across = np.array([sin(angle), cos(angle)]), np.array([cos(angle), -sin(angle)])
    first = ceil((middle @ across - radius - offset) / spacing)
    last = floor((middle @ across + radius - offset) / spacing)
    feet = (np.arange(first, last + 1) * spacing + offset)[:, None] * across
    feet = feet + (middle @ along) * along
    return list(np.stack([feet - radius * along, feet + radius * along], axis=1))


def nodes(bounds: Bounds, a: tuple[float, float], b: tuple[float, float], pad: float) -> Line:
    """Points i a + j b of a lattice that lie within `pad` (mm) of a box, (N, 2)."""
    left, low, right, high = bounds
    box = np.array([[left - pad, low - pad], [right + pad, high + pad]])
    corners = np.array([[x, y] for x in box[:, 0] for y in box[:, 1]])
    shares = corners @ np.linalg.inv(np.array([a, b]))
    (i0, j0), (i1, j1) = np.floor(shares.min(axis=0)), np.ceil(shares.max(axis=0))
    i, j = np.meshgrid(np.arange(i0, i1 + 1), np.arange(j0, j1 + 1), indexing="ij")
    points = np.column_stack([i.ravel(), j.ravel()]) @ np.array([a, b])
    return np.asarray(points[((points >= box[0]) & (points <= box[1])).all(axis=1)])


def copies(figure: Line, places: Line, shift: tuple[float, float] = (0, 0)) -> list[Line]:
    """Repeat a line (N, 2) at every place (K, 2), all of them shifted (mm)."""
    return list((figure + np.asarray(shift))[None, :, :] + places[:, None, :])


def check_angle(what: str, angle: float, most_deg: float) -> None:
    """Raise UsageError unless an angle (radians) lies well between 0 and `most_deg`."""
    least, most = FLATTEST_DEG.value, most_deg - FLATTEST_DEG.value
    if not least - 1e-9 <= degrees(angle) <= most + 1e-9:
        raise UsageError(f"{what} must be between {least:g}deg and {most:g}deg")
