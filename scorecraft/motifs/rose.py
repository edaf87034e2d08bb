"""A rose from above: petals that lap over one another around a wound heart."""

from math import pi

import numpy as np

from scorecraft.arrays import Line
from scorecraft.curves import polar, sample
from scorecraft.cuts import Stroke
from scorecraft.motifs.fit import reaching

RINGS = ((0.4, 3, 0.5), (0.68, 4, 0.2), (0.97, 5, 0.75))
"""Middle radius (share of the rose's), petals, and turn (in petals) of each ring."""
HEART = 0.2
LAP = 0.14
"""How far a petal reaches over its neighbour, as a share of a petal."""


def rose(*, radius: float) -> list[Stroke]:
    """Draw a rose about the origin with an outer radius (mm): a spiral and three rings of arcs."""
    strokes = [Stroke("heart", sample(lambda t: _heart(t, radius), 0, 1))]
    for share, petals, turn in RINGS:
        for k in range(petals):
            start = 2 * pi * (k + turn) / petals
            sweep = 2 * pi * (1 + LAP) / petals
            strokes.append(Stroke("petal", _petal(share * radius, start, sweep, petals)))
    return reaching(strokes, radius)


def _heart(t: Line, radius: float) -> Line:
    """Wind outward once and a half."""
    return polar(radius * HEART * (0.12 + 0.88 * t), -3 * pi * (1 - t))


def _petal(radius: float, start: float, sweep: float, petals: int) -> Line:
    """One petal: it begins under its neighbour, bulges, and ends drawn in over the next."""
    bulge = 0.055 + 0.17 / petals

    def edge(t: Line) -> Line:
        out = 1 - 1.15 * bulge + 1.15 * bulge * np.sin(pi * t) - 0.13 * t**3
        return polar(radius * out, start + sweep * t)

    return sample(edge, 0, 1)
