"""Places on a loaf in a baker's words: the hours of the clock, and how far down the side."""

import math

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.loaf.dome import Loaf
from scorecraft.units import turntable_degrees

LOW = "just above the base"
NEAR_CROWN_SHARE = 0.15
"""Called 'near the crown' within this share of the reach."""
LOW_FROM = 0.8
"""Called `LOW` beyond this share of the reach, by the checks as by the verdict on room."""


def where(loaf: Loaf, point: Floats) -> str:
    """Say where a sheet point (2,) lies: near the crown, or at an hour of the clock."""
    theta = math.atan2(float(point[1]), float(point[0]))
    share = float(loaf.share(np.asarray(point)))
    if loaf.hole is not None:
        return f"{clock(theta)}{_on_ring(share)}"
    if share < NEAR_CROWN_SHARE:
        return "near the crown"
    return f"{clock(theta)}, {LOW}" if share > LOW_FROM else clock(theta)


def _on_ring(share: float) -> str:
    """Say where across a ring: a share of the way from its crest, below 0 toward the hole."""
    if abs(share) < NEAR_CROWN_SHARE:
        return ", on the crest"
    if share < 0:
        return ", at the hole" if share < -LOW_FROM else ", toward the hole"
    return f", {LOW}" if share > LOW_FROM else ""


def clock(theta: float) -> str:
    """Say a direction (radians from +x) as the nearest hour of the clock."""
    return f"at {hour(theta)} o'clock"


def hour(theta: float) -> int:
    """Nearest hour (1 to 12) of the turntable's clock to a direction (radians from +x)."""
    return round(turntable_degrees(theta) / 30) % 12 or 12
