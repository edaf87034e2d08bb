"""Where the number of a cut stands on the plan: near its cut, on no line.

Places around the cut are tried at many directions and distances; the nearest free one is taken,
with a thin leader to the cut, and lines the leader would cross make a place dearer.
"""

from collections.abc import Sequence

import numpy as np
import shapely

from scorecraft.arrays import Floats, Ints, Line, Shapes
from scorecraft.drawing.inks import NUMBER_CLEAR_MM, NUMBER_MM
from scorecraft.drawing.plan import along
from scorecraft.drawing.text import CAP_HEIGHT, width_mm
from scorecraft.frozen import dataclass

DIRECTIONS = 24
SHELLS_MM = (
    np.arange(3.0, 9.0, 0.75),
    np.arange(9.0, 20.0, 1.25),
    np.arange(20.0, 40.0, 2.0),
    np.arange(40.0, 90.0, 4.0),
)
"""Distances from the cut, near ones first: farther ones are tried only if they could be better."""
ANCHORS = (0.5, 0.36, 0.64)
"""Parts of a cut's length where a leader may end."""
CROSSING_MM = 9.0
"""A leader across another line counts as so much longer."""
GAP_MM = 0.6
"""A leader ends so far from its number."""
OWN_MM = 0.1
"""So much of a leader at its cut is not looked at for crossings."""
CHUNK = 12
ROOMY_MM, TIGHT_MM = 2.2, 2.5
"""A place with a line nearer than the first counts as farther away by the second."""


@dataclass(frozen=True, slots=True)
class Number:
    """A number set on the paper: middle of the text, and the leader from it to the cut (mm)."""

    text: str
    at: tuple[float, float]
    leader: Line
    cut: int


def place_numbers(
    wanted: Sequence[tuple[str, Sequence[int]]],
    lines: Sequence[Line],
    others: Sequence[Line],
    room: shapely.Geometry,
) -> dict[str, Number]:
    """Place each text by one of its lines, clear of all lines, of `others` and of each other.

    `wanted` gives each text with the indexes of the lines it may point to; texts must lie within
    `room`. All in paper mm. A text that finds no free place is left out.
    """
    shapely.prepare(room)
    fixed = shapely.STRtree(_chunks([*lines, *others]))
    set_already: list[shapely.Geometry] = []
    out: dict[str, Number] = {}
    for text, indexes in wanted:
        trees = (fixed, shapely.STRtree(set_already))
        number = _place(text, indexes, lines, trees, room)
        if number:
            out[text] = number
            set_already += [frame(text, np.array([number.at]))[0]]
            set_already += [shapely.linestrings(number.leader)]
    return out


def _place(
    text: str,
    indexes: Sequence[int],
    lines: Sequence[Line],
    trees: Sequence[shapely.STRtree],
    room: shapely.Geometry,
) -> Number | None:
    """Find the cheapest free place of one text, shell by shell."""
    best, best_cost = None, np.inf
    for distances in SHELLS_MM:
        if distances[0] >= best_cost:
            break
        found, cost = _cheapest(text, _candidates(indexes, lines, distances), trees, room)
        if cost < best_cost:
            best, best_cost = found, cost
    return best


def _cheapest(
    text: str,
    candidates: tuple[Ints, Line, Line],
    trees: Sequence[shapely.STRtree],
    room: shapely.Geometry,
) -> tuple[Number | None, float]:
    """Take the free candidate with the shortest leader that crosses the fewest lines."""
    owners, anchors, middles = candidates
    frames = frame(text, middles)
    near = _nearness(frames, trees)
    free = shapely.covers(room, frames) & (near >= NUMBER_CLEAR_MM)
    owners, anchors, middles, frames = owners[free], anchors[free], middles[free], frames[free]
    if not len(middles):
        return None, np.inf
    leaders = shapely.shortest_line(shapely.points(anchors), frames)
    cost = (
        np.hypot(*(middles - anchors).T)
        + CROSSING_MM * _crossings(leaders, trees)
        + TIGHT_MM * (near[free] < ROOMY_MM)
    )
    best = int(np.argmin(cost))
    x, y = middles[best]
    leader = _short_of(shapely.get_coordinates(leaders[best]))
    return Number(text, (float(x), float(y)), leader, int(owners[best])), float(cost[best])


def _short_of(leader: Line) -> Line:
    """End a leader `GAP_MM` before its number."""
    start, end = leader
    shorter: Line = np.array([start, end - (end - start) * (GAP_MM / np.hypot(*(end - start)))])
    return shorter


def _nearness(frames: Shapes, trees: Sequence[shapely.STRtree]) -> Floats:
    """Measure how near the nearest thing is to each box, if it is nearer than `ROOMY_MM`."""
    near = np.full(len(frames), np.inf)
    for tree in trees:
        boxes, things = tree.query(frames, predicate="dwithin", distance=ROOMY_MM)
        gaps = shapely.distance(frames[boxes], tree.geometries[things])
        np.minimum.at(near, boxes, gaps)
    return near


def _crossings(leaders: Shapes, trees: Sequence[shapely.STRtree]) -> Floats:
    """Count what each leader crosses, but for the cut it comes from."""
    start = np.minimum(OWN_MM / np.maximum(shapely.length(leaders), OWN_MM), 1.0)
    ends = shapely.get_coordinates(leaders).reshape(-1, 2, 2)
    ends[:, 0] += start[:, None] * (ends[:, 1] - ends[:, 0])
    off = shapely.linestrings(ends)
    crossed = np.zeros(len(off))
    for tree in trees:
        crossed += np.bincount(tree.query(off, predicate="intersects")[0], minlength=len(off))
    return crossed


def _chunks(lines: Sequence[Line]) -> list[shapely.LineString]:
    """Break lines into short runs of points: boxes of a search tree must be small to be of use."""
    return [
        shapely.linestrings(line[start : start + CHUNK + 1])
        for line in lines
        for start in range(0, len(line) - 1, CHUNK)
    ]


def _candidates(
    indexes: Sequence[int], lines: Sequence[Line], distances: Floats
) -> tuple[Ints, Line, Line]:
    """List (line index, point on the line, middle of the text) of every place to try."""
    anchors = [(index, along(lines[index], part)[0]) for index in indexes for part in ANCHORS]
    angle = np.arange(DIRECTIONS) * (2 * np.pi / DIRECTIONS)
    around = np.column_stack([np.cos(angle), np.sin(angle)])
    offsets = (distances[:, None, None] * around).reshape(-1, 2)
    owners = np.repeat([index for index, _ in anchors], len(offsets))
    starts = np.repeat([point for _, point in anchors], len(offsets), axis=0)
    return owners, starts, starts + np.tile(offsets, (len(anchors), 1))


def frame(text: str, middles: Line) -> Shapes:
    """Return the boxes of a text set about each middle."""
    half = np.array([width_mm(text, NUMBER_MM, bold=True), NUMBER_MM * CAP_HEIGHT]) / 2
    low, high = middles - half, middles + half
    boxes: Shapes = shapely.box(low[:, 0], low[:, 1], high[:, 0], high[:, 1])
    return boxes
