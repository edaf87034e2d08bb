"""Which strokes of a pattern are the hardest, by measure: the ones worth practising first."""

from collections.abc import Callable, Sequence

import numpy as np
import shapely

from scorecraft.arrays import Floats, Line
from scorecraft.checks.linework import strings
from scorecraft.checks.neighbours import near_pairs
from scorecraft.cuts import Layout
from scorecraft.frozen import dataclass
from scorecraft.groups import called
from scorecraft.practice import JOIN_MM

STRETCH_MM = 10.0
"""How sharply a stroke bends is told over so much of its length."""
GRID_MM = 0.5
CORNER_MM = 2.0
"""Within this of a corner the direction is taken to change, and along short chords all the way."""
LEAST_BEND_DEG = 15.0
"""A stroke that bends less within the stretch is taken as straight."""
LONGEST_TURN_MM = 80.0
"""A quarter of a circle over a longer way is no small turn: its radius is 50 mm."""
NEAR_MM = 12.0
"""A neighbour farther away than this does not crowd a stroke."""
ALSO_NEAR = 1.1
"""Neighbours that are farther away than the nearest by no more than this are near, too."""
ALIKE = 1e-4
"""Copies of one figure differ by less: one of them stands for all."""


Headings = tuple[Floats, Floats]
"""Ways along a line from its start (mm), and its angle at each (radians)."""


@dataclass(frozen=True, slots=True)
class Hard:
    """A stroke to practise: the index of its cut, and what makes it hard.

    `at` is where along it that is (a share of its length); `beside` are the indexes of the
    neighbours that it comes near, if that is why.
    """

    cut: int
    why: tuple[str, ...]
    at: float = 0.5
    beside: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Trait:
    """One way to be hard: `ease` of every cut, infinite where it does not count, and its words."""

    ease: Floats
    tell: Callable[[int], Hard]


def hardest(layout: Layout, order: Sequence[int]) -> tuple[Hard, ...]:
    """Find the hardest strokes of a layout: the longest, bent most sharply, turning most, crowded.

    Of strokes alike one that is hard in another way already is taken, else the longest, and of
    those the first in the `order` of cutting.
    """
    if not layout.cuts:
        return ()
    kept: dict[int, Hard] = {}
    whole_mm = np.rint(layout.lengths_mm).tolist()
    ways = [headings(cut.line) for cut in layout.cuts]
    traits = (_long(layout), _bent(layout, ways), _turning(ways), _crowded(layout, order))
    for trait in traits:
        least = trait.ease.min()
        if np.isfinite(least):
            within = least + ALIKE * max(1.0, abs(least))
            alike = [index for index in order if trait.ease[index] <= within]
            index = max(alike, key=lambda each: (each in kept, whole_mm[each]))
            kept[index] = _joined(kept.get(index), trait.tell(index))
    return tuple(kept.values())


def _joined(before: Hard | None, more: Hard) -> Hard:
    """Tell all that makes a stroke hard; the place of what was found last counts."""
    return Hard(more.cut, (*before.why, *more.why), more.at, more.beside) if before else more


def _long(layout: Layout) -> Trait:
    """Rate the cuts by their length along the dough."""
    lengths = layout.lengths_mm

    def tell(index: int) -> Hard:
        return Hard(index, (f"The longest stroke: {lengths[index]:.0f} mm in one pull.",))

    return Trait(-lengths, tell)


def _bent(layout: Layout, ways: Sequence[Headings]) -> Trait:
    """Rate the cuts by how sharply they bend; those nearly straight do not count."""
    measured = [sharpest(*each) for each in ways]
    turns = np.degrees([turn for turn, _ in measured])

    def tell(index: int) -> Hard:
        within = min(STRETCH_MM, float(layout.lengths_mm[index]))
        why = f"The sharpest bend: {turns[index]:.0f}° within {within:.0f} mm."
        return Hard(index, (why,), measured[index][1])

    return Trait(np.where(turns < LEAST_BEND_DEG, np.inf, -turns), tell)


