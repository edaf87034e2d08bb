"""The blank of a plate: its edge, handling tab, 12-o'clock notch and the cross-hair.

Plan mm, origin under the crown, y away from the baker.
"""

import numpy as np
import shapely

from scorecraft.curves import turned
from scorecraft.frozen import dataclass
from scorecraft.limits import PLATE_EDGE_MM
from scorecraft.loaf.dome import Loaf

TAB_MM = (46.0, 30.0)
"""Width of the tab, and how far it stands out of the plate."""
FINGER_MM = 16.0
"""Diameter of the hole in the tab, to hang the plate up by."""
FILLET_MM = 9.0
NOTCH_MM = (9.0, 6.5)
"""Width and depth of the notch at 12 o'clock; the other quarters have smaller ones."""
SMALL_NOTCH = 0.55
HAIR_MM = (3.2, 1.0)
"""Half length and width of the cross-hair's slits."""
HAIR_GAP_MM = 1.8
"""The cross-hair leaves its middle whole, so far from the crown."""
TAB_BESIDE = 1.25
"""A loaf longer than this for its width has the tab at its long side."""
ROUND = 24


@dataclass(frozen=True, slots=True)
class Body:
    """A blank plate: its area with tab, notches and hang hole, and the slits of the cross-hair."""

    area: shapely.Polygon
    hair: tuple[shapely.Polygon, ...]
    rim: shapely.Polygon


def blank(loaf: Loaf) -> Body:
    """Make the blank for a loaf: the rim and a border, a tab for the hand, notches to aim by."""
    rim = shapely.Polygon(loaf.outline.points(720))
    disc = shapely.buffer(rim, PLATE_EDGE_MM, quad_segs=64)
    beside = loaf.length_mm > TAB_BESIDE * loaf.width_mm
    tab, hole = _tab(disc, beside=beside)
    outer = shapely.union(disc, tab)
    outer = outer.buffer(FILLET_MM, quad_segs=ROUND).buffer(-FILLET_MM, quad_segs=ROUND)
    for quarter in {0, 1, 2, 3} - {1 if beside else 2}:
        outer = shapely.difference(outer, _notch(disc, quarter))
    return Body(shapely.difference(outer, hole), _cross_hair(), rim)


def _tab(disc: shapely.Polygon, *, beside: bool) -> tuple[shapely.Polygon, shapely.Polygon]:
    """Tab towards the baker, or at the right of a long loaf, and the hole in it."""
    width, out = TAB_MM
    corner = 11.0
    far = disc.bounds[2] if beside else -disc.bounds[1]
    low = far - 2 * out
    tab = shapely.box(-width / 2 + corner, -far - out + corner, width / 2 - corner, -low)
    tab = tab.buffer(corner, quad_segs=ROUND)
    hole = shapely.Point(0, -far - out + out / 2 - 1).buffer(FINGER_MM / 2, quad_segs=ROUND)
    if not beside:
        return tab, hole
    turned = [shapely.transform(each, lambda p: p[:, ::-1] * [-1, 1]) for each in (tab, hole)]
    return turned[0], turned[1]


def _notch(disc: shapely.Polygon, quarter: int) -> shapely.Polygon:
    """Cut a notch in the edge at 12, 3, 6 or 9 o'clock; the one at 12 is the biggest."""
    width, deep = (size * (1.0 if quarter == 0 else SMALL_NOTCH) for size in NOTCH_MM)
    left, low, right, high = disc.bounds
    out = (high, right, -low, -left)[quarter]
    corners = np.array([[-width / 2, out + 0.01], [0, out - deep], [width / 2, out + 0.01]])
    corners = np.vstack([corners, [[width, out + 40], [-width, out + 40]]])
    return shapely.Polygon(turned(corners, quarter * np.pi / 2))


def _cross_hair() -> tuple[shapely.Polygon, ...]:
    """Four short slits that point at the crown and leave it whole."""
    half, wide = HAIR_MM
    out = shapely.box(HAIR_GAP_MM + wide / 2, -1e-6, HAIR_GAP_MM + half, 1e-6)
    arm = out.buffer(wide / 2, quad_segs=ROUND)
    turns = [np.array([[c, s], [-s, c]]) for c, s in ((1, 0), (0, 1), (-1, 0), (0, -1))]
    return tuple(shapely.transform(arm, lambda p, turn=turn: p @ turn) for turn in turns)
