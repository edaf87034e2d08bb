"""What ends do to one another from afar: by a grid, since from afar only their distance counts.

Within `reach` the kernel is carried on smoothly, without its peak (`Smooth`), and taken for ends
that all have the mean core and direction; what it truly is there, less that, is left to pairs. The
smooth kernel between any two ends is interpolated from its values between the points of a regular
grid, by B-splines of degree 5 on either side, and on the grid it is a convolution: a Fourier
transform there and one back (Hockney & Eastwood, Computer Simulation Using Particles, 1988, ch. 5
and 8; recalled. Splines: Unser, IEEE Signal Proc. Mag. 16 (1999) 22-38; recalled).
"""

from functools import reduce
from itertools import count

import numpy as np

from scorecraft.arrays import Complexes, Floats, Ints
from scorecraft.frozen import dataclass
from scorecraft.opening.bulge import FLAT, Bed
from scorecraft.opening.kernel import UNSTRETCHED, Ends, between
from scorecraft.opening.stretch import Stretch

REACH = 7.0
"""The kernel is smoothed within so many steps of the grid."""
TERMS = 6
"""Terms of the series that carry the smooth kernel on: it is smooth to so many derivatives."""
SPLINE = 6
"""Points of the grid, each way, that an end takes part in: one more than the splines' degree."""
MARGIN = 12
"""Points left free, so that the grid's far end, where the transform wraps around, is not felt."""


@dataclass(frozen=True, slots=True)
class Smooth:
    """The kernel between average ends, without its peak within `reach` (mm).

    The logarithm and the reciprocal of the squared distance are there the first terms of their
    series about the reach: even polynomials of the distance, the true ones from the reach on.
    """

    reach: float
    core2: float
    way: complex
    lean: float

    def between(self, apart: Complexes, wider: Floats | float = 0.0) -> tuple[Complexes, Complexes]:
        """Evaluate the kernel for ends that are `apart`, any shape; see `kernel.between`.

        The sum of their cores is by so much `wider` than that of two average ones (mm2).
        """
        return between(
            apart,
            2 * self.core2 + wider,
            self.way,
            self.way,
            lean=self.lean,
            log=self._log,
            over=self._over,
        )

    def _log(self, squared: Floats) -> Floats:
        edge = self.reach**2
        inner = 1 - np.minimum(squared / edge, 1)
        series = reduce(lambda sum_, k: (sum_ + 1 / k) * inner, range(TERMS, 0, -1), 0 * inner)
        log: Floats = np.log(np.maximum(squared, edge)) - series
        return log

    def _over(self, squared: Floats) -> Floats:
        edge = self.reach**2
        inner = 1 - np.minimum(squared / edge, 1)
        series = reduce(lambda sum_, _: sum_ * inner + 1, range(TERMS), 0 * inner + 1)
        over: Floats = series / np.maximum(squared, edge)
        return over


