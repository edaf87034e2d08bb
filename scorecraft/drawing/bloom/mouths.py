"""How wide each cut stands open along its length, as the drawings want it."""

import numpy as np
from numpy.typing import ArrayLike

from scorecraft.arrays import Floats
from scorecraft.cuts import Layout
from scorecraft.frozen import dataclass
from scorecraft.loaf.skin import Skin
from scorecraft.opening import Opening
from scorecraft.opening.predict import predict

DIGITS = 4
"""Widths are kept to a ten-thousandth of a mm."""


@dataclass(frozen=True, slots=True, eq=False)
class Mouths:
    """Widths of the baked cuts, one profile a cut of the layout.

    `share` are places along the cut from 0 (start of the stroke) to 1, rising; `width_mm` the
    opening there, on the dough's surface and across the cut.
    """

    share: tuple[Floats, ...]
    width_mm: tuple[Floats, ...]

    def __len__(self) -> int:
        return len(self.share)

    def width(self, cut: int, share: ArrayLike) -> Floats:
        """Read the opening (mm) of a cut at shares of its length.

        Squares are interpolated: at a tip a slit opens as the root of the distance.
        """
        squares = np.interp(np.asarray(share, float), self.share[cut], self.width_mm[cut] ** 2)
        return np.asarray(np.sqrt(squares))

    def widest(self, cut: int) -> float:
        """Give the widest opening (mm) of a cut."""
        return float(self.width_mm[cut].max())


def closed(layout: Layout) -> Mouths:
    """Give the mouths of cuts that have not opened yet."""
    share = np.array([0.0, 1.0])
    return Mouths(*(tuple(each for _ in layout.cuts) for each in (share, 0 * share)))


def mouths_of(opening: Opening) -> Mouths:
    """Take the profiles along all cuts from the slit-opening model.

    Widths are rounded: their last digits hang on how many threads solved for them.
    """
    profiles = [opening.profile(line) for line in range(len(opening.panels.of_line))]
    return Mouths(
        tuple(each.along_mm / each.along_mm[-1] for each in profiles),
        tuple(np.round(each.width_mm, DIGITS) for each in profiles),
    )


def predicted(layout: Layout) -> Opening:
    """Let the slit-opening model open all cuts of a layout as its bake makes the loaf grow."""
    return predict(layout, Skin())
