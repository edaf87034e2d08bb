"""A full circle."""

from math import pi

from scorecraft.curves import arc
from scorecraft.cuts import Stroke


def ring(*, radius: float) -> list[Stroke]:
    """One closed stroke at a radius (mm) about the origin, clockwise from +y."""
    return [Stroke("ring", arc(radius, 0, 2 * pi))]
