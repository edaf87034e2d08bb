"""What cures do to a layout: how each change is asked for, and how it is made."""

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

import numpy as np
import shapely

from scorecraft import curves
from scorecraft.arrays import Floats, Line
from scorecraft.checks.cure import Change, End
from scorecraft.cuts import Cut, Layout
from scorecraft.errors import Place

ADDED = "added cut"
"""What a cut that a cure adds is called until it stands in the pattern."""
LEAST_PART = 0.1
"""Beside a gap a part of a cut is kept that is longer than this share of the gap."""
STRAIGHT = 0.15
"""A cut whose bulge is less than this share of its chord is bent, and no arc."""


def applied(layout: Layout, changes: Iterable[Change]) -> Layout:
    """Make changes on a layout, all with its own indexes; added cuts are statements of their own.

    Where a cut is left out or parted by a gap the indexes of those after it change.
    """
    made: list[tuple[Cut, ...]] = [(cut,) for cut in layout.cuts]
    new: list[Cut] = []
    for change in changes:
        for k, i in enumerate(change.cuts):
            made[i] = _changed(change, k, made[i])
        if change.kind == "add":
            new += _added(layout, change, len(new))
    return replace(layout, cuts=(*(cut for parts in made for cut in parts), *new))


def _changed(change: Change, k: int, parts: tuple[Cut, ...]) -> tuple[Cut, ...]:
    """Make a change of its `k`th cut, which other changes may have parted already."""
    match change.kind:
        case "deeper" | "shallower":
            return tuple(replace(cut, depth_mm=change.mm) for cut in parts)
        case "steeper":
            return tuple(replace(cut, blade_rad=change.rad) for cut in parts)
        case "remove":
            return ()
        case "gap":
            return _parted(parts, np.array(change.points[k]), change.mm)
        case "move":
            way = np.array(change.points[k])
            return tuple(replace(cut, line=cut.line + way) for cut in parts)
        case "turn":
            at, by = np.array(change.points[0]), -change.rad
            return tuple(replace(cut, line=curves.turned(cut.line - at, by) + at) for cut in parts)
        case "shorter":
            return tuple(_shorter(cut, change.ends[k], change.mm) for cut in parts)
        case _:
            return tuple(_longer(cut, change.ends[k], change.mm) for cut in parts)


def at_depth(layout: Layout, cuts: Iterable[int], depth_mm: float) -> Change:
    """Cut the cuts at some indexes to a depth."""
    about = tuple(cuts)
    deeper = any(layout.cuts[i].depth_mm < depth_mm for i in about)
    return Change("deeper" if deeper else "shallower", about, mm=depth_mm)


def no_deeper(layout: Layout, cuts: Iterable[int], depth_mm: float) -> Change:
    """Cut the cuts at some indexes no deeper than a depth."""
    about = tuple(i for i in cuts if layout.cuts[i].depth_mm > depth_mm)
    return Change("shallower", about, mm=depth_mm)


def no_flatter(layout: Layout, cuts: Iterable[int], blade_rad: float) -> Change:
    """Hold the blade at an angle or steeper for the cuts at some indexes."""
    about = tuple(i for i in cuts if layout.cuts[i].blade_rad < blade_rad)
    return Change("steeper", about, rad=blade_rad)


def without(cuts: Iterable[int]) -> Change:
    """Leave out the cuts at some indexes."""
    return Change("remove", tuple(cuts))


def shortened(ends: Iterable[tuple[int, bool]], by_mm: float) -> Change:
    """Take a length (sheet mm) off cuts, given as index and whether it is the last end."""
    once = sorted(set(ends))
    said: tuple[End, ...] = tuple("last" if last else "first" for _, last in once)
    return Change("shorter", tuple(i for i, _ in once), mm=by_mm, ends=said)


def lengthened(cuts: Iterable[int], by_mm: float) -> Change:
    """Make cuts longer by a length (sheet mm) at both ends, with the bend they have."""
    about = tuple(cuts)
    both: End = "both"
    return Change("longer", about, mm=by_mm, ends=tuple(both for _ in about))


def opened(layout: Layout, gaps: Iterable[tuple[int, float]], wide_mm: float) -> Change:
    """Leave a gap (sheet mm) in cuts, given as index and the way from the start to its middle."""
    every = tuple(gaps)
    places = (shapely.LineString(layout.cuts[i].line).interpolate(at) for i, at in every)
    points = tuple((float(place.x), float(place.y)) for place in places)
    return Change("gap", tuple(i for i, _ in every), mm=wide_mm, points=points)


def moved(layout: Layout, ways: Mapping[int, Floats]) -> Change:
    """Move whole figures, by their number, each by a way (2,), sheet mm."""
    about = {i: ways[cut.figure] for i, cut in enumerate(layout.cuts) if cut.figure in ways}
    return _moved(about)


def _moved(ways: Mapping[int, Floats]) -> Change:
    points = tuple((float(x), float(y)) for x, y in ways.values())
    return Change("move", tuple(ways), points=points)


