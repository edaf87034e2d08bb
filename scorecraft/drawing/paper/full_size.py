"""A figure at full size with words below it: on one sheet, or spread over several."""

import scorecraft.drawing.paper.panel as panel
from scorecraft.arrays import Line
from scorecraft.drawing.paper.block import Block, beside, gap, paragraph, paragraphs, stacked
from scorecraft.drawing.paper.cautions import SHEET
from scorecraft.drawing.paper.rulers import WIDTH_MM
from scorecraft.drawing.paper.seams import Crown
from scorecraft.drawing.paper.sheet import A4, Paper, Size, choose
from scorecraft.drawing.paper.telling import SPREAD
from scorecraft.drawing.paper.tiles import ink_points, page_map, tile
from scorecraft.drawing.paper.windows import windows
from scorecraft.drawing.picture import Item, Layer, Picture, placed
from scorecraft.drawing.text import largest
from scorecraft.frozen import dataclass
from scorecraft.practice import PRINTER_MARGIN_MM

LEAST_WIDE_MM = 190.0
BETWEEN_MM = 6.0
MAP_HIGH_MM = 110.0
TITLE_MM = (7.0, 6.0, 5.0, 4.2)


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
        Layer("words", block.shifted(margin, foot)),
    )
    return _picture(made, sheet, items)


def _words(made: FullSize, width: float) -> Block:
    """Set the words in two columns: what it is and how to use it; rules and cautions."""
    left = width - WIDTH_MM - 8
    size = largest(made.title, left, TITLE_MM)
    lines = [paragraph(made.title, left, size, bold=True), gap(0.8)]
    lines += [paragraph(made.under, left, panel.BODY_MM), gap(1.5)]
    lines += paragraphs(made.told, left, panel.BODY_MM, 0.9)
    return beside([stacked(lines), panel.feet(WIDTH_MM, made.caution)], left + 8)


def _spread(made: FullSize, sheet: Paper) -> tuple[Picture, ...]:
    """Make a page of words with a map, and the sheets behind it."""
    margin = PRINTER_MARGIN_MM.value
    whole = Picture(made.width_mm, made.height_mm, made.title, made.under, made.items, made.css)
    width = min(sheet.printable.width, 150.0)
    blocks = [paragraph(made.title, width, 7.0, bold=True), gap(1)]
    blocks += [paragraph(made.under, width, panel.BODY_MM), gap(3)]
    room = Size(width, MAP_HIGH_MM)
    said, sheets = spread(whole, sheet, made.crown, made.outline, room)
    blocks += [*paragraphs(made.told, width, panel.BODY_MM, 1.2), gap(3), *said]
    blocks += [panel.feet(width, made.caution)]
    page = _picture(made, sheet, (Layer("words", stacked(blocks).shifted(margin, margin)),))
    return (page, *sheets)


def spread(
    whole: Picture, sheet: Paper, crown: Crown | None, outline: Line, room: Size
) -> tuple[list[Block], tuple[Picture, ...]]:
    """Spread a picture over sheets: how many, with a map that fits in a room; and they."""
    parts = windows(ink_points(whole.items), sheet, crown)
    told = SPREAD.format(paper=sheet.name, sheets=len(parts))
    chart = page_map(parts, *room, outline=outline)
    said = [paragraph(told, room.width, panel.BODY_MM), gap(3), chart, gap(6)]
    return said, tile(whole, parts)


def _picture(made: FullSize, sheet: Paper, items: tuple[Item, ...]) -> Picture:
    desc = " ".join((made.under, *made.told))
    return Picture(sheet.width_mm, sheet.height_mm, made.title, desc, items, made.css)
