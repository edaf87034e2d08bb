"""The words of the guide: title, table of cuts, key of lines, verdict, rules, cautions."""

from collections.abc import Mapping, Sequence, Set
from math import degrees

import scorecraft.drawing.paper.telling as telling
from scorecraft.checks.finding import SEVERITIES, Finding
from scorecraft.cuts import Layout
from scorecraft.drawing.arrow import arrow
from scorecraft.drawing.inks import CUT_INKS, MARK_INK, NUMBER_MM, band, band_words
from scorecraft.drawing.lean import BAR_INK
from scorecraft.drawing.paper.block import Block, gap, paragraph, paragraphs, stacked
from scorecraft.drawing.paper.cautions import BLADE, SHEET
from scorecraft.drawing.paper.rulers import rulers
from scorecraft.drawing.paper.table import LEAST_MM, Cell, Column, table
from scorecraft.drawing.paper.telling import HEADS, loaf_words
from scorecraft.drawing.picture import Ink, Item, Label, Layer, Shape, line, placed
from scorecraft.drawing.text import CAP_HEIGHT, largest
from scorecraft.frozen import dataclass
from scorecraft.groups import Group
from scorecraft.opening.lip import rising_side
from scorecraft.units import mm_range

BODY_MM = LEAST_MM
TITLE_MM = (8.0, 7.0, 6.0, 5.0)
ROWS = (2.0, 1.75, 1.5)
"""Heights of table rows to choose from, roomy to tight, as parts of the letters' size."""
MOST_FINDINGS = 2
SAMPLE_MM = 12.0
LEAN_SAMPLE_MM = 2.2
LEAST_NAME_MM = 22.0


@dataclass(frozen=True, slots=True)
class Told:
    """What the guide says beside the drawing.

    `opening_mm` is the range of each cut's widest opening; `against` are the cuts that are pulled
    against the direction they are drawn in.
    """

    layout: Layout
    groups: Sequence[Group]
    findings: Sequence[Finding] = ()
    opening_mm: Sequence[tuple[float, float]] | None = None
    verdict: str | None = None
    against: Set[int] = frozenset()


def head(told: Told, width: float, letters: float = BODY_MM) -> Block:
    """Set the title and the loaf, in letters of a size (mm)."""
    layout = told.layout
    size = largest(layout.title, width, TITLE_MM)
    title = paragraph(layout.title, width, size, bold=True, most_lines=2)
    return stacked([title, gap(0.8), paragraph(loaf_words(layout.loaf), width, letters)])


def notes(told: Told, width: float, most_lines: int, letters: float = BODY_MM) -> Block:
    """Set the notes of the pattern in at most so many lines."""
    blocks: list[Block] = []
    left = most_lines
    for note in told.layout.notes:
        if left > 0:
            blocks.append(paragraph(note, width, letters, most_lines=left))
            left -= len(blocks[-1].items)
    return stacked(blocks)


def verdict(told: Told, width: float, most_lines: int, letters: float = BODY_MM) -> Block:
    """Set the verdict in at most so many lines and two findings beside a bar, or nothing.

    With figures of the model it says once that they are estimates.
    """
    inside = width - 3.5
    blocks = []
    if told.verdict:
        blocks.append(paragraph(told.verdict, inside, letters, bold=True, most_lines=most_lines))
    estimate = telling.estimate_words(told.verdict or "")
    if estimate and (told.verdict or told.opening_mm is not None):
        blocks.append(paragraph(estimate, inside, letters))
    weighty = sorted(
        (each for each in told.findings if each.severity != "note"),
        key=lambda each: SEVERITIES.index(each.severity),
    )
    for finding in weighty[:MOST_FINDINGS]:
        grave = finding.severity.capitalize()
        text = telling.FINDING.format(severity=grave, message=finding.message)
        stop = finding.severity == "stop"
        lines = max(1, most_lines - 1)
        blocks += [gap(0.6), paragraph(text, inside, letters, bold=stop, most_lines=lines)]
    if len(weighty) > MOST_FINDINGS:
        more = telling.MORE_FINDINGS.format(count=len(weighty) - MOST_FINDINGS)
        blocks.append(paragraph(more, inside, letters))
    return stacked([stacked(blocks).barred(3.5, 1.0, 0.4), gap(4)]) if blocks else gap(0)


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
    words = telling.MORE_CUTS.format(count=len(rows) - many)
    return stacked([block, gap(0.8), paragraph(words, width, letters)])


