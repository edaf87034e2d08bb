"""Room between slots: nothing twice, and no web between two slots thinner than it may be.

Slots that cross, and tips that meet in a corner, stay joined. A tip that ends on the side of
another slot is drawn back by a web, so that the tongues beside it hang together at both ends.
Slots that run past one another too closely are made narrower, if that is enough; else one gives
way: the one whose free tip is in the way, then the one of lower rank.
"""

from collections.abc import Sequence

import numpy as np
import shapely
from shapely import ops

from scorecraft.frozen import dataclass, replace
from scorecraft.plate.doubles import pieces, without_doubles
from scorecraft.plate.slits import Slit

NARROWEST_SLOT = 0.6
"""A slot may be narrowed to this part of its width to pass by another."""
JOINED_MM = 0.25
"""Lines that come this close meet."""
PASSES = 8
HALVINGS = 12
STUB = 1.3
"""A piece of slot shorter than so many widths is no more than a dot, and goes."""
LONG = 1.5
"""Slots that run side by side for so many times their distance are made narrower."""
BACK_STEP_MM = 0.1
"""Ends of a line that come too close are drawn back in such steps."""
SLACK_MM = 0.04
"""Webs are left so much wider, so that no rounding makes one too thin."""


def spaced(slits: Sequence[Slit], web_mm: float) -> list[Slit]:
    """Cut slits back or narrow them until no web is thinner than `web_mm`."""
    web = web_mm + SLACK_MM
    apart = without_doubles([slit.line for slit in slits])
    left = [new for slit, own in zip(slits, apart, strict=True) for new in kept(slit, own)]
    left = narrowed(left, web)
    for _ in range(PASSES):
        left, changed = _one_pass(_own_ends_apart(left, web), web)
        if not changed:
            break
    return left


def narrowed(slits: Sequence[Slit], web: float) -> list[Slit]:
    """Make parts narrower whose slots pass too close to others, all copies alike."""
    free = _free_tips(slits)
    shares: dict[str, float] = {}
    for i, j in _close_pairs(slits, web):
        a, b = slits[i], slits[j]
        share = _Pair(a, b, web, free).share()
        if NARROWEST_SLOT <= share < 1.0:
            for name in (a.name, b.name):
                shares[name] = min(share, shares.get(name, 1.0))
    return [replace(slit, width_mm=slit.width_mm * shares.get(slit.name, 1.0)) for slit in slits]


def kept(slit: Slit, lines: Sequence[shapely.LineString]) -> list[Slit]:
    """Put new lines in place of a slit's own; stubs shorter than the slot is wide go."""
    return [replace(slit, line=line) for line in lines if line.length >= STUB * slit.width_mm]


def _one_pass(slits: Sequence[Slit], web: float) -> tuple[list[Slit], bool]:
    """Go once through all pairs that are too close; tell whether anything changed."""
    sets = [[slit] for slit in slits]
    free = _free_tips(slits)
    changed = False
    for i, j in _close_pairs(slits, web):
        for a in list(sets[i]):
            for b in list(sets[j]):
                new_a, new_b = _Pair(a, b, web, free).parted()
                changed = changed or new_a is not None or new_b is not None
                if new_b is not None:
                    sets[j] = [each for each in sets[j] if each is not b] + new_b
                if new_a is not None:
                    sets[i] = [each for each in sets[i] if each is not a] + new_a
                    break
    return [slit for each in sets for slit in each], changed


def _close_pairs(slits: Sequence[Slit], web: float) -> list[tuple[int, int]]:
    """Pairs of slits that come too close somewhere, the heavier ones first."""
    lines = np.array([slit.line for slit in slits], dtype=object)
    widths = np.array([slit.width_mm for slit in slits])
    reach = float(widths.max(initial=0.0)) + web
    first, second = shapely.STRtree(lines).query(lines, predicate="dwithin", distance=reach)
    ranks = [(-slit.rank, index) for index, slit in enumerate(slits)]
    once = [(i, j) for i, j in zip(first.tolist(), second.tolist(), strict=True) if i < j]
    return sorted(once, key=lambda pair: sorted((ranks[pair[0]], ranks[pair[1]])))


def _free_tips(slits: Sequence[Slit]) -> shapely.MultiPoint:
    """Collect the ends of lines that meet no end of another line."""
    ends = [
        shapely.Point(slit.line.coords[index])
        for slit in slits
        if not slit.closed
        for index in (0, -1)
    ]
    tips = np.array(ends, dtype=object)
    first, second = shapely.STRtree(tips).query(tips, predicate="dwithin", distance=JOINED_MM)
    met = set(first[first != second].tolist())
    return shapely.MultiPoint([end for index, end in enumerate(ends) if index not in met])


Kept = list[Slit] | None


