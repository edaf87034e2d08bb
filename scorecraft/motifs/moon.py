"""A crescent moon of two strokes."""

from math import atan2, pi, sin

from scorecraft.curves import arc
from scorecraft.cuts import Stroke

HORNS = 0.8
"""Half the angle the outer stroke sweeps, in half turns."""


def moon(*, radius: float, width: float) -> list[Stroke]:
    """Draw a waxing moon about the origin: two arcs that meet at its horns, open to the left.

    The outer one has the radius (mm); the moon is `width` (mm) thick in the middle.
    """
    reach = HORNS * pi
    top = sin(reach) * radius  # the horns stand at (horn, +-top)
    horn = radius * -sin(reach - pi / 2)
    outer = arc(radius, pi / 2 - reach, pi / 2 + reach)
    bulge = radius - width - horn  # how far the inner arc bows to the right of the horns
    inner_radius = (bulge**2 + top**2) / (2 * bulge)
    half = 2 * atan2(bulge, top)
    centre = (radius - width - inner_radius, 0.0)
    inner = arc(inner_radius, pi / 2 - half, pi / 2 + half, centre)
    inner[0], inner[-1] = outer[0], outer[-1]
    return [Stroke("outer", outer), Stroke("inner", inner)]
