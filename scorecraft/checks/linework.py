"""The cuts of a layout as line strings, and as stations along them, all in sheet mm."""

from functools import cached_property, lru_cache

import numpy as np
import shapely

from scorecraft.arrays import Floats, Ints, Shapes
from scorecraft.cuts import Layout
from scorecraft.frozen import dataclass
from scorecraft.loaf.dome import Loaf

STATION_MM = 3.0
"""How closely cuts are looked at for their neighbours."""


@lru_cache(maxsize=4)
def strings(layout: Layout) -> Shapes:
    """Give every cut as a shapely line string (sheet mm); kept: every check asks for them."""
    if not layout.cuts:
        return np.zeros(0, dtype=object)
    owner = np.repeat(np.arange(len(layout.cuts)), [len(cut.line) for cut in layout.cuts])
    points = np.concatenate([cut.line for cut in layout.cuts])
    return np.asarray(shapely.linestrings(points, indices=owner))


@dataclass(frozen=True, eq=False)
class Stations:
    """Points at even steps along every cut, none of them at an end.

    `cut` (M,) is the cut's index, `along` (M,) the way from its start, `step` (M,) the length each
    stands for, `point` and `tangent` (M, 2) its place and direction on the sheet; all mm.
    """

    loaf: Loaf
    cut: Ints
    along: Floats
    step: Floats
    point: Floats
    tangent: Floats

    @cached_property
    def solid(self) -> Floats:
        """Their places on the dough (M, 3), mm."""
        return self.loaf.surface(self.loaf.sheet_to_plan(self.point))


@lru_cache(maxsize=4)
def stations(layout: Layout, step_mm: float) -> Stations:
    """Set out stations no more than `step_mm` apart along every cut, two or more on each; kept."""
    lines = strings(layout)
    length = shapely.length(lines)
    count = np.maximum(2, np.ceil(length / step_mm)).astype(np.intp)
    cut = np.repeat(np.arange(len(count)), count)
    number = np.arange(len(cut)) - np.repeat(np.cumsum(count) - count, count)
    share = (number + 0.5) / count[cut]
    point, tangent = _along(lines, cut, share)
    return Stations(layout.loaf, cut, share * length[cut], (length / count)[cut], point, tangent)


def points_along(lines: Shapes, line: Ints, share: Floats) -> Shapes:
    """Give the shapely points (M,) at shares of the way along the lines of the indexes `line` (M,).

    However many points a line has, finding a place on it takes next to no time.
    """
    return np.asarray(shapely.points(_along(lines, line, share)[0]))


def _along(lines: Shapes, line: Ints, share: Floats) -> tuple[Floats, Floats]:
    """Find the places (M, 2) at shares of the way along lines, and the directions there."""
    points, owner = shapely.get_coordinates(lines, return_index=True)
    side = np.diff(points, axis=0)
    run = np.where(owner[1:] == owner[:-1], np.hypot(side[:, 0], side[:, 1]), 0.0)
    way = np.concatenate([[0.0], np.cumsum(run)])
    first = np.searchsorted(owner, np.arange(len(lines)))
    last = np.searchsorted(owner, np.arange(len(lines)), side="right") - 1
    target = way[first[line]] + share * (way[last] - way[first])[line]
    at = np.clip(np.searchsorted(way, target, side="right") - 1, first[line], last[line] - 1)
    long = np.maximum(run[at], 1e-12)
    part = np.clip((target - way[at]) / long, 0.0, 1.0)
    return points[at] + part[:, None] * side[at], side[at] / long[:, None]