@dataclass(frozen=True, slots=True)
class _Pair:
    """Two slits, the web that must stay between them, and all free tips."""

    a: Slit
    b: Slit
    web: float
    free: shapely.MultiPoint

    @property
    def apart(self) -> float:
        """Least distance of the two centre lines."""
        return (self.a.width_mm + self.b.width_mm) / 2 + self.web

    def parted(self) -> tuple[Kept, Kept]:
        """Part the two where they are too close; None where a slit stays as it is."""
        a, b = self.a, self.b
        if a.line.distance(b.line) >= self.apart - 1e-6:
            return None, None
        bad_a, bad_b = self.bad(a, b), self.bad(b, a)
        if not bad_a and not bad_b:
            return None, None
        tip_a, tip_b = self.at_tip(bad_a), self.at_tip(bad_b)
        if tip_a and tip_b and a.rank == b.rank:
            return self.both_back(bad_a, bad_b)
        if not bad_b or (bad_a and self.a_loses(tip_a, tip_b, bad_a[0], bad_b[0])):
            return _without(a, bad_a), None
        return None, _without(b, bad_b)

    def bad(self, slit: Slit, other: Slit) -> list[shapely.LineString]:
        """Stretches of a slit too close to the other one that do not rightly meet it."""
        near = pieces(slit.line.intersection(other.line.buffer(self.apart - 1e-4, quad_segs=24)))
        return [each for each in near if not self.meets(each, slit, other)]

    def meets(self, stretch: shapely.LineString, slit: Slit, other: Slit) -> bool:
        """Tell whether a stretch crosses the other line, or ends where the other one ends."""
        if stretch.distance(other.line) > JOINED_MM:
            return False
        tips = [] if slit.closed else [shapely.Point(slit.line.coords[k]) for k in (0, -1)]
        on_side = [
            tip
            for tip in tips
            if stretch.distance(tip) < 1e-6 and other.line.distance(tip) <= JOINED_MM
        ]
        if not on_side:
            return True
        ends = other.line.boundary
        return not other.closed and any(tip.distance(ends) <= JOINED_MM for tip in on_side)

    def at_tip(self, stretches: Sequence[shapely.LineString]) -> bool:
        """Tell whether a free tip lies in one of the stretches."""
        return any(each.distance(self.free) < 1e-6 for each in stretches)

    def a_loses(
        self, tip_a: bool, tip_b: bool, bad_a: shapely.LineString, bad_b: shapely.LineString
    ) -> bool:
        """Choose who gives way: the free tip, the lower rank, the one turned further back."""
        if tip_a != tip_b:
            return tip_a
        if self.a.rank != self.b.rank:
            return self.a.rank < self.b.rank
        (ax, ay), (bx, by) = (
            each.interpolate(0.5, normalized=True).coords[0] for each in (bad_a, bad_b)
        )
        return bool(ax * by - ay * bx > 0)

    def share(self) -> float:
        """Part of their widths that both must keep to pass by one another; 1 if all is well.

        Where only a tip is in the way it is drawn back, and nothing need be narrower.
        """
        bad_a, bad_b = self.bad(self.a, self.b), self.bad(self.b, self.a)
        if not (bad_a and bad_b):
            return 1.0
        long = max(each.length for each in (*bad_a, *bad_b)) > LONG * self.apart
        if not long and (self.at_tip(bad_a) or self.at_tip(bad_b)):
            return 1.0
        closest: float = min(each.distance(self.b.line) for each in bad_a)
        return (closest - self.web) / (self.apart - self.web)

    def both_back(
        self, bad_a: Sequence[shapely.LineString], bad_b: Sequence[shapely.LineString]
    ) -> tuple[Kept, Kept]:
        """Draw two facing tips back by equal parts, no further than needed."""
        a, b = self.a.line, self.b.line
        low, high = 0.0, 1.0
        for _ in range(HALVINGS):
            middle = (low + high) / 2
            gap = _shortened(a, bad_a, middle).distance(_shortened(b, bad_b, middle))
            low, high = (low, middle) if gap >= self.apart else (middle, high)
        lines = _shortened(a, bad_a, high), _shortened(b, bad_b, high)
        return kept(self.a, lines[:1]), kept(self.b, lines[1:])


def _without(slit: Slit, stretches: Sequence[shapely.LineString]) -> list[Slit]:
    spots = shapely.union_all([each.buffer(1e-5) for each in stretches])
    return kept(slit, pieces(slit.line.difference(spots)))


def _shortened(
    line: shapely.LineString, stretches: Sequence[shapely.LineString], share: float
) -> shapely.LineString:
    """Take a share of the stretches at a line's ends off it."""
    start, end = shapely.Point(line.coords[0]), shapely.Point(line.coords[-1])
    head = max((each.length for each in stretches if each.distance(start) < 1e-6), default=0.0)
    tail = max((each.length for each in stretches if each.distance(end) < 1e-6), default=0.0)
    first, last = share * head, line.length - share * tail
    if first >= last:
        first = last = (first + last) / 2
    return ops.substring(line, first, last)


def _own_ends_apart(slits: Sequence[Slit], web: float) -> list[Slit]:
    """Open the gap between each line's own two ends where it is too small for a web.

    A line that is nowhere so wide, from one half to the other, holds no web and goes.
    """
    return [opened for slit in slits if (opened := _opened(slit, web)) is not None]


def _opened(slit: Slit, web: float) -> Slit | None:
    line = slit.line
    start, end = (shapely.Point(line.coords[index]) for index in (0, -1))
    apart = slit.width_mm + web
    gap = start.distance(end)
    if gap <= JOINED_MM or gap >= apart or line.length < 3 * apart:
        return slit
    back = np.arange((apart - gap) / 2, line.length / 2, BACK_STEP_MM)
    heads, tails = (shapely.line_interpolate_point(line, side * back) for side in (1, -1))
    wide = np.flatnonzero(shapely.distance(heads, tails) >= apart)
    if not len(wide):
        return None
    first = float(back[wide[0]])
    return replace(slit, line=ops.substring(line, first, line.length - first))
