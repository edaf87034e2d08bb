"""Tins: what holds the sides of a pan loaf, and the sizes they are sold in."""

from scorecraft.frozen import dataclass
from scorecraft.practice import TIN_CROWN


@dataclass(frozen=True, slots=True)
class Tin:
    """What holds a pan loaf: its inside length and depth, and how high the dough stands in it.

    `wall_mm` is the height of the dough's straight sides when it is scored; all are mm.
    """

    length_mm: float
    depth_mm: float
    wall_mm: float


@dataclass(frozen=True, slots=True)
class Pan:
    """A tin by its common name: inside measures across the top (mm), and the dough it takes (g)."""

    name: str
    says: str
    width_mm: float
    length_mm: float
    depth_mm: float
    dough_g: tuple[float, float]


PANS = {
    pan.name: pan
    for pan in (
        Pan("half_pound", "a small tin, 1/2 lb", 72, 135, 50, (220, 300)),
        Pan("one_pound", "a 1 lb tin", 90, 155, 60, (400, 520)),
        Pan("two_pound", "a 2 lb tin", 110, 210, 72, (800, 1050)),
        Pan("us_one_pound", "an 8 1/2 x 4 1/2 in loaf pan", 114, 216, 70, (700, 950)),
        Pan("us_large", "a 9 x 5 in loaf pan", 127, 229, 70, (900, 1150)),
        Pan("pullman_small", "a 9 x 4 in straight-sided pan", 102, 229, 102, (1000, 1350)),
        Pan("pullman", "a 13 x 4 in straight-sided pan", 102, 330, 102, (1450, 1950)),
    )
}
"""Tins by name; makers differ by some millimetres."""


def filled_tin(width_mm: float, length_mm: float, height_mm: float) -> Tin:
    """Give the tin of a loaf that fills it to the rim, the usual crown above it (mm)."""
    wall = max(height_mm - TIN_CROWN.value * width_mm, height_mm / 2)
    return Tin(length_mm, wall, wall)
