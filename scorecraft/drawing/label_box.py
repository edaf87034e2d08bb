"""The room that a label takes on the paper."""

import numpy as np

from scorecraft.arrays import Line
from scorecraft.drawing.lettering import ANCHORS, LEVELS
from scorecraft.drawing.picture import Label
from scorecraft.drawing.text import CAP_HEIGHT, width_mm

DESCENT = 0.24
"""How far letters such as g reach below the baseline, as a part of the size: DejaVu Sans."""


def label_box(label: Label, *, descent: float = DESCENT) -> Line:
    """Give the four corners of a label's letters (mm), turned as it is.

    It reaches from the top of a capital to `descent` (of the size) below the baseline.
    """
    wide = width_mm(label.text, label.size, bold=label.bold)
    left, base = ANCHORS[label.anchor] * wide, LEVELS[label.level] * label.size
    top, low = base - CAP_HEIGHT * label.size, base + descent * label.size
    corners = np.array([[left, top], [left + wide, top], [left + wide, low], [left, low]])
    c, s = np.cos(label.turn), np.sin(label.turn)
    laid: Line = corners @ np.array([[c, s], [-s, c]]) + np.array(label.at)
    return laid
