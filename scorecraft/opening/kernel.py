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

from collections.abc import Callable
from math import asinh, pi

import numpy as np

from scorecraft.arrays import Complexes, Floats, Ints
from scorecraft.frozen import dataclass
from scorecraft.opening.bulge import FLAT, Bed
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
Curve = Callable[[Floats], Floats]
"""A function of squared distances, of any shape."""


@dataclass(frozen=True, slots=True, eq=False)
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

    @property
    def place(self) -> Complexes:
        """Where they are, as x + iy (K,)."""
        return np.ascontiguousarray(self.at).view(np.complex128)[:, 0]

    @property
    def way(self) -> Complexes:
        """Twice the direction of the cut there, as a complex number (K,)."""
        return np.ascontiguousarray(self.double).view(np.complex128)[:, 0]


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
    _, place = np.unique(at.view(np.complex128)[:, 0], return_inverse=True)
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


def between(
    apart: Complexes,
    core2: Floats | float,
    way: Complexes | complex,
    other: Complexes | complex,
    *,
    lean: float = 1.0,
    log: Curve = np.log,
    over: Curve = np.reciprocal,
) -> tuple[Complexes, Complexes]:
    """Evaluate 2 [-ln |r| I + lean r r / r^2] between ends that are `apart`, any shape.

    `core2` is the sum of theirs, `way` and `other` are theirs. Of the two answers a and m, a jump
    b = x + iy at the other end makes the force a b + m conj(b), in units of D / 2. `log` and `over`
    stand in for the logarithm and the reciprocal of a squared distance.
    """
    squared = apart.real**2 + apart.imag**2
    share = lean * over(squared + WIDE * core2)
    wide = WIDE / 2 * core2 * share
    alike = wide * (way * np.conj(other) - 1) - log(squared + core2)
    mirrored = apart * apart * share + wide * (way + other)
    return alike, mirrored


def stiffness(
    panels: Panels,
    ends: Ends,
    rows: Ints,
    columns: Ints,
    stretch: Stretch = UNSTRETCHED,
    bed: Bed = FLAT,
) -> Floats:
    """Force on some panels (..., R) per unit jump of some panels (..., C), in units of E.

    Rows (..., 2R) are forces against opening, then against sliding; columns (..., 2C) are gaps
    (mm), then slides. With all panels in both, jumps under a traction t follow from
    `stiffness @ jumps = t * length`.
    """
    (near, up), (far, across) = (_between_ends(ends, some) for some in (rows, columns))
    up, across = up[..., :, None], across[..., None, :]
    place, way, core2 = ends.place, ends.way, ends.core2
    apart = place[near][..., :, None] - place[far][..., None, :]
    parts = between(
        apart,
        core2[near][..., :, None] + core2[far][..., None, :],
        way[near][..., :, None],
        way[far][..., None, :],
        lean=stretch.lean,
    )
    alike, mirrored = (
        np.take_along_axis(np.diff(np.take_along_axis(np.diff(part, axis=-2), up, -2)), across, -1)
        for part in map(np.add, parts, bed.between(apart, stretch))
    )
    own, other = (along(panels, some) for some in (rows, columns))
    own = STRENGTH / 2 * stretch.strength * own[..., :, None].conj()
    alike *= own * other[..., None, :]
    mirrored *= own * other[..., None, :].conj()
    differ, both = alike - mirrored, alike + mirrored
    return np.block([[differ.real, both.imag], [-differ.imag, both.real]])


def along(panels: Panels, some: Ints) -> Complexes:
    """Directions of some panels, as complex numbers of length 1."""
    step: Complexes = (panels.end[some] - panels.start[some]) @ np.array([1, 1j])
    return step / np.abs(step)


def _between_ends(ends: Ends, some: Ints) -> tuple[Ints, Ints]:
    """List in order the ends (..., E) that some panels (..., M) lie between, and where each starts.

    Panels that lie together in number share most of their ends.
    """
    first = ends.first[some]
    lowest = first.min(axis=-1, keepdims=True)
    count = int((first - lowest).max()) + 2
    return np.minimum(lowest + np.arange(count), len(ends.at) - 1), first - lowest
