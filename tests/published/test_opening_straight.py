"""One straight slit in an endless sheet against Sneddon's and the handbook's formulas.

w(x) = (4 T / E') sqrt(a^2 - x^2), opened area 2 pi a^2 T / E': Sneddon, Proc. R. Soc. A 187 (1946)
229-260, sec. 2; Tada, Paris & Irwin, The Stress Analysis of Cracks Handbook, 3rd ed. 2000 (read in
public worked files that quote it). For a slit turned by b the jumps are cos^2 b and sin b cos b
times that: superposition of the same formulas.
"""

import numpy as np
import pytest
from support.small_strain import solve

A = 30.0
TENSION = 0.05


def strain_of(sxx, syy, sxy):
    """Strain of the uncut sheet under a tension (in units of E), plane stress, nu = 0.5."""
    return (sxx - syy / 2, syy - sxx / 2, 1.5 * sxy)


def slit(panels, angle=0.0):
    along = A * np.array([np.cos(angle), np.sin(angle)])
    return {"lines": [np.array([-along, along])], "depth_mm": [12.0], "panel_mm": 2 * A / panels}


def ellipse(opening):
    return np.sqrt(A**2 - (opening.midpoint_mm**2).sum(axis=1))


def test_profile_and_area():
    opening = solve(**slit(100), strain=strain_of(0, TENSION, 0))
    inner = np.abs(opening.midpoint_mm[:, 0]) < 0.9 * A
    exact = 4 * TENSION * ellipse(opening)
    np.testing.assert_allclose(opening.gap_mm[inner], exact[inner], rtol=2e-3)
    np.testing.assert_allclose(opening.gap_mm, exact, rtol=0.04)
    area = opening.gap_mm @ opening.length_mm
    assert area == pytest.approx(2 * np.pi * A**2 * TENSION, rel=1e-4)
    assert opening.gap_mm.max() == pytest.approx(6.0, rel=1e-4)
    np.testing.assert_array_equal(opening.mouth_mm, opening.gap_mm)
    np.testing.assert_allclose(opening.slide_mm, 0, atol=1e-12)


def test_error_falls_with_the_square_of_the_panels():
    """The order is fitted over five sizes, for the middle opening and for the area."""
    counts = np.array([10, 20, 40, 80, 160])
    middle, area = [], []
    for count in counts:
        opening = solve(**slit(count), strain=strain_of(0, TENSION, 0))
        at = np.argmax(opening.gap_mm)
        middle.append(opening.gap_mm[at] / (4 * TENSION * ellipse(opening)[at]) - 1)
        area.append(opening.gap_mm @ opening.length_mm / (2 * np.pi * A**2 * TENSION) - 1)
    for errors in (middle, area):
        order = -np.polyfit(np.log(counts), np.log(np.abs(errors)), 1)[0]
        assert 1.85 < order < 2.2, errors
    assert abs(middle[2]) < 5e-4
    assert abs(middle[0]) < 1e-2


@pytest.mark.parametrize("degrees", [0, 15, 30, 45, 60, 75])
def test_slanted_slit(degrees):
    angle = np.radians(degrees)
    opening = solve(**slit(100, angle), strain=strain_of(0, TENSION, 0))
    area = np.pi * A**2 / 2 * 4 * TENSION
    opened = opening.gap_mm @ opening.length_mm
    slid = opening.slide_mm @ opening.length_mm
    assert opened == pytest.approx(area * np.cos(angle) ** 2, rel=3e-3)
    assert abs(slid) == pytest.approx(area * np.sin(angle) * np.cos(angle), rel=3e-3, abs=1e-9)


@pytest.mark.parametrize("degrees", [0, 23, 45, 90, 160])
def test_equal_tension_all_around_opens_every_direction_alike(degrees):
    """Growth of 5 % both ways is a tension of 10 % of E: strain (1 - nu) T / E."""
    opening = solve(**slit(100, np.radians(degrees)), strain=(0.05, 0.05, 0))
    assert opening.gap_mm.max() == pytest.approx(4 * 0.1 * A, rel=3e-3)
    np.testing.assert_allclose(opening.slide_mm, 0, atol=1e-9)


def test_tension_ahead_of_the_tip():
    """On the line of the slit the tension is T x / sqrt(x^2 - a^2) (Westergaard, J. Appl. Mech.
    6 (1939) A49-A53; recalled)."""
    opening = solve(**slit(100), strain=strain_of(0, TENSION, 0))
    x = np.array([33.0, 40.0, 60.0, 150.0])
    tension = opening.tension_at(np.column_stack([x, 0 * x]))
    scale = opening.uncut_tension / TENSION
    np.testing.assert_allclose(tension[:, 1, 1] * scale, x / np.sqrt(x**2 - A**2), rtol=3e-3)


def test_tension_beside_the_slit():
    """Across the middle of the slit syy / T = y^3 / (a^2 + y^2)^1.5 ... less the uncut sxx; from
    Westergaard's function Z = T z / sqrt(z^2 - a^2): syy = Re Z + y Im Z', sxx = Re Z - y Im Z' - T
    under tension across only."""
    opening = solve(**slit(100), strain=strain_of(0, TENSION, 0))
    y = np.array([6.0, 15.0, 30.0, 90.0])
    root = np.sqrt(y**2 + A**2)
    real, slope = y / root, A**2 / root**3
    tension = opening.tension_at(np.column_stack([0 * y, y])) * opening.uncut_tension / TENSION
    np.testing.assert_allclose(tension[:, 1, 1], real - y * slope, atol=2e-3)
    np.testing.assert_allclose(tension[:, 0, 0], real + y * slope - 1, atol=2e-3)
    np.testing.assert_allclose(tension[:, 0, 1], 0, atol=1e-9)
