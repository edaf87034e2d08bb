"""How slits soften a sheet whose growth is given, in two dimensions.

Slits that do not feel each other: E / E0 = 1 / (1 + 2 pi rho) across parallel slits and
1 / (1 + pi rho) for all directions, rho = sum a^2 / A with a half the length (Bristow 1960;
Kachanov, Appl. Mech. Rev. 45 (1992) 304-335; recalled). All around, random
slits leave 1 / (1 + pi rho / (1 - nu)) of the tension.
"""

import numpy as np
import pytest
from support.small_strain import solve

A = 10.0
NON_INTERACTING = {  # rho: parallel, random
    0.02: (0.888365, 0.940883),
    0.05: (0.760943, 0.864245),
    0.10: (0.614130, 0.760943),
    0.20: (0.443137, 0.614130),
    0.30: (0.346626, 0.514806),
}


def far_apart(angles, rho):
    """Slits too far apart to feel each other, and the area that gives them the density rho."""
    lines = []
    for k, angle in enumerate(angles):
        step = A * np.array([np.cos(angle), np.sin(angle)])
        middle = 2000.0 * np.array([k, (k * k) % 7])
        lines.append(np.array([middle - step, middle + step]))
    return lines, len(angles) * A**2 / rho


def stretch_modulus(lines, area, **options):
    """E / E0 along y: tension left under growth along y that leaves x free to follow."""
    tensions = []
    for strain in [(1.0, 0, 0), (0, 1.0, 0), (0, 0, 0.5)]:
        opening = solve(lines, 12.0, strain=strain, area_mm2=area, panel_mm=0.2, **options)
        left = opening.tension_left * opening.uncut_tension
        tensions.append([left[0, 0], left[1, 1], left[0, 1]])
    compliance = np.linalg.inv(np.array(tensions).T)
    return 1 / compliance[1, 1]


@pytest.mark.parametrize("rho", NON_INTERACTING)
def test_parallel_slits_far_apart(rho):
    lines, area = far_apart([0.0, 0.0], rho)
    soft = stretch_modulus(lines, area)
    assert soft == pytest.approx(NON_INTERACTING[rho][0], rel=1e-3)


@pytest.mark.parametrize("rho", [0.02, 0.10, 0.30])
def test_slits_in_all_directions_far_apart(rho):
    lines, area = far_apart(np.pi * np.arange(4) / 4, rho)
    opening = solve(lines, 12.0, strain=(0.1, 0.1, 0), area_mm2=area, panel_mm=0.4)
    left = 1 / (1 + np.pi * rho / 0.5)
    np.testing.assert_allclose(opening.tension_left, left * np.eye(2), atol=1e-3)


@pytest.mark.parametrize("rho", NON_INTERACTING)
def test_slits_in_all_directions_stretched_one_way(rho):
    lines, area = far_apart(np.pi * np.arange(4) / 4, rho)
    soft = stretch_modulus(lines, area)
    assert soft == pytest.approx(NON_INTERACTING[rho][1], rel=1e-3)


def test_sparse_random_slits_behave_as_if_alone():
    """Mauge & Kachanov, J. Mech. Phys. Solids 42 (1994) 561-584 (abstract read): the estimate for
    slits that do not feel each other stays good for random places; at rho = 0.03 within 2 %."""
    random = np.random.default_rng(7)
    count, rho = 40, 0.03
    side = np.sqrt(count * A**2 / rho)
    lines = []
    for angle in np.pi * random.permutation(count) / count:
        step = A * np.array([np.cos(angle), np.sin(angle)])
        middle = random.uniform(0, side, 2)
        lines.append(np.array([middle - step, middle + step]))
    opening = solve(lines, 12.0, strain=(0.1, 0.1, 0), area_mm2=side**2, panel_mm=1.0)
    left = np.trace(opening.tension_left) / 2
    assert left == pytest.approx(1 / (1 + 2 * np.pi * rho), rel=0.02)
