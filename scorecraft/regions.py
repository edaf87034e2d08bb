"""Parts of the dough sheet as shapely polygons in mm, and the clipping of lines to them.

Angles are turntable angles (radians, clockwise from +y). Regions are combined with shapely's own
`union`, `difference` and `intersection`.
"""

from collections.abc import Sequence
from math import pi

import numpy as np
import shapely

from scorecraft.arrays import Flags, Floats, Ints, Line
from scorecraft.curves import arc, length
from scorecraft.errors import UsageError
from scorecraft.frozen import dataclass
from scorecraft.loaf.areas import on_sheet
from scorecraft.loaf.dome import Loaf

SAME_MM = 1e-9
"""Points nearer than this are one point."""


def disc(*, radius: float) -> shapely.Polygon:
    """All within a radius (mm) of the origin.

    >>> disc(radius=10).bounds[3]
    10.0
    """
    return shapely.Polygon(arc(radius, 0, 2 * pi))


def band(*, inner: float, outer: float) -> shapely.Polygon:
    """All between two radii (mm) about the origin; raises UsageError unless inner < outer."""
    if not 0 <= inner < outer:
        raise UsageError(f"a band's inner radius ({inner:g} mm) must be below its outer radius")
    holes = [arc(inner, 0, 2 * pi)] if inner > 0 else []
    return shapely.Polygon(arc(outer, 0, 2 * pi), holes)


def wedge(*, start: float, end: float, inner: float, outer: float) -> shapely.Polygon:
    """Sector of a band from one turntable angle clockwise to another (radians).

    An `end` below `start` runs on through 12 o'clock; a whole turn or more is the band. Radii are
    mm. Raises UsageError unless 0 <= inner < outer.
    """
    sweep = end - start if end > start else (end - start) % (2 * pi)
    if sweep > 2 * pi - 1e-9 or sweep < 1e-9:
        return band(inner=inner, outer=outer)
    if not 0 <= inner < outer:
        raise UsageError(f"a wedge's inner radius ({inner:g} mm) must be below its outer radius")
    near = arc(inner, start + sweep, start) if inner > 0 else np.zeros((1, 2))
    return shapely.Polygon(np.vstack([arc(outer, start, start + sweep), near]))


def box(*, width: float, length: float) -> shapely.Polygon:
    """Rectangle centred on the origin: `width` (mm) along x, `length` (mm) along y.

    >>> box(width=60, length=40).area
    2400.0
    """
    return shapely.box(-width / 2, -length / 2, width / 2, length / 2)


def whole(loaf: Loaf, *, margin: float) -> shapely.Geometry:
    """All of the dough that lies at least `margin` (mm) inside the rim."""
    return shapely.buffer(on_sheet(loaf), -margin, quad_segs=32)


@dataclass(frozen=True, slots=True)
class Clipped:
    """What is left of some lines: the pieces, the input line each came from, and crumbs dropped."""

    lines: tuple[Line, ...]
    source: tuple[int, ...]
    dropped: int


def clip(lines: Sequence[Line], region: shapely.Geometry, *, shortest: float) -> Clipped:
    """Keep the parts of lines (mm) that lie in a region, in the direction they were drawn.

    Lines wholly inside stay as they are. A closed line that is cut elsewhere stays joined at its
    start. Cut-off pieces shorter than `shortest` (mm) are dropped and counted. Lines are (N, 2),
    sheet mm.

    >>> across = np.array([[-50.0, 0.0], [50.0, 0.0]])
    >>> clip([across], box(width=60, length=40), shortest=5).lines[0].tolist()
    [[-30.0, 0.0], [30.0, 0.0]]
    """
    if not lines:
        return Clipped((), (), 0)
    owner = np.repeat(np.arange(len(lines)), [len(line) for line in lines])
    shapes = shapely.linestrings(np.concatenate(lines), indices=owner)
    shapely.prepare(region)
    meets = shapely.intersects(region, shapes)
    within = meets & shapely.covers(region, shapes)
    kept = [(i, lines[i]) for i in np.flatnonzero(within).tolist()]
    cut = np.flatnonzero(meets & ~within)
    pieces = [(int(cut[i]), piece) for i, piece in _pieces(lines, cut, region)]
    long = [piece for piece in pieces if length(piece[1]) >= shortest]
    kept = sorted(kept + long, key=lambda piece: piece[0])
    return Clipped(
        tuple(line for _, line in kept), tuple(i for i, _ in kept), len(pieces) - len(long)
    )


