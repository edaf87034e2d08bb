"""Several slits side by side and one above the other, all through, tension across.

How K is read: from the energy G = K^2 / E' that a tip sets free as it moves on, the difference
between slits 1 % shorter and longer in half the opened area (tension is 1). K_II by itself: the
slide next to a tip over the opening of a lone slit of the same panels, carried on to the tip, which
is TIP_INSET of a panel ahead of the first.
"""

from functools import cache

import numpy as np
import pytest
from support.small_strain import solve

from scorecraft.opening.kernel import ends_of, stiffness
from scorecraft.opening.load import forces
from scorecraft.opening.panels import TIP_INSET, panels

COUNT = 100
STEP = 0.01
PANEL = 2 / (COUNT + 2 * TIP_INSET)  # the length of a panel where both tips are drawn in
ACROSS = (-0.5, 1.0, 0.0)  # strain of the uncut sheet under tension 1 along y, nu = 0.5


def slit(x=0.0, y=0.0, left=1.0, right=1.0):
    return np.array([[x - left, y], [x + right, y]])


def openings(lines):
    """Gaps and slides of each slit, left to right, (lines, panels)."""
    opening = solve(lines, 12.0, strain=ACROSS, panel_mm=2 / COUNT)
    shape = (len(lines), -1)
    return opening.gap_mm.reshape(shape), opening.slide_mm.reshape(shape)


LONE = openings([slit()])[0][0]


def slide_at_the_tip(jump):
    """K_II over K of a lone slit, at the first panel's tip."""
    ratio = np.abs(jump / LONE)[1:12]
    return np.polyfit(np.arange(1, 12) + 0.5 + TIP_INSET, ratio, 4)[-1]


def energy(lines):
    """Half the opened area, in panels of an even length."""
    length = np.hypot(*(lines[0][1] - lines[0][0]))
    opening = solve(lines, 12.0, strain=ACROSS, panel_mm=length / COUNT)
    return opening.gap_mm @ opening.length_mm / 2


def factor(energy_at, tips):
    """F = K / sqrt(pi a) at tips that move by STEP each: `energy_at` is asked for -1/2 and 1/2."""
    released = (energy_at(STEP / 2) - energy_at(-STEP / 2)) / (STEP * tips)
    return np.sqrt(released / np.pi)


COLLINEAR = [
    # d / a, F inner, F outer, opening in the slit's own middle over 4 T a / E'
    (20, 1.001322, 1.001196, 1.001256),
    (10, 1.005660, 1.004624, 1.005090),
    (5, 1.027171, 1.017868, 1.021548),
    (4, 1.047960, 1.027953, 1.035278),
    (10 / 3, 1.080404, 1.040937, 1.054102),
    (2.5, 1.228935, 1.081067, 1.118254),
    (20 / 9, 1.453869, 1.117412, 1.181497),
    (40 / 19, 1.768892, 1.148980, 1.238653),
]


