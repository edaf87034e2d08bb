"""The words of a row of the bench card: what to cut, how deep, and how to hold the blade."""

import math
from collections.abc import Iterator, Sequence

from scorecraft.bench.blade import upright
from scorecraft.bench.telling import (
    NUMBERS,
    Handling,
    deep_word,
    depth_words,
    ends_words,
    handle_words,
)
from scorecraft.drawing.card.blade import blade_picture, blade_wide
from scorecraft.drawing.picture import BLACK, Item, Label
from scorecraft.drawing.text import width_mm, wrapped
from scorecraft.frozen import dataclass

GREY = "#555555"
ROW = 50.0
"""Height (mm) at which letters have the sizes below; they shrink with lower rows."""
NAME, DEPTH, SMALL = 6.0, 9.6, 4.3
NAME_STEP, DEPTH_STEP, SMALL_STEP = 7.4, 12.0, 5.8
"""Heights of lines of names, of depths and of small words."""
BETWEEN_SORTS = 3.0
COLUMN_GAP = 4.0
ICON, BLADE_GAP = 10.5, 2.2
"""Width of the picture of the blade, and the gap before it."""
LARGEST = 1.15
SMALLEST = 0.2
SHRINK = 0.96
MOST_NAMES = 3
NARROW = 0.8
"""How much smaller a text is set, at the most, before it is broken into lines."""


@dataclass(frozen=True, slots=True)
class _Text:
    """A line of words: its size and the height it takes (mm)."""

    text: str
    size: float
    step: float
    color: str


def cuts_words(told: Sequence[Handling], left: float, width: float, height: float) -> list[Item]:
    """Set what is cut, in one column or in two: the larger letters win. Nothing is left out."""
    ways = [(_scale(columns, width, height), columns) for columns in _columns(told)]
    scale, columns = max(ways, key=lambda way: way[0])
    step = (width + COLUMN_GAP) / len(columns)
    wide = step - COLUMN_GAP
    items: list[Item] = []
    for k, column in enumerate(columns):
        top = (height - sum(_tall(each, wide, scale) for each in column)) / 2
        for handling in column:
            items += _handling(handling, left + k * step, top, wide, scale)
            top += _tall(handling, wide, scale)
    return items


def _columns(told: Sequence[Handling]) -> list[list[Sequence[Handling]]]:
    """List the ways to set sorts of cuts: below one another, or half of them beside the others."""
    half = (len(told) + 1) // 2
    return [[told]] if len(told) < 2 else [[told], [told[:half], told[half:]]]


def _scale(columns: Sequence[Sequence[Handling]], width: float, height: float) -> float:
    """Find how large letters can be."""
    wide = (width + COLUMN_GAP) / len(columns) - COLUMN_GAP
    broadest = max(_broad(each) for column in columns for each in column)
    scale = min(height / ROW, wide / broadest, LARGEST)
    while scale > SMALLEST:
        tall = max(sum(_tall(each, wide, scale) for each in column) for column in columns)
        if tall <= height - 3.0:
            break
        scale *= SHRINK
    return scale


def _tall(handling: Handling, width: float, scale: float) -> float:
    """Height of a sort of cut."""
    lines = [*_names(handling, width, scale), *_notes(handling, width, scale)]
    return sum(each.step for each in lines) + (DEPTH_STEP + BETWEEN_SORTS) * scale


def _broad(handling: Handling) -> float:
    """Width of the line of the depth at full scale."""
    deep = _deep(handling) + width_mm(deep_word(handling), SMALL)
    depth = deep + BLADE_GAP + blade_wide(handling, ICON)
    return depth + (1.5 + width_mm("45°", NAME) if _slanted(handling) else 0.0)


def _deep(handling: Handling) -> float:
    """Width of the depth itself at full scale, with the gap after it."""
    return width_mm(depth_words(handling), DEPTH, bold=True) + 1.2


def _slanted(handling: Handling) -> bool:
    return not upright(handling.blade_rad)


def _names(handling: Handling, width: float, scale: float) -> list[_Text]:
    names = handling.names
    if len(names) > MOST_NAMES:
        names = (*names[: MOST_NAMES - 1], "; ".join(names[MOST_NAMES - 1 :]))
    size, step = NAME * scale, NAME_STEP * scale
    return [each for name in names for each in _fitted(name, width, size, step, BLACK)]


def _notes(handling: Handling, width: float, scale: float) -> list[_Text]:
    notes = [
        each for each in (handle_words(handling), ends_words(handling), handling.aside) if each
    ]
    size, step = SMALL * scale, SMALL_STEP * scale
    return [each for note in notes for each in _fitted(note, width, size, step, GREY)]


def _fitted(text: str, width: float, size: float, step: float, color: str) -> Iterator[_Text]:
    """Set a text a little smaller where it is too wide, in lines where that is not enough."""
    fits = min(1.0, width / max(width_mm(text, size), 1e-9))
    share = max(fits, NARROW)
    lines = [text] if fits >= NARROW else _broken(text, width, size * share)
    for each in lines:
        yield _Text(each, size * share, step * share, color)


def _broken(text: str, width: float, size: float) -> list[str]:
    """Break a text into lines; the numbers of a name stay together."""
    name, _, numbers = text.rpartition(NUMBERS)
    if not name or NUMBERS in name:
        return list(wrapped(text, width, size))
    return [*wrapped(name, width, size), *wrapped(NUMBERS.lstrip(", ") + numbers, width, size)]


def _handling(
    handling: Handling, left: float, top: float, width: float, scale: float
) -> list[Item]:
    """Set one sort of cut: its names; its depth large beside the blade; how to hold it."""
    items: list[Item] = []
    y = top
    for each in _names(handling, width, scale):
        y += each.step
        items.append(Label(each.text, (left, y - 0.19 * each.step), each.size, color=each.color))
    y += DEPTH_STEP * scale
    base = y - 1.6 * scale
    after = left + _deep(handling) * scale
    beside = after + (width_mm(deep_word(handling), SMALL) + BLADE_GAP) * scale
    icon = ICON * scale
    items.append(Label(depth_words(handling), (left, base), DEPTH * scale, bold=True))
    items.append(Label(deep_word(handling), (after, base), SMALL * scale))
    items += blade_picture(handling, beside, base, icon)
    if _slanted(handling):
        angle = f"{math.degrees(handling.blade_rad):.0f}°"
        after = beside + blade_wide(handling, icon)
        items.append(Label(angle, (after + 1.5 * scale, base), NAME * scale))
    for each in _notes(handling, width, scale):
        y += each.step
        items.append(Label(each.text, (left, y - 0.14 * each.step), each.size, color=each.color))
    return items