def _columns(told: Told, width: float, letters: float) -> list[Column]:
    """Choose the columns: the name takes what is left; where that is little, no line samples."""
    grown = letters / BODY_MM
    parted = any(cut.severs for cut in told.layout.cuts)
    far = any(len(_range(*group.lengths_mm, digits=0)) > len("99–100") for group in told.groups)
    numbers = [
        Column(HEADS["count"], 10.5 * grown),
        Column(HEADS["length"], (16.5 if far else 13.5) * grown),
        Column(HEADS["depth"], (15.0 if parted else 11.5) * grown),
        Column(HEADS["blade"], 13.5 * grown),
    ]
    if told.opening_mm is not None:
        numbers.append(Column(HEADS["opens"], 13.0 * grown))
    number = Column(HEADS["number"], 7.0 * grown, "start", bold=True)
    left = width - number.width - sum(column.width for column in numbers)
    line_sample = Column(HEADS["line"], SAMPLE_MM + 2, "start")
    if left - line_sample.width < LEAST_NAME_MM:
        return [number, Column(HEADS["cut"], left, "start"), *numbers]
    name = Column(HEADS["cut"], left - line_sample.width, "start")
    return [number, name, line_sample, *numbers]


def _row(told: Told, group: Group) -> Mapping[str, Cell]:
    cut = told.layout.cuts[group.cuts[0]]
    row: dict[str, Cell] = {
        HEADS["number"]: str(group.number),
        HEADS["cut"]: group.key,
        HEADS["line"]: sample(CUT_INKS[band(group.depth_mm)]),
        HEADS["count"]: f"{group.count}",
        HEADS["length"]: _range(*group.lengths_mm, digits=0),
        HEADS["depth"]: telling.parted_words(cut) or _range(*group.depths_mm, digits=1),
        HEADS["blade"]: telling.blade_words(degrees(group.blade_rad)),
    }
    if told.opening_mm is not None:
        pulled = [told.layout.cuts[index].pulled_mm for index in group.cuts]
        widths = [
            (by_hand, by_hand) if by_hand else told.opening_mm[index]
            for index, by_hand in zip(group.cuts, pulled, strict=True)
        ]
        least, most = min(low for low, _ in widths), max(high for _, high in widths)
        row[HEADS["opens"]] = mm_range(least, most)
    return row


def _range(low: float, high: float, *, digits: int) -> str:
    """Write a number, or two where they differ as written."""
    first, last = (f"{value:.{digits}f}" for value in (low, high))
    if digits:
        first, last = (text.rstrip("0").rstrip(".") for text in (first, last))
    return first if first == last else f"{first}–{last}"


def sample(ink: Ink) -> Shape:
    """Draw a piece of a line, from (0, 0) to the right."""
    return Shape((line(0, 0, SAMPLE_MM, 0),), ink=ink)


def key(told: Told, width: float, letters: float = BODY_MM) -> Block:
    """Explain the lines of the drawing."""
    entries: list[tuple[Item, str]] = [
        (sample(CUT_INKS[each]), band_words(each)) for each in CUT_INKS
    ]
    cuts = told.layout.cuts
    if any(not cut.severs for cut in cuts):
        pulled = sample(Ink(0.5))
        entries.append((Layer("pull", (pulled, arrow(pulled.lines[0]))), telling.PULL))
    if any(rising_side(cut) for cut in cuts):
        snipped = all(cut.hinge_mm is not None for cut in cuts)
        side = Shape((line(SAMPLE_MM / 2, 0, SAMPLE_MM / 2, -LEAN_SAMPLE_MM),), ink=BAR_INK)
        lean = Layer("lean", (sample(CUT_INKS["deep"]), side))
        entries.append((lean, telling.SCISSORS if snipped else telling.LEAN))
    numbers = Label("1 2 3", (0.0, 0.0), NUMBER_MM, level="middle", bold=True)
    entries.append((numbers, telling.IN_ORDER))
    if told.layout.marks.lines:
        entries.append((sample(MARK_INK), telling.STRING_LINE))
    return stacked([_entry(item, words, width, letters) for item, words in entries])


def _entry(item: Item, words: str, width: float, letters: float) -> Block:
    """Set a sample beside its words, in the middle of their first line."""
    text = paragraph(words, width - SAMPLE_MM - 3, letters)
    middle = letters * (1 - CAP_HEIGHT / 2)
    return Block(
        (placed(item, 0, middle), *text.shifted(SAMPLE_MM + 3, 0)),
        text.height + 0.4 * (letters - BODY_MM),
    )


def feet(width: float, sheet: str = SHEET, edges: str = BLADE) -> Block:
    """Set the rules to measure and the cautions: of what cuts, and what a sheet says of itself."""
    told = stacked(paragraphs((edges, sheet), width, BODY_MM, 0.7))
    return stacked([rulers(), gap(2.5), told])
