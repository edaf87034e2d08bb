"""What `check --json` prints: a design as plain data, or why there is none.

`check.schema.json` beside this file describes it. Lengths are mm, angles degrees, each with its
unit in its name; numbers are rounded to a thousandth.
"""

from __future__ import annotations

from collections.abc import Mapping
from math import degrees
from pathlib import Path
from typing import TYPE_CHECKING

from scorecraft.checks.cure import Change, ChangeKind, Cure
from scorecraft.checks.finding import Finding
from scorecraft.cuts import Cut, Layout
from scorecraft.designing import Design
from scorecraft.errors import Problem, ScorecraftError
from scorecraft.groups import Group, groups
from scorecraft.json_data import JsonObject
from scorecraft.loaf.dome import Loaf
from scorecraft.loaf.dough import Dough
from scorecraft.units import turntable_degrees

if TYPE_CHECKING:
    from scorecraft.bench import Work
    from scorecraft.opening.room import Room

FORMAT = 1
"""Goes up when a name goes away or changes its meaning; new names may come without."""
SCHEMA = Path(__file__).with_name("check.schema.json")
"""The JSON Schema (draft 2020-12) of what is printed."""
LAID: Mapping[int, str] = {-1: "left", 1: "right"}
"""To which side what scissors free is laid."""
NOT_PLANNED = {"order": None, "step": None, "seconds": None}
"""What a cut has instead where no order of work was made."""


def as_data(design: Design, *, quick: bool = False) -> JsonObject:
    """Tell everything of a design; `quick` leaves out what the bench and the opening model tell."""
    from scorecraft.drawing.bloom.lens import baked_loaf

    layout = design.layout
    opening = None if quick else design.opening
    planned = {} if quick else bench_order(design.work)
    known = groups(layout) if quick else design.groups
    told = {cut: group_data(group, quick) for group in known for cut in group.cuts}
    return {
        "format": FORMAT,
        "title": layout.title,
        "loaf": loaf_data(layout.loaf),
        "dough": dough_data(layout.dough),
        "shaped": shaped_data(layout),
        "baked": size_data(baked_loaf(layout)),
        "cuts": [
            told[index] | cut_data(cut, layout, length) | planned.get(index, NOT_PLANNED)
            for index, (cut, length) in enumerate(zip(layout.cuts, layout.lengths_mm, strict=True))
        ],
        "bench": None if quick else bench_data(design.work),
        "findings": [finding_data(each) for each in (design.checked if quick else design.findings)],
        "opening": [
            {
                "cut": index,
                **told[index],
                "widest_mm": rounded(width),
                "widest_range_mm": ranged(*design.ranges.widest_mm[index]),
            }
            for index, width in enumerate(opening.widest_mm if opening else ())
        ],
        "room": room_data(design.room, design.ranges.taken) if opening else None,
    }


def refused(error: ScorecraftError) -> JsonObject:
    """Tell why there is no design: every problem of an unreadable pattern, or of a request."""
    return {"format": FORMAT, "errors": [problem_data(each) for each in error.problems]}


def problem_data(problem: Problem) -> JsonObject:
    """Tell one problem; its place is null where it lies in no text."""
    place = problem.place
    return {
        "message": problem.message,
        "fix": problem.hint,
        **{key: getattr(place, key, None) for key in ("file", "line", "column", "length")},
    }


def loaf_data(loaf: Loaf) -> JsonObject:
    """Tell the shape and the size of a loaf."""
    return {"shape": loaf.shape, **size_data(loaf)}


def dough_data(dough: Dough) -> JsonObject:
    """Tell how far proofed, how wet and how warm the dough is."""
    return {
        "proof": dough.stage,
        "times": rounded(dough.times),
        "culture": dough.culture,
        "hydration": rounded(dough.hydration),
        "temperature_c": rounded(dough.temperature_c),
        "kitchen_c": rounded(dough.kitchen_c),
    }


def size_data(loaf: Loaf) -> JsonObject:
    """Tell how wide, long and high a loaf is, its hole and the sides that a tin holds."""
    return {
        "width_mm": rounded(loaf.width_mm),
        "length_mm": rounded(loaf.length_mm),
        "height_mm": rounded(loaf.height_mm),
        "hole_mm": rounded(loaf.hole.width_mm) if loaf.hole else None,
        "wall_mm": rounded(loaf.wall_mm) if loaf.held else None,
    }


def shaped_data(layout: Layout) -> JsonObject | None:
    """Tell how large the dough is once hands have pulled it open or laid it aside, if they do."""
    from scorecraft.shaping.shaped import shaped

    found = shaped(layout)
    if found is None:
        return None
    wide, long = found.size_mm
    return {"width_mm": rounded(wide), "length_mm": rounded(long)}


