"""Where the skin is tightest between opened cuts, and would burst if they leave too little room."""

import numpy as np
import shapely

from scorecraft.arrays import Floats
from scorecraft.opening.load import Field, tensor
from scorecraft.opening.panels import Panels
from scorecraft.opening.result import Opening

ROOM_CLEAR_MM = 20.0
"""Nearer to a cut a high tension makes the cut run on, not the skin burst."""
ROOM_GRID_MM = 8.0
"""How closely the skin is looked over for its highest tension."""
TIE = 1e-3
"""Tensions within this share of the highest are all the highest: the lowest place bursts first."""


def tightest(
    opening: Opening, rim_mm: Floats, hole_mm: Floats | None = None
) -> tuple[float, tuple[float, float]] | None:
    """Find the highest principal tension of a loaf away from its cuts, and where it is.

    A share of the uncut mean, and a place on the sheet (mm), whose rim is (K, 2), a ring's with
    that of its hole; None where every place is near a cut. On a loaf that its uncut skin is a
    little tighter at the crown counts for nothing: it bursts where the skin is weak, and that is
    low.
    """
    points = _places(
        opening.panels, shapely.Polygon(rim_mm, None if hole_mm is None else [hole_mm])
    )
    if not len(points):
        return None
    left = opening.tension_at(points)
    if isinstance(opening.load.strain, Field):
        left -= tensor(opening.load.extra(points)) / opening.uncut_tension
    tension = np.linalg.eigvalsh(left)[:, 1]
    top = np.flatnonzero(tension >= tension.max() * (1 - TIE))
    reach = np.hypot(points[top, 0], points[top, 1])
    at = top[np.argmax(reach)]
    return float(tension[at]), (float(points[at, 0]), float(points[at, 1]))


def _places(parts: Panels, skin: shapely.Polygon) -> Floats:
    """Places (N, 2) on a grid over the loaf, as far from the cuts as can be asked."""
    step = ROOM_GRID_MM
    inside = skin.buffer(-step / 2)
    rim_mm = shapely.get_coordinates(skin.exterior)
    low, high = np.min(rim_mm, axis=0), np.max(rim_mm, axis=0)
    count = np.ceil((high - low) / step) + 1
    axes = [
        (a + b) / 2 + step * (np.arange(n) - (n - 1) / 2)
        for a, b, n in zip(low, high, count, strict=True)
    ]
    whole: Floats = np.stack(np.meshgrid(*axes), axis=-1).reshape(-1, 2)
    grid: Floats = whole[shapely.contains_xy(inside, whole)]
    if not len(parts):
        return grid
    cuts = shapely.multilinestrings(np.stack([parts.start, parts.end], axis=1))
    shapely.prepare(cuts)
    points = shapely.points(grid)
    for clear in (ROOM_CLEAR_MM, ROOM_CLEAR_MM / 2, 2 * parts.length.max()):
        away = ~shapely.dwithin(cuts, points, clear)
        if away.any():
            break
    chosen: Floats = grid[away]
    return chosen
