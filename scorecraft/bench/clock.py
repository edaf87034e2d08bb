"""How long the cutting takes, and how long the dough allows: habits, no measurements."""

import numpy as np

from scorecraft.arrays import Flags, Floats
from scorecraft.baking import USUAL_C, USUAL_WATER
from scorecraft.loaf.dough import Dough
from scorecraft.practice import (
    AIM_S,
    BENCH_TIME_HALVES_C,
    BENCH_TIME_HALVES_KITCHEN_C,
    BENCH_TIME_LIMITS_S,
    BENCH_TIME_PER_WATER,
    BENCH_TIME_S,
    PLACE_BLADE_S,
    SPIN_DEG_PER_S,
    STRING_MARK_S,
    STROKE_MM_PER_S,
    TURN_DEG_PER_S,
    TURN_TABLE_S,
)

SECONDS_BELOW = 90.0
"""Shorter times are told in seconds (s)."""
HALVES_BELOW = 6 * 60.0
"""Ranges of shorter times are told to half a minute, longer ones to whole minutes (s)."""
HOURS_FROM = 2 * 3600.0
"""Longer ranges are told in hours (s)."""
STILL_RAD = 1e-6
"""A smaller turn of the table is none."""


def stroke_seconds(length_mm: Floats, deep: Flags) -> Floats:
    """Estimate how long each stroke takes: to set the blade down, and to pull it.

    Lengths are mm, times seconds, all (N,).
    """
    placing, speed = (
        np.where(deep, rule["expansion"].value, rule["decorative"].value)
        for rule in (PLACE_BLADE_S, STROKE_MM_PER_S)
    )
    return np.asarray(placing + length_mm / speed)


def aim_seconds(cuts: int) -> float:
    """Estimate how long it takes to find where each of some cuts begins, and to aim."""
    return AIM_S.value * cuts


def spin_seconds(winding_rad: float) -> float:
    """Estimate how long the table turns under the blade, on top of the stroke's own time."""
    return float(np.degrees(abs(winding_rad)) / SPIN_DEG_PER_S.value)


def turn_seconds(turn_rad: Floats) -> Floats:
    """Estimate how long a turn of the table takes, without the aim after it; none takes no time.

    Radians in, seconds out, any shape.
    """
    turned = np.abs(turn_rad)
    seconds = TURN_TABLE_S.value + np.degrees(turned) / TURN_DEG_PER_S.value
    return np.asarray(np.where(turned > STILL_RAD, seconds, 0.0))


def mark_seconds(strings: int) -> float:
    """Estimate how long pressing in some string lines takes."""
    return STRING_MARK_S.value * strings


def allowed_seconds(dough: Dough) -> float:
    """Estimate how long the dough may be cut: warmer and wetter dough, a warm kitchen give less."""
    warmer = (dough.temperature_c - USUAL_C.value) / BENCH_TIME_HALVES_C.value
    kitchen = (dough.kitchen_c - USUAL_C.value) / BENCH_TIME_HALVES_KITCHEN_C.value
    wetter = (dough.hydration - USUAL_WATER.value) * BENCH_TIME_PER_WATER.value
    least, most = (rule.value for rule in BENCH_TIME_LIMITS_S)
    seconds = BENCH_TIME_S.value * 2.0 ** -(warmer + kitchen) * (1.0 - wetter)
    return float(np.clip(seconds, least, most))


def told(seconds: float) -> str:
    """Write a time as a baker reads it: seconds below a minute and a half, else minutes."""
    if seconds < SECONDS_BELOW:
        return f"{_fives(seconds)} s"
    return f"{_halves(seconds / 60)} min"


def told_between(least: float, most: float) -> str:
    """Write a range of times (s) as a baker reads it: 10–12 min, 25–35 s, or one time."""
    if most < SECONDS_BELOW:
        low, high, unit = (*(f"{_fives(each)}" for each in (least, most)), "s")
    elif most < HALVES_BELOW:
        low, high, unit = _halves(max(least / 60, 0.5)), _halves(most / 60), "min"
    elif most >= HOURS_FROM:
        low, high, unit = _halves(least / 3600), _halves(most / 3600), "h"
    else:
        low, high, unit = f"{least / 60:.0f}", f"{most / 60:.0f}", "min"
    return f"{low} {unit}" if low == high else f"{low}–{high} {unit}"


def _fives(seconds: float) -> int:
    return max(5, round(seconds / 5) * 5)


def _halves(value: float) -> str:
    """Write a number to the half: ½, 1, 1½."""
    whole, half = divmod(round(2 * value), 2)
    return f"{whole or '' if half else whole}{'½' if half else ''}"