def bench_data(work: Work) -> JsonObject:
    """Tell what the cutting takes, and how long the dough waits for it."""
    from scorecraft.bench.pace import between

    return {
        "hand": work.bench.hand,
        "order": work.bench.order,
        "steps": sum(1 for _ in work.steps),
        "turned_deg": rounded(degrees(work.effort.turned_rad)),
        "skill": work.bench.skill,
        "seconds": rounded(work.effort.seconds),
        "seconds_range": ranged(*between(work.effort.seconds, work.bench.skill)),
        "loaves": work.bench.loaves,
        "batch": batch_data(work),
        "holding_time_minutes": rounded(work.allowed_s / 60),
    }


def batch_data(work: Work) -> JsonObject | None:
    """Tell what many equal loaves in a row take one person; None for a single loaf."""
    from scorecraft.bench.batch import batch_of

    batch = batch_of(work)
    if batch is None:
        return None
    return {
        "boards": list(batch.boards),
        "in_time": batch.in_time,
        "loaf_seconds_range": ranged(*batch.loaf_s),
        "board_seconds_range": ranged(*batch.board_s),
        "seconds_range": ranged(*batch.all_s),
    }


def bench_order(work: Work) -> dict[int, JsonObject]:
    """Tell of each cut, by its index, when it is made, at which step, and how long it takes."""
    made = [(step.number, pull) for step in work.steps for pull in step.pulls]
    return {
        pull.cut: {"order": order, "step": step, "seconds": rounded(pull.seconds)}
        for order, (step, pull) in enumerate(made, start=1)
    }


def room_data(found: Room, taken_range: tuple[float, float]) -> JsonObject:
    """Tell the room as shares of the growth, and a turntable direction in degrees."""
    return {
        "least": rounded(found.least),
        "least_direction_deg": rounded(turntable_degrees(found.least_direction_rad) % 180) % 180,
        "most": rounded(found.most),
        "taken": rounded(found.taken),
        "enough": rounded(found.enough),
        "taken_range": ranged(*taken_range),
        "verdict": found.verdict,
    }


def group_data(group: Group, quick: bool) -> JsonObject:
    """Tell which cuts of the pattern these are: the number on the prints, and the lasting key."""
    return {"number": None if quick else group.number, "key": group.key}


def cut_words(cut: Cut, length_mm: float) -> JsonObject:
    """Tell one cut in words and figures, without its line."""
    return {
        "name": cut.name,
        "kind": cut.kind,
        "depth_mm": rounded(cut.depth_mm),
        "blade_deg": rounded(degrees(cut.blade_rad)),
        "length_mm": rounded(length_mm),
    }


def cut_data(cut: Cut, layout: Layout, length_mm: float) -> JsonObject:
    """Tell one cut; points are [x, y] mm."""
    plan = layout.loaf.sheet_to_plan(cut.line)
    return cut_words(cut, length_mm) | {
        "wished_opening_mm": None if cut.opens_mm is None else rounded(cut.opens_mm),
        "through": cut.through,
        "pulled_mm": rounded(cut.pulled_mm) if cut.pulled_mm else None,
        "hinge_mm": None if cut.hinge_mm is None else rounded(cut.hinge_mm),
        "laid": LAID.get(cut.laid),
        "sheet": [[rounded(x), rounded(y)] for x, y in cut.line],
        "plan": [[rounded(x), rounded(y)] for x, y in plan],
        "line": cut.place.line,
    }


def finding_data(finding: Finding) -> JsonObject:
    """Tell one finding; `cuts` are indexes from 0 in the list of cuts."""
    place = finding.place
    return {
        "check": finding.check,
        "severity": finding.severity,
        "message": finding.message,
        "fix": finding.hint,
        "figures": {name: rounded(value) for name, value in finding.figures.items()},
        "cuts": list(finding.cuts),
        "fixes": [cure_data(cure) for cure in finding.cures],
        "line": place.line if place else None,
        "column": place.column if place else None,
    }


def ranged(least: float, most: float) -> list[float]:
    """Tell a range as [least, most]."""
    return [rounded(least), rounded(most)]


def cure_data(cure: Cure) -> JsonObject:
    """Tell a cure in words and as its changes; places are [x, y] mm on the sheet."""
    return {"told": cure.told, "changes": [change_data(change) for change in cure.changes]}


ANGLES: Mapping[ChangeKind, str] = {"steeper": "blade_deg", "add": "blade_deg", "turn": "turn_deg"}
"""What the angle of a change is called: the blade's to the dough, or a turn."""


def change_data(change: Change) -> JsonObject:
    """Tell one change of a cure; a turn is counter-clockwise, a blade's angle that to the dough."""
    name = ANGLES.get(change.kind)
    angle: JsonObject = {name: rounded(degrees(change.rad))} if name else {}
    return angle | {
        "kind": change.kind,
        "cuts": list(change.cuts),
        "mm": rounded(change.mm),
        "ends": list(change.ends),
        "points": [[rounded(x), rounded(y)] for x, y in change.points],
        "lines": [[[rounded(x), rounded(y)] for x, y in line] for line in change.lines],
    }


def rounded(value: float) -> float:
    """Round to a thousandth, without a minus zero."""
    return round(float(value), 3) + 0.0
