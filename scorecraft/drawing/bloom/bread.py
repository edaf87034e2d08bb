"""The colours of bread, and how light changes them; all palettes of the baked loaf live here."""

from collections.abc import Sequence

import numpy as np
from numpy.typing import ArrayLike

from scorecraft.arrays import Line

BOARD = "#efe9df"
"""What the loaf lies on."""
SHADOW = "#4a3520"
WRITING = "#5c4a37"

CRUST = ((0.0, "#cd8838"), (0.5, "#c4792c"), (0.78, "#b06620"), (0.92, "#914d17"), (1.0, "#6e3810"))
"""Baked crust from the crown (0) to the rim (1)."""
FLOUR = ((0.5, "#fdfaf3"), (0.75, "#f9eedb"), (0.9, "#f0dab4"), (1.0, "#e5c48f"))
"""Dust of flour from the crown to the rim, where it is thin and the crust shines through."""
DOUGH = ((0.0, "#f6e7d0"), (0.7, "#f2dfc4"), (1.0, "#e6ceac"))
"""Proofed dough under its dust of flour, from the crown to the rim."""
SCORED = "#86623f"
"""A line cut into raw dough."""
SCORED_LIT = "#fffaf0"
TOAST = ((0.22, "#8d4c19"), (0.4, "#a3622a"), (0.6, "#bd7f3c"), (0.8, "#d3a05a"), (1.0, "#e0b878"))
"""The skin beside a cut, bare of flour and browned, from the cut (0) outward."""
SWELLING = "#b5803f"
CRUMB = (
    (0.0, "#8f5322"),
    (0.3, "#a86a2e"),
    (0.7, "#bf8442"),
    (1.3, "#d19d5b"),
    (2.2, "#dcae6c"),
    (3.4, "#e4bf82"),
    (5.2, "#ebcd97"),
    (7.5, "#f0d9aa"),
    (10.5, "#f4e2ba"),
)
"""The inside of an opened cut by its distance (mm) from the edge: browned, then cream."""
BLOTCH = "#c98d45"
"""Patches of crumb that stood out and browned first."""
STRAND = "#fdf1d3"
CREASE = "#b27a3c"
PORE = "#b98548"
PORE_DEEP = "#94602b"
EDGE = "#532a0f"
"""The thin caramelised edge of every opening."""
LIP = ((0.1, "#220f05"), (0.28, "#43200b"), (0.45, "#7b4219"), (0.65, "#b3722f"), (1.0, "#c98a44"))
"""An ear from its free edge (0), which is nearly burnt, to its back (1)."""
GLEAM = "#e9b873"
BLISTER = "#c78a45"
SPECK = "#6b3a16"

MAP = ("#fbf5e6", "#f6e6c4", "#efcf9a", "#e2ae73", "#cd8455", "#a9573f", "#7b3230")
"""Tension from none to more than the uncut skin has: every step is darker than the last."""
MAP_LINE = "#6b4636"
MAP_CUT = "#26303a"

Ramp = Sequence[tuple[float, str]]


def channels(color: str) -> Line:
    """Read `#rrggbb` as three numbers from 0 to 255."""
    return np.array([int(color[at : at + 2], 16) for at in (1, 3, 5)], dtype=np.float64)


def written(values: ArrayLike) -> str:
    """Write three channels as `#rrggbb`."""
    red, green, blue = np.clip(np.rint(np.asarray(values, dtype=np.float64)), 0, 255).astype(int)
    return f"#{red:02x}{green:02x}{blue:02x}"


def on_ramp(ramp: Ramp, at: float) -> str:
    """Read a colour off a ramp."""
    places = [place for place, _ in ramp]
    colors = np.array([channels(color) for _, color in ramp])
    return written([np.interp(at, places, colors[:, k]) for k in range(3)])


def lit(color: str, shade: float) -> str:
    """Show a colour under a light: 1 is as it is, less is darker and warmer, more is brighter.

    Shadows on bread keep their red longest, so the channels fade at different rates.
    """
    base = channels(color)
    if shade <= 1:
        return written(base * max(shade, 0.0) ** np.array([0.85, 1.0, 1.12]))
    return written(base + (255 - base) * min(0.55 * (shade - 1), 0.6) * np.array([1.0, 0.9, 0.7]))


def mixed(color: str, other: str, part: float) -> str:
    """Mix a part (0 to 1) of a paler colour into a colour by way of gold, as flour on crust does.

    A plain mix of brown and white is pink: here red pales first and blue last.
    """
    parts = part ** np.array([0.8, 1.0, 1.35])
    return written(channels(color) * (1 - parts) + channels(other) * parts)
