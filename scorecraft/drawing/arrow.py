"""The small arrowhead that says which way the blade is pulled."""

import numpy as np
import shapely

from scorecraft.arrays import Line
from scorecraft.curves import length, turned
from scorecraft.drawing.picture import BLACK, Shape
from scorecraft.drawing.plan import along

ARROW_MM = 2.8
PARTS = (0.8, 0.7, 0.88, 0.6, 0.5, 0.4, 0.3, 0.2)
"""Where on the line the head may stand, as a part of its length; the first is the best."""
NOTHING = shapely.GeometryCollection()
HEAD = np.array([[0.6, 0.0], [-0.4, 0.36], [-0.4, -0.36]])


def arrow(points: Line, avoid: shapely.Geometry = NOTHING) -> Shape:
    """Draw a filled arrowhead on a line (paper mm), towards its end; smaller on a short line.

    It keeps off the geometry to avoid if any of its usual places does.
    """
    size = min(ARROW_MM, length(points) / 3)
    heads = [head(points, part, size) for part in PARTS]
    free = (each for each in heads if not shapely.dwithin(shapely.Polygon(each), avoid, 0.5))
    return Shape((next(free, heads[0]),), closed=True, fill=BLACK)


def head(points: Line, part: float, size: float) -> Line:
    """Lay an arrowhead of a size (mm) on a line, at a part of its length."""
    middle, angle = along(points, part)
    return turned(HEAD, -angle) * size + middle
