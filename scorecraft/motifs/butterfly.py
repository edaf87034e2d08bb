"""A butterfly with its wings spread."""

from scorecraft.curves import segment
from scorecraft.cuts import Stroke
from scorecraft.motifs.fit import Drawn, fitted, halves

RIGHT: tuple[Drawn, ...] = (
    (
        "wing",
        ((0.07, 0.3), (0.24, 0.62), (0.6, 0.92), (0.9, 0.86)),
        ((0.9, 0.86), (1.06, 0.82), (1.0, 0.5), (0.88, 0.26)),
        ((0.88, 0.26), (0.76, 0.04), (0.44, 0.02), (0.09, 0.06)),
    ),
    (
        "wing",
        ((0.09, -0.06), (0.36, -0.1), (0.66, -0.12), (0.72, -0.4)),
        ((0.72, -0.4), (0.78, -0.68), (0.58, -0.98), (0.42, -0.94)),
        ((0.42, -0.94), (0.26, -0.9), (0.14, -0.56), (0.07, -0.3)),
    ),
    ("line", ((0.2, 0.3), (0.36, 0.44), (0.5, 0.56), (0.66, 0.64))),
    ("line", ((0.2, 0.18), (0.38, 0.22), (0.52, 0.26), (0.66, 0.28))),
    ("line", ((0.17, -0.2), (0.28, -0.32), (0.36, -0.42), (0.42, -0.58))),
    ("feeler", ((0.03, 0.6), (0.08, 0.8), (0.16, 0.94), (0.3, 1.0))),
)
"""Its right half, the upper wing first; shares of half the width and half the length."""


def butterfly(*, width: float, length: float) -> list[Stroke]:
    """Draw a butterfly about the origin, its head toward +y (mm): body, wings, lines, feelers."""
    high = length / 2
    body = Stroke("body", segment((0, 0.5 * high), (0, -0.55 * high)))
    return fitted([body, *halves(width / 2, high, RIGHT)], width, length, -high)
