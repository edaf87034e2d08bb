"""An open flower: petals about a heart of seeds."""

from math import pi

from scorecraft.curves import ray, segment, turned
from scorecraft.cuts import Stroke
from scorecraft.motifs.fit import bends, both, reaching

HEART = 0.16
"""Radius of the heart as a share of the flower's."""
FOOT = 0.26
"""Where the petals begin."""
EDGE = (
    ((0.12, FOOT), (0.55, 0.36), (1.0, 0.52), (1.0, 0.74)),
    ((1.0, 0.74), (1.0, 0.92), (0.5, 1.0), (0.0, 0.965)),
)
"""Right edge of a petal, narrow at its foot, round at its tip: in half widths and radii."""
SEEDS = 5


def flower(*, radius: float, petals: int) -> list[Stroke]:
    """Draw a flower about the origin, its petals `radius` (mm) long, the first along +y.

    Each petal is one stroke out and back with a short line in it; the heart is five seeds.
    """
    half = min(0.56 * pi / petals, 0.4) * radius
    edge, line = bends(half, radius, *EDGE), segment((0, 0.42 * radius), (0, 0.7 * radius))
    strokes = []
    for k in range(petals):
        turn = 2 * pi * k / petals
        drawn = [*both("petal", edge), Stroke("line", line)]
        strokes += [Stroke(each.part, turned(each.line, turn)) for each in drawn]
    far = HEART * radius
    for k in range(SEEDS):
        seed = ray(0.3 * far, far, 2 * pi * (k + 0.5) / SEEDS)
        strokes.append(Stroke("seed", seed))
    return reaching(strokes, radius)
