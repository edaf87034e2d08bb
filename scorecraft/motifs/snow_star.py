"""A snow star: six arms with branches."""

from math import pi

import numpy as np

from scorecraft.curves import polar, ray, segment
from scorecraft.cuts import Stroke

HUB = 0.1
"""Where the arms begin, as a share of the radius."""
FIRST, LAST = 0.42, 0.84
"""Where the innermost and the outermost branches leave an arm, as shares of the radius."""
BRANCH = 0.26
"""Length of the longest branch, as a share of the radius."""
SPREAD_RAD = pi / 3
BESIDE = 0.035
"""How far beside its arm a branch begins, as a share of the radius."""


def snow_star(*, radius: float, arms: int, branches: int) -> list[Stroke]:
    """Draw a snow star about the origin, its arms `radius` (mm) long, the first along +y.

    `branches` counts the pairs on each arm; between the arms stand short needles.
    """
    strokes = []
    for k in range(arms):
        turn = 2 * pi * k / arms
        strokes.append(Stroke("arm", ray(HUB * radius, radius, turn)))
        for share in np.linspace(FIRST, LAST, branches).tolist():
            strokes += _pair(radius, turn, share)
        strokes.append(Stroke("needle", ray(0.2 * radius, 0.38 * radius, turn + pi / arms)))
    return strokes


def _pair(radius: float, turn: float, share: float) -> list[Stroke]:
    """Draw the two branches at a share of an arm, shorter toward its tip."""
    long = BRANCH * radius * (1 - 0.62 * (share - FIRST) / (LAST - FIRST))
    foot, found = polar(share * radius, turn), []
    for side in (-1, 1):
        way = polar(1.0, turn + side * SPREAD_RAD)
        start = foot + BESIDE * radius * way
        found.append(Stroke("branch", segment(start, foot + (BESIDE * radius + long) * way)))
    return found
