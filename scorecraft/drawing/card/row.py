"""One row of the bench card: its letter, the loaf as it lies, what to cut, how to turn."""

import math
from collections.abc import Mapping, Sequence

import scorecraft.drawing.card.telling as telling
from scorecraft.bench.pace import time_words
from scorecraft.bench.steps import Run
from scorecraft.bench.telling import STILL_DEG, handlings, mark_words, turn_each, turn_words
from scorecraft.cuts import Skill
from scorecraft.drawing.card.cuts import GREY, NAME, ROW, SMALL, cuts_words
from scorecraft.drawing.card.loaf import ACCENT, Seen, marks_picture, run_picture
from scorecraft.drawing.card.settings import settings_pictures
from scorecraft.drawing.paper.block import Block, gap, paragraph, shifted, stacked
from scorecraft.drawing.paper.hands import hands_block
from scorecraft.drawing.picture import BLACK, Item, Label, Layer, placed
from scorecraft.drawing.text import width_mm, wrapped
from scorecraft.groups import Group

LETTER_WIDE = 15.0
TURN_WIDE, SETTINGS_TURN_WIDE = 43.0, 27.0
BETWEEN = 5.0
WIDEST = 58.0
"""The largest picture of a step."""
SETTINGS_WIDE = 84.0
"""Width of the pictures of several settings."""
TIMES, TURN, LETTER, MARK = 13.0, 7.4, 17.0, 5.0


def step_row(
    view: Seen, run: Run, numbers: Mapping[int, int], skill: Skill, width: float, height: float
) -> Block:
    """Draw a run of steps in a row of `width` by `height` mm; `numbers` are those of the cuts."""
    pictures, wide = _pictures(view, run, height)
    left = LETTER_WIDE + wide + BETWEEN
    turn_wide = TURN_WIDE if run.copies else SETTINGS_TURN_WIDE
    room = width - turn_wide - BETWEEN - left
    items: list[Item] = [
        _letter(run.letter, height),
        *([_mark(run, height)] if run.copies else []),
        *pictures,
        *cuts_words(handlings(view.layout, run, numbers), left, room, height),
        *_turning(run, skill, width, turn_wide, height),
    ]
    return Block((Layer(f"step {run.letter}", tuple(items)),), height)


def _pictures(view: Seen, run: Run, height: float) -> tuple[list[Item], float]:
    """Draw the loaf of a run, or of each of its settings; give the width they take."""
    if run.copies:
        size = min(height - 2.0, WIDEST)
        drawn = run_picture(view, run, size)
        return [placed(drawn, LETTER_WIDE, (height - size) / 2)], size
    many = settings_pictures(view, run, SETTINGS_WIDE, height - 2.0)
    return [placed(many.layer, LETTER_WIDE, (height - many.height) / 2)], many.width


def marks_row(view: Seen, width: float, height: float) -> Block:
    """Draw the string lines, which come before all cuts."""
    size = min(height - 2.0, WIDEST)
    left = LETTER_WIDE + size + BETWEEN
    scale = min(1.0, height / ROW)
    said = telling.string_words(view.layout.marks.lines)
    words = stacked([
        paragraph(said, width - left, NAME * 1.2 * scale, bold=True),
        gap(1.5 * scale),
        paragraph(telling.DO_NOT_CUT, width - left, SMALL * 1.1 * scale),
    ])  # fmt: skip
    items: list[Item] = [
        placed(marks_picture(view, size), LETTER_WIDE, (height - size) / 2),
        *shifted(words, left, (height - words.height) / 2),
    ]
    return Block((Layer("string lines", tuple(items)),), height)


def hands_row(view: Seen, numbered: Sequence[Group], width: float, height: float) -> Block:
    """Draw the dough as hands make it after the cuts, with what they do."""
    room, letters = width - LETTER_WIDE, NAME * 0.75 * min(1.0, height / ROW)
    block = hands_block(view.layout, numbered, room, height - 3.0, letters)
    return Block(shifted(block, LETTER_WIDE, (height - block.height) / 2), height)


def _letter(text: str, height: float) -> Label:
    size = _narrow(text, LETTER * min(1.0, height / ROW))
    return Label(text, (0.0, height / 2), size, level="middle", bold=True)


def _mark(run: Run, height: float) -> Label:
    """Write under the letter where the table's mark stands."""
    scale = min(1.0, height / ROW)
    at = (0.0, height / 2 + 0.78 * LETTER * scale)
    text = mark_words(run.first)
    return Label(text, at, _narrow(text, MARK * scale), bold=True, color=ACCENT)


def _narrow(text: str, size: float) -> float:
    """Shrink letters so far that a text keeps clear of the picture beside it."""
    return size * min(1.0, (LETTER_WIDE - 1.5) / width_mm(text, size, bold=True))


Words = tuple[str, float, bool, str]
"""A text, its size, whether it is bold, and its colour."""


def _turning(run: Run, skill: Skill, width: float, room: float, height: float) -> list[Item]:
    """Set how often, and how the table is turned, at the right end of the row."""
    scale = min(1.0, height / ROW)
    rows = _turns(run, room / scale)
    rows.append((time_words(run.seconds, skill), SMALL * 0.95, False, GREY))
    tall = sum(size for _, size, _, _ in rows) * scale * 1.18
    y = height / 2 - tall / 2
    items: list[Item] = []
    for text, size, bold, color in rows:
        y += size * scale * 1.18
        items.append(Label(text, (width, y - size * scale * 0.3), size * scale, anchor="end",
                           bold=bold, color=color))  # fmt: skip
    return items


def _turns(run: Run, room: float) -> list[Words]:
    """Say how the table is turned: by an exact turn, from mark to mark, or under the blade."""
    first = run.first
    if not run.copies:
        count = _turn(telling.POSITIONS.format(count=len(run.steps)), room, TURN * 0.72)
        return [count, (telling.MARK_AS_DRAWN, SMALL * 0.95, False, ACCENT)]
    if run.times > 1:
        often: Words = (f"× {run.times}", TIMES, True, BLACK)
        if turn_each(run) is None:
            return [often, *_by_marks(run, room)]
        turn = _turn(turn_words(run.steps[1].turn_rad), room)
        return [often, turn, (telling.EACH_TIME, SMALL * 1.15, False, ACCENT)]
    if first.spin_rad:
        turns = telling.FULL_TURN if abs(first.spin_rad) < 6.6 else telling.KEEP_TURNING
        return [
            _turn(turns, room, TURN * 0.72),
            (telling.UNDER_BLADE, SMALL * 1.15, False, ACCENT),
        ]
    if abs(math.degrees(first.turn_rad)) < STILL_DEG:
        return [(telling.STILL, SMALL * 1.15, False, GREY)]
    return [_turn(turn_words(first.turn_rad), room)]


def _turn(text: str, room: float, size: float = TURN) -> Words:
    """Set a turn as large as its room lets it be."""
    return (text, size * min(1.0, room / width_mm(text, size, bold=True)), True, ACCENT)


def _by_marks(run: Run, room: float) -> list[Words]:
    """List where the mark stands each time: rounded turns would add up."""
    marks = "  ".join(mark_words(step) for step in run.steps)
    size = SMALL * 0.95
    lines = wrapped(marks, room, size, bold=True)
    return [
        (telling.MARK_TO, SMALL * 0.95, False, ACCENT),
        *((line, size, True, ACCENT) for line in lines),
    ]
