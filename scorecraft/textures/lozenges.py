"""Linked lozenges, each with a smaller one inside."""

from math import cos, sin

import numpy as np

from scorecraft.arrays import Line
from scorecraft.textures.lattice import Bounds, check_angle, copies, families, nodes


def lozenges(bounds: Bounds, *, size: float, angle: float, inner: float) -> list[Line]:
    """Draw lozenges of a side (mm) and a tip angle (radians), tips up and down.

    The inner lozenge, two strokes from tip to tip, has `inner` times the size; 0 leaves it out.
    Raises UsageError for an angle too flat.
    """
    check_angle("angle", angle, 180)
    wide, tall = size * sin(angle / 2), size * cos(angle / 2)
    pitch = size * sin(angle)
    lines = families(bounds, angle / 2, -angle / 2, spacing=pitch, offset=pitch / 2)
    if inner <= 0:
        return lines
    middles = nodes(bounds, (wide, tall), (2 * wide, 0), max(wide, tall))
    half = inner * np.array([[0, -tall], [wide, 0], [0, tall]])
    return lines + copies(half, middles) + copies(half * (-1, 1), middles)
