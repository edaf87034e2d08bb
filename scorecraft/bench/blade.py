"""How the blade is held: its handle's tilt on the dome, its depth along the stroke, its form."""

import math
from typing import Literal

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.cuts import Bench, Cut
from scorecraft.practice import (
    CURVED_BELOW_DEG,
    END_DEPTH_SHARE,
    MOST_TILT_DEG,
    START_DEPTH_SHARE,
    STEEP_SIDE_DEG,
    UPRIGHT_DEG,
)

CROSSWISE = 0.2
"""How much leaning toward the cutter counts against leaning to the hand, for a crosswise stroke."""


def upright(blade_rad: float) -> bool:
    """Whether a blade at this angle to the dough goes straight in."""
    return blade_rad >= math.radians(UPRIGHT_DEG.value)


def handle(
    normal: Floats, tangent: Floats, blade_rad: Floats, bench: Bench, table_rad: float
) -> tuple[Floats, Floats]:
    """Find how far handles tilt from upright, and to where the cutter sees them lean (radians).

    `normal` and `tangent` (N, 3) are unit vectors of the dome in the loaf's frame, the tangent in
    the direction of the pull. The blade stands at `blade_rad` (N,) to the dough, square to the
    stroke; below a right angle the handle leans to the side where the dough falls off, so that
    the edge slips under the skin of the higher side, or to the side of the hand on level dough;
    where the bench is in the way it leans to the other side.
    The lean is the mathematical angle seen at the table's angle.
    """
    aside = np.cross(normal, tangent)
    side = _side(aside, bench, table_rad)
    points = _pointing(normal, aside, blade_rad, side)
    too_low = points[:, 2] < math.cos(math.radians(MOST_TILT_DEG.value))
    other = _pointing(normal, aside, blade_rad, -side)
    points = np.where((too_low & (other[:, 2] > points[:, 2]))[:, None], other, points)
    tilt = np.arctan2(np.hypot(points[:, 0], points[:, 1]), points[:, 2])
    lean = np.arctan2(points[:, 1], points[:, 0]) - table_rad
    return tilt, np.asarray((lean + math.pi) % math.tau - math.pi)


def _pointing(normal: Floats, aside: Floats, blade_rad: Floats, side: Floats) -> Floats:
    """Direction (N, 3) of handles that lean to a side of their strokes."""
    upright = np.sin(blade_rad)[:, None] * normal
    return np.asarray(upright + (np.cos(blade_rad) * side)[:, None] * aside)


def _side(aside: Floats, bench: Bench, table_rad: float) -> Floats:
    """Choose the side the handle leans to: 1 is the left of the stroke, -1 its right."""
    falls = aside[:, 2] < 0
    steep = np.abs(aside[:, 2]) >= math.sin(math.radians(STEEP_SIDE_DEG.value))
    theta = np.arctan2(aside[:, 1], aside[:, 0]) - table_rad
    to_hand = bench.way * np.cos(theta) - CROSSWISE * np.sin(theta)
    left = np.where(steep, falls, to_hand >= 0)
    return np.where(left, 1.0, -1.0)


def depths(cut: Cut) -> tuple[float, float, float]:
    """Give the depth (mm) at the start, the middle and the end of a stroke.

    A deep blade enters with its tip and lifts off again; a light or closed stroke is even, and so
    is one that parts the dough.
    """
    if cut.kind == "decorative" or cut.severs or np.allclose(cut.line[0], cut.line[-1]):
        return (cut.depth_mm, cut.depth_mm, cut.depth_mm)
    shares = START_DEPTH_SHARE.value, 1.0, END_DEPTH_SHARE.value
    first, middle, last = (cut.depth_mm * share for share in shares)
    return (first, middle, last)


def blade_form(blade_rad: float) -> Literal["curved", "straight"]:
    """Suggest a blade: curved to lift an ear, straight for lines cut straight down."""
    return "curved" if math.degrees(blade_rad) < CURVED_BELOW_DEG.value else "straight"
