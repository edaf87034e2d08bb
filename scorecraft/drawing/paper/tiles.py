"""A drawing larger than the paper, spread over several sheets that are laid together.

Neighbouring sheets share a strip. A sheet is trimmed along its frame where it lies on the one
before it, left of it or above it: the half crosses on the trimmed edge then complete the crosses
on the sheet below.
"""

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
import shapely

from scorecraft.arrays import Line
from scorecraft.drawing.inks import HAIR_INK
from scorecraft.drawing.label_box import label_box
from scorecraft.drawing.paper.block import Block, gap, paragraph, stacked
from scorecraft.drawing.paper.cautions import TILE
from scorecraft.drawing.paper.rulers import WIDTH_MM, rulers
from scorecraft.drawing.paper.telling import JOIN
from scorecraft.drawing.paper.windows import FOOT_MM, Window
from scorecraft.drawing.picture import (
    BLACK,
    Ink,
    Item,
    Label,
    Layer,
    Picture,
    Shape,
    box,
    line,
    placed,
    ring,
    walk,
)
from scorecraft.practice import PRINTER_MARGIN_MM

FRAME = Ink(0.25, cap="butt", join="miter")
CROSS_MM = 4.0
"""Half the span of a register cross."""
INSET_MM = 14.0
"""How far from the ends of a shared edge its two crosses stand."""
NAME_MM = 7.0
APART_MM = 1.0


def tile(picture: Picture, parts: Sequence[Window]) -> tuple[Picture, ...]:
    """Spread a picture over sheets at full size, a window each, in the order they are laid down."""
    return tuple(_sheet(picture, parts, window) for window in parts)


def ink_points(items: Sequence[Item]) -> Line:
    """Collect points (N, 2; mm) about 1 mm apart on all that is drawn; boxes of the labels."""
    rings = []
    for item in walk(items):
        if isinstance(item, Shape):
            whole = [np.vstack([each, each[:1]]) if item.closed else each for each in item.lines]
            rings += [each for each in whole if len(each) > 1]
        elif isinstance(item, Label):
            corners = label_box(item)
            rings.append(np.vstack([corners, corners[:1]]))
    if not rings:
        return np.empty((0, 2))
    lines = np.array([shapely.linestrings(each) for each in rings])
    lengths = shapely.length(lines)
    counts = np.ceil(lengths / APART_MM).astype(int) + 1
    part = np.concatenate([np.linspace(0.0, 1.0, count) for count in counts])
    points = shapely.line_interpolate_point(np.repeat(lines, counts), part, normalized=True)
    found: Line = shapely.get_coordinates(points)
    return found


def _sheet(picture: Picture, parts: Sequence[Window], window: Window) -> Picture:
    """Draw one sheet: its part of the picture, frame, crosses and foot."""
    margin = PRINTER_MARGIN_MM.value
    dx, dy = margin - window.x, margin - window.y
    frame = box(window.x, window.y, *window.size)
    drawn = Layer(f"part {window.name}", within(picture.items, window), clip=(frame,))
    crosses = Layer("register crosses", tuple(register_crosses(parts, window)), clip=(frame,))
    edge = Shape((frame,), closed=True, ink=FRAME)
    paper = window.paper
    return Picture(
        paper.width_mm,
        paper.height_mm,
        f"{picture.title}, sheet {window.name}",
        f"Part {window.name} of {len(parts)}. {picture.desc}",
        (
            *(placed(item, dx, dy) for item in (drawn, edge, crosses)),
            Layer("foot", foot(parts, window)),
        ),
        css=picture.css,
    )


def within(items: Sequence[Item], window: Window) -> tuple[Item, ...]:
    """Keep the items that may show in a window; groups keep their names."""
    kept: list[Item] = []
    for item in items:
        if isinstance(item, Layer):
            inside = within(item.items, window)
            kept += [replace(item, items=inside)] if inside else []
        elif _touches(item, window):
            kept.append(item)
    return tuple(kept)


