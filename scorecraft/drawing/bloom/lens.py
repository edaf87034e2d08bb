"""Opened cuts as lenses on the baked loaf: a middle line and the half width on either side of it.

The baked loaf is the proofed one grown sideways and upward by the bake. A width is a length on
the dough's surface, so down the flank it is foreshortened, exactly as the eye sees it.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
import shapely

from scorecraft.arrays import Flags, Floats, Ints, Line
from scorecraft.cuts import Layout
from scorecraft.drawing.bloom.mouths import Mouths
from scorecraft.loaf.dome import Loaf

STATION_MM = 1.2
"""Distance of the stations along an opened cut."""
FEWEST = 15
MOST = 140
CORNER = np.cos(np.radians(18.0))
"""A line that turns more sharply than this keeps its corner as a station."""
WANDER = 0.022
"""How far an opening wanders aside, of its half width."""
LEAST_MM = 0.35
"""A cut that does not open is still to be seen, so wide."""


@dataclass(frozen=True, slots=True, eq=False)
class Lens:
    """One opened cut in plan mm of the baked loaf.

    `middle` is (N, 2); `left` (N, 2) is where one mm on the surface, to the left of the stroke,
    falls in plan; `half` (N,) the half width on the surface in mm.
    """

    cut: int
    middle: Line
    left: Line
    half: Floats

    @property
    def widest(self) -> float:
        """Widest opening, mm."""
        return float(2 * self.half.max())

    def side(self, way: int, out: Floats | float = 0.0) -> Line:
        """Edge on the left (+1) or right (-1) of the stroke, `out` mm further out or (<0) in."""
        reach = np.maximum(self.half + out, 0.0) * way
        return np.asarray(self.middle + self.left * reach[:, None])

    def band(
        self,
        way: int,
        inner: Floats | float,
        outer: Floats | float,
        gone: shapely.Geometry | None = None,
    ) -> shapely.Geometry:
        """Area along one edge (+1 left, -1 right) from `inner` to `outer` mm outside of it.

        `gone` is taken away: other openings that the edge runs into.
        """
        whole = between(self.side(way, inner), self.side(way, outer))
        return whole if gone is None else shapely.difference(whole, gone)

    def area(self, out: Floats | float = 0.0) -> shapely.Geometry:
        """Area grown by `out` mm, or shrunk (< 0) to the pieces that are left; may be empty."""
        inside = self.half + out > 0
        left, right = self.side(1, out), self.side(-1, out)
        runs = _runs_with_ends(inside) if inside.any() else []
        pieces = [between(left[run], right[run]) for run in runs]
        return pieces[0] if len(pieces) == 1 else shapely.union_all(pieces)


def baked_loaf(layout: Layout) -> Loaf:
    """Grow the proofed loaf by its bake: level lengths by one ratio, heights by another."""
    loaf, sideways = layout.loaf, layout.bake.sideways
    outline = replace(
        loaf.outline,
        a_mm=loaf.outline.a_mm * sideways,
        b_mm=loaf.outline.b_mm * sideways,
        samples=tuple(radius * sideways for radius in loaf.outline.samples),
    )
    return replace(loaf, outline=outline, height_mm=loaf.height_mm * layout.bake.upward)


def lenses(
    layout: Layout, mouths: Mouths, baked: Loaf, rng: np.random.Generator | None = None
) -> list[Lens]:
    """Open every cut of a layout to its predicted width, in the order of the cuts.

    With `rng` the openings wander a little to either side, as dough does; widths stay as they are.
    """
    opened = [_lens(layout, baked, index, mouths) for index in range(len(layout.cuts))]
    return opened if rng is None else [_wandering(lens, rng) for lens in opened]


def _wandering(lens: Lens, rng: np.random.Generator) -> Lens:
    gone = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(lens.middle, axis=0).T))])
    waves = sum(
        rng.normal(0, 1) / (1 + k / 4) * np.sin(gone * (k / 13.0) + rng.uniform(0, 2 * np.pi))
        for k in range(1, 11)
    )
    share = gone / gone[-1]
    # the ends stay where they are: they may touch other cuts, or each other
    aside = WANDER * np.minimum(lens.half, 8.0) * waves * np.sqrt(4 * share * (1 - share))
    return replace(lens, middle=lens.middle + lens.left * aside[:, None])


def _lens(layout: Layout, baked: Loaf, index: int, mouths: Mouths) -> Lens:
    sheet, share = stations(layout.cuts[index].line)
    middle = layout.loaf.sheet_to_plan(sheet) * layout.bake.sideways
    tangent = np.gradient(middle, axis=0)
    if np.allclose(sheet[0], sheet[-1]):
        tangent[0] = tangent[-1] = middle[1] - middle[-2]
    normal = baked.normal(middle)
    upright = np.maximum(normal[:, 2], 1e-3)
    rise = -(normal[:, :2] * tangent).sum(axis=1) / upright
    along = np.column_stack([tangent, rise])
    left = np.cross(normal, along)
    left /= np.maximum(np.linalg.norm(left, axis=1), 1e-12)[:, None]
    half = np.maximum(mouths.width(index, share), LEAST_MM * (4 * share * (1 - share)) ** 0.25) / 2
    return _blunt(Lens(index, middle, left[:, :2], half))


def _blunt(lens: Lens) -> Lens:
    """Round off the ends of a cut that is open there, because it meets another one."""
    if np.allclose(lens.middle[0], lens.middle[-1]):
        return lens
    for end in (0, -1):
        if lens.half[end] > LEAST_MM:
            lens = _capped(lens, end)
    return lens


def _capped(lens: Lens, end: int) -> Lens:
    """Add a half disc beyond one end (0 or -1)."""
    half = lens.half[end]
    out = lens.middle[end] - lens.middle[1 if end == 0 else -2]
    out = out / max(float(np.hypot(*out)), 1e-9)
    turn = np.linspace(0.0, np.pi / 2, 6)[1:]
    beyond = lens.middle[end] + half * np.sin(turn)[:, None] * out
    left = np.repeat(lens.left[[end]], len(turn), axis=0)
    width = half * np.cos(turn)
    if end == 0:
        beyond, width = beyond[::-1], width[::-1]
    return replace(
        lens,
        middle=_added(lens.middle, beyond, end),
        left=_added(lens.left, left, end),
        half=_added(lens.half, width, end),
    )


def _added(whole: Floats, more: Floats, end: int) -> Floats:
    return np.concatenate([more, whole] if end == 0 else [whole, more])


def stations(line: Line) -> tuple[Line, Floats]:
    """Sample a line (N, 2) for drawing: points, and their shares of its length.

    Stations crowd at both ends, where an opening closes like an ellipse; corners are kept.
    """
    steps = np.hypot(*np.diff(line, axis=0).T)
    gone = np.concatenate([[0.0], np.cumsum(steps)])
    count = int(np.clip(gone[-1] / STATION_MM, FEWEST, MOST))
    even = np.linspace(0.0, 1.0, count)
    crowded = 0.4 * even + 0.3 * (1 - np.cos(np.pi * even))
    share = np.unique(np.concatenate([crowded, _corners(line, gone)]))
    share = share[np.concatenate([[True], np.diff(share) > 1e-6])]
    share[-1] = 1.0
    at = share * gone[-1]
    return np.column_stack([np.interp(at, gone, line[:, k]) for k in (0, 1)]), share


def _corners(line: Line, gone: Floats) -> Floats:
    legs = np.diff(line, axis=0)
    legs = legs / np.maximum(np.hypot(*legs.T), 1e-12)[:, None]
    straight = (legs[1:] * legs[:-1]).sum(axis=1)
    return np.asarray(gone[1:-1][straight < CORNER] / gone[-1])


def crossings(opened: Sequence[Lens]) -> dict[int, shapely.Geometry]:
    """Find for every opened cut what other openings take away from its edges, by its number."""
    areas = np.array([lens.area() for lens in opened], dtype=object)
    one, other = shapely.STRtree(areas).query(areas, predicate="intersects")
    found: dict[int, list[shapely.Geometry]] = {}
    for first, second in zip(one.tolist(), other.tolist(), strict=True):
        if first != second:
            found.setdefault(opened[first].cut, []).append(areas[second])
    return {cut: shapely.union_all(taken) for cut, taken in found.items()}


def between(left: Line, right: Line) -> shapely.Geometry:
    """Area between two edges (N, 2); where they cross or close, the union of all its pieces."""
    closes = np.allclose(left[0], left[-1]) and len(left) > 3
    if closes:  # to the last bit, or a slit is left
        left, right = (np.vstack([edge[:-1], edge[:1]]) for edge in (left, right))
    else:
        polygon = shapely.Polygon(np.concatenate([left, right[::-1]]))
        if polygon.is_valid:
            return polygon
    quads = np.stack([left[:-1], left[1:], right[1:], right[:-1]], axis=1)
    pieces = shapely.convex_hull(shapely.multipoints(quads))
    return shapely.union_all(pieces[shapely.area(pieces) > 1e-9])


def _runs_with_ends(inside: Flags) -> Sequence[Ints]:
    """Indexes of the runs of True, each with its neighbours, where the width is nothing."""
    where = np.flatnonzero(inside)
    runs = np.split(where, np.flatnonzero(np.diff(where) > 1) + 1)
    last = len(inside) - 1
    return [np.arange(max(run[0] - 1, 0), min(run[-1] + 1, last) + 1) for run in runs]
