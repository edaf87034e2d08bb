"""The words of the bench card, on paper and as plain text."""

from collections.abc import Sequence

from scorecraft.arrays import Line
from scorecraft.bench.clock import told
from scorecraft.bench.pace import time_words as takes
from scorecraft.bench.steps import Work
from scorecraft.bench.strings import strings_of
from scorecraft.drawing.paper.cautions import STICKING
from scorecraft.practice import (
    DONE_C,
    POT_C,
    POT_COVERED_MIN,
    POT_OPEN_C,
    POT_OPEN_MIN,
    PREHEAT_MIN,
    STONE_AFTER_C,
    STONE_AFTER_MIN,
    STONE_C,
    STONE_STEAM_MIN,
    Rule,
)
from scorecraft.units import in_unit

UNTITLED = "Bench card"
STRINGS_FIRST = "First"
DO_NOT_CUT = "guide lines only: do not cut along them"
INTO_THE_OVEN = "Into the oven"
STILL = "do not turn"
EACH_TIME = "each time"
MARK_TO = "turn the mark to"
MARK_AS_DRAWN = "mark as drawn"
FULL_TURN, KEEP_TURNING = "one full turn", "keep turning"
UNDER_BLADE = "under the blade"


def heat(rule: Rule) -> str:
    """Write a temperature in both scales, as an oven's dial has them: 245 °C / 475 °F."""
    fahrenheit = in_unit(rule.value, "F")
    step = 5 if rule.value > 110 else 1
    return f"{rule.value:.0f} °C / {round(fahrenheit / step) * step:.0f} °F"


def time_words(made: Work) -> str:
    """Say how long the cutting takes, and within what time it should be done."""
    needed, allowed = takes(made.effort.seconds, made.bench.skill), told(made.allowed_s)
    if made.effort.seconds > made.allowed_s:
        return f"{needed} of cutting, {allowed} at most: chill the loaf first"
    return f"{needed} of cutting; aim to finish within {allowed}"


def before(made: Work) -> tuple[str, ...]:
    """Say what comes before the first cut."""
    return (
        "Put a mark on the turntable's edge at 12 o'clock: the red mark of the pictures. You "
        "stand at the bottom of each picture.",
        f"Planned for a {made.bench.skill} hand and dough at {made.bench.temperature_c:.0f} °C; a "
        "cold loaf with a dry skin cuts cleanest. Dust it thinly with rice flour.",
        f"Hold the lame in your {made.bench.hand} hand. {STICKING}",
    )


def string_words(lines: Sequence[Line]) -> str:
    """Say which string lines to mark: two opposite spokes are one line across the loaf."""
    laid, said = strings_of(lines), []
    if laid.across:
        said.append(f"{_counted(laid.across, 'string line')} across ({2 * laid.across} spokes)")
    if laid.single:
        said.append(f"{_counted(laid.single, 'string line')} from crown to rim")
    if laid.others:
        said.append(_counted(laid.others, "string line"))
    if laid.rings:
        said.append(_counted(laid.rings, "ring") + " of string")
    return "mark " + " and ".join(said)


def _counted(count: int, name: str) -> str:
    return f"{count} {name}{'s' if count > 1 else ''}"


def positions(count: int) -> str:
    """Say at how many positions of the turntable is cut."""
    return f"{count} positions"


def oven() -> tuple[tuple[str, tuple[str, ...]], tuple[str, tuple[str, ...]]]:
    """List the steps of the oven, in a covered pot and on a stone."""
    return (
        (
            "Covered pot",
            (
                f"Heat the pot {PREHEAT_MIN.value:.0f} min at {heat(POT_C)}",
                f"Lid on: {POT_COVERED_MIN.value:.0f} min",
                f"Lid off: {heat(POT_OPEN_C)}, about {POT_OPEN_MIN.value:.0f} min",
            ),
        ),
        (
            "Stone with steam",
            (
                f"Heat the stone {PREHEAT_MIN.value:.0f} min at {heat(STONE_C)}",
                f"With steam: {STONE_STEAM_MIN.value:.0f} min",
                f"Vent the steam: {heat(STONE_AFTER_C)}, about {STONE_AFTER_MIN.value:.0f} min",
            ),
        ),
    )


def done() -> str:
    """Say when the loaf is done."""
    least, most = DONE_C
    low, high = (in_unit(rule.value, "F") for rule in DONE_C)
    inside = f"{least.value:.0f}–{most.value:.0f} °C / {low:.0f}–{high:.0f} °F"
    return f"Done: internal temperature {inside}"


def described(rows: int) -> str:
    """Say what is on the card for who cannot see it."""
    return f"The order of cutting in {rows} rows, each with the loaf as it lies on the turntable."
