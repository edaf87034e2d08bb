"""Quantiles of Student's t distribution, without a library of statistics."""

import math

import numpy as np

STEPS = 20_001


def two_sided(sure: float, freedom: int) -> float:
    """Give the t that holds the share `sure` (0 to 1) within -t..t for degrees of freedom >= 1.

    With t = sqrt(v) tan(phi) the density becomes cos(phi)^(v - 1), which is summed over phi (Abramowitz
    & Stegun 1964, 26.7; recalled, page not checked).
    """  # noqa: E501
    if freedom < 1:
        raise ValueError("a t distribution has at least one degree of freedom")
    phi = np.linspace(0.0, math.pi / 2, STEPS)
    density = np.cos(phi) ** (freedom - 1)
    steps = (density[1:] + density[:-1]) / 2
    share = np.concatenate([[0.0], np.cumsum(steps)]) / steps.sum()
    return math.sqrt(freedom) * math.tan(float(np.interp(sure, share, phi)))
