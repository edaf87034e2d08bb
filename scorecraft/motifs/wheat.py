"""An ear of wheat: a stem and leaning grains."""

import numpy as np

from scorecraft.arrays import Line
from scorecraft.curves import bezier, segment
from scorecraft.cuts import Stroke
from scorecraft.motifs.fit import both

STALK = 0.38
"""The bare stalk's share of the length."""
RISE = 0.72
"""How far a grain rises along the stem, as a share of the ear's width."""
CROWDED = 3.5
"""How many steps along the stem a grain rises at most: higher ones would meet."""


def wheat(*, length: float, width: float, grains: int) -> list[Stroke]:
    """Draw a stalk from its foot at the origin to its tip at (0, length), `width` (mm) wide.

    `grains` counts the pairs below the one at the tip; each grain is one stroke, which opens to
    the grain's shape, and no grain touches the stem.
    """
    step = (1 - STALK) * length / (grains + 1)
    rise = min(RISE * width, 0.36 * length, CROWDED * step)
    tip_foot = length - 0.95 * rise
    strokes = [Stroke("stem", segment((0, 0), (0, tip_foot - 0.2 * rise)))]
    share = (np.arange(grains) + 0.5) / max(grains, 1)
    feet = STALK * length + share * (length - 1.1 * rise - STALK * length)
    for at, foot in zip(share, feet, strict=True):
        line = _grain(foot, rise, width * _fullness(at))
        strokes += both("grain", line)
    return [*strokes, Stroke("grain", segment((0, tip_foot), (0, length)))]


def _fullness(share: float) -> float:
    """Width of the ear at a share of its height: fullest below the middle, slim at the top."""
    return 1 - 0.55 * (share - 0.35) ** 2 - 0.25 * max(share - 0.35, 0)


def _grain(foot: float, rise: float, width: float) -> Line:
    """Right grain: leaves the stem leaning out and turns up toward the tip."""
    half = width / 2
    return bezier(
        (0.14 * half, foot),
        (0.52 * half, foot + 0.24 * rise),
        (0.92 * half, foot + 0.58 * rise),
        (half, foot + rise),
    )
