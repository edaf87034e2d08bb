import numpy as np
import pytest
from support.drawing_layouts import ellipses

from scorecraft.drawing.bloom.mouths import Mouths, mouths_of, predicted
from scorecraft.opening import solve


def test_between_its_points_an_opening_ends_like_a_slit():
    """Near a tip the width is the root of the distance, not a straight wedge."""
    mouths = Mouths((np.array([0.0, 0.04, 1.0]),), (np.array([0.0, 2.0, 2.0]),))
    assert mouths.width(0, [0.01, 0.04]) == pytest.approx([1.0, 2.0])


def test_ellipses_are_as_wide_as_asked():
    mouths = ellipses([4.0, 9.0])
    assert len(mouths) == 2
    assert [mouths.widest(cut) for cut in (0, 1)] == pytest.approx([4.0, 9.0])
    share = np.linspace(0, 1, 101)
    expected = 9 * 2 * np.sqrt(share * (1 - share))
    assert mouths.width(1, share) == pytest.approx(expected, abs=0.03)


def test_the_models_profiles_are_taken_cut_by_cut():
    lines = [np.array([[-40.0, 0], [40, 0]]), np.array([[-10.0, 60], [10, 60]])]
    opening = solve(lines, [12.0, 12.0], strain=(0.05, 0.05, 0.0))
    mouths = mouths_of(opening)
    assert len(mouths) == 2
    assert mouths.widest(0) == pytest.approx(opening.widest_mm[0], rel=3e-3)
    share = np.array([0.2, 0.5, 0.7])
    slit = mouths.widest(0) * 2 * np.sqrt(share * (1 - share))
    assert mouths.width(0, share) == pytest.approx(slit, rel=0.03)
    assert mouths.width(0, [0.0, 1.0]) == pytest.approx([0, 0])


def test_a_layouts_openings_come_from_its_own_bake(petal_layout, long_layout):
    opening = predicted(long_layout)
    assert len(opening.widest_mm) == len(long_layout.cuts)
    assert opening.widest_mm.argmax() == 0
