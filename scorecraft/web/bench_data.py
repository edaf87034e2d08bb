"""The work at the bench as the bench view needs it: one step a screen."""

from math import degrees

import numpy as np

from scorecraft.bench.batch import batch_of
from scorecraft.bench.clock import told
from scorecraft.bench.pace import time_words
from scorecraft.bench.steps import Run, Step, Work
from scorecraft.bench.telling import batch_words
from scorecraft.check_data import rounded
from scorecraft.cuts import Layout
from scorecraft.designing import Design
from scorecraft.drawing.card.telling import done, oven, recipe_first, string_words
from scorecraft.drawing.paper.cautions import BLADE, OVEN, STICKING, USED_BLADES, edges
from scorecraft.drawing.paper.telling import hands_words
from scorecraft.drawing.plan import rim_plan
from scorecraft.drawing.svg import svg
from scorecraft.json_data import JsonObject
from scorecraft.shaping.shaped import shaped
from scorecraft.web import telling as say
from scorecraft.web.bench_lines import lines_data, turn_said
from scorecraft.web.stage import frame, stage


def bench_data(design: Design) -> JsonObject:
    """Tell the work of a design, with the loaf to turn and light up.

    `count` is the number of steps: settings of the table at which is cut. `boards` are the loaves
    on each board, cut one after the other by these steps.
    """
    layout = design.layout
    made = design.work
    batch = batch_of(made)
    return {
        "ok": True,
        "title": layout.title or design.source.name,
        "notes": list(layout.notes),
        "cautions": cautions_data(layout),
        "hands": hands_said(design),
        "start": start_words(made),
        "oven": oven_data(layout),
        "svg": svg(stage(design), text="text", ids="bench"),
        "crown": [rounded(each) for each in frame(layout)[0]],
        "radius_mm": rounded(np.hypot(*rim_plan(layout.loaf).T).max()),
        "marks": made.marks,
        "marks_words": string_words(layout.marks.lines) if made.marks else "",
        "boards": list(batch.boards) if batch else [1],
        "allowed_seconds": rounded(made.allowed_s),
        "count": sum(1 for _ in made.steps),
        "steps": steps_data(design),
    }


def cautions_data(layout: Layout) -> JsonObject:
    """Tell what to mind before the first cut, after the last one, and at the oven."""
    said = edges(layout.cuts)
    lame = BLADE in said
    return {
        "blade": f"{said} {STICKING}" if lame else said,
        "used": USED_BLADES if lame else "",
        "oven": OVEN,
    }


def hands_said(design: Design) -> str:
    """Say what hands do with the dough once it is cut, or nothing."""
    found = shaped(design.layout)
    return hands_words(design.layout, design.groups, found.size_mm)[1] if found else ""


def start_words(work: Work) -> list[str]:
    """Say what is to be known before the first cut: how long it takes, a batch its boards."""
    steps = sum(1 for _ in work.steps)
    batch = batch_of(work)
    takes = time_words(work.effort.seconds, work.bench.skill)
    return [
        say.before_cutting(steps, takes, work.bench.skill, work.dough, told(work.allowed_s)),
        *([" ".join(batch_words(batch))] if batch else []),
    ]


def oven_data(layout: Layout) -> JsonObject:
    """Tell the ways to bake the loaf, each with its steps, as the card does."""
    return {
        "first": recipe_first(layout),
        "ways": [{"name": name, "steps": list(steps)} for name, steps in oven(layout)],
        "done": done(),
    }


def steps_data(design: Design) -> list[JsonObject]:
    """Tell every step of the turntable, in order."""
    return [
        step_data(design, step, run, times)
        for run in design.work.runs
        for times, step in enumerate(run.steps, start=1)
    ]


def step_data(design: Design, step: Step, run: Run, times: int) -> JsonObject:
    """Tell one step: how far to turn, and the strokes; angles are degrees clockwise.

    `row` is the letter of its row on the card. Only exact copies are counted by `time` of `times`.
    """
    return {
        "number": step.number,
        "row": run.letter,
        "stage": step.stage,
        "table_deg": rounded(degrees(step.table_rad)),
        "turn_deg": rounded(degrees(step.turn_rad)),
        "turn_said": turn_said(step, times if run.copies else 1, run.times),
        "time": times if run.copies else 1,
        "times": run.times,
        "pulls": [{"cut": pull.cut, "backward": pull.backward} for pull in step.pulls],
        "lines": lines_data(design, step),
    }
