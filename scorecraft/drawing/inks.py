"""How things are stroked on every print: depth is told by the line, in pure black.

The widths step as in ISO 128-2 (0.25, 0.35, 0.5, 1.0 mm); its dashes are too long for short cuts
and are not used.
"""

from dataclasses import replace
from typing import Literal

from scorecraft.drawing.picture import Ink

DEEP_LINE_MM = 6.0
"""A cut this deep or deeper is drawn as a bold line."""
SHALLOW_LINE_MM = 3.0
"""A cut shallower than this is drawn as a dashed line."""
NUMBER_CLEAR_MM = 1.3
"""A number on the plan keeps so far from every line."""
Band = Literal["deep", "medium", "shallow"]

CUT_INKS: dict[Band, Ink] = {
    "deep": Ink(1.0),
    "medium": Ink(0.5),
    "shallow": Ink(0.5, dash=(3.0, 1.5), cap="butt"),
}
RIM_INK = Ink(0.35)
MARK_INK = Ink(0.25, dash=(6.0, 0.75, 0.3, 0.75), cap="butt")
TICK_INK = Ink(0.25, cap="butt")
HAIR_INK = Ink(0.18)
FRAME_INK = Ink(0.35, cap="butt", join="miter")
NUMBER_MM = 4.4
"""Letter size of the numbers of cuts: digits 3.2 mm high."""
WRITING = "#5c4a37"
"""Words on pictures in colour."""
LEAST_DASHES = 3
"""A cut too short for so many dashes gets smaller ones."""


def band(depth_mm: float) -> Band:
    """Tell which of the three line styles a cut of this depth (mm) is drawn in."""
    if depth_mm >= DEEP_LINE_MM:
        return "deep"
    return "medium" if depth_mm >= SHALLOW_LINE_MM else "shallow"


def cut_ink(depth_mm: float, length_mm: float) -> Ink:
    """Choose the ink of a cut; `length_mm` is the length of its line on the paper."""
    ink = CUT_INKS[band(depth_mm)]
    if not ink.dash:
        return ink
    dash, gap = ink.dash
    whole = LEAST_DASHES * dash + (LEAST_DASHES - 1) * gap
    scale = min(1.0, length_mm / whole)
    return replace(ink, dash=(dash * scale, gap * scale))


def band_words(which: Band) -> str:
    """Say in words which depths a line style stands for."""
    deep, shallow = DEEP_LINE_MM, SHALLOW_LINE_MM
    return {
        "deep": f"{deep:g} mm deep or more",
        "medium": f"{shallow:g} to {deep:g} mm deep",
        "shallow": f"less than {shallow:g} mm deep",
    }[which]
