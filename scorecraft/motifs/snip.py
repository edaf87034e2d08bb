"""A cut with scissors, as for an ear of wheat."""

import numpy as np

from scorecraft.cuts import Stroke

FALLS = 0.32
"""How far forward the ends of the cut lie, over its width: the blades slant into a round loaf."""


def snip(*, width: float) -> list[Stroke]:
    """One stroke across, `width` (mm) wide, its middle at the origin and its ends forward."""
    share = np.linspace(-1.0, 1.0, 25)
    return [Stroke("snip", np.column_stack([share * width / 2, FALLS * width * share**2]))]
