"""How long the cutting takes, and how long the dough allows: habits, no measurements."""

import numpy as np

from scorecraft.arrays import Flags, Floats
from scorecraft.baking import USUAL_C, USUAL_WATER
from scorecraft.cuts import Layout
from scorecraft.loaf.dough import Dough
from scorecraft.practice import (
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

STILL_RAD = 1e-6
"""A smaller turn of the table is none."""


def stroke_seconds(length_mm: Floats, deep: Flags) -> Floats:
    """Estimate how long each stroke takes: to set the blade down, and to pull it.

    Lengths are mm, times seconds, all (N,).
    """
    speed = np.where(deep, STROKE_MM_PER_S["expansion"].value, STROKE_MM_PER_S["decorative"].value)
    return np.asarray(PLACE_BLADE_S.value + length_mm / speed)


def spin_seconds(winding_rad: float) -> float:
    """Estimate how long the table turns under the blade, on top of the stroke's own time."""
    return float(np.degrees(abs(winding_rad)) / SPIN_DEG_PER_S.value)


def turn_seconds(turn_rad: Floats) -> Floats:
    """Estimate how long a turn of the table takes; none takes no time.

    Radians in, seconds out, any shape.
    """
    turned = np.abs(turn_rad)
    seconds = TURN_TABLE_S.value + np.degrees(turned) / TURN_DEG_PER_S.value
    return np.asarray(np.where(turned > STILL_RAD, seconds, 0.0))


def mark_seconds(layout: Layout) -> float:
    """Estimate how long pressing in the string lines takes."""
    return STRING_MARK_S.value * len(layout.marks.lines)


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
    if seconds < 90:
        return f"{max(5, round(seconds / 5) * 5)} s"
    halves = round(seconds / 30)
    return f"{halves // 2}{'½' if halves % 2 else ''} min"
