"""The plan of the bench as the bench view needs it: one step a screen."""

from itertools import groupby
from math import degrees
from typing import Any

import numpy as np

from scorecraft.bench import Plan
from scorecraft.bench.blade import blade_form
from scorecraft.bench.steps import Pull, Run, Step
from scorecraft.bench.telling import lean_words
from scorecraft.cuts import Layout
from scorecraft.designing import Design
from scorecraft.drawing.cautions import BLADE, OVEN
from scorecraft.drawing.plan import rim_plan
from scorecraft.drawing.svg import svg
from scorecraft.report import rounded
from scorecraft.web.stage import frame, stage


def bench_data(design: Design) -> dict[str, Any]:
    """Tell the plan of a design, with the loaf to turn and light up."""
    layout = design.layout
    made = design.plan
    return {
        "ok": True,
        "title": layout.title or design.source.name,
        "notes": list(layout.notes),
        "cautions": {"blade": BLADE, "oven": OVEN},
        "svg": svg(stage(design), text="text", ids="bench"),
        "crown": [rounded(each) for each in frame(layout)[0]],
        "radius_mm": rounded(np.hypot(*rim_plan(layout.loaf).T).max()),
        "marks": made.marks,
        "marks_seconds": rounded(made.marks_seconds),
        "seconds": rounded(made.work.seconds),
        "temperature_c": rounded(made.bench.temperature_c),
        "allowed_seconds": rounded(made.allowed_s),
        "steps": steps_data(layout, made),
    }


def steps_data(layout: Layout, made: Plan) -> list[dict[str, Any]]:
    """Tell every step of the turntable, in order."""
    return [
        step_data(layout, step, run, times)
        for run in made.runs
        for times, step in enumerate(run.steps, start=1)
    ]


def step_data(layout: Layout, step: Step, run: Run, times: int) -> dict[str, Any]:
    """Tell one step: how far to turn, and the strokes; angles are degrees clockwise."""
    return {
        "stage": step.stage,
        "table_deg": rounded(degrees(step.table_rad)),
        "turn_deg": rounded(degrees(step.turn_rad)),
        "spin_deg": rounded(degrees(step.spin_rad)),
        "time": times,
        "times": run.times,
        "pulls": [{"cut": pull.cut, "backward": pull.backward} for pull in step.pulls],
        "strokes": strokes_data(layout, step),
    }


def strokes_data(layout: Layout, step: Step) -> list[dict[str, Any]]:
    """Tell the strokes of a step in order, like ones after one another once."""

    def alike(pull: Pull) -> tuple[str, float, float]:
        cut = layout.cuts[pull.cut]
        return cut.name, round(cut.depth_mm, 1), round(degrees(cut.blade_rad))

    told = []
    for (name, depth, blade), same in groupby(step.pulls, key=alike):
        pulls = list(same)
        cut = layout.cuts[pulls[0].cut]
        told.append(
            {
                "name": name,
                "count": len(pulls),
                "depth_mm": depth,
                "depths_mm": [rounded(each) for each in pulls[0].depths_mm],
                "blade_deg": blade,
                "blade": blade_form(cut.blade_rad),
                "tilt_deg": rounded(degrees(pulls[0].tilt_rad)),
                "lean_deg": rounded(degrees(pulls[0].lean_rad)),
                "lean": lean_words(pulls),
            }
        )
    return told
