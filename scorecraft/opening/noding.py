"""Where cuts cross, touch and turn: the places along each line that must become ends of panels.

Lines may be given uncut. Two cuts that cross, an end that stops on another cut (T-junction), ends
that meet and sharp corners all become nodes; an end that meets nothing is a free tip.
"""

from bisect import bisect
from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import pairwise
from math import inf, radians

import numpy as np
import shapely

from scorecraft.arrays import Flags, Floats, Ints, Line
from scorecraft.frozen import dataclass, replace

OPENING_JOIN = 0.05
"""Cuts that come closer than this to one another are taken to meet; in panels."""
PARALLEL = 1e-9
"""Sine of the angle below which two segments have no crossing point worth computing."""
WITHIN = 0.5 + 1e-9
"""A crossing lies so near the middle of both segments, as a share of them; that is on them."""

ALIKE = 0.985
"""Cosine of the angle under which two pieces that lie on one another are one cut made twice."""

SHARP = radians(25)
"""A line that turns by more in one point has a corner there; less is a bend drawn by points."""


@dataclass(frozen=True, slots=True, eq=False)
class Noded:
    """Nodes of one line: their distances along it from 0 to its length (mm), and its free tips.

    `passed` crossings lie so close to others that they are no nodes.
    """

    along_mm: Floats
    free_start: bool
    free_end: bool
    passed: int = 0


@dataclass(frozen=True, slots=True, eq=False)
class _Segments:
    """All segments of all lines: ends (S, 2), the line of each, and where it starts along it.

    `length_of` are the lengths of the lines (mm).
    """

    start: Floats
    end: Floats
    line: Ints
    along: Floats
    length: Floats
    length_of: Floats


def along_line(line: Line) -> Floats:
    """Distance (mm) of every point of a line (N, 2) from its start, along the line, shape (N,)."""
    step = line[1:] - line[:-1]
    along = np.zeros(len(line))
    np.cumsum(np.hypot(step[:, 0], step[:, 1]), out=along[1:])
    return along


def noded(lines: Sequence[Line], panel_mm: float, apart_mm: float = 0.0) -> tuple[Noded, ...]:
    """Find the nodes of every line (N, 2): crossings, T-junctions, ends that meet, and corners.

    What comes closer than `OPENING_JOIN` of a panel is taken to touch: no blade leaves so thin a
    bridge, and no panel of that size could see it. Corners that follow one another closer than
    half a panel are cut off, as a smooth bend would be. Nodes less than `apart_mm` apart are passed
    over. The last answer is kept: panels are mostly made of the size that nodes were counted at.
    """
    told = tuple(np.asarray(line, dtype=np.float64).tobytes() for line in lines)
    return _noded(told, panel_mm, apart_mm)


@lru_cache(maxsize=1)
def _noded(told: tuple[bytes, ...], panel_mm: float, apart_mm: float) -> tuple[Noded, ...]:
    """Find the nodes of lines told as bytes."""
    lines = [np.frombuffer(line).reshape(-1, 2) for line in told]
    touch = OPENING_JOIN * panel_mm
    parts = _segments(lines)
    lengths = parts.length_of
    tree = shapely.STRtree(shapely.linestrings(np.stack([parts.start, parts.end], axis=1)))
    hits = np.concatenate([_crossings(parts, tree, touch), _touches(lines, parts, tree, touch)])
    closed = np.array([(np.abs(line[0] - line[-1]) <= touch).all() for line in lines])
    hits = hits[np.lexsort(hits.T[::-1])]
    bounds = pairwise(np.searchsorted(hits[:, 0], np.arange(len(lines) + 1)).tolist())
    along = hits[:, 1].tolist()
    met = [
        _one(along[low:high], length, end, touch, apart_mm)
        for (low, high), length, end in zip(bounds, lengths.tolist(), closed.tolist(), strict=True)
    ]
    for line, corners in _corners(parts):
        met[line] = _cornered(met[line], corners, panel_mm / 2)
    return tuple(met)


def _one(hits: list[float], length: float, closed: bool, touch: float, apart_mm: float) -> Noded:
    """Gather the hits on one line, in order: near an end they join it, elsewhere they cut it."""
    free_start = not (closed or (hits and hits[0] < touch))
    free_end = not (closed or (hits and hits[-1] > length - touch))
    inner = [hit for hit in hits if touch <= hit <= length - touch]
    inner = [hit for before, hit in pairwise([-inf, *inner]) if hit - before > touch]
    kept = spread(inner, apart_mm) if apart_mm > touch else inner
    return Noded(np.array([0.0, *kept, length]), free_start, free_end, len(inner) - len(kept))


def spread(along: Sequence[float], apart_mm: float) -> list[float]:
    """Keep of distances in order those that are so far from the last one kept, from 0 on."""
    kept = [0.0]
    for each in along:
        if each - kept[-1] >= apart_mm:
            kept.append(each)
    return kept[1:]


def _corners(parts: _Segments) -> Iterator[tuple[int, Floats]]:
    """Give every line with sharp corners, and how far along it they are (mm)."""
    step = parts.end - parts.start
    way = np.arctan2(step[:, 1], step[:, 0])
    turn = np.abs((way[1:] - way[:-1] + np.pi) % (2 * np.pi) - np.pi)
    sharp = 1 + np.flatnonzero((turn > SHARP) & (parts.line[1:] == parts.line[:-1]))
    for own in np.split(sharp, 1 + np.flatnonzero(np.diff(parts.line[sharp]))):
        if len(own):
            yield int(parts.line[own[0]]), parts.along[own]


