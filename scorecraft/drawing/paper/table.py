"""A calm table: a head, hairlines between the rows, numbers set to the right."""

from collections.abc import Mapping, Sequence
from itertools import accumulate
from typing import Literal

from scorecraft.drawing.inks import FRAME_INK
from scorecraft.drawing.paper.block import Block
from scorecraft.drawing.picture import Ink, Item, Label, Shape, line, placed
from scorecraft.drawing.text import CAP_HEIGHT, shortened, wrapped
from scorecraft.frozen import dataclass, replace

LEAST_MM = 3.2
"""9 pt: the least letter for what is read at the bench."""
ROW_LINE = Ink(0.13, color="#808080", cap="butt")


@dataclass(frozen=True, slots=True)
class Column:
    """A column: its head (may be several lines), its width in mm, and how its cells are set."""

    head: str
    width: float
    align: Literal["start", "end"] = "end"
    bold: bool = False


Cell = str | Item
"""A text, or something drawn from (0, 0) at the middle left of the cell."""


def table(
    columns: Sequence[Column],
    rows: Sequence[Mapping[str, Cell]],
    *,
    size: float,
    row_height: float,
) -> Block:
    """Set rows (cells by the head of their column) under the heads of the columns."""
    width = sum(column.width for column in columns)
    head_size = max(LEAST_MM, size * 0.82)
    heads = [wrapped(column.head, column.width, head_size) for column in columns]
    head_height = max(len(lines) for lines in heads) * head_size * 1.2 + 1.2
    lefts = list(accumulate((column.width for column in columns[:-1]), initial=0.0))
    items: list[Item] = []
    for column, left, lines in zip(columns, lefts, heads, strict=True):
        for index, text in enumerate(reversed(lines)):
            y = head_height - 1.6 - index * head_size * 1.2
            items.append(_text(text, replace(column, bold=False), left, y, head_size))
    items.append(Shape((line(0, head_height, width, head_height),), ink=FRAME_INK))
    for number, row in enumerate(rows):
        top = head_height + number * row_height
        for column, left in zip(columns, lefts, strict=True):
            items += _cell(row.get(column.head), column, left, top + row_height / 2, size)
        below = line(0, top + row_height, width, top + row_height)
        items.append(Shape((below,), ink=ROW_LINE))
    return Block(tuple(items), head_height + len(rows) * row_height)


def _cell(
    cell: Cell | None, column: Column, left: float, middle: float, size: float
) -> Sequence[Item]:
    if isinstance(cell, str):
        text = shortened(cell, column.width - 1, size, bold=column.bold)
        return [_text(text, column, left, middle + size * CAP_HEIGHT / 2, size)]
    return [placed(cell, left, middle)] if cell else []


def _text(text: str, column: Column, left: float, y: float, size: float) -> Label:
    x = left if column.align == "start" else left + column.width
    return Label(text, (x, y), size, anchor=column.align, bold=column.bold)
