"""Patterns that a turn of 1/n carries onto themselves, solved one n-th at a time.

Numbered turn by turn, the matrix of such a pattern is block-circulant: a Fourier transform over
the turns splits it into n separate ones of an n-th the size (Davis, Circulant Matrices, 1979;
recalled). Uniform tension only stirs the harmonics 0 and 2, so a round loaf's
crown costs two small matrices instead of one big one.
"""

from collections.abc import Iterable
from dataclasses import dataclass, field
from math import gcd

import numpy as np
import shapely

from scorecraft.arrays import Floats, Ints
from scorecraft.opening.factor import Factors, factors
from scorecraft.opening.panels import Panels

SAME = 1e-5
"""Panels closer than this share of their length are the same panel."""
SILENT = 1e-13
"""Harmonics weaker than this share of the strongest are rounding, not load."""


@dataclass(frozen=True, slots=True)
class Turn:
    """How a pattern repeats: `order[s, j]` (n, m) is panel j of the first part, turned s times."""

    order: Ints

    @property
    def count(self) -> int:
        """How many turns bring the pattern back to its start."""
        return len(self.order)

    @property
    def own(self) -> Ints:
        """Panels (m,) of the first part."""
        first: Ints = self.order[0]
        return first


def turn_of(panels: Panels, depth_mm: Floats, wanted: int | None = None) -> Turn | None:
    """Find the finest turn that carries the panels and their depths (M,) onto themselves.

    `wanted` looks for that many turns only. None where there is no such turn.
    """
    if len(panels) < 2 or wanted == 1:
        return None
    at = panels.midpoint - panels.midpoint.mean(axis=0)
    counts = [wanted] if wanted else _candidates(np.hypot(at[:, 0], at[:, 1]), panels)
    tree = shapely.STRtree(shapely.points(at))
    for count in counts:
        step = _step(panels, at, tree, count)
        if step is not None and np.allclose(depth_mm[step], depth_mm, rtol=1e-9):
            order = _orbits(step, count)
            if order is not None:
                return Turn(order)
    return None


def _candidates(radius: Floats, panels: Panels) -> list[int]:
    """Turn counts that divide the number of panels at every distance from the centre."""
    ordered = np.sort(radius)
    breaks = np.flatnonzero(np.diff(ordered) > SAME * panels.length.min())
    sizes = np.diff(np.concatenate([[0], breaks + 1, [len(radius)]]))
    common = gcd(*sizes.tolist())
    return [count for count in range(common, 1, -1) if common % count == 0]


def _step(panels: Panels, at: Floats, tree: shapely.STRtree, count: int) -> Ints | None:
    """Return the panel that each panel becomes in one turn, or None if one becomes no panel."""
    c, s = np.cos(2 * np.pi / count), np.sin(2 * np.pi / count)
    turn = np.array([[c, s], [-s, c]])
    points = shapely.points(at @ turn)
    near = SAME * float(panels.length.min())
    panel, step = tree.query(points, predicate="dwithin", distance=near)
    if len(panel) != len(at) or len(np.unique(step)) != len(at):
        return None
    tangent = panels.tangent
    along = np.einsum("ij,ij->i", tangent[panel] @ turn, tangent[step])
    alike = np.abs(along) > 1 - SAME
    alike &= np.isclose(panels.length[panel], panels.length[step], rtol=SAME)
    return step[np.argsort(panel)] if alike.all() else None


def _orbits(step: Ints, count: int) -> Ints | None:
    """List the panels turn by turn, (n, m); None where some come back too soon."""
    turned = [np.arange(len(step))]
    for _ in range(count - 1):
        turned.append(step[turned[-1]])
    order = np.stack(turned)
    own = order[0] == order.min(axis=0)
    if (np.sort(order, axis=0)[1:] == np.sort(order, axis=0)[:-1]).any():
        return None
    chosen: Ints = order[:, own]
    return chosen


@dataclass(frozen=True, slots=True)
class Turned:
    """A block-circulant matrix by its harmonics, each worked out and factored when a load stirs it.

    `blocks` (n, 2m, 2m) is the first part against every turn of it; `stiff` (2m,) is added to
    the diagonal.
    """

    turn: Turn
    blocks: Floats
    stiff: Floats
    factored: dict[int, Factors] = field(default_factory=dict)

    def solve(self, sides: Floats) -> Floats:
        """Return the answers (2M, k) to right-hand sides (2M, k)."""
        count, size = self.turn.order.shape
        rows = _columns(self.turn).ravel()
        spectrum = np.fft.rfft(sides[rows].reshape(count, 2 * size, -1), axis=0)
        weight = np.abs(spectrum).max(axis=(1, 2))
        for k in range(len(spectrum)):
            if weight[k] > SILENT * weight.max():
                side = spectrum[k].real if self._real(k) else spectrum[k]
                spectrum[k] = self._harmonic(k).solve(side)
            else:
                spectrum[k] = 0
        out = np.empty(sides.shape)
        out[rows] = np.fft.irfft(spectrum, n=count, axis=0).reshape(sides.shape)
        return out

    def _real(self, k: int) -> bool:
        """Tell whether a harmonic is real: the same in all parts, or of changing sign."""
        return 2 * k % self.turn.count == 0

    def _harmonic(self, k: int) -> Factors:
        """Sum the blocks over the turns, each with its phase, and factor the sum once."""
        if k not in self.factored:
            phase = 2 * np.pi * k * np.arange(self.turn.count) / self.turn.count
            matrix = np.empty(self.blocks.shape[1:], float if self._real(k) else complex)
            matrix.real = np.tensordot(np.cos(phase), self.blocks, axes=1)
            if not self._real(k):
                matrix.imag = np.tensordot(np.sin(phase), self.blocks, axes=1)
            matrix[np.diag_indices(len(matrix))] += self.stiff
            self.factored[k] = factors(matrix)
        return self.factored[k]


def blocks_of(turn: Turn, strips: Iterable[tuple[int, Floats, Floats]]) -> Floats:
    """Put the first part's rows of a matrix, as `strips`, together turn by turn: (n, 2m, 2m)."""
    count, size = turn.order.shape
    blocks = np.empty((count, 2 * size, 2 * size))
    columns = _columns(turn)
    for low, *rows in strips:
        for first, some in zip((low, size + low), rows, strict=True):
            blocks[:, first : first + len(some)] = np.moveaxis(some[:, columns], 1, 0)
    return blocks


def turned(turn: Turn, blocks: Floats, stiff: Floats) -> Turned:
    """Put together a block-circulant matrix and what is added to its diagonal (2M,)."""
    return Turned(turn, blocks, stiff[_columns(turn)[0]])


def _columns(turn: Turn) -> Ints:
    """Columns of the pattern turn by turn: gaps, then slides, of each part, (n, 2m)."""
    return np.concatenate([turn.order, turn.order + turn.order.size], axis=1)
