"""The bench card as plain text, for a screen in the kitchen or a terminal."""

import math
from collections.abc import Iterator, Mapping, Sequence

import scorecraft.drawing.card.telling as telling
from scorecraft.bench.batch import batch_of
from scorecraft.bench.pace import time_words
from scorecraft.bench.steps import Run, Work
from scorecraft.bench.telling import (
    STAGES,
    STILL_DEG,
    Handling,
    angle_words,
    batch_words,
    blade_words,
    deep_word,
    depth_words,
    ends_words,
    handle_words,
    handlings,
    mark_words,
    turn_each,
)
from scorecraft.cuts import Layout, Skill
from scorecraft.drawing.paper.cautions import OVEN, edges
from scorecraft.drawing.paper.telling import hands_words, loaf_words
from scorecraft.groups import Group, groups, numbers_of
from scorecraft.shaping.shaped import shaped


def card_text(layout: Layout, made: Work, numbered: Sequence[Group] | None = None) -> str:
    """Write the bench card of a plan as plain text; `numbered` as in `card`."""
    told = numbered or groups(layout, made.order)
    return "\n".join(_lines(layout, made, told)) + "\n"


def _lines(layout: Layout, made: Work, numbered: Sequence[Group]) -> Iterator[str]:
    numbers = numbers_of(numbered)
    yield layout.title or telling.UNTITLED
    yield loaf_words(layout.loaf, "")
    yield telling.time_words(made)
    yield ""
    yield from telling.before(layout, made)
    yield from layout.notes
    batch = batch_of(made)
    if batch:
        yield from ("", *batch_words(batch))
        yield "   ".join("[ ] " * loaves for loaves in batch.boards).rstrip()
    yield from ("", edges(layout.cuts))
    stage = ""
    if made.marks:
        strings = telling.string_words(layout.marks.lines)
        yield from ("", f"    {strings}; {telling.DO_NOT_CUT}")
    for run in made.runs:
        if run.first.stage != stage:
            stage = run.first.stage
            yield from ("", STAGES[run.first.stage].upper())
        yield from _step(layout, run, numbers, made.bench.skill)
    yield from _hands(layout, numbered)
    yield from _oven(layout)


def _hands(layout: Layout, numbered: Sequence[Group]) -> Iterator[str]:
    """Say what hands do after the cuts, if they do."""
    found = shaped(layout)
    if found is not None:
        _, told = hands_words(layout, numbered, found.size_mm)
        yield from ("", telling.HANDS_LAST.upper(), f"    {told}")


def _step(layout: Layout, run: Run, numbers: Mapping[int, int], skill: Skill) -> Iterator[str]:
    yield f"{run.letter:>2}  {_head(run)}, {time_words(run.seconds, skill)}"
    for handling in handlings(layout, run, numbers):
        yield f"    {_handling(handling)}"
    if not run.copies:
        for step in run.steps:
            count = f"{len(step.pulls)} cut{'s' if len(step.pulls) > 1 else ''}"
            yield f"    mark to {mark_words(step)}: {count}"


def _head(run: Run) -> str:
    """Say how the table is turned, and where its mark stands."""
    if not run.copies:
        return f"at {telling.POSITIONS.format(count=len(run.steps))} of the turntable"
    if run.times == 1:
        return f"{_turn(run)}, mark at {mark_words(run.first)}"
    if turn_each(run) is not None:
        turn = f"turn {_spoken(run.steps[1].turn_rad)} {telling.EACH_TIME}"
        return f"× {run.times}, {turn}, from the mark at {mark_words(run.first)}"
    marks = ", ".join(mark_words(step) for step in run.steps)
    return f"× {run.times}, mark to {marks}"


def _turn(run: Run) -> str:
    """Say the turn in words: signs for turning are lost in some terminals."""
    step = run.first
    if step.spin_rad:
        once = abs(step.spin_rad) < 1.05 * math.tau
        return f"{telling.FULL_TURN if once else telling.KEEP_TURNING} {telling.UNDER_BLADE}"
    still = abs(math.degrees(step.turn_rad)) < STILL_DEG
    return telling.STILL if still else f"turn {_spoken(step.turn_rad)}"


def _spoken(turn_rad: float) -> str:
    return f"{angle_words(abs(turn_rad))} {'clockwise' if turn_rad > 0 else 'counter-clockwise'}"


def _handling(handling: Handling) -> str:
    how = (blade_words(handling), handle_words(handling), ends_words(handling), handling.aside)
    deep = f"{depth_words(handling)} {deep_word(handling)}".rstrip()
    parts = [deep, *(each for each in how if each)]
    return f"{', '.join(handling.names)}: {', '.join(parts)}"


def _oven(layout: Layout) -> Iterator[str]:
    yield from ("", telling.INTO_THE_OVEN.upper(), OVEN, telling.recipe_first(layout))
    for name, steps in telling.oven(layout):
        yield from ("", name.upper())
        yield from (f"    {step}" for step in steps)
    yield from ("", telling.done())
