"""Drawings of the reference: motifs and textures at their default size; how to measure a loaf.

Each shows the origin as a ring, which way is forward, and a size by the key that sets it.
"""

import math
from pathlib import Path

import numpy as np
import shapely

from scorecraft import design
from scorecraft.drawing.picture import Ink, Item, Label, Picture, Shape, box, line, ring
from scorecraft.drawing.plan import on_paper
from scorecraft.language.keys import Key, Word
from scorecraft.loaf.dome import make_loaf
from scorecraft.shelf import Source

HERE = Path(__file__).parent
"""Where the drawing lies that the example of `trace` names."""
PAPER, CUT, SIZE, ORIGIN = "#fffdf8", "#3b2a1b", "#34427a", "#b4513a"
WIDE, HIGH = 72.0, 70.0
LEFT, TOP, ROOM_WIDE, ROOM_HIGH = 15.0, 5.0, 44.0, 40.0
"""Where the figure stands on the paper, mm."""
LETTERS = 3.6
LEAD = Ink(0.2, color=SIZE, dash=(0.8, 1.0), cap="butt")
"""Leads from a figure to its size."""
STRAY = {"motif": 0.05, "texture": 0.15}
"""Points nearer than this (mm on the paper) to a straight line are left out."""
DIGITS = {"motif": 2, "texture": 1}
ACROSS = ("width", "height")
"""Keys that may say how wide a figure is."""


def figure(word: Word) -> Picture:
    """Draw a motif or a texture."""
    lines = strokes(word)
    points = np.concatenate([*lines, np.zeros((1, 2))])
    low, high = points.min(axis=0), points.max(axis=0)
    scale = min(np.array([ROOM_WIDE, ROOM_HIGH]) / np.maximum(high - low, 1e-9))
    middle = np.array([LEFT + ROOM_WIDE / 2, TOP + ROOM_HIGH / 2])
    shift = middle - (low + high) / 2 * scale * np.array([1, -1])
    centre = (float(shift[0]), float(shift[1]))
    drawn = [thinned(on_paper(each, centre, scale), word.group) for each in lines]
    items: tuple[Item, ...] = (
        Shape((box(0, 0, WIDE, HIGH),), closed=True, fill=PAPER),
        Shape(tuple(drawn), ink=Ink(0.5, color=CUT)),
        *origin(centre),
        *forward(),
        *sizes(word, lines, drawn, centre, scale),
    )
    return Picture(WIDE, HIGH, f"{word.name}: {word.help}", said(word), items)


def said(word: Word) -> str:
    """Tell what is to be seen."""
    return f"{written(word).splitlines()[-1]}, its origin as a ring, forward is up"


def written(word: Word) -> str:
    """Write the pattern that draws a word once, on a loaf larger than any figure."""
    if word.group == "texture":
        size = millimetres(next(key for key in word.keys if key.name == "size"))
        wide = min(max(4 * size, 36.0), 72.0)
        statement = f"fill box width {wide:g}mm length {0.8 * wide:g}mm with {word.name}"
    else:
        statement = word.example if any(key.needed for key in word.keys) else word.name
    return f"loaf round width 900mm height 300mm\n{statement}\n"


def strokes(word: Word) -> list[np.ndarray]:
    """Give the strokes of a word at its default sizes, in its own frame (mm)."""
    made = design(Source(f"{word.name}.score", written(word), HERE))
    return [cut.line for cut in made.cuts]


def thinned(points: np.ndarray, group: str = "motif") -> np.ndarray:
    """Leave out points that do not show, and digits of the others."""
    kept = shapely.simplify(shapely.LineString(points), STRAY[group])
    return np.round(shapely.get_coordinates(kept), DIGITS[group])


def origin(centre: tuple[float, float]) -> list[Item]:
    """Mark the origin: a ring with a dot."""
    return [
        Shape((np.round(ring(*centre, 1.3, chord_mm=0.03), 2),), closed=True,
              ink=Ink(0.4, color=ORIGIN)),
        Shape((np.round(ring(*centre, 0.45, chord_mm=0.05), 2),), closed=True, fill=ORIGIN),
    ]  # fmt: skip


