"""The stretched sheet: its tension turns with the strain, its half plane is a solution."""

import numpy as np
import pytest

from scorecraft.opening.stretch import Stretch, tension

STRAINS = [0.0, 0.1, 0.25, -0.05]


def test_a_sheet_stretched_both_ways_is_in_the_tension_of_a_neo_hookean_one():
    """By its stretches a, b: (a - 1 / a^3 b^2) / 3 across, and the same the other way."""
    a, b = 1.2, 0.95
    expected = [(a - a**-3 * b**-2) / 3, (b - b**-3 * a**-2) / 3, 0.0]
    assert tension(np.array([[0.2, -0.05, 0.0]]))[0] == pytest.approx(expected)


@pytest.mark.parametrize("turn", [0.3, 1.2])
def test_tension_turns_with_the_strain(turn):
    c, s = np.cos(turn), np.sin(turn)
    frame = np.array([[c, -s], [s, c]])
    (xx, xy), (_, yy) = frame @ np.diag([0.2, -0.05]) @ frame.T
    (a, b, _), (txx, tyy, txy) = tension(np.array([[0.2, -0.05, 0.0], [xx, yy, xy]]))
    np.testing.assert_allclose([[txx, txy], [txy, tyy]], frame @ np.diag([a, b]) @ frame.T)


def half_plane(s):
    """Pull across the edge and its fall into the depth, of a half plane opened by cos x at y = 0.

    The displacement (A + B y) exp(-y) sin x, (1 + B y) exp(-y) cos x obeys the equation of the
    sheet inside where A - 1 + B = -2 B / 3 s, and carries no shear at the edge where B - A = s.
    """
    a, b = np.linalg.solve([[1.0, 1 + 2 / (3 * s)], [-1.0, 1.0]], [1.0, s])
    inside = 2 * s * (a - 1 + b)
    return -((1 + s) * (b - 1) + inside) / 3, -(1 + s) * b / ((1 + s) * (b - 1) + inside)


@pytest.mark.parametrize("strain", STRAINS)
def test_strength_and_lean_are_those_of_an_opened_half_plane(strain):
    stretch = Stretch(strain)
    pull, falls = half_plane((1 + strain) ** -6)
    assert stretch.softer == (1 + strain) ** -6
    assert stretch.strength == pytest.approx(pull / half_plane(1.0)[0])
    assert stretch.lean == pytest.approx(falls)


@pytest.mark.parametrize("strain", STRAINS)
def test_free_and_tied_the_sheet_gives_alike_in_all_directions(strain):
    """As a tensor does: shear is what two opposite pulls at 45 degrees are."""
    stretch = Stretch(strain)
    for give in (stretch.compliance, stretch.tied):
        (xx, xy, _), (yx, yy, _), (*none, shear) = np.linalg.inv(give)
        assert (xx, xy, none) == (pytest.approx(yy), pytest.approx(yx), [0, 0])
        assert shear == pytest.approx((xx - xy) / 2)


@pytest.mark.parametrize("strain", STRAINS)
def test_a_rim_that_is_tied_pulls_back_by_its_own_shares(strain):
    """Those of the point force in a stretched sheet; unstretched 3/4 and 1.30."""
    stretch = Stretch(strain)
    free, tied = (np.linalg.inv(each) for each in (stretch.compliance, stretch.tied))
    s = stretch.softer
    k = 1 + 2 / (3 * s)
    shares = (1 + 5 * s) / (2 * (1 + 3 * s)), 3 * s * (1 + s) * (k + 3 / k) / (4 * (1 + 3 * s))
    for way, share in zip(([1.0, 1, 0], [1.0, -1, 0]), shares, strict=True):
        assert way @ tied @ way == pytest.approx(share * (way @ free @ np.array(way)))
