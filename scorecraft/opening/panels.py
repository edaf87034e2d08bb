"""Cuts as straight panels, the elements of the displacement discontinuity method."""

from collections.abc import Sequence
from functools import cached_property
from itertools import pairwise

import numpy as np
import shapely
from numpy.typing import ArrayLike

from scorecraft.arrays import Flags, Floats, Ints, Line
from scorecraft.errors import UsageError
from scorecraft.frozen import dataclass, replace
from scorecraft.opening.noding import ALIKE, OPENING_JOIN, Noded, along_line, noded

OPENING_LEAST_PANELS = 6.0
"""The fewest panels a line is cut into; its opening is then good to 3 %."""
OPENING_FEWEST_PANELS = 3.0
"""The fewest panels of a line shorter than so many panels."""
TIP_INSET = 0.2736
"""Share of a panel by which a free tip is drawn in. Panels of constant opening on a straight
slit open like a slit that is longer by about this share of a panel at each tip; drawing the tips
in takes the error of N panels from 1/N to 1/N^2. Found once from the opened area of a slit of
800 panels, which is 2 pi a^2 T / E' (Sneddon, Proc. R. Soc. A 187 (1946) 229)."""
HELD_INSET = (1.467, 0.79)
"""A tip held by springs ends less like a root and more like a step, and is drawn in less: by
TIP_INSET / (1 + a b^c) for b = k panel / E'. Found once from the opened areas of slits of 50, 100
and 200 panels held by even springs, k a / E' from 0 to 500 (Prandtl's equation by a sine series):
b alone decides, and this is within 0.003 of what each of them asks for."""

END_SLOPE = 0.5
"""Share of the slope of the last panels at which the width goes on to where a line ends on another:
least error over the patterns of the shelf, against panels a third as long."""


@dataclass(frozen=True, slots=True, eq=False)
class LineEnds:
    """Where a line starts and ends (2,), its length (mm), and which of its ends are free tips."""

    start: Floats
    end: Floats
    length_mm: float
    free_start: bool
    free_end: bool

    def widths(self, inner: Floats, along: Floats) -> tuple[float, float]:
        """Width at both ends of a line from the widths (K,) along it (mm).

        There is none at a free tip. Where the line ends on another cut it goes on changing by half
        as much as over the last panel: at the foot of a vein by all of that, where cuts run into
        one another by nothing.
        """
        first, last = float(inner[0]), float(inner[-1])
        if len(inner) > 1:
            first -= END_SLOPE * (inner[1] - first) / (along[1] - along[0]) * along[0]
            slope = END_SLOPE * (last - inner[-2]) / (along[-1] - along[-2])
            last += slope * (self.length_mm - along[-1])
        return max(0.0, first) * (not self.free_start), max(0.0, last) * (not self.free_end)


@dataclass(frozen=True, eq=False)
class Panels:
    """M straight panels in the order of the lines, each from `start` to `end` (M, 2) in mm.

    `line` (M,) is the line a panel belongs to. Where two lines run on top of one another only
    the first has panels of its own. `of_line[k]` lists all panels that lie along line k, in
    order, `along_mm[k]` the distances of their midpoints from its start; `ends[k]` its ends.
    `passed` crossings lie within panels, because there are so many.
    """

    start: Floats
    end: Floats
    line: Ints
    of_line: tuple[Ints, ...]
    along_mm: tuple[Floats, ...]
    ends: tuple["LineEnds", ...]
    passed: int = 0

    def __len__(self) -> int:
        return len(self.line)

    @cached_property
    def midpoint(self) -> Floats:
        """Midpoints (M, 2), mm: where tractions are balanced."""
        return (self.start + self.end) / 2

    @cached_property
    def length(self) -> Floats:
        """Lengths (M,), mm."""
        step = self.end - self.start
        length: Floats = np.hypot(step[:, 0], step[:, 1])
        return length

    @cached_property
    def tangent(self) -> Floats:
        """Unit vectors (M, 2) from start to end."""
        return (self.end - self.start) / self.length[:, None]

    @cached_property
    def normal(self) -> Floats:
        """Unit vectors (M, 2) to the left of the tangent."""
        tangent = self.tangent
        return np.column_stack([-tangent[:, 1], tangent[:, 0]])


