"""Drawings of the reference: motifs and textures at their default size; how to measure a loaf."""

import math
from functools import cache
from pathlib import Path

import numpy as np

from scorecraft import design
from scorecraft.drawing import figure as drawings
from scorecraft.drawing.figure import CUT, LEAD, ORIGIN, PAPER, SIZE, between, thinned, written
from scorecraft.drawing.picture import Ink, Item, Label, Picture, Shape, box, line, ring
from scorecraft.drawing.plan import on_paper
from scorecraft.language.keys import Word
from scorecraft.loaf.dome import make_loaf
from scorecraft.shelf import Source

HERE = Path(__file__).parent
"""Where the drawing lies that the example of `trace` names."""


@cache
def strokes(word: Word) -> list[np.ndarray]:
    """Give the strokes of a word at its default sizes, in its own frame (mm)."""
    made = design(Source(f"{word.name}.score", written(word), HERE))
    return [cut.line for cut in made.cuts]


@cache
def figure(word: Word) -> Picture:
    """Draw a motif or a texture."""
    return drawings.figure(word, strokes(word))


def measure_your_loaf() -> Picture:
    """Draw an oval loaf from above and from its end, with what is measured on it."""
    loaf = make_loaf("oval", 66.0, 96.0, 36.0)
    items = [
        Shape((box(0, 0, 200, 124),), closed=True, fill=PAPER),
        *from_above(loaf, (57.0, 62.0)),
        *from_the_end(loaf, (150.0, 84.0)),
    ]
    desc = (
        "A loaf from above with its width across and its length away from you, and from its end "
        "with its height from the bench to the crown and its reach: the way over the dough from "
        "the crown to the bench, measured with a tape."
    )
    return Picture(200.0, 124.0, "Measure your loaf", desc, tuple(items))


def dough(points: np.ndarray) -> Shape:
    return Shape((points,), closed=True, ink=Ink(0.6, color="#8f6a35"), fill="#e9cc98")


def caption(text: str, x: float, y: float, *, bold: bool = False, color: str = CUT) -> Label:
    return Label(text, (x, y), 4.6 if bold else 3.8, "middle", "middle", bold, color)


def from_above(loaf, centre: tuple[float, float]) -> list[Item]:
    x, y = centre
    rim = thinned(on_paper(loaf.outline.points(360), centre))
    left, top, right, low = x - 33, y - 48, x + 33, y + 48
    tape = x - 33 - 12
    return [
        dough(rim),
        Shape((line(tape - 3, top, x, top), line(tape - 3, low, x, low)), ink=LEAD),
        *between((tape, top), (tape, low)),
        Label("length", (tape - 2.0, y), 4.6, "middle", "baseline", True, SIZE, -math.pi / 2),
        *between((left, y), (right, y)),
        caption("width", x, y - 4.2, bold=True, color=SIZE),
        caption("12 o'clock, away from you", x, top - 5),
        caption("you", x, low + 5.5),
    ]


def from_the_end(loaf, foot: tuple[float, float]) -> list[Item]:
    x, y = foot
    across = np.sin(np.linspace(-math.pi / 2, math.pi / 2, 121)) * 33.0
    up = loaf.height_at(np.column_stack([across, np.zeros_like(across)]))
    dome = np.column_stack([x + across, y - up])
    over = outward(dome[60:], 1.6)
    over[-1, 1] = y - 0.8
    tape = x - 33 - 9
    return [
        dough(thinned(dome)),
        Shape((line(x - 46, y, x + 46, y),), ink=Ink(0.7, color="#675a4c")),
        Shape((line(tape - 3, y - 36, x, y - 36),), ink=LEAD),
        *between((tape, y - 36), (tape, y - 0.4)),
        Label("height", (tape - 2.0, y - 18), 4.6, "middle", "baseline", True, SIZE, -math.pi / 2),
        Shape((thinned(over),), ink=Ink(1.4, color=ORIGIN)),
        Shape((np.round(ring(float(over[0, 0]), float(over[0, 1]), 1.5, chord_mm=0.03), 2),),
              closed=True, fill=ORIGIN),
        caption("reach", x + 35, y - 34, bold=True, color=ORIGIN),
        caption("with a tape over the dough,", x, y + 8),
        caption("from the crown to the bench", x, y + 13.4),
        caption("from the end", x, y - 57),
    ]  # fmt: skip


def outward(points: np.ndarray, far: float) -> np.ndarray:
    """Shift a line that runs to the right and down so far to its upper side."""
    steps = np.gradient(points, axis=0)
    out = np.column_stack([steps[:, 1], -steps[:, 0]])
    return points + far * out / np.hypot(*out.T)[:, None]