def _touches(item: Shape | Label, window: Window) -> bool:
    """Compare boxes, with room for the width of the ink."""
    points = label_box(item) if isinstance(item, Label) else np.concatenate(item.lines)
    reach = item.ink.width if isinstance(item, Shape) and item.ink else 0.0
    low, high = points.min(axis=0) - reach, points.max(axis=0) + reach
    begins = low <= (window.right, window.bottom)
    return bool(np.all(begins & (high >= (window.x, window.y))))


def register_crosses(parts: Sequence[Window], window: Window) -> list[Shape]:
    """Draw the crosses a window shares with its neighbours, in the drawing's own mm."""
    crosses = []
    for index, one in enumerate(parts):
        for other in parts[index + 1 :]:
            if window.name in (one.name, other.name):
                crosses += [_cross(*at) for at in shared_marks(one, other)]
    return crosses


def shared_marks(one: Window, other: Window) -> list[tuple[float, float]]:
    """Find where two neighbours share crosses: on the edge of the one that lies on top."""
    left, right = max(one.x, other.x), min(one.right, other.right)
    top, bottom = max(one.y, other.y), min(one.bottom, other.bottom)
    wide, high = right - left, bottom - top
    if wide <= 0 or high <= 0 or max(wide, high) < 2 * INSET_MM:
        return []
    if wide > high:
        return [(left + INSET_MM, top), (right - INSET_MM, top)]
    return [(left, top + INSET_MM), (left, bottom - INSET_MM)]


def _cross(x: float, y: float) -> Shape:
    arms = (line(x - CROSS_MM, y, x + CROSS_MM, y), line(x, y - CROSS_MM, x, y + CROSS_MM))
    circle = ring(x, y, CROSS_MM / 2)
    return Shape((*arms, np.vstack([circle, circle[:1]])), ink=HAIR_INK)


def foot(parts: Sequence[Window], window: Window) -> tuple[Item, ...]:
    """Set the sheet's name, the map of all sheets, how to join them, and the rules to measure.

    Beside them it says what must not touch the dough.
    """
    margin = PRINTER_MARGIN_MM.value
    top = window.paper.height_mm - margin - FOOT_MM + 1.8
    right = window.paper.width_mm - margin
    name = Label(window.name, (margin, top + NAME_MM), NAME_MM, bold=True)
    of = Label(f"of {len(parts)}", (margin, top + NAME_MM + 4), 2.8)
    chart = page_map(parts, 26.0, FOOT_MM - 3, this=window.name)
    items: list[Item] = [name, of, *chart.shifted(margin + 18, top + 0.5)]
    start = right - WIDTH_MM
    room = start - margin - 18 - 26 - 8
    words = stacked([paragraph(JOIN, room, 2.5), gap(1.0), paragraph(TILE, room, 2.5, bold=True)])
    items += words.shifted(margin + 18 + 26 + 4, top)
    return (*items, *rulers().shifted(start, top))


def page_map(
    parts: Sequence[Window],
    wide: float,
    high: float,
    *,
    this: str = "",
    outline: Line | None = None,
) -> Block:
    """Draw a small map of the sheets within a box (mm): one of them black, or all with names.

    With an `outline` (closed, in the drawing's mm) the map shows it, and the names.
    """
    left, top = min(part.x for part in parts), min(part.y for part in parts)
    spans = max(part.right for part in parts) - left, max(part.bottom for part in parts) - top
    factor = min(wide / spans[0], high / spans[1])
    items: list[Item] = []
    if outline is not None:
        small = (outline - (left, top)) * factor
        items.append(Shape((small,), closed=True, fill="#e4e4e4"))
    for part in parts:
        x, y = (part.x - left) * factor, (part.y - top) * factor
        size = part.size.width * factor, part.size.height * factor
        fill = BLACK if part.name == this else None
        items.append(Shape((box(x, y, *size),), closed=True, ink=HAIR_INK, fill=fill))
        if outline is not None:
            middle = (x + size[0] / 2, y + size[1] / 2)
            items.append(Label(part.name, middle, 4.0, anchor="middle", level="middle", bold=True))
    return Block(tuple(items), spans[1] * factor)
