"""The words of the guide: title, table of cuts, key of lines, verdict, rules, cautions."""

from collections.abc import Mapping, Sequence, Set
from dataclasses import dataclass
from math import degrees

from scorecraft.checks.finding import SEVERITIES, Finding
from scorecraft.cuts import Layout
from scorecraft.drawing.arrow import arrow
from scorecraft.drawing.inks import CUT_INKS, MARK_INK, NUMBER_MM, Band, band, band_words
from scorecraft.drawing.paper.block import Block, gap, paragraph, shifted, stacked
from scorecraft.drawing.paper.cautions import CAUTIONS
from scorecraft.drawing.paper.rulers import rulers
from scorecraft.drawing.paper.table import LEAST_MM, Cell, Column, table
from scorecraft.drawing.picture import Ink, Item, Label, Layer, Shape, line, placed
from scorecraft.drawing.text import CAP_HEIGHT, width_mm
from scorecraft.groups import Group
from scorecraft.loaf.dome import Loaf

BODY_MM = LEAST_MM
SMALL = 0.8
"""The cautions are set smaller than the rest by this share."""
TITLE_MM = (8.0, 7.0, 6.0, 5.0)
ROWS = (2.0, 1.75, 1.5)
"""Heights of table rows to choose from, roomy to tight, as parts of the letters' size."""
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


def head(told: Told, width: float, letters: float = BODY_MM) -> Block:
    """Set the title and the loaf, in letters of a size (mm)."""
    layout = told.layout
    size = next(
        (each for each in TITLE_MM if width_mm(layout.title, each, bold=True) <= width),
        TITLE_MM[-1],
    )
    lines = [
        paragraph(layout.title, width, size, bold=True, most_lines=2),
        gap(0.8),
        paragraph(loaf_words(layout.loaf), width, letters),
    ]
    return stacked(lines)


def notes(told: Told, width: float, most_lines: int, letters: float = BODY_MM) -> Block:
    """Set the notes of the pattern in at most so many lines."""
    blocks: list[Block] = []
    left = most_lines
    for note in told.layout.notes:
        if left > 0:
            blocks.append(paragraph(note, width, letters, most_lines=left))
            left -= len(blocks[-1].items)
    return stacked(blocks)


def loaf_words(loaf: Loaf) -> str:
    """Say a loaf's shape and size."""
    across = f"{loaf.width_mm:.0f} mm across"
    if abs(loaf.length_mm - loaf.width_mm) > 0.5:
        across = f"{loaf.length_mm:.0f} × {loaf.width_mm:.0f} mm"
    return f"{loaf.shape.capitalize()} loaf, {across}, {loaf.height_mm:.0f} mm high, full size"


def verdict(told: Told, width: float, most_lines: int, letters: float = BODY_MM) -> Block:
    """Set the verdict in at most so many lines and two findings beside a bar, or nothing."""
    inside = width - 3.5
    blocks = []
    if told.verdict:
        blocks.append(paragraph(told.verdict, inside, letters, bold=True, most_lines=most_lines))
    weighty = sorted(
        (each for each in told.findings if each.severity != "note"),
        key=lambda each: SEVERITIES.index(each.severity),
    )
    for finding in weighty[:MOST_FINDINGS]:
        text = f"{finding.severity.capitalize()}: {finding.message}"
        stop = finding.severity == "stop"
        lines = max(1, most_lines - 1)
        blocks += [gap(0.6), paragraph(text, inside, letters, bold=stop, most_lines=lines)]
    if len(weighty) > MOST_FINDINGS:
        more = f"and {len(weighty) - MOST_FINDINGS} more: see scorecraft check"
        blocks.append(paragraph(more, inside, letters))
    return _barred(stacked(blocks)) if blocks else gap(0)


def _barred(text: Block) -> Block:
    """Set a bar to the left of a text."""
    bar = Shape((line(0.5, 0.4, 0.5, text.height),), ink=Ink(1.0, cap="butt"))
    return stacked([Block((bar,), 0), _indented(text, 3.5), gap(4)])


def _indented(block: Block, dx: float) -> Block:
    return Block(shifted(block, dx, 0), block.height)


def cut_table(told: Told, width: float, room: float, letters: float = BODY_MM) -> Block:
    """Set the table of the groups of cuts in at most `room` mm of height.

    Rows that find no room are counted in a last line.
    """
    rows = [_row(told, group) for group in told.groups]
    columns = _columns(told, width, letters)
    heights = [part * letters for part in ROWS]
    above = table(columns, [], size=letters, row_height=0.0).height
    fits = [each for each in heights if above + len(rows) * each <= room]
    row_height = fits[0] if fits else heights[-1]
    many = len(rows) if fits else max(1, int((room - above - 1.5 * letters) // row_height))
    block = table(columns, rows[:many], size=letters, row_height=row_height)
    if many >= len(rows):
        return block
    words = f"and {len(rows) - many} more groups of cuts, not listed here"
    return stacked([block, gap(0.8), paragraph(words, width, letters)])


def _columns(told: Told, width: float, letters: float) -> list[Column]:
    """Choose the columns: the name takes what is left; where that is little, no line samples."""
    grown = letters / BODY_MM
    numbers = [
        Column("count", 11.0 * grown),
        Column("length mm", 13.5 * grown),
        Column("depth mm", 12.0 * grown),
        Column("blade", 11.0 * grown),
    ]
    if told.opening_mm is not None:
        numbers.append(Column("opens mm", 12.0 * grown))
    number = Column("no.", 7.0 * grown, "start", bold=True)
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


def key(told: Told, width: float, letters: float = BODY_MM) -> Block:
    """Explain the lines of the drawing."""
    entries: list[tuple[Item, str]] = [(sample(each), band_words(each)) for each in CUT_INKS]
    entries.append((_arrow_sample(), "pull the blade this way; the card tells of each copy"))
    entries.append((_number_sample(), "the numbers follow the order of cutting"))
    if told.layout.marks.lines:
        mark = Shape((line(0, 0, SAMPLE_MM, 0),), ink=MARK_INK)
        entries.append((mark, "press in with a string first, do not cut"))
    return stacked([_entry(item, words, width, letters) for item, words in entries])


def _entry(item: Item, words: str, width: float, letters: float) -> Block:
    """Set a sample beside its words, in the middle of their first line."""
    text = paragraph(words, width - SAMPLE_MM - 3, letters)
    middle = letters * (1 - CAP_HEIGHT / 2)
    return Block(
        (placed(item, 0, middle), *shifted(text, SAMPLE_MM + 3, 0)),
        text.height + 0.4 * (letters - BODY_MM),
    )


def _number_sample() -> Item:
    """Write the first numbers, as large as in the drawing."""
    return Label("1 2 3", (0.0, 0.0), NUMBER_MM, level="middle", bold=True)


def _arrow_sample() -> Item:
    points = line(0, 0, SAMPLE_MM, 0)
    return Layer("pull", (Shape((points,), ink=Ink(0.5)), arrow(points)))


def cautions(width: float, letters: float = BODY_MM) -> Block:
    """Set the cautions in letters smaller than the rest."""
    size = SMALL * letters
    return stacked([stacked([paragraph(each, width, size), gap(0.7)]) for each in CAUTIONS])


def feet(width: float, letters: float = BODY_MM) -> Block:
    """Set the rules to measure and the cautions."""
    return stacked([rulers(), gap(2.5), cautions(width, letters)])
