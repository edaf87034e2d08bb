"""The words of the guide: title, table of cuts, key of lines, verdict, rules, cautions."""

from collections.abc import Mapping, Sequence, Set
from dataclasses import dataclass
from math import degrees

from scorecraft.checks.finding import SEVERITIES, Finding
from scorecraft.cuts import Layout
from scorecraft.drawing.arrow import arrow
from scorecraft.drawing.block import Block, gap, paragraph, shifted, stacked
from scorecraft.drawing.cautions import CAUTIONS
from scorecraft.drawing.inks import CUT_INKS, MARK_INK, Band, band, band_words
from scorecraft.drawing.picture import Group as Layer
from scorecraft.drawing.picture import Ink, Item, Label, Shape, line, placed
from scorecraft.drawing.rulers import rulers
from scorecraft.drawing.table import Cell, Column, table
from scorecraft.drawing.text import width_mm
from scorecraft.groups import Group
from scorecraft.loaf.dome import Loaf

BODY_MM = 3.2
SMALL_MM = 2.6
TITLE_MM = (8.0, 7.0, 6.0, 5.0)
ROW_MM = (6.4, 5.6, 4.8)
"""Heights of table rows to choose from, roomy to tight."""
MOST_FINDINGS = 2
SAMPLE_MM = 12.0
LEAST_NAME_MM = 22.0


@dataclass(frozen=True, slots=True)
class Told:
    """What the guide says beside the drawing.

    `opening_mm` is the widest opening of each cut; `against` are the cuts that are pulled against
    the direction they are drawn in.
    """

    layout: Layout
    groups: Sequence[Group]
    findings: Sequence[Finding] = ()
    opening_mm: Sequence[float] | None = None
    verdict: str | None = None
    against: Set[int] = frozenset()


def head(told: Told, width: float) -> Block:
    """Set the title, the loaf and the notes of the pattern."""
    layout = told.layout
    size = next(
        (each for each in TITLE_MM if width_mm(layout.title, each, bold=True) <= width),
        TITLE_MM[-1],
    )
    lines = [
        paragraph(layout.title, width, size, bold=True, most_lines=2),
        gap(0.8),
        paragraph(loaf_words(layout.loaf), width, BODY_MM),
    ]
    return stacked(lines)


def notes(told: Told, width: float, most_lines: int) -> Block:
    """Set the notes of the pattern in at most so many lines."""
    blocks: list[Block] = []
    left = most_lines
    for note in told.layout.notes:
        if left > 0:
            blocks.append(paragraph(note, width, BODY_MM, most_lines=left))
            left -= len(blocks[-1].items)
    return stacked(blocks)


def loaf_words(loaf: Loaf) -> str:
    """Say a loaf's shape and size."""
    across = f"{loaf.width_mm:.0f} mm across"
    if abs(loaf.length_mm - loaf.width_mm) > 0.5:
        across = f"{loaf.length_mm:.0f} × {loaf.width_mm:.0f} mm"
    return f"{loaf.shape.capitalize()} loaf, {across}, {loaf.height_mm:.0f} mm high, full size"


def verdict(told: Told, width: float, most_lines: int) -> Block:
    """Set the verdict in at most so many lines and two findings beside a bar, or nothing."""
    inside = width - 3.5
    blocks = []
    if told.verdict:
        blocks.append(paragraph(told.verdict, inside, BODY_MM, bold=True, most_lines=most_lines))
    weighty = sorted(
        (each for each in told.findings if each.severity != "note"),
        key=lambda each: SEVERITIES.index(each.severity),
    )
    for finding in weighty[:MOST_FINDINGS]:
        text = f"{finding.severity.capitalize()}: {finding.message}"
        stop = finding.severity == "stop"
        lines = max(1, most_lines - 1)
        blocks += [gap(0.6), paragraph(text, inside, SMALL_MM, bold=stop, most_lines=lines)]
    if len(weighty) > MOST_FINDINGS:
        more = f"and {len(weighty) - MOST_FINDINGS} more: see scorecraft check"
        blocks.append(paragraph(more, inside, SMALL_MM))
    return _barred(stacked(blocks)) if blocks else gap(0)


def _barred(text: Block) -> Block:
    """Set a bar to the left of a text."""
    bar = Shape((line(0.5, 0.4, 0.5, text.height),), ink=Ink(1.0, cap="butt"))
    return stacked([Block((bar,), 0), _indented(text, 3.5), gap(4)])


