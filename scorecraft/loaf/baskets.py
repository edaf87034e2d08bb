"""Proofing baskets: how much dough one of a size takes."""

from math import sqrt

import numpy as np

from scorecraft.baking import BASKET_SLACK, COMMON_BASKETS

ROUND_BELOW = 1.15
"""A basket less longer than wide than this is round, or square."""


def takes(basket_mm: tuple[float, float]) -> tuple[float, float]:
    """Least and most dough (g) for a basket of a width and length across the top.

    Between the common baskets of its kind by the side of a square as large, beyond them by its cube
    (common practice, no source).

    >>> takes((220.0, 220.0)), takes((150.0, 250.0))
    ((700.0, 900.0), (700.0, 900.0))
    """
    across = sqrt(basket_mm[0] * basket_mm[1])
    long = max(basket_mm) / min(basket_mm) >= ROUND_BELOW
    rows = [each for each in COMMON_BASKETS if (each.length_mm > each.width_mm) == long]
    sides = [sqrt(each.length_mm * each.width_mm) for each in rows]
    beyond = (across / np.clip(across, sides[0], sides[-1])) ** 3
    least = np.interp(across, sides, [each.least_g for each in rows]) * beyond
    most = np.interp(across, sides, [each.value for each in rows]) * beyond
    return float(least), float(most)


def too_much(grams: float, most_g: float) -> bool:
    """Whether this is too much dough for a basket that takes so much."""
    return grams > BASKET_SLACK.value * most_g
