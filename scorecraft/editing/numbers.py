"""Numbers as a hand writes them: whole mm, percent and degrees, finer only where it matters."""

import math

from scorecraft.units import UNITS, plain

STEPS = {"cm": 0.1, "in": 0.05, "kg": 0.1}
"""The roundest step in a unit; 1 in all others."""
FINER = (1.0, 0.5, 0.1, 0.01, 0.001, 1e-5)
"""Steps are made so much finer, in turn, where a cut would not land where it was let go."""
DECIMALS = 9


def rounded(value: float, unit: str, level: int = 0) -> float:
    """Round a number in its own unit; the higher the level, the finer."""
    return on_step(value, STEPS.get(unit, 1.0) * FINER[level])


def on_step(value: float, step: float) -> float:
    """Round a number to a multiple of a step."""
    return round(math.floor(value / step + 0.5) * step, DECIMALS)


def written(value: float, unit: str) -> str:
    """Write a number with its unit as in a pattern."""
    return plain(value) + unit


def inside_per_unit(unit: str, reach_mm: float) -> float:
    """Tell how many mm, radians or ones a unit makes; a share is one of the reach."""
    row = UNITS[unit]
    return row.factor * reach_mm if row.share else row.factor
