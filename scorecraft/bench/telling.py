"""The plan in a baker's words, for the card and its text."""

import math
from collections.abc import Mapping, Sequence
from fractions import Fraction
from typing import Literal

import numpy as np

from scorecraft.bench.batch import Batch
from scorecraft.bench.blade import blade_form, upright
from scorecraft.bench.clock import told_between
from scorecraft.bench.steps import LEVEL_TILT_DEG, Pull, Run, Step
from scorecraft.cuts import Cut, Layout
from scorecraft.frozen import dataclass
from scorecraft.groups import called, spans

Side = Literal["right", "away", "left", "toward you", ""]
SIDES: tuple[Side, ...] = ("right", "away", "left", "toward you")
AGREES = 0.8
"""Handles lean to one side if their mean direction is at least so long."""
NUMBERS = ", no. "
"""Between what is cut and its numbers on the guide."""
STILL_DEG = 0.5
EXACT_DEG = 0.005
"""An angle that is so near to a part of a degree is exactly that."""
PARTS = {
    Fraction(1, 2): "½", Fraction(1, 3): "⅓", Fraction(2, 3): "⅔", Fraction(1, 4): "¼",
    Fraction(3, 4): "¾",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Handling:
    """Cuts of a step that are made alike: what, how deep, how the blade is held.

    `names` are what is cut, with its count a time and its number on the guide (`2 bud outlines,
    no. 4`); where steps are no copies, the count of all of them together. `depths_mm` are those
    at the start, middle and end of a stroke; `tilt_rad` is the handle's usual tilt from upright
    and `lean` the side it leans to, "" where that differs. `cuts` are those it tells of. Cuts that
    part the dough say how deep in words, `severed`, and what the hands do then, `aside`.
    """

    names: tuple[str, ...]
    depths_mm: tuple[float, float, float]
    blade_rad: float
    form: Literal["curved", "straight", "scissors"]
    tilt_rad: float
    lean: Side
    cuts: tuple[int, ...]
    severed: str = ""
    aside: str = ""

    @property
    def held_upright(self) -> bool:
        """Whether the handle is held straight up, whichever way the dough slopes."""
        return _upright(self.tilt_rad)

    @property
    def scissors(self) -> bool:
        """Whether it is cut with scissors, all but a hinge."""
        return self.form == "scissors"


def handlings(layout: Layout, run: Run, numbers: Mapping[int, int]) -> tuple[Handling, ...]:
    """List what is cut in a row of the card, in order; `numbers` are those of the cuts.

    Where the steps are copies it is what is cut in each of them, else what is cut in all.
    """
    steps = run.steps[:1] if run.copies else run.steps
    alike: dict[tuple[float, int, str], list[Pull]] = {}
    for pull in (pull for step in steps for pull in step.pulls):
        cut = layout.cuts[pull.cut]
        word = severed_words(cut)
        key = 0.0 if word else round(cut.depth_mm, 1), round(math.degrees(cut.blade_rad)), word
        alike.setdefault(key, []).append(pull)
    return tuple(handling_of(layout, pulls, numbers) for pulls in alike.values())


def handling_of(layout: Layout, pulls: Sequence[Pull], numbers: Mapping[int, int]) -> Handling:
    """Tell how pulls that are made alike are made."""
    cut = layout.cuts[pulls[0].cut]
    first, middle, last = np.median([pull.depths_mm for pull in pulls], axis=0)
    return Handling(
        names=_names(layout, pulls, numbers),
        depths_mm=(float(first), float(middle), float(last)),
        blade_rad=cut.blade_rad,
        form="scissors" if cut.hinge_mm is not None else blade_form(cut.blade_rad),
        tilt_rad=_tilt(pulls),
        lean=_side(pulls),
        cuts=tuple(pull.cut for pull in pulls),
        severed=severed_words(cut),
        aside=aside_words([layout.cuts[pull.cut] for pull in pulls]),
    )


def _names(layout: Layout, pulls: Sequence[Pull], numbers: Mapping[int, int]) -> tuple[str, ...]:
    """Name the sorts of cuts, each with its count and the numbers of the guide."""
    sorts: dict[str, list[int]] = {}
    for pull in pulls:
        sorts.setdefault(layout.cuts[pull.cut].name, []).append(pull.cut)
    return tuple(
        f"{len(same)} {called(layout.cuts[same[0]], len(same))}{NUMBERS}"
        f"{spans({numbers[index] for index in same})}"
        for same in sorts.values()
    )


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
    return math.degrees(tilt_rad) < LEVEL_TILT_DEG


def severed_words(cut: Cut) -> str:
    """Say how deep a cut goes that parts the dough, or nothing."""
    if cut.hinge_mm is not None:
        return f"leave {cut.hinge_mm:.3g} mm"
    return "right through" if cut.through else ""


def aside_words(cuts: Sequence[Cut]) -> str:
    """Say what the hands do after cuts that part the dough: pull them open, lay pieces aside."""
    pulled = sorted({round(cut.pulled_mm) for cut in cuts if cut.pulled_mm})
    if pulled:
        return f"pull open to {spans(pulled)} mm once all is cut"
    sides = [LAID[cut.laid] for cut in cuts if cut.laid]
    if not sides:
        return ""
    turns = sides[:1] if len(set(sides)) == 1 else [*sides[:3], "…"]
    return f"lay each piece aside at once: {', '.join(turns).replace(', …', ' …')}"


LAID = {-1: "left", 1: "right"}


def handle_words(handling: Handling) -> str:
    """Say how to hold the handle, or the scissors."""
    if handling.scissors:
        to = handling.lean if handling.lean in ("away", "toward you") else f"to the {handling.lean}"
        lean = f", handles {to}" if handling.lean else ""
        return f"scissors at {math.degrees(handling.blade_rad):.0f}° to the dough{lean}"
    if handling.held_upright:
        return "press down, do not drag" if handling.severed else "handle upright"
    if not handling.lean:
        return "handle square to the dough" if upright(handling.blade_rad) else ""
    return _leaning(handling.tilt_rad, handling.lean)


def lean_words(pulls: Sequence[Pull]) -> str:
    """Say how far and to which side the handle leans, or nothing where it has no one side."""
    side = _side(pulls)
    return _leaning(_tilt(pulls), side) if side else ""


def _leaning(tilt_rad: float, side: Side) -> str:
    degrees = round(math.degrees(tilt_rad) / 5) * 5
    to = side if side in ("away", "toward you") else f"to the {side}"
    return f"tilt the handle {degrees:.0f}° {to}"


def blade_words(handling: Handling) -> str:
    """Say how the blade stands to the dough."""
    if handling.scissors or (handling.severed and upright(handling.blade_rad)):
        return ""
    if upright(handling.blade_rad):
        return "blade upright"
    return f"{handling.form} blade at {math.degrees(handling.blade_rad):.0f}°"


def depth_words(handling: Handling) -> str:
    """Say how deep in the middle of the stroke, in mm, or that it goes through."""
    if handling.severed:
        return handling.severed
    return f"{handling.depths_mm[1]:.1f}".removesuffix(".0") + " mm"


def deep_word(handling: Handling) -> str:
    """Say what the depth is of: a depth alone could be taken for an hour of the clock."""
    if handling.scissors:
        return "uncut"
    return "" if handling.severed else "deep"


def ends_words(handling: Handling) -> str:
    """Say how deep a stroke begins and ends, or nothing where it is even."""
    first, middle, last = handling.depths_mm
    if abs(first - middle) < 0.1 and abs(last - middle) < 0.1:
        return ""
    return f"start {first:.0f} mm, finish {last:.0f} mm deep"


def turn_words(turn_rad: float) -> str:
    """Say how far and which way the table is turned, or that it stays."""
    if abs(math.degrees(turn_rad)) < STILL_DEG:
        return "do not turn"
    return f"turn {angle_words(abs(turn_rad))} {'↻' if turn_rad > 0 else '↺'}"


def mark_words(step: Step) -> str:
    """Say where the mark of the table stands at a step, clockwise from 12 o'clock."""
    return angle_words(step.table_rad % math.tau)


def angle_words(angle_rad: float) -> str:
    """Write an angle in degrees, its half, third or quarter where it is exact, else rounded."""
    exact = exact_degrees(angle_rad)
    degrees = Fraction(round(math.degrees(angle_rad))) if exact is None else exact
    whole, part = divmod(degrees % 360, 1)
    return f"{whole or '' if part else whole}{PARTS.get(part, '')}°"


def exact_degrees(angle_rad: float) -> Fraction | None:
    """Give an angle in whole degrees, halves, thirds or quarters, or None where it is none."""
    degrees = math.degrees(angle_rad)
    for parts in (1, 2, 3, 4):
        if abs(degrees * parts - round(degrees * parts)) < EXACT_DEG * parts:
            return Fraction(round(degrees * parts), parts)
    return None


def turn_each(run: Run) -> Fraction | None:
    """Give the turn between copies in exact degrees, None where it has to go by the marks."""
    return None if run.turn_each_rad is None else exact_degrees(run.turn_each_rad)


def batch_words(batch: Batch) -> tuple[str, str]:
    """Say how long a batch takes, and how many loaves go on a board and when the next comes."""
    alone, shared = told_between(*batch.all_s), told_between(*batch.shared_s)
    return f"{batch.loaves} loaves take {alone}, two people {shared}.", _boards(batch)


def _boards(batch: Batch) -> str:
    most, least = batch.boards[0], batch.boards[-1]
    bring = "take the next from the cold" if batch.cold else "bring the next"
    often = f"every {told_between(*batch.board_s)}"
    if not batch.in_time:
        return f"The dough may spread before a loaf is cut: {bring} once one is done, {often}."
    if most == batch.loaves:
        return "One board: all of them are cut before the dough spreads."
    if most == 1:
        return f"One loaf at a time: {bring} once it is cut, {often}."
    each = f"{most} loaves" if most == least else f"up to {most} loaves"
    return f"{len(batch.boards)} boards of {each}: {bring} once a board is cut, {often}."


STAGES = {
    "light": "Light cuts",
    "deep": "Deep cuts, last",
    "all": "All cuts, in the pattern's order",
}
"""What a pass is called; light cuts come first, because the dough moves once it is opened."""
