"""Cuts drawn twice, and cuts that lie on one another for a part of their way."""

import numpy as np
import shapely
from numpy.typing import NDArray

from scorecraft.checks.finding import Finding
from scorecraft.checks.linework import Indexes, pairs, strings
from scorecraft.checks.telling import enough, likewise, size, told_once, where
from scorecraft.cuts import Layout
from scorecraft.practice import OVERLAP_MM, OVERLAP_SHARE, SAME_LINE_MM, STRIP_PER_DEPTH

Array = NDArray[np.float64]

SAMPLE_MM = 1.5
"""Spacing of the points at which lines are compared."""


def overlaps(layout: Layout) -> list[Finding]:
    """Find cuts that another cut covers whole or in part."""
    lines = strings(layout)
    if len(lines) < 2:
        return []
    near = shapely.STRtree(lines).query(lines, predicate="dwithin", distance=SAME_LINE_MM.value)
    first, second = pairs(near)
    length = shapely.length(lines)
    swap = length[first] > length[second]
    short, other = np.where(swap, second, first), np.where(swap, first, second)
    shared = _shared(lines, short, other, length)
    wrong = (shared >= OVERLAP_MM.value) | (shared >= OVERLAP_SHARE.value * length[short])
    short, other, shared = short[wrong], other[wrong], shared[wrong]
    families = [
        sorted((layout.cuts[a].family, layout.cuts[b].family))
        for a, b in zip(short, other, strict=True)
    ]
    keys = [tuple(family) for family in families]
    return [
        _finding(layout, int(short[worst]), int(other[worst]), float(shared[worst]), short[found])
        for worst, found in told_once(keys, shared)
    ]


def _shared(lines: NDArray[np.object_], short: Indexes, other: Indexes, length: Array) -> Array:
    """Length (mm) of each short line that lies on the other one."""
    count = np.maximum(4, np.ceil(length[short] / SAMPLE_MM)).astype(np.intp)
    pair = np.repeat(np.arange(len(short)), count)
    number = np.arange(len(pair)) - np.repeat(np.cumsum(count) - count, count)
    share = (number + 0.5) / count[pair]
    points = shapely.line_interpolate_point(lines[short[pair]], share, normalized=True)
    shapely.prepare(lines)
    on = shapely.dwithin(lines[other[pair]], points, SAME_LINE_MM.value)
    longest = _longest_run(on, pair, len(short))
    return np.asarray(longest / count * length[short])


def _longest_run(on: NDArray[np.bool_], pair: Indexes, pairs_count: int) -> Array:
    """Count the longest run of hits of every pair: lines that only touch here and there do not."""
    starts = on & ~(np.roll(on, 1) & (np.roll(pair, 1) == pair))
    starts[:1] = on[:1]
    run = np.cumsum(starts) - 1
    if not on.any():
        return np.zeros(pairs_count)
    lengths = np.bincount(run[on])
    longest = np.zeros(pairs_count)
    np.maximum.at(longest, pair[starts], lengths)
    return longest


def _finding(layout: Layout, short: int, other: int, shared: float, found: Indexes) -> Finding:
    cut, under = layout.cuts[short], layout.cuts[other]
    whole = float(np.hypot(*np.diff(cut.line, axis=0).T).sum())
    place = where(layout.loaf, cut.line[len(cut.line) // 2])
    apart = STRIP_PER_DEPTH.value * (cut.depth_mm + under.depth_mm) / 2
    if shared > 0.9 * whole:
        message = f"{cut.name} lies on {under.name} {place}: it would be cut twice"
        hint = f"drop {len(found)} of them, or move them {enough(apart)} apart"
    else:
        message = f"{cut.name} lies on {under.name} for {size(shared)} {place}"
        hint = f"end one of them {enough(shared)} sooner, or move them {enough(apart)} apart"
    figures = {"count": len(found), "shared_mm": shared, "apart_mm": apart}
    lines = tuple(layout.cuts[i].line for i in found)
    later = max(cut.place, under.place)
    return Finding("overlaps", "warn", message + likewise(len(found)), hint, later, figures, lines)
