"""The guide: the loaf at full size with its cuts, to look at while cutting."""

from collections.abc import Sequence

import shapely

import scorecraft.drawing.paper.panel as words
from scorecraft.drawing.guide.dial import DIAL_MM
from scorecraft.drawing.guide.plan import guide_plan
from scorecraft.drawing.paper.block import Block, gap, stacked
from scorecraft.drawing.paper.cautions import edges
from scorecraft.drawing.paper.full_size import spread
from scorecraft.drawing.paper.hands import hands_block
from scorecraft.drawing.paper.sheet import A4, PAPERS, Paper, Size, choose, fitting
from scorecraft.drawing.paper.telling import NOT_LISTED
from scorecraft.drawing.picture import Item, Layer, Picture
from scorecraft.drawing.picture import words as texts
from scorecraft.drawing.plan import on_paper, rim_plan
from scorecraft.loaf.dome import Loaf
from scorecraft.practice import PRINTER_MARGIN_MM

BETWEEN_MM = 8.0
PANEL_MM = (106.0, 136.0)
"""Least and most width of the words beside the loaf."""
PANEL_HIGH_MM = 160.0
"""Least height of the words beside the loaf."""
LETTERS_MM = (4.6, 4.2, 3.8, 3.5, words.BODY_MM)
"""Sizes of the letters of what is read at the bench: the largest that fits; no less than 9 pt."""
HEAD_HIGH_MM = 18.0
FOOT_HIGH_MM = 69.0
"""Height of the title above the loaf and of the words below it."""
MAP_HIGH_MM = 60.0
HANDS_HIGH_MM = 130.0
"""Most height of the dough as hands make it after the cuts."""
COLUMNS_MM = (90.0, 104.0)
"""Least widths of the two columns below the loaf."""


def guide_pages(
    told: words.Told,
    *,
    paper: str | None = None,
    home: Paper | None = None,
    tiled: bool = False,
    one_sheet: bool = False,
) -> tuple[Picture, ...]:
    """Draw a guide at full size, on one sheet where one holds it.

    `paper` is a paper's name; without it the smallest that fits is taken from the family of
    `home` (A4). A loaf too large for it, or for the home paper `tiled`, is spread over several
    sheets behind a page of words with a map of them; without a paper `one_sheet` makes one sheet
    as large as it has to be instead.
    """
    sizes = guide_sizes(told.layout.loaf)
    chosen = choose(sizes, paper, home or A4, tiled=tiled, one_sheet=one_sheet)
    return (guide(told, chosen.paper),) if chosen.whole else tiled_guide(told, chosen.paper)


def tiled_guide(told: words.Told, sheet: Paper) -> tuple[Picture, ...]:
    """Set the words on a page of their own and spread the plan over the sheets after it."""
    to_crown, drop, wide, high = drawing_box(told.layout.loaf)
    crown = (to_crown, drop)
    plan = guide_plan(told.layout, told.groups, crown, told.against)
    title = f"{told.layout.title}: full-size guide"
    whole = Picture(wide, high, title, _described(told), (plan,), css="guide")
    margin = PRINTER_MARGIN_MM.value
    width = min(sheet.printable.width, PANEL_MM[1])
    rim = on_paper(rim_plan(told.layout.loaf), crown)
    more, sheets = spread(whole, sheet, crown, rim, Size(width, MAP_HIGH_MM))
    room = sheet.printable.height
    column = column_of_words(told, width, room, room, more)
    items = (Layer("words", column.shifted((sheet.width_mm - width) / 2, margin)),)
    first = Picture(sheet.width_mm, sheet.height_mm, title, whole.desc, items, css="guide")
    return (first, *sheets)


def guide(told: words.Told, sheet: Paper) -> Picture:
    """Draw the guide on one sheet that holds it in one of its sizes."""
    arrange = _beside if sheet.holds(guide_sizes(told.layout.loaf)[0]) else _below
    return Picture(
        sheet.width_mm,
        sheet.height_mm,
        f"{told.layout.title}: full-size guide",
        _described(told),
        arrange(told, sheet),
        css="guide",
    )


def guide_sizes(loaf: Loaf) -> tuple[Size, Size]:
    """Give the room a guide needs (mm): with its words beside the loaf, and below it."""
    _, _, wide, high = drawing_box(loaf)
    beside = Size(wide + BETWEEN_MM + PANEL_MM[0], max(high, PANEL_HIGH_MM))
    below = Size(max(wide, sum(COLUMNS_MM) + 6), HEAD_HIGH_MM + high + FOOT_HIGH_MM)
    return beside, below


def one_sheet_paper(loaf: Loaf, home: Paper) -> Paper | None:
    """Find the smallest paper that holds a loaf's guide on one sheet, of the home family first."""
    near = sorted(PAPERS, key=lambda each: each.family != home.family)
    return fitting(guide_sizes(loaf), near)


def drawing_box(loaf: Loaf) -> tuple[float, float, float, float]:
    """Measure the plan with its ring: crown from the left, crown from the top, width, height."""
    left, low, right, high = shapely.buffer(shapely.Polygon(rim_plan(loaf)), DIAL_MM).bounds
    return -left, high, right - left, high - low


