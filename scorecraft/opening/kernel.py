"""What it takes to open panels against one another: the matrix of the model.

A panel with a constant displacement jump is a pair of edge dislocations of opposite sign, one at
each end (Crouch, Int. J. Num. Meth. Engng 10 (1976) 301-343; Crouch & Starfield, Boundary Element
Methods in Solid Mechanics, 1983, ch. 5; recalled). The force between two
dislocations with jumps b, b' a vector r apart follows from the energy (Hirth & Lothe, Theory of
Dislocations, 2nd ed. 1982, ch. 5; recalled)

    W = 2 D b . [-ln |r| I + r r / r^2] b',      D = E' / 4 pi,  E' = E: the sheet, plane stress.

Tractions are balanced over each panel, not only in its middle, so the matrix is symmetric and
positive definite: opening any cuts in any way takes work. Contact then has one answer, and a
piece of skin cut out all around cannot run away. That needs the energy of a dislocation with
itself, for which its jump is spread over a core of radius e (a share of its panel): |r|^2 becomes
r^2 + e^2 in the logarithm and r^2 + 4 e^2 below r r, and r r gains 4 e^2 (t . t') t t' with t the
directions of the cut at the two ends. (The core must be wider there, or two cuts that all but
lie on each other could open for nothing; along one straight cut all this makes no difference.)
`CORE` is such that the sum over an endless row of equal panels is the exact integral,
2 sinh(pi CORE) = 1: the error of a row of N panels is 1/N^2. At a corner of a cut, where the skin
outside it fills more than half a turn, the core is narrower; see `CORNER`.

On a sheet that is stretched already, D is times its `strength` and r r / r^2 times its `lean`
(`stretch`).
"""

from collections.abc import Iterator
from dataclasses import dataclass
from math import asinh, pi

import numpy as np

from scorecraft.arrays import Floats, Ints
from scorecraft.opening.noding import SHARP
from scorecraft.opening.panels import Panels
from scorecraft.opening.stretch import Stretch

UNSTRETCHED = Stretch()
STRENGTH = 1 / (4 * pi)
"""D for E' = 1: all stresses are in units of E."""
CORE = asinh(0.5) / pi
"""Radius of a dislocation's core as a share of the length of the panels that end there."""
CORNER = (0.25, 26.0)
"""A cut that turns by b degrees at one end has a core there of CORE (c + (1 - c) exp(-b / d)).
With full cores the error of a corner is 1/N. Found once from the opened areas of bent slits and of
regular polygons, part-deep and through, 6, 12 and 24 panels a side: each turn, from 30 to 150
degrees, asks for one share of the core, whatever the rest of the case."""
WIDE = 4.0
"""The 4 of 4 e^2."""
BLOCK = 1 << 14
"""Entries worked on at a time: a dozen such arrays stay in the cache of one core."""


@dataclass(frozen=True, slots=True)
class Ends:
    """Ends of the panels, numbered so that panels in a row share them.

    `at` (K, 2) in mm; `core2` (K,) half the squared core radius, mm2; `double` (K, 2) the cosine
    and sine of twice the direction of the cut there, their mean where panels meet. Panel j runs
    from end `first[j]` to end `first[j] + 1`.
    """

    at: Floats
    core2: Floats
    double: Floats
    first: Ints

    def chosen(self, some: Ints) -> "Ends":
        """Return some of the ends, without their panels."""
        return Ends(self.at[some], self.core2[some], self.double[some], self.first[:0])