@pytest.mark.parametrize(("distance", "inner", "outer", "middle"), COLLINEAR)
def test_two_collinear_slits(distance, inner, outer, middle):
    """Willmore, Q. J. Mech. Appl. Math. 2 (1949) 53-63, in complete elliptic integrals; Tada,
    Paris & Irwin handbook sec. 7 (recalled, pages not checked; the numbers agree with an integral
    equation solved to 6 digits)."""
    (left, right), _ = openings([slit(-distance / 2), slit(distance / 2)])
    assert left[COUNT // 2 - 1 : COUNT // 2 + 1].mean() / 4 == pytest.approx(middle, rel=3e-3)
    x = distance / 2

    def grown_inside(step):
        return energy([slit(-x, right=1 + step), slit(x, left=1 + step)])

    def grown_outside(step):
        return energy([slit(-x, left=1 + step), slit(x, right=1 + step)])

    assert factor(grown_inside, 2) == pytest.approx(inner, rel=3e-3)
    assert factor(grown_outside, 2) == pytest.approx(outer, rel=3e-3)
    np.testing.assert_allclose(left[::-1], right, rtol=1e-9)


STACKED = {  # h / a: F_I, |F_II|, opening in the middle over 4 T a / E'
    0.2: (0.70012, 0.18418, 0.53132),
    0.4: (0.72148, 0.16332, 0.56332),
    0.5: (0.73118, 0.15427, 0.57904),
    1: (0.77337, 0.11655, 0.65857),
    1.5: (0.80970, 0.08580, 0.73615),
    2: (0.84308, 0.06110, 0.79922),
    3: (0.89607, 0.03060, 0.88017),
    4: (0.92979, 0.01632, 0.92324),
    5: (0.95054, 0.00943, 0.94747),
    10: (0.98575, 0.00141, 0.98552),
}


@pytest.mark.parametrize("distance", STACKED)
def test_two_stacked_slits(distance):
    """An integral equation converged to 1e-9; Murakami (ed.), Stress Intensity Factors Handbook
    (1987) tabulates the case (recalled, not compared)."""
    first, second, middle = STACKED[distance]
    gaps, slides = openings([slit(), slit(y=distance)])
    assert gaps[0].max() / 4 == pytest.approx(middle, rel=3e-3)
    assert slide_at_the_tip(slides[0]) == pytest.approx(second, rel=3e-3)

    def grown(step):
        half = 1 + step
        return energy([slit(0, 0, half, half), slit(0, distance, half, half)])

    assert factor(grown, 4) == pytest.approx(np.hypot(first, second), rel=3e-3)


def endless(step, copies, half=1.0):
    """Gap of one slit among `copies` each side, and among twice as many, all opening alike."""
    shifts = [k * side for k in range(1, 2 * copies + 1) for side in (-1, 1)]
    lines = [slit(*(k * np.array(step)), half, half) for k in [0, *shifts]]
    parts = panels(lines, 2 * half / COUNT)
    own = np.arange(COUNT)
    rows = stiffness(parts, ends_of(parts), own, np.arange(len(parts)))
    rows = rows.reshape(2 * COUNT, 2, -1, COUNT)
    force = forces(panels(lines[:1], 2 * half / COUNT))[:, 1]
    few, many = (rows[:, :, :count].sum(axis=2) for count in (2 * copies + 1, len(lines)))
    return [np.linalg.solve(some.reshape(2 * COUNT, -1), force)[:COUNT] for some in (few, many)]


@cache
def endless_limit(step, half=1.0):
    """What is left out falls as 1 / copies: two sizes give the limit."""
    few, many = endless(step, int(max(8, 18 / np.hypot(*step))), half)
    return 2 * many - few


def endless_factor(step):
    """F of one slit of the endless row or stack, from its energy."""
    return factor(lambda grown: endless_limit(step, 1 + grown).sum() * PANEL * (1 + grown) / 2, 2)


ROW = {  # a / W: F, middle opening over 4 T a / E', area E' / (T a^2)
    0.05: (1.004145, 1.004138, 6.309195),
    0.10: (1.016982, 1.016867, 6.389344),
    0.20: (1.075327, 1.073143, 6.746112),
    0.25: (1.128379, 1.122200, 7.060339),
    0.30: (1.208465, 1.192789, 7.517682),
    0.40: (1.564974, 1.466398, 9.345252),
    0.45: (2.113307, 1.798161, 11.664246),
}


@pytest.mark.parametrize("ratio", ROW)
def test_endless_collinear_row(ratio):
    """Westergaard, J. Appl. Mech. 6 (1939) A49-A53; Tada, Paris & Irwin handbook sec. 7 (recalled,
    pages not checked): F = sqrt(W / (pi a) tan(pi a / W)) and its opening and area."""
    tip, middle, area = ROW[ratio]
    gap = endless_limit((1 / ratio, 0))
    assert gap.max() / 4 == pytest.approx(middle, rel=3e-3)
    assert gap.sum() * PANEL == pytest.approx(area, rel=3e-3)
    assert endless_factor((1 / ratio, 0)) == pytest.approx(tip, rel=3e-3)


STACK = {  # h / a: F, middle opening over 4 T a / E', area over 2 pi a^2 T / E'
    0.25: (0.199471, 0.062500, 0.077816),
    0.5: (0.282095, 0.124991, 0.152107),
    1: (0.398933, 0.254063, 0.290126),
    1.5: (0.490064, 0.385766, 0.413682),
    2: (0.570193, 0.502334, 0.520532),
    3: (0.700472, 0.672738, 0.680017),
    4: (0.789599, 0.777337, 0.780503),
    6: (0.886372, 0.883161, 0.883977),
    10: (0.954058, 0.953568, 0.953691),
    20: (0.987887, 0.987854, 0.987863),
}


@pytest.mark.parametrize("distance", [each for each in STACK if each > 0.25])
def test_endless_stack(distance):
    """A periodic integral equation solved to 6 digits; at small h / a the strip limit
    F = sqrt(h / (2 pi a)), from G = T^2 h / (2 E') (Tada, Paris & Irwin handbook; Rice 1967;
    recalled, pages not checked)."""
    tip, middle, area = STACK[distance]
    gap = endless_limit((0, distance))
    assert gap[COUNT // 2] / 4 == pytest.approx(middle, rel=3e-3)
    assert gap.sum() * PANEL / (2 * np.pi) == pytest.approx(area, rel=3e-3)
    assert endless_factor((0, distance)) == pytest.approx(tip, rel=3e-3)


def test_stack_opens_no_further_than_the_strip_between():
    """w -> T h / E' as h / a -> 0: all the free strain of a strip goes into its slit."""
    gap = endless_limit((0, 0.25))
    assert gap[COUNT // 2] == pytest.approx(0.25, rel=3e-3)
    assert gap.sum() * PANEL / (2 * np.pi) == pytest.approx(STACK[0.25][2], rel=3e-3)
