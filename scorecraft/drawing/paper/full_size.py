"""A figure at full size with words below it: on one sheet, or spread over several."""

from dataclasses import dataclass

import scorecraft.drawing.paper.panel as panel
from scorecraft.arrays import Line
from scorecraft.drawing.paper.block import Block, gap, paragraph, shifted, stacked
from scorecraft.drawing.paper.cautions import SHEET
from scorecraft.drawing.paper.rulers import WIDTH_MM
from scorecraft.drawing.paper.seams import Crown
from scorecraft.drawing.paper.sheet import A4, Paper, Size, choose
from scorecraft.drawing.paper.telling import SPREAD
from scorecraft.drawing.paper.tiles import ink_points, page_map, tile
from scorecraft.drawing.paper.windows import windows
from scorecraft.drawing.picture import Item, Layer, Picture, placed
from scorecraft.drawing.text import width_mm
from scorecraft.practice import PRINTER_MARGIN_MM

LEAST_WIDE_MM = 190.0
BETWEEN_MM = 6.0
MAP_HIGH_MM = 110.0


@dataclass(frozen=True, slots=True, eq=False)
class FullSize:
    """What is drawn at full size, from (0, 0) down; and what is said about it.

    `outline` is its edge, for the map of the sheets; `told` are the paragraphs below the title
    and the line `under` it, in the order of their weight; `caution` is what it says of itself as
    a thing near dough. Seams keep off the `crown`.
    """

    items: tuple[Item, ...]
    outline: Line
    width_mm: float
    height_mm: float
    title: str
    under: str
    told: tuple[str, ...]
    css: str
    crown: Crown | None = None
    caution: str = SHEET


def full_size_pages(
    made: FullSize,
    *,
    name: str | None = None,
    home: Paper | None = None,
    tiled: bool = False,
    one_sheet: bool = False,
) -> tuple[Picture, ...]:
    """Lay a figure out on the paper of a `name`, or on the smallest of the home's family.

    Where it does not fit, it is spread over sheets of that paper, `tiled` of the home paper, behind
    a page of words; without a name `one_sheet` makes one sheet as large as it has to be instead.
    """
    chosen = choose([_size(made)], name, home or A4, tiled=tiled, one_sheet=one_sheet)
    if chosen.whole:
        return (_on_sheet(made, chosen.paper),)
    return _spread(made, chosen.paper)


def _size(made: FullSize) -> Size:
    """Room that the figure and its words take, mm."""
    wide = max(made.width_mm, LEAST_WIDE_MM)
    return Size(wide, made.height_mm + BETWEEN_MM + _words(made, wide).height)


def _on_sheet(made: FullSize, sheet: Paper) -> Picture:
    """Put the figure in the upper part of a sheet and the words at its foot."""
    margin = PRINTER_MARGIN_MM.value
    block = _words(made, sheet.printable.width)
    foot = sheet.height_mm - margin - block.height
    left = (sheet.width_mm - made.width_mm) / 2
    top = margin + max(0.0, (foot - margin - BETWEEN_MM - made.height_mm) / 2)
    items = (
        Layer("figure", tuple(placed(item, left, top) for item in made.items)),
        Layer("words", shifted(block, margin, foot)),
    )
    return _picture(made, sheet, items)


def _words(made: FullSize, width: float) -> Block:
    """Set the words in two columns: what it is and how to use it; rules and cautions."""
    left = width - WIDTH_MM - 8
    size = next((each for each in (7.0, 6.0, 5.0) if _fits(made, left, each)), 4.2)
    lines = [paragraph(made.title, left, size, bold=True), gap(0.8)]
    lines += [paragraph(made.under, left, panel.BODY_MM), gap(1.5)]
    for text in made.told:
        lines += [paragraph(text, left, panel.BODY_MM), gap(0.9)]
    right = panel.feet(WIDTH_MM, made.caution)
    first = stacked(lines)
    items = (*first.items, *shifted(right, left + 8, 0))
    return Block(items, max(first.height, right.height))


def _fits(made: FullSize, width: float, size: float) -> bool:
    return width_mm(made.title, size, bold=True) <= width


def _spread(made: FullSize, sheet: Paper) -> tuple[Picture, ...]:
    """Make a page of words with a map, and the sheets behind it."""
    margin = PRINTER_MARGIN_MM.value
    whole = Picture(made.width_mm, made.height_mm, made.title, made.under, made.items, made.css)
    parts = windows(ink_points(whole.items), sheet, made.crown)
    width = min(sheet.printable.width, 150.0)
    blocks = [paragraph(made.title, width, 7.0, bold=True), gap(1)]
    blocks += [paragraph(made.under, width, panel.BODY_MM), gap(3)]
    for text in made.told:
        blocks += [paragraph(text, width, panel.BODY_MM), gap(1.2)]
    chart = page_map(parts, width, MAP_HIGH_MM, outline=made.outline)
    spread = SPREAD.format(paper=parts[0].paper.name, sheets=len(parts))
    blocks += [gap(3), paragraph(spread, width, panel.BODY_MM), gap(3), chart, gap(6)]
    blocks += [panel.feet(width, made.caution)]
    page = _picture(made, sheet, (Layer("words", shifted(stacked(blocks), margin, margin)),))
    return (page, *tile(whole, parts))


def _picture(made: FullSize, sheet: Paper, items: tuple[Item, ...]) -> Picture:
    desc = " ".join((made.under, *made.told))
    return Picture(sheet.width_mm, sheet.height_mm, made.title, desc, items, made.css)
