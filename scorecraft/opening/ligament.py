"""What holds a cut that does not go through the skin: the line spring, and the mouth of a notch.

The skin left under a cut of depth d in a skin of thickness h carries on across it. Rice & Levy
(J. Appl. Mech. 39 (1972) 185-194) replace it by springs along the cut; here they are free of
moment, the skin may turn at the cut. That is a choice: with turning blocked the springs would be
a hundred times stiffer at d/h = 0.3. All stresses are in units of E; E' is E, the modulus of the
sheet in plane stress, in the springs and in the mouth alike.
"""

from functools import lru_cache
from math import pi

import numpy as np
from numpy.typing import ArrayLike

from scorecraft.arrays import Floats
from scorecraft.frozen import dataclass
from scorecraft.opening.hold import hold

OPENING_DEEPEST_LIGAMENT = 0.98
"""A deeper cut that is not through holds no less than one that parts this share of the skin."""
MOUTH = 4 * 1.4545
"""Mouth opening of an edge notch of depth d in a half plane under tension T is MOUTH T d / E'
(Tada, Paris & Irwin, The Stress Analysis of Cracks Handbook, 3rd ed. 2000, single edge crack;
recalled)."""
SHEAR_MODULUS = 1 / 3
"""E / 2(1 + nu) with E = 1 and nu = 0.5."""
RUNS_OUT = 12
"""Power of the depth share with which the spring against sliding runs out toward the bottom of the
skin: the exact one, a logarithm, would fall from a good part of itself to nothing at once."""
SOFTEST = 1e-8
"""Stiffness (E per skin thickness) left in a cut that is through, so that a piece cut out all
around stays in its place instead of nowhere: less than a millionth of an opening."""
STIFFEST = 1e7
"""Stiffness (E per skin thickness) of a cut of no depth."""


@dataclass(frozen=True, slots=True, eq=False)
class Springs:
    """Stiffness against gap and against slide, per panel (M,), in E per mm."""

    normal: Floats
    sliding: Floats


def tension_shape(xi: ArrayLike) -> Floats:
    """F of an edge crack of depth share xi in a strip under tension, K = T sqrt(pi d) F.

    Good to 0.5 % at every depth (Tada, Paris & Irwin handbook, single edge notch, after Tada). xi
    may have any shape.
    """
    xi = np.asarray(xi, dtype=np.float64)
    t = pi * xi / 2
    ratio = np.divide(np.tan(t), t, out=np.ones_like(t), where=t > 0)
    near_tip: Floats = 0.752 + 2.02 * xi + 0.37 * (1 - np.sin(t)) ** 3
    return np.sqrt(ratio) * near_tip / np.cos(t)


def alpha(xi: ArrayLike) -> Floats:
    """Compliance of the ligament at depth share xi (any shape): the integral of pi xi F(xi)^2.

    Rice & Levy's alpha_tt from the all-depth F; the shares are clipped at
    `OPENING_DEEPEST_LIGAMENT`, where next to nothing is left to hold.
    """
    depth, table = _alpha_table()
    clipped = np.clip(np.asarray(xi, dtype=np.float64), 0.0, OPENING_DEEPEST_LIGAMENT)
    # alpha / xi^2 is smooth and finite at 0, so that is what is interpolated
    return clipped**2 * np.interp(clipped, depth, table)


@lru_cache(maxsize=1)
def _alpha_table() -> tuple[Floats, Floats]:
    """Depth shares from 0 to the deepest, and alpha / xi^2 at each (Simpson's rule)."""
    fine = np.linspace(0.0, OPENING_DEEPEST_LIGAMENT, 40_001)
    values = pi * fine * tension_shape(fine) ** 2
    step = fine[1]
    pairs = (values[:-2:2] + 4 * values[1:-1:2] + values[2::2]) * step / 3
    total = np.concatenate([[0.0], np.cumsum(pairs)])
    depth = fine[::2]
    ratio = np.full_like(depth, pi / 2 * float(tension_shape(0.0)) ** 2)
    ratio[1:] = total[1:] / depth[1:] ** 2
    return depth, ratio


def slide_compliance(xi: ArrayLike) -> Floats:
    """Compliance of the ligament against sliding along the cut: slide = T h / mu times this.

    (4 / pi) ln sec(pi xi / 2), exact for an edge crack in a strip under antiplane shear, from
    K_III = T sqrt(2 h tan(pi xi / 2)) (Tada, Paris & Irwin, as `MOUTH`;
    recalled).
    """
    clipped = np.clip(np.asarray(xi, dtype=np.float64), 0.0, OPENING_DEEPEST_LIGAMENT)
    return -4 / pi * np.log(np.cos(pi * clipped / 2))


def springs(depth_mm: Floats, skin_mm: float, inside: float = 0.0) -> Springs:
    """Springs of cuts of depths (M,) in a skin of a thickness (mm) on an inside of a modulus.

    The skin left holds by T = gap E' / (2 h alpha(d / h)), nothing at or above its thickness, and
    beside it the inside (`hold`), which has so many times the skin's modulus.
    """
    skin = ligament(depth_mm, skin_mm)
    below = hold(depth_mm, skin_mm, inside)
    return Springs(skin.normal + below, skin.sliding + below)


def ligament(depth_mm: Floats, skin_mm: float) -> Springs:
    """Springs of the skin left under cuts of depths (M,), without the inside."""
    xi = depth_mm / skin_mm
    through = depth_mm >= skin_mm
    least = 1 / STIFFEST
    normal = 1 / np.maximum(2 * alpha(xi), least)
    sliding = SHEAR_MODULUS / np.maximum(slide_compliance(xi), least)
    sliding *= 1 - np.minimum(xi, 1.0) ** RUNS_OUT
    normal, sliding = (np.where(through, SOFTEST, value) for value in (normal, sliding))
    return Springs(normal / skin_mm, sliding / skin_mm)


def mouth(gap_mm: Floats, depth_mm: Floats, skin_mm: float) -> Floats:
    """Width seen at the surface (M,), mm: the gap, and the mouth of the notch held by tension T.

    T is what the skin left under the cut carries. Right for a slit that is through (T = 0) and for
    a shallow one (no gap); between the two it is an interpolation.
    """
    held = ligament(depth_mm, skin_mm)
    tension = np.where(depth_mm >= skin_mm, 0.0, held.normal * gap_mm)
    return gap_mm + MOUTH * tension * depth_mm
