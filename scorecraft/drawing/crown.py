"""The mark under which the crown of the loaf lies, alike on every print."""

from scorecraft.arrays import Line
from scorecraft.drawing.inks import HAIR_INK
from scorecraft.drawing.picture import Layer, Shape, line, ring

Centre = tuple[float, float]


def crown_mark(centre: Centre) -> Layer:
    """Mark the crown: a small cross in a circle."""
    x, y = centre
    return Layer(
        "crown",
        (
            Shape(crown_cross(centre), ink=HAIR_INK),
            Shape((ring(x, y, 1.6),), closed=True, ink=HAIR_INK),
        ),
    )


def crown_cross(centre: Centre) -> tuple[Line, Line]:
    """Give the two arms of the crown's cross (paper mm)."""
    x, y = centre
    return line(x - 3.5, y, x + 3.5, y), line(x, y - 3.5, x, y + 3.5)
