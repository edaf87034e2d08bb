"""Whether a plate is what it should be: one piece, and nowhere thinner than it may be."""

from collections.abc import Sequence

import shapely

import scorecraft.plate.telling as telling
from scorecraft.plate.bridges import Bridge
from scorecraft.plate.islands import ROUND
from scorecraft.plate.sizes import Sizes

ROUNDING_MM = 0.02
"""Circles drawn with corners lose this much."""
LEAST_AREA_MM2 = 0.05


def faults(polygon: shapely.Geometry, bridges: Sequence[Bridge], sizes: Sizes) -> list[str]:
    """List what is wrong with a plate, in words; nothing, where all is well.

    The polygon is opened by a disc as wide as a web: what the disc cannot reach is too thin.
    """
    found = []
    if polygon.geom_type != "Polygon" or not polygon.is_valid:
        found.append(telling.FALLS_APART)
    thin = too_thin(polygon, sizes.web_mm)
    if thin:
        where = telling.place(*thin[0].centroid.coords[0])
        found.append(telling.THIN_STRIP.format(where=where, least_mm=sizes.web_mm))
    weak = [bridge for bridge in bridges if not polygon.covers(_neck(bridge))]
    if weak:
        where = telling.place(*weak[0].at)
        found.append(telling.THIN_BRIDGE.format(where=where, least_mm=sizes.bridge_mm))
    return found


def too_thin(polygon: shapely.Geometry, width_mm: float) -> list[shapely.Polygon]:
    """Find the parts of a polygon that no disc of a diameter (mm) within it reaches."""
    radius = width_mm / 2 - ROUNDING_MM
    opened = polygon.buffer(-radius, quad_segs=ROUND).buffer(radius + 0.001, quad_segs=ROUND)
    lost = shapely.get_parts(shapely.difference(polygon, opened))
    return [part for part in lost if part.area > LEAST_AREA_MM2]


def _neck(bridge: Bridge) -> shapely.Polygon:
    """Give the box a bridge must fill: as wide as asked, from edge to edge of the slot."""
    half = bridge.width_mm / 2 - ROUNDING_MM
    return shapely.buffer(shapely.LineString(bridge.span), half, cap_style="flat")
