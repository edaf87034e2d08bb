"""The dough as hands have pulled it open or laid its pieces aside: small, beside what they do."""

from collections.abc import Sequence

import numpy as np
import shapely

from scorecraft.arrays import Line
from scorecraft.cuts import Layout
from scorecraft.drawing.paper.block import Block, gap, paragraph, stacked
from scorecraft.drawing.paper.telling import hands_words
from scorecraft.drawing.picture import Ink, Item, Layer, Shape, placed
from scorecraft.drawing.plan import on_paper
from scorecraft.groups import Group
from scorecraft.loaf.areas import rims_of
from scorecraft.shaping.shaped import Shaped, shaped

DOUGH = "#ececec"
LINE = Ink(0.4)
BETWEEN = 5.0
MOST_WIDE = 0.45
"""The figure takes no more of the width than this; the words have the rest."""
LEAST_HIGH = 14.0
"""A figure less high (mm) shows nothing."""


def hands_block(
    layout: Layout, numbered: Sequence[Group], width: float, height: float, letters: float
) -> Block:
    """Set the shaped dough beside what hands do, in `width` by at most `height` mm.

    Nothing where hands leave the dough alone, or where there is no room.
    """
    found = shaped(layout)
    if found is None or height < LEAST_HIGH:
        return gap(0)
    title, told = hands_words(layout, numbered, found.size_mm)
    figure, wide, high = hands_figure(found, MOST_WIDE * width, height)
    left = wide + BETWEEN
    room = width - left
    head = paragraph(title, room, letters, bold=True)
    text = stacked([head, paragraph(told, room, letters)])
    tall = max(high, text.height)
    if tall > height:
        return gap(0)
    items = (placed(figure, 0, (tall - high) / 2), *text.shifted(left, (tall - text.height) / 2))
    return Block((Layer("hands", items),), tall)


def hands_figure(found: Shaped, width: float, height: float) -> tuple[Item, float, float]:
    """Draw shaped dough as large as fits from (0, 0), 12 o'clock up; give its width and height."""
    left, low, right, high = found.area.bounds
    scale = min(width / (right - left), height / (high - low))
    corner = (-left * scale, high * scale)

    def laid(area: shapely.Geometry) -> Shape:
        rings: list[Line] = [
            on_paper(np.asarray(ring), corner, scale)
            for part in shapely.get_parts(area)
            for ring in rims_of(shapely.simplify(part, 0.1 / scale))
        ]
        return Shape(tuple(rings), closed=True, ink=LINE, fill=DOUGH)

    bodies = tuple(laid(slab.area) for slab in reversed(found.slabs))
    return Layer("shaped", bodies), (right - left) * scale, (high - low) * scale
