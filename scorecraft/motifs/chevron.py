"""A V of two strokes."""

from scorecraft.curves import segment
from scorecraft.cuts import Stroke


def chevron(*, length: float, width: float) -> list[Stroke]:
    """Two strokes from the tip at (0, length/2) back to the ends of the arms (mm), centred."""
    tip, back = (0, length / 2), -length / 2
    return [Stroke("arm", segment(tip, (side * width / 2, back))) for side in (-1, 1)]
