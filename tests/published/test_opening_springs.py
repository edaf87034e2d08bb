"""Slits held by springs, and the springs of a cut that does not go through.

The table of alpha: Rice & Levy, J. Appl. Mech. 39 (1972) 185-194, with Gross & Srawley's
polynomial for K (read in public copies) and the handbook's all-depth form.
"""

import numpy as np
import pytest
from support.small_strain import SMALL, solve

from scorecraft.opening.ligament import (
    Springs,
    alpha,
    slide_compliance,
    springs,
    tension_shape,
)
from scorecraft.opening.load import load_on
from scorecraft.opening.solve import jumps
from scorecraft.opening.system import system

ACROSS = (-0.5, 1.0, 0.0)  # tension 1 along y, in units of E


def held_slit(stiffness, half=1.0, count=100):
    """Gap, midpoints and lengths of a slit along x held by springs of stiffness(x)."""
    line = np.array([[-half, 0.0], [half, 0.0]])
    equations = system([line], 2 * half / count, stiffness(np.zeros(1)))
    parts = equations.panels
    x = parts.midpoint[:, 0]
    springs = Springs(stiffness(x), np.zeros_like(x))
    little = tuple(SMALL * part for part in ACROSS)
    done = jumps(equations, springs, load_on(parts, little))
    return done.jumps[: len(parts)] / SMALL, x, parts.length


UNIFORM = {  # k a / E': middle over 4 T a / E', area over 2 pi a^2 T / E', F
    0.01: (0.965162, 0.967176, 0.975351),
    0.05: (0.846587, 0.855146, 0.890697),
    0.1: (0.733070, 0.747334, 0.808265),
    0.25: (0.520521, 0.543265, 0.648228),
    0.5: (0.348531, 0.374565, 0.508770),
    1: (0.208069, 0.232154, 0.379999),
    2: (0.114332, 0.132605, 0.275754),
    5: (0.048329, 0.058405, 0.176893),
    10: (0.024590, 0.030333, 0.125627),
    50: (0.004984, 0.006290, 0.056355),
}


def energy(kappa, half):
    """Half the opened area under tension 1: both tips set free G = K^2 / E' as they move on."""
    gap, _, length = held_slit(lambda x: np.full_like(x, kappa), half=half)
    return gap @ length / 2


@pytest.mark.parametrize("kappa", UNIFORM)
def test_uniform_springs(kappa):
    """Computed to 6 digits from the integral equation; same mathematics as Prandtl's lifting line
    and Rose, J. Mech. Phys. Solids 35 (1987) 383 (recalled)."""
    middle, area, factor = UNIFORM[kappa]
    gap, _, length = held_slit(lambda x: np.full_like(x, kappa))
    assert gap.max() / 4 == pytest.approx(middle, rel=3e-3)
    assert gap @ length / (2 * np.pi) == pytest.approx(area, rel=5e-4)
    grown = [energy(kappa, half) for half in (0.995, 1.005)]
    assert np.sqrt((grown[1] - grown[0]) / 0.02 / np.pi) == pytest.approx(factor, rel=3e-3)


@pytest.mark.parametrize("k0", [0.1, 1.0, 4.0])
def test_springs_shaped_like_the_slit_keep_it_an_ellipse(k0):
    """k = k0 / sqrt(1 - x^2 / a^2): the middle opens by T / (k0 + E' / 4a), exactly."""
    gap, x, _ = held_slit(lambda x: k0 / np.sqrt(1 - x**2))
    inner = np.abs(x) < 0.9
    exact = np.sqrt(1 - x**2) / (k0 + 0.25)
    np.testing.assert_allclose(gap[inner], exact[inner], rtol=3e-3)


@pytest.mark.parametrize("kappa", [0.5, 5, 50])
def test_held_slit_is_right_with_few_panels(kappa):
    """The opened area of ten panels is within 0.2 %: their tips are drawn in as springs ask for."""
    gap, _, length = held_slit(lambda x: np.full_like(x, kappa), count=10)
    assert gap @ length / (2 * np.pi) == pytest.approx(UNIFORM[kappa][1], rel=2e-3)


def test_held_slit_converges():
    """Between first and second order here: these springs have no bound at the tips."""
    counts = np.array([10, 20, 40, 80])
    errors = []
    for count in counts:
        gap, _, length = held_slit(lambda x: 1 / np.sqrt(1 - x**2), count=int(count))
        errors.append(abs(gap @ length / (np.pi / 2 / 1.25) - 1))
    order = -np.polyfit(np.log(counts), np.log(errors), 1)[0]
    assert 1.4 < order < 2.4, errors
    assert errors[-1] < 1e-3


