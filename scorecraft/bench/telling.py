"""The plan in a baker's words, for the card and its text."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np

from scorecraft.bench.blade import blade_form
from scorecraft.bench.steps import Pull, Run, Step
from scorecraft.cuts import Cut, Layout
from scorecraft.language.words import WORDS
from scorecraft.practice import LEVEL_TILT_DEG
from scorecraft.units import turntable_degrees

Side = Literal["right", "away", "left", "toward you", ""]
SIDES: tuple[Side, ...] = ("right", "away", "left", "toward you")
AGREES = 0.8
"""Handles lean to one side if their mean direction is at least so long."""
STILL_DEG = 0.5


@dataclass(frozen=True, slots=True)
class Handling:
    """Cuts of a step that are made alike: what, how deep, how the blade is held.

    `names` are what is cut, with its count a time (`2 bud outlines`). `depths_mm` are those at the
    start, middle and end of a stroke; `tilt_rad` is the handle's usual tilt from upright and
    `lean` the side it leans to, "" where that differs. `cuts` are those of the step shown.
    """

    names: tuple[str, ...]
    depths_mm: tuple[float, float, float]
    blade_rad: float
    form: Literal["curved", "straight"]
    tilt_rad: float
    lean: Side
    cuts: tuple[int, ...]


def handlings(layout: Layout, run: Run) -> tuple[Handling, ...]:
    """List what is cut in each step of a run, in order."""
    groups = [_grouped(layout, step) for step in run.steps]
    alike: dict[tuple[float, int], list[Key]] = {}
    for key, pulls in groups[0].items():
        blade = round(math.degrees(layout.cuts[pulls[0].cut].blade_rad))
        alike.setdefault((key[2], blade), []).append(key)
    return tuple(_handling(layout, keys, groups) for keys in alike.values())


Key = tuple[int, str, float]
"""Statement, part and depth (0.1 mm) that cuts have in common."""


def _grouped(layout: Layout, step: Step) -> dict[Key, list[Pull]]:
    found: dict[Key, list[Pull]] = {}
    for pull in step.pulls:
        cut = layout.cuts[pull.cut]
        found.setdefault((cut.family, cut.part, round(cut.depth_mm, 1)), []).append(pull)
    return found


def _handling(
    layout: Layout, keys: Sequence[Key], groups: Sequence[Mapping[Key, Sequence[Pull]]]
) -> Handling:
    pulls = [pull for key in keys for pull in groups[0][key]]
    cut = layout.cuts[pulls[0].cut]
    first, middle, last = np.median([pull.depths_mm for pull in pulls], axis=0)
    return Handling(
        names=_names(layout, keys, groups),
        depths_mm=(float(first), float(middle), float(last)),
        blade_rad=cut.blade_rad,
        form=blade_form(cut.blade_rad),
        tilt_rad=_tilt(pulls),
        lean=_side(pulls),
        cuts=tuple(pull.cut for pull in pulls),
    )


def _names(
    layout: Layout, keys: Sequence[Key], groups: Sequence[Mapping[Key, Sequence[Pull]]]
) -> tuple[str, ...]:
    """Name the sorts of cuts with their counts: a number, or the least and most of the steps."""
    sorts: dict[str, list[Key]] = {}
    for key in keys:
        sorts.setdefault(layout.cuts[groups[0][key][0].cut].name, []).append(key)
    out = []
    for same in sorts.values():
        counts = sorted({sum(len(group.get(key, ())) for key in same) for group in groups})
        number = f"{counts[0]}" if len(counts) == 1 else f"{counts[0]}–{counts[-1]}"
        out.append(f"{number} {called(layout.cuts[groups[0][same[0]][0].cut], counts[-1])}")
    return tuple(out)


def _tilt(pulls: Sequence[Pull]) -> float:
    """Find the usual tilt of the handle from upright (radians)."""
    return float(np.median([pull.tilt_rad for pull in pulls]))


def _side(pulls: Sequence[Pull]) -> Side:
    """Name the side handles lean to, if they agree on one and are not upright."""
    if _upright(_tilt(pulls)):
        return ""
    mean = np.exp(1j * np.array([pull.lean_rad for pull in pulls])).mean()
    if abs(mean) < AGREES:
        return ""
    return SIDES[round(float(np.angle(mean)) / (math.pi / 2)) % 4]


def _upright(tilt_rad: float) -> bool:
    return math.degrees(tilt_rad) < LEVEL_TILT_DEG.value


def called(cut: Cut, count: int) -> str:
    """Call cuts by name, in the plural for more than one."""
    name = cut.name.replace("_", " ")
    word = WORDS.get(cut.word)
    if word is not None and word.group == "texture" and not name.endswith("s"):
        name += " line"
    if count == 1 or name.endswith("s"):
        return name
    return name + ("es" if name.endswith(("ch", "sh", "x", "z")) else "s")


def handle_words(handling: Handling) -> str:
    """Say how to hold the handle."""
    if _upright(handling.tilt_rad):
        return "handle upright"
    if not handling.lean:
        return "handle square to the dough" if handling.blade_rad > math.radians(85) else ""
    return _leaning(handling.tilt_rad, handling.lean)


def lean_words(pulls: Sequence[Pull]) -> str:
    """Say how far and to which side the handle leans, or nothing where it has no one side."""
    side = _side(pulls)
    return _leaning(_tilt(pulls), side) if side else ""


def _leaning(tilt_rad: float, side: Side) -> str:
    degrees = round(math.degrees(tilt_rad) / 5) * 5
    to = side if side in ("away", "toward you") else f"to the {side}"
    return f"handle {degrees:.0f}° {to}"


def blade_words(handling: Handling) -> str:
    """Say how the blade stands to the dough."""
    if handling.blade_rad > math.radians(85):
        return "straight in"
    return f"{handling.form} blade at {math.degrees(handling.blade_rad):.0f}°"


def depth_words(handling: Handling) -> str:
    """Say how deep in the middle of the stroke, in mm."""
    return f"{handling.depths_mm[1]:.1f}".removesuffix(".0") + " mm"


def ends_words(handling: Handling) -> str:
    """Say how deep a stroke begins and ends, or nothing where it is even."""
    first, middle, last = handling.depths_mm
    if abs(first - middle) < 0.1 and abs(last - middle) < 0.1:
        return ""
    return f"begin at {first:.0f}, end at {last:.0f}"


def turn_words(turn_rad: float) -> str:
    """Say how far and which way the table is turned, or that it stays."""
    degrees = math.degrees(turn_rad)
    if abs(degrees) < STILL_DEG:
        return "do not turn"
    return f"turn {abs(degrees):.0f}° {'↻' if degrees > 0 else '↺'}"


def mark_degrees(step: Step) -> int:
    """Where the mark of the table stands at a step, in whole degrees clockwise."""
    return round(turntable_degrees(math.pi / 2 - step.table_rad)) % 360


STAGES = {
    "light": "Light cuts",
    "deep": "Deep cuts, last",
    "all": "All cuts, in the pattern's order",
}
"""What a pass is called; light cuts come first, because the dough moves once it is opened."""
