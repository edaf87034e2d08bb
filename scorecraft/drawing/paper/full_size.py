"""A figure at full size with words below it: on one sheet, or spread over several."""

from dataclasses import dataclass

import scorecraft.drawing.paper.panel as panel
from scorecraft.arrays import Line
from scorecraft.drawing.paper.block import Block, gap, paragraph, shifted, stacked
from scorecraft.drawing.paper.cautions import SHEET
from scorecraft.drawing.paper.rulers import WIDTH_MM
from scorecraft.drawing.paper.seams import Crown
from scorecraft.drawing.paper.sheet import A4, Paper, Size, choose
from scorecraft.drawing.paper.telling import spread_words
from scorecraft.drawing.paper.tiles import ink_points, page_map, tile
from scorecraft.drawing.paper.windows import windows
from scorecraft.drawing.picture import Group, Item, Picture, placed
from scorecraft.drawing.text import width_mm
from scorecraft.practice import PRINTER_MARGIN_MM

LEAST_WIDE_MM = 190.0
BETWEEN_MM = 6.0
MAP_HIGH_MM = 110.0


@dataclass(frozen=True, slots=True, eq=False)
class Figure:
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
    figure: Figure,
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
    chosen = choose([_size(figure)], name, home or A4, tiled=tiled, one_sheet=one_sheet)
    if chosen.whole:
        return (_on_sheet(figure, chosen.paper),)
    return _spread(figure, chosen.paper)


def _size(figure: Figure) -> Size:
    """Room that the figure and its words take, mm."""
    wide = max(figure.width_mm, LEAST_WIDE_MM)
    return Size(wide, figure.height_mm + BETWEEN_MM + _words(figure, wide).height)


def _on_sheet(figure: Figure, sheet: Paper) -> Picture:
    """Put the figure in the upper part of a sheet and the words at its foot."""
    margin = PRINTER_MARGIN_MM.value
    block = _words(figure, sheet.printable.width)
    foot = sheet.height_mm - margin - block.height
    left = (sheet.width_mm - figure.width_mm) / 2
    top = margin + max(0.0, (foot - margin - BETWEEN_MM - figure.height_mm) / 2)
    items = (
        Group("figure", tuple(placed(item, left, top) for item in figure.items)),
        Group("words", shifted(block, margin, foot)),
    )
    return _picture(figure, sheet, items)


def _words(figure: Figure, width: float) -> Block:
    """Set the words in two columns: what it is and how to use it; rules and cautions."""
    left = width - WIDTH_MM - 8
    size = next((each for each in (7.0, 6.0, 5.0) if _fits(figure, left, each)), 4.2)
    lines = [paragraph(figure.title, left, size, bold=True), gap(0.8)]
    lines += [paragraph(figure.under, left, panel.BODY_MM), gap(1.5)]
    for text in figure.told:
        lines += [paragraph(text, left, panel.BODY_MM), gap(0.9)]
    right = panel.feet(WIDTH_MM, figure.caution)
    first = stacked(lines)
    items = (*first.items, *shifted(right, left + 8, 0))
    return Block(items, max(first.height, right.height))


def _fits(figure: Figure, width: float, size: float) -> bool:
    return width_mm(figure.title, size, bold=True) <= width


def _spread(figure: Figure, sheet: Paper) -> tuple[Picture, ...]:
    """Make a page of words with a map, and the sheets behind it."""
    margin = PRINTER_MARGIN_MM.value
    whole = Picture(
        figure.width_mm, figure.height_mm, figure.title, figure.under, figure.items, figure.css
    )
    parts = windows(ink_points(whole.items), sheet, figure.crown)
    width = min(sheet.printable.width, 150.0)
    blocks = [paragraph(figure.title, width, 7.0, bold=True), gap(1)]
    blocks += [paragraph(figure.under, width, panel.BODY_MM), gap(3)]
    for text in figure.told:
        blocks += [paragraph(text, width, panel.BODY_MM), gap(1.2)]
    chart = page_map(parts, width, MAP_HIGH_MM, outline=figure.outline)
    spread = spread_words(parts[0].paper.name, len(parts))
    blocks += [gap(3), paragraph(spread, width, panel.BODY_MM), gap(3), chart, gap(6)]
    blocks += [panel.feet(width, figure.caution)]
    page = _picture(figure, sheet, (Group("words", shifted(stacked(blocks), margin, margin)),))
    return (page, *tile(whole, parts))


def _picture(figure: Figure, sheet: Paper, items: tuple[Item, ...]) -> Picture:
    desc = " ".join((figure.under, *figure.told))
    return Picture(sheet.width_mm, sheet.height_mm, figure.title, desc, items, figure.css)
