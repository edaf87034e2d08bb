"""Silhouettes: figures opened as whole shapes, with bars across that hold what lies within."""

from collections import defaultdict
from collections.abc import Sequence
from functools import cache
from math import ceil

import numpy as np
import shapely

from scorecraft.arrays import Floats
from scorecraft.cuts import Layout
from scorecraft.frozen import dataclass, replace
from scorecraft.loaf.plan import plan_strings
from scorecraft.plate.bridges import Bridge
from scorecraft.plate.sizes import Sizes
from scorecraft.plate.slits import Slit, chosen

CLOSED_MM = 1.6
"""Gaps in an outline up to twice as wide are closed."""
INWARD_MM = CLOSED_MM + 0.02
"""How far a shape draws in again: to the line itself, it would fold into slivers along strokes."""
LEAST_MM2 = 12.0
"""A shape smaller than this lets too little flour through."""
BAR_EVERY_MM = 90.0
"""A bar stands across a shape once in so much of its length, so that its edges do not sag."""
STOCKY = 1.25
"""A shape that is less than so many times as long as it is wide counts as being as wide."""
HELD_EVERY_MM = 60.0
"""An island is held once in so much of its edge, and at two places at least."""
STUB_MM = 5.0
"""What is left of a stroke beside a shape goes, if it is shorter."""


@dataclass(frozen=True, slots=True)
class Silhouettes:
    """The openings (plan mm) with bars across taken out of them, and the bars.

    `unfilled` are the names of figures that enclose nothing.
    """

    area: shapely.Geometry
    bars: tuple[Bridge, ...]
    unfilled: tuple[str, ...] = ()


def silhouettes(layout: Layout, names: Sequence[str], sizes: Sizes) -> Silhouettes:
    """Open what the figures of some names enclose; shapes within shapes stay and are held.

    Raises UsageError for a name the pattern does not have.
    """
    if not names:
        return Silhouettes(shapely.Polygon(), ())
    rim = shapely.Polygon(layout.loaf.outline.points(720)).buffer(-sizes.web_mm)
    shapes: list[shapely.Geometry] = []
    unfilled: list[str] = []
    taken: shapely.Geometry = shapely.Polygon()
    for name in names:
        found = [shape for figure in _figures(layout, name) if not (shape := _shape(figure, sizes))
                 .is_empty]  # fmt: skip
        if not found:
            unfilled.append(name)
        for shape in found:
            apart = shape.intersection(rim).difference(taken.buffer(sizes.web_mm))
            shapes += _opened(apart, sizes)
            taken = shapely.union_all([taken, *shapes])
    barred = ((_held if shape.interiors else _across)(shape, sizes) for shape in shapes)
    bars = [bar for each in barred for bar in each]
    strips = [_strip(bar) for bar in bars]
    area = shapely.difference(shapely.union_all(shapes), shapely.union_all(strips))
    return Silhouettes(area, tuple(bars), tuple(unfilled))


def beside(slits: Sequence[Slit], area: shapely.Geometry, web_mm: float) -> list[Slit]:
    """Leave of slits what is a web away from an area."""
    if area.is_empty:
        return list(slits)
    near = cache(lambda width_mm: area.buffer(web_mm + width_mm / 2))
    left = []
    for slit in slits:
        parts = shapely.get_parts(shapely.difference(slit.line, near(slit.width_mm)))
        whole = [part for part in parts if part.length > min(STUB_MM, 0.9 * slit.line.length)]
        left += [replace(slit, line=part) for part in whole]
    return left


def _figures(layout: Layout, name: str) -> list[shapely.Geometry]:
    """Give the lines of each figure that a name means, as seen from above."""
    figures: dict[int, list[int]] = defaultdict(list)
    for index in chosen(layout.cuts, [name]):
        figures[layout.cuts[index].figure].append(index)
    return [
        shapely.MultiLineString(list(plan_strings(layout.loaf, [layout.cuts[i].line for i in own])))
        for own in figures.values()
    ]


def _shape(lines: shapely.Geometry, sizes: Sizes) -> shapely.Geometry:
    """Give what the lines of a figure enclose: of shapes within shapes every other one."""
    walls = shapely.get_parts(shapely.buffer(lines, CLOSED_MM))
    shape: shapely.Geometry = shapely.Polygon()
    for wall in walls:
        inner = shapely.Polygon(shapely.get_exterior_ring(wall)).buffer(-INWARD_MM)
        shape = shapely.symmetric_difference(shape, inner)
    return shapely.union_all(_opened(shape, sizes))


def _opened(shape: shapely.Geometry, sizes: Sizes) -> list[shapely.Polygon]:
    """Take off what is narrower than a slot; give the parts that are large enough."""
    round_ = shape.buffer(-sizes.slot_mm / 2).buffer(sizes.slot_mm / 2)
    return [part for part in shapely.get_parts(round_) if part.area > LEAST_MM2]


def _held(shape: shapely.Polygon, sizes: Sizes) -> list[Bridge]:
    """Hold each island in a shape by bars to its edge, evenly spaced from where it is nearest."""
    edge = shape.exterior
    bars = []
    for island in shape.interiors:
        count = max(2, ceil(island.length / HELD_EVERY_MM))
        ways = np.arange(72) / 72
        points = shapely.line_interpolate_point(island, ways, normalized=True)
        first = ways[int(np.argmin(shapely.distance(points, edge)))]
        for share in (first + np.arange(count) / count) % 1.0:
            start = shapely.line_interpolate_point(island, share, normalized=True)
            bars.append(_bar(start, shapely.ops.nearest_points(start, edge)[1], sizes))
    return bars


def _across(shape: shapely.Polygon, sizes: Sizes) -> list[Bridge]:
    """Set bars across a long shape, square to its length; level ones where it is as wide."""
    start, way, side = _length(shape)
    count = ceil(float(np.hypot(*way)) / BAR_EVERY_MM) - 1
    bars = []
    for k in range(count):
        foot = start + way * (k + 1) / (count + 1)
        line = shapely.LineString([foot - 2 * side, foot + 2 * side])
        for part in shapely.get_parts(shapely.intersection(line, shape)):
            first, last = (shapely.Point(part.coords[index]) for index in (0, -1))
            bars.append(_bar(first, last, sizes))
    return bars


def _length(shape: shapely.Polygon) -> tuple[Floats, Floats, Floats]:
    """Give a corner of the box around a shape, the way along its length, and across it."""
    corners = shapely.get_coordinates(shapely.minimum_rotated_rectangle(shape))[:4]
    sides = np.diff(np.vstack([corners, corners[:1]]), axis=0)
    sizes = np.hypot(*sides.T)
    long = int(np.argmax(sizes))
    if sizes.max() < STOCKY * sizes.min():
        left, low, right, high = shape.bounds
        return np.array([left, low]), np.array([0.0, high - low]), np.array([right - left, 0.0])
    return corners[long], sides[long], -sides[(long + 1) % 4]


def _bar(start: shapely.Point, end: shapely.Point, sizes: Sizes) -> Bridge:
    return Bridge(np.array([start.coords[0], end.coords[0]]), sizes.bridge_mm, -1)


def _strip(bar: Bridge) -> shapely.Polygon:
    """Give the area of a bar, which reaches into the plate at both ends."""
    way: Floats = (bar.span[1] - bar.span[0]) / np.hypot(*(bar.span[1] - bar.span[0]))
    ends = [bar.span[0] - way * bar.width_mm, bar.span[1] + way * bar.width_mm]
    return shapely.LineString(ends).buffer(bar.width_mm / 2, cap_style="flat")