@dataclass(frozen=True, slots=True, eq=False)
class Far:
    """A grid of `shape` with the transforms of the smooth kernel; what ends share with its points.

    `waves` are xx, xy and yy, in that order. `point` (K, S) are the points an end takes part in,
    by `weight` (K, S). Where cores are told apart `wider` (K,) is by how much each is wider than
    the mean one (mm2), and `slopes` is how the waves change with that.
    """

    shape: tuple[int, int]
    waves: Floats
    point: Ints
    weight: Floats
    wider: Floats | None = None
    slopes: Floats | None = None

    def times(self, jumps: Complexes) -> Complexes:
        """Give the forces (K,) on all ends from the jumps (K,) at all of them."""
        sent = self._sent(jumps)
        field = _acted(self.waves, sent)
        if self.wider is None or self.slopes is None:
            return self._felt(field)
        field += _acted(self.slopes, self._sent(self.wider * jumps))
        return self._felt(field) + self.wider * self._felt(_acted(self.slopes, sent))

    def _sent(self, jumps: Complexes) -> Complexes:
        """Spread jumps (K,) over the grid; the transforms of their x and y."""
        wide, high = self.shape
        rows = wide // 2  # the others are empty: there the transform wraps around
        own = self.point.ravel()
        spread = [
            np.bincount(own, (self.weight * part[:, None]).ravel(), rows * high)
            for part in (jumps.real, jumps.imag)
        ]
        return np.fft.fft(np.fft.rfft(np.reshape(spread, (2, rows, high))), wide, axis=1)

    def _felt(self, field: Complexes) -> Complexes:
        """Give the forces (K,) that ends feel from the transforms of a field of x and y."""
        wide, high = self.shape
        parts = np.fft.irfft(np.fft.ifft(field, axis=1)[:, : wide // 2], high)
        force = [np.einsum("ks,ks->k", part.ravel()[self.point], self.weight) for part in parts]
        return np.asarray(force[0] + 1j * force[1])


def _acted(waves: Floats, sent: Complexes) -> Complexes:
    """Let the transform of a kernel act on those of x and y."""
    (xx, xy, yy), (x, y) = waves, sent
    return np.stack([xx * x + xy * y, xy * x + yy * y])


def far(
    ends: Ends,
    smooth: Smooth,
    step_mm: float,
    wider: Floats | None = None,
    bed: Bed = FLAT,
    stretch: Stretch = UNSTRETCHED,
) -> Far:
    """Lay a grid over the ends; what their cores are `wider` (K,) counts to the first order."""
    share = (ends.at - ends.at.min(axis=0)) / step_mm
    corner = np.floor(share).astype(np.int64)
    wide, high = (_handy(2 * int(last) + SPLINE + MARGIN) for last in corner.max(axis=0) + SPLINE)
    steps = [step_mm * size * np.fft.fftfreq(size) for size in (wide, high)]
    apart = np.add.outer(steps[0], 1j * steps[1])
    sharpened = np.outer(_sharpening(wide), _sharpening(high)[: high // 2 + 1])
    slopes = None
    if wider is not None:
        more, less = (_waves(*smooth.between(apart, c)) for c in (smooth.core2, -smooth.core2))
        slopes = sharpened * (more - less) / (2 * smooth.core2)
    waves = sharpened * _waves(*map(np.add, smooth.between(apart), bed.between(apart, stretch)))
    x, y = np.moveaxis(spline(share - corner), 1, 0)
    nodes = np.arange(SPLINE)
    point = (corner[:, :1] + nodes)[:, :, None] * high + (corner[:, 1:] + nodes)[:, None, :]
    weight = (x[:, :, None] * y[:, None, :]).reshape(len(x), -1)
    return Far((wide, high), waves, point.reshape(len(x), -1), weight, wider, slopes)


def _waves(alike: Complexes, mirrored: Complexes) -> Floats:
    """Transform a kernel on the grid, as `kernel.between` tells it, to its xx, xy and yy."""
    kernel = alike.real + mirrored.real, mirrored.imag, alike.real - mirrored.real
    return np.asarray(np.fft.rfft2(np.stack(kernel)).real)


def spline(share: Floats) -> Floats:
    """Weights (..., SPLINE) of the nodes about a place, `share` (...) of a step on from the third.

    By the recurrence of B-splines (de Boor, A Practical Guide to Splines, 1978; recalled).
    """
    at = share[..., None] + np.arange(SPLINE)[::-1]
    weight = (at < 1).astype(np.float64)
    for order in range(2, SPLINE + 1):
        after = np.concatenate([weight[..., 1:], np.zeros_like(weight[..., :1])], axis=-1)
        weight = (at * weight + (order - at) * after) / (order - 1)
    return weight


def _sharpening(size: int) -> Floats:
    """Undo in a transform of `size` points what splines smooth at the nodes, on either side."""
    nodes = np.zeros(size)
    nodes[:SPLINE] = spline(np.zeros(()))
    sharpening: Floats = 1 / np.abs(np.fft.fft(nodes)) ** 2
    return sharpening


def _handy(least: int) -> int:
    """Round an even number up to one that a transform is quick with: of factors 2, 3, 5 and 7."""
    return next(size for size in count(least, 2) if pow(2 * 3 * 5 * 7, least, size) == 0)
