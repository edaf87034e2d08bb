"""The short bar beside a slanted cut that says to which side the handle leans."""

from collections.abc import Sequence

import numpy as np
import shapely

from scorecraft.arrays import Line
from scorecraft.curves import length
from scorecraft.cuts import Layout
from scorecraft.drawing.picture import Ink, Shape
from scorecraft.drawing.plan import along
from scorecraft.opening.lip import rising_side

BAR_MM = 4.5
"""Length of the bar, square to the cut; it is no longer than half of it."""
PARTS = (0.5, 0.42, 0.58, 0.34, 0.66, 0.25)
"""Where on the cut the bar may stand, as a part of its length; the first is the best."""
BAR_INK = Ink(0.7)
NOTHING = shapely.GeometryCollection()


def lean_bars(
    layout: Layout,
    lines: Sequence[Line],
    *,
    ink: Ink = BAR_INK,
    avoid: shapely.Geometry = NOTHING,
) -> list[Shape]:
    """Draw a bar for every slanted cut on its line (paper mm), to the side of the handle.

    `lines` are the cuts on paper, in order; bars keep off the geometry to avoid where they can.
    """
    bars = []
    for index, (cut, line) in enumerate(zip(layout.cuts, lines, strict=True)):
        side = -rising_side(cut, layout.bench.way)
        if side:
            points = bar(line, side, avoid)
            bars.append(Shape((points,), ink=ink, css="lean", data={"cut": str(index)}))
    return bars


def bar(points: Line, side: int, avoid: shapely.Geometry = NOTHING) -> Line:
    """Give a bar (2, 2) on a line on paper: to its left as seen along it for 1, right for -1."""
    bars = [_at(points, side, part) for part in PARTS]
    free = (each for each in bars if not shapely.dwithin(shapely.LineString(each), avoid, 0.5))
    return next(free, bars[0])


def _at(points: Line, side: int, part: float) -> Line:
    """Lay a bar at a part of a line; on paper y runs down."""
    foot, angle = along(points, part)
    long = side * min(BAR_MM, length(points) / 2)
    return np.array([foot, foot + long * np.array([np.sin(angle), -np.cos(angle)])])
