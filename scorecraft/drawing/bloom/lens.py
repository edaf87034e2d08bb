"""Opened cuts on the baked loaf: a middle line and the half width on either side of it.

The baked loaf is the proofed one grown sideways and upward by the bake. A width is a length on
the dough's surface, so down the flank it is foreshortened, exactly as the eye sees it.
"""

import numpy as np

from scorecraft.arrays import Floats, Line
from scorecraft.cuts import Layout
from scorecraft.drawing.bloom.mouths import Mouths
from scorecraft.frozen import dataclass, replace
from scorecraft.loaf.aside import aside
from scorecraft.loaf.dome import Loaf
from scorecraft.loaf.grown import carried, grown

STATION_MM = 2.0
"""Distance of the stations along an opened cut."""
FEWEST = 9
MOST = 120
CORNER = np.cos(np.radians(18.0))
"""A line that turns more sharply than this keeps its corner as a station."""
CLOSED_MM = 1e-3
"""A line whose ends are no farther apart is a ring."""
LEAST_MM = 0.35
"""A cut that does not open is still to be seen, so wide."""
SLIT = 0.1
"""Width of a fresh cut, of its depth."""


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

    @property
    def ring(self) -> Line:
        """Outline (2 N, 2) of the opening."""
        aside = self.left * self.half[:, None]
        return np.concatenate([self.middle + aside, (self.middle - aside)[::-1]])

    def turned(self, axes: Line) -> "Lens":
        """Give the same opening along other axes, the rows of (2, 2)."""
        middle, left = (
            np.column_stack([each[:, 0] * x + each[:, 1] * y for x, y in axes])
            for each in (self.middle, self.left)
        )
        return replace(self, middle=middle, left=left)


def baked_loaf(layout: Layout, share: float = 1.0) -> Loaf:
    """Grow the proofed loaf by a share of its bake: level lengths and heights by their ratios."""
    loaf = layout.loaf
    sideways, upward = (1 + share * (by - 1) for by in (layout.bake.sideways, layout.bake.upward))
    return grown(loaf, sideways, upward)


def lenses(layout: Layout, mouths: Mouths, baked: Loaf, share: float = 1.0) -> list[Lens]:
    """Open every cut of a layout to a share of its predicted width, in the order of the cuts."""
    if not layout.cuts:
        return []
    placed = [stations(cut.line) for cut in layout.cuts]
    ends = np.cumsum([len(at) for _, at in placed])[:-1]
    sheet = np.concatenate([points for points, _ in placed])
    plan = carried(layout.loaf, baked, layout.loaf.sheet_to_plan(sheet))
    middles = np.split(plan, ends)
    left = np.split(
        _left(np.concatenate([_ways(each) for each in middles]), baked.normal(plan)), ends
    )
    opened = []
    for index, ((_, at), middle) in enumerate(zip(placed, middles, strict=True)):
        slit = LEAST_MM + (1 - share) * SLIT * layout.cuts[index].depth_mm
        least = slit * (4 * at * (1 - at)) ** 0.25
        half = np.maximum(share * mouths.width(index, at), least) / 2
        opened.append(Lens(index, middle, left[index], half))
    return opened


def _ways(middle: Line) -> Line:
    """Give the way (N, 2) that a line goes at its points (N, 2)."""
    way = np.concatenate([middle[1:2], middle[2:], middle[-1:]])
    way -= np.concatenate([middle[:1], middle[:-2], middle[-2:-1]])
    if np.abs(middle[0] - middle[-1]).max() < CLOSED_MM:
        way[0] = way[-1] = middle[1] - middle[-2]
    return np.asarray(way)


def _left(way: Line, normal: Floats) -> Line:
    """Where one mm on the surface to the left of a way falls in plan; (N, 2) of (N, 2), (N, 3)."""
    rise = -(normal[:, :2] * way).sum(axis=1) / np.maximum(normal[:, 2], 1e-3)
    left = aside(normal, np.column_stack([way, rise]))
    return np.asarray(left[:, :2] / np.maximum(np.linalg.norm(left, axis=1), 1e-12)[:, None])


def stations(line: Line) -> tuple[Line, Floats]:
    """Sample a line (N, 2) for drawing: points, and their shares of its length.

    Stations crowd at both ends, where an opening closes like an ellipse; corners are kept.
    """
    steps = np.hypot(*np.diff(line, axis=0).T)
    gone = np.concatenate([[0.0], np.cumsum(steps)])
    even = np.linspace(0.0, 1.0, int(min(max(gone[-1] / STATION_MM, FEWEST), MOST)))
    crowded = 0.4 * even + 0.3 * (1 - np.cos(np.pi * even))
    share = np.sort(np.concatenate([crowded, _corners(line, gone)]))
    share = share[np.diff(share, prepend=-1.0) > 1e-6]
    share[-1] = 1.0
    at = share * gone[-1]
    return np.column_stack([np.interp(at, gone, line[:, k]) for k in (0, 1)]), share


def _corners(line: Line, gone: Floats) -> Floats:
    x, y = np.diff(line, axis=0).T / np.maximum(np.diff(gone), 1e-12)
    return np.asarray(gone[1:-1][x[1:] * x[:-1] + y[1:] * y[:-1] < CORNER] / gone[-1])
