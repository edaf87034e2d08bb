"""Cuts drawn twice, and cuts that lie on one another for a part of their way."""

import numpy as np
import shapely

from scorecraft import curves
from scorecraft.arrays import Flags, Floats, Ints, Shapes
from scorecraft.checks import telling_cuts as say
from scorecraft.checks.changes import parted, without
from scorecraft.checks.cure import Change
from scorecraft.checks.finding import Finding, Offer
from scorecraft.checks.linework import points_along, strings
from scorecraft.checks.neighbours import near_pairs, unseen, within
from scorecraft.checks.telling import likewise, told_once
from scorecraft.cuts import Layout
from scorecraft.frozen import dataclass
from scorecraft.loaf.places import where
from scorecraft.practice import SAME_LINE_MM, STRIP_PER_DEPTH
from scorecraft.units import half_up

OVERLAP_MM = 8.0
"""Lines that share this much at a stretch overlap."""
OVERLAP_SHARE = 0.6
"""A short cut overlaps if it shares this much of itself."""
MOST_COMPARED = 1_200_000
"""The most places along cuts that are held against other cuts."""
SAMPLE_MM = 1.5
"""Spacing of the points at which lines are compared."""


def overlaps(layout: Layout) -> list[Finding]:
    """Find cuts that another cut covers whole or in part."""
    lines = strings(layout)
    if len(lines) < 2:
        return []
    near = near_pairs(layout, lines, SAME_LINE_MM.value)
    length = shapely.length(lines)
    swap = length[near.first] > length[near.second]
    short = np.where(swap, near.second, near.first)
    other = np.where(swap, near.first, near.second)
    few = within(_samples(length[short]) // _every(length[short]), MOST_COMPARED)
    short, other = short[few], other[few]
    likely = _likely(lines, short, other, length)
    some = within(_samples(length[short[likely]]), MOST_COMPARED)
    short, other = short[likely][some], other[likely][some]
    shared = _shared(lines, short, other, length)
    whole = near.whole and len(few) == len(near.first) and len(some) == np.count_nonzero(likely)
    wrong = (shared >= OVERLAP_MM) | (shared >= OVERLAP_SHARE * length[short])
    found = Overlaps(short[wrong], other[wrong], shared[wrong], whole)
    family = [cut.family for cut in layout.cuts]
    keys = [
        tuple(sorted((family[a], family[b]))) for a, b in zip(found.short, found.other, strict=True)
    ]
    findings = [
        _finding(layout, found, worst, members) for worst, members in told_once(keys, found.shared)
    ]
    return findings if whole else [*findings, unseen("overlaps", layout)]


@dataclass(frozen=True, eq=False, slots=True)
class Overlaps:
    """Cuts `short` (K,) that lie on `other` ones for `shared` mm; `whole` if these are all."""

    short: Ints
    other: Ints
    shared: Floats
    whole: bool


def _likely(lines: Shapes, short: Ints, other: Ints, length: Floats) -> Flags:
    """Whether any of so few points that no wrong stretch can miss them all lies on the other line.

    Lines that only cross are passed over at a fraction of the cost of measuring them.
    """
    count, every = _samples(length[short]), _every(length[short])
    pair, number = _count_up(count // every)
    share = ((number + 1) * every[pair] - 0.5) / count[pair]
    on = _lies_on(lines, short[pair], other[pair], share)
    return np.asarray(np.bincount(pair[on], minlength=len(short)) > 0)


def _shared(lines: Shapes, short: Ints, other: Ints, length: Floats) -> Floats:
    """Length (mm) of each short line that lies on the other one."""
    count = _samples(length[short])
    pair, number = _count_up(count)
    on = _lies_on(lines, short[pair], other[pair], (number + 0.5) / count[pair])
    longest = _longest_run(on, pair, len(short))
    return np.asarray(longest / count * length[short])


def _samples(length: Floats) -> Ints:
    """Give the number of points at which lines of some lengths are compared."""
    return np.maximum(4, np.ceil(length / SAMPLE_MM)).astype(np.intp)


def _every(length: Floats) -> Ints:
    """Tell which of the points do, every so manieth, so that no wrong stretch can miss them all."""
    least = np.minimum(OVERLAP_MM / np.maximum(length, 1e-9), OVERLAP_SHARE)
    return np.floor(least * _samples(length)).astype(np.intp)


def _count_up(count: Ints) -> tuple[Ints, Ints]:
    """Give the index of each pair `count` times over, and number its places from 0."""
    pair = np.repeat(np.arange(len(count)), count)
    return pair, np.arange(len(pair)) - np.repeat(np.cumsum(count) - count, count)


def _lies_on(lines: Shapes, short: Ints, other: Ints, share: Floats) -> Flags:
    """Whether the point at a share of the way along one line lies on another line."""
    points = points_along(lines, short, share)
    shapely.prepare(lines)
    return np.asarray(shapely.dwithin(lines[other], points, SAME_LINE_MM.value))


def _longest_run(on: Flags, pair: Ints, pairs_count: int) -> Floats:
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


def _finding(layout: Layout, found: Overlaps, worst: int, members: Ints) -> Finding:
    cut, under = layout.cuts[found.short[worst]], layout.cuts[found.other[worst]]
    shared = float(found.shared[worst])
    covered = np.unique(found.short[members])
    whole = curves.length(cut.line)
    place = where(layout.loaf, cut.line[len(cut.line) // 2])
    apart = half_up(STRIP_PER_DEPTH.value * (cut.depth_mm + under.depth_mm) / 2)
    about = tuple(covered.tolist())
    drop = Offer(say.remove_some(len(covered), found.whole), layout, lambda: (without(about),))
    told = say.MOVE_APART(by=apart)
    side = Offer(told, layout, lambda: (_aside(layout, found, members, apart),))
    if shared > 0.9 * whole:
        message = say.CUT_TWICE(over=say.over(cut, under), place=place)
        offers = (drop, side)
    else:
        message = say.RUNS_OVER(over=say.over(cut, under), shared=shared, place=place)
        offers = (side, drop)
    figures = {"count": len(members), "shared_mm": shared, "apart_mm": apart}
    later = max(cut.place, under.place)
    message += likewise(len(members), found.whole)
    return Finding(
        "overlaps", "warning", message, say.OVERLAP_FIX, later, figures, about, offers=offers
    )


def _aside(layout: Layout, found: Overlaps, members: Ints, by_mm: float) -> Change:
    """Move cuts apart square to the shorter one, from end to end."""
    pairs = []
    for i in members:
        short, other = int(found.short[i]), int(found.other[i])
        x, y = layout.cuts[short].line[-1] - layout.cuts[short].line[0]
        pairs.append((short, other, np.array([-y, x])))
    return parted(layout, pairs, by_mm)
