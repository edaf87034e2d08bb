"""What stands above and below the steps of the bench card."""

from scorecraft.bench.batch import Batch, batch_of
from scorecraft.bench.steps import Work
from scorecraft.bench.telling import batch_words
from scorecraft.cuts import Layout
from scorecraft.drawing.card.loaf import ACCENT
from scorecraft.drawing.card.telling import (
    INTO_THE_OVEN,
    before,
    done,
    oven,
    recipe_first,
    time_words,
)
from scorecraft.drawing.paper.block import Block, beside, gap, paragraph, paragraphs, stacked
from scorecraft.drawing.paper.cautions import OVEN, SHEET, edges
from scorecraft.drawing.paper.telling import loaf_words
from scorecraft.drawing.picture import Ink, Item, Label, Shape, box, line
from scorecraft.drawing.text import largest, width_mm, wrapped

TITLE = (11.0, 9.5, 8.0, 6.5)
BODY = 3.9
SMALL = 3.2
BOX, BOX_GAP, BOARD_GAP = 5.0, 1.6, 3.4
"""A box to tick for each loaf, the gap between two, and what is added between boards (mm)."""
GREY = "#555555"


def head(layout: Layout, made: Work, width: float, *, page: str = "") -> Block:
    """Set the title with the loaf, and the time."""
    size = largest(layout.title, width - 30, TITLE)
    late = made.effort.seconds > made.allowed_s
    lines = wrapped(layout.title, width - 30, size, bold=True) or ("",)
    items: list[Item] = [
        Label(line, (0.0, size * (0.86 + 1.2 * k)), size, bold=True) for k, line in enumerate(lines)
    ]
    items.append(Label(page, (width, size * 0.86), BODY, anchor="end", color=GREY))
    loaf, time = loaf_words(layout.loaf, ""), time_words(made)
    y = size * (0.86 + 1.2 * (len(lines) - 1)) + BODY * 1.6
    items.append(Label(loaf, (0.0, y), BODY, color=GREY))
    fits = width_mm(loaf, BODY) + 2 * BODY + width_mm(time, BODY, bold=late) <= width
    y += 0.0 if fits else 1.4 * BODY
    items.append(
        Label(time, (width if fits else 0.0, y), BODY, anchor="end" if fits else "start",
              bold=late, color=ACCENT if late else GREY)
    )  # fmt: skip
    return Block(tuple(items), y + 2.4)


def preparation(layout: Layout, made: Work, width: float) -> Block:
    """Set what comes before the first cut: how to begin, the pattern's own notes, the caution."""
    texts = [*before(layout, made), *layout.notes]
    batch = batch_of(made)
    column = (width - 8) / 2
    half = (len(texts) + 1) // 2
    parts = [paragraphs(each, column, 3.4, 1.0) for each in (texts[:half], texts[half:])]
    both = beside([stacked(each) for each in parts], column + 8)
    counted = [gap(1.5), tally(batch, width), gap(1.0)] if batch else []
    return stacked([both, *counted, gap(1.0), caution(edges(layout.cuts), width)])


def tally(batch: Batch, width: float) -> Block:
    """Set what a batch takes, and a box to tick for every loaf, board by board."""
    words = [paragraph(text, width, BODY) for text in batch_words(batch)]
    boxes: list[Item] = []
    x = y = 0.0
    for loaves in batch.boards:
        for _ in range(loaves):
            if x + BOX > width:
                x, y = 0.0, y + BOX + BOX_GAP
            boxes.append(Shape((box(x, y, BOX, BOX),), closed=True, ink=Ink(0.3)))
            x += BOX + BOX_GAP
        x += BOARD_GAP if batch.boards[0] > 1 else 0.0
    return stacked([*words, gap(1.2), Block(tuple(boxes), y + BOX)])


def caution(text: str, width: float) -> Block:
    """Set a caution at the size of the text around it, beside a bar."""
    return paragraph(text, width - 4.0, BODY, bold=True).barred(4.0, 1.2, 0.6)


def foot(layout: Layout, width: float) -> Block:
    """Set the last step: the caution of the oven, its steps in columns, when it is done."""
    ways = oven(layout)
    column = (width - 8 * (len(ways) - 1)) / len(ways)
    sides = beside([_oven(name, steps, column) for name, steps in ways], column + 8)
    above = [stage(INTO_THE_OVEN, width), gap(1.5), caution(OVEN, width), gap(1.5)]
    first = paragraph(recipe_first(layout), width, BODY)
    ready = paragraph(done(), width, BODY, bold=True)
    below = [gap(1.5), ready, gap(1.5), paragraph(SHEET, width, SMALL)]
    return stacked([*above, first, gap(1.5), sides, *below])


def _oven(name: str, steps: tuple[str, ...], width: float) -> Block:
    lines = [paragraph(step, width, BODY) for step in steps]
    return stacked([paragraph(name, width, 4.6, bold=True), *lines])


def stage(words: str, width: float) -> Block:
    """Set the name of a pass over a rule."""
    rule = Shape((line(0, 0, width, 0),), ink=Ink(0.5, cap="butt"))
    label = Label(words, (0.0, 5.6), 4.4, bold=True)
    return Block((rule, label), 6.8)


def hairline(width: float) -> Block:
    """Part two rows."""
    return Block((Shape((line(0, 0, width, 0),), ink=Ink(0.15, color="#999999")),), 0.0)
