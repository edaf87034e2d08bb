"""Opened cuts on the baked loaf: a middle line and the half width on either side of it.

The baked loaf is the proofed one grown sideways and upward by the bake. A width is a length on
the dough's surface, so down the flank it is foreshortened, exactly as the eye sees it.
"""

from dataclasses import dataclass, replace

import numpy as np

from scorecraft.arrays import Floats, Line
from scorecraft.cuts import Layout
from scorecraft.drawing.bloom.mouths import Mouths
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
    parts = zip(np.split(plan, ends), np.split(baked.normal(plan), ends), strict=True)
    opened = []
    for index, ((_, at), (middle, normal)) in enumerate(zip(placed, parts, strict=True)):
        slit = LEAST_MM + (1 - share) * SLIT * layout.cuts[index].depth_mm
        least = slit * (4 * at * (1 - at)) ** 0.25
        half = np.maximum(share * mouths.width(index, at), least) / 2
        opened.append(Lens(index, middle, _left(middle, normal), half))
    return opened


def _left(middle: Line, normal: Floats) -> Line:
    """Where one mm on the surface to the left of a line falls in plan; (N, 2) of (N, 2), (N, 3)."""
    tangent = np.gradient(middle, axis=0)
    if np.hypot(*(middle[0] - middle[-1])) < CLOSED_MM:
        tangent[0] = tangent[-1] = middle[1] - middle[-2]
    rise = -(normal[:, :2] * tangent).sum(axis=1) / np.maximum(normal[:, 2], 1e-3)
    left = np.cross(normal, np.column_stack([tangent, rise]))
    return np.asarray(left[:, :2] / np.maximum(np.linalg.norm(left, axis=1), 1e-12)[:, None])


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
