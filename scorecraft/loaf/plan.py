"""Lines on the dough as they are seen from straight above."""

from collections.abc import Sequence

import numpy as np
import shapely

from scorecraft.arrays import Floats, Shapes
from scorecraft.loaf.dome import Loaf

STEP_MM = 1.0
"""Sheet lines are cut into steps so short before they are bent over the dome."""
STRAY_MM = 0.005
"""Points closer to the straight line than this are left out again."""


def plan_strings(loaf: Loaf, lines: Sequence[Floats]) -> Shapes:
    """Project sheet lines (N, 2) in mm to plan, as shapely lines, one each.

    Straight lines on the dough bend, so points are added.
    """
    if not lines:
        return np.zeros(0, dtype=object)
    owner = np.repeat(np.arange(len(lines)), [len(each) for each in lines])
    dense = shapely.segmentize(shapely.linestrings(np.concatenate(lines), indices=owner), STEP_MM)
    points, owner = shapely.get_coordinates(dense, return_index=True)
    bent = shapely.linestrings(loaf.sheet_to_plan(points), indices=owner)
    strings: Shapes = shapely.simplify(bent, STRAY_MM)
    return strings
