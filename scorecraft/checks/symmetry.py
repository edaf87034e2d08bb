"""How a pattern repeats about the crown, and where it leaves places free for more cuts alike."""

import math
from collections.abc import Iterator

import numpy as np
import shapely

from scorecraft.arrays import Floats, Line
from scorecraft.checks.cures import has_place
from scorecraft.checks.linework import STATION_MM, stations, strings
from scorecraft.cuts import Cut, Layout
from scorecraft.language.texture_words import TEXTURES
from scorecraft.practice import RIM_MARGIN_MM

MOST_FOLD = 12
"""Patterns of more copies are taken by fewer of their turns."""
MOST_ADDED = 6
"""No cure adds more cuts than these."""
SAME_MM = 1.0
"""Copies lie on one another where their lines are no farther apart."""
SAME_SHARE = 0.97
"""So much of a pattern has to lie on itself once it is turned."""
SAME_REACH = 0.03
"""A loaf is as far from crown to rim after a turn, within this share."""
WAYS = 72
SLIM = 1.15
"""A loaf that is so much longer than wide is cut along."""
ACROSS = (0.4, 0.55, 0.7, 0.8)
"""Cuts through the crown, as shares of the way from rim to rim."""
ASIDE = (0.4, 0.55)
"""Where a pair of cuts lies along a loaf, as a share of the reach across it."""
OUT = (0.72, 0.6, 0.5, 0.8)
"""Where cuts around the crown lie, as shares of the reach."""
AROUND = 0.55
"""Share of a copy's angle that a cut around the crown takes."""
WIDEST_RAD = math.radians(75)
FILLS = frozenset(word.name for word in TEXTURES)


def fold(layout: Layout) -> int:
    """Tell how many times a pattern and its loaf lie on themselves in a turn, 1 if they do not."""
    if not layout.cuts:
        return 1
    spots, lines = stations(layout, 2 * STATION_MM), strings(layout)
    deep = np.array([cut.kind == "expansion" for cut in layout.cuts])
    groups = [(spots.point[deep[spots.cut] == kind], lines[deep == kind]) for kind in (True, False)]
    for count in range(MOST_FOLD, 1, -1):
        if _turns(layout, count) and all(_lies_on(*each, count) for each in groups):
            return count
    return 1


def _turns(layout: Layout, count: int) -> bool:
    """Whether a loaf is the same after one of so many turns."""
    ways = np.arange(WAYS) * math.tau / WAYS
    there = layout.loaf.reach(ways + math.tau / count)
    return bool((np.abs(there / layout.loaf.reach(ways) - 1) <= SAME_REACH).all())


def _lies_on(points: Floats, lines: np.ndarray, count: int) -> bool:
    """Whether points (N, 2) turned by one of so many turns lie on lines."""
    if not len(points):
        return True
    c, s = math.cos(math.tau / count), math.sin(math.tau / count)
    turned = shapely.points(points @ np.array([[c, s], [-s, c]]))
    found = shapely.STRtree(lines).query(turned, "dwithin", distance=SAME_MM)[0]
    return len(np.unique(found)) >= SAME_SHARE * len(points)


def places(layout: Layout, wanted_rad: float, depth_mm: float) -> Iterator[tuple[Line, ...]]:
    """Give sets of straight or round lines (N, 2) that are free and keep the pattern's symmetry.

    Fewer and shorter ones first; those through the crown run near the direction `wanted_rad`.
    """
    figures = _figures(layout)
    for lines in _sets(layout, fold(layout), wanted_rad):
        free = all(has_place(layout, line, depth_mm) for line in lines)
        if free and not any(shapely.LineString(line).intersects(figures) for line in lines):
            yield lines


