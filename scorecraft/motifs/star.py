"""A star: strokes out from the centre, or its edge."""

from math import pi

import numpy as np

from scorecraft.arrays import Line
from scorecraft.curves import polar, ray, segment
from scorecraft.cuts import Stroke
from scorecraft.errors import UsageError


def star(*, radius: float, points: int, inner: float, outline: bool) -> list[Stroke]:
    """Rays from the radius `inner` out to `radius` (mm), the first along +y.

    With `outline` the edge of the star instead, its inner corners at `inner`. Raises UsageError
    unless `inner` is smaller than `radius`.
    """
    if not 0 <= inner < radius:
        raise UsageError(f"a star's inner radius ({inner:g} mm) must be below its radius")
    turns = 2 * pi * np.arange(points) / points
    if outline:
        tips = polar(np.full(points, radius), turns)
        return [Stroke("outline", edge) for edge in _edges(tips, inner, turns)]
    return [Stroke("ray", ray(inner, radius, turn)) for turn in turns]


def _edges(tips: Line, inner: float, turns: Line) -> list[Line]:
    """Both edges of each tip, from the inner corner out to the tip."""
    step = pi / len(tips)
    left, right = (polar(np.full(len(tips), inner), turns + side * step) for side in (-1, 1))
    pairs = [*zip(left, tips, strict=True), *zip(right, tips, strict=True)]
    return [segment(*pair) for pair in pairs]
