"""A line along the rim of the loaf."""

import numpy as np
import shapely

from scorecraft.arrays import Line
from scorecraft.cuts import Stroke
from scorecraft.errors import UsageError
from scorecraft.loaf.areas import on_sheet
from scorecraft.loaf.dome import Loaf

POINTS = 720


def rim(*, loaf: Loaf, inset: float, of: str) -> list[Stroke]:
    """Follow the rim of a loaf, or of its hole, on its sheet, everywhere `inset` (mm) from it.

    Clockwise from 12 o'clock, a closed line. Raises UsageError where the loaf has no hole, and for
    an inset that leaves no way around.
    """
    if of == "hole" and loaf.hole is None:
        raise UsageError("this loaf has no hole", None, "like: loaf ring width 280mm hole 90mm")
    dough = on_sheet(loaf, POINTS)
    edge = shapely.Polygon(dough.exterior if of == "outer" else dough.interiors[0])
    track = shapely.buffer(edge, -inset if of == "outer" else inset, quad_segs=32)
    if track.is_empty or track.geom_type != "Polygon" or not shapely.covers(dough, track.exterior):
        hint = "use a smaller inset"
        raise UsageError(f"{inset:g} mm in from the rim there is no way around", None, hint)
    ring = shapely.get_coordinates(track.exterior)[:-1]
    return [Stroke("rim", _from_noon(ring if not track.exterior.is_ccw else ring[::-1]))]


def _from_noon(ring: Line) -> Line:
    """Let a clockwise ring (N, 2) start and end where it passes 12 o'clock."""
    after = np.roll(ring, -1, axis=0)
    passes = np.flatnonzero((ring[:, 0] <= 0) & (after[:, 0] > 0) & (ring[:, 1] > 0))
    first = int(passes[np.argmax(ring[passes, 1])])
    turned = np.roll(ring, -first - 1, axis=0)
    last = turned[-1]
    share = -last[0] / (turned[0, 0] - last[0])
    noon = last + share * (turned[0] - last)
    return np.vstack([noon, turned, noon])
