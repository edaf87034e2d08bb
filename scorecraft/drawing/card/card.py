"""The bench card: the order of cuts to stand by the loaf, read at arm's length."""

from collections.abc import Sequence

import scorecraft.drawing.card.words as words
from scorecraft.bench.steps import Run, Work
from scorecraft.bench.telling import STAGES
from scorecraft.cuts import Layout
from scorecraft.drawing.card.loaf import Seen, seen
from scorecraft.drawing.card.row import hands_row, marks_row, step_row
from scorecraft.drawing.card.telling import DESCRIBED, HANDS_LAST, STRINGS_FIRST
from scorecraft.drawing.paper.block import Block, gap, stacked
from scorecraft.drawing.paper.sheet import A4, Paper
from scorecraft.drawing.paper.sheet import paper as find_paper
from scorecraft.drawing.picture import Picture, placed
from scorecraft.frozen import dataclass, replace
from scorecraft.groups import Group, groups, numbers_of

MARGIN_MM = 10.0
ROWS_MM = (72.0, 38.0)
"""Most and least height of a row."""
STAGE_MM = 7.6
GAP_MM = 3.0


@dataclass(frozen=True, slots=True)
class _Row:
    """A row to be drawn: a run of steps, or else the string lines before or the hands after.

    `stage` is the pass that begins with it.
    """

    run: Run | None
    stage: str
    after: bool = False


def card(
    layout: Layout,
    made: Work,
    numbered: Sequence[Group] | None = None,
    *,
    paper: str | None = None,
    home: Paper | None = None,
) -> list[Picture]:
    """Draw the bench card of a plan, on one page where it can be read from, else on more.

    `numbered` are the cuts with the numbers of the guide, by default in the order of work.
    `paper` is a paper's name, by default that of `home` (A4). Raises UsageError for a paper that
    is not known.
    """
    sheet = find_paper(paper) if paper else (home or A4)
    width = sheet.width_mm - 2 * MARGIN_MM
    room = sheet.height_mm - 2 * MARGIN_MM
    top = stacked([words.preparation(layout, made, width), gap(GAP_MM)])
    foot = words.foot(layout, width)
    head = words.head(layout, made, width).height + GAP_MM
    pages = _pages(_rows(layout, made), room - head, top.height, foot.height)
    view = seen(layout)
    told = tuple(numbered or groups(layout, made.order))
    count = len(pages)
    return [
        _page(view, made, told, sheet, rows, k, count, top if k == 1 else gap(0.0), foot)
        for k, rows in enumerate(pages, start=1)
    ]


def joined(pages: Sequence[Picture]) -> Picture:
    """Lay pages side by side, for a kind of file that holds only one."""
    if len(pages) == 1:
        return pages[0]
    items = tuple(
        placed(item, k * page.width_mm, 0.0) for k, page in enumerate(pages) for item in page.items
    )
    return replace(pages[0], width_mm=sum(page.width_mm for page in pages), items=items)


def _rows(layout: Layout, made: Work) -> list[_Row]:
    """List the rows; passes are named where there is more than one kind of work."""
    stages = [run.first.stage for run in made.runs]
    named = made.marks > 0 or len(set(stages)) > 1
    rows = [_Row(None, STRINGS_FIRST)] if made.marks else []
    for run, before in zip(made.runs, ["", *stages], strict=False):
        new = named and run.first.stage != before
        rows.append(_Row(run, STAGES[run.first.stage] if new else ""))
    worked = any(cut.pulled_mm or (cut.hinge_mm and cut.laid) for cut in layout.cuts)
    return [*rows, _Row(None, HANDS_LAST, after=True)] if worked else rows


def _pages(rows: Sequence[_Row], room: float, top: float, foot: float) -> list[list[_Row]]:
    """Share the rows out over as few pages as keep them high enough, evenly."""
    ways = (_shared(rows, count, room, top, foot) for count in range(1, len(rows) + 2))
    return next(pages for pages in ways if pages is not None)  # a page for every row is enough


def _shared(
    rows: Sequence[_Row], count: int, room: float, top: float, foot: float
) -> list[list[_Row]] | None:
    """Fill pages one after the other with rows of equal height, if that is not too low."""
    spaces = [room - top * (k == 0) - foot * (k == count - 1) for k in range(count)]
    stages = STAGE_MM * sum(bool(row.stage) for row in rows)
    height = min(ROWS_MM[0], (sum(spaces) - stages) / max(len(rows), 1))
    while height >= ROWS_MM[1]:
        pages = _filled(rows, spaces, height)
        if pages is not None:
            return pages
        height -= 1.0
    return None


def _filled(
    rows: Sequence[_Row], spaces: Sequence[float], height: float
) -> list[list[_Row]] | None:
    pages: list[list[_Row]] = []
    left = list(rows)
    for space in spaces:
        page: list[_Row] = []
        while left and space >= height + STAGE_MM * bool(left[0].stage):
            space -= height + STAGE_MM * bool(left[0].stage)
            page.append(left.pop(0))
        pages.append(page)
    return pages if not left else None


def _page(
    view: Seen,
    made: Work,
    numbered: Sequence[Group],
    sheet: Paper,
    rows: Sequence[_Row],
    number: int,
    count: int,
    top: Block,
    foot: Block,
) -> Picture:
    width = sheet.width_mm - 2 * MARGIN_MM
    label = f"{number} / {count}" if count > 1 else ""
    blocks = [words.head(view.layout, made, width, page=label), gap(GAP_MM), top]
    used = sum(block.height for block in blocks) + (foot.height if number == count else 0.0)
    stages = STAGE_MM * sum(bool(row.stage) for row in rows)
    room = sheet.height_mm - 2 * MARGIN_MM - used - stages
    height = min(ROWS_MM[0], room / max(len(rows), 1))
    for row in rows:
        blocks += _drawn(view, made, numbered, row, width, height)
    items = stacked(blocks).shifted(MARGIN_MM, MARGIN_MM)
    if number == count:
        items += foot.shifted(MARGIN_MM, sheet.height_mm - MARGIN_MM - foot.height)
    title = f"{view.layout.title}: bench card"
    described = DESCRIBED.format(rows=len(made.runs))
    return Picture(sheet.width_mm, sheet.height_mm, title, described, items, css="card")


def _drawn(
    view: Seen, made: Work, numbered: Sequence[Group], row: _Row, width: float, height: float
) -> list[Block]:
    above = [words.stage(row.stage, width)] if row.stage else [words.hairline(width)]
    if row.stage:
        above.append(gap(STAGE_MM - above[0].height))
    if row.after:
        return [*above, hands_row(view, numbered, width, height)]
    if row.run is None:
        return [*above, marks_row(view, width, height)]
    numbers = numbers_of(numbered)
    return [*above, step_row(view, row.run, numbers, made.bench.skill, width, height)]
