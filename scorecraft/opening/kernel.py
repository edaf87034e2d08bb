"""What it takes to open panels against one another: the matrix of the model.

A panel with a constant displacement jump is a pair of edge dislocations of opposite sign, one at
each end (Crouch, Int. J. Num. Meth. Engng 10 (1976) 301-343; Crouch & Starfield, Boundary Element
Methods in Solid Mechanics, 1983, ch. 5; recalled, pages not checked). The force between two
dislocations with jumps b, b' a vector r apart follows from the energy (Hirth & Lothe, Theory of
Dislocations, ch. 5; recalled, page not checked)

    W = 2 D b . [-ln |r| I + r r / r^2] b',      D = E' / 4 pi,  E' = E: the sheet, plane stress.

Tractions are balanced over each panel, not only in its middle, so the matrix is symmetric and
positive definite: opening any cuts in any way takes work. Contact then has one answer, and a
piece of skin cut out all around cannot run away. That needs the energy of a dislocation with
itself, for which its jump is spread over a core of radius e (a share of its panel): |r|^2 becomes
r^2 + e^2 in the logarithm and r^2 + 4 e^2 below r r, and r r gains 4 e^2 t t along the cut (the
core must be wider there, or two cuts that all but lie on each other could open for nothing; seen
along the cut it makes no difference). `CORE` is such that the sum over an endless row of
equal panels is the exact integral, 2 sinh(pi CORE) = 1: the error of a row of N panels is 1/N^2.
"""

from dataclasses import dataclass
from math import asinh, pi

import numpy as np

from scorecraft.opening.noding import Floats, Ints
from scorecraft.opening.panels import Panels

STRENGTH = 1 / (4 * pi)
"""D for E' = 1: all stresses are in units of E."""
CORE = asinh(0.5) / pi
"""Radius of a dislocation's core as a share of the length of the panels that end there."""
WIDE = 4.0
"""The 4 of 4 e^2."""
BLOCK = 1 << 14
"""Entries worked on at a time: a dozen such arrays stay in the cache of one core."""


@dataclass(frozen=True, slots=True)
class Ends:
    """Ends of the panels, numbered so that panels in a row share them.

    `at` (K, 2) in mm, `core2` (K,) half the squared core radius, mm2; panel j runs from
    end `first[j]` to end `first[j] + 1`.
    """

    at: Floats
    core2: Floats
    first: Ints


def ends_of(panels: Panels) -> Ends:
    """List the ends of panels; the core at a shared end goes by the mean of its two panels."""
    apart = (panels.start[1:] != panels.end[:-1]).any(axis=1)
    broken = np.append(True, apart | (panels.line[1:] != panels.line[:-1]))
    first = np.arange(len(panels)) + np.cumsum(broken) - 1
    at = np.empty((int(first[-1]) + 2, 2))
    at[first], at[first + 1] = panels.start, panels.end
    length, count = np.zeros(len(at)), np.zeros(len(at))
    for side in (first, first + 1):
        np.add.at(length, side, panels.length)
        np.add.at(count, side, 1)
    return Ends(at, (CORE * length / count) ** 2 / 2, first)


def stiffness(panels: Panels, rows: Ints | None = None) -> Floats:
    """Force on each panel per unit jump of each panel, in units of E: (2R, 2M).

    Rows are the R chosen panels' forces against opening, then against sliding; columns are M
    gaps (mm), then M slides (mm). Under a traction t the jumps follow from
    `stiffness @ jumps = t * length`. Memory: 32 R M bytes.
    """
    rows = np.arange(len(panels)) if rows is None else rows
    ends = ends_of(panels)
    tangent, size, count = panels.tangent, len(rows), len(panels)
    out = np.empty((2 * size, 2 * count))
    step = max(1, BLOCK // len(ends.at))
    for low in range(0, size, step):
        high = min(low + step, size)
        upper, lower = out[low:high], out[size + low : size + high]
        parts = [upper[:, :count], upper[:, count:], lower[:, :count], lower[:, count:]]
        _turned(_pairs(ends, rows[low:high]), tangent[rows[low:high]], tangent, parts)
    return out


def _pairs(ends: Ends, rows: Ints) -> list[Floats]:
    """Take the four functions of `_between` from the ends to the panels: arrays (R, M)."""
    first = ends.first[rows]
    near = np.unique(np.concatenate([first, first + 1]))
    here = np.searchsorted(near, first)
    values = _between(ends.at[near], ends.core2[near], ends)
    return [_across(_down(value, here), ends.first) for value in values]


def _between(at: Floats, core2: Floats, ends: Ends) -> tuple[Floats, Floats, Floats, Floats]:
    """Evaluate -ln(r^2 + e^2), 4 e^2 / R^2, (x^2 - y^2) / R^2 and 2 x y / R^2, all (R, K).

    From chosen ends to all ends; R^2 = r^2 + 4 e^2, and e^2 is the mean of the two ends' cores.
    """
    x = np.subtract.outer(at[:, 0], ends.at[:, 0])
    y = np.subtract.outer(at[:, 1], ends.at[:, 1])
    core = np.add.outer(core2, ends.core2)
    cross = x * y
    x *= x
    y *= y
    whole = x + y
    x -= y
    np.log(np.add(whole, core, out=y), out=y)
    np.negative(y, out=y)
    core *= WIDE
    whole += core
    np.reciprocal(whole, out=whole)
    core *= whole
    x *= whole
    cross *= whole
    cross += cross
    return y, core, x, cross


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

    With a, a' the directions of the two panels, sums turn with a + a', differences with a - a'.
    """
    plain, core, even, odd = pairs
    gap_gap, gap_slide, slide_gap, slide_slide = parts
    c, s = (STRENGTH / 2) * own[:, 0], (STRENGTH / 2) * own[:, 1]
    minus = np.column_stack([c, s]) @ tangent.T
    plain -= core
    core += core
    work = np.add(plain, core, out=core)
    np.multiply(minus, plain, out=gap_gap)
    np.multiply(minus, work, out=slide_slide)
    np.multiply(np.column_stack([-s, c]) @ tangent.T, plain, out=gap_slide)
    np.negative(gap_slide, out=slide_gap)
    plus = np.column_stack([c, -s]) @ tangent.T
    cross = np.column_stack([s, c]) @ tangent.T
    np.multiply(plus, even, out=work)
    work += np.multiply(cross, odd, out=minus)
    gap_gap -= work
    slide_slide += work
    plus *= odd
    cross *= even
    plus -= cross
    gap_slide += plus
    slide_gap += plus