def panels(
    lines: Sequence[Line], panel_mm: float, held: ArrayLike = 0.0, *, passing: bool = False
) -> Panels:
    """Cut lines (N, 2) into panels of about `panel_mm`, ending wherever lines turn, cross or touch.

    A line gets at least `OPENING_LEAST_PANELS`, or `OPENING_FEWEST_PANELS` if it is that short.
    `held` is the stiffness of the springs of each line (E per mm): it moves free tips a little.
    `passing` lets panels run over crossings that are less than a panel apart.
    Raises UsageError on a line without length or with a point that is not a number, and on a panel
    size that is not positive.
    """
    lines = [checked(line, k) for k, line in enumerate(lines)]
    if not (np.isfinite(panel_mm) and panel_mm > 0):
        raise UsageError(f"a panel of {panel_mm} mm cannot be: give a positive size")
    if not lines:
        return _none()
    nodes = noded(lines, panel_mm, panel_mm if passing else 0.0)
    own = own_panel(np.array([node.along_mm[-1] for node in nodes]), panel_mm)
    inset = tip_inset(np.asarray(held, dtype=np.float64) * own)
    places, piece, owner = _steps(nodes, own, inset)
    corner = _placed(lines, owner, places)
    within = piece[1:] == piece[:-1]
    start, end, owner = corner[:-1][within], corner[1:][within], owner[1:][within]
    along = ((places[:-1] + places[1:]) / 2)[within]
    start, end, kept = _met(start, end, owner, panel_mm)
    start, end, along, owner = start[kept], end[kept], along[kept], owner[kept]
    twin = _twins(start, end, panel_mm)
    ends = tuple(
        LineEnds(line[0], line[-1], float(node.along_mm[-1]), node.free_start, node.free_end)
        for line, node in zip(lines, nodes, strict=True)
    )
    passed = sum(node.passed for node in nodes)
    return replace(_without_twins(start, end, owner, along, twin, ends), passed=passed)


def _none() -> Panels:
    """No panels at all: the uncut loaf."""
    empty = np.zeros((0, 2))
    return Panels(empty, empty, np.zeros(0, dtype=np.int64), (), (), ())


def checked(line: Line, number: int) -> Line:
    """Return a line as (N, 2) floats without repeated points; raises UsageError if none."""
    given = np.asarray(line, dtype=np.float64)
    if given.ndim != 2 or given.shape[1] != 2 or not np.isfinite(given).all():
        raise UsageError(f"line {number} of the opening model is not a list of points in mm")
    moved = (given[1:] != given[:-1]).any(axis=1)
    if not moved.any():
        raise UsageError(f"line {number} of the opening model has no length")
    points: Line = given[np.append(True, moved)]
    return points


def _placed(lines: Sequence[Line], owner: Ints, along: Floats) -> Floats:
    """Find the places (K, 2) at distances (K,) along the lines of numbers (K,), mm."""
    count = np.array([len(line) for line in lines])
    last = np.cumsum(count) - 1
    points, known = np.concatenate(lines), np.concatenate([along_line(line) for line in lines])
    base = np.append(0.0, np.cumsum(known[last] + 1.0))  # one line after the other
    number = np.repeat(np.arange(len(lines)), count)
    at = np.searchsorted(base[number] + known, base[owner] + along, "right") - 1
    after = np.minimum(at + 1, last[owner])
    run = np.where(after > at, known[after] - known[at], 1.0)
    slope = (points[after] - points[at]) / run[:, None]
    placed: Floats = points[at] + slope * (along - known[at])[:, None]
    return placed


def own_panel(length_mm: Floats, panel_mm: float) -> Floats:
    """Panels (mm) of lines of lengths (mm): short lines get shorter ones, to have a few."""
    few, least = OPENING_FEWEST_PANELS, OPENING_LEAST_PANELS
    return np.minimum(panel_mm, length_mm / np.where(length_mm < few * panel_mm, few, least))


