"""Blocks of a printed column: each knows its height, and they are stacked below one another."""

from collections.abc import Iterable
from dataclasses import dataclass

from scorecraft.drawing.picture import Item, Label, placed
from scorecraft.drawing.text import shortened, wrapped

LEADING = 1.32
"""Distance of baselines as a part of the letter size."""


@dataclass(frozen=True, slots=True)
class Block:
    """Items drawn from (0, 0) down, and the height they take in mm."""

    items: tuple[Item, ...]
    height: float


def paragraph(
    text: str, width: float, size: float, *, bold: bool = False, most_lines: int | None = None
) -> Block:
    """Set a text in lines no wider than `width` mm, the last of `most_lines` with an ellipsis."""
    lines = wrapped(text, width, size, bold=bold)
    if most_lines is not None and len(lines) > most_lines:
        rest = " ".join(lines[most_lines - 1 :])
        lines = (*lines[: most_lines - 1], shortened(rest, width, size, bold=bold))
    labels = tuple(
        Label(line, (0.0, size + index * size * LEADING), size, bold=bold)
        for index, line in enumerate(lines)
    )
    return Block(labels, len(lines) * size * LEADING)


def gap(height: float) -> Block:
    """Leave an empty space."""
    return Block((), height)


def stacked(blocks: Iterable[Block]) -> Block:
    """Put blocks below one another."""
    items: list[Item] = []
    height = 0.0
    for block in blocks:
        items += [placed(item, 0.0, height) for item in block.items]
        height += block.height
    return Block(tuple(items), height)


def shifted(block: Block, x: float, y: float) -> tuple[Item, ...]:
    """Place a block's upper left corner on the paper."""
    return tuple(placed(item, x, y) for item in block.items)
