"""A swallow in flight, seen from above."""

from scorecraft.cuts import Stroke
from scorecraft.motifs.fit import Drawn, halves

RIGHT: tuple[Drawn, ...] = (
    ("head", ((0.0, 1.0), (0.05, 0.88), (0.13, 0.82), (0.12, 0.64))),
    ("wing", ((0.15, 0.55), (0.5, 0.66), (0.86, 0.26), (1.0, -0.5))),
    (
        "wing",
        ((0.99, -0.5), (0.86, -0.18), (0.72, 0.0), (0.56, 0.08)),
        ((0.56, 0.08), (0.4, 0.16), (0.24, 0.1), (0.15, -0.04)),
    ),
    ("feather", ((0.25, 0.36), (0.44, 0.36), (0.6, 0.24), (0.75, 0.02))),
    ("tail", ((0.14, -0.12), (0.07, -0.44), (0.2, -0.62), (0.38, -1.0))),
    ("tail", ((0.38, -1.0), (0.2, -0.84), (0.06, -0.68), (0.0, -0.48))),
)
"""Its right half, the wing's hind edge third; shares of half the width and half the length."""


def bird(*, width: float, length: float) -> list[Stroke]:
    """Draw a swallow about the origin that flies toward +y (mm), `width` from wing to wing."""
    return halves(width / 2, length / 2, RIGHT)
