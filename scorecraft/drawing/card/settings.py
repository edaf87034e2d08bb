"""Small pictures of the loaf, one for each setting of the table that a row tells together."""

import math

from scorecraft.bench.steps import Run
from scorecraft.bench.telling import mark_words
from scorecraft.drawing.card.loaf import ACCENT, Seen, step_picture
from scorecraft.drawing.picture import Item, Label, Layer, placed
from scorecraft.drawing.text import width_mm
from scorecraft.frozen import dataclass

LABEL = 4.2
"""Height of the line above each picture, at full size."""
FULL = 26.0
"""A picture so large has its label at full size."""
GAP = 2.0
LARGEST = 42.0


@dataclass(frozen=True, slots=True)
class Pictures:
    """Pictures in rows, and the room they take (mm)."""

    layer: Layer
    width: float
    height: float


def settings_pictures(view: Seen, run: Run, width: float, height: float) -> Pictures:
    """Draw every step of a run with where its mark stands, as large as fits, in cutting order."""
    count = len(run.steps)
    lines = max(range(1, count + 1), key=lambda each: _size(count, each, width, height))
    size = _size(count, lines, width, height)
    columns = math.ceil(count / lines)
    label = _label(size)
    items: list[Item] = []
    for k, step in enumerate(run.steps):
        line, column = divmod(k, columns)
        x, y = column * (size + GAP), line * (size + label + GAP / 2)
        items.append(_caption(mark_words(step), x, y, size))
        items.append(placed(step_picture(view, step, size), x, y + label))
    tall = lines * (size + label + GAP / 2) - GAP / 2
    return Pictures(Layer("settings", tuple(items)), columns * (size + GAP) - GAP, tall)


def _size(count: int, lines: int, width: float, height: float) -> float:
    """Find how large pictures in so many lines can be."""
    columns = math.ceil(count / lines)
    wide = (width + GAP) / columns - GAP
    tall = (height + GAP / 2) / lines - GAP / 2
    return min(wide, tall - LABEL, tall / (1 + LABEL / FULL), LARGEST)


def _label(size: float) -> float:
    return LABEL * min(1.0, size / FULL)


def _caption(text: str, x: float, y: float, size: float) -> Label:
    label = _label(size)
    letters = label * min(1.0, size / width_mm(text, label, bold=True))
    return Label(text, (x, y + label * 0.86), letters, bold=True, color=ACCENT)
