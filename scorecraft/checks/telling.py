"""How findings are told: where on the loaf in a baker's words, and copies only once."""

import math
from collections.abc import Hashable, Sequence

import numpy as np
from numpy.typing import NDArray

from scorecraft.loaf.dome import Loaf
from scorecraft.units import turntable_degrees

NEAR_CROWN_SHARE = 0.15
"""Called 'near the crown' within this share of the reach."""
NEAR_RIM_SHARE = 0.8
"""Called 'low on the side' beyond this share of the reach."""
Array = NDArray[np.float64]

MOST_DIGITS = 7
"""Decimals that no length is told with."""


def where(loaf: Loaf, point: Array) -> str:
    """Say where a sheet point (2,) lies: near the crown, or at an hour of the clock."""
    theta = math.atan2(float(point[1]), float(point[0]))
    share = math.hypot(float(point[0]), float(point[1])) / float(loaf.reach(theta))
    if share < NEAR_CROWN_SHARE:
        return "near the crown"
    hour = clock(theta)
    return f"{hour}, low on the side" if share > NEAR_RIM_SHARE else hour


def clock(theta: float) -> str:
    """Say a direction (radians) as the nearest hour of the clock."""
    hour = round(turntable_degrees(theta) / 30) % 12
    return f"at {hour or 12} o'clock"


def size(value_mm: float) -> str:
    """Write a length: whole mm from 10 on, tenths below."""
    digits = 0 if abs(value_mm) >= 9.95 else 1
    return f"{value_mm:.{digits}f} mm".replace(".0 mm", " mm")


def enough(value_mm: float) -> str:
    """Write a length a cure needs, rounded up to half a millimetre."""
    return size(math.ceil(value_mm * 2 - 1e-9) / 2)


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


def told_once(keys: Sequence[Hashable], weights: Array) -> list[tuple[int, NDArray[np.intp]]]:
    """Sort cases by key: for each key the index of its weightiest case, and all of its cases."""
    members: dict[Hashable, list[int]] = {}
    for index, key in enumerate(keys):
        members.setdefault(key, []).append(index)
    groups = [np.array(found, dtype=np.intp) for found in members.values()]
    return [(int(found[np.argmax(weights[found])]), found) for found in groups]
