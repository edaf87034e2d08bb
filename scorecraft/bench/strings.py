"""String lines counted as strings: two opposite spokes are one string across the loaf."""

from collections.abc import Sequence

import numpy as np

from scorecraft.arrays import Line
from scorecraft.frozen import dataclass

SAME_MM = 0.5
"""Spokes whose ends are so near to being opposite are one string line."""


@dataclass(frozen=True, slots=True)
class Strings:
    """How many strings are laid: across the crown, from it to the rim, in a ring, any other way."""

    across: int
    single: int
    rings: int
    others: int

    @property
    def count(self) -> int:
        """How many strings there are in all."""
        return self.across + self.single + self.rings + self.others


def strings_of(lines: Sequence[Line]) -> Strings:
    """Count the strings that mark lines (N, 2) of the sheet, in mm."""
    spokes = [each for each in lines if len(each) == 2 and np.hypot(*each[0]) < SAME_MM]
    across = sum(_opposite(one, other) for k, one in enumerate(spokes) for other in spokes[:k])
    rings = sum(bool(np.hypot(*(each[0] - each[-1])) < SAME_MM) for each in lines)
    others = len(lines) - len(spokes) - rings
    return Strings(across, len(spokes) - 2 * across, rings, others)


def _opposite(one: Line, other: Line) -> bool:
    """Tell whether two spokes point away from each other."""
    ways = [spoke[1] / np.hypot(*spoke[1]) for spoke in (one, other)]
    reach = max(np.hypot(*spoke[1]) for spoke in (one, other))
    return bool(np.hypot(*(ways[0] + ways[1])) * reach < SAME_MM)
