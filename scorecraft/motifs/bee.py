"""A bee from above."""

from scorecraft.arrays import Line
from scorecraft.curves import bezier, join
from scorecraft.cuts import Stroke
from scorecraft.motifs.fit import bend, bends, both, fitted

STRIPES = (0.42, 0.29, 0.16)
"""Heights of the stripes, as shares of the length."""
SIDE = (
    ((0.0, 0.0), (0.7, 0.08), (1.1, 0.22), (1.0, 0.38)),
    ((1.0, 0.38), (0.92, 0.5), (0.5, 0.52), (0.62, 0.6)),
)
"""Right side of the body, from the sting up to the waist and over the breast."""
Tip = tuple[float, float, float]
"""Heights of the bend of a wing's hind edge and of its tip, and how far out: all as shares."""


def bee(*, length: float, width: float) -> list[Stroke]:
    """Draw a bee from its sting at (0, -length/2) to its head, centred (mm).

    `width` is from wing tip to wing tip.
    """
    half = 0.17 * length
    pairs = [
        ("body", bends(half, length, *SIDE)),
        ("wing", _wing(length, width, (0.6, 0.69), (0.5, 0.86, 0.98))),
        ("wing", _wing(length, width, (0.52, 0.56), (0.42, 0.5, 0.72))),
        ("feeler", bend(half, length, (0.14, 0.95), (0.2, 1.02), (0.5, 1.08), (0.75, 1.04))),
    ]
    strokes = [stroke for part, line in pairs for stroke in both(part, line)]
    for height in STRIPES:
        wide = 0.72 * half * (1 - 5.5 * (height - 0.34) ** 2)
        y = height * length
        stripe = bezier(
            (-wide, y), (-0.5 * wide, y - 0.05 * length), (0.5 * wide, y - 0.05 * length), (wide, y)
        )
        strokes.append(Stroke("stripe", stripe))
    head = bend(half, length, (-0.62, 0.78), (-0.7, 0.97), (0.7, 0.97), (0.62, 0.78))
    strokes.append(Stroke("head", head))
    return fitted(strokes, width, length, -length / 2)


def _wing(length: float, width: float, root: tuple[float, float], tip: Tip) -> Line:
    """Right wing: a stroke out along its front edge and back to its root, heights as shares."""
    x, side = 0.13 * length, width / 2
    low, high = root[0] * length, root[1] * length
    shoulder, top, far = tip[0] * length, tip[1] * length, tip[2] * side
    rise = 0.06 * length
    return join(
        bezier(
            (x, high),
            (x + 0.3 * (side - x), top + rise),
            (far - 0.1 * side, top + rise),
            (far, top),
        ),
        bezier((far, top), (far + 0.08 * side, top - 0.8 * rise), (0.5 * side, shoulder), (x, low)),
    )