def ends_of(panels: Panels) -> Ends:
    """List the ends of panels; what a core is like goes by the mean of all panels that meet there.

    Ends in one place must be alike in every respect: then their jumps simply add up, and a piece
    of skin between cuts can move without work being done at its corners.
    """
    apart = (panels.start[1:] != panels.end[:-1]).any(axis=1)
    broken = np.append(True, apart | (panels.line[1:] != panels.line[:-1]))
    first = np.arange(len(panels)) + np.cumsum(broken) - 1
    at = np.empty((int(first[-1]) + 2, 2))
    at[first], at[first + 1] = panels.start, panels.end
    _, place = np.unique(at, axis=0, return_inverse=True)
    x, y = panels.tangent.T
    own = np.column_stack([np.ones(len(x)), panels.length, x * x - y * y, 2 * x * y])
    total = np.zeros((int(place.max()) + 1, 4))
    for side in (first, first + 1):
        np.add.at(total, place[side], own)
    mean = (total[:, 1:] / total[:, :1])[place]
    core = CORE * mean[:, 0] * corner_share(_turns(panels, place[first], place[first + 1]))[place]
    return Ends(at, core**2 / 2, mean[:, 1:], first)


def corner_share(turn: Floats) -> Floats:
    """Share of the full core at places where cuts turn by so many radians, any shape.

    A bend that is no corner (`SHARP`) keeps its core: the panels along an arc are its chords.
    """
    least, degrees = CORNER
    return np.where(turn < SHARP, 1.0, least + (1 - least) * np.exp(-np.degrees(turn) / degrees))


def _turns(panels: Panels, start: Ints, end: Ints) -> Floats:
    """How far cuts turn at each place, from the places of the panels' ends; 0 at a free tip.

    That is by how much the widest wedge of skin between cuts is more than half a turn.
    """
    x, y = panels.tangent.T
    place = np.concatenate([start, end])
    away = np.concatenate([np.arctan2(y, x), np.arctan2(-y, -x)])
    order = np.lexsort([away, place])
    place, away = place[order], away[order]
    last = np.append(place[1:] != place[:-1], True)
    first = np.flatnonzero(np.append(True, last[:-1]))
    following = np.roll(away, -1)
    following[last] = away[first] + 2 * pi
    widest = np.maximum.reduceat(following - away, first)
    free = np.diff(np.append(first, len(place))) == 1
    turn: Floats = np.where(free, 0.0, np.maximum(0.0, widest - pi))
    return turn


def stiffness(panels: Panels, rows: Ints | None = None, stretch: Stretch = UNSTRETCHED) -> Floats:
    """Force on each panel per unit jump of each panel, in units of E: (2R, 2M).

    Rows are the R chosen panels' forces against opening, then against sliding; columns are M
    gaps (mm), then M slides (mm). Under a traction t the jumps follow from
    `stiffness @ jumps = t * length`. Memory: 32 R M bytes.
    """
    rows = np.arange(len(panels)) if rows is None else rows
    size = len(rows)
    out = np.empty((2 * size, 2 * len(panels)))
    for low, opening, sliding in strips(panels, rows, stretch):
        high = low + len(opening)
        out[low:high], out[size + low : size + high] = opening, sliding
    return out


