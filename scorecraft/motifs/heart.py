"""A heart of two strokes."""

from scorecraft.curves import bezier, join
from scorecraft.cuts import Stroke


def heart(*, width: float, length: float) -> list[Stroke]:
    """Two strokes from the notch over the shoulders down to the point, centred (mm).

    The point lies at (0, -length/2), the shoulders reach to length/2.
    """
    half, low = width / 2, -length / 2
    shoulder = bezier(
        (0, low + 0.8 * length),
        (0.14 * half, low + 0.96 * length),
        (0.36 * half, low + length),
        (0.52 * half, low + length),
    )
    side = bezier(
        (0.52 * half, low + length),
        (0.82 * half, low + length),
        (half, low + 0.86 * length),
        (half, low + 0.67 * length),
    )
    down = bezier(
        (half, low + 0.67 * length),
        (half, low + 0.42 * length),
        (0.38 * half, low + 0.24 * length),
        (0, low),
    )
    edge = join(shoulder, side, down)
    return [Stroke("outline", edge * (way, 1)) for way in (-1, 1)]
