"""Cuts as straight panels, the elements of the displacement discontinuity method."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil

import numpy as np
import shapely

from scorecraft.cuts import Line
from scorecraft.errors import UsageError
from scorecraft.opening.noding import ALIKE, Floats, Ints, Noded, along_line, noded
from scorecraft.practice import (
    OPENING_COARSEST_PANEL_MM,
    OPENING_FEWEST_PANELS,
    OPENING_FINEST_PANEL_MM,
    OPENING_JOIN,
    OPENING_LEAST_PANELS,
    OPENING_PANELS_AIMED,
)

TIP_INSET = 0.2736
"""Share of a panel by which a free tip is drawn in. Panels of constant opening on a straight
slit open like a slit that is longer by about this share of a panel at each tip; drawing the tips
in takes the error of N panels from 1/N to 1/N^2. Found once from the opened area of a slit of
800 panels, which is 2 pi a^2 T / E' (Sneddon, Proc. R. Soc. A 187 (1946) 229)."""


@dataclass(frozen=True, slots=True)
class LineEnds:
    """Where a line starts and ends (2,), its length (mm), and which of its ends are free tips."""

    start: Floats
    end: Floats
    length_mm: float
    free_start: bool
    free_end: bool

    def widths(self, inner: Floats, along: Floats) -> tuple[float, float]:
        """Width at both ends of a line from the widths (K,) along it: none at a free tip.

        Where the line ends on another cut the width is carried on straight.
        """
        before = inner[0] - (inner[1] - inner[0]) / (along[1] - along[0]) * along[0]
        rest = self.length_mm - along[-1]
        after = inner[-1] + (inner[-1] - inner[-2]) / (along[-1] - along[-2]) * rest
        first, last = (max(0.0, float(width)) for width in (before, after))
        return first * (not self.free_start), last * (not self.free_end)


@dataclass(frozen=True, slots=True)
class Panels:
    """M straight panels in the order of the lines, each from `start` to `end` (M, 2) in mm.

    `line` (M,) is the line a panel belongs to. Where two lines run on top of one another only
    the first has panels of its own. `of_line[k]` lists all panels that lie along line k, in
    order, `along_mm[k]` the distances of their midpoints from its start; `ends[k]` its ends.
    """

    start: Floats
    end: Floats
    line: Ints
    of_line: tuple[Ints, ...]
    along_mm: tuple[Floats, ...]
    ends: tuple["LineEnds", ...]

    def __len__(self) -> int:
        return len(self.line)

    @property
    def midpoint(self) -> Floats:
        """Midpoints (M, 2), mm: where tractions are balanced."""
        return (self.start + self.end) / 2

    @property
    def length(self) -> Floats:
        """Lengths (M,), mm."""
        step = self.end - self.start
        length: Floats = np.hypot(step[:, 0], step[:, 1])
        return length

    @property
    def tangent(self) -> Floats:
        """Unit vectors (M, 2) from start to end."""
        return (self.end - self.start) / self.length[:, None]

    @property
    def normal(self) -> Floats:
        """Unit vectors (M, 2) to the left of the tangent."""
        tangent = self.tangent
        return np.column_stack([-tangent[:, 1], tangent[:, 0]])


def panels(lines: Sequence[Line], panel_mm: float) -> Panels:
    """Cut lines (N, 2) into panels of about `panel_mm`, ending wherever lines cross or touch.

    A line gets at least `OPENING_LEAST_PANELS`, or `OPENING_FEWEST_PANELS` if it is that short.
    Raises UsageError on a line without length or
    with a point that is not a number, and on a panel size that is not positive.
    """
    lines = [_checked(line, k) for k, line in enumerate(lines)]
    if not (np.isfinite(panel_mm) and panel_mm > 0):
        raise UsageError(f"a panel of {panel_mm} mm cannot be: give a positive size")
    if not lines:
        return _none()
    nodes = noded(lines, panel_mm)
    pieces = [_resampled(line, node, panel_mm) for line, node in zip(lines, nodes, strict=True)]
    start, end = (np.concatenate([piece[k] for piece in pieces]) for k in (0, 1))
    start, end = _met(start, end, panel_mm)
    along = tuple(piece[2] for piece in pieces)
    owner = np.repeat(np.arange(len(lines)), [len(piece[2]) for piece in pieces])
    twin = _twins(start, end, panel_mm)
    ends = tuple(
        LineEnds(line[0], line[-1], float(node.along_mm[-1]), node.free_start, node.free_end)
        for line, node in zip(lines, nodes, strict=True)
    )
    return _without_twins(start, end, owner, along, twin, ends)


def panel_for(lines: Sequence[Line]) -> float:
    """Choose the panel size (mm) for a pattern: as fine as makes no matter, and still quick.

    `OPENING_FINEST_PANEL_MM`, or as much longer as it takes to stay near `OPENING_PANELS_AIMED`
    panels, up to `OPENING_COARSEST_PANEL_MM`. Measured on crowns of 6, 8 and 10 leaves (two
    outlines 6 mm, a midrib 9 mm, 4 to 12 veins 3 mm deep, 58 mm long, on a 220 mm round that
    grows 10 %), 1600 to 1900 panels, against panels a third as long: mean mouth of every line
    within 1.5 %, widest mouth of midribs and outlines within 1.5 %, of veins, which are widest at
    their root, within 3 %.
    """
    if not lines:
        return OPENING_FINEST_PANEL_MM.value
    length = np.array([along_line(_checked(line, k))[-1] for k, line in enumerate(lines)])
    finest, coarsest = OPENING_FINEST_PANEL_MM.value, OPENING_COARSEST_PANEL_MM.value
    for panel in np.geomspace(finest, coarsest, 43):
        count = np.maximum(length / panel + 0.5, _fewest(length, panel)).sum()
        if count <= OPENING_PANELS_AIMED.value:
            break
    return float(panel)


