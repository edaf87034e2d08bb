"""No line twice: what one line has drawn already is taken from the ones after it."""

from collections.abc import Sequence

import numpy as np
import shapely
from shapely import ops

SAME_MM = 0.05
"""Lines that run together closer than this are one line."""


def without_doubles(lines: Sequence[shapely.LineString]) -> list[list[shapely.LineString]]:
    """Take from every line what an earlier one has drawn already; give what is left of each.

    Lines that only cross or touch are left whole. All in mm.
    """
    each = np.array(lines, dtype=object)
    first, second = shapely.STRtree(each).query(each, predicate="dwithin", distance=SAME_MM)
    order = sorted(zip(first.tolist(), second.tolist(), strict=True))
    left: list[shapely.Geometry] = list(lines)
    for index, other in order:
        if other < index:
            left[index] = _less(left[index], lines[other])
    return [pieces(each) for each in left]


def _less(line: shapely.Geometry, other: shapely.LineString) -> shapely.Geometry:
    """Take from a line the stretches that run along the other one, but not mere crossings."""
    along = shapely.buffer(other, SAME_MM, cap_style="flat")
    shared = [each for each in pieces(line.intersection(along)) if each.length > 12 * SAME_MM]
    if not shared:
        return line
    return line.difference(shapely.union_all([each.buffer(1e-6) for each in shared]))


def pieces(line: shapely.Geometry) -> list[shapely.LineString]:
    """List the connected stretches of a line, joined where they touch end to end."""
    parts = [each for each in shapely.get_parts(line) if each.geom_type == "LineString"]
    parts = [each for each in parts if each.length > 1e-6]
    if len(parts) < 2:
        return parts
    return list(shapely.get_parts(ops.linemerge(parts)))
