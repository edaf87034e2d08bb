"""Whether the loaf has room to grow, told as a finding with what would give it more."""

import numpy as np

from scorecraft.checks import telling_loaf as say
from scorecraft.checks.cure import Cure
from scorecraft.checks.finding import Finding, Severity
from scorecraft.checks.telling import either
from scorecraft.checks.telling_loaf import wants_more
from scorecraft.cuts import Layout
from scorecraft.loaf import places
from scorecraft.loaf.skin import Skin
from scorecraft.opening.result import Opening
from scorecraft.opening.room import Room, direction, where
from scorecraft.opening.tightest import tightest
from scorecraft.units import turntable_degrees


def room(layout: Layout, found: Room, opening: Opening, skin: Skin) -> list[Finding]:
    """Find that a loaf has too little room, or hardly enough, and how to give it more."""
    if found.verdict == "enough":
        return []
    from scorecraft.checks.easier import easier
    from scorecraft.checks.room_cures import room_cures

    severity: Severity = "warning" if found.verdict == "will burst" else "note"
    cures = room_cures(layout, found, skin)
    ways = [*easier(layout, skin), *([either(cures)] if cures else [])]
    figures = {
        "taken": found.taken,
        "least": found.least,
        "least_direction_deg": turntable_degrees(found.least_direction_rad),
    }
    message = told(found, layout, opening) + wants_more(layout.dough.stage, layout.bake.steam)
    place = max((cut.place for cut in layout.cuts), default=None)
    return [
        Finding(
            "room",
            severity,
            message,
            "; or ".join(ways) or say.NO_CURE,
            place,
            figures,
            _about(cures),
            tuple(np.array(line) for cure in cures for each in cure.changes for line in each.lines),
            cures=cures,
        )
    ]


def _about(cures: tuple[Cure, ...]) -> tuple[int, ...]:
    """List the cuts that cures deepen or lengthen."""
    changes = (change for cure in cures for change in cure.changes if change.kind != "remove")
    return tuple(sorted({i for change in changes for i in change.cuts}))


def coarse(opening: Opening) -> list[Finding]:
    """Tell that a layout has so many cuts that the model takes them coarsely."""
    if not opening.panels.passed:
        return []
    message = say.ROUGHLY_MODELLED(count=len(opening.panels.ends))
    return [Finding("room", "note", message, say.ROUGHLY_FIX, None)]


def told(found: Room, layout: Layout, opening: Opening) -> str:
    """Say in a baker's words how much room there is, and where the skin is tightest."""
    start = say.LIKELY_TO_BURST if found.verdict == "will burst" else say.JUST_ENOUGH
    rim, hole = layout.loaf.sheet_rim(), layout.loaf.sheet_hole()
    highest = tightest(opening, rim, hole)
    at = ""
    if highest:
        there = highest[1]
        at = f" {where(there, rim) if hole is None else places.where(layout.loaf, np.array(there))}"
    least = "" if found.even else direction(found.least_direction_rad)
    return say.room_left(start + at, found.taken, least)
