"""Where it is cut the skin bulges out of the dome, and its cuts open further than in a flat sheet.

The skin is a shallow sphere of radius R on the bed of its inside (Marguerre's equations; the shell
of Folias, Int. J. Fract. Mech. 1 (1965) 20-46, recalled, on a bed). A rise w puts the strain w / R
into it all around; its tension then pulls it back by as much over R. In waves of number k it is
held besides, per area and rise, by its bending, by the inside under it, an incompressible half
space m times as stiff, and by its own tension t, all in units of E:

    held = h^3 k^4 / 9 + 2 m k / 3 + h t k^2

So the Airy function of the cuts, hence every tension they take, is that of the flat sheet times

    held / (held + h E' / R^2),     E' = (1 + s)(1 + 5s) / 3(1 + 3s),   t = (1 - s) / 3,

E' what a skin that is stretched already puts up along one way when it may give across it, and t
its tension per width after the stretch (`stretch`; derived here, exact for small openings). Nothing
is fitted. On short waves, or as R goes to infinity, nothing is left of it.
"""

from functools import lru_cache
from math import pi

import numpy as np

from scorecraft.arrays import Complexes, Floats
from scorecraft.frozen import dataclass
from scorecraft.opening.stretch import Stretch

LONGEST_MM = 4096
"""Waves are summed up to this length, over distances a mm apart."""
TURNS = 32
"""Directions of waves, in a quarter of a turn."""


@dataclass(frozen=True, slots=True)
class Bed:
    """What a skin lies on: an inside, its modulus over the skin's, on a dome curved so (per mm).

    Without an inside, which alone would not hold it, the skin is taken to lie on a flat former.
    """

    curve: float = 0.0
    skin_mm: float = 1.0
    inside: float = 0.0

    def kept(self, wave: Floats, stretch: Stretch) -> Floats:
        """Share of what a flat sheet puts up against cuts at wave numbers (any shape), per mm."""
        h, tension = self.skin_mm, max(1 - stretch.softer, 0.0) / 3
        held = h**3 * wave**4 / 9 + 2 * self.inside * wave / 3 + h * tension * wave**2
        share: Floats = held / (held + h * stretch.pull * self.curve**2)
        return share

    def between(self, apart: Complexes, stretch: Stretch) -> tuple[Complexes, Complexes]:
        """Tell what it adds to the kernel between ends that are `apart`; see `kernel.between`."""
        if not (self.curve and self.inside):
            return np.zeros_like(apart), np.zeros_like(apart)
        away = np.abs(apart)
        alike, mirrored = (np.interp(away, *row) for row in _rows(self, stretch))
        turned = np.divide(apart, away, out=np.ones_like(apart), where=away > 0) ** 2
        return np.asarray(alike + 0j), np.asarray(mirrored * turned)


FLAT = Bed()


@lru_cache(maxsize=16)
def _rows(bed: Bed, stretch: Stretch) -> tuple[tuple[Floats, Floats], tuple[Floats, Floats]]:
    """Tabulate what is added to the kernel: alike in all directions, and hanging on them.

    Of waves of any direction, the first is the sum; the second follows from it, since the field of
    a jump bears no force: m = -a + 2 / r^2 times the integral of r a. That the sum begins at the
    longest wave and not at none is made good by its slope there (Euler & Maclaurin).
    """
    wave = 2 * pi / LONGEST_MM * np.arange(1, LONGEST_MM // 2)
    turn = (np.arange(TURNS) + 0.5) * pi / 2 / TURNS
    lost = (1 - bed.kept(wave[:, None] / np.cos(turn), stretch)).mean(axis=1)
    away = np.arange(LONGEST_MM // 2, dtype=np.float64)
    alike = np.fft.irfft(np.append(0.0, -2 * pi * lost / wave), LONGEST_MM)[: len(away)]
    alike += lost[0] * (wave[0] * away) ** 2 / 12 - alike[0]
    area = np.cumsum(away * alike) - away * alike / 2
    mirrored = 2 * area / np.maximum(away, 1) ** 2 - alike
    scale = (1 + stretch.lean) / 2
    return (away, scale * alike), (away, scale * mirrored)
