"""The hand on the page: what lies on the loaf, what is selected, and what a gesture makes of it."""

from functools import lru_cache
from pathlib import Path

from scorecraft.arrays import Floats
from scorecraft.check_data import rounded
from scorecraft.designing import turn
from scorecraft.drawing.plan import on_paper, plan_lines
from scorecraft.drawing.svg import path_data
from scorecraft.editing import telling as words
from scorecraft.editing.described import name_of, said_of, trail_name
from scorecraft.editing.hand import done
from scorecraft.editing.picked import (
    Chip,
    Field,
    Knob,
    Lock,
    axes_in_plan,
    chips_of,
    fields_of,
    knobs_of,
    move_lock,
)
from scorecraft.editing.scene import Scene, draws, scene
from scorecraft.editing.slots import LockedError
from scorecraft.editing.written import mark_of
from scorecraft.expand.traced import Step
from scorecraft.json_data import Json, JsonObject
from scorecraft.language.tree import Statement
from scorecraft.web.answer import problem_data
from scorecraft.web.asked import Asked, Data, files_folder, flag_of, text_of
from scorecraft.web.gestured import gesture_of, whole_of
from scorecraft.web.stage import frame

STEPS: dict[str, JsonObject] = {
    "repeat": {"by": 1, "unit": "", "least": 1, "first": 1, "often": [1, 2, 3, 4, 5, 6, 8, 10, 12]},
    "depth": {
        "by": 1,
        "unit": "mm",
        "least": 1,
        "first": 6,
        "often": ["2mm", "4mm", "6mm", "8mm", "10mm"],
    },
    "opens": {"by": 1, "unit": "mm", "least": 1, "first": 10, "often": ["5mm", "10mm", "15mm"]},
    "blade": {
        "by": 5,
        "unit": "deg",
        "least": 20,
        "most": 90,
        "first": 90,
        "often": ["30deg", "45deg", "90deg"],
    },
}
"""By how much a tap changes a number, within what, where it begins, and what is often wanted."""


@lru_cache(maxsize=8)
def remembered(wanted: Asked, folder: str | None, changed: int) -> Scene:
    """Read and lay out a pattern for the hand; the same one again is not laid out twice."""
    knobs = {name: turn(name, value) for name, value in wanted.knobs}
    where = files_folder(wanted, Path(folder) if folder else None)
    return scene(
        wanted.text, wanted.name, folder=where, loaf=wanted.loaf, bake=wanted.bake, knobs=knobs
    )


def looked(found: Scene) -> JsonObject:
    """Tell every statement, and what a tap on each cut selects."""
    chosen = [found.chosen(index) for index in range(len(found.traced.layout.cuts))]
    return {
        "ok": True,
        "mark": mark_of(found.written.text),
        "statements": [
            statement_data(found, each)
            for each in found.written.statements.values()
            if draws(each) or each.body
        ],
        "cuts": [
            {"statement": step.statement.place.line, "copy": found.copy_of(step)} for step in chosen
        ],
    }


def statement_data(found: Scene, statement: Statement) -> JsonObject:
    """Tell a statement: its name, where it stands in text and tree, and its cuts."""
    line, written = statement.place.line, found.written
    runs = found.runs[line]
    name = name_of(statement)
    said = said_of(found, runs[0]) if runs else name
    lines = written.lines(statement)
    return {
        "id": line,
        "word": statement.word,
        "name": name,
        "said": said,
        "about": said.removeprefix(f"{name}, "),
        "trail": trail_data(runs[0]) if runs else [],
        "span": [written.starts[lines[0] - 1], written.starts[lines[-1]]],
        "cuts": sorted({cut for step in runs for cut in found.cuts[step]}),
        "copies": len(runs),
        "rule": in_rule(found, statement),
        "draws": draws(statement),
    }


def in_rule(found: Scene, statement: Statement) -> bool:
    """Tell whether a statement belongs to a rule."""
    here: Statement | None = statement
    while here is not None:
        if here.word == "define":
            return True
        here = found.written.parents[here.place.line]
    return False


def trail_data(step: Step) -> list[Json]:
    """Tell what a run stands in, the outermost first, and itself."""
    return [{"id": each.statement.place.line, "said": trail_name(each)} for each in step.chain]


