"""A stroke that swings from side to side."""

from math import pi

import numpy as np

from scorecraft.arrays import Line
from scorecraft.curves import sample
from scorecraft.cuts import Stroke


def wave(*, length: float, height: float, waves: float) -> list[Stroke]:
    """Draw a sine of a length (mm) along +y, centred; `height` is crest to trough (mm).

    `waves` counts the full swings; the first goes to +x.
    """

    def curve(t: Line) -> Line:
        swing = height / 2 * np.sin(2 * pi * waves * t)
        return np.column_stack([swing, (t - 0.5) * length])

    return [Stroke("wave", sample(curve, 0, 1))]
