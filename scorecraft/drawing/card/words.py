"""The words above and below the steps of the bench card."""

from scorecraft.bench.clock import told
from scorecraft.bench.steps import Work
from scorecraft.cuts import Layout
from scorecraft.drawing.card.loaf import ACCENT
from scorecraft.drawing.paper.block import Block, gap, paragraph, shifted, stacked
from scorecraft.drawing.paper.cautions import CAUTIONS
from scorecraft.drawing.paper.panel import loaf_words
from scorecraft.drawing.picture import Ink, Item, Label, Shape, line
from scorecraft.drawing.text import width_mm, wrapped
from scorecraft.practice import (
    DONE_C,
    POT_C,
    POT_COVERED_MIN,
    POT_OPEN_C,
    POT_OPEN_MIN,
    PREHEAT_MIN,
    STONE_AFTER_C,
    STONE_AFTER_MIN,
    STONE_C,
    STONE_STEAM_MIN,
    Rule,
)
from scorecraft.units import in_unit

TITLE = (11.0, 9.5, 8.0, 6.5)
BODY = 3.9
SMALL = 2.6
GREY = "#555555"


def heat(rule: Rule) -> str:
    """Write a temperature in both scales, as an oven's dial has them: 245 °C / 475 °F."""
    fahrenheit = in_unit(rule.value, "F")
    step = 5 if rule.value > 110 else 1
    return f"{rule.value:.0f} °C / {round(fahrenheit / step) * step:.0f} °F"


def time_words(made: Work) -> str:
    """Say how long the cutting takes, and how long the dough allows."""
    needed, allowed = told(made.effort.seconds), told(made.allowed_s)
    if made.effort.seconds > made.allowed_s:
        return f"{needed} of cutting, {allowed} at most: chill it first"
    return f"{needed} of cutting; the dough holds {allowed}"


def before(made: Work) -> tuple[str, ...]:
    """Say what comes before the first cut."""
    dough = f"{made.bench.temperature_c:.0f} °C"
    return (
        "Mark 12 o'clock on the turntable's edge: it is the red mark. You stand at the bottom of "
        "each picture.",
        f"Dough at {dough}: a chilled, dry skin cuts cleanest. Dust it thinly with rice flour.",
        f"Cut with the {made.bench.hand} hand. Blade sticks? Wipe it with a drop of oil.",
    )


def oven() -> tuple[tuple[str, tuple[str, ...]], tuple[str, tuple[str, ...]]]:
    """List the steps of the oven, in a covered pot and on a stone."""
    return (
        (
            "Covered pot",
            (
                f"Heat it {PREHEAT_MIN.value:.0f} min at {heat(POT_C)}",
                f"Lid on: {POT_COVERED_MIN.value:.0f} min",
                f"Lid off: {heat(POT_OPEN_C)}, about {POT_OPEN_MIN.value:.0f} min",
            ),
        ),
        (
            "Stone with steam",
            (
                f"Heat it {PREHEAT_MIN.value:.0f} min at {heat(STONE_C)}",
                f"Steam in: {STONE_STEAM_MIN.value:.0f} min",
                f"Steam out: {heat(STONE_AFTER_C)}, about {STONE_AFTER_MIN.value:.0f} min",
            ),
        ),
    )


def done() -> str:
    """Say when the loaf is done."""
    least, most = DONE_C
    low, high = (in_unit(rule.value, "F") for rule in DONE_C)
    return f"Done: {least.value:.0f}–{most.value:.0f} °C / {low:.0f}–{high:.0f} °F in the centre"


def head(layout: Layout, made: Work, width: float, *, page: str = "") -> Block:
    """Set the title with the loaf, and the time."""
    size = next(
        (each for each in TITLE if width_mm(layout.title, each, bold=True) <= width - 30),
        TITLE[-1],
    )
    late = made.effort.seconds > made.allowed_s
    lines = wrapped(layout.title, width - 30, size, bold=True) or ("",)
    items: list[Item] = [
        Label(line, (0.0, size * (0.86 + 1.2 * k)), size, bold=True) for k, line in enumerate(lines)
    ]
    items.append(Label(page, (width, size * 0.86), BODY, anchor="end", color=GREY))
    loaf = loaf_words(layout.loaf).removesuffix(", full size")
    y = size * (0.86 + 1.2 * (len(lines) - 1)) + BODY * 1.6
    items.append(Label(loaf, (0.0, y), BODY, color=GREY))
    items.append(
        Label(time_words(made), (width, y), BODY, anchor="end", bold=late,
              color=ACCENT if late else GREY)
    )  # fmt: skip
    return Block(tuple(items), y + 2.4)


def preparation(layout: Layout, made: Work, width: float) -> Block:
    """Set what comes before the first cut, and the pattern's own notes."""
    texts = [*before(made), *layout.notes]
    column = (width - 8) / 2
    half = (len(texts) + 1) // 2
    columns = [_list(texts[:half], column), _list(texts[half:], column)]
    items = (*columns[0].items, *shifted(columns[1], column + 8, 0))
    return Block(items, max(each.height for each in columns))


def _list(texts: list[str], width: float) -> Block:
    return stacked([stacked([paragraph(text, width, 3.4), gap(1.0)]) for text in texts])


def foot(width: float) -> Block:
    """Set the oven's steps in two columns, when the loaf is done, and the cautions."""
    column = (width - 8) / 2
    sides = [_oven(name, steps, column) for name, steps in oven()]
    both = Block(
        (*sides[0].items, *shifted(sides[1], column + 8, 0)), max(each.height for each in sides)
    )
    rule = Block((Shape((line(0, 0, width, 0),), ink=Ink(0.5, cap="butt")),), 3.0)
    cautions = [stacked([paragraph(each, width, SMALL)]) for each in CAUTIONS]
    ready = paragraph(done(), width, 4.6, bold=True)
    return stacked([rule, both, gap(1.5), ready, gap(1.5), *cautions])


def _oven(name: str, steps: tuple[str, ...], width: float) -> Block:
    lines = [paragraph(step, width, BODY) for step in steps]
    return stacked([paragraph(name, width, 4.6, bold=True), *lines])


def stage(words: str, width: float) -> Block:
    """Set the name of a pass over a rule."""
    rule = Shape((line(0, 0, width, 0),), ink=Ink(0.5, cap="butt"))
    label = Label(words, (0.0, 5.6), 4.4, bold=True)
    return Block((rule, label), 6.8)


def hairline(width: float) -> Block:
    """Part two rows."""
    return Block((Shape((line(0, 0, width, 0),), ink=Ink(0.15, color="#999999")),), 0.0)
