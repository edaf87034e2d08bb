"""What the slots cut off: the separate pieces that a plate would fall into."""

from collections.abc import Sequence

import numpy as np
import shapely

from scorecraft.arrays import Flags, Floats, Ints, Shapes
from scorecraft.frozen import dataclass
from scorecraft.plate.slits import Slit

ROUND = 24
WALL_MM = 1.25
"""Drawn lines are this much to each side when fields are looked for: small gaps close."""
LEAST_GAP_MM = 0.3


@dataclass(frozen=True, slots=True)
class Islands:
    """Pieces of a plate, cut apart by slots; `ground` is the one with the edge.

    `beside_mm` is how far from a slot's edge a point must be to lie in a piece. `gaps` are, for
    each piece, the points (N, 2) of its edge where a web holds it already, and `held` what these
    webs are worth, in bridges.
    """

    parts: tuple[shapely.Polygon, ...]
    ground: int
    beside_mm: float
    gaps: tuple[Floats, ...]
    held: tuple[float, ...]

    def at(self, points: Floats) -> Ints:
        """Tell in which part each point (N, 2) lies, -1 for none."""
        found = np.full(len(points), -1, dtype=np.intp)
        tree = shapely.STRtree(self.parts)
        which, part = tree.query(shapely.points(points), predicate="intersects")
        found[which] = part
        return found


def slot_area(slits: Sequence[Slit], more_mm: float = 0.0) -> shapely.Geometry:
    """Area of all slots (mm), widened by `more_mm` on each side."""
    widths = np.array([slit.width_mm for slit in slits])
    lines = [slit.line for slit in slits]
    return shapely.union_all(shapely.buffer(lines, widths / 2 + more_mm, quad_segs=ROUND))


def fields(
    body: shapely.Polygon, drawn: Sequence[Slit], left: Sequence[Slit], bridge_mm: float
) -> Islands:
    """Find the fields that the lines enclose as they are drawn, and the webs that hold them.

    `drawn` are the lines before anything was cut back, `left` the slots that will be cut.
    """
    lines = shapely.multilinestrings([slit.line for slit in drawn])
    walls = shapely.union_all(shapely.buffer([slit.line for slit in drawn], WALL_MM))
    parts = shapely.get_parts(shapely.difference(body, walls))
    cut = slot_area(left, WALL_MM + 0.05)
    shapely.prepare(cut)
    tree = shapely.STRtree(parts)
    gaps, held = [], []
    for index, part in enumerate(parts):
        ways = shapely.get_parts(shapely.difference(part.exterior, cut))
        ways = ways[_leads_out(ways, index, lines, tree)]
        middles = shapely.line_interpolate_point(ways, 0.5, normalized=True)
        gaps.append(shapely.get_coordinates(middles))
        widths = shapely.length(ways) + 2 * WALL_MM
        held.append(float(np.minimum(1.0, widths / bridge_mm).sum()))
    return Islands(tuple(parts), _ground(parts, body), WALL_MM + 0.02, tuple(gaps), tuple(held))


def _leads_out(ways: Shapes, part: int, lines: shapely.Geometry, tree: shapely.STRtree) -> Flags:
    """Tell which gaps in a field's edge lead to another field, and not round a tip to itself."""
    middles = shapely.line_interpolate_point(ways, 0.5, normalized=True)
    here = shapely.get_coordinates(middles)
    there = shapely.get_coordinates(
        shapely.line_interpolate_point(shapely.shortest_line(middles, lines), 1.0, normalized=True)
    )
    beyond = shapely.points(there + 1.1 * (there - here))
    which, found = tree.query(beyond, predicate="intersects")
    out = np.zeros(len(ways), dtype=bool)
    out[which] = found != part
    return np.asarray(out & (shapely.length(ways) > LEAST_GAP_MM))


def islands(body: shapely.Polygon, slits: Sequence[Slit], web_mm: float) -> Islands:
    """Find the pieces that no neck as wide as a web joins, each drawn in by half a web."""
    core = shapely.buffer(body, -web_mm / 2, quad_segs=ROUND)
    parts = shapely.get_parts(shapely.difference(core, slot_area(slits, web_mm / 2)))
    none = tuple(np.zeros((0, 2)) for _ in parts)
    held = tuple(0.0 for _ in parts)
    return Islands(tuple(parts), _ground(parts, core), web_mm / 2 + 0.02, none, held)


def _ground(parts: Shapes, body: shapely.Polygon) -> int:
    return int(np.argmin(shapely.distance(parts, shapely.boundary(body))))
