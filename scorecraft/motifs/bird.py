"""A swallow in flight, seen from above."""

from scorecraft.arrays import Line
from scorecraft.curves import join
from scorecraft.cuts import Stroke
from scorecraft.motifs.fit import bend, both


def bird(*, width: float, length: float) -> list[Stroke]:
    """Draw a swallow about the origin that flies toward +y (mm), `width` from wing to wing."""
    half, high = width / 2, length / 2
    strokes = []
    for part, line in (
        ("head", bend(half, high, (0.0, 1.0), (0.05, 0.88), (0.13, 0.82), (0.12, 0.64))),
        ("wing", bend(half, high, (0.15, 0.55), (0.5, 0.66), (0.86, 0.26), (1.0, -0.5))),
        ("wing", _hind_edge(half, high)),
        ("feather", bend(half, high, (0.25, 0.36), (0.44, 0.36), (0.6, 0.24), (0.75, 0.02))),
        ("tail", bend(half, high, (0.14, -0.12), (0.07, -0.44), (0.2, -0.62), (0.38, -1.0))),
        ("tail", bend(half, high, (0.38, -1.0), (0.2, -0.84), (0.06, -0.68), (0.0, -0.48))),
    ):
        strokes += both(part, line)
    return strokes


def _hind_edge(half: float, high: float) -> Line:
    """Hind edge of the right wing, from its tip to the flank."""
    return join(
        bend(half, high, (0.99, -0.5), (0.86, -0.18), (0.72, 0.0), (0.56, 0.08)),
        bend(half, high, (0.56, 0.08), (0.4, 0.16), (0.24, 0.1), (0.15, -0.04)),
    )