def count_of(piece_mm: ArrayLike, panel_mm: ArrayLike) -> Ints:
    """Count the panels that pieces of line between two nodes are cut into (both mm)."""
    share = np.asarray(piece_mm, dtype=np.float64) / np.asarray(panel_mm)
    count: Ints = np.maximum(1, np.ceil(share - 1e-6).astype(np.int64))
    return count


def tip_inset(held: Floats) -> Floats:
    """Share of a panel by which free tips are drawn in, under springs of k panel / E' = `held`."""
    factor, power = HELD_INSET
    inset: Floats = TIP_INSET / (1 + factor * held**power)
    return inset


def _steps(nodes: Sequence[Noded], own: Floats, inset: Floats) -> tuple[Floats, Ints, Ints]:
    """Place the ends of equal panels between nodes, free tips drawn in by their share of a panel.

    Gives how far along its line each is (K,), mm, between which two nodes, and its line. Panels
    and shares are those of the lines.
    """
    number = np.repeat(np.arange(len(nodes)), [len(node.along_mm) for node in nodes])
    at, inner = np.concatenate([node.along_mm for node in nodes]), number[1:] == number[:-1]
    low, high, owner = at[:-1][inner], at[1:][inner], number[1:][inner]
    new = np.append(True, owner[1:] != owner[:-1])
    free = np.array([(node.free_start, node.free_end) for node in nodes]) * inset[:, None]
    before = np.where(new, free[owner, 0], 0.0)
    after = np.where(np.append(new[1:], True), free[owner, 1], 0.0)
    count = count_of(high - low, own[owner])
    panel = (high - low) / (count + before + after)
    final = np.cumsum(count + 1) - 1
    piece = np.repeat(np.arange(len(low)), count + 1)
    step = np.arange(len(piece)) - (final - count)[piece]
    along = low[piece] + panel[piece] * (step + before[piece])
    even = final[after == 0]
    along[even] = high[piece[even]]  # the very number that the next piece starts from
    return along, piece, owner[piece]


def _met(start: Floats, end: Floats, owner: Ints, panel_mm: float) -> tuple[Floats, Floats, Flags]:
    """Bring ends of panels that all but meet into one place, that of the first of them.

    Also tells which panels are still any: both ends of a very short one come into one place. Of a
    line that would have none at all they stay as they were.
    """
    loose = np.flatnonzero(np.append((end[:-1] != start[1:]).any(axis=1), True))
    both = np.concatenate([start, end[loose]])  # the other ends are where the next panel starts
    points = shapely.points(both)
    tree = shapely.STRtree(points)
    one, other = tree.query(points, predicate="dwithin", distance=OPENING_JOIN * panel_mm)
    place = np.arange(len(both))
    np.minimum.at(place, one, other)
    at_end = np.arange(len(end)) + 1
    at_end[loose] = len(start) + np.arange(len(loose))
    first, last = both[place[: len(start)]], both[place[at_end]]
    kept = (first != last).any(axis=1)
    lost = (np.bincount(owner, kept) == 0)[owner]
    return np.where(lost[:, None], start, first), np.where(lost[:, None], end, last), kept | lost


def _twins(start: Floats, end: Floats, panel_mm: float) -> Ints:
    """For each panel the earlier panel that it lies on, or itself, shape (M,).

    Two panels on top of one another would open as one cut in any proportion: the equations have
    no single answer. So the later one is left out and takes the opening of the earlier.
    """
    middle, step = (start + end) / 2, end - start
    step = step / np.hypot(step[:, 0], step[:, 1])[:, None]
    tree = shapely.STRtree(shapely.linestrings(np.stack([start, end], axis=1)))
    near = OPENING_JOIN * panel_mm
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
    along: Floats,
    twin: Ints,
    ends: tuple[LineEnds, ...],
) -> Panels:
    """Keep one panel of each pair of twins, and list for each line the panels along it."""
    kept = twin == np.arange(len(twin))
    number = np.cumsum(kept) - 1
    bounds = np.searchsorted(owner, np.arange(len(ends) + 1))
    mine = number[twin]
    spans = [slice(low, high) for low, high in pairwise(bounds)]
    of_line = tuple(mine[span] for span in spans)
    places = tuple(along[span] for span in spans)
    return Panels(start[kept], end[kept], owner[kept], of_line, places, ends)
