"""The guide: the loaf at full size with its cuts, to look at while cutting."""

from collections.abc import Sequence

import shapely

import scorecraft.drawing.guide_panel as words
from scorecraft.bench import Plan, plan
from scorecraft.checks.finding import Finding
from scorecraft.cuts import Layout
from scorecraft.drawing.block import Block, gap, paragraph, shifted, stacked
from scorecraft.drawing.dial import DIAL_MM
from scorecraft.drawing.guide_plan import guide_plan
from scorecraft.drawing.picture import Group, Item, Picture
from scorecraft.drawing.plan import on_paper, rim_plan
from scorecraft.drawing.sheet import A4, Paper, Size, choose, fitting
from scorecraft.drawing.sheet import paper as named
from scorecraft.drawing.tiles import HOW, ink_points, page_map, tile
from scorecraft.drawing.windows import windows
from scorecraft.groups import groups
from scorecraft.loaf.dome import Loaf
from scorecraft.practice import PRINTER_MARGIN_MM

BETWEEN_MM = 8.0
PANEL_MM = (106.0, 136.0)
"""Least and most width of the words beside the loaf."""
PANEL_HIGH_MM = 160.0
"""Least height of the words beside the loaf."""
HEAD_HIGH_MM = 18.0
FOOT_HIGH_MM = 69.0
"""Height of the title above the loaf and of the words below it."""
MAP_HIGH_MM = 60.0
COLUMNS_MM = (90.0, 104.0)
"""Least widths of the two columns below the loaf."""


def guide_pages(
    layout: Layout,
    *,
    tiled: bool = False,
    paper: str | None = None,
    home: Paper | None = None,
    findings: Sequence[Finding] = (),
    opening_mm: Sequence[float] | None = None,
    verdict: str | None = None,
    made: Plan | None = None,
) -> tuple[Picture, ...]:
    """Draw the guide of a layout at full size on one sheet, or `tiled` over several.

    Tiled, the words stand on the first page, with a map of the sheets that follow; where one
    sheet of the paper holds all, there is just that one. The rest is as in `guide`, except that
    `tiled` without a paper takes `home` (A4).
    """
    sheet = named(paper) if paper else home or A4
    if not tiled or fitting(guide_sizes(layout.loaf), [sheet]):
        name = sheet.name if tiled else paper
        return (
            guide(
                layout,
                paper=name,
                home=home,
                findings=findings,
                opening_mm=opening_mm,
                verdict=verdict,
                made=made,
            ),
        )
    told = told_of(layout, made, findings, opening_mm, verdict)
    return tiled_guide(told, sheet)


def told_of(
    layout: Layout,
    made: Plan | None,
    findings: Sequence[Finding],
    opening_mm: Sequence[float] | None,
    verdict: str | None,
) -> words.Told:
    """Gather what the guide says, its numbers and pulls by the plan of the cutting."""
    made = made or plan(layout)
    numbered = groups(layout, made.order)
    return words.Told(layout, numbered, findings, opening_mm, verdict, made.against)


def tiled_guide(told: words.Told, sheet: Paper) -> tuple[Picture, ...]:
    """Set the words on a page of their own and spread the plan over the sheets after it."""
    to_crown, drop, wide, high = drawing_box(told.layout.loaf)
    plan = guide_plan(told.layout, told.groups, (to_crown, drop), told.against)
    title = f"{told.layout.title}: full-size guide"
    whole = Picture(wide, high, title, _described(told), (plan,), css="guide")
    sheets = tile(whole, sheet)
    margin = PRINTER_MARGIN_MM.value
    width = min(sheet.printable.width, PANEL_MM[1])
    parts = windows(ink_points(whole.items), sheet)
    rim = on_paper(rim_plan(told.layout.loaf), (to_crown, drop))
    chart = page_map(parts, width, MAP_HIGH_MM, outline=rim)
    more = [paragraph(HOW, width, words.BODY_MM), gap(3), chart, gap(6)]
    room = sheet.printable.height
    column = column_of_words(told, width, room, room, more)
    items = (Group("words", shifted(column, (sheet.width_mm - width) / 2, margin)),)
    first = Picture(sheet.width_mm, sheet.height_mm, title, whole.desc, items, css="guide")
    return (first, *sheets)


def guide(
    layout: Layout,
    *,
    paper: str | None = None,
    home: Paper | None = None,
    findings: Sequence[Finding] = (),
    opening_mm: Sequence[float] | None = None,
    verdict: str | None = None,
    made: Plan | None = None,
) -> Picture:
    """Draw the guide of a layout at full size on one sheet.

    `paper` is a paper's name; without it the smallest that fits is taken from the family of
    `home` (A4). `opening_mm` is the predicted width of each cut, `made` the plan of the cutting, if
    it is known. Raises UsageError naming a paper that fits where the loaf does not fit on the one
    asked for.
    """
    told = told_of(layout, made, findings, opening_mm, verdict)
    sheet = choose(guide_sizes(layout.loaf), paper, home or A4)
    arrange = _beside if sheet.holds(guide_sizes(layout.loaf)[0]) else _below
    return Picture(
        sheet.width_mm,
        sheet.height_mm,
        f"{layout.title}: full-size guide",
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
        Group("words", shifted(column, x, y)),
    )


def column_of_words(
    told: words.Told, width: float, least: float, most: float, more: Sequence[Block] = ()
) -> Block:
    """Set all words in one column from `least` to `most` mm high, key and cautions at its foot.

    `more` stands between the table and the foot.
    """
    above = stacked(
        [
            words.head(told, width),
            words.notes(told, width, 4),
            gap(5),
            words.verdict(told, width, 3),
        ]
    )
    below = stacked([*more, words.key(told), gap(5), words.feet(width)])
    table = words.cut_table(told, width, most - above.height - below.height - 6)
    spare = min(least, most) - above.height - table.height - below.height
    return stacked([above, table, gap(max(spare, 6)), below])


def _below(told: words.Told, sheet: Paper) -> tuple[Item, ...]:
    """Put the title above the loaf and the words in two columns below it."""
    margin = PRINTER_MARGIN_MM.value
    to_crown, drop, wide, high = drawing_box(told.layout.loaf)
    room = sheet.printable
    title = words.head(told, room.width)
    right = stacked([words.key(told), gap(3), words.feet(COLUMNS_MM[1])])
    left_wide = room.width - COLUMNS_MM[1] - 6
    remark = words.verdict(told, left_wide, 2)
    note = stacked([gap(2), words.notes(told, left_wide, 2)])
    rows = words.cut_table(told, left_wide, FOOT_HIGH_MM - remark.height - note.height)
    left = stacked([remark, rows, note])
    foot = sheet.height_mm - margin - max(right.height, left.height)
    top = margin + title.height + (foot - margin - title.height - high) / 2
    centre = (margin + (room.width - wide) / 2 + to_crown, top + drop)
    return (
        guide_plan(told.layout, told.groups, centre, told.against),
        Group("title", shifted(title, margin, margin)),
        Group("table", shifted(left, margin, foot)),
        Group("key", shifted(right, margin + left_wide + 6, foot)),
    )
