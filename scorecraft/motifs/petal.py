"""A petal of two arcs."""

from math import atan2, pi

from scorecraft.arrays import Line
from scorecraft.curves import arc, polar, turned
from scorecraft.cuts import Stroke
from scorecraft.motifs.fit import both


def petal(*, length: float, width: float) -> list[Stroke]:
    """Two circular arcs from the base at the origin to the tip at (0, length), mm.

    Their chord is `length`, and they lie `width` apart in the middle.
    """
    sagitta, half = width / 2, length / 2
    radius = (half**2 + sagitta**2) / (2 * sagitta)
    quarter = 2 * atan2(sagitta, half)
    line = arc(radius, pi / 2 + quarter, pi / 2 - quarter, (sagitta - radius, half))
    line[0], line[-1] = (0, 0), (0, length)
    return both("petal", line)


def leaflet(at: Line, heading: float, size: float, slim: float, off: float) -> list[Stroke]:
    """Both edges of a leaf beside a point (mm) of a stem, toward a turntable angle (radians).

    It is `slim` times its `size` (mm) wide, and begins `off` times its size from the point.
    """
    foot = at + polar(off * size, heading)
    edges = petal(length=size, width=slim * size)
    return [Stroke("leaf", foot + turned(edge.line, heading)) for edge in edges]
