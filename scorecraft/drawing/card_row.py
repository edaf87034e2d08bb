"""One row of the bench card: number, the loaf as it lies, what to cut, how often, how to turn."""

import math
from collections.abc import Sequence

import numpy as np

from scorecraft.bench.clock import told
from scorecraft.bench.steps import Run
from scorecraft.bench.telling import (
    STILL_DEG,
    Handling,
    depth_words,
    ends_words,
    handle_words,
    handlings,
    mark_degrees,
    turn_words,
)
from scorecraft.drawing.block import Block
from scorecraft.drawing.card_loaf import ACCENT, Seen, marks_picture, step_picture
from scorecraft.drawing.picture import BLACK, Group, Ink, Item, Label, Line, Shape, line, placed
from scorecraft.drawing.text import shortened, width_mm

NUMBER_WIDE = 15.0
TURN_WIDE = 43.0
BETWEEN = 5.0
WIDEST = 58.0
"""The largest picture of a step."""
GREY = "#555555"
ROW = 50.0
"""Height (mm) at which letters have the sizes below; they shrink with lower rows."""
NAME, DEPTH, SMALL, TIMES, TURN, NUMBER = 6.0, 9.6, 4.3, 13.0, 7.4, 17.0
NAME_STEP, DEPTH_STEP, SMALL_STEP = 7.4, 12.0, 5.8
"""Heights of lines of names, of depths and of small words."""
COLUMN_GAP = 4.0
ICON = 9.5
"""Width of the picture of the blade."""
LARGEST = 1.15
MOST_NAMES = 3
MOST_HANDLINGS = 4
SMALLEST = 0.55
"""How much smaller a text is set, at the most, to fit."""


def step_row(view: Seen, run: Run, width: float, height: float) -> Block:
    """Draw a run of steps in a row of `width` by `height` mm."""
    size = min(height - 2.0, WIDEST)
    left = NUMBER_WIDE + size + BETWEEN
    told_handlings = handlings(view.layout, run)
    items: list[Item] = [
        _number(str(run.number), height),
        _mark(run, height),
        placed(step_picture(view, run, size), NUMBER_WIDE, (height - size) / 2),
        *_handlings(told_handlings, left, width - TURN_WIDE - BETWEEN - left, height),
        *_turning(run, width, height),
    ]
    return Block((Group(f"step {run.number}", tuple(items)),), height)


def marks_row(view: Seen, count: int, width: float, height: float) -> Block:
    """Draw the string marks, which come before all cuts."""
    size = min(height - 2.0, WIDEST)
    left = NUMBER_WIDE + size + BETWEEN
    scale = min(1.0, height / ROW)
    strings = f"{count} strings" if count > 1 else "1 string"
    middle = height / 2
    items: list[Item] = [
        _number("0", height),
        placed(marks_picture(view, size), NUMBER_WIDE, (height - size) / 2),
        _text("press in " + strings, left, middle - 1.5 * scale, NAME * 1.2 * scale, bold=True),
        _text("guides only: do not cut them", left, middle + 6.5 * scale, SMALL * 1.1 * scale),
    ]
    return Block((Group("string marks", tuple(items)),), height)


def _number(text: str, height: float) -> Label:
    size = NUMBER * min(1.0, height / ROW) * (1.0 if len(text) < 2 else 0.78)
    return Label(text, (0.0, height / 2), size, level="middle", bold=True)


def _mark(run: Run, height: float) -> Label:
    """Write under the number where the table's mark stands."""
    scale = min(1.0, height / ROW)
    at = (0.0, height / 2 + 0.78 * NUMBER * scale)
    return Label(f"{mark_degrees(run.first)}°", at, 5.0 * scale, bold=True, color=ACCENT)


def _text(
    text: str, x: float, y: float, size: float, *, bold: bool = False, color: str = BLACK
) -> Label:
    return Label(text, (x, y), size, bold=bold, color=color)


def _handlings(
    told_handlings: Sequence[Handling], left: float, width: float, height: float
) -> list[Item]:
    """Set what is cut in the middle of the row, in one column or in two: the larger letters win."""
    shown = told_handlings[:MOST_HANDLINGS]
    ways = [(_scale(columns, width, height), columns) for columns in _columns(shown)]
    scale, columns = max(ways, key=lambda way: way[0])
    step = (width + COLUMN_GAP) / len(columns)
    items: list[Item] = []
    for k, column in enumerate(columns):
        top = (height - sum(_tall(each) for each in column) * scale) / 2
        for handling in column:
            items += _handling(handling, left + k * step, top, step - COLUMN_GAP, scale)
            top += _tall(handling) * scale
    return items


def _columns(shown: Sequence[Handling]) -> list[list[Sequence[Handling]]]:
    """List the ways to set sorts of cuts: below one another, or half of them beside the others."""
    half = (len(shown) + 1) // 2
    return [[shown]] if len(shown) < 2 else [[shown], [shown[:half], shown[half:]]]


def _scale(columns: Sequence[Sequence[Handling]], width: float, height: float) -> float:
    """Find how large letters can be."""
    each_wide = (width + COLUMN_GAP) / len(columns) - COLUMN_GAP
    tall = max(sum(_tall(each) for each in column) for column in columns)
    wide = max(_wide(each) for column in columns for each in column)
    return min(height / ROW, (height - 3.0) / tall, each_wide / wide, LARGEST)


