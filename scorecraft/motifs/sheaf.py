"""A sheaf of wheat, tied in its waist."""

import numpy as np

from scorecraft.arrays import Line
from scorecraft.curves import bezier, polar, turned
from scorecraft.cuts import Stroke
from scorecraft.motifs.fit import fitted

WAIST = 0.36
"""Height of the tie as a share of the length."""
TIE = 0.032
"""Half the gap that the stalks leave for the tie, as a share of the length."""
NARROW = 0.24
"""Width at the waist, and how wide the feet spread, as shares of the width."""
FEET = 0.56
EAR = 0.72
"""Where the lowest grains stand on a stalk, as a share of its way from the waist."""


def sheaf(*, length: float, width: float, ears: int, grains: int) -> list[Stroke]:
    """Draw a sheaf from its feet at the origin to its middle ear's tip at (0, length), mm.

    The `ears` fan out `width` (mm) wide, each with `grains` pairs of grains; two strokes tie it.
    """
    strokes = []
    for place in np.linspace(-1, 1, ears) if ears > 1 else np.zeros(1):
        strokes += _ear(float(place), length, width, grains)
    for height in (WAIST - 0.7 * TIE, WAIST + 0.7 * TIE):
        strokes.append(Stroke("tie", _tie(height * length, width)))
    return fitted(strokes, width, length, 0.0)


def _ear(place: float, length: float, width: float, grains: int) -> list[Stroke]:
    """One stalk from its foot to the tie and on to its tip, and its grains; `place` is -1 to 1."""
    waist = 0.5 * NARROW * width * place
    low = WAIST - 3 * TIE, WAIST + 2 * TIE
    foot = bezier(
        (0.5 * FEET * width * place, 0.03 * length * place**2),
        (0.34 * FEET * width * place, 0.14 * length),
        (waist, 0.22 * length),
        (waist, low[0] * length),
    )
    top = length * (1 - 0.13 * place**2)
    stalk = bezier(
        (waist, low[1] * length),
        (1.3 * waist, 0.5 * length),
        (0.3 * width * place, 0.62 * top),
        (0.43 * width * place, 0.9 * top),
    )
    strokes = [Stroke("stalk", foot), Stroke("stalk", stalk)]
    size = 0.092 * length
    for share in np.linspace(EAR, 0.96, grains).tolist():
        at, heading = _along(stalk, share)
        for side in (-1, 1):
            line = at + turned(_grain(size, side), heading)
            strokes.append(Stroke("grain", line))
    at, heading = _along(stalk, 1.0)
    tip = at + polar(np.array([0.35, 1.25]) * size, heading)
    return [*strokes, Stroke("grain", tip)]


def _along(line: Line, share: float) -> tuple[Line, float]:
    """Give a point of a line at a share of its points, and where it heads (turntable radians)."""
    index = min(round(share * (len(line) - 1)), len(line) - 2)
    step = line[index + 1] - line[index]
    return line[index] if share < 1 else line[-1], float(np.arctan2(*step))


def _grain(size: float, side: int) -> Line:
    """One grain: a bowed stroke beside the stalk."""
    x, y = side * size, size
    return bezier((0.16 * x, 0), (0.34 * x, 0.2 * y), (0.46 * x, 0.5 * y), (0.47 * x, y))


def _tie(y: float, width: float) -> Line:
    """One stroke across the waist, hanging a little."""
    half = 0.5 * NARROW * width * 1.35
    return bezier((-half, y), (-0.4 * half, y - 0.06 * width), (0.4 * half, y - 0.06 * width),
                  (half, y))  # fmt: skip