def picked(found: Scene, request: Data) -> JsonObject:
    """Tell a selected copy: its handles, what can be done, and the numbers of its form."""
    line = whole_of(request, "statement", 0, 0, 10**6)
    step = found.run(line, whole_of(request, "copy", 0, 0, 10**6))
    runs = found.runs[line]
    move, about = move_lock(found, step)
    middle = None if about is None else flat(found.plan(about.scope.frame.origin))
    own = found.cuts[step]
    return {
        "ok": True,
        "mark": mark_of(found.written.text),
        "statement": line,
        "copy": found.copy_of(step),
        "copies": len(runs),
        "word": step.statement.word,
        "name": name_of(step.statement),
        "said": said_of(found, step),
        "trail": trail_data(step),
        "own": list(own),
        "siblings": sorted({cut for run in runs for cut in found.cuts[run]} - set(own)),
        "frames": [frame_data(found, run, copy) for copy, run in enumerate(runs)],
        "move": {**lock_data(move), "turns": middle and {"about": middle}},
        "handles": [knob_data(each) for each in knobs_of(found, step)],
        "chips": [chip_data(each) for each in chips_of(found, step)],
        "rule": rule_data(found, step),
        "form": [field_data(each) for each in fields_of(found, step)],
    }


def frame_data(found: Scene, step: Step, copy: int) -> JsonObject:
    """Tell where a copy stands, and its axes in the plan."""
    at, axes = axes_in_plan(found, step.drawn.frame)
    values: list[Json] = [round(float(each), 4) for each in axes.ravel()]
    return {"copy": copy, "cuts": list(found.cuts[step]), "at": flat(at), "axes": values}


def flat(point: Floats) -> list[Json]:
    """Write a point as two rounded numbers."""
    return [rounded(float(each)) for each in point]


def lock_data(lock: Lock) -> JsonObject:
    """Tell whether something turns, and in which ways it may be asked to."""
    return {
        "locked": lock.why or None,
        "ways": [{"way": way, "said": words.WAYS[way]} for way in lock.ways],
        "also": lock.also,
        "knob": lock.knob or None,
    }


def knob_data(knob: Knob) -> JsonObject:
    """Tell a handle."""
    x, y = flat(knob.at)
    return {
        "name": knob.name,
        "kind": knob.kind,
        "x": x,
        "y": y,
        "along": None if knob.along is None else [round(float(each), 4) for each in knob.along],
        "about": None if knob.round is None else flat(knob.round),
        "value": knob.value,
        "said": knob.said,
        "title": words.handle_name(knob.name),
        **lock_data(knob.lock),
    }


def chip_data(chip: Chip) -> JsonObject:
    """Tell something to be done at a tap."""
    told: JsonObject = {"name": chip.name, "value": chip.value, "locked": chip.locked or None}
    return told | ({"steps": STEPS[chip.name]} if chip.name in STEPS else {})


def field_data(field: Field) -> JsonObject:
    """Tell a key and its value, for a form."""
    return {
        "key": field.key.name,
        "value": field.value,
        "written": field.written,
        "kind": field.key.kind,
        "choices": list(field.key.choices),
        "help": field.key.help,
        "said": field.key.name.replace("_", " "),
    }


def rule_data(found: Scene, step: Step) -> JsonObject | None:
    """Tell the rule that a run calls or belongs to, and how many uses a change of it changes."""
    called = [each.statement.word for each in step.chain if each.statement.word in found.rules]
    if not called:
        return None
    name = called[-1]
    uses = sum(each.word == name for each in found.written.statements.values())
    return {
        "name": name,
        "line": found.rules[name].place.line,
        "said": words.changing_rule(name, uses),
    }


def lines_data(found: Scene, line: int, held: int) -> list[Json]:
    """Tell the lines of every copy of a statement as SVG path data on the picture."""
    layout = found.traced.layout
    centre = frame(layout)[0]
    told: list[Json] = []
    for copy, step in enumerate(found.runs[line]):
        plans = plan_lines(layout.loaf, [layout.cuts[index].line for index in found.cuts[step]])
        drawn: list[Json] = [path_data([on_paper(each, centre)], closed=False) for each in plans]
        told.append({"copy": copy, "own": copy == held, "lines": drawn})
    return told


def gestured(found: Scene, request: Data, folder: Path | None) -> JsonObject:
    """Do a gesture: tell the new text and what is selected, or why it cannot be done.

    Of a gesture that is still going on, `preview`, only the lines it makes are told.
    """
    mark = text_of(request, "mark")
    if mark != mark_of(found.written.text):
        told = words.CHANGED.at(None)
        return {"ok": False, "dropped": True, "problems": [problem_data(told)]}
    try:
        made = done(found, gesture_of(request), folder=folder)
    except LockedError as error:
        ways: list[Json] = [{"way": way, "said": words.WAYS[way]} for way in error.ways]
        return {"ok": False, "ways": ways, "problems": [problem_data(p) for p in error.problems]}
    if flag_of(request, "preview") and made.line is not None:
        return {"ok": True, "lines": lines_data(made.scene, made.line, made.copy)}
    selected = None if made.line is None else {"statement": made.line, "copy": made.copy}
    return {
        "ok": True,
        "text": made.text,
        "mark": mark_of(made.text),
        "selected": selected,
        "said": made.said,
        "edits": [[edit.start, edit.end, edit.new] for edit in made.change.edits],
    }