def _notes(handling: Handling) -> list[str]:
    return [each for each in (handle_words(handling), ends_words(handling)) if each]


def _tall(handling: Handling) -> float:
    """Height of a sort of cut at full scale."""
    names = NAME_STEP * min(len(handling.names), MOST_NAMES)
    return names + DEPTH_STEP + SMALL_STEP * len(_notes(handling)) + 3.0


def _wide(handling: Handling) -> float:
    """Width of the line of the depth at full scale."""
    depth = width_mm(depth_words(handling), DEPTH, bold=True) + 3.0 + ICON
    return depth + (1.5 + width_mm("45°", NAME) if _slanted(handling) else 0.0)


def _slanted(handling: Handling) -> bool:
    return handling.blade_rad < math.radians(85)


def _handling(
    handling: Handling, left: float, top: float, width: float, scale: float
) -> list[Item]:
    """Set one sort of cut: its names; its depth large beside the blade; how to hold it."""
    items: list[Item] = []
    y = top
    for name in _listed(handling.names):
        y += NAME_STEP * scale
        items.append(_fitted(name, left, y - 1.4 * scale, width, NAME * scale))
    y += DEPTH_STEP * scale
    base = y - 1.6 * scale
    depth = depth_words(handling)
    beside = left + width_mm(depth, DEPTH * scale, bold=True) + 3.0 * scale
    icon = ICON * scale
    items.append(_text(depth, left, base, DEPTH * scale, bold=True))
    items += _blade(handling, beside, base, icon)
    if _slanted(handling):
        angle = f"{math.degrees(handling.blade_rad):.0f}°"
        items.append(_text(angle, beside + icon + 1.5 * scale, base, NAME * scale))
    for note in _notes(handling):
        y += SMALL_STEP * scale
        items.append(_fitted(note, left, y - 0.8 * scale, width, SMALL * scale, color=GREY))
    return items


def _listed(names: Sequence[str]) -> list[str]:
    """List the names, the last ones together where there are too many."""
    if len(names) <= MOST_NAMES:
        return list(names)
    return [*names[: MOST_NAMES - 1], ", ".join(names[MOST_NAMES - 1 :])]


def _fitted(
    text: str, x: float, y: float, width: float, size: float, *, color: str = BLACK
) -> Label:
    """Set a text smaller where it is too wide, and cut it short where that is not enough."""
    fits = min(1.0, width / max(width_mm(text, size), 1e-9))
    small = size * max(fits, SMALLEST)
    return _text(shortened(text, width, small), x, y, small, color=color)


def _blade(handling: Handling, x: float, base: float, size: float) -> list[Item]:
    """Draw the blade in the dough, seen along the cut: its angle, leaning as the handle does."""
    surface, middle = base - 0.30 * size, x + size / 2
    lean = -1 if handling.lean == "left" else 1
    angle = handling.blade_rad if _slanted(handling) else math.pi / 2
    way = np.array([lean * math.cos(angle), -math.sin(angle)])
    tip = np.array([middle, surface]) - 0.36 * size * way
    top = np.array([middle, surface]) + 0.62 * size * way
    dough = line(x, surface, x + size, surface)
    return [
        Shape((dough,), ink=Ink(0.045 * size, color="#999999")),
        Shape((_bent(tip, top, lean, curved=handling.form == "curved"),), ink=Ink(0.11 * size)),
    ]


def _bent(tip: Line, top: Line, lean: int, *, curved: bool) -> Line:
    """Return the blade's line, bowed a little where a curved blade is meant."""
    share = np.linspace(0, 1, 21)[:, None]
    along = top - tip
    aside = np.array([along[1], -along[0]]) * -lean
    bow: Line = tip + share * along + (0.10 if curved else 0.0) * 4 * share * (1 - share) * aside
    return bow


def _turning(run: Run, width: float, height: float) -> list[Item]:
    """Set how often, and how the table is turned, at the right end of the row."""
    scale = min(1.0, height / ROW)
    middle = height / 2
    rows: list[tuple[str, float, bool, str]] = []
    if run.times > 1:
        rows.append((f"× {run.times}", TIMES, True, BLACK))
        rows.append((turn_words(run.turn_each_rad), TURN, True, ACCENT))
        rows.append(("each time", SMALL * 1.15, False, ACCENT))
    elif run.first.spin_rad:
        turns = "turn once round" if abs(run.first.spin_rad) < 6.6 else "keep turning"
        rows.append((turns, TURN * 0.72, True, ACCENT))
        rows.append(("under the blade", SMALL * 1.15, False, ACCENT))
    else:
        rows.append(_single(run))
    rows.append((f"about {told(run.seconds)}", SMALL * 0.95, False, GREY))
    tall = sum(size for _, size, _, _ in rows) * scale * 1.18
    y = middle - tall / 2
    items: list[Item] = []
    for text, size, bold, color in rows:
        y += size * scale * 1.18
        items.append(Label(text, (width, y - size * scale * 0.3), size * scale, anchor="end",
                           bold=bold, color=color))  # fmt: skip
    return items


def _single(run: Run) -> tuple[str, float, bool, str]:
    still = abs(math.degrees(run.first.turn_rad)) < STILL_DEG
    if still:
        return ("do not turn", SMALL * 1.15, False, GREY)
    return (turn_words(run.first.turn_rad), TURN, True, ACCENT)
