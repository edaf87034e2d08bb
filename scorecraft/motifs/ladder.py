"""A ladder: two rails and the rungs between them."""

import numpy as np

from scorecraft.arrays import Line
from scorecraft.curves import bezier, segment
from scorecraft.cuts import Stroke
from scorecraft.motifs.fit import both

BELLY = 0.16
"""How much wider than at its ends a ladder is in the middle, as a share of its width."""
GAP = 0.12
"""How far from the rails a rung ends, as a share of the width."""


def ladder(*, length: float, width: float, rungs: int) -> list[Stroke]:
    """Draw a ladder along +y, centred: rails `length` (mm) long, `width` apart in the middle.

    The rails bow out a little, as the hand draws them; no rung touches them.
    """
    rail = bezier(*_rail_points(length, width))
    strokes = both("rail", rail)
    for share in (np.arange(rungs) + 0.5) / rungs:
        y = (share - 0.5) * length
        half = float(np.interp(y, rail[:, 1], rail[:, 0])) - GAP * width
        strokes.append(Stroke("rung", segment((-half, y), (half, y))))
    return strokes


def _rail_points(length: float, width: float) -> Line:
    """Control points of the right rail, from its foot up."""
    end, middle = 0.5 * width * (1 - BELLY), 0.5 * width * (1 + BELLY / 3)
    x = [end, middle, middle, end]
    return np.column_stack([x, np.array([-0.5, -0.17, 0.17, 0.5]) * length])
