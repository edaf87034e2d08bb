"""What cures do to a layout: cuts made shallower or shorter, figures moved or turned."""

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

import numpy as np
import shapely

from scorecraft.arrays import Floats, Line
from scorecraft.cuts import Cut, Layout


def changed(layout: Layout, new: Mapping[int, Cut]) -> Layout:
    """Put other cuts in the place of those at some indexes."""
    return replace(layout, cuts=tuple(new.get(i, cut) for i, cut in enumerate(layout.cuts)))


def at_depth(layout: Layout, cuts: Iterable[int], depth_mm: float) -> Layout:
    """Cut the cuts at some indexes to a depth."""
    return changed(layout, {i: replace(layout.cuts[i], depth_mm=depth_mm) for i in cuts})


def no_deeper(layout: Layout, cuts: Iterable[int], depth_mm: float) -> Layout:
    """Cut the cuts at some indexes no deeper than a depth."""
    return at_depth(layout, (i for i in cuts if layout.cuts[i].depth_mm > depth_mm), depth_mm)


def no_flatter(layout: Layout, cuts: Iterable[int], blade_rad: float) -> Layout:
    """Hold the blade at an angle or steeper for the cuts at some indexes."""
    flat = (i for i in cuts if layout.cuts[i].blade_rad < blade_rad)
    return changed(layout, {i: replace(layout.cuts[i], blade_rad=blade_rad) for i in flat})


def without(layout: Layout, cuts: Iterable[int]) -> Layout:
    """Leave out the cuts at some indexes."""
    gone = set(cuts)
    return replace(layout, cuts=tuple(c for i, c in enumerate(layout.cuts) if i not in gone))


def shortened(layout: Layout, ends: Iterable[tuple[int, bool]], by_mm: float) -> Layout:
    """Take a length (sheet mm) off cuts, given as index and whether it is the last end."""
    new: dict[int, Cut] = {}
    for i, last in set(ends):
        cut = new.get(i, layout.cuts[i])
        line = shapely.LineString(cut.line)
        away = min(by_mm, 0.99 * line.length)
        kept = _part(line, 0, line.length - away) if last else _part(line, away, line.length)
        new[i] = replace(cut, line=kept)
    return changed(layout, new)


def opened(layout: Layout, gaps: Iterable[tuple[int, float]], wide_mm: float) -> Layout:
    """Leave a gap (sheet mm) in cuts, given as index and the way from the start to its middle."""
    middles: dict[int, list[float]] = {}
    for i, at in gaps:
        middles.setdefault(i, []).append(at)
    cuts: list[Cut] = []
    for i, cut in enumerate(layout.cuts):
        line, start = shapely.LineString(cut.line), 0.0
        ends = sorted(middles.get(i, []))
        for at in (*ends, line.length + wide_mm / 2):
            end = at - wide_mm / 2
            if end - start > wide_mm / 10:
                cuts.append(replace(cut, line=_part(line, start, end)) if ends else cut)
            start = at + wide_mm / 2
    return replace(layout, cuts=tuple(cuts))


def _part(line: shapely.LineString, start: float, end: float) -> Line:
    """Give what lies between two places along a line."""
    along = np.append(0.0, np.cumsum(np.hypot(*np.diff(np.array(line.coords), axis=0).T)))
    inner = np.array(line.coords)[(along > start + 1e-9) & (along < end - 1e-9)]
    ends = [line.interpolate(at).coords[0] for at in (start, end)]
    part: Line = np.vstack([ends[0], inner, ends[1]])
    return part


def moved(layout: Layout, ways: Mapping[int, Floats]) -> Layout:
    """Move whole figures, by their number, each by a way (2,), sheet mm."""
    return changed(
        layout,
        {
            i: replace(cut, line=cut.line + ways[cut.figure])
            for i, cut in enumerate(layout.cuts)
            if cut.figure in ways
        },
    )


def parted(layout: Layout, pairs: Sequence[tuple[int, int, Floats]], by_mm: float) -> Layout:
    """Move pairs of cuts apart, each given as two indexes and the way (2,) from one to the other.

    Their figures move, each by half; the cuts alone where both are of one figure.
    """
    alone = any(layout.cuts[a].figure == layout.cuts[b].figure for a, b, _ in pairs)
    ways: dict[int, Floats] = {}
    for a, b, way in pairs:
        step = way / max(float(np.hypot(*way)), 1e-9) * (by_mm / 2)
        for i, part in ((a, -step), (b, step)):
            key = i if alone else layout.cuts[i].figure
            ways[key] = _farther(ways.get(key), part)
    if not alone:
        return moved(layout, ways)
    new = {i: replace(layout.cuts[i], line=layout.cuts[i].line + way) for i, way in ways.items()}
    return changed(layout, new)


def _farther(way: Floats | None, more: Floats) -> Floats:
    """Join two ways: what both ask for once, what only one asks for as it is."""
    if way is None:
        return more
    along = float(way @ more) / max(float(way @ way), 1e-12)
    return np.asarray(way + more - min(max(along, 0.0), 1.0) * way)


def turned(layout: Layout, cuts: Iterable[int], about: Floats, by_rad: float) -> Layout:
    """Turn cuts about a point (2,), sheet mm, counter-clockwise."""
    c, s = math.cos(by_rad), math.sin(by_rad)
    turn = np.array([[c, s], [-s, c]])
    return changed(
        layout,
        {
            i: replace(layout.cuts[i], line=(layout.cuts[i].line - about) @ turn + about)
            for i in cuts
        },
    )


def way_to(line: Line, point: Floats) -> Floats:
    """Give the shortest way (2,) from a point to a line, sheet mm."""
    near = shapely.shortest_line(shapely.Point(point), shapely.LineString(line))
    ends = shapely.get_coordinates(near)
    return np.asarray(ends[1] - ends[0])
