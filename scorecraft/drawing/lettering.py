"""Where the letters of a label stand on the paper."""

from math import cos, sin

from scorecraft.drawing.picture import Label
from scorecraft.drawing.text import CAP_HEIGHT, Segment, outline

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
    return tuple(
        [
            (
                op,
                tuple(
                    [
                        (
                            x + (px + along) * c - (py + drop) * s,
                            y + (px + along) * s + (py + drop) * c,
                        )
                        for px, py in points
                    ]
                ),
            )
            for op, points in drawn.segments
        ]
    )
