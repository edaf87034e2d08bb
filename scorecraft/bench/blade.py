"""How the blade is held: its handle's tilt on the dome, its depth along the stroke, its form."""

import math
from typing import Literal

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.cuts import Cut
from scorecraft.loaf.aside import aside
from scorecraft.practice import (
    CURVED_BELOW_DEG,
    END_DEPTH_SHARE,
    START_DEPTH_SHARE,
    UPRIGHT_DEG,
)

CLOSED_MM = 1e-6
"""A cut whose ends are nearer is closed."""


def upright(blade_rad: float) -> bool:
    """Whether a blade at this angle to the dough goes straight in."""
    return blade_rad >= math.radians(UPRIGHT_DEG.value)


def handle(
    normal: Floats,
    tangent: Floats,
    blade_rad: Floats,
    side: Floats,
    table_rad: float,
) -> tuple[Floats, Floats]:
    """Find how far handles tilt from upright, and to where the cutter sees them lean (radians).

    `normal` and `tangent` (N, 3) are unit vectors of the dome in the loaf's frame, the tangent in
    the direction of the pull. The blade stands at `blade_rad` (N,) to the dough, square to the
    stroke; below a right angle the handle leans to a `side` (N,): 1 left of the pull, -1 right.
    The lean is the mathematical angle seen at the table's angle.
    """
    upright = np.sin(blade_rad)[:, None] * normal
    points = upright + (np.cos(blade_rad) * side)[:, None] * aside(normal, tangent)
    tilt = np.arctan2(np.hypot(points[:, 0], points[:, 1]), points[:, 2])
    lean = np.arctan2(points[:, 1], points[:, 0]) - table_rad
    return tilt, np.asarray((lean + math.pi) % math.tau - math.pi)


def depths(cut: Cut) -> tuple[float, float, float]:
    """Give the depth (mm) at the start, the middle and the end of a stroke.

    A deep blade enters with its tip and lifts off again; a light or closed stroke is even, and so
    is one that parts the dough.
    """
    if cut.kind == "decorative" or cut.severs or math.dist(cut.line[0], cut.line[-1]) < CLOSED_MM:
        return (cut.depth_mm, cut.depth_mm, cut.depth_mm)
    shares = START_DEPTH_SHARE.value, 1.0, END_DEPTH_SHARE.value
    first, middle, last = (cut.depth_mm * share for share in shares)
    return (first, middle, last)


def blade_form(blade_rad: float) -> Literal["curved", "straight"]:
    """Suggest a blade: curved to lift an ear, straight for lines cut straight down."""
    return "curved" if math.degrees(blade_rad) < CURVED_BELOW_DEG.value else "straight"
