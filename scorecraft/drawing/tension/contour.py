"""Areas and lines of equal value of a field known at the corners of triangles."""

from collections.abc import Sequence

import numpy as np
import shapely

from scorecraft.arrays import Floats, Ints, Line


def grid_triangles(rows: int, columns: int) -> Ints:
    """Cut a grid of points, numbered row by row, into triangles: their corners (T, 3)."""
    first = (np.arange(rows - 1)[:, None] * columns + np.arange(columns - 1)).ravel()
    lower = np.column_stack([first, first + 1, first + columns])
    upper = np.column_stack([first + 1, first + columns + 1, first + columns])
    return np.concatenate([lower, upper])


def above(points: Line, values: Floats, triangles: Ints, level: float) -> shapely.Geometry:
    """Area where a field is at or above a level; it is linear in every triangle (marching).

    Points are (N, 2) mm, values (N,), triangles (T, 3).
    """
    order = np.argsort(-values[triangles], axis=1)
    ranked = np.take_along_axis(triangles, order, axis=1)
    high = values[ranked]
    corner = points[ranked]
    count = (high >= level).sum(axis=1)
    to_middle = _crossing(corner, high, level, 0, 1)
    to_low = _crossing(corner, high, level, 0, 2)
    middle_to_low = _crossing(corner, high, level, 1, 2)
    whole = corner[count == 3]
    one = np.stack([corner[:, 0], to_middle, to_low], axis=1)[count == 1]
    two = np.stack([corner[:, 0], corner[:, 1], middle_to_low, to_low], axis=1)[count == 2]
    found = [shapely.polygons(part) for part in (whole, one, two) if len(part)]
    if not found:
        return shapely.Polygon()
    pieces = np.concatenate(found)
    # neighbours share their edges to the last bit, which makes the quick union a sound one
    return shapely.coverage_union_all(pieces[shapely.area(pieces) > 0])


def _crossing(corner: Floats, high: Floats, level: float, one: int, other: int) -> Line:
    """Where the level crosses the edge between two corners of every triangle."""
    drop = high[:, one] - high[:, other]
    part = np.divide(high[:, one] - level, drop, out=np.zeros_like(drop), where=drop > 0)
    part = np.clip(part, 0, 1)[:, None]
    return np.asarray(corner[:, one] + part * (corner[:, other] - corner[:, one]))


def inner_edges(area: shapely.Geometry, window: shapely.Geometry) -> Sequence[Line]:
    """Return the edges of an area that lie inside a window, as lines."""
    inside = shapely.intersection(area.boundary, shapely.buffer(window, -0.05))
    merged = shapely.line_merge(inside) if inside.geom_type != "LineString" else inside
    return [
        shapely.get_coordinates(part)
        for part in shapely.get_parts(merged)
        if part.geom_type == "LineString" and part.length > 0
    ]
