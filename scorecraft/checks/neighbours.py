"""Which cuts are looked at together: all that are near each other, or a bounded sample of them.

Where everything crosses everything the pairs grow as the square of the cuts. Then the statements
take turns, each with cuts from all over it, until enough has been seen to tell what is wrong.
"""

from collections import Counter
from collections.abc import Iterator

import numpy as np
import shapely

from scorecraft.arrays import Flags, Ints, Shapes
from scorecraft.checks.finding import Finding
from scorecraft.checks.telling import CROWDED, CROWDED_FIX
from scorecraft.cuts import Layout
from scorecraft.frozen import dataclass

MOST_BOXES = 1_000_000
"""The most boxes around cuts that are held together."""
MOST_PAIRS = 100_000
"""The most pairs of cuts one check looks at."""
MOST_PAIR_POINTS = 10_000_000
"""The most points that the pairs one check looks at are drawn by."""
MOST_PAIRS_OF_TWO = 20_000
"""Of two statements no more are looked at."""
CHUNK = 32
"""How many cuts are looked at in one go."""

GOLDEN = 0.6180339887498949
"""Steps of this share of a turn spread evenly, however many are taken."""


@dataclass(frozen=True, eq=False, slots=True)
class Pairs:
    """Pairs of cuts near each other, each once, `first` < `second`; `whole` if these are all."""

    first: Ints
    second: Ints
    whole: bool


def by_turns(layout: Layout) -> Ints:
    """Order the cuts so that the statements take turns, each with cuts from all over it."""
    _, family = np.unique([cut.family for cut in layout.cuts], return_inverse=True)
    place = _places(family)
    place = _places(family, place)
    return np.argsort(place, kind="stable")


def _places(group: Ints, mixed: Ints | None = None) -> Ints:
    """Give every member its place in its group, 0, 1, 2 ..., as they come or `mixed` by numbers."""
    order = np.lexsort((np.zeros(len(group)) if mixed is None else mixed * GOLDEN % 1.0, group))
    size = np.bincount(group)
    place = np.empty(len(group), dtype=np.intp)
    place[order] = np.arange(len(group)) - np.repeat(np.cumsum(size) - size, size)
    return place


def near_pairs(layout: Layout, lines: Shapes, distance_mm: float = 0.0) -> Pairs:
    """Find pairs of cuts no farther apart than a distance (sheet mm).

    `lines` are the cuts as line strings. No two statements are looked at beyond
    MOST_PAIRS_OF_TWO, so that a crowd of theirs hides nothing else, and all together not beyond
    MOST_PAIRS, MOST_PAIR_POINTS and MOST_BOXES.
    """
    shapely.prepare(lines)
    _, family = np.unique([cut.family for cut in layout.cuts], return_inverse=True)
    points = shapely.get_num_coordinates(lines)
    found, boxes, tested, drawn, whole = [np.zeros((2, 0), dtype=np.intp)], 0, 0, 0, True
    known: Counter[int] = Counter()
    for near in _boxes_that_touch(lines, by_turns(layout), distance_mm):
        if boxes > MOST_BOXES or tested > MOST_PAIRS:
            whole = False
            break
        low, high = np.sort(family[near], axis=0)
        kind = low * len(layout.cuts) + high
        kept = _sample(kind, known)
        cost = points[near[:, kept]].sum(axis=0)
        some = within(cost, MOST_PAIR_POINTS - drawn)
        kept = kept[some]
        boxes, tested = boxes + len(kind), tested + len(kept)
        drawn += int(cost[some].sum())
        whole = whole and len(kept) == len(kind)
        kept = kept[_meet(lines[near[0, kept]], lines[near[1, kept]], distance_mm)]
        known.update(kind[kept].tolist())
        found.append(np.sort(near[:, kept], axis=0))
    first, second = np.concatenate(found, axis=1)
    order = np.lexsort((second, first))
    return Pairs(first[order], second[order], whole)


def within(cost: Ints, most: float) -> Ints:
    """Choose from all over as many (N,) as cost no more than `most` together."""
    if cost.sum() <= most:
        return np.arange(len(cost))
    order = np.argsort(np.arange(len(cost)) * GOLDEN % 1.0)
    return np.sort(order[np.cumsum(cost[order]) <= most])


def _boxes_that_touch(lines: Shapes, order: Ints, distance_mm: float) -> Iterator[Ints]:
    """Give pairs (2, K) of lines whose boxes are near, each pair once, for some lines at a time."""
    rank = np.empty(len(order), dtype=np.intp)
    rank[order] = np.arange(len(order))
    tree = shapely.STRtree(lines)
    around = shapely.bounds(lines) + distance_mm * np.array([-1, -1, 1, 1])
    boxes = shapely.box(*around.T)
    for start in range(0, len(order), CHUNK):
        chunk = order[start : start + CHUNK]
        here, there = tree.query(boxes[chunk])
        here = chunk[here]
        later = rank[here] < rank[there]
        yield np.stack([here[later], there[later]])


def _sample(kind: Ints, known: Counter[int]) -> Ints:
    """Choose pairs evenly, so that no kind has many more than MOST_PAIRS_OF_TWO with those known.

    `kind` (K,) numbers the two statements of each pair.
    """
    most = MOST_PAIRS_OF_TWO
    kinds, group = np.unique(kind, return_inverse=True)
    room = np.array([most if known[k] < most else 0 for k in kinds.tolist()], dtype=np.intp)
    if len(kind) <= room.min(initial=most):
        return np.arange(len(kind))
    place = _places(group, np.arange(len(kind)))
    return np.flatnonzero(place < room[group])


def _meet(one: Shapes, other: Shapes, distance_mm: float) -> Flags:
    near = (
        shapely.dwithin(one, other, distance_mm) if distance_mm else shapely.intersects(one, other)
    )
    return np.asarray(near)


def unseen(check: str, layout: Layout) -> Finding:
    """Tell that there are more places than were looked at."""
    place = max(cut.place for cut in layout.cuts)
    return Finding(check, "note", CROWDED(check=check), CROWDED_FIX, place)
