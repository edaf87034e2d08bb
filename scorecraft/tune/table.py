"""What a model of a bake says for every skin: run for a few, between them interpolated.

A skin here is a thickness (mm) and the stiffness of the inside over its own.
"""

import math
from collections.abc import Callable, Sequence

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.frozen import dataclass
from scorecraft.practice import INSIDE_PER_SKIN, SKIN_MM

SKIN_LIMITS_MM = (1.5, 16.0)
"""The thinnest and the thickest skin that are looked for."""
INSIDE_LIMITS = (0.01, 0.25)
"""The softest and the stiffest inside that are looked for, over the skin."""
SKIN_KNOTS = 8
INSIDE_KNOTS = 3
"""Skins and insides the model is run for: between them widths are interpolated."""
NARROWEST_MM = 1e-3
"""No opening is interpolated below this."""
FINE = (241, 61)
"""Skins and insides that are compared with the openings."""
Widths = Callable[[float, float], Floats]
"""A model of a bake: skin (mm) and inside to the predicted width (mm) of every number of cut."""


def spaced(limits: tuple[float, float], count: int, usual: float) -> Floats:
    """Give numbers in equal ratios between limits, the one nearest to the usual replaced by it."""
    values = np.exp(np.linspace(math.log(limits[0]), math.log(limits[1]), count))
    values[np.abs(np.log(values / usual)).argmin()] = usual
    return np.asarray(values)


def knots() -> tuple[Floats, Floats]:
    """Skins (mm) and insides that the model is run for."""
    skins = spaced(SKIN_LIMITS_MM, SKIN_KNOTS, SKIN_MM.value)
    return skins, spaced(INSIDE_LIMITS, INSIDE_KNOTS, INSIDE_PER_SKIN.value)


def table(widths: Widths) -> Floats:
    """Run a model at the knots: widths (skins, insides, cuts) in mm."""
    skins, insides = knots()
    return np.array([[widths(float(h), float(m)) for m in insides] for h in skins])


@dataclass(frozen=True, slots=True)
class Fine:
    """Skins (mm) and insides, and the widths (skins, insides, cuts) a model predicts for each."""

    skins: Floats
    insides: Floats
    widths_mm: Floats


def fine(tables: Sequence[Floats]) -> Fine:
    """Interpolate tables of one or more bakes, their cuts one after another.

    In logarithms of all, cubic over the skin, quadratic over the inside.
    """
    from scipy.interpolate import RectBivariateSpline

    at = [np.log(each) for each in knots()]
    skins = spaced(SKIN_LIMITS_MM, FINE[0], SKIN_MM.value)
    insides = spaced(INSIDE_LIMITS, FINE[1], INSIDE_PER_SKIN.value)
    columns = np.log(np.maximum(np.concatenate(tables, axis=2), NARROWEST_MM))
    widths = [
        RectBivariateSpline(*at, columns[:, :, k], kx=3, ky=2)(np.log(skins), np.log(insides))
        for k in range(columns.shape[2])
    ]
    return Fine(skins, insides, np.exp(np.stack(widths, axis=2)))