def strips(
    panels: Panels, rows: Ints, stretch: Stretch = UNSTRETCHED
) -> Iterator[tuple[int, Floats, Floats]]:
    """Work the rows of `stiffness` out a few at a time, so that no more need be held.

    Yields where in `rows` they begin, and their forces against opening and sliding, (r, 2M).
    """
    ends = ends_of(panels)
    tangent, count = panels.tangent, len(panels)
    step = max(1, BLOCK // len(ends.at))
    for low in range(0, len(rows), step):
        some = rows[low : low + step]
        upper, lower = np.empty((len(some), 2 * count)), np.empty((len(some), 2 * count))
        parts = [upper[:, :count], upper[:, count:], lower[:, :count], lower[:, count:]]
        half = STRENGTH / 2 * stretch.strength
        _turned(_pairs(ends, some, stretch.lean), half * tangent[some], tangent, parts)
        yield low, upper, lower


def _pairs(ends: Ends, rows: Ints, lean: float) -> list[Floats]:
    """Take the functions of `_between` from the ends to the panels: arrays (R, M)."""
    first = ends.first[rows]
    near = np.unique(np.concatenate([first, first + 1]))
    here = np.searchsorted(near, first)
    values = _between(ends.chosen(near), ends, lean)
    return [_across(_down(value, here), ends.first) for value in values]


def _between(near: Ends, ends: Ends, lean: float) -> tuple[Floats, Floats, Floats, Floats]:
    """Evaluate the parts of 2 [-ln |r| I + lean r r / r^2] between two sets of ends, each (R, K).

    The parts are alike in all directions, even, odd, and skew: with them the matrix is
    ((plain + even, odd + skew), (odd - skew, plain - even)).
    """
    even, odd, core, squared = _distances(near, ends)
    plain = squared + core
    np.log(plain, out=plain)
    core *= WIDE
    squared += core
    np.divide(lean, squared, out=squared)
    even *= squared
    odd *= squared
    core *= squared
    core /= 2
    work = np.add.outer(near.double[:, 0], ends.double[:, 0])
    even += np.multiply(work, core, out=work)
    np.add.outer(near.double[:, 1], ends.double[:, 1], out=work)
    odd += np.multiply(work, core, out=work)
    np.matmul(near.double, ends.double.T, out=work)
    work -= 1
    work *= core
    np.subtract(work, plain, out=plain)
    turned = np.column_stack([-near.double[:, 1], near.double[:, 0]])
    core *= np.matmul(turned, ends.double.T, out=work)
    return plain, even, odd, core


def _distances(near: Ends, ends: Ends) -> tuple[Floats, Floats, Floats, Floats]:
    """Return x^2 - y^2, 2 x y, e^2 and x^2 + y^2 between two sets of ends, each (R, K)."""
    x = np.subtract.outer(near.at[:, 0], ends.at[:, 0])
    y = np.subtract.outer(near.at[:, 1], ends.at[:, 1])
    product = x * y
    product += product
    x *= x
    y *= y
    squared = x + y
    x -= y
    return x, product, np.add.outer(near.core2, ends.core2, out=y), squared


def _down(values: Floats, first: Ints) -> Floats:
    """Last end less first end of each row's panel: (ends, K) -> (R, K)."""
    if len(values) == len(first) + 1:
        return values[1:] - values[:-1]
    steps: Floats = values[first + 1] - values[first]
    return steps


def _across(values: Floats, first: Ints) -> Floats:
    """Last end less first end of each column's panel: (R, K) -> (R, M)."""
    steps = values[:, 1:] - values[:, :-1]
    return steps if steps.shape[1] == len(first) else steps.take(first, axis=1)


def _turned(pairs: list[Floats], own: Floats, tangent: Floats, parts: list[Floats]) -> None:
    """Write the four parts of the matrix: gap-gap, gap-slide, slide-gap, slide-slide.

    With a, a' the directions of the row's and the column's panel, the plain and the skew part
    turn with a' - a, the even and the odd part with a + a'. `own` are the rows' directions times
    half the strength of the dislocations.
    """
    plain, even, odd, skew = pairs
    gap_gap, gap_slide, slide_gap, slide_slide = parts
    c, s = own.T
    cos = np.column_stack([c, s]) @ tangent.T
    sin = np.column_stack([-s, c]) @ tangent.T
    np.multiply(cos, plain, out=slide_slide)
    plain *= sin
    slide_slide += np.multiply(sin, skew, out=sin)
    skew *= cos
    plain -= skew
    np.matmul(np.column_stack([c, -s]), tangent.T, out=cos)
    np.matmul(np.column_stack([s, c]), tangent.T, out=sin)
    np.multiply(cos, even, out=skew)
    skew += np.multiply(sin, odd, out=gap_gap)
    odd *= cos
    even *= sin
    odd -= even
    np.subtract(slide_slide, skew, out=gap_gap)
    slide_slide += skew
    np.add(odd, plain, out=gap_slide)
    np.subtract(odd, plain, out=slide_gap)
