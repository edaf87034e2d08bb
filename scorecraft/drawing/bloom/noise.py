"""Seeded noise that repeats: tiles of bumps of given sizes, read at any place."""

from collections.abc import Callable
from functools import cache, cached_property

import numpy as np
from scipy import fft, ndimage

from scorecraft.arrays import Field, Floats, Ints
from scorecraft.frozen import dataclass

TILE = 512
BLISTERS = 2400
FINER = 0.7
"""Pixels smaller than this part of a tile's step are read between its points."""
Sizes = tuple[tuple[float, float], ...]
"""Sizes of bumps (mm), each with its weight."""


@cache
def bumps(seed: int, step_mm: float, sizes: Sizes) -> Field:
    """Make a tile of noise, TILE steps wide, of mean 0 and spread 1.

    A size is where the spectrum of a Gaussian bump has fallen off.
    """
    rng = np.random.default_rng(seed)
    across, down = np.fft.rfftfreq(TILE, step_mm), np.fft.fftfreq(TILE, step_mm)
    square = (across**2 + down[:, None] ** 2).astype(np.float32)
    spectrum = np.zeros(square.shape, dtype=np.float32)
    for size, weight in sizes:
        spectrum += np.float32(weight * size**3) * square * np.exp(-square * np.float32(size**2))
    phase = rng.standard_normal((2, *square.shape), dtype=np.float32)
    wave = fft.irfft2(spectrum * (phase[0] + 1j * phase[1]), (TILE, TILE), workers=1)
    return np.asarray(wave / wave.std(), dtype=np.float32)


@cache
def blisters(seed: int, step_mm: float) -> Field:
    """Make a tile of small domes (mm high), most of them tiny, as a long cool proof raises them."""
    rng = np.random.default_rng(seed)
    tile = np.zeros((TILE, TILE), dtype=np.float32)
    sizes = np.minimum(0.4 * rng.lognormal(0.0, 0.6, BLISTERS), 2.2) / step_mm
    for size, (row, column) in zip(sizes, rng.integers(0, TILE, (BLISTERS, 2)), strict=True):
        reach = int(size) + 1
        steps = np.arange(-reach, reach + 1)
        dome = np.maximum(1 - (steps[:, None] ** 2 + steps**2) / size**2, 0.0) ** 0.5
        at = np.ix_((row + steps) % TILE, (column + steps) % TILE)
        tile[at] = np.maximum(tile[at], dome * size * step_mm * 0.45)
    return tile


@dataclass(frozen=True, eq=False)
class Grain:
    """Places x and y (mm) where tiles of one step are read, and how far apart these are.

    What is read is spread by `to`, if that is given.
    """

    places: tuple[Field, Field]
    step_mm: float
    apart_mm: float
    to: Callable[[Field], Field] | None = None

    def bumps(self, seed: int, *sizes: tuple[float, float], even: bool = False) -> Field:
        """Read noise of bumps of sizes (mm), each with its weight."""
        return self.read(bumps(seed, self.step_mm, sizes), even)

    def blisters(self, seed: int) -> Field:
        """Read blisters, mm high."""
        return self.read(blisters(seed, self.step_mm), even=True)

    def read(self, tile: Field, even: bool) -> Field:
        """Read a tile at its nearest points.

        Heights are read `even`, between the points by straight lines, and so is all where pixels
        are finer than the tile.
        """
        if even or self.apart_mm < FINER * self.step_mm:
            at = np.stack(self.places[::-1]) / np.float32(self.step_mm)
            found = ndimage.map_coordinates(tile, at, order=1, mode="grid-wrap")
            return self.to(found) if self.to else np.asarray(found)
        return np.asarray(tile.ravel()[self._nearest])

    @cached_property
    def _nearest(self) -> Ints:
        column, row = (
            np.rint(each / np.float32(self.step_mm)).astype(np.int32) % TILE for each in self.places
        )
        return np.asarray(row * TILE + column, dtype=np.intp)


def blurred(values: Field, pixels: float) -> Field:
    """Blur by a Gaussian; a wide one is taken of the means of small squares."""
    every = max(1, int(pixels / 1.5))
    if every == 1:
        return np.asarray(ndimage.gaussian_filter(values, pixels))
    rows, columns = values.shape
    padded = np.pad(values, ((0, -rows % every), (0, -columns % every)), mode="edge")
    high, wide = padded.shape
    means = padded.reshape(high // every, every, wide // every, every).mean(axis=(1, 3))
    size = max((pixels / every) ** 2 - 0.25, 0.0) ** 0.5  # the means and the lines blur by a half
    soft = ndimage.gaussian_filter(means, size)
    down, right = ((np.arange(count) - (every - 1) / 2) / every for count in (rows, columns))
    return spread(soft, down, right)


def spread(values: Field | Floats, rows: Floats, columns: Floats) -> Field:
    """Read a grid of values at fractional rows and columns, by straight lines between them."""
    for at in (rows, columns):
        low = np.clip(at.astype(np.intp), 0, len(values) - 2)
        part = np.clip(at - low, 0, 1).astype(np.float32)[:, None]
        values = (values[low] * (1 - part) + values[low + 1] * part).T
    return np.asarray(values, dtype=np.float32)
