"""How long the panels of a pattern should be: as fine as makes no matter, and still quick."""

from bisect import bisect_left
from collections.abc import Sequence

import numpy as np

from scorecraft.arrays import Floats, Line
from scorecraft.opening.noding import along_line, noded
from scorecraft.opening.panels import checked, count_of, own_panel

OPENING_FINEST_PANEL_MM = 1.0
"""Finer panels than this change no opening."""
OPENING_COARSEST_PANEL_MM = 8.0
"""The longest panels a pattern is cut into, however many cuts it has."""
OPENING_PANELS_AIMED = 1_300.0
"""Long patterns are cut into about this many panels, to stay quick."""
SIZES = 61
"""Sizes tried between the finest and the coarsest, each a few percent longer than the last."""


def panel_for(lines: Sequence[Line], aimed: float = OPENING_PANELS_AIMED) -> float:
    """Choose the length of the panels (mm) for lines (N, 2).

    `OPENING_FINEST_PANEL_MM`, or as much longer as it takes to stay near `aimed` panels, up to
    `OPENING_COARSEST_PANEL_MM`. Raises UsageError for a line that is none.

    Measured on all patterns of the shelf at their defaults, 180 to 1300 panels, against panels a
    third as long as 1950 would be: what the guide tells of each number, the widest mouth of its
    cuts, is within 3 %, or 0.1 mm where it is narrow, their mean mouth within 3 % or 0.12 mm, room
    within 0.0014. Of single cuts the widest mouth is within 5 % or 0.17 mm.
    """
    if not lines:
        return OPENING_FINEST_PANEL_MM
    lines = [checked(line, k) for k, line in enumerate(lines)]
    bare = [np.array([0.0, along_line(line)[-1]]) for line in lines]
    about = _finest(bare, aimed)
    return _finest([node.along_mm for node in noded(lines, about)], aimed)


def _finest(nodes: Sequence[Floats], aimed: float) -> float:
    """Find the shortest panel (mm) that cuts lines with nodes at distances (mm) into few enough."""
    pieces = np.concatenate([np.diff(along) for along in nodes])
    length = np.repeat([along[-1] for along in nodes], [len(along) - 1 for along in nodes])
    sizes = np.geomspace(OPENING_FINEST_PANEL_MM, OPENING_COARSEST_PANEL_MM, SIZES).tolist()

    def few(panel_mm: float) -> bool:
        return bool(count_of(pieces, own_panel(length, panel_mm)).sum() <= aimed)

    return float(sizes[bisect_left(sizes[:-1], True, key=few)])