def _indented(block: Block, dx: float) -> Block:
    return Block(shifted(block, dx, 0), block.height)


def cut_table(told: Told, width: float, room: float) -> Block:
    """Set the table of the groups of cuts in at most `room` mm of height.

    Rows that find no room are counted in a last line.
    """
    rows = [_row(told, group) for group in told.groups]
    fits = [each for each in ROW_MM if _table_height(len(rows), each) <= room]
    row_height = fits[0] if fits else ROW_MM[-1]
    shown = rows if fits else rows[: max(1, int((room - 12) // row_height))]
    size = BODY_MM if row_height > ROW_MM[-1] else 3.0
    block = table(_columns(told, width), shown, size=size, row_height=row_height)
    left_out = len(rows) - len(shown)
    if not left_out:
        return block
    words = f"and {left_out} more groups of cuts, not listed here"
    return stacked([block, gap(0.8), paragraph(words, width, SMALL_MM)])


def _table_height(rows: int, row_height: float) -> float:
    return 7.6 + rows * row_height


def _columns(told: Told, width: float) -> list[Column]:
    """Choose the columns: the name takes what is left; where that is little, no line samples."""
    numbers = [
        Column("count", 11.0),
        Column("length mm", 13.0),
        Column("depth mm", 11.0),
        Column("blade", 10.0),
    ]
    if told.opening_mm is not None:
        numbers.append(Column("opens mm", 12.0))
    number = Column("no.", 7.0, "start", bold=True)
    left = width - number.width - sum(column.width for column in numbers)
    line_sample = Column("line", SAMPLE_MM + 2, "start")
    if left - line_sample.width < LEAST_NAME_MM:
        return [number, Column("cut", left, "start"), *numbers]
    return [number, Column("cut", left - line_sample.width, "start"), line_sample, *numbers]


def _row(told: Told, group: Group) -> Mapping[str, Cell]:
    row: dict[str, Cell] = {
        "no.": str(group.number),
        "cut": group.key,
        "line": sample(band(group.depth_mm)),
        "count": f"{group.count}",
        "length mm": _range(*group.lengths_mm, digits=0),
        "depth mm": _range(*group.depths_mm, digits=1),
        "blade": f"{degrees(group.blade_rad):.0f}°",
    }
    if told.opening_mm is not None:
        widths = [told.opening_mm[index] for index in group.cuts]
        row["opens mm"] = _range(min(widths), max(widths), digits=0)
    return row


def _range(low: float, high: float, *, digits: int) -> str:
    """Write a number, or two where they differ as written."""
    first, last = (f"{value:.{digits}f}" for value in (low, high))
    if digits:
        first, last = (text.rstrip("0").rstrip(".") for text in (first, last))
    return first if first == last else f"{first}–{last}"


def sample(which: Band) -> Item:
    """Draw a piece of a line style, from (0, 0) to the right."""
    return Shape((line(0, 0, SAMPLE_MM, 0),), ink=CUT_INKS[which])


def key(told: Told) -> Block:
    """Explain the lines of the drawing."""
    entries: list[tuple[Item, str]] = [(sample(each), band_words(each)) for each in CUT_INKS]
    entries.append((_arrow_sample(), "pull the blade this way; the card tells of each copy"))
    entries.append((_number_sample(), "the numbers follow the order of cutting"))
    if told.layout.marks.lines:
        mark = Shape((line(0, 0, SAMPLE_MM, 0),), ink=MARK_INK)
        entries.append((mark, "press in with a string first, do not cut"))
    return stacked([_entry(item, words) for item, words in entries])


def _entry(item: Item, words: str) -> Block:
    label = Label(words, (SAMPLE_MM + 3, 2.2), SMALL_MM + 0.2, level="middle")
    return Block((placed(item, 0, 2.2), label), 4.4)


def _number_sample() -> Item:
    """Write the first numbers, as large as in the drawing."""
    return Label("1  2  3", (0.0, 0.0), BODY_MM, level="middle", bold=True)


def _arrow_sample() -> Item:
    points = line(0, 0, SAMPLE_MM, 0)
    return Layer("pull", (Shape((points,), ink=Ink(0.5)), arrow(points)))


def cautions(width: float) -> Block:
    """Set the cautions in small type."""
    return stacked([stacked([paragraph(each, width, SMALL_MM), gap(0.7)]) for each in CAUTIONS])


def feet(width: float) -> Block:
    """Set the rules to measure and the cautions."""
    return stacked([rulers(), gap(2.5), cautions(width)])