def _described(told: words.Told) -> str:
    """Say what is on the sheet for who cannot see it."""
    cuts = "; ".join(
        f"{group.number}: {group.count} {group.key}, {group.length_mm:.0f} mm long, "
        f"{group.depth_mm:.3g} mm deep"
        for group in told.groups
    )
    return f"Plan of the loaf from above with its cuts. {cuts}."


def _beside(told: words.Told, sheet: Paper) -> tuple[Item, ...]:
    """Put the loaf on the left and the words in a column on the right."""
    margin = PRINTER_MARGIN_MM.value
    to_crown, drop, wide, high = drawing_box(told.layout.loaf)
    room = sheet.printable
    panel = min(PANEL_MM[1], room.width - wide - BETWEEN_MM)
    slack = room.width - wide - BETWEEN_MM - panel
    top = (sheet.height_mm - high) / 2
    centre = (margin + slack / 3 + to_crown, top + drop)
    column = column_of_words(told, panel, high, room.height)
    x = sheet.width_mm - margin - panel - slack / 3
    y = (sheet.height_mm - column.height) / 2
    return (
        guide_plan(told.layout, told.groups, centre, told.against),
        Layer("words", column.shifted(x, y)),
    )


def column_of_words(
    told: words.Told, width: float, least: float, most: float, more: Sequence[Block] = ()
) -> Block:
    """Set all words in one column from `least` to `most` mm high, in the largest letters that fit.

    Key and cautions stand at its foot, `more` between them and the table.
    """
    columns = (_column(told, width, least, most, more, size) for size in LETTERS_MM)
    return best_fitting([*columns], most)


def best_fitting(blocks: Sequence[Block], most: float) -> Block:
    """Choose the first block that is at most `most` mm high and cuts no more words than the last.

    The last one where none does.
    """
    fewest = _cut_short(blocks[-1])
    fits = (each for each in blocks if each.height <= most and _cut_short(each) <= fewest)
    return next(fits, blocks[-1])


def _cut_short(block: Block) -> int:
    """Count the texts that end in an ellipsis or tell of rows without room."""
    return sum(text.endswith(("…", NOT_LISTED)) for text in texts(block.items))


def _column(
    told: words.Told,
    width: float,
    least: float,
    most: float,
    more: Sequence[Block],
    size: float,
) -> Block:
    """Set the column in letters of a size (mm)."""
    above = stacked(
        [
            words.head(told, width, size),
            words.notes(told, width, 4, size),
            gap(5),
            words.verdict(told, width, 3, size),
        ]
    )
    below = stacked([*more, *_foot(told, width, 5, size)])
    table = words.cut_table(told, width, most - above.height - below.height - 6, size)
    spare = min(least, most) - above.height - table.height - below.height
    hands = hands_block(told.layout, told.groups, width, min(spare - 14, HANDS_HIGH_MM), size)
    spare -= hands.height
    return stacked([above, table, gap(max(spare, 6) / 2), hands, gap(max(spare, 6) / 2), below])


def _below(told: words.Told, sheet: Paper) -> tuple[Item, ...]:
    """Put the title above the loaf and the words in two columns below it."""
    margin = PRINTER_MARGIN_MM.value
    to_crown, drop, wide, high = drawing_box(told.layout.loaf)
    room = sheet.printable
    title = words.head(told, room.width)
    deep = room.height - title.height - high - 2
    left_wide = room.width - COLUMNS_MM[1] - 6
    feet = (_foot(told, COLUMNS_MM[1], 3, size) for size in LETTERS_MM)
    right = best_fitting([stacked(each) for each in feet], deep)
    left = best_fitting([_left(told, left_wide, deep, size) for size in LETTERS_MM], deep)
    foot = sheet.height_mm - margin - max(right.height, left.height)
    top = margin + title.height + (foot - margin - title.height - high) / 5
    centre = (margin + (room.width - wide) / 2 + to_crown, top + drop)
    return (
        guide_plan(told.layout, told.groups, centre, told.against),
        Layer("title", title.shifted(margin, margin)),
        Layer("table", left.shifted(margin, foot)),
        Layer("key", right.shifted(margin + left_wide + 6, foot)),
    )


def _foot(told: words.Told, width: float, space: float, size: float) -> list[Block]:
    """Set the key in letters of a size (mm), and below a space rules and cautions."""
    feet = words.feet(width, edges=edges(told.layout.cuts))
    return [words.key(told, width, size), gap(space), feet]


def _left(told: words.Told, width: float, most: float, size: float) -> Block:
    """Set verdict, table and notes in letters of a size (mm), at most so high."""
    remark = words.verdict(told, width, 2, size)
    note = stacked([gap(2), words.notes(told, width, 2, size)])
    rows = words.cut_table(told, width, most - remark.height - note.height, size)
    hands = stacked([remark, rows, note, gap(3)])
    room = most - hands.height
    return stacked([hands, hands_block(told.layout, told.groups, width, room, size)])
