"""Predicted against measured openings: where the model is right, points lie on the line."""

import math
from collections.abc import Sequence

import numpy as np

from scorecraft.drawing.picture import BLACK, Ink, Item, Label, Layer, Picture, Shape, line, ring
from scorecraft.drawing.text import shortened

SIZE_MM = 120.0
"""Side of the plot's square."""
LEFT, TOP, RIGHT, BOTTOM = 18.0, 16.0, 8.0, 18.0
GRID = Ink(0.13, color="#bbbbbb", cap="butt")
POINT_MM = 1.3
TICKS = 6


def tune_plot(pairs: Sequence[tuple[float, float]], title: str, note: str = "") -> Picture:
    """Plot (measured, predicted) widths in mm, with the line where they are equal."""
    most = max([1.0, *(value for pair in pairs for value in pair)])
    step = _step(most / TICKS)
    top = step * math.ceil(most / step * 1.02)
    items: list[Item] = [
        Label(shortened(title, SIZE_MM, 5.0, bold=True), (LEFT, 8.0), 5.0, bold=True),
        Label(shortened(note, SIZE_MM, 3.0), (LEFT, 12.8), 3.0),
        *_axes(top, step),
        Shape((np.array([_at(0, 0, top), _at(top, top, top)]),), ink=Ink(0.35, dash=(2.0, 1.2))),
        Layer("openings", tuple(_point(pair, top) for pair in pairs)),
    ]
    return Picture(
        LEFT + SIZE_MM + RIGHT,
        TOP + SIZE_MM + BOTTOM,
        title,
        f"{len(pairs)} openings, predicted against measured width in mm",
        tuple(items),
        css="tune",
    )


def _step(about: float) -> float:
    """Round a distance of ticks up to 1, 2 or 5 times a power of ten."""
    power = 10.0 ** math.floor(math.log10(about))
    return next(each * power for each in (1, 2, 5, 10) if each * power >= about - 1e-9)


def _at(measured: float, predicted: float, top: float) -> tuple[float, float]:
    return (LEFT + SIZE_MM * measured / top, TOP + SIZE_MM * (1 - predicted / top))


def _point(pair: tuple[float, float], top: float) -> Shape:
    x, y = _at(*pair, top)
    title = f"measured {pair[0]:.1f} mm, predicted {pair[1]:.1f} mm"
    return Shape(
        (ring(x, y, POINT_MM),), closed=True, ink=Ink(0.3), fill=BLACK, fill_opacity=0.25,
        title=title,
    )  # fmt: skip


def _axes(top: float, step: float) -> list[Item]:
    items: list[Item] = []
    for k in range(round(top / step) + 1):
        value = k * step
        x, y = _at(value, value, top)
        items.append(Shape((line(x, TOP, x, TOP + SIZE_MM),), ink=GRID))
        items.append(Shape((line(LEFT, y, LEFT + SIZE_MM, y),), ink=GRID))
        text = f"{value:g}"
        items.append(Label(text, (x, TOP + SIZE_MM + 4.5), 3.2, anchor="middle"))
        items.append(Label(text, (LEFT - 2.0, y), 3.2, anchor="end", level="middle"))
    middle = LEFT + SIZE_MM / 2
    across = Label("measured, mm", (middle, TOP + SIZE_MM + 12.0), 3.8, anchor="middle")
    up = Label("predicted, mm", (5.5, TOP + SIZE_MM / 2), 3.8, anchor="middle", turn=-math.pi / 2)
    return [*items, across, up]
