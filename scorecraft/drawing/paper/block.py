"""Blocks of a printed column: each knows its height, and they are stacked below one another."""

from collections.abc import Iterable, Sequence

from scorecraft.drawing.picture import Ink, Item, Label, Shape, line, placed
from scorecraft.drawing.text import shortened, wrapped
from scorecraft.frozen import dataclass

LEADING = 1.32
"""Distance of baselines as a part of the letter size."""


@dataclass(frozen=True, slots=True)
class Block:
    """Items drawn from (0, 0) down, and the height they take in mm."""

    items: tuple[Item, ...]
    height: float

    def shifted(self, x: float, y: float) -> tuple[Item, ...]:
        """Place its upper left corner on the paper."""
        return tuple(placed(item, x, y) for item in self.items)

    def barred(self, left: float, wide: float, top: float, above_foot: float = 0.0) -> "Block":
        """Set it `left` mm to the right of a bar, `wide`, from `top` to so far above its foot."""
        ends = line(wide / 2, top, wide / 2, self.height - above_foot)
        bar = Shape((ends,), ink=Ink(wide, cap="butt"))
        return Block((bar, *self.shifted(left, 0.0)), self.height)


def paragraph(
    text: str, width: float, size: float, *, bold: bool = False, most_lines: int | None = None
) -> Block:
    """Set a text in lines no wider than `width` mm, the last of `most_lines` with an ellipsis."""
    lines = wrapped(text, width, size, bold=bold)
    if most_lines is not None and len(lines) > most_lines:
        rest = " ".join(lines[most_lines - 1 :])
        lines = (*lines[: most_lines - 1], shortened(rest, width, size, bold=bold))
    labels = tuple(
        Label(each, (0.0, size + index * size * LEADING), size, bold=bold)
        for index, each in enumerate(lines)
    )
    return Block(labels, len(lines) * size * LEADING)


def paragraphs(texts: Iterable[str], width: float, size: float, after: float) -> list[Block]:
    """Set texts, with an empty space (mm) after each."""
    return [part for text in texts for part in (paragraph(text, width, size), gap(after))]


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


def beside(blocks: Sequence[Block], step: float) -> Block:
    """Put blocks beside one another, each so far (mm) from the one before it."""
    items = [item for k, each in enumerate(blocks) for item in each.shifted(k * step, 0.0)]
    return Block(tuple(items), max(each.height for each in blocks))
