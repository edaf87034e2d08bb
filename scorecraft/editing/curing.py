"""Cures of the checks, written into the text: what changes in some cuts, as statements say it."""

import math
from collections.abc import Iterable, Mapping, Sequence

import numpy as np

from scorecraft import curves
from scorecraft.arrays import Floats
from scorecraft.checks.cure import Change, ChangeKind, End
from scorecraft.editing import telling as say
from scorecraft.editing.blocks import added, removed
from scorecraft.editing.handles import Handle, handles
from scorecraft.editing.making import bent_stroke, straight_stroke
from scorecraft.editing.moving import Grip, moved, size_of
from scorecraft.editing.numbers import on_step, written
from scorecraft.editing.scene import Scene
from scorecraft.editing.slots import slot
from scorecraft.editing.turning import turned
from scorecraft.editing.written import Edit
from scorecraft.expand.traced import Step
from scorecraft.language.words import WORDS

DEPTH_STEP_MM, BLADE_STEP_DEG = 0.5, 1.0
UP: dict[ChangeKind, bool] = {"deeper": True, "shallower": False, "steeper": True}
"""Whether a number is rounded up to its step, so that it still cures."""
STILL_MM = 0.05
LASTS: dict[End, tuple[bool, ...]] = {"first": (False,), "last": (True,), "both": (False, True)}
STRAIGHT = ("slash", "wave")
"""Strokes along +y whose length moves their ends."""


def cured(scene: Scene, changes: Sequence[Change]) -> list[Edit]:
    """Give the edits of a cure; raises ScorecraftError for what no text of the pattern can say."""
    found: list[Edit] = []
    for change in changes:
        if change.kind == "add":
            found += [stroke(scene, line, change) for line in change.lines]
        elif change.kind == "remove":
            found += gone(scene, change.cuts)
        elif change.kind in UP:
            found += cut_otherwise(scene, change)
        elif change.kind == "gap":
            raise say.NO_GAP.error()
        else:
            found += reshaped(scene, change)
    return list(dict.fromkeys(found))


def stroke(scene: Scene, line: Sequence[tuple[float, float]], change: Change) -> Edit:
    """Write a cut that is to be added, straight or bent."""
    points = np.array(line)
    make = straight_stroke if len(points) == 2 else bent_stroke
    new = make(points, on_step(change.mm, DEPTH_STEP_MM), on_step(math.degrees(change.rad), 1.0))
    return added(scene.written, None, new)


def by_statement(scene: Scene, cuts: Iterable[int]) -> Mapping[int, list[int]]:
    """Sort cuts by the line of the statement that draws them."""
    found: dict[int, list[int]] = {}
    for cut in cuts:
        line = scene.traced.origins[cut].statement.place.line
        found.setdefault(line, []).append(cut)
    return found


def cut_otherwise(scene: Scene, change: Change) -> list[Edit]:
    """Write depth or blade of some cuts, part by part where only some parts change."""
    found = []
    for line, cuts in by_statement(scene, change.cuts).items():
        step = scene.traced.origins[cuts[0]]
        parts = {scene.traced.layout.cuts[cut].part for cut in cuts}
        drawn = {cut for run in scene.runs[line] for cut in scene.cuts[run]}
        word = WORDS[step.statement.word]
        key = "blade" if change.kind == "steeper" else "depth"
        own = [f"{part}_{key}" for part in word.parts]
        whole = drawn <= set(cuts) and not any(slot(scene, step, each) for each in own)
        apart = sorted(f"{part}_{key}" for part in parts if part in word.parts)
        for each in [key] if whole or not apart else apart:
            found += number_set(scene, step, each, change)
    return found


def number_set(scene: Scene, step: Step, key: str, change: Change) -> list[Edit]:
    """Write a depth or an angle of the blade; a wanted opening gives way to the depth."""
    blade = change.kind == "steeper"
    wanted = math.degrees(change.rad) if blade else change.mm
    size = BLADE_STEP_DEG if blade else DEPTH_STEP_MM
    steps = wanted / size
    number = size * (math.ceil(steps - 1e-6) if UP[change.kind] else math.floor(steps + 1e-6))
    text = written(number, "deg" if blade else "mm")
    opens = step.statement.get("opens")
    if key == "depth" and opens is not None:
        start = scene.written.span(opens.place)[0]
        return [Edit(start, scene.written.span(opens.span)[1], f"depth {text}")]
    there = slot(scene, step, key)
    if there is None or there.place is None:
        at = scene.written.code_end(step.statement)
        return [Edit(at, at, f" {key} {text}")]
    inside = math.radians(number) if blade else number
    edits, made = there.turned(inside) if there.form == "knob" else ([], math.nan)
    near = made >= inside - 1e-6 if UP[change.kind] else made <= inside + 1e-6
    return edits if near else [scene.written.replaced(there.place, text)]


