"""Whether the loaf has room to grow, told as a finding with a cut that would give it."""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np
import shapely

from scorecraft.arrays import Line
from scorecraft.baking import CURE_DEPTHS_MM
from scorecraft.checks import run
from scorecraft.checks import telling_loaf as say
from scorecraft.checks.cures import no_graver, with_cuts, without_light_cuts
from scorecraft.checks.depth import deep_from_mm
from scorecraft.checks.easier import easier
from scorecraft.checks.finding import Finding, Severity
from scorecraft.checks.telling_dough import wants_more
from scorecraft.cuts import Cut, Layout
from scorecraft.loaf.skin import Skin
from scorecraft.opening.panel_size import panel_for
from scorecraft.opening.predict import predict
from scorecraft.opening.result import Opening
from scorecraft.opening.room import Room, direction, where
from scorecraft.opening.room import room as room_of
from scorecraft.practice import (
    DECORATIVE_BLADE_DEG,
    DEPTH_STEP_MM,
    EXPANSION_BLADE_DEG,
    RIM_MARGIN_MM,
)
from scorecraft.units import turntable_degrees

TRIED = ((1, 0.55), (1, 0.7), (2, 0.55), (2, 0.7), (2, 0.8))
"""Cuts that are tried, in this order: how many through the crown, and their share of the way from
rim to rim."""
COARSE_PANELS = 1_100.0
"""About so many panels do for trying cures."""
COARSE_MM = 4.0
"""Panels for trying cures: coarse, for a share of growth to a hundredth."""
SPARE = 0.01
"""Room that a cure leaves over, for what coarse panels miss."""
NEARBY_DEG = 30.0
"""A cure may run this far off the direction that asks for it, to cross fewer cuts."""
MOST_LEFT_OUT = 0.6
"""Share of the cuts that a cure leaves out at most, for others to have their room."""


@dataclass(frozen=True, slots=True)
class Cure:
    """What to do in a baker's words, the layout it makes, its cuts it is about, lines it adds."""

    told: str
    layout: Layout
    cuts: tuple[int, ...] = ()
    lines: tuple[Line, ...] = ()


def room(layout: Layout, opening: Opening, skin: Skin) -> list[Finding]:
    """Find that a loaf has too little room, or hardly enough, and how to give it more."""
    found = room_of(opening, layout.loaf.sheet_rim(), layout.bake.strength)
    if found.verdict == "enough":
        return []
    severity: Severity = "warning" if found.verdict == "will burst" else "note"
    cure = cured(layout, found, skin)
    ways = [*easier(layout, skin), *([cure.told] if cure else [])]
    hint = "; or ".join(ways) or say.NO_CURE
    figures = {
        "taken": found.taken,
        "least": found.least,
        "least_direction_deg": turntable_degrees(found.least_direction_rad),
    }
    message = told(found, layout) + wants_more(layout.dough.stage, layout.bake.steam)
    place = max((cut.place for cut in layout.cuts), default=None)
    cuts, lines = (cure.cuts, cure.lines) if cure else ((), ())
    return [Finding("room", severity, message, hint, place, figures, cuts, lines)]


def coarse(opening: Opening) -> list[Finding]:
    """Tell that a layout has so many cuts that the model takes them coarsely."""
    if not opening.panels.passed:
        return []
    count = len(opening.panels.ends)
    return [Finding("room", "note", say.roughly_modelled(count), say.ROUGHLY_FIX, None)]


def told(found: Room, layout: Layout) -> str:
    """Say in a baker's words how much room there is, and where the skin is tightest."""
    start = say.LIKELY_TO_BURST if found.verdict == "will burst" else say.JUST_ENOUGH
    rim = layout.loaf.sheet_rim()
    at = f" {where(found.highest_at, rim)}" if found.highest_at else ""
    least = "" if found.even else direction(found.least_direction_rad)
    return say.room_left(start + at, found.taken, least)


def cured(layout: Layout, found: Room, skin: Skin) -> Cure | None:
    """Find the gentlest cure that leaves enough room and that the other checks let pass, or None.

    What the drawing alone speaks against is never run through the model.
    """
    before = run(layout)
    for alike in (*deeper(layout), *added(layout, found)):
        cure = next((each for each in alike if no_graver(before, run(each.layout))), None)
        if cure is not None:
            lines = [cut.line for cut in cure.layout.cuts]
            coarse = max(COARSE_MM, panel_for(lines, COARSE_PANELS))
            opened = predict(cure.layout, skin, panel_mm=coarse)
            if room_of(opened, layout.loaf.sheet_rim()).taken >= found.enough + SPARE:
                return cure
    return None


