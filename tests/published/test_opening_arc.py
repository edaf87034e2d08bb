"""A slit along an arc of a circle, half-angle alpha, in an endless sheet.

K over T sqrt(pi R sin alpha): Muskhelishvili; Sih, Paris & Erdogan, J. Appl. Mech. 29 (1962) 306;
Shiah & Lin, J. Eng. Math. 49 (2004) 1-18, eq. 34 (read in a public copy). Across the chord:
Cotterell & Rice, Int. J. Fracture 16 (1980) 155-169 (recalled).

How K is read: in two ways. By energy: the work of the cut, half of force times jump, grows with
the length of the arc by G = (K_I^2 + K_II^2) / E' at each tip. By the jumps near the tip: over
those of a straight slit of the same length and panels, carried on to the tip, which is TIP_INSET of
a panel ahead of the first.
"""

import numpy as np
import pytest
from support.small_strain import solve

from scorecraft.opening.panels import TIP_INSET

R = 30.0
EVEN = (0.5, 0.5, 0.0)  # tension 1 all around, in units of E
ACROSS = (-0.5, 1.0, 0.0)  # tension 1 along y: across the chord


def arc(alpha):
    angle = np.linspace(-alpha, alpha, 4001)
    return R * np.column_stack([np.sin(angle), np.cos(angle)])


def arc_opening(alpha, strain, count):
    return solve([arc(alpha)], 12.0, strain=strain, panel_mm=2 * R * alpha / count)


def at_the_tip(alpha, strain, count):
    """K_I and K_II over T sqrt(pi R sin alpha) at the first tip."""
    opening, half = arc_opening(alpha, strain, count), R * alpha
    line = np.array([[-half, 0], [half, 0]])
    lone = solve([line], 12.0, strain=EVEN, panel_mm=2 * half / count).gap_mm
    near = np.arange(2, 16)
    ratio = np.abs([opening.gap_mm[near], opening.slide_mm[near]]) / lone[near]
    at_tip = np.polyfit(near + 0.5 + TIP_INSET, ratio.T, 3)[-1]
    return at_tip * np.sqrt(alpha / np.sin(alpha))


def even_k(alpha):
    s, c = np.sin(alpha / 2), np.cos(alpha / 2)
    return np.array([c, s]) / (1 + s * s)


def across_k(alpha):
    s, c = np.sin(alpha / 2), np.cos(alpha / 2)
    a = (1 - s * s * c * c) / (1 + s * s)
    return np.array([a * c + np.cos(1.5 * alpha), a * s + np.sin(1.5 * alpha)]) / 2


CASES = [(EVEN, even_k, degrees) for degrees in (15, 30, 45, 60, 90)]
CASES += [(ACROSS, across_k, degrees) for degrees in (15, 30, 45, 60)]


@pytest.mark.parametrize(("strain", "exact", "degrees"), CASES)
def test_k_at_the_tips(strain, exact, degrees):
    alpha = np.radians(degrees)
    np.testing.assert_allclose(at_the_tip(alpha, strain, 100), exact(alpha), rtol=3e-3)


def energy(alpha, count):
    """Half of the tension's force on the panels times their opening (tension 1 all around)."""
    opening = arc_opening(alpha, EVEN, count)
    return opening.gap_mm @ opening.length_mm / 2


@pytest.mark.parametrize("degrees", [15, 30, 45, 60, 90])
def test_energy_set_free_as_the_arc_grows(degrees):
    alpha, step = np.radians(degrees), 0.03
    grown = energy(alpha + step / 2, 100) - energy(alpha - step / 2, 100)
    released = grown / (2 * R * step)
    k2 = (even_k(alpha) ** 2).sum() * np.pi * R * np.sin(alpha)
    assert released == pytest.approx(k2, rel=3e-3)


def test_error_falls_with_the_square_of_the_panels():
    """Energy against that of 800 panels: the order over four sizes."""
    alpha, counts = np.radians(60), np.array([25, 50, 100, 200])
    limit = energy(alpha, 800)
    errors = [abs(energy(alpha, count) / limit - 1) for count in counts]
    order = -np.polyfit(np.log(counts), np.log(errors), 1)[0]
    assert 1.8 < order < 2.4, errors
    assert errors[2] < 5e-4


def test_half_circle_pulled_across_closes_at_its_tips():
    """K_I = -0.177 at alpha = 90 degrees without contact: the ends press shut."""
    opening = arc_opening(np.radians(90), ACROSS, 100)
    assert opening.gap_mm.min() == 0.0
    shut = opening.gap_mm == 0
    assert shut[0]
    assert shut[-1]
    assert not shut[20:80].any()
    assert np.abs(opening.slide_mm[[0, -1]]).min() > 0
