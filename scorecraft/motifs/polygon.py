"""A regular polygon, one stroke a side."""

from math import pi

import numpy as np

from scorecraft.curves import polar, segment
from scorecraft.cuts import Stroke


def polygon(*, radius: float, sides: int) -> list[Stroke]:
    """Sides of a regular polygon with corners at `radius` (mm), the first corner on +y."""
    corners = polar(np.full(sides, radius), 2 * pi * np.arange(sides) / sides)
    ends = np.roll(corners, -1, axis=0)
    return [Stroke("side", segment(*side)) for side in zip(corners, ends, strict=True)]