ALPHA = {  # xi: Gross & Srawley's polynomial, all-depth form
    0.1: (0.020866, 0.021267),
    0.2: (0.098458, 0.098831),
    0.3: (0.280016, 0.278280),
    0.4: (0.669718, 0.666939),
    0.5: (1.525215, 1.522758),
    0.6: (3.541208, 3.536068),
    0.7: (None, 8.935048),
    0.8: (None, 27.667224),
    0.9: (None, 148.905670),
}


@pytest.mark.parametrize("xi", ALPHA)
def test_alpha(xi):
    polynomial, all_depth = ALPHA[xi]
    assert float(alpha(xi)) == pytest.approx(all_depth, rel=1e-6, abs=6e-7)
    if polynomial:
        assert float(alpha(xi)) == pytest.approx(polynomial, rel=0.02)


def test_alpha_of_shallow_and_of_nearly_through_cuts():
    """Shallow limit 1.976 xi^2 with the exact edge crack F = 1.1215; above 0.98 it stays."""
    assert float(alpha(1e-4)) / 1e-8 == pytest.approx(1.976, rel=2e-3)
    assert float(tension_shape(0.0)) == pytest.approx(1.1215, rel=1e-3)
    assert float(alpha(0.99)) == float(alpha(0.98))
    assert float(alpha(0.0)) == 0.0


def test_slide_compliance_of_a_shallow_cut():
    """K_III = T sqrt(pi d) for a shallow edge crack: slide = (pi / 2) xi^2 T h / mu."""
    assert float(slide_compliance(0.01)) == pytest.approx(np.pi / 2 * 1e-4, rel=1e-3)


WORKED = {0.2: (9.30093, 5.2808), 0.3: (3.27035, 14.4985), 0.5: (0.60041, 61.4488)}


@pytest.mark.parametrize("xi", WORKED)
def test_part_depth_worked_example(xi):
    """a = 50, h = 30, nu = 0.3, springs E / (2 (1 - nu^2) h alpha) with the polynomial's alpha:
    the middle opening over T / E, mm (computed with the integral equation of the springs)."""
    kappa, middle = WORKED[xi]
    stiffness = 1 / (2 * 0.91 * 30 * ALPHA[xi][0])
    assert stiffness * 50 == pytest.approx(kappa, rel=1e-4)
    gap, _, _ = held_slit(lambda x: np.full_like(x, stiffness), half=50.0)
    assert gap.max() == pytest.approx(middle, rel=3e-3)


def test_spring_of_a_part_deep_cut_is_that_of_the_line_spring():
    """T = gap E' / (2 h alpha): a very long cut opens by 2 h alpha T / E' in its middle."""
    depth, skin = 3.0, 12.0
    line = np.array([[-600.0, 0.0], [600.0, 0.0]])
    opening = solve([line], depth, strain=ACROSS, skin_mm=skin, panel_mm=6.0)
    plateau = 2 * skin * float(alpha(depth / skin))
    assert opening.gap_mm.max() == pytest.approx(plateau, rel=5e-3)
    mouth = plateau + 4 * 1.4545 * depth
    assert opening.mouth_mm.max() == pytest.approx(mouth, rel=5e-3)
    assert springs(np.array([depth]), skin).normal[0] == pytest.approx(1 / plateau)


def test_part_deep_cut_under_shear_slides_as_in_antiplane_shear():
    """A very long cut slides by T (h / mu) (4 / pi) ln sec(pi d / 2 h), mu = E / 2(1 + nu)."""
    depth, skin = 6.0, 12.0
    line = np.array([[-900.0, 0.0], [900.0, 0.0]])
    opening = solve([line], depth, strain=(0, 0, 1.5), skin_mm=skin, panel_mm=9.0)  # shear of 1
    mu = 1 / (2 * (1 + 0.5))
    plateau = skin / mu * 4 / np.pi * np.log(1 / np.cos(np.pi / 4))
    assert np.abs(opening.slide_mm).max() == pytest.approx(plateau, rel=5e-3)
    np.testing.assert_allclose(opening.gap_mm, 0, atol=1e-9)


def test_shallow_cut_shows_the_mouth_of_an_edge_notch():
    """4 x 1.4545 T d / E' (Tada, Paris & Irwin handbook, single edge crack; recalled)."""
    opening = solve([np.array([[-20.0, 0], [20, 0]])], 0.05, strain=ACROSS)
    assert opening.mouth_mm.max() == pytest.approx(4 * 1.4545 * 0.05, rel=0.01)


SCALE = [(120, 3, 4), (120, 6, 11), (120, 10, 25), (20, 2, 2.5)]


@pytest.mark.parametrize(("length", "depth", "about"), SCALE)
def test_scale_on_a_round_loaf(length, depth, about):
    """A slash on a 220 mm round that grows 10 %: worked out once with a separate program."""
    line = np.array([[-length / 2, 0], [length / 2, 0]])
    area = np.pi * 110**2
    opening = solve([line], depth, strain=(0.1, 0.1, 0), area_mm2=area)
    assert opening.widest_mm[0] == pytest.approx(about, rel=0.07)
