"""Elliptical arcs given by their ends, as SVG writes them."""

from math import pi, radians, sqrt

import numpy as np

from scorecraft.curves import Points, arc_steps
from scorecraft.trace.matrix import Matrix, rotation


def elliptic_arc(
    start: Points,
    end: Points,
    radii: tuple[float, float],
    turn: float,
    *,
    large: bool,
    sweep: bool,
    frame: Matrix,
) -> Points:
    """Arc of an ellipse turned by `turn` degrees, sampled through an affine map (2, 3) to mm.

    Radii too small to reach are scaled up, and a radius of 0 draws a straight line (W3C SVG 1.1,
    appendix F.6.5 and F.6.6).
    """
    ends = np.array([start, end]) @ frame[:, :2].T + frame[:, 2]
    if not all(radii) or np.array_equal(start, end):
        return np.asarray(ends)
    axes = rotation(radians(turn)) @ np.diag(np.abs(radii))
    centre, first, swept = _centre(np.linalg.solve(axes, np.array([start, end]).T), large, sweep)
    axes = axes * _enlarged(np.linalg.solve(axes, start - end))
    along = frame[:, :2] @ axes
    steps = arc_steps(float(np.linalg.norm(along, 2)), swept)
    angles = first + np.linspace(0, swept, steps + 1)
    around = np.column_stack([np.cos(angles), np.sin(angles)]) + centre
    points = around @ along.T + frame[:, 2]
    points[[0, -1]] = ends
    return np.asarray(points)


def _enlarged(chord: Points) -> float:
    """How far the radii must grow for the ellipse to reach both ends."""
    return max(1.0, float(np.hypot(*chord)) / 2)


def _centre(ends: Points, large: bool, sweep: bool) -> tuple[Points, float, float]:
    """Centre, first angle and sweep of the arc where the ellipse is a unit circle."""
    first, last = (ends / _enlarged(ends[:, 0] - ends[:, 1])).T
    half = (last - first) / 2
    across = sqrt(max(0.0, 1 / float(half @ half) - 1)) * np.array([-half[1], half[0]])
    centre = (first + last) / 2 + (across if large != sweep else -across)
    angles = [float(np.arctan2(*(point - centre)[::-1])) for point in (first, last)]
    swept = (angles[1] - angles[0]) % (2 * pi)
    return centre, angles[0], swept if sweep else swept - 2 * pi