def forward() -> list[Item]:
    """Draw the axes of the frame in the lower left corner."""
    x, y = 5.0, HIGH - 5.0
    return [
        Shape((line(x, y, x, y - 8), line(x, y, x + 8, y)), ink=Ink(0.35, color=ORIGIN)),
        head(x, y - 9.5, 0, -1, ORIGIN),
        head(x + 9.5, y, 1, 0, ORIGIN),
        Label("+y forward", (x + 1.8, y - 7.0), LETTERS * 0.9, color=ORIGIN),
        Label("+x", (x + 10.8, y + 1.2), LETTERS * 0.9, color=ORIGIN),
    ]


def head(x: float, y: float, dx: float, dy: float, color: str) -> Shape:
    """Draw an arrowhead with its tip at a point, toward a direction."""
    tip, way = np.array([x, y]), np.array([dx, dy]) / math.hypot(dx, dy)
    side = np.array([-way[1], way[0]])
    corners = np.round([tip, tip - 2.2 * way + 0.9 * side, tip - 2.2 * way - 0.9 * side], 2)
    return Shape((corners,), closed=True, fill=color)


def between(start: tuple[float, float], end: tuple[float, float]) -> list[Item]:
    """Draw a dimension: a line with an arrowhead at either end."""
    (x, y), (u, v) = start, end
    long = math.hypot(u - x, v - y)
    dx, dy = (u - x) / long, (v - y) / long
    inside = line(x + 2 * dx, y + 2 * dy, u - 2 * dx, v - 2 * dy)
    stem = [Shape((np.round(inside, 2),), ink=Ink(0.3, color=SIZE))] if long > 5 else []
    return [*stem, head(x, y, -dx, -dy, SIZE), head(u, v, dx, dy, SIZE)]


def millimetres(key: Key) -> float:
    """Read the default of a key as mm; 0 where it is none."""
    return float(key.default.removesuffix("mm")) if key.default.endswith("mm") else 0.0


def sizes(word, lines, drawn, centre, scale) -> list[Item]:
    """Draw the sizes: the key that sets each, or the bare length where none does."""
    keys = {key.name: millimetres(key) for key in word.keys}
    if word.group == "texture":
        return bar(keys["size"], scale)
    points = np.concatenate(lines)
    wide, high = np.ptp(points, axis=0)
    low, top = np.concatenate(drawn).min(axis=0), np.concatenate(drawn).max(axis=0)
    if abs(points[:, 1].max() - keys.get("radius", 0.0)) < 0.01 * high:
        return radius(keys["radius"], centre, top[0] + 4.0, low[1])
    items = upright(named(keys, ("length",), high), top[0] + 4.0, low[1], top[1])
    if wide > 0.05 * high:
        items += level(named(keys, ACROSS, wide), low[0], top[0], top[1] + 4.0)
    return items


def named(keys: dict[str, float], names: tuple[str, ...], found: float) -> str:
    """Name a length by the key that sets it."""
    name = next((each for each in names if abs(keys.get(each, 0.0) - found) < 0.01 * found), "")
    return f"{name} {found:.0f} mm".strip()


def upright(text: str, x: float, top: float, low: float) -> list[Item]:
    """Draw a dimension from top to bottom, its words along it."""
    label = Label(text, (x + 2.0, (top + low) / 2), LETTERS, "middle", "top", color=SIZE,
                  turn=-math.pi / 2)  # fmt: skip
    return [*between((x, top), (x, low)), label]


def level(text: str, left: float, right: float, y: float) -> list[Item]:
    """Draw a dimension from left to right, its words below it."""
    at = ((left + right) / 2, y + 1.8)
    return [*between((left, y), (right, y)), Label(text, at, LETTERS, "middle", "top", color=SIZE)]


def bar(size: float, scale: float) -> list[Item]:
    """Draw how long the size of a texture is, below it."""
    right = LEFT + ROOM_WIDE
    return level(f"size {size:g} mm", right - size * scale, right, TOP + ROOM_HIGH + 4.0)


def radius(size: float, centre: tuple[float, float], x: float, top: float) -> list[Item]:
    """Draw a radius beside a figure that reaches so far to 12 o'clock, from its origin up."""
    middle, y = centre
    lead = Shape((line(middle + 2.0, y, x + 1.0, y), line(middle, top, x + 1.0, top)), ink=LEAD)
    return [lead, *upright(f"radius {size:g} mm", x, top, y)]


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
