"""A spider's web: spokes, and threads that sag between them."""

from math import pi

import numpy as np

from scorecraft.arrays import Line
from scorecraft.curves import bezier, polar, ray
from scorecraft.cuts import Stroke

HUB = 0.1
"""Where the spokes begin, as a share of the radius."""
FIRST, LAST = 0.32, 0.92
"""Where the innermost and the outermost thread hang, as shares of the radius."""
SAG = 0.13
"""How far a thread hangs in, as a share of its chord."""
SHORT = 0.05
"""A thread ends this share of its chord before each spoke: the fields hold together."""


def web(*, radius: float, spokes: int, threads: int) -> list[Stroke]:
    """Draw a web about the origin: spokes out to `radius` (mm), and rings of sagging threads."""
    turns = 2 * pi * np.arange(spokes) / spokes
    strokes = [Stroke("spoke", ray(HUB * radius, radius, turn)) for turn in turns]
    for share in np.linspace(FIRST, LAST, threads):
        for turn in turns:
            strokes.append(Stroke("thread", _thread(share * radius, turn, 2 * pi / spokes)))
    return strokes


def _thread(radius: float, turn: float, step: float) -> Line:
    """One thread from a spoke to the next, hanging toward the middle."""
    ends = polar(radius, np.array([turn, turn + step]))
    way = ends[1] - ends[0]
    start, end = ends[0] + SHORT * way, ends[1] - SHORT * way
    sag = -polar(1.0, turn + step / 2) * SAG * float(np.hypot(*way)) * 4 / 3
    return bezier(start, start + 0.25 * way + sag, end - 0.25 * way + sag, end)