def gone(scene: Scene, cuts: Sequence[int]) -> list[Edit]:
    """Remove the statements of some cuts; raises ScorecraftError where they draw others too."""
    statements = []
    for line, mine in by_statement(scene, cuts).items():
        drawn = {cut for run in scene.runs[line] for cut in scene.cuts[run]}
        statement = scene.statement(line)
        if not drawn <= set(mine):
            raise say.DRAWS_MORE(word=statement.word, line=line).error(statement.place)
        statements.append(statement)
    return removed(scene.written, statements)


def reshaped(scene: Scene, change: Change) -> list[Edit]:
    """Move, turn, lengthen or shorten; all copies of a statement go as its first one does."""
    found: list[Edit] = []
    seen = set()
    for index, cut in enumerate(change.cuts):
        step = scene.chosen(cut)
        if step.statement.place.line in seen:
            continue
        seen.add(step.statement.place.line)
        if change.kind == "move":
            found += shifted(scene, step, np.array(change.points[index]))
        elif change.kind == "turn":
            found += turned(scene, step, -change.rad, "own")
            found += shifted(scene, step, swing(step, np.array(change.points[0]), change.rad))
        else:
            by = change.mm if change.kind == "longer" else -change.mm
            found += stretched(scene, step, LASTS[change.ends[index]], by)
    return found


def shifted(scene: Scene, step: Step, by: Floats) -> list[Edit]:
    """Move a run by so much on the sheet (mm)."""
    here = step.drawn.frame.origin
    return moved(scene, Grip(step, here, here + by), "own") if np.hypot(*by) > STILL_MM else []


def swing(step: Step, about: Floats, ccw_rad: float) -> Floats:
    """Tell how far a run's origin moves as it goes about a point of the sheet."""
    apart = step.drawn.frame.origin - about
    return np.asarray(curves.turned(apart[None], -ccw_rad)[0] - apart)


def stretched(scene: Scene, step: Step, lasts: Sequence[bool], by_mm: float) -> list[Edit]:
    """Move ends of a run's cut outward (mm of the sheet, negative: inward).

    Raises ScorecraftError for a figure whose ends no key sets.
    """
    cuts = scene.cuts[step]
    if len(cuts) != 1:
        raise say.NO_END(word=step.statement.word).error(step.statement.place)
    line = scene.traced.layout.cuts[cuts[0]].line
    if step.statement.word in STRAIGHT:
        return grown(scene, step, lasts, by_mm)
    found: list[Edit] = []
    for last in lasts:
        end, inner = (line[-1], line[-2]) if last else (line[0], line[1])
        way = by_mm * (end - inner) / np.hypot(*(end - inner))
        found += end_handle(scene, step, last).dragged(end, end + way, "own")
    return found


def grown(scene: Scene, step: Step, lasts: Sequence[bool], by_mm: float) -> list[Edit]:
    """Make a straight figure longer at its ends (mm of the sheet), and shift it to suit."""
    (handle,) = handles(scene, step, "length")
    assert handle.pull is not None
    number, size = handle.slots[0], size_of(handle.frame)
    total = by_mm * len(lasts)
    ahead = (by_mm if True in lasts else 0.0) - float(handle.pull[1]) * total
    forward = handle.frame.axes[:, 1] / np.hypot(*handle.frame.axes[:, 1])
    edits = number.freed("own").turned(number.value + total / size)[0]
    return [*edits, *shifted(scene, step, ahead * forward)]


def end_handle(scene: Scene, step: Step, last: bool) -> Handle:
    """Find the handle that sets one end of a cut; raises ScorecraftError where there is none."""
    found = {each.name: each for each in handles(scene, step)}
    points = [name for name in found if name.startswith("point ")] or [""]
    word = step.statement.word
    name = (points[0], points[-1])[last] if word != "arc" else ("from", "to")[last]
    if name not in found:
        raise say.NO_END(word=word).error(step.statement.place)
    return found[name]
