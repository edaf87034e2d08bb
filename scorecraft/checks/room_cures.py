"""Cures for too little room: a deeper or longer expansion cut, or another one at a free place."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

import numpy as np
import shapely

from scorecraft.arrays import Line
from scorecraft.baking import CURE_DEPTHS_MM
from scorecraft.checks import run
from scorecraft.checks import telling_loaf as say
from scorecraft.checks.changes import added, applied, at_depth, lengthened, without
from scorecraft.checks.cure import Change, Cure
from scorecraft.checks.cures import MOST_CURES, in_the_way, no_graver
from scorecraft.checks.finding import Finding
from scorecraft.checks.symmetry import across, is_fill, places
from scorecraft.curves import length
from scorecraft.cuts import Cut, Layout
from scorecraft.loaf.skin import Skin
from scorecraft.opening.panel_size import panel_for
from scorecraft.opening.predict import predict
from scorecraft.opening.room import Room, direction
from scorecraft.practice import (
    DECORATIVE_BLADE_DEG,
    DEEPEST_USUAL_MM,
    DEPTH_STEP_MM,
    EXPANSION_BLADE_DEG,
)
from scorecraft.units import turntable_degrees

COARSE_PANELS = 1_100.0
"""About so many panels do for trying cures."""
COARSE_MM = 4.0
"""Panels for trying cures: coarse, for a share of growth to a hundredth."""
SPARE = 0.01
"""Room that a cure leaves over, for what coarse panels miss."""
MOST_RUNS = 8
"""The most layouts that are run through the model for one finding."""
LONGER_MM = 5.0
"""Cuts are made longer in steps of this, at either end."""
MOST_LONGER = 1.0
"""A cut is made longer by no more than this share of itself at either end."""
STROKES = ("slash", "arc", "wave", "path", "cross")
"""Figures that can be made longer by themselves."""
MOST_LEFT_OUT = 0.6
"""Share of the cuts that a cure leaves out at most, for others to have their room."""


@dataclass(slots=True)
class Trial:
    """Tries cures on a layout, within a number of runs of the model, for a room that is wanted."""

    layout: Layout
    skin: Skin
    wanted: float
    before: Sequence[Finding] = field(init=False)
    runs: int = MOST_RUNS

    def __post_init__(self) -> None:
        self.before = run(self.layout)

    def passes(self, changes: tuple[Change, ...]) -> bool:
        """Whether the drawing alone speaks against changes: those are never run."""
        return no_graver(self.before, run(applied(self.layout, changes)))

    def enough(self, changes: tuple[Change, ...]) -> bool:
        """Whether a layout that is changed has room enough, by a run of the model."""
        if self.runs <= 0:
            return False
        self.runs -= 1
        made = applied(self.layout, changes)
        panel = max(COARSE_MM, panel_for([cut.line for cut in made.cuts], COARSE_PANELS))
        return predict(made, self.skin, panel_mm=panel).work_taken >= self.wanted + SPARE

    def least(self, steps: Sequence[tuple[Change, ...]]) -> tuple[Change, ...] | None:
        """Find the first of growing steps that helps, None where the last that passes does not."""
        high = next((k for k in reversed(range(len(steps))) if self.passes(steps[k])), -1)
        if high < 0 or not self.enough(steps[high]):
            return None
        low = -1
        while high - low > 1:
            middle = (low + high) // 2
            good = self.enough(steps[middle]) and self.passes(steps[middle])
            low, high = (low, middle) if good else (middle, high)
        return steps[high]


def room_cures(layout: Layout, found: Room, skin: Skin) -> tuple[Cure, ...]:
    """Find cures that leave enough room and that the other checks let pass, the gentlest first."""
    trial, cures = Trial(layout, skin, found.enough), list[Cure]()
    for way in (deeper, longer, longer_and_deeper, another, instead_of_light):
        last = way in (longer_and_deeper, instead_of_light)
        if len(cures) < (1 if last else MOST_CURES):
            cures += way(trial, found)
    return tuple(cures)


def deeper(trial: Trial, _: Room) -> Iterator[Cure]:
    """Cut the expansion cuts deeper, all alike, or the deepest alone; no wished ones."""
    cuts = trial.layout.cuts
    most = min(DEEPEST_USUAL_MM.value, trial.layout.deep_from_mm)
    every = [i for i, cut in enumerate(cuts) if cut.kind == "expansion" and cut.opens_mm is None]
    if not every:
        return
    top = max(cuts[i].depth_mm for i in every)
    main = [i for i in every if cuts[i].depth_mm == top]
    for about in (every,) if main == every else (main, every):
        least = min(cuts[i].depth_mm for i in about)
        step = DEPTH_STEP_MM.value
        depths = step * np.arange(math.floor(least / step) + 1, math.floor(most / step) + 1)
        steps = [
            (at_depth(trial.layout, [i for i in about if cuts[i].depth_mm < depth], float(depth)),)
            for depth in depths
        ]
        if changes := trial.least(steps):
            (change,) = changes
            those = say.those([cuts[i] for i in change.cuts])
            yield Cure(say.DEEPER(those=those, depth=change.mm), changes)
            return


def longer(trial: Trial, _: Room) -> Iterator[Cure]:
    """Make single expansion cuts longer at both ends, all alike."""
    about, ways = _may_grow(trial.layout)
    if changes := trial.least([(lengthened(about, by),) for by in ways]):
        yield Cure(_longer(trial.layout, about, changes[0].mm), changes)


def longer_and_deeper(trial: Trial, _: Room) -> Iterator[Cure]:
    """Make them longer and as deep as is advised, where it takes both."""
    cuts, depth = trial.layout.cuts, _cure_depth(trial.layout)
    about, ways = _may_grow(trial.layout)
    if any(cuts[i].opens_mm is not None or cuts[i].depth_mm >= depth for i in about):
        return
    deep = at_depth(trial.layout, about, depth)
    if changes := trial.least([(lengthened(about, by), deep) for by in ways]):
        longer = _longer(trial.layout, about, changes[0].mm)
        yield Cure(say.LONGER_AND_DEEPER(longer=longer, depth=depth), changes)


def _longer(layout: Layout, about: list[int], by: float) -> str:
    those = say.those([layout.cuts[i] for i in about])
    return say.LONGER(those=those, both=2 * by, by=by)


def _may_grow(layout: Layout) -> tuple[list[int], list[float]]:
    """List the expansion cuts that can be made longer, and by how much (mm) it is tried."""
    cuts = enumerate(layout.cuts)
    about = [i for i, cut in cuts if cut.kind == "expansion" and _is_stroke(cut)]
    length = min((float(layout.lengths_mm[i]) for i in about), default=0.0)
    return about, np.arange(LONGER_MM, MOST_LONGER * length + 1e-9, LONGER_MM).tolist()


def _is_stroke(cut: Cut) -> bool:
    """Whether a cut is a figure by itself, and open."""
    ends = float(np.hypot(*(cut.line[-1] - cut.line[0])))
    return (cut.word in STROKES or cut.word == cut.part) and ends > 2 * LONGER_MM


def another(trial: Trial, found: Room) -> Iterator[Cure]:
    """Add expansion cuts at free places: slanted ones lean outward, those that cross are upright.

    A cut gives room across itself, so one through the crown runs square to the direction with the
    least.
    """
    depth = _cure_depth(trial.layout)
    wanted = found.least_direction_rad + math.pi / 2
    for lines in places(trial.layout, wanted, depth):
        blades = (DECORATIVE_BLADE_DEG,) if _cross(lines) else (
            EXPANSION_BLADE_DEG, DECORATIVE_BLADE_DEG,
        )  # fmt: skip
        for blade in blades:
            changes = (added(lines, depth, math.radians(blade.value)),)
            if not trial.passes(changes):
                continue
            if trial.enough(changes):
                yield Cure(_told(lines, depth, blade is DECORATIVE_BLADE_DEG), changes)
                return
            break


def instead_of_light(trial: Trial, found: Room) -> Iterator[Cure]:
    """Add a cut through a texture, whose light cuts in the way are left out."""
    layout, depth = trial.layout, _cure_depth(trial.layout)
    upright = math.radians(DECORATIVE_BLADE_DEG.value)
    for share in (0.55, 0.7, 0.8):
        line = across(layout, found.least_direction_rad + math.pi / 2, share)
        gone = in_the_way(layout, [line], depth)
        if not 0 < len(gone) <= MOST_LEFT_OUT * len(layout.cuts):
            continue
        changes = (without(gone), added([line], depth, upright))
        if not all(is_fill(layout.cuts[i]) for i in gone):
            continue
        if trial.passes(changes) and trial.enough(changes):
            told = _told((line,), depth, True)
            yield Cure(say.WITHOUT_LIGHT(told=told, left_out=len(gone)), changes)
            return


def _cross(lines: tuple[Line, ...]) -> bool:
    drawn = [shapely.LineString(line) for line in lines]
    return any(one.crosses(other) for k, one in enumerate(drawn) for other in drawn[:k])


def _cure_depth(layout: Layout) -> float:
    """Depth (mm) of a cut that is advised: as its dough asks, as the loaf's height allows."""
    step = DEPTH_STEP_MM.value
    deepest = step * math.floor(layout.deep_from_mm / step)
    return min(CURE_DEPTHS_MM[layout.dough.stage].value, deepest)


def _told(lines: tuple[Line, ...], depth: float, upright: bool) -> str:
    """Say where cuts are added: through the crown, beside it or around it."""
    line = lines[0]
    long = length(line)
    if len(line) > 2:
        out = float(np.hypot(*line[len(line) // 2]))
        middles = [each[len(each) // 2] for each in lines]
        first = min(round(turntable_degrees(math.atan2(y, x))) % 360 for x, y in middles)
        told = say.ADD_AROUND(count=len(lines), first=first, out=out, long=long, depth=depth)
    elif float(np.hypot(*line.mean(axis=0))) < 1.0:
        told = say.add_expansion(len(lines), [span(each) for each in lines], long, depth)
    else:
        aside = np.hypot(*line.mean(axis=0))
        told = say.ADD_BESIDE(along=span(line), aside=aside, long=long, depth=depth)
    return say.BLADE_UPRIGHT(told=told) if upright else told


def span(line: Line) -> str:
    """Tell a straight cut by the clock, and by its turntable angle for the pattern's text."""
    theta = math.atan2(*(line[1] - line[0])[::-1])
    return say.SPAN(hours=direction(theta), turn=round(turntable_degrees(theta)) % 180)