def _cornered(node: Noded, corners: Floats, apart_mm: float) -> Noded:
    """Add the corners of a line to its nodes, those that are far enough from one another."""
    nodes = list(node.along_mm)
    for corner in corners:
        at = bisect(nodes, corner)
        if corner - nodes[at - 1] >= apart_mm and nodes[at] - corner >= apart_mm:
            nodes.insert(at, float(corner))
    return replace(node, along_mm=np.array(nodes))


def _segments(lines: Sequence[Line]) -> _Segments:
    """Take all lines apart."""
    along = [along_line(line) for line in lines]
    return _Segments(
        start=np.concatenate([line[:-1] for line in lines]),
        end=np.concatenate([line[1:] for line in lines]),
        line=np.repeat(np.arange(len(lines)), [len(line) - 1 for line in lines]),
        along=np.concatenate([distance[:-1] for distance in along]),
        length=np.concatenate([distance[1:] - distance[:-1] for distance in along]),
        length_of=np.array([distance[-1] for distance in along]),
    )


def _crossings(parts: _Segments, tree: shapely.STRtree, touch: float) -> Floats:
    """Return (line, distance along it) rows for every pair of segments that cross, (K, 2)."""
    first, second = tree.query(tree.geometries)
    same = parts.line[first] == parts.line[second]
    apart = np.abs(parts.along[first] - parts.along[second]) > touch
    keep = (first < second) & (~same | ((np.abs(first - second) > 1) & apart))
    first, second = first[keep], second[keep]
    t, u, crossing = _meet(parts, first, second)
    t, u, first, second = t[crossing], u[crossing], first[crossing], second[crossing]
    rows = [
        np.column_stack([parts.line[i], parts.along[i] + np.clip(s, 0, 1) * parts.length[i]])
        for i, s in ((first, t), (second, u))
    ]
    return np.concatenate(rows)


def _meet(parts: _Segments, first: Ints, second: Ints) -> tuple[Floats, Floats, Flags]:
    """Solve start + t step = start' + u step' for pairs of segments; True where they cross."""
    a = parts.end[first] - parts.start[first]
    b = parts.end[second] - parts.start[second]
    gap = parts.start[second] - parts.start[first]
    cross = a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0]
    crossing = np.abs(cross) > PARALLEL * parts.length[first] * parts.length[second]
    cross = np.where(crossing, cross, 1.0)
    t = (gap[:, 0] * b[:, 1] - gap[:, 1] * b[:, 0]) / cross
    u = (gap[:, 0] * a[:, 1] - gap[:, 1] * a[:, 0]) / cross
    return t, u, crossing & (np.abs(t - 0.5) <= WITHIN) & (np.abs(u - 0.5) <= WITHIN)


def _touches(
    lines: Sequence[Line], parts: _Segments, tree: shapely.STRtree, touch: float
) -> Floats:
    """Return (line, distance along it) rows where a line's end lies on another part of a line."""
    ends = np.concatenate([[line[0], line[-1]] for line in lines])
    owner = np.repeat(np.arange(len(lines)), 2)
    lengths = parts.length_of
    at = np.where(np.arange(len(ends)) % 2 == 0, 0.0, lengths[owner])
    end, segment = tree.query(shapely.points(ends), predicate="dwithin", distance=touch)
    foot = _foot(parts, segment, ends[end])
    itself = (parts.line[segment] == owner[end]) & (np.abs(foot - at[end]) <= 4 * touch)
    joins = ~(itself | _alongside(parts, lengths, (at, owner), (end, segment, foot), touch))
    end, segment, foot = end[joins], segment[joins], foot[joins]
    return np.concatenate(
        [np.column_stack([parts.line[segment], foot]), np.column_stack([owner[end], at[end]])]
    )


def _alongside(
    parts: _Segments,
    lengths: Floats,
    ends: tuple[Floats, Ints],
    hits: tuple[Ints, Ints, Floats],
    touch: float,
) -> Flags:
    """Tell which ends meet only the end of a line that runs back the same way as their own.

    Such lines lie on one another: the tip they share is a free one.
    """
    (at, owner), (end, segment, foot) = ends, hits
    way = (parts.end - parts.start) / parts.length[:, None]
    first = np.searchsorted(parts.line, np.arange(len(lengths)))
    last = np.append(first[1:], len(parts.line)) - 1
    inward = np.where((at > 0)[:, None], -way[last[owner]], way[first[owner]])
    start = (foot < touch)[:, None]
    other = np.where(start, way[segment], -way[segment])
    at_end = (foot < touch) | (foot > lengths[parts.line[segment]] - touch)
    same: Flags = np.einsum("ij,ij->i", inward[end], other) > ALIKE
    return at_end & same


def _foot(parts: _Segments, segment: Ints, points: Floats) -> Floats:
    """Distance along its line (mm) of the point of a segment nearest to a point."""
    step = parts.end[segment] - parts.start[segment]
    t = np.einsum("ij,ij->i", points - parts.start[segment], step) / parts.length[segment] ** 2
    along: Floats = parts.along[segment] + np.clip(t, 0, 1) * parts.length[segment]
    return along
