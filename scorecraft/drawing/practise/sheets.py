"""The practice sheets: exercises in rows, as many on a sheet as it holds."""

from collections.abc import Sequence

from scorecraft.bench.steps import Work
from scorecraft.cuts import Layout
from scorecraft.drawing.paper.block import Block, gap, paragraph, stacked
from scorecraft.drawing.paper.rulers import rulers
from scorecraft.drawing.paper.sheet import A4, Paper
from scorecraft.drawing.paper.sheet import paper as find_paper
from scorecraft.drawing.paper.table import LEAST_MM
from scorecraft.drawing.picture import Ink, Label, Layer, Picture, Shape, line
from scorecraft.drawing.practise.basics import basics
from scorecraft.drawing.practise.exercise import Exercise
from scorecraft.drawing.practise.own import own
from scorecraft.drawing.practise.row import cells, largest, row, row_height
from scorecraft.drawing.practise.words import BASICS, CAUTIONS, OWN, TITLE, UNDER
from scorecraft.drawing.text import shortened
from scorecraft.frozen import dataclass, replace
from scorecraft.groups import Group, numbers_of

MARGIN_MM = 10.0
TITLE_MM, PART_MM, SMALL_MM = 7.0, 4.0, 3.6
PART_HIGH_MM = 8.4
BETWEEN_MM, MOST_BETWEEN_MM = 5.0, 11.0
MOST_LINES = 3
"""A row has no more lines of strokes, however much room there is."""


@dataclass(frozen=True, slots=True)
class Row:
    """An exercise on its way to a sheet: the part it belongs to, its width (mm) and its lines."""

    part: str
    exercise: Exercise
    width: float
    lines: int = 1


def practice_sheets(
    layout: Layout,
    made: Work,
    numbered: Sequence[Group],
    *,
    paper: str | None = None,
    home: Paper | None = None,
) -> tuple[Picture, ...]:
    """Draw the practice sheets of a pattern at full size: basics first, then its hardest strokes.

    `numbered` are its cuts by their numbers. `paper` is a paper's name, by default that of `home`
    (A4). Raises UsageError for a paper that is not known.
    """
    sheet = find_paper(paper) if paper else (home or A4)
    width = sheet.width_mm - 2 * MARGIN_MM
    room = sheet.height_mm - 2 * MARGIN_MM - _head(layout, width, "").height - _foot().height
    simple = basics(layout, made, numbers_of(numbered))
    hard = own(layout, made, numbered, *largest(width, room - PART_HIGH_MM))
    rows = [Row(BASICS, each, width) for each in simple] + [Row(OWN, each, width) for each in hard]
    pages = [_filled(page, room) for page in _pages(rows, room)]
    return tuple(
        _sheet(layout, sheet, _under_parts(page), f"{number} / {len(pages)}")
        for number, page in enumerate(pages, start=1)
    )


def _pages(rows: Sequence[Row], room: float) -> list[list[Row]]:
    """Share rows out over sheets: each on the first that has room, from where its part begins."""
    pages: list[list[Row]] = []
    first: dict[str, int] = {}
    for each in rows:
        start = first.setdefault(each.part, max(len(pages) - 1, 0))
        page = next((page for page in pages[start:] if _high([*page, each]) <= room), None)
        if page is None:
            pages.append([each])
        else:
            page.append(each)
    return pages


def _filled(page: Sequence[Row], room: float) -> list[Row]:
    """Give rows more lines of strokes, those with the fewest first, as far as a sheet has room."""
    rows = list(page)
    copies = [cells(each.exercise, each.width).count for each in page]
    for lines in range(2, MOST_LINES + 1):
        for place in sorted(range(len(rows)), key=copies.__getitem__):
            more = [*rows[:place], replace(rows[place], lines=lines), *rows[place + 1 :]]
            if rows[place].lines == lines - 1 and _high(more) <= room:
                rows = more
    return rows


def _high(page: Sequence[Row]) -> float:
    """Measure how high rows stand, under the names of their parts."""
    parts = len({each.part for each in page})
    rows = sum(row_height(each.exercise, each.width, each.lines) for each in page)
    return rows + parts * PART_HIGH_MM + (len(page) - 1) * BETWEEN_MM


def _under_parts(page: Sequence[Row]) -> list[Block]:
    """Draw the rows of a sheet, the name of a part over the first of its rows."""
    blocks: list[Block] = []
    before = ""
    for each in page:
        drawn = row(each.exercise, each.width, each.lines)
        named = each.part != before
        blocks.append(stacked([_part(each.part, each.width), drawn]) if named else drawn)
        before = each.part
    return blocks


def _part(name: str, width: float) -> Block:
    """Set the name of a part over a rule."""
    rule = Shape((line(0, 0, width, 0),), ink=Ink(0.5, cap="butt"))
    return Block((rule, Label(name, (0.0, 5.4), PART_MM, color="#555555")), PART_HIGH_MM)


def _sheet(layout: Layout, sheet: Paper, rows: Sequence[Block], label: str) -> Picture:
    """Lay rows out on a sheet, under the cautions and above the rules to measure."""
    width = sheet.width_mm - 2 * MARGIN_MM
    head, foot = _head(layout, width, label), _foot()
    low = sheet.height_mm - MARGIN_MM - foot.height
    spare = low - MARGIN_MM - head.height - sum(each.height for each in rows)
    between = min(MOST_BETWEEN_MM, spare / max(len(rows) - 1, 1))
    body = stacked([piece for each in rows for piece in (each, gap(between))])
    items = (
        Layer("words", head.shifted(MARGIN_MM, MARGIN_MM)),
        Layer("exercises", body.shifted(MARGIN_MM, MARGIN_MM + head.height)),
        Layer("rules", foot.shifted(MARGIN_MM, low)),
    )
    title = f"{layout.title}: {TITLE}"
    return Picture(sheet.width_mm, sheet.height_mm, title, UNDER, items, css="practise")


def _head(layout: Layout, width: float, label: str) -> Block:
    """Set the title, the cautions beside a bar, and how to use the sheet."""
    title = shortened(f"{layout.title}: {TITLE}", width - 20, TITLE_MM, bold=True)
    top = Block(
        (
            Label(title, (0.0, TITLE_MM * 0.86), TITLE_MM, bold=True),
            Label(label, (width, TITLE_MM * 0.86), SMALL_MM, anchor="end", color="#555555"),
        ),
        TITLE_MM * 1.2,
    )
    told = [stacked([paragraph(each, width - 4, SMALL_MM), gap(0.6)]) for each in CAUTIONS]
    warned = stacked(told).barred(4.0, 1.0, 0.6, 0.4)
    return stacked([top, gap(1.6), warned, gap(1.6), paragraph(UNDER, width, LEAST_MM), gap(4.0)])


def _foot() -> Block:
    """Set the rules to measure."""
    return stacked([gap(4.0), rulers()])
