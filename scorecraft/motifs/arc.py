"""A stroke along a circle."""

from scorecraft import curves
from scorecraft.cuts import Stroke


def arc(*, radius: float, start: float, end: float) -> list[Stroke]:
    """One stroke at a radius (mm) about the origin between two turntable angles (radians)."""
    return [Stroke("arc", curves.arc(radius, start, end))]
