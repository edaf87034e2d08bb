"""A motif or a texture at its default size: its origin, which way is forward, and its sizes.

The origin is a ring, and each size is named by the key that sets it.
"""

import math
from collections.abc import Sequence

import numpy as np
import shapely

from scorecraft.arrays import Line
from scorecraft.drawing.picture import Ink, Item, Label, Picture, Shape, box, line, ring
from scorecraft.drawing.plan import on_paper
from scorecraft.language.keys import Key, Word

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


def figure(word: Word, lines: Sequence[Line]) -> Picture:
    """Draw a motif or a texture by its strokes, (N, 2) in mm in its own frame."""
    points = np.concatenate([*lines, np.zeros((1, 2))])
    low, high = points.min(axis=0), points.max(axis=0)
    scale = float(min(np.array([ROOM_WIDE, ROOM_HIGH]) / np.maximum(high - low, 1e-9)))
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
    """Write the pattern that draws a word once, on a loaf larger than any figure.

    What follows a loaf's rim is drawn on a usual one.
    """
    if word.group == "texture":
        size = millimetres(next(key for key in word.keys if key.name == "size"))
        wide = min(max(4 * size, 36.0), 72.0)
        statement = f"fill box width {wide:g}mm length {0.8 * wide:g}mm with {word.name}"
    else:
        statement = word.example if any(key.needed for key in word.keys) else word.name
    loaf = "width 220mm height 95mm" if word.name == "rim" else "width 900mm height 300mm"
    return f"loaf round {loaf}\n{statement}\n"


def thinned(points: Line, group: str = "motif") -> Line:
    """Leave out points that do not show, and digits of the others."""
    kept = shapely.simplify(shapely.LineString(points), STRAY[group])
    return np.asarray(np.round(shapely.get_coordinates(kept), DIGITS[group]))


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


def sizes(
    word: Word,
    lines: Sequence[Line],
    drawn: Sequence[Line],
    centre: tuple[float, float],
    scale: float,
) -> list[Item]:
    """Draw the sizes: the key that sets each, or the bare length where none does."""
    keys = {key.name: millimetres(key) for key in word.keys}
    if word.group == "texture":
        return bar(keys["size"], scale)
    points = np.concatenate(lines)
    wide, high = np.ptp(points, axis=0)
    low, top = np.concatenate(drawn).min(axis=0), np.concatenate(drawn).max(axis=0)
    if abs(points[:, 1].max() - keys.get("radius", 0.0)) < 0.01 * high:
        return radius(keys["radius"], centre, top[0] + 4.0, low[1])
    items = upright(named(keys, ("length", "height"), high), top[0] + 4.0, low[1], top[1])
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
