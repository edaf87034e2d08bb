"""A leaf: midrib, outline and veins."""

from math import degrees, tan

import numpy as np

from scorecraft.arrays import Line
from scorecraft.curves import segment
from scorecraft.cuts import Stroke
from scorecraft.errors import UsageError
from scorecraft.motifs.fit import bends, both
from scorecraft.practice import FLATTEST_DEG

STEM_GAP = 0.05
"""Half the gap the outline leaves for the stem, as a share of the leaf's width."""
MIDRIB_END = 0.9
"""Where the midrib stops, as a share of the length: three cuts in one point tear the tip."""
VEIN_END = 0.78
"""How far a vein runs toward the outline."""
FIRST_VEIN, LAST_VEIN = 0.06, 0.74
"""Where the lowest and the highest pair leave the midrib, as shares of the length."""
EDGE = (
    ((2 * STEM_GAP, 0.015), (0.46, 0.05), (1.0, 0.19), (1.0, 0.4)),
    ((1.0, 0.4), (1.0, 0.61), (0.36, 0.8), (0.0, 1.0)),
)
"""Right outline: widest below the middle, drawn out to a point; in half widths and lengths."""


def leaf(*, length: float, width: float, veins: int, vein_angle: float) -> list[Stroke]:
    """Draw a leaf from its base at the origin to its tip at (0, length), `width` (mm) wide.

    `veins` counts the pairs; they leave the midrib at `vein_angle` (radians) and curve toward
    the tip, ending short of the outline. Raises UsageError for a vein angle too flat.
    """
    least = FLATTEST_DEG.value
    if not least <= degrees(vein_angle) <= 90:
        raise UsageError(f"vein_angle must be between {least:g}deg and 90deg")
    edge = bends(width / 2, length, *EDGE)
    strokes = [Stroke("midrib", segment((0, 0), (0, MIDRIB_END * length)))]
    strokes += both("outline", edge)
    for foot in _feet(length, veins):
        vein = _vein(foot, width, vein_angle, edge)
        strokes += both("vein", vein)
    return strokes


def _feet(length: float, veins: int) -> Line:
    """Heights (mm) at which the vein pairs leave the midrib, drawing closer toward the tip."""
    share = (np.arange(veins) + 0.5) / max(veins, 1)
    eased = share * (1.12 - 0.12 * share)
    return length * (FIRST_VEIN + (LAST_VEIN - FIRST_VEIN) * eased)


def _vein(foot: float, width: float, angle: float, edge: Line) -> Line:
    """Right vein from the midrib toward the outline, bending toward the tip as it goes."""
    out = np.linspace(0, width / 2, 60)
    rise = foot + out / tan(angle) + 0.9 * out**2 / width
    limit = VEIN_END * np.interp(rise, edge[:, 1], edge[:, 0], right=0.0)
    end = int(np.argmax(out > limit))
    return np.column_stack([out, rise])[: max(end, 2)]