def parted(layout: Layout, pairs: Sequence[tuple[int, int, Floats]], by_mm: float) -> Change:
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
    return _moved(ways) if alone else moved(layout, ways)


def _farther(way: Floats | None, more: Floats) -> Floats:
    """Join two ways: what both ask for once, what only one asks for as it is."""
    if way is None:
        return more
    along = float(way @ more) / max(float(way @ way), 1e-12)
    return np.asarray(way + more - min(max(along, 0.0), 1.0) * way)


def turned(cuts: Iterable[int], about: Floats, by_rad: float) -> Change:
    """Turn cuts about a point (2,), sheet mm, counter-clockwise."""
    return Change("turn", tuple(cuts), rad=by_rad, points=((float(about[0]), float(about[1])),))


def added(lines: Sequence[Line], depth_mm: float, blade_rad: float) -> Change:
    """Add expansion cuts along lines (N, 2), sheet mm."""
    drawn = tuple(tuple((float(x), float(y)) for x, y in line) for line in lines)
    return Change("add", mm=depth_mm, rad=blade_rad, lines=drawn)


def _added(layout: Layout, change: Change, before: int) -> Iterable[Cut]:
    """Make the cuts of an `add`, of which there were some `before` in the same cure."""
    family = max((cut.family for cut in layout.cuts), default=-1) + 1 + before
    figure = max((cut.figure for cut in layout.cuts), default=-1) + 1 + before
    place = max((cut.place for cut in layout.cuts), default=Place(layout.title, 1, 1))
    for k, drawn in enumerate(change.lines):
        line, depth, blade = np.array(drawn), change.mm, change.rad
        yield Cut(line, ADDED, ADDED, figure + k, family + k, depth, blade, "expansion", place)


def _shorter(cut: Cut, end: End, by_mm: float) -> Cut:
    line = shapely.LineString(cut.line)
    away = min(by_mm, 0.99 * line.length / (2 if end == "both" else 1))
    start = 0 if end == "last" else away
    return replace(cut, line=_part(line, start, line.length - (0 if end == "first" else away)))


def _longer(cut: Cut, end: End, by_mm: float) -> Cut:
    """Carry a cut on: a straight or bent one keeps its bulge, an arc its radius."""
    first, last = (0 if end == "last" else by_mm), (0 if end == "first" else by_mm)
    chord = cut.line[-1] - cut.line[0]
    length = max(float(np.hypot(*chord)), 1e-9)
    along = chord / length
    way = (cut.line - cut.line[0]) @ along
    bulge = cut.line - cut.line[0] - way[:, None] * along
    if np.hypot(*bulge.T).max() <= STRAIGHT * length:
        stretched = way / length * (length + first + last) - first
        return replace(cut, line=cut.line[0] + stretched[:, None] * along + bulge)
    ends = [_beyond(cut.line[::-1], first)[::-1], cut.line, _beyond(cut.line, last)]
    return replace(cut, line=np.concatenate(ends))


def _beyond(line: Line, by_mm: float) -> Line:
    """Points (N, 2) that carry a line on beyond its end, along its circle."""
    if not by_mm:
        return np.zeros((0, 2))
    side = np.diff(line, axis=0)
    turn = np.diff(np.unwrap(np.arctan2(side[:, 1], side[:, 0])))
    run = np.hypot(*side.T)
    bend = float(turn.sum()) / float((run[1:] + run[:-1]).sum() / 2)
    steps = np.linspace(0, by_mm, 9)[1:]
    theta = math.atan2(side[-1, 1], side[-1, 0]) + bend * (steps + (run[-1] - steps[0]) / 2)
    away = np.column_stack([np.cos(theta), np.sin(theta)]) * steps[0]
    beyond: Line = line[-1] + np.cumsum(away, axis=0)
    return beyond


def _parted(parts: tuple[Cut, ...], middle: Floats, wide_mm: float) -> tuple[Cut, ...]:
    """Leave a gap about a place in the nearest part of a cut; parts too short are dropped."""
    place = shapely.Point(middle)
    lines = [shapely.LineString(cut.line) for cut in parts]
    nearest = int(np.argmin([line.distance(place) for line in lines]))
    kept: list[Cut] = []
    for k, (cut, line) in enumerate(zip(parts, lines, strict=True)):
        if k != nearest:
            kept.append(cut)
            continue
        at = line.project(place)
        for start, end in ((0, at - wide_mm / 2), (at + wide_mm / 2, line.length)):
            if end - start > LEAST_PART * wide_mm:
                kept.append(replace(cut, line=_part(line, start, end)))
    return tuple(kept)


def _part(line: shapely.LineString, start: float, end: float) -> Line:
    """Give what lies between two places along a line."""
    from shapely.ops import substring

    part: Line = shapely.get_coordinates(substring(line, start, end))
    return part


def way_to(line: Line, point: Floats) -> Floats:
    """Give the shortest way (2,) from a point to a line, sheet mm."""
    near = shapely.shortest_line(shapely.Point(point), shapely.LineString(line))
    ends = shapely.get_coordinates(near)
    return np.asarray(ends[1] - ends[0])
