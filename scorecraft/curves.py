"""Curves sampled so finely that the polyline is as good as the curve on dough.

Angles are turntable angles: measured clockwise from +y. Points are (N, 2) arrays in mm. No chord
strays further from its curve than `CHORD_MM`.
"""

from collections.abc import Callable
from math import asin, ceil, pi, sqrt

import numpy as np
from numpy.typing import ArrayLike

from scorecraft.arrays import Line

CHORD_MM = 0.04
"""The furthest a drawn chord strays from its curve."""


def polar(radius: Line | float, angle: Line | float) -> Line:
    """Points at a radius (mm) and a turntable angle (radians) from the origin, shape (..., 2).

    >>> polar(10.0, pi / 2).round(6).tolist()
    [10.0, 0.0]
    """
    angle = np.asarray(angle)
    return np.stack([radius * np.sin(angle), radius * np.cos(angle)], axis=-1)


def segment(start: ArrayLike, end: ArrayLike) -> Line:
    """Return the straight line between two points (mm) as a (2, 2) array.

    >>> segment((0, 0), (3, 4)).tolist()
    [[0.0, 0.0], [3.0, 4.0]]
    """
    return np.array([start, end], dtype=np.float64)


def ray(near: float, far: float, angle: float) -> Line:
    """Return the straight line out from one radius to another (mm) at a turntable angle (radians).

    >>> ray(2.0, 9.0, 0.0).tolist()
    [[0.0, 2.0], [0.0, 9.0]]
    """
    return polar(np.array([near, far]), angle)


def arc(radius: float, start: float, end: float, centre: tuple[float, float] = (0.0, 0.0)) -> Line:
    """Circular arc of a radius (mm) from one turntable angle to another (radians), in that order.

    A whole turn returns to its first point exactly.

    >>> arc(50.0, 0.0, pi / 2)[-1].round(6).tolist()
    [50.0, 0.0]
    """
    angles = np.linspace(start, end, arc_steps(radius, end - start) + 1)
    points: Line = polar(radius, angles) + np.asarray(centre)
    if abs(abs(end - start) - 2 * pi) < 1e-12:
        points[-1] = points[0]
    return points


def arc_steps(radius: float, sweep: float) -> int:
    """Count the equal chords an arc of a radius (mm) and sweep (radians) needs."""
    if radius <= CHORD_MM:
        return max(4, ceil(abs(sweep)))
    widest = 4 * asin(sqrt(CHORD_MM / (2 * radius)))
    return max(2, ceil(abs(sweep) / min(widest, pi / 6)))


def turned(line: Line, angle: float) -> Line:
    """Turn a line (N, 2) about the origin by a turntable angle (radians), clockwise.

    >>> turned(segment((0, 0), (0, 9)), pi / 2).round(6).tolist()
    [[0.0, 0.0], [9.0, 0.0]]
    """
    return line[:, :1] * polar(1.0, angle + pi / 2) + line[:, 1:] * polar(1.0, angle)


def bezier(p0: ArrayLike, p1: ArrayLike, p2: ArrayLike, p3: ArrayLike) -> Line:
    """Cubic Bezier curve through four control points (mm), as (N, 2).

    >>> bezier((0, 0), (0, 10), (10, 10), (10, 0))[[0, -1]].tolist()
    [[0.0, 0.0], [10.0, 0.0]]
    """
    controls = np.array([p0, p1, p2, p3], dtype=np.float64)
    t = np.linspace(0, 1, bezier_steps(controls) + 1)
    u = 1 - t
    weights = np.column_stack([u**3, 3 * u**2 * t, 3 * u * t**2, t**3])
    return np.asarray(weights @ controls)


def bezier_steps(controls: Line) -> int:
    """Count the chords that a cubic Bezier curve with control points (4, 2) in mm needs.

    It follows from the bound on the second derivative, |B''| h^2 / 8.
    """
    bend = 6 * np.hypot(*np.diff(controls, n=2, axis=0).T).max()
    return max(1, ceil(sqrt(bend / (8 * CHORD_MM))))


def join(*pieces: Line) -> Line:
    """Lay curves end to end into one line; each starts where the one before it ends.

    Each is (N, 2), mm.
    """
    return np.concatenate([pieces[0], *(piece[1:] for piece in pieces[1:])])


def sample(curve: Callable[[Line], Line], start: float, end: float) -> Line:
    """Sample a smooth curve given by its parameter, halving the steps until chords are close.

    `curve` takes an (N,) array of parameters and returns (N, 2) points in mm.
    """
    count = 16
    while count < 1 << 16:
        points = curve(np.linspace(start, end, 2 * count + 1))
        middle = (points[:-2:2] + points[2::2]) / 2
        if np.hypot(*(points[1::2] - middle).T).max() < 2 * CHORD_MM:
            return points
        count *= 2
    return points


def smooth(points: ArrayLike) -> Line:
    """Smooth curve through points (N, 2) in mm; a last point equal to the first closes it.

    Centripetal Catmull-Rom spline: Barry & Goldman 1988, with the square root of the chord as
    the knot distance, which makes no loops or cusps (Yuksel, Schaefer & Keyser 2011;
    recalled). An open end bends on as the curve does next to it.
    """
    through = without_repeats(np.asarray(points, dtype=np.float64))
    if len(through) < 3:
        return through
    closed = bool(np.array_equal(through[0], through[-1]))
    before = through[-2] if closed else _bent_on(*through[:3])
    after = through[1] if closed else _bent_on(*through[:-4:-1])
    padded = np.vstack([before, through, after])
    return join(*(_catmull_rom(*padded[i : i + 4]) for i in range(len(through) - 1)))


def _bent_on(end: Line, second: Line, third: Line) -> Line:
    """Point beyond an end: the third point mirrored across the middle of the first piece."""
    way = (end - second) / np.hypot(*(end - second))
    return np.asarray(third - 2 * ((third - (end + second) / 2) @ way) * way)


def length(line: Line) -> float:
    """Length of a line (N, 2), in its own unit.

    >>> length(segment((0, 0), (3, 4)))
    5.0
    """
    return float(np.hypot(*np.diff(line, axis=0).T).sum())


def without_repeats(points: Line) -> Line:
    """Drop each point (N, 2) that equals the one before it."""
    keep = np.ones(len(points), dtype=bool)
    keep[1:] = (points[1:] != points[:-1]).any(axis=1)
    return points[keep]


def _catmull_rom(p0: Line, p1: Line, p2: Line, p3: Line) -> Line:
    """Piece from p1 to p2 as the Bezier curve with the spline's end tangents."""
    a, b, c = (sqrt(np.hypot(*step)) for step in (p1 - p0, p2 - p1, p3 - p2))
    leave = (p1 - p0) / a - (p2 - p0) / (a + b) + (p2 - p1) / b
    arrive = (p2 - p1) / b - (p3 - p1) / (b + c) + (p3 - p2) / c
    return bezier(p1, p1 + leave * b / 3, p2 - arrive * b / 3, p2)