def _turning(ways: Sequence[Headings]) -> Trait:
    """Rate the cuts by how soon they turn a quarter of a circle, if they do."""
    measured = [quarter_turn(*each) for each in ways]

    def tell(index: int) -> Hard:
        way, at = measured[index]
        return Hard(index, (f"The smallest turn: a quarter circle in {way:.0f} mm.",), at)

    return Trait(np.array([way for way, _ in measured]), tell)


def _crowded(layout: Layout, order: Sequence[int]) -> Trait:
    """Rate the cuts by how near a neighbour is that they do not meet and that is cut before."""
    lines = strings(layout)
    pairs = near_pairs(layout, lines, NEAR_MM)
    gaps = shapely.distance(lines[pairs.first], lines[pairs.second])
    rank = np.empty(len(lines), dtype=np.intp)
    rank[list(order)] = np.arange(len(lines))
    later = np.where(rank[pairs.first] > rank[pairs.second], pairs.first, pairs.second)
    early = pairs.first + pairs.second - later
    apart = gaps > JOIN_MM.value
    later, early, gaps = later[apart], early[apart], gaps[apart]
    ease = np.full(len(lines), np.inf)
    np.minimum.at(ease, later, gaps)

    def tell(index: int) -> Hard:
        own = (later == index) & (gaps <= ALSO_NEAR * ease[index])
        near = sorted(early[own].tolist(), key=lambda other: rank[other])
        start = shapely.get_point(shapely.shortest_line(lines[index], lines[near[0]]), 0)
        at = float(shapely.line_locate_point(lines[index], start, normalized=True))
        name, other = called(layout.cuts[index], 1), called(layout.cuts[near[0]], 1)
        to = "the next one" if other == name else f"the {other}"
        why = f"The closest neighbour: {ease[index]:.1f} mm to {to}."
        return Hard(index, (why,), at, tuple(near))

    return Trait(ease, tell)


def headings(line: Line) -> Headings:
    """Follow the direction of a line (N, 2) in mm: ways from its start (mm) and angles (radians).

    They are spaced evenly, `GRID_MM` apart or a little less, and the angle does not jump.
    """
    steps = np.diff(line, axis=0)
    length = np.hypot(*steps.T)
    steps, length = steps[length > 0], length[length > 0]
    ends = np.cumsum(length)
    angle = np.unwrap(np.arctan2(steps[:, 1], steps[:, 0]))
    ways = np.linspace(0.0, ends[-1], max(2, int(np.ceil(ends[-1] / GRID_MM)) + 1))
    bends = np.minimum(length / 2, CORNER_MM)
    known = np.column_stack([ends - length + bends, ends - bends]).ravel()
    return ways, np.interp(ways, known, np.repeat(angle, 2))


def sharpest(ways: Floats, angle: Floats) -> tuple[float, float]:
    """Measure how far a line turns within the stretch at the most (radians), and where (share).

    The line is told by its `headings`.
    """
    return most_turned(ways, angle, max(1, min(len(ways) - 1, round(STRETCH_MM / ways[1]))))


def quarter_turn(ways: Floats, angle: Floats) -> tuple[float, float]:
    """Measure the shortest way in which a line turns a quarter of a circle (mm), and where (share).

    The line is told by its `headings`. The way is infinite for one that does not turn so far, or
    only on a longer way.
    """
    if np.ptp(angle) >= np.pi / 2:
        for apart in range(1, min(len(ways), int(LONGEST_TURN_MM / ways[1]) + 1)):
            turn, at = most_turned(ways, angle, apart)
            if turn >= np.pi / 2 - 1e-9:
                return float(ways[apart]), at
    return np.inf, 0.5


def most_turned(ways: Floats, angle: Floats, apart: int) -> tuple[float, float]:
    """Measure the most that a line turns within so many steps (radians), and where (share)."""
    turns = np.abs(angle[apart:] - angle[:-apart])
    most = int(np.argmax(turns))
    return float(turns[most]), float((ways[most] + ways[most + apart]) / 2 / ways[-1])
