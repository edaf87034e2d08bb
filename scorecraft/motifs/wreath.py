"""A wreath: leaves in pairs along a ring that is open at the top."""

from math import pi

import numpy as np

from scorecraft.curves import arc, polar
from scorecraft.cuts import Stroke
from scorecraft.motifs.petal import leaflet

OPEN_RAD = 0.24
"""Half the gap at the top, as a turntable angle."""
LEAN_RAD = 0.52
INNER_LEAN_RAD = -0.92
"""How far a leaf leans from the ring to its outer side, and to the inner one."""
SLIM = 0.36
"""Width of a leaf over its length."""
INNER = 0.8
"""Length of a leaf inside the ring, over that of one outside."""
OFF = 0.16
"""How far beside the ring a leaf begins, as a share of its length."""


def wreath(*, radius: float, leaves: int, leaf_length: float) -> list[Stroke]:
    """Draw a wreath about the origin: two stems of a radius (mm) from the foot up to the top.

    `leaves` counts the pairs on each stem, each `leaf_length` (mm)
    long and leaning toward the open top.
    """
    right = [Stroke("stem", arc(radius, pi - OPEN_RAD / 2, OPEN_RAD))]
    for share in ((np.arange(leaves) + 0.5) / (leaves + 0.6)).tolist():
        at = pi - OPEN_RAD - (pi - 2 * OPEN_RAD) * share
        for lean, size in ((LEAN_RAD, leaf_length), (INNER_LEAN_RAD, INNER * leaf_length)):
            right += leaflet(polar(radius, at), at - pi / 2 + lean, size, SLIM, OFF)
    return [Stroke(each.part, each.line * (side, 1)) for side in (-1, 1) for each in right]
