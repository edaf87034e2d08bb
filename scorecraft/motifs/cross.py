"""Two strokes at right angles."""

from scorecraft.curves import segment
from scorecraft.cuts import Stroke


def cross(*, length: float, width: float) -> list[Stroke]:
    """Two strokes through the origin: `length` (mm) along +y, `width` (mm) along +x."""
    return [
        Stroke("bar", segment((0, -length / 2), (0, length / 2))),
        Stroke("bar", segment((-width / 2, 0), (width / 2, 0))),
    ]