def _pieces(
    lines: Sequence[Line], chosen: Ints, region: shapely.Geometry
) -> list[tuple[int, Line]]:
    """Cut the chosen lines at the region's edge: (number in `chosen`, piece) in drawing order."""
    if len(chosen) == 0:
        return []
    points, owner = _split([lines[i] for i in chosen], region)
    middle = (points[1:] + points[:-1]) / 2
    lies_in = shapely.intersects_xy(region, middle[:, 0], middle[:, 1])
    keep = (owner[1:] == owner[:-1]) & lies_in
    edges = np.diff(np.concatenate([[False], keep, [False]]).astype(np.int8))
    runs = zip(np.flatnonzero(edges == 1), np.flatnonzero(edges == -1), strict=True)
    by_line: dict[int, list[Line]] = {}
    for first, last in runs:
        by_line.setdefault(int(owner[first]), []).append(points[first : last + 1])
    return [(i, p) for i, found in by_line.items() for p in _rejoined(found, lines[int(chosen[i])])]


def _rejoined(pieces: list[Line], line: Line) -> list[Line]:
    """Join the last piece of a closed line to its first, where both reach the line's start."""
    if len(pieces) < 2 or not np.array_equal(line[0], line[-1]):
        return pieces
    first, last = pieces[0], pieces[-1]
    if not (np.array_equal(first[0], line[0]) and np.array_equal(last[-1], line[0])):
        return pieces
    return [np.vstack([last, first[1:]]), *pieces[1:-1]]


def _split(lines: Sequence[Line], region: shapely.Geometry) -> tuple[Line, Ints]:
    """Points of all lines with the points where they meet the region's edge put in, and owners."""
    corners = np.concatenate(lines)
    owner = np.repeat(np.arange(len(lines)), [len(line) for line in lines])
    starts = np.flatnonzero(owner[1:] == owner[:-1])
    which, along = _meetings(corners[starts], corners[starts + 1], _edges(region))
    at = starts[which]
    met = corners[at] + along[:, None] * (corners[at + 1] - corners[at])
    place = np.concatenate([np.arange(len(corners), dtype=np.float64), at + along])
    points, owner = np.vstack([corners, met]), np.concatenate([owner, owner[at]])
    given = np.arange(len(points)) < len(corners)
    order = np.lexsort([~given, place])
    points, owner, given = points[order], owner[order], given[order]
    return _without_doubles(points, owner, given)


def _without_doubles(points: Line, owner: Ints, given: Flags) -> tuple[Line, Ints]:
    """Drop put-in points that fall on the point before or after them; given points stay."""
    near = (np.hypot(*np.diff(points, axis=0).T) < SAME_MM) & (owner[1:] == owner[:-1])
    double = np.concatenate([[False], near]) & ~given
    double[:-1] |= near & ~given[:-1] & given[1:]
    return points[~double], owner[~double]


def _edges(region: shapely.Geometry) -> Floats:
    """Straight edges of a region's boundary, shape (E, 2, 2) in mm."""
    rings = shapely.get_parts(shapely.boundary(region))
    points, ring = shapely.get_coordinates(rings, return_index=True)
    here = np.flatnonzero(ring[1:] == ring[:-1])
    return np.stack([points[here], points[here + 1]], axis=1)


def _meetings(start: Line, end: Line, edges: Floats) -> tuple[Ints, Line]:
    """Where segments meet edges: number of the segment and the share of its length, both (K,)."""
    tree = shapely.STRtree(shapely.linestrings(edges))
    which, edge = tree.query(shapely.linestrings(np.stack([start, end], axis=1)))
    run, side = (end - start)[which], edges[edge, 1] - edges[edge, 0]
    gap = edges[edge, 0] - start[which]
    turn = _cross(run, side)
    with np.errstate(divide="ignore", invalid="ignore"):
        along, across = _cross(gap, side) / turn, _cross(gap, run) / turn
    tiny = 1e-12
    hit = (along > 0) & (along < 1) & (across >= -tiny) & (across <= 1 + tiny)
    return which[hit], along[hit]


def _cross(a: Line, b: Line) -> Line:
    return np.asarray(a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0])
