"""Where the letters of a label stand on the paper."""

from math import cos, sin

from scorecraft.drawing.picture import Label
from scorecraft.drawing.text import CAP_HEIGHT, Point, Segment, outline

LEVELS = {"baseline": 0.0, "middle": CAP_HEIGHT / 2, "top": CAP_HEIGHT}
"""How far below `at` the baseline runs, as a part of the size."""
ANCHORS = {"start": 0.0, "middle": -0.5, "end": -1.0}
"""Where the text begins along its line, as a part of its width."""


def letters(label: Label) -> tuple[Segment, ...]:
    """Return the outlines of a label, set at its anchor and turned: mm on the paper, y down.

    They are filled by the nonzero rule.
    """
    drawn = outline(label.text, label.size, bold=label.bold)
    along = ANCHORS[label.anchor] * drawn.width_mm
    drop = LEVELS[label.level] * label.size
    (x, y), c, s = label.at, cos(label.turn), sin(label.turn)

    def laid(point: Point) -> Point:
        across, down = point[0] + along, point[1] + drop
        return x + across * c - down * s, y + across * s + down * c

    return tuple([(op, tuple(map(laid, points))) for op, points in drawn.segments])
