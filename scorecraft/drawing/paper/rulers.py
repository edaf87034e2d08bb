"""Rules to measure on every print: whether it came out at full size."""

from collections.abc import Sequence
from typing import Literal

from scorecraft.drawing.inks import TICK_INK
from scorecraft.drawing.paper.block import Block
from scorecraft.drawing.paper.telling import SCALE
from scorecraft.drawing.picture import Ink, Item, Label, Layer, Shape, line
from scorecraft.drawing.text import CAP_HEIGHT

RULE_MM = 100.0
RULE_IN = 4
INCH_MM = 25.4
BAR = Ink(0.35, cap="butt")
WIDTH_MM = RULE_IN * INCH_MM
"""Room the two rules take across."""
DIGIT_MM = 2.4


def rulers() -> Block:
    """Draw a 100 mm rule over a 4 in rule, starting at the left edge of the block."""
    caption = Label(SCALE, (0, 2.6), 2.6, bold=True)
    upper, lower = 10.6, 12.0
    items: tuple[Item, ...] = (
        caption,
        Layer("100 mm rule", _rule(upper, -1, RULE_MM, 10.0, 5)),
        Layer("4 in rule", _rule(lower, 1, WIDTH_MM, INCH_MM / 4, 4)),
        *_digits(upper, -1, 10.0, (0, 5, 10), 10, "mm"),
        *_digits(lower, 1, INCH_MM, range(RULE_IN + 1), 1, "in"),
    )
    return Block(items, 18.2)


def _rule(y: float, side: int, length: float, step: float, long_every: int) -> tuple[Item, ...]:
    """Draw the bar and its ticks; `side` -1 has them above the bar."""
    count = round(length / step)
    ticks = tuple(
        line(k * step, y, k * step, y + side * (2.2 if k % long_every == 0 else 1.2))
        for k in range(count + 1)
    )
    return (Shape((line(0, y, length, y),), ink=BAR), Shape(ticks, ink=TICK_INK))


def _digits(
    y: float, side: int, step: float, marks: Sequence[int], worth: int, unit: str
) -> list[Label]:
    """Write numbers at the marks, within the ends of the rule; the last carries the unit."""
    anchors: dict[int, Literal["start", "end"]] = {marks[0]: "start", marks[-1]: "end"}
    drop = 3.0 + (DIGIT_MM * CAP_HEIGHT if side > 0 else 0.0)
    return [
        Label(
            f"{mark * worth} {unit}" if mark == marks[-1] else f"{mark * worth}",
            (mark * step, y + side * drop),
            DIGIT_MM,
            anchor=anchors.get(mark, "middle"),
        )
        for mark in marks
    ]