def deeper(layout: Layout) -> Iterator[tuple[Cure, ...]]:
    """Cut the expansion cuts deeper, all alike; those with a wished opening are left as wished."""
    depth = _cure_depth(layout)
    cuts = tuple(
        replace(cut, depth_mm=depth) if _may_be_deeper(cut) and cut.depth_mm < depth else cut
        for cut in layout.cuts
    )
    changed = tuple(i for i, cut in enumerate(cuts) if cut is not layout.cuts[i])
    if changed:
        yield (Cure(say.expansion_deeper(depth), replace(layout, cuts=cuts), changed),)


def _may_be_deeper(cut: Cut) -> bool:
    return cut.kind == "expansion" and cut.opens_mm is None


def added(layout: Layout, found: Room) -> Iterator[tuple[Cure, ...]]:
    """Add one or two cuts through the crown, short ones first.

    Each is tried at a slant, upright, and upright with the light cuts in its way left out.
    """
    # a cut gives room across itself, so it runs square to the direction with the least
    wanted = found.least_direction_rad + math.pi / 2
    theta = clearest(layout, wanted, math.pi if found.even else math.radians(NEARBY_DEG))
    depth = _cure_depth(layout)
    for count, share in TRIED:
        lines = tuple(across(layout, theta + k * math.pi / count, share) for k in range(count))
        if not _through_traces(layout, lines):
            slanted, upright = (
                with_cuts(layout, lines, depth, math.radians(blade.value))
                for blade in (EXPANSION_BLADE_DEG, DECORATIVE_BLADE_DEG)
            )
            told = _add(lines, depth)
            free, left_out = without_light_cuts(upright, lines, depth)
            others = say.without_light(told, left_out)
            yield (
                Cure(told, slanted, lines=lines),
                Cure(say.blade_upright(told), upright, lines=lines),
                *(
                    [Cure(others, free, lines=lines)]
                    if 0 < left_out <= MOST_LEFT_OUT * len(layout.cuts)
                    else []
                ),
            )


def _add(lines: tuple[Line, ...], depth: float) -> str:
    long = float(np.hypot(*(lines[0][1] - lines[0][0])))
    return say.add_expansion(len(lines), [span(line) for line in lines], long, depth)


def _cure_depth(layout: Layout) -> float:
    """Depth (mm) of a cut that is advised: as its dough asks, as the loaf's height allows."""
    step = DEPTH_STEP_MM.value
    return min(
        CURE_DEPTHS_MM[layout.dough.stage].value,
        step * math.floor(deep_from_mm(layout.loaf) / step),
    )


def _through_traces(layout: Layout, lines: tuple[Line, ...]) -> bool:
    """Whether any line runs through a drawing that was traced: no cut belongs there."""
    drawings: dict[int, list[Line]] = {}
    for cut in layout.cuts:
        if cut.word == "trace":
            drawings.setdefault(cut.figure, []).append(cut.line)
    hulls = [shapely.MultiPoint(np.concatenate(each)).convex_hull for each in drawings.values()]
    return any(hull.intersects(shapely.LineString(line)) for hull in hulls for line in lines)


def across(layout: Layout, theta: float, share: float) -> Line:
    """Lay a straight cut through the crown: a share of the way to the rim each side.

    It stays as far above the rim as every cut should.
    """
    ends = np.array([theta + math.pi, theta])
    reach = layout.loaf.reach(ends)
    way = np.minimum(share * reach, np.maximum(reach - RIM_MARGIN_MM.value, 0.0))
    line: Line = way[:, None] * np.column_stack([np.cos(ends), np.sin(ends)])
    return line


def clearest(layout: Layout, wanted: float, off: float) -> float:
    """Find the direction near the wanted one whose cut crosses the fewest others."""
    steps = np.arange(-off, off + 1e-9, math.radians(5.0))
    tries = wanted + steps[np.argsort(np.abs(steps), kind="stable")]
    if not layout.cuts:
        return float(wanted)
    tree = shapely.STRtree([shapely.LineString(cut.line) for cut in layout.cuts])
    lines = [shapely.LineString(across(layout, theta, TRIED[-1][1])) for theta in tries]
    crossed = np.bincount(tree.query(lines, predicate="intersects")[0], minlength=len(lines))
    return float(tries[int(np.argmin(crossed))])


def span(line: Line) -> str:
    """Tell a straight cut by the clock, and by its turntable angle for the pattern's text."""
    theta = math.atan2(*(line[1] - line[0])[::-1])
    return say.span(direction(theta), round(turntable_degrees(theta)) % 180)
