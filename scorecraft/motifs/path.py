"""A free stroke through given points."""

from collections.abc import Sequence

import numpy as np

from scorecraft import curves
from scorecraft.cuts import Stroke
from scorecraft.errors import UsageError


def path(*, points: Sequence[tuple[float, float]], smooth: bool) -> list[Stroke]:
    """One stroke through points (N, 2) in mm: straight from each to the next, or a smooth curve.

    A last point equal to the first closes it. Raises UsageError where fewer than two points
    differ.
    """
    through = curves.without_repeats(np.asarray(points, dtype=np.float64).reshape(-1, 2))
    if len(through) < 2:
        raise UsageError("a path needs at least two different points")
    return [Stroke("path", curves.smooth(through) if smooth else through)]