def _none() -> Panels:
    """No panels at all: the uncut loaf."""
    empty = np.zeros((0, 2))
    return Panels(empty, empty, np.zeros(0, dtype=np.int64), (), (), ())


def _checked(line: Line, number: int) -> Line:
    """Return a line as (N, 2) floats without repeated points, or refuse it."""
    given = np.asarray(line, dtype=np.float64)
    if given.ndim != 2 or given.shape[1] != 2 or not np.isfinite(given).all():
        raise UsageError(f"line {number} of the opening model is not a list of points in mm")
    points: Line = given[(np.diff(given, axis=0, prepend=np.nan) != 0).any(axis=1)]
    if len(points) < 2:
        raise UsageError(f"line {number} of the opening model has no length")
    return points


def _resampled(line: Line, node: Noded, panel_mm: float) -> tuple[Floats, Floats, Floats]:
    """Panels of one line: starts, ends, and distances of the midpoints along it."""
    length = float(node.along_mm[-1])
    own = min(panel_mm, length / float(_fewest(np.array(length), panel_mm)))
    last = len(node.along_mm) - 2
    steps = [
        _steps(low, high, own, node.free_start and k == 0, node.free_end and k == last)
        for k, (low, high) in enumerate(pairwise(node.along_mm))
    ]
    corners = [_points_at(line, step) for step in steps]
    start = np.concatenate([corner[:-1] for corner in corners])
    end = np.concatenate([corner[1:] for corner in corners])
    along = np.concatenate([(step[:-1] + step[1:]) / 2 for step in steps])
    return start, end, along


def _fewest(length: Floats, panel_mm: float) -> Floats:
    """Fewest panels of lines of a length (mm, any shape): fewer for very short ones."""
    few, least = OPENING_FEWEST_PANELS.value, OPENING_LEAST_PANELS.value
    return np.where(length < few * panel_mm, few, least)


def _steps(low: float, high: float, panel_mm: float, free_low: bool, free_high: bool) -> Floats:
    """Place the ends of equal panels between two nodes (mm), a free tip drawn in."""
    count = max(1, ceil((high - low) / panel_mm - 1e-6))
    panel = (high - low) / (count + TIP_INSET * (free_low + free_high))
    steps: Floats = low + panel * (np.arange(count + 1.0) + TIP_INSET * free_low)
    if not free_high:
        steps[-1] = high  # the very number that the next piece starts from
    return steps


def _points_at(line: Line, along: Floats) -> Floats:
    """Points (K, 2) of a line at distances (mm) from its start."""
    own = along_line(line)
    return np.column_stack([np.interp(along, own, line[:, 0]), np.interp(along, own, line[:, 1])])


def _met(start: Floats, end: Floats, panel_mm: float) -> tuple[Floats, Floats]:
    """Bring ends of panels that all but meet into one place, that of the first of them."""
    both = np.concatenate([start, end])
    points = shapely.points(both)
    tree = shapely.STRtree(points)
    one, other = tree.query(points, predicate="dwithin", distance=OPENING_JOIN.value * panel_mm)
    place = np.arange(len(both))
    np.minimum.at(place, one, other)
    met = both[place]
    return met[: len(start)], met[len(start) :]


def _twins(start: Floats, end: Floats, panel_mm: float) -> Ints:
    """For each panel the earlier panel that it lies on, or itself, shape (M,).

    Two panels on top of one another would open as one cut in any proportion: the equations have
    no single answer. So the later one is left out and takes the opening of the earlier.
    """
    middle, step = (start + end) / 2, end - start
    step = step / np.hypot(step[:, 0], step[:, 1])[:, None]
    tree = shapely.STRtree(shapely.linestrings(np.stack([start, end], axis=1)))
    near = OPENING_JOIN.value * panel_mm
    later, earlier = tree.query(shapely.points(middle), predicate="dwithin", distance=near)
    alike = np.abs(np.einsum("ij,ij->i", step[later], step[earlier])) > ALIKE
    twin = np.arange(len(start))
    pairs = np.column_stack([later, earlier])[(earlier < later) & alike]
    for panel, other in pairs[np.lexsort(pairs.T[::-1])]:
        if twin[panel] == panel and twin[other] == other:
            twin[panel] = other
    return twin


def _without_twins(
    start: Floats,
    end: Floats,
    owner: Ints,
    along: tuple[Floats, ...],
    twin: Ints,
    ends: tuple[LineEnds, ...],
) -> Panels:
    """Keep one panel of each pair of twins, and list for each line the panels along it."""
    kept = twin == np.arange(len(twin))
    number = np.cumsum(kept) - 1
    bounds = np.searchsorted(owner, np.arange(len(ends) + 1))
    mine = number[twin]
    of_line = tuple(mine[bounds[k] : bounds[k + 1]] for k in range(len(ends)))
    return Panels(start[kept], end[kept], owner[kept], of_line, along, ends)
