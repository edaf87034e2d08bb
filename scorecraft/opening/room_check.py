"""Whether the loaf has room to grow, told as a finding with a cut that would give it."""

import math
from dataclasses import dataclass

import numpy as np
import shapely

from scorecraft.checks.finding import Finding, Severity
from scorecraft.cuts import Layout, Line
from scorecraft.loaf.skin import Skin
from scorecraft.opening.predict import predict
from scorecraft.opening.result import Opening
from scorecraft.opening.room import Room, direction, room, verdict_of, where
from scorecraft.practice import CURE_DEPTH_MM
from scorecraft.units import turntable_degrees

TRIED = ((1, 0.55), (1, 0.7), (2, 0.55), (2, 0.7), (2, 0.8))
"""Cures in the order they are tried: how many cuts through the crown, and their share of the way
from rim to rim."""
COARSE_MM = 4.0
"""Panels for trying cures: coarse, for a share of growth to a hundredth."""
NEARBY_DEG = 30.0
"""A cure may run this far off the direction that asks for it, to cross fewer cuts."""


@dataclass(frozen=True, slots=True)
class Cure:
    """Expansion cuts through the crown, each (2, 2) on the sheet (mm), that give enough room."""

    lines: tuple[Line, ...]

    def told(self) -> str:
        """Say what to cut."""
        spans = [span(line) for line in self.lines]
        long = float(np.hypot(*(self.lines[0][1] - self.lines[0][0])))
        what = "an expansion cut" if len(spans) == 1 else "two expansion cuts"
        return (
            f"add {what} through the crown along {' and '.join(spans)}, "
            f"{long:.0f} mm long and {CURE_DEPTH_MM.value:.0f} mm deep"
        )


def room_findings(layout: Layout, opening: Opening, skin: Skin) -> list[Finding]:
    """Find that a loaf has too little room, or hardly enough, and how to give it more."""
    found = room(opening, layout.loaf.sheet_rim())
    if found.verdict == "enough":
        return []
    severity: Severity = "warn" if found.verdict == "will burst" else "note"
    cure = cured(layout, found, skin)
    hint = cure.told() if cure else "cut the expansion cuts deeper, or bake with less spring"
    figures = {
        "taken": found.taken,
        "least": found.least,
        "least_direction_deg": turntable_degrees(found.least_direction_rad),
    }
    place = max((cut.place for cut in layout.cuts), default=None)
    lines = cure.lines if cure else ()
    return [Finding("room", severity, told(found, layout), hint, place, figures, lines)]


def told(found: Room, layout: Layout) -> str:
    """Say in a baker's words how much room there is, and where the skin is tightest."""
    start = "likely to burst" if found.verdict == "will burst" else "just enough room; tightest"
    rim = layout.loaf.sheet_rim()
    at = f" {where(found.highest_at, rim)}" if found.highest_at else ""
    least = "" if found.even else f", with least room {direction(found.least_direction_rad)}"
    return f"{start}{at}: the cuts take up {found.taken:.0%} of the growth{least}"


def cured(layout: Layout, found: Room, skin: Skin) -> Cure | None:
    """Find the smallest of a few cures that leaves enough room, or None."""
    # a cut gives room across itself, so it runs square to the direction with the least
    wanted = found.least_direction_rad + math.pi / 2
    theta = clearest(layout, wanted, math.pi if found.even else math.radians(NEARBY_DEG))
    for count, share in TRIED:
        lines = tuple(across(layout, theta + k * math.pi / count, share) for k in range(count))
        added = [(line, CURE_DEPTH_MM.value) for line in lines]
        opened = predict(layout, skin, added=added, panel_mm=COARSE_MM)
        if verdict_of(room(opened, layout.loaf.sheet_rim()).taken) == "enough":
            return Cure(lines)
    return None


def across(layout: Layout, theta: float, share: float) -> Line:
    """Lay a straight cut through the crown: a share of the way from rim to rim each side."""
    ends = np.array([theta + math.pi, theta])
    way = share * layout.loaf.reach(ends)
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
    """Tell a straight cut by its turntable angles, like `60°–240°`."""
    way = line[1] - line[0]
    one = round(turntable_degrees(math.atan2(way[1], way[0]))) % 180
    return f"{one}°–{one + 180}°"
