"""How findings are told: lengths in a baker's words, and copies only once."""

import math
from collections.abc import Hashable, Sequence

import numpy as np

from scorecraft.arrays import Floats, Ints

MOST_DIGITS = 7
"""Decimals that no length is told with."""


def size(value_mm: float) -> str:
    """Write a length: whole mm from 10 on, tenths below."""
    digits = 0 if abs(value_mm) >= 9.95 else 1
    return f"{value_mm:.{digits}f} mm".replace(".0 mm", " mm")


def half_up(value_mm: float) -> float:
    """Round a length up to half a millimetre, as a hand can tell it."""
    return math.ceil(value_mm * 2 - 1e-9) / 2


def enough(value_mm: float) -> str:
    """Write a length a cure needs, rounded up to half a millimetre."""
    return size(half_up(value_mm))


def apart(less_mm: float, more_mm: float) -> tuple[str, str]:
    """Write two lengths with so many decimals that they do not read the same."""
    told = size(less_mm), size(more_mm)
    digits = 1
    while told[0] == told[1] and less_mm != more_mm and digits < MOST_DIGITS:
        told = f"{less_mm:.{digits}f} mm", f"{more_mm:.{digits}f} mm"
        digits += 1
    return told


def likewise(count: int, whole: bool = True) -> str:
    """Say that a finding holds of `count` places, or of as many at least."""
    least = "" if whole else "at least "
    return f" ({least}{count - 1} more like it)" if count > 1 else ""


def told_once(keys: Sequence[Hashable], weights: Floats) -> list[tuple[int, Ints]]:
    """Sort cases by key: for each key the index of its weightiest case, and all of its cases."""
    members: dict[Hashable, list[int]] = {}
    for index, key in enumerate(keys):
        members.setdefault(key, []).append(index)
    groups = [np.array(found, dtype=np.intp) for found in members.values()]
    return [(int(found[np.argmax(weights[found])]), found) for found in groups]