def _sets(layout: Layout, count: int, wanted_rad: float) -> Iterator[tuple[Line, ...]]:
    """Give sets of lines, free or not, for a pattern that repeats `count` times."""
    if count <= 2:
        yield from _few(layout, wanted_rad)
        return
    start = _start(layout)
    for copies in (n for n in range(3, MOST_ADDED + 1) if count % n == 0):
        for half in (1, 0):
            turns = _turns_of(copies, start + half * math.pi / count)
            for out in OUT:
                yield tuple(_around(layout, turn, out, copies) for turn in turns)
        if copies % 2 == 0:
            half_turns = _turns_of(copies, start + math.pi / count)[: copies // 2]
            for share in ACROSS:
                yield tuple(across(layout, turn, share) for turn in half_turns)


def _few(layout: Layout, wanted_rad: float) -> Iterator[tuple[Line, ...]]:
    """Give one cut through the crown, then pairs beside it; along a loaf that is longer than wide.

    Beside a longest expansion cut they run along it, or around the crown on either side of it.
    """
    slim = layout.loaf.length_mm > SLIM * layout.loaf.width_mm
    along = math.pi / 2 if slim else wanted_rad
    for off in (0,) if slim else (0, 15, -15, 30, -30):
        for share in ACROSS:
            yield (across(layout, along + math.radians(off), share),)
    deep = [cut.line for cut in layout.cuts if cut.kind == "expansion"]
    if deep and not slim:
        chord = max((line[-1] - line[0] for line in deep), key=lambda way: float(np.hypot(*way)))
        along = math.atan2(chord[1], chord[0])
    for out in () if slim else OUT:
        turns = _turns_of(2, along + math.pi / 2)
        yield tuple(_around(layout, turn, out, 2) for turn in turns)
    for aside in ASIDE:
        for share in ACROSS[:3]:
            yield tuple(_beside(layout, along, way * aside, share) for way in (1, -1))
    if not slim:
        for share in ACROSS:
            yield tuple(across(layout, along + turn, share) for turn in (0, math.pi / 2))


def _turns_of(copies: int, first_rad: float) -> list[float]:
    return [first_rad + k * math.tau / copies for k in range(copies)]


def _start(layout: Layout) -> float:
    """Direction (radians) of the figure that lies farthest out."""
    middles = np.array([cut.line.mean(axis=0) for cut in layout.cuts])
    x, y = middles[int(np.argmax(np.hypot(*middles.T)))]
    return math.atan2(y, x)


def across(layout: Layout, theta: float, share: float) -> Line:
    """Lay a straight cut through the crown: a share of the way to the rim each side.

    It stays as far above the rim as every cut should.
    """
    ends = np.array([theta + math.pi, theta])
    reach = layout.loaf.reach(ends)
    way = np.minimum(share * reach, np.maximum(reach - RIM_MARGIN_MM.value, 0.0))
    line: Line = way[:, None] * np.column_stack([np.cos(ends), np.sin(ends)])
    return line


def _beside(layout: Layout, theta: float, aside: float, share: float) -> Line:
    """Lay a straight cut beside the crown, aside by a share of the reach there."""
    side = theta + math.pi / 2
    away = aside * float(layout.loaf.reach(side if aside > 0 else side + math.pi))
    return np.asarray(
        across(layout, theta, share) + away * np.array([math.cos(side), math.sin(side)])
    )


def _around(layout: Layout, theta: float, out: float, copies: int) -> Line:
    """Lay a round cut about a direction, out from the crown by a share of the reach."""
    half = min(AROUND * math.tau / copies, WIDEST_RAD) / 2
    turn = np.linspace(theta - half, theta + half, 25)
    away = out * layout.loaf.reach(turn)
    line: Line = away[:, None] * np.column_stack([np.cos(turn), np.sin(turn)])
    return line


def is_fill(cut: Cut) -> bool:
    """Whether a cut is of a texture, and of no figure."""
    return cut.part in FILLS


def _figures(layout: Layout) -> shapely.Geometry:
    """Cover the figures, where no cut is to run across them."""
    strokes: dict[int, list[Line]] = {}
    for cut in layout.cuts:
        if not is_fill(cut):
            strokes.setdefault(cut.figure, []).append(cut.line)
    hulls = [shapely.MultiPoint(np.concatenate(each)).convex_hull for each in strokes.values()]
    return shapely.union_all(hulls)
