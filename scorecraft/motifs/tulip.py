"""A tulip: a cup of three petals on a stem with two leaves."""

from scorecraft.arrays import Line
from scorecraft.curves import bezier, join
from scorecraft.cuts import Stroke

CUP = 0.52
"""Where the cup stands on the stem, as a share of the length."""


def tulip(*, length: float, width: float) -> list[Stroke]:
    """Draw a tulip from the foot of its stem at the origin to its tip at (0, length), mm.

    The cup is `width` (mm) wide: two outer petals, the point of the middle one, and two long
    leaves.
    """
    half, high = width / 2, (1 - CUP) * length
    foot = CUP * length
    stem = bezier(
        (0, 0), (0.03 * length, 0.18 * length), (-0.02 * length, 0.34 * length), (0, foot - 1.5)
    )
    strokes = [Stroke("stem", stem)]
    for line in (_petal(half, foot, high), _middle(half, foot, high)):
        strokes += [Stroke("petal", line * (side, 1)) for side in (-1, 1)]
    return [*strokes, *(Stroke("leaf", _leaf(side, half, length)) for side in (-1, 1))]


def _petal(half: float, foot: float, high: float) -> Line:
    """Right outer petal: round at the foot, full in the middle, its tip turned out."""
    low = bezier(
        (0.06 * half, foot),
        (0.62 * half, foot + 0.02 * high),
        (1.02 * half, foot + 0.26 * high),
        (0.92 * half, foot + 0.56 * high),
    )
    top = bezier(
        (0.92 * half, foot + 0.56 * high),
        (0.86 * half, foot + 0.74 * high),
        (0.9 * half, foot + 0.86 * high),
        (half, foot + 0.96 * high),
    )
    return join(low, top)


def _middle(half: float, foot: float, high: float) -> Line:
    """Right edge of the middle petal, from its tip down into the cup."""
    return bezier(
        (0, foot + high),
        (0.32 * half, foot + 0.84 * high),
        (0.52 * half, foot + 0.62 * high),
        (0.4 * half, foot + 0.34 * high),
    )


def _leaf(side: int, half: float, length: float) -> Line:
    """One leaf: a long stroke from the stem's foot, bending out and up."""
    reach = (0.46 if side > 0 else 0.4) * length
    return bezier(
        (side * 0.1 * half, 0.02 * length),
        (side * 0.55 * half, 0.06 * length),
        (side * 0.9 * half, 0.6 * reach),
        (side * 0.72 * half, reach),
    )
