"""The dough as an area: what lies within its rim, less the hole of a ring."""

import numpy as np
import shapely

from scorecraft.arrays import Floats
from scorecraft.loaf.dome import Loaf


def on_sheet(loaf: Loaf, n: int = 360) -> shapely.Polygon:
    """Give the dough on its sheet, mm, with `n` points to a rim."""
    return _area(loaf.sheet_rim(n), loaf.sheet_hole(n))


def on_plan(loaf: Loaf, n: int = 720) -> shapely.Polygon:
    """Give the dough seen from above, plan mm, with `n` points to a rim."""
    return _area(loaf.outline.points(n), loaf.hole.points(n) if loaf.hole else None)


def rims_of(area: shapely.Polygon) -> list[Floats]:
    """Give the outer rim of an area and those of its holes as open rings of points (N, 2)."""
    return [shapely.get_coordinates(ring)[:-1] for ring in [area.exterior, *area.interiors]]


def _area(rim: Floats, hole: Floats | None) -> shapely.Polygon:
    return shapely.Polygon(rim, None if hole is None else [np.asarray(hole)])
