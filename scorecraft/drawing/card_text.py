"""The bench card as plain text, for a screen in the kitchen or a terminal."""

import math
from collections.abc import Iterator

import scorecraft.drawing.card_words as words
from scorecraft.bench.clock import told
from scorecraft.bench.steps import Plan, Run
from scorecraft.bench.telling import (
    STAGES,
    STILL_DEG,
    Handling,
    blade_words,
    depth_words,
    ends_words,
    handle_words,
    handlings,
    mark_degrees,
)
from scorecraft.cuts import Layout
from scorecraft.drawing.cautions import CAUTIONS
from scorecraft.drawing.guide_panel import loaf_words


def card_text(layout: Layout, made: Plan) -> str:
    """Write the bench card of a plan as plain text."""
    return "\n".join(_lines(layout, made)) + "\n"


def _lines(layout: Layout, made: Plan) -> Iterator[str]:
    yield layout.title or "Bench card"
    yield loaf_words(layout.loaf).removesuffix(", full size")
    yield words.time_words(made)
    yield ""
    yield from words.before(layout, made)
    yield from layout.notes
    stage = ""
    if made.marks:
        yield from ("", f" 0  press in {made.marks} string lines; do not cut them")
    for run in made.runs:
        if run.first.stage != stage:
            stage = run.first.stage
            yield from ("", STAGES[run.first.stage].upper())
        yield from _step(layout, run)
    yield from _oven()


def _step(layout: Layout, run: Run) -> Iterator[str]:
    head = ", ".join(each for each in (_times(run), _spoken_turn(run)) if each)
    yield f"{run.number:>2}  {head}"
    yield f"    mark at {mark_degrees(run.first)}°, about {told(run.seconds)}"
    for handling in handlings(layout, run):
        yield f"    {_handling(handling)}"


def _times(run: Run) -> str:
    return f"× {run.times}" if run.times > 1 else ""


def _spoken_turn(run: Run) -> str:
    """Say the turn in words: signs for turning are lost in some terminals."""
    if run.times > 1:
        return f"{_turn(run.turn_each_rad)} each time"
    if run.first.spin_rad:
        round_once = abs(run.first.spin_rad) < 1.05 * math.tau
        return f"turn the table {'once round' if round_once else 'on'} under the blade"
    return _turn(run.first.turn_rad)


def _turn(turn_rad: float) -> str:
    degrees = math.degrees(turn_rad)
    if abs(degrees) < STILL_DEG:
        return "do not turn"
    return f"turn {abs(degrees):.0f}° {'clockwise' if degrees > 0 else 'counter-clockwise'}"


def _handling(handling: Handling) -> str:
    how = (blade_words(handling), handle_words(handling), ends_words(handling))
    parts = [f"{depth_words(handling)} deep", *(each for each in how if each)]
    return f"{', '.join(handling.names)}: {', '.join(parts)}"


def _oven() -> Iterator[str]:
    for name, steps in words.oven():
        yield from ("", name.upper())
        yield from (f"    {step}" for step in steps)
    yield from ("", words.done(), "", *CAUTIONS)
